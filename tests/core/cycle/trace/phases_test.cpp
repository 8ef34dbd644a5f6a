#include "core/cycle/trace/phases.h"
#include "core/cycle/trace/saturation.h"
#include "trace_support.h"

#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

using support::atmosphere;
using support::Course;

struct Divided {
    Exposure exposure;
    Phases phases;
};

Divided divide(const Trace& trace, const Band& band, AirRemoval airRemoval,
               const TraceSettings& settings = {})
{
    Divided result;
    result.exposure = findExposure(trace, band, true, settings);
    result.phases = findPhases(trace, band, result.exposure, airRemoval, atmosphere, settings);
    return result;
}

std::vector<PhaseKind> kinds(const Phases& phases)
{
    std::vector<PhaseKind> found;
    for (const TracePhase& phase : phases.phases) {
        found.push_back(phase.kind);
    }
    return found;
}

void expectAt(const Boundary& boundary, double second, BoundaryRule rule)
{
    EXPECT_EQ(boundary.rule, rule);
    EXPECT_LE(boundary.at.earliest, second);
    EXPECT_GE(boundary.at.latest, second);
}

const std::vector<PhaseKind> allPhases{
    PhaseKind::airRemoval, PhaseKind::heating, PhaseKind::equilibration, PhaseKind::exposure,
    PhaseKind::exhaust,    PhaseKind::drying,  PhaseKind::airAdmission};

const Band band134 = support::bandOf(134, 137);

class PrevacuumPhases : public testing::TestWithParam<double> {};

TEST_P(PrevacuumPhases, LieWhereTheCourseHasThem)
{
    const double step = GetParam();
    const Course course = support::prevacuumCourse();
    const double lag = 12;
    const auto [exposure, phases] =
        divide(support::chamberOf(course, step, lag), band134, AirRemoval::prevacuum);
    ASSERT_EQ(kinds(phases), allPhases);
    const double held = saturationPressure(134);
    const double reached = support::passes(course, held, 540);
    const double left = support::passes(course, held, 960);

    const TracePhase& air = *phases.find(PhaseKind::airRemoval);
    const double leaves = support::passes(course, atmosphere - 2, 60);
    expectAt(air.begin, leaves, BoundaryRule::leftStartPressure);
    expectAt(air.end, support::passes(course, 8 + 2, 540), BoundaryRule::roseFromLastTrough);
    const TracePhase& heating = *phases.find(PhaseKind::heating);
    EXPECT_EQ(heating.begin.at, air.end.at);
    expectAt(heating.end, reached, BoundaryRule::firstChannelInBand);
    const TracePhase& exposed = *phases.find(PhaseKind::exposure);
    expectAt(exposed.begin, reached + lag, BoundaryRule::everyChannelInBand);
    expectAt(exposed.end, left, BoundaryRule::leftBand);
    EXPECT_LE(phases.find(PhaseKind::equilibration)->seconds.least, lag);
    EXPECT_GE(phases.find(PhaseKind::equilibration)->seconds.most, lag);
    const TracePhase& drying = *phases.find(PhaseKind::drying);
    expectAt(drying.begin, support::passes(course, atmosphere + 10, 960),
             BoundaryRule::fellToAtmosphere);
    expectAt(drying.end, support::passes(course, 7, 2340), BoundaryRule::roseFromVacuum);
    const double dried =
        support::passes(course, 7, 2340) - support::passes(course, atmosphere + 10, 960);
    EXPECT_LE(drying.seconds.least, dried);
    EXPECT_GE(drying.seconds.most, dried);
    EXPECT_LE(drying.seconds.most - drying.seconds.least, 2 * step + 1e-9);
    expectAt(phases.find(PhaseKind::airAdmission)->end,
             support::passes(course, atmosphere - 10, 2340), BoundaryRule::reachedAtmosphere);
}

INSTANTIATE_TEST_SUITE_P(Sampled, PrevacuumPhases, testing::Values(0.5, 1.0, 5.0, 7.0, 11.0));

TEST(Phases, CountPulsesWithTheirDepthAndHeight)
{
    const auto divided =
        divide(support::chamberOf(support::prevacuumCourse(), 1), band134, AirRemoval::prevacuum);
    const auto& pulses = divided.phases.pulses;
    ASSERT_EQ(pulses.size(), 3U);
    EXPECT_TRUE(divided.phases.pulsesSure);
    const double troughs[] = {180, 360, 540};
    const double peaks[] = {240, 420};
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_NEAR(pulses[i].depthKPa, 8, 1e-9);
        EXPECT_TRUE(pulses[i].belowAtmosphere);
        EXPECT_EQ(pulses[i].trough, (Moment{troughs[i] - 1, troughs[i] + 1}));
    }
    for (std::size_t i = 0; i < 2; ++i) {
        EXPECT_NEAR(pulses[i].heightKPa, 180, 1e-9);
        EXPECT_EQ(pulses[i].peak, (Moment{peaks[i] - 1, peaks[i] + 1}));
    }
    EXPECT_GE(pulses[2].heightKPa, saturationPressure(134));
}

