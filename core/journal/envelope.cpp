#include "core/journal/envelope.h"

#include "core/journal/canonical_json.h"
#include "core/quantities/json_text.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <optional>

namespace loadwarden {
namespace {

using nlohmann::json;

constexpr std::array<std::string_view, 3> timeSources{"clock", "typed", "printout"};

void appendTime(std::string& out, const JournalTime& time)
{
    out += '[';
    out += std::to_string(time.at.ms);
    out += ',';
    out += std::to_string(time.offsetMinutes);
}

std::string textAt(const json& entry, const char* name)
{
    return entry.at(name).get_ref<const std::string&>();
}

JournalTime timeOf(const json& pair)
{
    return {Instant{integerOf(pair.at(0))}, static_cast<std::int32_t>(integerOf(pair.at(1)))};
}

std::optional<TimeSource> timeSourceOf(const std::string& text)
{
    const auto* const found = std::find(timeSources.begin(), timeSources.end(), text);
    if (found == timeSources.end()) {
        return std::nullopt;
    }
    return static_cast<TimeSource>(found - timeSources.begin());
}

/// Throws json::exception where a member is missing or of another type.
std::optional<Envelope> take(const json& entry)
{
    Envelope envelope;
    envelope.seq = integerOf(entry.at("seq"));
    const auto prev = parseHash(textAt(entry, "prev"));
    const auto from = timeSourceOf(entry.at("happenedAt").at(2).get_ref<const std::string&>());
    if (!prev || !from) {
        return std::nullopt;
    }
    envelope.prev = *prev;
    envelope.recordedAt = timeOf(entry.at("recordedAt"));
    envelope.happenedAt = timeOf(entry.at("happenedAt"));
    envelope.happenedFrom = *from;
    envelope.actor = entry.at("actor").at(0).get_ref<const std::string&>();
    envelope.role = entry.at("actor").at(1).get_ref<const std::string&>();
    envelope.workstation = textAt(entry, "workstation");
    envelope.kind = textAt(entry, "kind");
    envelope.version = static_cast<std::int32_t>(integerOf(entry.at("v")));
    for (const json& subject : entry.at("subjects")) {
        envelope.subjects.push_back(subject.get_ref<const std::string&>());
    }
    envelope.reason = textAt(entry, "reason");
    envelope.supersedes = integerOf(entry.at("supersedes"));
    envelope.basedOn = integerOf(entry.at("basedOn"));
    envelope.body = canonicalJson(entry.at("body"));
    return envelope;
}

bool namesTwice(std::vector<std::string> subjects)
{
    std::ranges::sort(subjects);
    return std::ranges::adjacent_find(subjects) != subjects.end();
}

} // namespace

JournalTime journalTime(Instant at, const Zone& zone)
{
    return {at, static_cast<std::int32_t>(zone.offsetAt(at).ms / 60'000)};
}

std::string writeEnvelope(const Envelope& envelope)
{
    std::string out;
    out.reserve(512 + envelope.body.size());
    out += R"({"seq":)";
    out += std::to_string(envelope.seq);
    out += R"(,"prev":")";
    out += hexOf(envelope.prev);
    out += R"(","recordedAt":)";
    appendTime(out, envelope.recordedAt);
    out += R"(],"happenedAt":)";
    appendTime(out, envelope.happenedAt);
    out += R"(,")";
    out += timeSources[static_cast<std::size_t>(envelope.happenedFrom)];
    out += R"("],"actor":[)";
    appendJsonString(out, envelope.actor);
    out += ',';
    appendJsonString(out, envelope.role);
    out += R"(],"workstation":)";
    appendJsonString(out, envelope.workstation);
    out += R"(,"kind":)";
    appendJsonString(out, envelope.kind);
    out += R"(,"v":)";
    out += std::to_string(envelope.version);
    out += R"(,"subjects":[)";
    for (std::size_t i = 0; i < envelope.subjects.size(); ++i) {
        out += i == 0 ? "" : ",";
        appendJsonString(out, envelope.subjects[i]);
    }
    out += R"(],"reason":)";
    appendJsonString(out, envelope.reason);
    out += R"(,"supersedes":)";
    out += std::to_string(envelope.supersedes);
    out += R"(,"basedOn":)";
    out += std::to_string(envelope.basedOn);
    out += R"(,"body":)";
    out += envelope.body;
    out += '}';
    return out;
}

std::variant<Envelope, EnvelopeFault> readEnvelope(std::string_view bytes)
{
    std::optional<Envelope> envelope;
    try {
        envelope = take(json::parse(bytes));
    } catch (const json::exception&) {
        return EnvelopeFault{"it is no JSON object with the members of an entry"};
    }
    if (!envelope) {
        return EnvelopeFault{"its hash or the source of its time is none"};
    }
    if (!envelope->body.starts_with('{')) {
        return EnvelopeFault{"its body is no object"};
    }
    if (namesTwice(envelope->subjects)) {
        return EnvelopeFault{"a subject is named twice in it"};
    }
    if (writeEnvelope(*envelope) != bytes) {
        return EnvelopeFault{"it is not written in the journal's own form"};
    }
    return *std::move(envelope);
}

} // namespace loadwarden
