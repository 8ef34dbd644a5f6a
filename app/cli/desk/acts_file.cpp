#include "app/cli/desk/acts_file.h"

#include "app/cli/desk/typed_time.h"
#include "core/acts/codec.h"
#include "core/journal/canonical_json.h"

#include <nlohmann/json.hpp>

#include <istream>
#include <set>
#include <stdexcept>

namespace loadwarden::cli {

namespace {

using nlohmann::json;

constexpr std::size_t mostBytes = 1'000'000; ///< of a line

/// Parses, and refuses a member that stands twice in an object, which would be dropped silently.
json parsed(const std::string& line)
{
    std::vector<std::set<std::string>> members;
    const auto watch = [&](int, json::parse_event_t event, json& value) {
        if (event == json::parse_event_t::object_start) {
            members.emplace_back();
        } else if (event == json::parse_event_t::object_end) {
            members.pop_back();
        } else if (event == json::parse_event_t::key
                   && !members.back().insert(value.get<std::string>()).second) {
            throw std::runtime_error("the member \"" + value.get<std::string>()
                                     + "\" stands there twice");
        }
        return true;
    };
    return json::parse(line, watch);
}

JournalTime timeOf(const std::string& text)
{
    const auto typed = typedTime(text);
    if (!typed) {
        throw std::runtime_error(
            "happenedAt needs a moment with its offset, as 2031-03-04T07:14-06:00, not " + text);
    }
    return *typed;
}

ToRecord actOf(const std::string& line)
{
    const json object = parsed(line);
    if (!object.is_object()) {
        throw std::runtime_error("each line is one JSON object");
    }
    const std::set<std::string> known = {"kind",       "subjects", "body",
                                         "happenedAt", "reason",   "supersedes"};
    for (const auto& [member, value] : object.items()) {
        if (!known.contains(member)) {
            throw std::runtime_error("there is no member \"" + member + "\" here");
        }
    }
    const auto kind = object.at("kind").get<std::string>();
    const KindOfAct* const found = findKind(kind);
    if (found == nullptr) {
        throw std::runtime_error("there is no kind of act \"" + kind + "\"");
    }
    const std::string body =
        canonicalJson(object.contains("body") ? object.at("body") : json::object());
    auto decoded = decodeBody(kind, found->version, body);
    if (const auto* const fault = std::get_if<ActFault>(&decoded)) {
        throw std::runtime_error(fault->what);
    }
    auto& read = std::get<ActBody>(decoded);
    ToRecord act{.act = std::move(read.act),
                 .subjects = object.at("subjects").get<std::vector<std::string>>(),
                 .paper = std::move(read.paper)};
    if (object.contains("happenedAt")) {
        act.happenedAt = timeOf(object.at("happenedAt").get<std::string>());
    }
    act.reason = object.value("reason", "");
    act.supersedes = object.value("supersedes", std::int64_t{0});
    return act;
}

} // namespace

std::vector<ToRecord> readActs(std::istream& in, const std::string& name)
{
    std::vector<ToRecord> acts;
    std::string line;
    for (std::int64_t number = 1; std::getline(in, line); ++number) {
        if (line.find_first_not_of(" \t\r") == std::string::npos) {
            continue;
        }
        try {
            if (line.size() > mostBytes) {
                throw std::runtime_error("the line is longer than a million bytes");
            }
            acts.push_back(actOf(line));
        } catch (const std::exception& error) {
            throw std::runtime_error(name + ", line " + std::to_string(number) + ": "
                                     + error.what());
        }
    }
    if (in.bad()) {
        throw std::runtime_error(name + ": could not be read to its end");
    }
    if (acts.empty()) {
        throw std::runtime_error(name + ": there is no act in it");
    }
    return acts;
}

} // namespace loadwarden::cli
