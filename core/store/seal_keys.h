#pragma once

#include "core/journal/seal.h"
#include "core/store/read_snapshot.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// A key by which a journal says that it is sealed.
struct JournalKey {
    SealPublicKey key;
    std::int64_t recorded = 0; ///< the entry that says so; 0: the first seal in the database does

    friend bool operator==(const JournalKey&, const JournalKey&) = default;
};

/// The keys of a journal: that of its first seal, and those that an entry "seal-key.recorded"
/// names. None where it was never sealed: then every key is right for the first seal.
[[nodiscard]] std::vector<JournalKey> sealKeysOf(ReadSnapshot& snapshot);

[[nodiscard]] bool isAmong(const std::vector<JournalKey>& keys, const SealPublicKey& key);

[[nodiscard]] std::string hexOf(const SealPublicKey& key);

} // namespace loadwarden
