#pragma once

#include "core/journal/hash.h"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace loadwarden {

/// The newest entry of a journal, or of a part of it: its number and its hash. Nothing yet: 0.
struct Head {
    std::int64_t seq = 0;
    Hash hash;

    friend bool operator==(const Head&, const Head&) = default;
};

enum class ChainFaultKind : std::uint8_t {
    unreadable, ///< the bytes do not begin as an entry does
    number,     ///< the entry calls itself another than it stands as
    edited,     ///< the bytes are not those of the stored hash
    unlinked    ///< the entry does not name the hash of the one before
};

/// Something wrong with one entry of the chain.
struct ChainFault {
    std::int64_t seq = 0; ///< as it stands, from 1
    ChainFaultKind kind{};

    friend bool operator==(const ChainFault&, const ChainFault&) = default;
};

/// What an entry says of its place in the chain.
struct Place {
    std::int64_t seq = 0;
    Hash prev;
};

/// Reads only the first two members of an entry; nullopt when it does not begin as one. Does not
/// allocate.
[[nodiscard]] std::optional<Place> placeOf(std::string_view bytes) noexcept;

/// Follows a journal entry by entry and says where its chain is broken. After a fault it goes on
/// from what stands, so that one edit is one finding and not a thousand.
class ChainWalk {
public:
    /// Begins behind an entry that is already trusted.
    explicit ChainWalk(const Head& after = {}) : m_head(after) {}

    /// Takes the next entry as stored, with the hash stored beside it.
    void take(std::string_view bytes, const Hash& stored);

    [[nodiscard]] const Head& head() const { return m_head; }
    [[nodiscard]] const std::vector<ChainFault>& faults() const { return m_faults; }

private:
    Head m_head;
    std::vector<ChainFault> m_faults;
};

} // namespace loadwarden
