#include "core/store/backup.h"

#include "core/journal/canonical_json.h"
#include "core/store/file_copy.h"
#include "core/store/file_system.h"
#include "core/store/journal_reader.h"
#include "core/store/lot_numbers.h"
#include "core/store/migration.h"

#include <nlohmann/json.hpp>

namespace loadwarden {
namespace {

namespace fs = std::filesystem;

void refuseExisting(const fs::path& target)
{
    if (fs::exists(target)) {
        throw StoreError(StoreFault::exists, "There is a file " + target.string() + " already.",
                         "Choose another name; nothing is written over a file.");
    }
}

fs::path partOf(const fs::path& target)
{
    return target.string() + ".part";
}

VerifyReport verifyFile(const fs::path& file, const VerifyRequest& request, Progress& progress)
{
    Connection connection(SqliteFile{file}, {.access = Access::read});
    checkSchema(connection, migrations());
    return verifyJournal(connection, request, progress);
}

StoreError unsound(const fs::path& file, const VerifyReport& report, const std::string& next)
{
    if (report.cancelled) {
        return {StoreFault::misuse, "It was cancelled; nothing was made of " + file.string() + '.',
                "Begin anew when there is time."};
    }
    return {StoreFault::damaged,
            file.string() + " does not verify: " + sentenceOf(report.faults.front()), next,
            std::to_string(report.faultCount) + " faults"};
}

JournalTime newestRecorded(Connection& connection)
{
    ReadSnapshot snapshot(connection);
    JournalReader reader(snapshot);
    const auto entry = reader.entry(reader.head().seq);
    EntryHeader header;
    if (!entry || !readHeader(entry->bytes, header)) {
        throw engineError(StoreFault::damaged, "the newest entry cannot be read");
    }
    return header.recordedAt;
}

/// Skips numbers and appends the entry, in one transaction.
Restored goOnFrom(const fs::path& file, const VerifyReport& report, const RestoreRequest& request,
                  const Clock& clock, const Zone& zone)
{
    Connection connection(SqliteFile{file});
    migrate(connection, migrations(), clock);
    Restored restored;
    restored.backupHead = report.head;
    restored.backupTime = newestRecorded(connection).at;
    JournalStore store(connection, clock, zone);
    EntryDraft draft;
    draft.happenedAt = journalTime(clock.now(), zone);
    draft.workstation = request.workstation;
    draft.kind = restoredKind;
    draft.body = canonicalJson({{"through", report.head.seq}});
    WriteTransaction transaction(connection);
    skipLots(transaction, restored.backupTime, clock.now(), zone);
    restored.head = std::get<Appended>(store.append(transaction, std::span(&draft, 1))).head;
    transaction.commit();
    return restored;
}

} // namespace

Backup backUp(Connection& connection, SealBook& seals, const fs::path& target, Progress& progress)
{
    refuseExisting(target);
    return backUpSealed(connection, seals.seal(), target, progress);
}

Backup backUpSealed(Connection& connection, const Seal& seal, const fs::path& target,
                    Progress& progress)
{
    refuseExisting(target);
    Backup backup;
    backup.file = target;
    backup.seal = seal;
    FileCopy copy(connection, partOf(target));
    backup.report =
        verifyFile(copy.path(), {.expected = {backup.seal.head}, .seals = {backup.seal}}, progress);
    if (!backup.report.sound()) {
        throw unsound(
            copy.path(), backup.report,
            "There is no backup now. Verify the journal itself; if it is sound, try again "
            "on another disk.");
    }
    copy.publishAs(target);
    backup.bytes = fs::file_size(target);
    return backup;
}

Restored restoreBackup(const RestoreRequest& request, const Clock& clock, const Zone& zone,
                       Progress& progress)
{
    refuseExisting(request.target);
    refuseSharedFileSystem(request.target);
    const VerifyReport report = verifyFile(
        request.backup,
        {.expected = request.expected, .seals = request.seals, .keys = request.keys}, progress);
    if (!report.sound()) {
        throw unsound(request.backup, report, "Use another backup. Nothing was restored.");
    }
    Connection source(SqliteFile{request.backup}, {.access = Access::read});
    FileCopy copy(source, partOf(request.target));
    const Restored restored = goOnFrom(copy.path(), report, request, clock, zone);
    // Closing it has moved everything from the write-ahead log into the file.
    syncFile(copy.path());
    copy.publishAs(request.target);
    return restored;
}

} // namespace loadwarden
