#pragma once

#include "core/journal/seal.h"
#include "core/quantities/clock.h"
#include "core/quantities/zone.h"
#include "core/store/journal_store.h"

#include <filesystem>
#include <optional>
#include <vector>

namespace loadwarden {

/// Seals a journal: into the database, and into a file outside it, in which a seal stands when the
/// database is put back to an older state or written anew.
class SealBook {
public:
    /// `outside` is a file of JSON Lines, made when it is needed; everything referred to outlives
    /// the book.
    SealBook(Connection& connection, JournalStore& store, const Clock& clock, Zone zone,
             SealKey key, std::filesystem::path outside);

    /// Seals the newest entry. Throws StoreFault::headChanged rather than seal what does not hold
    /// together, StoreFault::misuse for a journal that has not been begun.
    Seal seal();

    /// Seals if the last seal with this key is of another day of the zone, or if there is none;
    /// nullopt if there is nothing to do or nothing new to seal.
    std::optional<Seal> sealDaily();

private:
    Connection& m_connection;
    JournalStore& m_store;
    const Clock& m_clock;
    Zone m_zone;
    SealKey m_key;
    std::filesystem::path m_outside;
};

/// The seals of one journal in such a file, in their order; none when there is no file. Lines that
/// are no seals of that journal are left out.
[[nodiscard]] std::vector<Seal> sealsOutside(const std::filesystem::path& file,
                                             const std::string& journalId);

} // namespace loadwarden
