#include "tests/core/exchange/bodies_support.h"

#include "core/acts/codec.h"
#include "core/journal/canonical_json.h"
#include "core/quantities/thousandths.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <map>
#include <optional>
#include <set>

namespace loadwarden::tests {
namespace {

using nlohmann::json;
using Place = json::json_pointer;

const std::map<std::string, std::vector<json>>& frozen()
{
    static const auto bodies = [] {
        std::map<std::string, std::vector<json>> all;
        for (const auto& file : std::filesystem::directory_iterator(
                 std::filesystem::path(LOADWARDEN_SOURCE_DIR) / "tests/data/acts/v1")) {
            std::ifstream in(file.path());
            for (std::string line; std::getline(in, line);) {
                all[file.path().stem().string()].push_back(json::parse(line));
            }
        }
        return all;
    }();
    return bodies;
}

void addPlaces(const json& value, const Place& at, std::vector<Place>& places)
{
    if (value.is_object()) {
        for (const auto& [name, each] : value.items()) {
            const Place place = at / name;
            places.push_back(place);
            addPlaces(each, place, places);
        }
    } else if (value.is_array()) {
        for (std::size_t i = 0; i < value.size(); ++i) {
            const Place place = at / i;
            places.push_back(place);
            addPlaces(value[i], place, places);
        }
    }
}

/// The greatest count for which something is taken, where that is so up to some count and beyond
/// it no more; 0 is taken.
std::int64_t greatest(const std::function<bool(std::int64_t)>& isTakenWith)
{
    std::int64_t taken = 0;
    std::int64_t step = 1;
    constexpr std::int64_t most = std::int64_t{1} << 53U;
    while (step <= most && isTakenWith(taken + step)) {
        taken += step;
        step *= 2;
    }
    for (; step > 0; step /= 2) {
        if (isTakenWith(taken + step)) {
            taken += step;
        }
    }
    return taken;
}

/// The value farthest from one that is taken, on one side. Some must be multiples of 60, so it goes
/// by these first.
std::int64_t farthest(std::int64_t from, int sign, const std::function<bool(std::int64_t)>& isTaken)
{
    constexpr std::int64_t coarse = 60;
    const std::int64_t far = from + sign * coarse * greatest([&](std::int64_t n) {
                                        return isTaken(from + sign * coarse * n);
                                    });
    return far
           + sign * greatest([&](std::int64_t n) { return n < coarse && isTaken(far + sign * n); });
}

/// Every word and name that stands at such a member in any frozen body.
const std::set<json>& knownAt(const std::string& member)
{
    static const auto known = [] {
        std::map<std::string, std::set<json>> all;
        for (const auto& [kind, bodies] : frozen()) {
            for (const json& body : bodies) {
                for (const Place& place : placesIn(body)) {
                    if (body.at(place).is_string()) {
                        all[place.back()].insert(body.at(place));
                    }
                }
            }
        }
        return all;
    }();
    static const std::set<json> none;
    const auto found = known.find(member);
    return found == known.end() ? none : found->second;
}

/// Characters that are strange in a name, at the edges of what may stand in a text, or longer than
/// others in UTF-8.
constexpr const char* strangeTexts[]{"\t",
                                     "\n",
                                     "\r",
                                     "\x7F",
                                     "\xC2\x85",
                                     "\xC2\x9F",
                                     "\xC2\xA0",
                                     "\xC2\xAD",
                                     "\xCD\x8F",
                                     "\xE1\x85\x9F",
                                     "\xE2\x80\x8B",
                                     "\xE2\x80\xAE",
                                     "\xE2\x80\xA8",
                                     "\xE3\x80\x80",
                                     "\xEF\xB8\x8F",
                                     "\xEF\xBB\xBF",
                                     "\xEF\xBF\xB9",
                                     "\xEF\xBF\xBE",
                                     "\xF3\xA0\x80\x81",
                                     "\xF4\x8F\xBF\xBF",
                                     "\xC3\xA9",
                                     "e\xCC\x81",
                                     "\xE6\x97\xA5",
                                     "\xF0\x9F\xA7\xAA",
                                     "\"",
                                     "\\",
                                     "/",
                                     " ",
                                     "@2",
                                     "-"};

std::vector<json> integersAt(std::int64_t now, const std::function<bool(const json&)>& fits)
{
    const auto takes = [&](std::int64_t value) { return fits(json(value)); };
    const std::int64_t least = farthest(now, -1, takes);
    const std::int64_t most = farthest(now, 1, takes);
    std::vector<json> values;
    for (const std::int64_t edge : {least, most}) {
        for (const std::int64_t aside : {0, 1, 59, 60, -1, -59, -60}) {
            values.emplace_back(edge + aside);
        }
    }
    for (const std::int64_t value : {-1, 0, 1, 59, 61, 99'999, 100'000, 100'001, 200'000}) {
        values.emplace_back(value);
    }
    return values;
}

/// Numbers as texts: around what stands there, and the least and the greatest.
void addNumbers(const std::string& now, const std::function<bool(const json&)>& fits,
                std::vector<json>& values)
{
    if (now.find_first_not_of("-.0123456789") != std::string::npos || now.find('-', 1) < 9) {
        return;
    }
    for (const char* text : {"0", "-0", "0.0", "-0.001", "0.001", "0.01", "0.10", "1.5", "3.333"}) {
        values.emplace_back(text);
    }
    std::int64_t whole = 0;
    try {
        whole = std::stoll(now);
    } catch (const std::exception&) {
        return;
    }
    const auto takes = [&](std::int64_t value) { return fits(json(std::to_string(value))); };
    if (!takes(whole)) {
        return;
    }
    for (const int sign : {-1, 1}) {
        const std::int64_t edge = farthest(whole, sign, takes);
        constexpr std::int64_t mostOfNumbers = 1'000'000'000'000;
        if (std::abs(edge) > mostOfNumbers) {
            return; // a name that happens to be of digits
        }
        for (const std::int64_t aside : {0, 1, 10, 999, 1'000, -1, -10, -999}) {
            values.emplace_back(thousandthsText(edge * 1'000 + aside));
        }
    }
}

std::vector<json> textsAt(const std::string& now, const std::string& member,
                          const std::function<bool(const json&)>& fits)
{
    std::vector<json> values(knownAt(member).begin(), knownAt(member).end());
    // Every few texts have them all: they follow two or three rules, not one each.
    constexpr std::size_t share = 6;
    static std::size_t turn = 0;
    for (std::size_t i = turn++ % share; i < std::size(strangeTexts); i += share) {
        values.emplace_back(strangeTexts[i]);
        values.emplace_back(now + strangeTexts[i] + now);
    }
    for (const char* date : {"1999-12-31", "2000-01-01", "2099-12-31", "2100-01-01"}) {
        values.emplace_back(date);
    }
    addNumbers(now, fits, values);
    for (const std::string& each : {std::string("x"), std::string("\xF0\x9F\xA7\xAA")}) {
        const auto longer = [&](std::int64_t many) {
            std::string text = now;
            for (std::int64_t i = 0; i < many; ++i) {
                text += each;
            }
            return text;
        };
        constexpr std::int64_t beyondAll = 100'000;
        const std::int64_t most =
            greatest([&](std::int64_t many) { return many < beyondAll && fits(longer(many)); });
        values.emplace_back(longer(most));
        values.emplace_back(longer(most + 1));
    }
    return values;
}

} // namespace

bool isTaken(const std::string& kind, const json& body)
{
    try {
        return std::holds_alternative<ActBody>(decodeBody(kind, 1, canonicalJson(body)));
    } catch (const json::exception&) {
        return false; // beyond what a journal can hold
    }
}

const std::vector<std::string>& frozenKinds()
{
    static const auto kinds = [] {
        std::vector<std::string> all;
        for (const auto& [kind, bodies] : frozen()) {
            all.push_back(kind);
        }
        return all;
    }();
    return kinds;
}

const std::vector<json>& frozenBodies(const std::string& kind)
{
    return frozen().at(kind);
}

std::vector<Place> placesIn(const json& body)
{
    std::vector<Place> places;
    addPlaces(body, Place{}, places);
    return places;
}

std::vector<json> variantsAt(const std::string& kind, const json& body, const Place& place)
{
    const auto with = [&](const json& value) {
        json changed = body;
        changed.at(place) = value;
        return changed;
    };
    const auto fits = [&](const json& value) { return isTaken(kind, with(value)); };
    const json& now = body.at(place);
    std::vector<json> values;
    if (now.is_boolean()) {
        values.emplace_back(!now.get<bool>());
    } else if (now.is_number_integer()) {
        values = integersAt(now.get<std::int64_t>(), fits);
    } else if (now.is_string()) {
        values = textsAt(now.get<std::string>(), place.back(), fits);
    } else if (now.is_array() && !now.empty()) {
        json fewer = now;
        fewer.erase(fewer.size() - 1);
        json more = now;
        more.push_back(now.front());
        json turned = now;
        std::reverse(turned.begin(), turned.end());
        values = {fewer, more, turned};
    }
    std::vector<json> variants;
    for (const json& value : values) {
        if (value != now && fits(value)) {
            variants.push_back(with(value));
        }
    }
    if (body.at(place.parent_pointer()).is_object()) {
        json shorter = body;
        shorter.at(place.parent_pointer()).erase(place.back());
        if (isTaken(kind, shorter)) {
            variants.push_back(std::move(shorter));
        }
    }
    return variants;
}

std::string longestId(const std::string& prefix)
{
    const auto idOf = [&](std::int64_t more) {
        return prefix + "-1" + std::string(static_cast<std::size_t>(more), 'z');
    };
    const auto fits = [&](std::int64_t more) {
        constexpr std::int64_t beyondAll = 100'000;
        return more < beyondAll
               && isTaken("item.moved",
                          {{"from", "ld-0"}, {"to", "ld" + idOf(more).substr(2)}, {"why", "w"}});
    };
    return idOf(greatest(fits));
}

} // namespace loadwarden::tests