TEST(Phases, AreNotSureOfPulsesThatSamplesAreTooFarApartToSee)
{
    const Trace sparse = support::chamberOf(support::prevacuumCourse(), 60);
    EXPECT_FALSE(divide(sparse, band134, AirRemoval::prevacuum).phases.pulsesSure);
}

TEST(Phases, OfSteamFlushHavePulsesAboveTheAtmosphere)
{
    const Course course = support::steamFlushCourse();
    const auto divided =
        divide(support::chamberOf(course, 1, 5), band134, AirRemoval::steamFlushPressurePulse);
    EXPECT_EQ(kinds(divided.phases), allPhases);
    const auto& pulses = divided.phases.pulses;
    ASSERT_EQ(pulses.size(), 4U);
    const double peaks[] = {90, 190, 290, 390};
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(pulses[i].heightKPa, 220, 1e-9);
        EXPECT_NEAR(pulses[i].depthKPa, 130, 1e-9);
        EXPECT_FALSE(pulses[i].belowAtmosphere);
        EXPECT_EQ(pulses[i].peak, (Moment{peaks[i] - 1, peaks[i] + 1}));
    }
    expectAt(divided.phases.find(PhaseKind::airRemoval)->end, support::passes(course, 132, 430),
             BoundaryRule::roseFromLastTrough);
}

