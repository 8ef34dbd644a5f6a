#include "core/store/verify.h"

#include "core/store/attachments.h"
#include "core/store/journal_identity.h"
#include "core/store/journal_reader.h"
#include "core/store/verify_entries.h"
#include "core/store/verify_seals.h"

#include <charconv>

namespace loadwarden {
namespace {

std::int64_t greatestSeq(ReadSnapshot& snapshot)
{
    Statement row = snapshot.statement("SELECT MAX(seq) FROM j_entry");
    return row.step() && !row.isNull(0) ? row.integer(0) : 0;
}

void verifyStart(ReadSnapshot& snapshot, const Head& after, VerifyReport& report)
{
    const auto entry = JournalReader(snapshot).entry(after.seq);
    if (!entry || entry->hash != after.hash || hashOf(entry->bytes) != after.hash) {
        addFault(report, {JournalFaultKind::start, after.seq, ""});
    }
}

/// The id of the journal, empty when it has none.
std::string verifyOpening(ReadSnapshot& snapshot, VerifyReport& report)
{
    const auto entry = JournalReader(snapshot).entry(1);
    const auto identity = entry ? readIdentity(entry->bytes) : std::nullopt;
    if (!identity) {
        addFault(report, {JournalFaultKind::opening, 1, ""});
        return {};
    }
    return identity->id;
}

void verifyHeadRow(ReadSnapshot& snapshot, const Head& head, VerifyReport& report)
{
    Statement row = snapshot.statement("SELECT one, seq, hash FROM p_head");
    if (!row.step() || row.integer(1) != head.seq || row.text(2) != hexOf(head.hash)) {
        addFault(report, {JournalFaultKind::headRow, head.seq, ""});
    }
}

/// What a journal of an older schema has not, it need not guard.
constexpr std::int64_t schemaOfAttachments = 4;

std::int64_t schemaIn(ReadSnapshot& snapshot)
{
    Statement row = snapshot.statement("SELECT MAX(version) FROM s_schema");
    return row.step() && !row.isNull(0) ? row.integer(0) : 0;
}

void verifyGuards(ReadSnapshot& snapshot, VerifyReport& report)
{
    std::vector<const char*> tables{"j_entry", "j_seal", "j_lot"};
    if (schemaIn(snapshot) >= schemaOfAttachments) {
        tables.push_back("j_attachment");
    }
    for (const char* table : tables) {
        Statement row = snapshot.statement(snapshot.dialect().countGuards());
        row.bind(":table", table);
        const auto expected = static_cast<std::int64_t>(snapshot.dialect().guards(table).size());
        if (!row.step() || row.integer(0) != expected) {
            addFault(report, {JournalFaultKind::guards, 0, table});
        }
    }
}

void verifyPages(ReadSnapshot& snapshot, VerifyReport& report)
{
    const std::string query = snapshot.dialect().checkPages();
    if (query.empty()) {
        return;
    }
    Statement rows = snapshot.statement(query);
    while (rows.step()) {
        if (const std::string said = rows.text(0); said != "ok") {
            addFault(report, {JournalFaultKind::file, 0, said});
        }
    }
}

void verifyAll(ReadSnapshot& snapshot, const VerifyRequest& request, Progress& progress,
               VerifyReport& report)
{
    const Head after = request.after.value_or(Head{});
    const std::int64_t total = greatestSeq(snapshot) - after.seq;
    if (request.after) {
        verifyStart(snapshot, after, report);
    }
    const std::string id = verifyOpening(snapshot, report);
    EntryPass pass(snapshot, after, report);
    report.head = after;
    while (pass.block()) {
        if (!progress.goOn(report.entries, total)) {
            report.cancelled = true;
            return;
        }
    }
    verifyHeadRow(snapshot, report.head, report);
    if (!verifyAttachments(snapshot, pass.named(), progress, report)) {
        report.cancelled = true;
        return;
    }
    verifySeals(snapshot, id, request, report);
    verifyGuards(snapshot, report);
    if (request.pages) {
        verifyPages(snapshot, report);
    }
}

} // namespace

std::optional<Head> parseHead(std::string_view text)
{
    Head head;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), head.seq);
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    if (error != std::errc{} || head.seq < 1 || !text.starts_with(':')) {
        return std::nullopt;
    }
    const auto hash = parseHash(text.substr(1));
    if (!hash) {
        return std::nullopt;
    }
    head.hash = *hash;
    return head;
}

VerifyReport verifyJournal(Connection& connection, const VerifyRequest& request, Progress& progress)
{
    VerifyReport report;
    ReadSnapshot snapshot(connection);
    try {
        verifyAll(snapshot, request, progress, report);
    } catch (const StoreError& error) {
        if (error.fault() != StoreFault::damaged && error.fault() != StoreFault::device) {
            throw;
        }
        addFault(report,
                 {JournalFaultKind::file, 0,
                  "behind entry " + std::to_string(report.head.seq) + ": " + error.detail()});
    }
    return report;
}

} // namespace loadwarden
