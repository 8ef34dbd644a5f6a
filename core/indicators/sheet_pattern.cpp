#include "core/indicators/sheet_pattern.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// Cells from the nearest edge: 0 on the edge, 3 in the middle of seven.
int depthOf(std::size_t cell)
{
    const int column = static_cast<int>(cell) % sheetSide;
    const int row = static_cast<int>(cell) / sheetSide;
    return std::min({column, row, sheetSide - 1 - column, sheetSide - 1 - row});
}

bool areAll(const SheetCells& cells, CellMark mark)
{
    return std::ranges::all_of(cells, [mark](CellMark each) { return each == mark; });
}

} // namespace

Seen seenOf(SheetPattern pattern)
{
    switch (pattern) {
    case SheetPattern::complete: return Seen::uniformComplete;
    case SheetPattern::incomplete: return Seen::uniformIncomplete;
    case SheetPattern::paleCentre:
    case SheetPattern::paleEdge:
    case SheetPattern::streaks: return Seen::notUniform;
    case SheetPattern::noChange: return Seen::unchanged;
    case SheetPattern::damaged:
    case SheetPattern::unclear: return Seen::unclear;
    }
    return Seen::unclear;
}

SheetCells cellsOf(SheetPattern pattern)
{
    constexpr int middle = 2; // depth from which the centre is pale
    SheetCells cells{};
    for (std::size_t cell = 0; cell < cells.size(); ++cell) {
        const int column = static_cast<int>(cell) % sheetSide;
        switch (pattern) {
        case SheetPattern::complete: cells[cell] = CellMark::full; break;
        case SheetPattern::incomplete: cells[cell] = CellMark::part; break;
        case SheetPattern::paleCentre:
            cells[cell] = depthOf(cell) >= middle ? CellMark::none : CellMark::full;
            break;
        case SheetPattern::paleEdge:
            cells[cell] = depthOf(cell) == 0 ? CellMark::none : CellMark::full;
            break;
        case SheetPattern::streaks:
            cells[cell] = column == 1 || column == 4 ? CellMark::part : CellMark::full;
            break;
        case SheetPattern::noChange: cells[cell] = CellMark::none; break;
        case SheetPattern::damaged:
        case SheetPattern::unclear: break;
        }
    }
    return cells;
}

std::optional<SheetPattern> patternOf(const SheetCells& cells)
{
    if (std::ranges::find(cells, CellMark::unmarked) != cells.end()) {
        return std::nullopt;
    }
    if (areAll(cells, CellMark::full)) {
        return SheetPattern::complete;
    }
    if (areAll(cells, CellMark::part)) {
        return SheetPattern::incomplete;
    }
    if (areAll(cells, CellMark::none)) {
        return SheetPattern::noChange;
    }
    constexpr int middle = sheetSide / 2;
    bool isEdgeFull = true;
    bool isInsideFull = true;
    for (std::size_t cell = 0; cell < cells.size(); ++cell) {
        bool& isFull = depthOf(cell) == 0 ? isEdgeFull : isInsideFull;
        isFull = isFull && cells[cell] == CellMark::full;
    }
    if (isInsideFull) {
        return SheetPattern::paleEdge;
    }
    const bool isMiddlePale = cells[middle * sheetSide + middle] != CellMark::full;
    return isEdgeFull && isMiddlePale ? SheetPattern::paleCentre : SheetPattern::streaks;
}

} // namespace loadwarden
