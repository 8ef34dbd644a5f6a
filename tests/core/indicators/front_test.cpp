// Where a front stands, and what a sheet looks like.
#include "core/indicators/chemical.h"
#include "core/indicators/front.h"
#include "core/indicators/sheet_pattern.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

std::optional<int> boundaryAt(std::int64_t boundary, std::int64_t strip)
{
    ReadingDirections directions;
    directions.boundaryTenthsMm = boundary;
    directions.stripTenthsMm = strip;
    return boundaryOf(directions);
}

TEST(TheBoundary, IsToTheScaleOfTheDirections)
{
    EXPECT_EQ(boundaryAt(60, 120), 500);
    EXPECT_EQ(boundaryAt(1, 3), 333);
    EXPECT_EQ(boundaryAt(2, 3), 667);
}

TEST(TheBoundary, IsUnknownWhereItIsNotStatedOrCannotBe)
{
    EXPECT_FALSE(boundaryOf(std::nullopt));
    EXPECT_FALSE(boundaryOf(ReadingDirections{}));
    EXPECT_FALSE(boundaryAt(0, 120));
    EXPECT_FALSE(boundaryAt(-1, 120));
    EXPECT_FALSE(boundaryAt(120, 120));
    EXPECT_FALSE(boundaryAt(1, std::numeric_limits<std::int64_t>::max()));
    ReadingDirections half;
    half.stripTenthsMm = 120;
    EXPECT_FALSE(boundaryOf(half));
}

// Common practice, no source: a front that has entered the zone passes and need not fill it; one on
// the boundary or short of it does not.
TEST(AFront, PassesOnlyPastTheBoundaryAndItsTolerance)
{
    EXPECT_EQ(seenOfFront(500 + readingTolerance + 1, 500), Seen::frontInAcceptZone);
    EXPECT_EQ(seenOfFront(wholeStrip, 500), Seen::frontInAcceptZone);
    EXPECT_EQ(seenOfFront(500 + readingTolerance, 500), Seen::frontOnBoundary);
    EXPECT_EQ(seenOfFront(500, 500), Seen::frontOnBoundary);
    EXPECT_EQ(seenOfFront(500 - readingTolerance, 500), Seen::frontOnBoundary);
    EXPECT_EQ(seenOfFront(500 - readingTolerance - 1, 500), Seen::frontShortOfBoundary);
    EXPECT_EQ(seenOfFront(0, 500), Seen::frontShortOfBoundary);
}

TEST(ASheet, PassesOnlyWhereItIsUniformAndComplete)
{
    for (const SheetPattern pattern : everySheetPattern) {
        EXPECT_EQ(isGoodAnswer(seenOf(pattern)), pattern == SheetPattern::complete)
            << static_cast<int>(pattern);
    }
    EXPECT_EQ(seenOf(SheetPattern::damaged), Seen::unclear) << "nobody guesses";
}

TEST(ASheet, IsKnownAgainByItsCells)
{
    for (const SheetPattern pattern : everySheetPattern) {
        const bool isToldByCells =
            pattern != SheetPattern::damaged && pattern != SheetPattern::unclear;
        EXPECT_EQ(patternOf(cellsOf(pattern)),
                  isToldByCells ? std::optional(pattern) : std::nullopt)
            << static_cast<int>(pattern);
    }
}

TEST(ASheet, OneCellIsEnoughToFailIt)
{
    for (std::size_t cell = 0; cell < SheetCells{}.size(); ++cell) {
        for (const CellMark mark : {CellMark::part, CellMark::none}) {
            SheetCells cells = cellsOf(SheetPattern::complete);
            cells[cell] = mark;
            EXPECT_EQ(seenOf(patternOf(cells).value()), Seen::notUniform) << cell;
        }
        SheetCells open = cellsOf(SheetPattern::complete);
        open[cell] = CellMark::unmarked;
        EXPECT_FALSE(patternOf(open)) << cell;
    }
}

TEST(ASheet, OfManyKindsOfCellsIsNotUniform)
{
    SheetCells cells = cellsOf(SheetPattern::noChange);
    cells[0] = CellMark::part;
    EXPECT_EQ(patternOf(cells), SheetPattern::streaks);
    cells = cellsOf(SheetPattern::complete);
    cells[sheetSide + 1] = CellMark::part;
    EXPECT_EQ(patternOf(cells), SheetPattern::streaks) << "inside, but not in the middle";
}

} // namespace
} // namespace loadwarden
