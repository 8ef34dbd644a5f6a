#include "tests/core/exchange/exported_support.h"

#include "core/exchange/evidence_reader.h"
#include "core/exchange/evidence_writer.h"
#include "core/journal/canonical_json.h"
#include "core/quantities/role_words.h"
#include "tests/core/exchange/evidence_support.h"

#include <stdexcept>

namespace loadwarden::tests {
namespace {

/// The same of one cycle.
std::string lostOf(const EvidenceRecord& record)
{
    const bool noStart = record.test && record.test->start == Instant{};
    std::string text;
    try {
        text = writeEvidence(record);
    } catch (const std::out_of_range& error) {
        const std::string_view why = error.what();
        const bool isSaid = why
                            == "evidence cannot state /test/start: it is needed and there is "
                               "no value for it";
        return noStart && isSaid ? "" : std::string(why);
    }
    const auto again = readEvidence(text, "exported", 1, nullptr);
    if (const auto* error = std::get_if<ReadError>(&again)) {
        return described(*error) + "in " + text;
    }
    return std::get<EvidenceRecord>(again) == record ? "" : "read as another record: " + text;
}

} // namespace

bool enter(Journal& journal, const std::string& kind, const nlohmann::json& body,
           const Entering& how)
{
    Envelope envelope;
    envelope.seq = journal.entries().back().seq + 1;
    envelope.recordedAt = {how.recorded, 0};
    envelope.happenedAt = {how.happened, 0};
    envelope.actor = how.who.id;
    envelope.role = how.who.id.empty() ? "" : std::string(wordOf(roleWords, how.who.role));
    envelope.workstation = "ws-1";
    envelope.kind = kind;
    envelope.subjects = how.subjects;
    envelope.reason = how.supersedes == 0 ? "" : "reason";
    envelope.supersedes = how.supersedes;
    envelope.body = canonicalJson(body);
    auto read = readEntry(envelope, Hash{});
    auto* const entry = std::get_if<Entry>(&read);
    if (entry == nullptr) {
        return false;
    }
    journal.write(std::move(*entry));
    return true;
}

std::vector<std::string> idsIn(const nlohmann::json& body, std::string_view prefix)
{
    std::vector<std::string> ids;
    const nlohmann::json flat = body.flatten();
    for (const auto& [place, value] : flat.items()) {
        if (value.is_string() && value.get<std::string>().starts_with(std::string(prefix) + '-')) {
            ids.push_back(value);
        }
    }
    return ids;
}

std::string lostInExport(const Journal& journal, const std::vector<std::string>& cycles)
{
    std::string lost;
    for (const std::string& cycle : cycles) {
        lost += lostOf(journal.fold(cycle).record);
    }
    return lost;
}

} // namespace loadwarden::tests
