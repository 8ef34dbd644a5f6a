#include "core/desk/upkeep.h"

#include "core/desk/recorder.h"
#include "core/desk/sealing.h"
#include "core/store/journal_reader.h"

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

} // namespace

OrRefusal<Backup> backUpJournal(Office& office, const SignedIn& who,
                                const std::filesystem::path& target, Progress& progress)
{
    {
        ReadSnapshot snapshot(office.connection());
        auto asked = authorFor(snapshot, who, Task::backUp, nullptr, office.now());
        if (auto* const refusal = std::get_if<Refusal>(&asked)) {
            return std::move(*refusal);
        }
    }
    SealBook seals = sealBookOf(office);
    return backUp(office.connection(), seals, target, progress);
}

Restored restoreJournal(const RestoreRequest& request, const Workplace& place, Progress& progress)
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
    const Restored restored = restoreBackup(whole, place.clock, zone, progress);
    // The journal begins anew here; the file from before is not to be worked in any more.
    HeadWitness(place.keep / "heads", cover.identity.id).note(restored.head);
    return restored;
}

} // namespace loadwarden
