#pragma once

#include "core/store/journal_fault.h"
#include "tests/core/store/tampering/contents.h"

#include <random>
#include <span>
#include <string_view>

namespace loadwarden::testing {

/// What somebody without the workstation's key does to a journal.
struct Tampering {
    std::string_view name;
    /// Shows only by a seal or a head that is kept elsewhere.
    bool needsWitness = false;
    /// Does it, and says one fault by which it must be named.
    JournalFault (*act)(Contents& contents, std::mt19937_64& random) = nullptr;
};

/// The journal that is tampered with has this many entries, and seals in the database at every
/// `sealEvery`th of them; the last entries are not sealed there.
inline constexpr std::size_t entriesOfJournal = 34;
inline constexpr std::size_t sealEvery = 8;

[[nodiscard]] std::span<const Tampering> tamperings();

} // namespace loadwarden::testing
