#pragma once

#include "core/desk/sign_in.h"
#include "core/journal/seal.h"
#include "core/store/seal_book.h"

#include <optional>

namespace loadwarden {

/// Makes this user's key for seals where there is none: once, before the first journal. A key that
/// was lost later is not replaced in silence.
void makeKeyIfNone(const Workplace& place);

/// A key by which this journal is sealed from now on.
struct NewSealKey {
    SealPublicKey key;
    bool wasThere = false; ///< the file was there already: only this journal did not know it
    Appended appended;
    Seal seal; ///< of the entry that records it
};

/// Makes a new key where this user has none any more, or takes the one that there is and that this
/// journal does not know, records it, and seals with it. A supervisor's. A key that the journal
/// knows is refused. Throws StoreError where the file cannot be read or written.
[[nodiscard]] OrRefusal<NewSealKey> recordSealKey(Office& office, const SignedIn& who,
                                                  const Signature& signature,
                                                  const std::string& why);

/// Seals the newest entry with this user's key, into the journal and into a file outside it. Throws
/// StoreError, StoreFault::missing without a key, denied where the journal does not know it.
Seal sealNow(Office& office);

/// Seals once a day; nullopt where there is nothing to do.
std::optional<Seal> sealDaily(Office& office);

/// What seals this journal with this user's key. Throws StoreError as sealNow() does.
[[nodiscard]] SealBook sealBookOf(Office& office);

/// The seals of a journal that this user keeps outside it.
[[nodiscard]] std::vector<Seal> keptSeals(const Workplace& place, const std::string& journalId);

} // namespace loadwarden
