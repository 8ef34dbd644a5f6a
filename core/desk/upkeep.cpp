#include "core/desk/upkeep.h"

#include "core/desk/pin_hash.h"
#include "core/desk/recorder.h"
#include "core/desk/sealing.h"
#include "core/store/act_entry.h"
#include "core/store/journal_reader.h"

#include <algorithm>
#include <set>

namespace loadwarden {
namespace {

/// What a backup says of itself, read without trusting it: restoring verifies it.
struct OnTheCover {
    JournalIdentity identity;
    Head head;
};

OnTheCover coverOf(const std::filesystem::path& backup)
{
    Connection connection(SqliteFile{backup}, {.access = Access::read});
    ReadSnapshot snapshot(connection);
    JournalReader reader(snapshot);
    const auto first = reader.entry(1);
    return {first ? readIdentity(first->bytes).value_or(JournalIdentity{}) : JournalIdentity{},
            reader.head()};
}

/// Hashes of PINs stand in it.
void makePrivate(const std::filesystem::path& file)
{
    std::filesystem::permissions(file, std::filesystem::perms::owner_read
                                           | std::filesystem::perms::owner_write);
}

std::optional<Refusal> whyNoBackup(Office& office, const SignedIn& who)
{
    ReadSnapshot snapshot(office.connection());
    auto asked = authorFor(snapshot, who, Task::backUp, nullptr, office.now());
    if (auto* const refusal = std::get_if<Refusal>(&asked)) {
        return std::move(*refusal);
    }
    return std::nullopt;
}

} // namespace

OrRefusal<Backup> backUpJournal(Office& office, const SignedIn& who,
                                const std::filesystem::path& target, Progress& progress)
{
    if (auto refusal = whyNoBackup(office, who)) {
        return *std::move(refusal);
    }
    SealBook seals = sealBookOf(office);
    Backup made = backUp(office.connection(), seals, target, progress);
    makePrivate(target);
    return made;
}

OrRefusal<Seal> sealForBackup(Office& office, const SignedIn& who)
{
    if (auto refusal = whyNoBackup(office, who)) {
        return *std::move(refusal);
    }
    return sealNow(office);
}

Backup writeBackup(const std::filesystem::path& journal, const Seal& seal,
                   const std::filesystem::path& target, Progress& progress)
{
    Connection connection(SqliteFile{journal}, {.access = Access::read});
    Backup made = backUpSealed(connection, seal, target, progress);
    makePrivate(target);
    return made;
}

namespace {

/// Those of whom an entry says that a PIN was set: by the journal alone, since the tables beside it
/// are in question.
std::set<std::string> peopleWithPins(ReadSnapshot& snapshot)
{
    std::set<std::string> people;
    Statement rows = snapshot.statement("SELECT " + snapshot.dialect().bytesOf("bytes")
                                        + " FROM j_entry WHERE kind = 'staff.pin-set'");
    while (rows.step()) {
        people.emplace(understand(rows.bytes(0), {}).subject("st"));
    }
    return people;
}

/// The hashes of PINs follow from no entry, but for whom there is one does. A hash that was put in
/// the place of another cannot be told from it.
void comparePins(Connection& connection, RebuildReport& report)
{
    const auto differs = [&report](std::string row, bool missing) {
        report.differences.push_back({"s_pin", std::move(row), missing});
        ++report.differenceCount;
    };
    ReadSnapshot snapshot(connection);
    std::set<std::string> expected = peopleWithPins(snapshot);
    Statement rows =
        snapshot.statement("SELECT staff, hash, wrong_tries, wait_until FROM s_pin ORDER BY staff");
    while (rows.step()) {
        const std::string staff = rows.text(0);
        if (expected.erase(staff) == 0) {
            differs(staff + ", for whom no entry sets a PIN", false);
        } else if (!isPinHash(rows.text(1)) || rows.integer(2) < 0) {
            differs(staff + " with what is no hash of a PIN, or with less than no wrong tries",
                    false);
        }
    }
    for (const std::string& staff : expected) {
        differs(staff + ", for whom an entry sets a PIN", true);
    }
}

} // namespace

RebuildReport compareTables(const std::filesystem::path& file, Progress& progress)
{
    const DesktopLock lock(file);
    Connection connection(SqliteFile{file}, {});
    RebuildReport report = rebuildIndexes(connection, {}, Rebuild::compare, progress);
    if (!report.cancelled) {
        comparePins(connection, report);
    }
    return report;
}

RestoredJournal restoreJournal(const RestoreRequest& request, Restoring restoring,
                               const Workplace& place, Progress& progress)
{
    RestoreRequest whole = request;
    const OnTheCover cover = coverOf(request.backup);
    for (const Seal& seal : keptSeals(place, cover.identity.id)) {
        // What was sealed after the backup is not in it, and that is no fault of the backup.
        if (seal.head.seq <= cover.head.seq) {
            whole.seals.push_back(seal);
        }
    }
    const Zone zone = Zone::find(cover.identity.timeZone).value_or(*Zone::find("UTC"));
    RestoredJournal done{.restored = restoreBackup(whole, place.clock, zone, progress)};
    makePrivate(request.target);
    HeadWitness witness(place.keep / "heads", cover.identity.id);
    if (const auto seen = witness.seen()) {
        done.lost = std::max<std::int64_t>(0, seen->seq - cover.head.seq);
    }
    if (restoring == Restoring::goOn) {
        // The journal begins anew here; the file from before is not to be worked in any more.
        witness.note(done.restored.head);
    }
    return done;
}

} // namespace loadwarden
