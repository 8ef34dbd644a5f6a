#include "core/desk/sealing.h"

#include "core/store/posix_file.h"
#include "core/store/seal_key_file.h"

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

SealBook sealBookOf(Office& office)
{
    const Workplace& place = office.place();
    return {office.connection(),         office.store(),  place.clock, office.zone(),
            readSealKey(keyFile(place)), sealsFile(place)};
}

std::vector<Seal> keptSeals(const Workplace& place, const std::string& journalId)
{
    return sealsOutside(sealsFile(place), journalId);
}

} // namespace loadwarden
