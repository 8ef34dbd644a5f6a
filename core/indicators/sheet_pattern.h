#pragma once

#include "core/indicators/indicator.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>

namespace loadwarden {

/// How far a place of a sheet has changed; nobody has said so yet: unmarked.
enum class CellMark : std::uint8_t { unmarked, full, part, none };

/// A sheet is looked at in so many places across and down.
inline constexpr int sheetSide = 7;

/// Row by row from the top left.
using SheetCells = std::array<CellMark, static_cast<std::size_t>(sheetSide) * sheetSide>;

/// What a whole sheet looks like.
enum class SheetPattern : std::uint8_t {
    complete,   ///< uniform, and its end colour everywhere
    incomplete, ///< uniform, short of its end colour
    paleCentre,
    paleEdge,
    streaks, ///< or patches, wherever they are
    noChange,
    damaged, ///< torn, wet or stained, so that it cannot be judged
    unclear
};

inline constexpr SheetPattern everySheetPattern[] = {
    SheetPattern::complete, SheetPattern::incomplete, SheetPattern::paleCentre,
    SheetPattern::paleEdge, SheetPattern::streaks,    SheetPattern::noChange,
    SheetPattern::damaged,  SheetPattern::unclear};

/// What is recorded of a sheet that looks so. A damaged one shows neither: nobody guesses.
[[nodiscard]] Seen seenOf(SheetPattern pattern);

/// A sheet that looks so; unmarked where its places do not tell it (damaged, unclear).
[[nodiscard]] SheetCells cellsOf(SheetPattern pattern);

/// What a marked sheet looks like; nullopt while a place is unmarked. Never complete unless every
/// place is full.
[[nodiscard]] std::optional<SheetPattern> patternOf(const SheetCells& cells);

} // namespace loadwarden
