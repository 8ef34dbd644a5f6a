#include "core/sterilizers/clock_offset.h"
#include "core/sterilizers/cycle_order.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

constexpr std::int64_t minute = 60'000;

CycleTimes ran(std::int64_t start, std::optional<std::int64_t> end,
               std::optional<std::int64_t> counter = {})
{
    CycleTimes times;
    times.start = Instant{start};
    if (end) {
        times.end = Instant{*end};
    }
    times.counter = counter;
    return times;
}

TEST(CycleOrder, EndingInTheMinuteInWhichTheNextBeginsIsBefore)
{
    const CycleTimes next = ran(10 * minute, 20 * minute);
    EXPECT_TRUE(isBefore(ran(0, 10 * minute + 59'999), next));
    EXPECT_FALSE(isBefore(ran(0, 11 * minute), next));
    EXPECT_TRUE(isBefore(ran(9 * minute, {}), next)) << "without an end the start stands for it";
}

TEST(CycleOrder, CountersComeBeforeTheClockWhereBothHaveOne)
{
    EXPECT_TRUE(isBefore(ran(50 * minute, 60 * minute, 1), ran(10 * minute, 20 * minute, 2)));
    EXPECT_FALSE(isBefore(ran(0, minute, 2), ran(10 * minute, 20 * minute, 1)));
    EXPECT_TRUE(isBefore(ran(0, minute, 2), ran(10 * minute, 20 * minute)));
}

TEST(CycleOrder, KnowsNoOrderWithoutAStart)
{
    CycleTimes unknown;
    unknown.end = Instant{minute};
    EXPECT_FALSE(isBefore(unknown, ran(10 * minute, 20 * minute)));
    EXPECT_FALSE(isBefore(ran(0, minute), unknown));
    unknown.counter = 1;
    EXPECT_TRUE(isBefore(unknown, ran(10 * minute, 20 * minute, 2)));
}

TEST(CycleOrder, SaysWhereCounterAndClockDisagree)
{
    EXPECT_TRUE(countersDisagree(ran(20, {}, 1), ran(10, {}, 2)));
    EXPECT_TRUE(countersDisagree(ran(10, {}, 2), ran(20, {}, 1)));
    EXPECT_FALSE(countersDisagree(ran(10, {}, 1), ran(10, {}, 2)));
    EXPECT_TRUE(countersDisagree(ran(10, {}, 2), ran(20, {}, 2)));
    EXPECT_FALSE(countersDisagree(ran(20, {}), ran(10, {}, 2)));
}

TEST(ClockOffset, IsTheNewestThatWasValidThen)
{
    const std::vector<ClockOffset> offsets{{Instant{100}, Duration{5}},
                                           {Instant{300}, Duration{7}},
                                           {Instant{300}, Duration{8}},
                                           {Instant{200}, Duration{6}}};
    EXPECT_EQ(offsetAt(offsets, Instant{99}), std::nullopt);
    EXPECT_EQ(offsetAt(offsets, Instant{100}), Duration{5});
    EXPECT_EQ(offsetAt(offsets, Instant{299}), Duration{6});
    EXPECT_EQ(offsetAt(offsets, Instant{300}), Duration{8});
}

} // namespace
} // namespace loadwarden
