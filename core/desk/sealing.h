#pragma once

#include "core/desk/office.h"
#include "core/journal/seal.h"
#include "core/store/seal_book.h"

#include <optional>

namespace loadwarden {

/// Makes this user's key for seals where there is none: once, before the first journal. A key that
/// was lost later is not replaced in silence.
void makeKeyIfNone(const Workplace& place);

/// Seals the newest entry with this user's key, into the journal and into a file outside it. Throws
/// StoreError, StoreFault::missing without a key.
Seal sealNow(Office& office);

/// Seals once a day; nullopt where there is nothing to do.
std::optional<Seal> sealDaily(Office& office);

/// What seals this journal with this user's key. Throws StoreError.
[[nodiscard]] SealBook sealBookOf(Office& office);

/// The seals of a journal that this user keeps outside it.
[[nodiscard]] std::vector<Seal> keptSeals(const Workplace& place, const std::string& journalId);

} // namespace loadwarden
