#include "core/journal/envelope.h"

#include "core/journal/canonical_scan.h"
#include "core/quantities/json_text.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace loadwarden {
namespace {

constexpr std::array<std::string_view, 3> timeSources{"clock", "typed", "printout"};

void appendTime(std::string& out, const JournalTime& time)
{
    out += '[';
    out += std::to_string(time.at.ms);
    out += ',';
    out += std::to_string(time.offsetMinutes);
}

bool takeTime(CanonicalScan& scan, JournalTime& time)
{
    return scan.take("[") && scan.takeInteger(time.at.ms) && scan.take(",")
           && scan.takeInteger(time.offsetMinutes);
}

bool takeHash(CanonicalScan& scan, Hash& hash)
{
    constexpr std::size_t hexDigits = 64;
    const std::string_view hex = scan.rest().substr(0, hexDigits);
    const auto read = parseHash(hex);
    if (!read) {
        return false;
    }
    hash = *read;
    return scan.take(hex);
}

bool takeTimeSource(CanonicalScan& scan, TimeSource& from)
{
    for (std::size_t i = 0; i < timeSources.size(); ++i) {
        if (scan.take(timeSources[i])) {
            from = static_cast<TimeSource>(i);
            return true;
        }
    }
    return false;
}

bool takeSubjects(CanonicalScan& scan, std::vector<std::string>& subjects)
{
    if (scan.take("]")) {
        return true;
    }
    constexpr std::size_t usual = 4;
    subjects.reserve(usual);
    do {
        if (!scan.takeString(subjects.emplace_back())) {
            return false;
        }
    } while (scan.take(","));
    return scan.take("]");
}

/// Reads what writeEnvelope() writes.
bool takeAll(CanonicalScan& scan, Envelope& envelope)
{
    std::string_view body;
    const bool is =
        scan.take(R"({"seq":)") && scan.takeInteger(envelope.seq) && scan.take(R"(,"prev":")")
        && takeHash(scan, envelope.prev) && scan.take(R"(","recordedAt":)")
        && takeTime(scan, envelope.recordedAt) && scan.take(R"(],"happenedAt":)")
        && takeTime(scan, envelope.happenedAt) && scan.take(R"(,")")
        && takeTimeSource(scan, envelope.happenedFrom) && scan.take(R"("],"actor":[)")
        && scan.takeString(envelope.actor) && scan.take(",") && scan.takeString(envelope.role)
        && scan.take(R"(],"workstation":)") && scan.takeString(envelope.workstation)
        && scan.take(R"(,"kind":)") && scan.takeString(envelope.kind) && scan.take(R"(,"v":)")
        && scan.takeInteger(envelope.version) && scan.take(R"(,"subjects":[)")
        && takeSubjects(scan, envelope.subjects) && scan.take(R"(,"reason":)")
        && scan.takeString(envelope.reason) && scan.take(R"(,"supersedes":)")
        && scan.takeInteger(envelope.supersedes) && scan.take(R"(,"basedOn":)")
        && scan.takeInteger(envelope.basedOn) && scan.take(R"(,"body":)") && scan.takeValue(body)
        && scan.take("}") && scan.rest().empty();
    envelope.body = body;
    return is;
}

bool namesTwice(const std::vector<std::string>& subjects)
{
    // Nearly all name two or three; what does not is sorted, so that nobody can make it slow.
    constexpr std::size_t few = 8;
    if (subjects.size() <= few) {
        for (auto each = subjects.begin(); each != subjects.end(); ++each) {
            if (std::find(std::next(each), subjects.end(), *each) != subjects.end()) {
                return true;
            }
        }
        return false;
    }
    std::vector<std::string_view> sorted(subjects.begin(), subjects.end());
    std::ranges::sort(sorted);
    return std::ranges::adjacent_find(sorted) != sorted.end();
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
    std::variant<Envelope, EnvelopeFault> read;
    auto& envelope = std::get<Envelope>(read);
    CanonicalScan scan(bytes);
    if (!takeAll(scan, envelope)) {
        return EnvelopeFault{"it is not written in the journal's own form, from byte "
                             + std::to_string(bytes.size() - scan.rest().size()) + " on"};
    }
    if (!envelope.body.starts_with('{')) {
        return EnvelopeFault{"its body is no object"};
    }
    if (namesTwice(envelope.subjects)) {
        return EnvelopeFault{"a subject is named twice in it"};
    }
    return read;
}

} // namespace loadwarden
