#pragma once

#include "core/store/read_snapshot.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// A load or test as the index of cycles has it: as last said, corrected or not. What stands is for
/// the fold to say.
struct FoundCycle {
    std::string id;            ///< ld-
    std::string sterilizer;    ///< sz-; empty: not said
    std::string lot;           ///< lot control number; empty: not said
    std::string purpose;       ///< a word of core/acts/ACTS.md; importedPurpose; empty: not said
    std::int64_t at = 0;       ///< ms of UTC: start as shown, or, before it was said, when reserved
    std::int64_t counter = -1; ///< -1: not said
    bool hasVials = false;     ///< anything was said of a vial of it
    bool hasTrouble = false;   ///< anything of it may have failed
    bool hasEnded = false;     ///< an end was said
    std::int64_t disposed = 0; ///< seq of its newest disposition or import; 0: none
    std::int64_t newest = 0;   ///< seq of the newest entry about it
};

/// Where a list of cycles, the newest first, goes on: behind this one.
struct CyclePlace {
    std::int64_t at = INT64_MAX; ///< FoundCycle::at; as it is: before the newest of all
    std::string cycle;           ///< ld-

    friend bool operator==(const CyclePlace&, const CyclePlace&) = default;
};

/// A lot control number that was said, and of which cycle; one that was imported in capitals, as
/// capitalLot() makes it.
struct FoundLot {
    std::string lot;
    std::string cycle; ///< ld-
};

/// A label that was said, and of which item in which load.
struct FoundLabel {
    std::string label; ///< as written
    std::string item;  ///< it-; empty: of a load that was imported
    std::string cycle; ///< ld-
};

/// A vial that is being incubated, or should have been read.
struct FoundVial {
    std::string id;             ///< bv-
    std::string cycle;          ///< ld-
    std::string product;        ///< pr-; empty: not said
    std::string incubator;      ///< in-; empty: not said
    std::int64_t incubated = 0; ///< ms of UTC when its incubation began; 0: not said
    std::int64_t newest = 0;    ///< seq of the newest entry about it
};

/// Finds cycles, items and vials in a journal of any length. At most as many rows as asked for.
/// Everything throws StoreError.
class Finder {
public:
    explicit Finder(ReadSnapshot& snapshot) : m_snapshot(snapshot) {}

    /// Lot control numbers that begin so, in the order of their bytes. All when it is empty.
    [[nodiscard]] std::vector<FoundLot> lotsFrom(std::string_view beginning, std::int64_t most);

    /// Labels that begin so, however they are written: blanks and the case of A to Z do not matter.
    [[nodiscard]] std::vector<FoundLabel> labelsFrom(std::string_view beginning, std::int64_t most);

    /// Exactly that label, compared so: the newest cycle first, however many there are.
    [[nodiscard]] std::vector<FoundLabel> labelled(std::string_view label, std::size_t most);

    /// The cycle of that id; nullopt when nobody named it.
    [[nodiscard]] std::optional<FoundCycle> cycle(std::string_view id);

    /// Cycles without any disposition, the oldest first.
    [[nodiscard]] std::vector<FoundCycle> openCycles(std::int64_t most);

    /// Those of them that are no test, which nobody signs, the oldest first.
    [[nodiscard]] std::vector<FoundCycle> openLoads(std::int64_t most);

    /// Cycles that began from a moment on (ms of UTC) and of which something was recorded after
    /// their newest disposition, the oldest first.
    [[nodiscard]] std::vector<FoundCycle> saidAfterDisposition(std::int64_t from,
                                                               std::int64_t most);

    /// Those that began from one moment to another, both included (ms of UTC); of one sterilizer
    /// where it is named.
    [[nodiscard]] std::vector<FoundCycle> cyclesBetween(std::string_view sterilizer,
                                                        std::int64_t from, std::int64_t to,
                                                        std::int64_t most);

    /// Those that come behind a place where the newest come first and that did not begin before
    /// `from` (ms of UTC); of one sterilizer where it is named. So a list of any length is read
    /// piece by piece, and no piece costs more than another.
    [[nodiscard]] std::vector<FoundCycle> newestBehind(std::string_view sterilizer,
                                                       const CyclePlace& place, std::int64_t from,
                                                       std::int64_t most);

    /// Whether an item whose label begins so, as labelsFrom() compares, was said to be in a cycle.
    [[nodiscard]] bool hasLabel(std::string_view cycle, std::string_view beginning);

    /// Vials whose incubation began and that have not been read without a doubt, lost or voided,
    /// the longest incubated first.
    [[nodiscard]] std::vector<FoundVial> openVials(std::int64_t most);

    /// All vials of a cycle.
    [[nodiscard]] std::vector<FoundVial> vialsOf(std::string_view cycle);

    /// Controls that were said to be of a product's lot (pl-) or for a load (ld-).
    [[nodiscard]] std::vector<std::string> controlsOf(std::string_view reason, std::int64_t most);

private:
    ReadSnapshot& m_snapshot;
};

/// The least text that is greater than all that begin so, compared by bytes; empty: there is none.
/// The text is UTF-8, and so is what is returned.
[[nodiscard]] std::string behindAllFrom(std::string_view beginning);

} // namespace loadwarden
