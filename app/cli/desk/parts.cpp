#include "app/cli/desk/parts.h"

#include "core/acts/fold/facts.h"
#include "core/desk/journal_entries.h"
#include "core/quantities/person.h"

#include <algorithm>
#include <array>
#include <map>

namespace loadwarden::cli {

namespace {

struct Letter {
    std::string_view prefix;
    char letter;
};

constexpr std::array letters = {Letter{"it", 'i'}, Letter{"ci", 'c'}, Letter{"bv", 'v'},
                                Letter{"pd", 'd'}, Letter{"ar", 'r'}};

/// What an entry says of the things that it brings in.
std::map<std::string, std::string> wordsOf(const Entry& entry)
{
    std::map<std::string, std::string> words;
    const auto of = [](const PlacedIndicator& indicator, const std::string& where) {
        return where + (indicator.place.empty() ? "" : ", " + indicator.place)
               + (indicator.product.empty() ? "" : ", " + indicator.product)
               + (indicator.lot.empty() ? "" : "/" + indicator.lot);
    };
    if (const auto* const item = std::get_if<ItemAdded>(&entry.act)) {
        words[std::string(entry.subject("it"))] = item->label;
        if (item->external) {
            words[item->external->id] = of(*item->external, "on " + item->label);
        }
        for (const PlacedIndicator& internal : item->internals) {
            words[internal.id] = of(internal, "in " + item->label);
        }
    } else if (const auto* const pcd = std::get_if<PcdPlaced>(&entry.act)) {
        const std::string mark = pcd->mark.empty() ? "PCD" : pcd->mark;
        words[std::string(entry.subject("pd"))] = mark;
        for (const auto* const list : {&pcd->indicators, &pcd->vials}) {
            for (const PlacedIndicator& indicator : *list) {
                words[indicator.id] = of(indicator, "in " + mark);
            }
        }
    } else if (const auto* const sheet = std::get_if<SheetPlaced>(&entry.act)) {
        words[std::string(entry.subject("ci"))] =
            "sheet" + (sheet->product.empty() ? "" : ", " + sheet->product);
    }
    return words;
}

/// The items that are not in the cycle any more, and why, in words.
std::map<std::string, std::string> leftOf(std::span<const Entry> entries, const std::string& cycle)
{
    const FactBook book(entries);
    std::map<std::string, std::string> left;
    bool started = false;
    for (const std::uint32_t index : book.about(cycle)) {
        const Fact& fact = book.facts()[index];
        const std::string item(fact.origin->subject("it"));
        const Entry& entry = fact.stands() ? fact.current() : *fact.origin;
        const auto* const moved = std::get_if<ItemMoved>(&entry.act);
        const std::string inside = started ? ", after the start: it was inside" : "";
        if (std::holds_alternative<ItemAdded>(entry.act)) {
            left[item] = fact.stands() ? "" : "struck";
        } else if (!fact.stands()) {
            continue;
        } else if (std::holds_alternative<CycleStarted>(entry.act)) {
            started = true;
        } else if (std::holds_alternative<ItemRemoved>(entry.act)) {
            left[item] = "taken out" + inside;
        } else if (moved != nullptr) {
            left[item] = moved->from == cycle ? "moved to " + moved->to + inside : "";
        }
    }
    return left;
}

} // namespace

std::vector<Part> partsOf(ReadSnapshot& snapshot, const std::string& cycle)
{
    std::vector<Part> parts;
    std::map<char, int> counts;
    const std::vector<Entry> entries = entriesAbout(snapshot, cycle);
    const std::map<std::string, std::string> left = leftOf(entries, cycle);
    for (const Entry& entry : entries) {
        const auto words = wordsOf(entry);
        for (const std::string& id : entry.subjects) {
            const auto letter = std::ranges::find_if(
                letters, [&](const Letter& each) { return hasPrefix(id, each.prefix); });
            if (letter == letters.end() || std::ranges::find(parts, id, &Part::id) != parts.end()) {
                continue;
            }
            const int number = ++counts[letter->letter];
            const auto what = words.find(id);
            parts.push_back({.name = letter->letter + std::to_string(number),
                             .id = id,
                             .what = what == words.end() ? "" : what->second,
                             .left = left.contains(id) ? left.at(id) : ""});
        }
    }
    return parts;
}

std::string findPart(const std::vector<Part>& parts, std::string_view name)
{
    std::string found;
    for (const Part& part : parts) {
        const bool isIt = part.name == name || part.id == name
                          || (hasPrefix(part.id, "it") && isSamePerson(part.what, name));
        if (isIt && !found.empty()) {
            return {}; // a label may read as another part's short name
        }
        found = isIt ? part.id : found;
    }
    return found;
}

} // namespace loadwarden::cli
