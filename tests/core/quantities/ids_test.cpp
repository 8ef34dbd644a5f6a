#include "core/quantities/clock.h"
#include "core/quantities/id_source.h"
#include "core/quantities/ids.h"

#include <gtest/gtest.h>

#include <set>
#include <stdexcept>
#include <string>
#include <type_traits>
#include <unordered_set>

namespace loadwarden {
namespace {

static_assert(!std::is_convertible_v<LoadId, SterilizerId>);
static_assert(!std::is_constructible_v<LoadId, SterilizerId>);
static_assert(!std::is_default_constructible_v<LoadId>);

TEST(Id, IsNeverEmpty)
{
    EXPECT_THROW(static_cast<void>(LoadId::fromString("")), std::invalid_argument);
    EXPECT_FALSE(LoadId::tryFromString(""));
    EXPECT_EQ(LoadId::tryFromString("load-1"), LoadId::fromString("load-1"));
    EXPECT_EQ(LoadId::fromString("load-1").str(), "load-1");
}

TEST(Id, OrdersAndHashes)
{
    const std::set<ItemLabel> ordered{ItemLabel::fromString("b"), ItemLabel::fromString("a")};
    EXPECT_EQ(ordered.begin()->str(), "a");
    const std::unordered_set<ItemLabel> hashed(ordered.begin(), ordered.end());
    EXPECT_TRUE(hashed.contains(ItemLabel::fromString("b")));
}

TEST(RandomIdSource, GivesDifferentIdsOfOneForm)
{
    RandomIdSource source;
    std::set<std::string> seen;
    for (int i = 0; i < 1000; ++i) {
        const std::string id = source.next("load");
        ASSERT_EQ(id.size(), 5U + 32U) << id;
        ASSERT_TRUE(id.starts_with("load-")) << id;
        ASSERT_EQ(id.find_first_not_of("0123456789abcdef", 5), std::string::npos) << id;
        ASSERT_TRUE(seen.insert(id).second) << id;
    }
}

TEST(CountingIdSource, Counts)
{
    CountingIdSource source;
    EXPECT_EQ(source.next("load"), "load-1");
    EXPECT_EQ(source.next("item"), "item-2");
}

TEST(FixedClock, StandsStillUntilItIsSet)
{
    FixedClock clock(Instant{5});
    EXPECT_EQ(clock.now(), Instant{5});
    clock.set(Instant{7});
    EXPECT_EQ(static_cast<const Clock&>(clock).now(), Instant{7});
}

TEST(SystemClock, GoesForward)
{
    const SystemClock clock;
    const Instant first = clock.now();
    EXPECT_GT(first, *parseInstant("2020-01-01T00:00Z"));
    EXPECT_LE(first, clock.now());
}

} // namespace
} // namespace loadwarden
