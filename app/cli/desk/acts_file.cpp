#include "app/cli/desk/acts_file.h"

#include "app/cli/desk/json_line.h"
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

/// The value of a member that must be of that type, said in words; nullptr where it is left out.
const json* memberOf(const json& object, const char* member, bool (json::*isRight)() const noexcept,
                     const char* words)
{
    const auto found = object.find(member);
    if (found == object.end()) {
        return nullptr;
    }
    if (!((*found).*isRight)()) {
        throw std::runtime_error("the member \"" + std::string(member) + "\" must be " + words);
    }
    return &*found;
}

std::string textOf(const json& object, const char* member)
{
    const json* const found = memberOf(object, member, &json::is_string, "a text");
    return found == nullptr ? "" : found->get<std::string>();
}

std::vector<std::string> subjectsOf(const json& object)
{
    constexpr const char* words = "a list of ids, such as [\"sz-1\"]";
    const json* const found = memberOf(object, "subjects", &json::is_array, words);
    if (found == nullptr) {
        throw std::runtime_error(std::string("the member \"subjects\" must not be left out: it is ")
                                 + words);
    }
    std::vector<std::string> subjects;
    for (const json& each : *found) {
        if (!each.is_string()) {
            throw std::runtime_error(std::string("the member \"subjects\" must be ") + words);
        }
        subjects.push_back(each.get<std::string>());
    }
    return subjects;
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

/// The number of the entry that is corrected; 0: none is.
std::int64_t supersededBy(const json& object)
{
    const json* const found =
        memberOf(object, "supersedes", &json::is_number_integer, "the number of an entry");
    if (found == nullptr) {
        return 0;
    }
    const auto seq = found->get<std::int64_t>();
    if (seq < 1) {
        throw std::runtime_error("the member \"supersedes\" must be the number of an entry");
    }
    return seq;
}

std::string canonicalText(const json& body)
{
    try {
        return canonicalJson(body);
    } catch (const json::exception&) {
        throw std::runtime_error("the member \"body\" has a number with decimals, one that is too "
                                 "great, or too many brackets; a reading is a text, such as "
                                 "\"131.90\"");
    }
}

ToRecord actOf(const std::string& line)
{
    const json object = objectOf(line);
    const std::set<std::string> known = {"kind",       "subjects", "body",
                                         "happenedAt", "reason",   "supersedes"};
    for (const auto& [member, value] : object.items()) {
        if (!known.contains(member)) {
            throw std::runtime_error("there is no member \"" + member + "\" here");
        }
    }
    const std::string kind = textOf(object, "kind");
    if (kind.empty()) {
        throw std::runtime_error("the member \"kind\" must not be left out: it says what kind of "
                                 "act this is");
    }
    const KindOfAct* const found = findKind(kind);
    if (found == nullptr) {
        throw std::runtime_error("there is no kind of act \"" + kind + "\"");
    }
    const json* const given = memberOf(object, "body", &json::is_object, "an object, from { to }");
    auto decoded =
        decodeBody(kind, found->version, canonicalText(given == nullptr ? json::object() : *given));
    if (const auto* const fault = std::get_if<ActFault>(&decoded)) {
        throw std::runtime_error(fault->what);
    }
    auto& read = std::get<ActBody>(decoded);
    ToRecord act{
        .act = std::move(read.act), .subjects = subjectsOf(object), .paper = std::move(read.paper)};
    if (object.contains("happenedAt")) {
        act.happenedAt = timeOf(textOf(object, "happenedAt"));
    }
    act.reason = textOf(object, "reason");
    act.supersedes = supersededBy(object);
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
