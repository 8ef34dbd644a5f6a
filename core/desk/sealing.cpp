#include "core/desk/sealing.h"

#include "core/desk/recorder.h"
#include "core/store/posix_file.h"
#include "core/store/seal_key_file.h"
#include "core/store/seal_keys.h"
#include "core/store/store_error.h"

#include <system_error>

namespace loadwarden {
namespace {

std::filesystem::path sealsFile(const Workplace& place)
{
    return place.keep / "seals.jsonl";
}

std::filesystem::path keyFile(const Workplace& place)
{
    return place.keep / "seal.key";
}

} // namespace

void makeKeyIfNone(const Workplace& place)
{
    std::error_code failure;
    if (!std::filesystem::exists(keyFile(place), failure) && !failure) {
        makePrivateFolder(place.keep);
        (void)createSealKey(keyFile(place));
    }
}

Seal sealNow(Office& office)
{
    return sealBookOf(office).seal();
}

std::optional<Seal> sealDaily(Office& office)
{
    return sealBookOf(office).sealDaily();
}

OrRefusal<NewSealKey> recordSealKey(Office& office, const SignedIn& who, const Signature& signature,
                                    const std::string& why)
{
    NewSealKey made;
    {
        // Nobody who may not makes a key.
        ReadSnapshot snapshot(office.connection());
        auto asked = authorFor(snapshot, who, Task::SealKeyRecorded, &signature, office.now());
        if (auto* const refusal = std::get_if<Refusal>(&asked)) {
            return std::move(*refusal);
        }
    }
    std::error_code failure;
    made.wasThere = std::filesystem::exists(keyFile(office.place()), failure) || failure;
    if (!made.wasThere) {
        makePrivateFolder(office.place().keep);
    }
    made.key = (made.wasThere ? readSealKey(keyFile(office.place()))
                              : createSealKey(keyFile(office.place())))
                   .publicKey();
    const ToRecord act{.act = SealKeyRecorded{.key = hexOf(made.key), .why = why},
                       .subjects = {openingSubject}};
    auto recorded = office.record([&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
        auto asked = authorFor(snapshot, who, Task::SealKeyRecorded, &signature, office.now());
        if (auto* const refusal = std::get_if<Refusal>(&asked)) {
            return std::move(*refusal);
        }
        if (isAmong(sealKeysOf(snapshot), made.key)) {
            return Refusal{.why = RefusalWhy::keyKnown};
        }
        auto& author = std::get<Author>(asked);
        if (auto refusal = office.whyNoEntries(std::span(&act, 1), author)) {
            return *std::move(refusal);
        }
        return Plan{.author = std::move(author), .acts = {act}, .inside = {}};
    });
    if (auto* const refusal = std::get_if<Refusal>(&recorded)) {
        return std::move(*refusal);
    }
    made.appended = std::get<Appended>(recorded);
    made.seal = sealNow(office);
    return made;
}

SealBook sealBookOf(Office& office)
{
    const Workplace& place = office.place();
    const SealKey key = readSealKey(keyFile(place));
    {
        ReadSnapshot snapshot(office.connection());
        const std::vector<JournalKey> known = sealKeysOf(snapshot);
        if (!known.empty() && !isAmong(known, key.publicKey())) {
            throw StoreError(StoreFault::denied,
                             "This journal does not know this user's key for seals.",
                             "Put back the key that was there; if it is lost, a supervisor records "
                             "the new one (journal new-key).");
        }
    }
    return {office.connection(), office.store(), place.clock, office.zone(), key, sealsFile(place)};
}

std::vector<Seal> keptSeals(const Workplace& place, const std::string& journalId)
{
    return sealsOutside(sealsFile(place), journalId);
}

} // namespace loadwarden