TEST(Phases, OfGravityHaveNoPulsesAndDryAtTheAtmosphere)
{
    const Course course = support::gravityCourse();
    for (const AirRemoval airRemoval : {AirRemoval::gravity, AirRemoval::unknown}) {
        const auto divided =
            divide(support::chamberOf(course, 5), support::bandOf(121, 124), airRemoval);
        EXPECT_EQ(kinds(divided.phases),
                  (std::vector{PhaseKind::airRemoval, PhaseKind::heating, PhaseKind::equilibration,
                               PhaseKind::exposure, PhaseKind::exhaust, PhaseKind::drying}));
        EXPECT_TRUE(divided.phases.pulses.empty());
        const TracePhase& air = *divided.phases.find(PhaseKind::airRemoval);
        EXPECT_EQ(air.begin.rule, BoundaryRule::traceBegan);
        EXPECT_EQ(air.seconds.most, unbounded);
        expectAt(air.end, support::passes(course, atmosphere + 10, 240),
                 BoundaryRule::roseAboveAtmosphere);
        const TracePhase& drying = *divided.phases.find(PhaseKind::drying);
        expectAt(drying.begin, support::passes(course, atmosphere + 10, 2220),
                 BoundaryRule::fellToAtmosphere);
        EXPECT_EQ(drying.end.rule, BoundaryRule::traceEnded);
        EXPECT_EQ(drying.seconds.most, unbounded);
        EXPECT_NEAR(drying.seconds.least, 3'600 - drying.begin.at.latest, 1e-9);
    }
}

TEST(Phases, OfADynamicCycleWithoutPulsesHaveNoAirRemoval)
{
    const auto divided = divide(support::chamberOf(support::gravityCourse(), 5),
                                support::bandOf(121, 124), AirRemoval::prevacuum);
    EXPECT_EQ(divided.phases.find(PhaseKind::airRemoval), nullptr);
    EXPECT_TRUE(divided.phases.pulses.empty());
    EXPECT_TRUE(divided.phases.pulsesSure);
    EXPECT_EQ(divided.phases.find(PhaseKind::heating)->begin.rule, BoundaryRule::traceBegan);
}

TEST(Phases, TakeTheLastOfSeveralVacuumsAsTheEndOfDrying)
{
    Course course = support::prevacuumCourse();
    course.resize(11); // down to 5 kPa at 1140
    course.insert(course.end(), {{1500, 5},
                                 {1560, atmosphere},
                                 {1620, 5},
                                 {1980, 5},
                                 {2040, atmosphere},
                                 {2100, atmosphere}});
    const auto divided = divide(support::chamberOf(course, 1), band134, AirRemoval::prevacuum);
    expectAt(divided.phases.find(PhaseKind::drying)->end, support::passes(course, 7, 1980),
             BoundaryRule::roseFromVacuum);
}

TEST(Phases, EndWithTheTraceWhereItBreaksOff)
{
    const Course whole = support::prevacuumCourse();
    const auto cut = [&](double second) {
        Course course = whole;
        while (course.back().first > second) {
            course.pop_back();
        }
        course.emplace_back(second, support::at(whole, second));
        return divide(support::chamberOf(course, 1), band134, AirRemoval::prevacuum).phases;
    };
    EXPECT_EQ(cut(990).phases.back().kind, PhaseKind::exhaust);
    EXPECT_EQ(cut(990).phases.back().end.rule, BoundaryRule::traceEnded);
    EXPECT_EQ(cut(2000).phases.back().kind, PhaseKind::drying);
    EXPECT_EQ(cut(2000).phases.back().end.rule, BoundaryRule::traceEnded);
    EXPECT_NEAR(cut(2000).phases.back().seconds.least, 2'000 - 1'020, 10);
    EXPECT_EQ(cut(2370).phases.back().kind, PhaseKind::airAdmission);
    EXPECT_EQ(cut(2370).phases.back().end.rule, BoundaryRule::traceEnded);
    // Before the exposure there is nothing to tell by.
    EXPECT_TRUE(cut(600).phases.empty());
}

TEST(Phases, CountNoDryingOverTimeWithoutSamples)
{
    Trace trace = support::chamberOf(support::prevacuumCourse(), 1);
    const Trace whole = trace;
    for (std::size_t i = 1'500; i < 1'800; ++i) {
        trace.channels[2].values[i] = std::nan("");
    }
    const double before =
        divide(whole, band134, AirRemoval::prevacuum).phases.find(PhaseKind::drying)->seconds.least;
    const double after =
        divide(trace, band134, AirRemoval::prevacuum).phases.find(PhaseKind::drying)->seconds.least;
    EXPECT_NEAR(before - after, 301, 1e-9);
}

TEST(Phases, WithoutPressureAreThoseOfTemperature)
{
    Trace trace = support::chamberOf(support::prevacuumCourse(), 1, 12);
    trace.channels.pop_back();
    const auto divided = divide(trace, band134, AirRemoval::prevacuum);
    EXPECT_EQ(kinds(divided.phases),
              (std::vector{PhaseKind::heating, PhaseKind::equilibration, PhaseKind::exposure}));
    EXPECT_FALSE(divided.phases.pulsesSure);
}

TEST(Phases, SayWhereThePlateauStandsForTheExposure)
{
    const auto divided = divide(support::chamberOf(support::prevacuumCourse(), 1, 12),
                                support::bandOf(135.5, 138), AirRemoval::prevacuum);
    ASSERT_EQ(kinds(divided.phases), allPhases);
    const TracePhase& phase = *divided.phases.find(PhaseKind::exposure);
    EXPECT_EQ(phase.begin.rule, BoundaryRule::plateauBegan);
    EXPECT_EQ(phase.end.rule, BoundaryRule::plateauEnded);
    // The chamber is 12 s ahead of the drain on its way to the plateau.
    EXPECT_NEAR(divided.phases.find(PhaseKind::equilibration)->seconds.most, 12, 2.1);
    EXPECT_EQ(divided.phases.pulses.size(), 3U);
}

TEST(Phases, AreTotal)
{
    const double nan = std::nan("");
    const Band band = support::bandOf(134, 137);
    EXPECT_TRUE(findPhases({}, band, {}, AirRemoval::gravity, atmosphere).phases.empty());
    Trace one = support::traceOf({0}, {135}, {313});
    Band chamber = band;
    chamber.required = {0};
    EXPECT_EQ(kinds(divide(one, chamber, AirRemoval::prevacuum).phases),
              (std::vector{PhaseKind::heating, PhaseKind::exposure}));
    // Without the atmosphere nothing is told by it.
    const Trace trace = support::chamberOf(support::gravityCourse(), 5);
    const Band gravity = support::bandOf(121, 124);
    const Exposure exposure = findExposure(trace, gravity, true);
    EXPECT_EQ(kinds(findPhases(trace, gravity, exposure, AirRemoval::gravity, nan)),
              (std::vector{PhaseKind::heating, PhaseKind::equilibration, PhaseKind::exposure}));
    Trace lost = trace;
    lost.channels[2].values.assign(lost.samples(), nan);
    EXPECT_EQ(divide(lost, gravity, AirRemoval::prevacuum).phases.phases.size(), 3U);
}

} // namespace
} // namespace loadwarden
