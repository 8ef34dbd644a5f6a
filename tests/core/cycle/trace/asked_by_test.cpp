#include "core/cycle/trace/asked_by.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

constexpr Quantity celsius(std::int64_t whole)
{
    return {Unit::celsius, whole * 1000};
}

/// 132 °C or 270 °F, which are 0.22 K apart; 4 min, 20 min of drying.
CycleSpecification wrapped()
{
    CycleSpecification specification;
    specification.id = "s";
    specification.revision = 2;
    specification.method = Method::steam;
    specification.airRemoval = AirRemoval::prevacuum;
    specification.limits = {
        {Parameter::temperature, {celsius(132), {Unit::fahrenheit, 270'000}}, {celsius(135)}},
        {Parameter::exposure, {{Unit::minutes, 4'000}}, {{Unit::seconds, 360'000}}},
        {Parameter::drying, {{Unit::minutes, 20'000}}, {}}};
    return specification;
}

TraceMapping mappedIn(std::initializer_list<RecorderUnit> units)
{
    TraceMapping mapping;
    mapping.columns = units.size() + 3;
    mapping.channels.push_back({1, "unused", ChannelRole::notUsed, RecorderUnit::celsius});
    mapping.channels.push_back(
        {2, "P", ChannelRole::chamberPressure, RecorderUnit::kPa, PressureZero::absolute});
    std::size_t column = 3;
    for (const RecorderUnit unit : units) {
        mapping.channels.push_back({column++, "T", ChannelRole::chamberTemperature, unit});
    }
    return mapping;
}

TEST(AskedBySpecification, TakesItsLimits)
{
    const AskedOfTrace asked =
        askedBy(wrapped(), mappedIn({RecorderUnit::celsius, RecorderUnit::kelvin}),
                AbsolutePressure::fromKPaThousandths(95'300));
    EXPECT_TRUE(asked.isSteam);
    EXPECT_FALSE(asked.isLeakTest);
    EXPECT_EQ(asked.airRemoval, AirRemoval::prevacuum);
    EXPECT_DOUBLE_EQ(asked.band.leastCelsius, 132);
    EXPECT_DOUBLE_EQ(asked.band.mostCelsius, 135);
    // Places among the channels that are read: the pressure is the first of them.
    EXPECT_THAT(asked.band.required, ElementsAre(1, 2));
    EXPECT_DOUBLE_EQ(asked.leastExposureSeconds, 240);
    EXPECT_DOUBLE_EQ(asked.mostExposureSeconds, 360);
    EXPECT_DOUBLE_EQ(asked.leastDryingSeconds, 1200);
    EXPECT_DOUBLE_EQ(asked.atmosphereKPa, 95.3);
}

TEST(AskedBySpecification, JudgesByTheLimitInTheRecordersUnit)
{
    // (270 - 32) / 1.8
    EXPECT_NEAR(askedBy(wrapped(), mappedIn({RecorderUnit::fahrenheit}), {}).band.leastCelsius,
                132.222'222'222, 1e-9);
    // Without a most of its own, that in °C.
    EXPECT_DOUBLE_EQ(askedBy(wrapped(), mappedIn({RecorderUnit::fahrenheit}), {}).band.mostCelsius,
                     135);
    // In two units the narrower.
    EXPECT_NEAR(askedBy(wrapped(), mappedIn({RecorderUnit::celsius, RecorderUnit::fahrenheit}), {})
                    .band.leastCelsius,
                132.222'222'222, 1e-9);
}

TEST(AskedBySpecification, GoesBySettingsWhereThereIsNoLeastLimit)
{
    CycleSpecification specification = wrapped();
    specification.limits.clear();
    specification.settings = {.temperature = celsius(134),
                              .inFahrenheit = {},
                              .exposureMs = 180'000,
                              .dryingMs = 600'000};
    const AskedOfTrace asked = askedBy(specification, mappedIn({RecorderUnit::celsius}), {});
    EXPECT_DOUBLE_EQ(asked.band.leastCelsius, 134);
    EXPECT_EQ(asked.band.mostCelsius, unbounded);
    EXPECT_DOUBLE_EQ(asked.leastExposureSeconds, 180);
    EXPECT_TRUE(std::isnan(asked.mostExposureSeconds));
    EXPECT_DOUBLE_EQ(asked.leastDryingSeconds, 600);
    EXPECT_TRUE(std::isnan(asked.atmosphereKPa));
}

TEST(AskedBySpecification, RequiresNothingWhereAnythingWouldBeInTheBand)
{
    const AskedOfTrace asked = askedBy(CycleSpecification{}, mappedIn({RecorderUnit::celsius}), {});
    EXPECT_THAT(asked.band.required, IsEmpty());
    EXPECT_TRUE(asked.isSteam) << "a method that is not known";
    EXPECT_TRUE(std::isnan(asked.leastExposureSeconds));
    EXPECT_TRUE(std::isnan(asked.leastDryingSeconds));

    Trace trace{{0, 60, 120},
                {{"P", ChannelRole::chamberPressure, {300, 300, 300}},
                 {"T", ChannelRole::chamberTemperature, {133, 133, 133}}}};
    EXPECT_THAT(evaluate(trace, asked).problems,
                ::testing::Contains(TraceProblem::requiredMissing));
}

TEST(AskedBySpecification, KnowsOtherMethodsAndLeakTests)
{
    CycleSpecification specification = wrapped();
    specification.method = Method::dryHeat;
    EXPECT_FALSE(askedBy(specification, mappedIn({RecorderUnit::celsius}), {}).isSteam);
    specification.method = Method::steam;
    specification.purpose = Purpose::leak;
    const AskedOfTrace leak = askedBy(specification, mappedIn({RecorderUnit::celsius}), {});
    EXPECT_TRUE(leak.isLeakTest);
    EXPECT_TRUE(std::isnan(leak.leastExposureSeconds)) << "it is neither held nor dried";
    EXPECT_TRUE(std::isnan(leak.mostExposureSeconds));
    EXPECT_TRUE(std::isnan(leak.leastDryingSeconds));
}

} // namespace
} // namespace loadwarden
