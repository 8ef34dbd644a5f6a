#pragma once

#include "core/indicators/indicator.h"
#include "core/indicators/reading_result.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// What reaches the department from the floor, and how well its readers read (ACTS.md, 3b).

namespace loadwarden {

/// What may be wrong with a package when it is opened.
enum class PackageFault : std::uint8_t { wet, torn, unsealed, labelDiffers };

/// What somebody who opened an item, or was about to, found: it counts as a check of the package
/// and, with `indicator`, as one more indicator inside. Something must have been found.
struct ItemReported {
    std::optional<Seen> indicator; ///< inside: what is no good answer
    std::vector<PackageFault> faults;
    std::string place; ///< where it was found
    std::string by;    ///< who says so, by what he does there; empty: not said
    std::string note;
};

/// A question that was asked and answered. No patient is named.
struct QuestionLogged {
    std::string asked;
    std::string place; ///< from where
    std::string by;    ///< who asks, by what he does there; empty: not said
    std::string topic; ///< of the guidance that was shown; empty: none
    std::string label; ///< of the item in question; empty: none
    std::string lot;   ///< control number of its load; empty: none
    std::string answer;
    bool wasMisread = false; ///< an indicator, or what one means, had been misread
};

struct CheckedDrawing {
    std::string product; ///< pr-
    Seen drawn = Seen::unclear;
    ReadAs answer = ReadAs::unclear;
    std::int64_t ms = 0; ///< until it was given
};

/// A reading check that somebody finished, all drawings in their order. The same number draws the
/// same indicators of the same products.
struct ReadingCheckTaken {
    std::int64_t number = 1;
    std::vector<CheckedDrawing> drawings;
};

} // namespace loadwarden
