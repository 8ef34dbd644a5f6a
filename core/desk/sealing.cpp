#include "core/desk/sealing.h"

#include "core/store/posix_file.h"
#include "core/store/seal_book.h"
#include "core/store/seal_key_file.h"

#include <system_error>

namespace loadwarden {
namespace {

std::filesystem::path sealsFile(const Office& office)
{
    return office.place().keep / "seals.jsonl";
}

std::filesystem::path keyFile(const Workplace& place)
{
    return place.keep / "seal.key";
}

SealBook bookOf(Office& office)
{
    return {office.connection(),
            office.store(),
            office.place().clock,
            office.zone(),
            readSealKey(keyFile(office.place())),
            sealsFile(office)};
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
    return bookOf(office).seal();
}

std::optional<Seal> sealDaily(Office& office)
{
    return bookOf(office).sealDaily();
}

std::vector<Seal> keptSeals(const Office& office)
{
    return sealsOutside(sealsFile(office), office.identity().id);
}

} // namespace loadwarden
