// Each line of ACTS.md, 6, on what is in reach.
#include "tests/core/store/reach/stored_weeks.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using loadwarden::testing::BulkWriter;
using loadwarden::testing::entriesFor;
using loadwarden::testing::TempFolder;
using namespace loadwarden::tests;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::IsSupersetOf;

/// Minutes since the beginning of the day in which load ld-1 runs at 12:00.
Instant minute(std::int64_t minutes)
{
    return at(0, 0) + Duration::minutes(minutes);
}

constexpr std::int64_t noon = 720;
constexpr std::int64_t day = 1'440;

class Reaching : public ::testing::Test {
protected:
    Reaching()
    {
        m_journal.add(program, minute(-500 * day), {"fa-1"}, JournalOpened{"F", "jn-1", "UTC"});
        cycle("ld-1", noon, 1'000);
    }

    /// A cycle of sterilizer sz-1 that takes 50 minutes.
    void cycle(const std::string& id, std::int64_t from, std::int64_t counter,
               Purpose purpose = Purpose::routine)
    {
        reserve(id, from, purpose);
        start(id, from, counter);
        m_journal.add(operatorA, minute(from + 50), {id},
                      CycleEnded{{minute(from + 50), 0}, CycleOutcome::ended, {}, {}});
    }
    void reserve(const std::string& id, std::int64_t from, Purpose purpose = Purpose::routine)
    {
        m_journal.add(operatorA, minute(from), {id, "sz-1", "sp-1"},
                      CycleReserved{.lot = id, .purpose = purpose});
    }
    void start(const std::string& id, std::int64_t from, std::int64_t counter)
    {
        m_journal.add(operatorA, minute(from), {id},
                      CycleStarted{ClockSource::facility, {minute(from), 0}, counter});
    }
    template <class Act>
    std::int64_t say(const std::string& id, std::int64_t when, const Act& act,
                     const Person& who = operatorA)
    {
        return m_journal.add(who, minute(when), {id}, act);
    }

    /// The other cycles in reach of ld-1, sorted.
    std::vector<std::string> inReach(const std::string& of = "ld-1")
    {
        const TempFolder folder;
        BulkWriter writer(SqliteFile{folder / "a.lw"}, minute(-500 * day), 1'000);
        write(writer, m_journal.entries());
        std::vector<std::string> cycles = cyclesIn(entriesFor(writer.connection(), of));
        std::erase(cycles, of);
        std::ranges::sort(cycles);
        cycles.erase(std::ranges::unique(cycles).begin(), cycles.end());
        return cycles;
    }

    static constexpr std::int64_t longAgo = -100 * day;

    Journal m_journal;
};

TEST_F(Reaching, IsBesideItButNotADayAway)
{
    cycle("ld-beside", noon - 200, 900);
    cycle("ld-after", noon + 200, 1'100);
    for (int i = 1; i <= 5; ++i) { // with counters nearer than that of the one that is away
        cycle("ld-n" + std::to_string(i), noon - 100 - i, 1'000 - i);
        cycle("ld-m" + std::to_string(i), noon + 100 + i, 1'000 + i);
    }
    cycle("ld-away", noon - day, 800);
    const auto found = inReach();
    EXPECT_THAT(found, IsSupersetOf({"ld-beside", "ld-after"}));
    EXPECT_EQ(std::ranges::count(found, "ld-away"), 0);
}

/// Cycles with nearer counters, so that a counter is no reason.
#define LW_HIDE_COUNTERS()                                                                         \
    for (int i = 1; i <= 3; ++i) {                                                                 \
        cycle("ld-n" + std::to_string(i), -20 * day - i, 1'000 - i);                               \
        cycle("ld-m" + std::to_string(i), -20 * day - i, 1'000 + i);                               \
    }

TEST_F(Reaching, HasTheNextCountersAndTheSame)
{
    LW_HIDE_COUNTERS();
    cycle("ld-same", longAgo, 1'000);
    cycle("ld-low", longAgo, 900);
    EXPECT_THAT(inReach(),
                ElementsAre("ld-m1", "ld-m2", "ld-m3", "ld-n1", "ld-n2", "ld-n3", "ld-same"));
}

TEST_F(Reaching, HasCyclesOfDoubtfulTimesWithinTwoDays)
{
    LW_HIDE_COUNTERS();
    reserve("ld-running", noon - day);
    start("ld-running", noon - day, 500);
    cycle("ld-long", noon - day, 501);
    say("ld-long", noon - 2 * day,
        CycleStarted{ClockSource::facility, {minute(noon - 40 * 60), 0}, 501});
    reserve("ld-unended", noon - 3 * day);
    start("ld-unended", noon - 3 * day, 502);
    const auto found = inReach();
    EXPECT_THAT(found, IsSupersetOf({"ld-long", "ld-running"}));
    EXPECT_EQ(std::ranges::count(found, "ld-unended"), 0);
}

TEST_F(Reaching, HasFailuresUntilTheyArePutRight)
{
    LW_HIDE_COUNTERS();
    cycle("ld-x", longAgo, 500);
    const auto isIn = [&] {
        const auto found = inReach();
        return std::ranges::count(found, "ld-x") == 1;
    };
    EXPECT_FALSE(isIn());
    say("ld-x", longAgo + 60, FailureRecorded{FailureKind::physical});
    EXPECT_TRUE(isIn());
    say("ld-x", longAgo + 70, FailureResolved{true, Reach::thatLoad, "mended"}, operatorA);
    EXPECT_TRUE(isIn()) << "an operator frees nothing";
    Journal before = m_journal;
    say("ld-x", longAgo + 80, FailureResolved{true, Reach::thatLoad, "mended"}, leadC);
    EXPECT_TRUE(isIn()) << "another resolution does not";

    m_journal = Journal();
    m_journal.add(program, minute(-500 * day), {"fa-1"}, JournalOpened{"F", "jn-1", "UTC"});
    cycle("ld-1", noon, 1'000);
    LW_HIDE_COUNTERS();
    cycle("ld-x", longAgo, 500);
    say("ld-x", longAgo + 60, FailureRecorded{FailureKind::physical});
    const std::int64_t resolved =
        say("ld-x", longAgo + 80, FailureResolved{true, Reach::thatLoad, "mended"}, leadC);
    EXPECT_FALSE(isIn());
    before = m_journal;
    say("ld-x", longAgo + 90, FailureRecorded{FailureKind::physical});
    EXPECT_TRUE(isIn()) << "it failed again";
    m_journal = before;
    m_journal.correct(supervisorF, minute(longAgo + 90), resolved, EntryVoided{});
    EXPECT_TRUE(isIn()) << "the resolution was struck";
}

TEST_F(Reaching, HasAResolutionOfTheSterilizerOnlyFromThenOn)
{
    LW_HIDE_COUNTERS();
    cycle("ld-x", longAgo, 500);
    say("ld-x", longAgo + 60, FailureRecorded{FailureKind::physical});
    say("ld-x", noon + day, FailureResolved{true, Reach::sterilizer, "mended"}, leadC);
    const auto found = inReach();
    EXPECT_EQ(std::ranges::count(found, "ld-x"), 1);
    cycle("ld-2", noon + 30 * day, 2'000);
    const auto later = inReach("ld-2");
    EXPECT_EQ(std::ranges::count(later, "ld-x"), 0);
}

TEST_F(Reaching, FindsLowReadingsByTheRevisionThatWasBound)
{
    LW_HIDE_COUNTERS();
    const auto specification = [](std::int64_t least) {
        return SpecificationRecorded{
            {.id = "spec",
             .revision = 1,
             .purpose = Purpose::routine,
             .limits = {{Parameter::temperature, {{Unit::celsius, least}}, {}}}}};
    };
    m_journal.add(supervisorE, minute(longAgo - day), {"sp-1"}, specification(132'000));
    cycle("ld-low", longAgo, 500);
    cycle("ld-warm", longAgo, 501);
    cycle("ld-fahrenheit", longAgo, 502);
    m_journal.add(supervisorE, minute(longAgo + day), {"sp-1"}, specification(134'000));
    say("ld-low", longAgo + 60,
        PhysicalRead{Parameter::temperature, typed("131.99", Unit::celsius, 131'990)});
    say("ld-warm", longAgo + 60,
        PhysicalRead{Parameter::temperature, typed("132", Unit::celsius, 132'000)});
    // 132 °C are 269.6 °F exactly.
    say("ld-fahrenheit", longAgo + 60,
        PhysicalRead{Parameter::temperature, typed("269.5", Unit::fahrenheit, 269'500)});
    const auto found = inReach();
    EXPECT_THAT(found, IsSupersetOf({"ld-fahrenheit", "ld-low"}));
    EXPECT_EQ(std::ranges::count(found, "ld-warm"), 0);
}

TEST_F(Reaching, FindsTracesThatShowAFailure)
{
    LW_HIDE_COUNTERS();
    const auto recording = [](Shown exposure, Shown uninterrupted) {
        TraceRead read;
        read.content = std::string(64, 'a');
        read.fileName = "cycle.csv";
        read.mapping = "{}";
        read.findings.exposure = exposure;
        read.findings.uninterrupted = uninterrupted;
        return read;
    };
    cycle("ld-short", longAgo, 500);
    cycle("ld-broken", longAgo, 501);
    cycle("ld-held", longAgo, 502);
    m_journal.add(operatorA, minute(longAgo + 60), {"tr-1", "ld-short"},
                  recording(Shown::notMet, Shown::met));
    m_journal.add(operatorA, minute(longAgo + 60), {"tr-2", "ld-broken"},
                  recording(Shown::open, Shown::notMet));
    m_journal.add(operatorA, minute(longAgo + 60), {"tr-3", "ld-held"},
                  recording(Shown::met, Shown::notMet));
    const auto found = inReach();
    EXPECT_THAT(found, IsSupersetOf({"ld-broken", "ld-short"}));
    EXPECT_EQ(std::ranges::count(found, "ld-held"), 0);
}

TEST_F(Reaching, FindsReportsOfWhatFailedWhenItWasOpened)
{
    LW_HIDE_COUNTERS();
    cycle("ld-failed", longAgo, 500);
    cycle("ld-wet", longAgo, 501);
    cycle("ld-torn", longAgo, 502);
    m_journal.add(operatorA, minute(longAgo + 90), {"qu-1", "it-f", "ld-failed"},
                  ItemReported{.indicator = Seen::frontShortOfBoundary, .place = "Room 4"});
    m_journal.add(operatorA, minute(longAgo + 90), {"qu-1", "it-w", "ld-wet"},
                  ItemReported{.faults = {PackageFault::wet}, .place = "Room 4"});
    m_journal.add(operatorA, minute(longAgo + 90), {"qu-1", "it-t", "ld-torn"},
                  ItemReported{.faults = {PackageFault::torn}, .place = "Room 4"});
    const auto found = inReach();
    EXPECT_THAT(found, IsSupersetOf({"ld-failed", "ld-wet"}));
    EXPECT_EQ(std::ranges::count(found, "ld-torn"), 0);
}

TEST_F(Reaching, HasAlarmsUnlessClassedAsHarmless)
{
    LW_HIDE_COUNTERS();
    cycle("ld-x", longAgo, 500);
    say("ld-x", longAgo, AlarmRecorded{"A1"});
    const auto isIn = [&] {
        const auto found = inReach();
        return std::ranges::count(found, "ld-x") == 1;
    };
    EXPECT_TRUE(isIn());
    const std::int64_t classed = m_journal.add(supervisorE, minute(longAgo), {"sz-1"},
                                               AlarmClassed{{"A1", AlarmEffect::harmless}});
    EXPECT_FALSE(isIn());
    m_journal.correct(supervisorF, minute(longAgo), classed, EntryVoided{});
    EXPECT_TRUE(isIn());
}

TEST_F(Reaching, HasPositivesAndFailedTestsHoweverFarAway)
{
    LW_HIDE_COUNTERS();
    cycle("ld-positive", -450 * day, 400);
    m_journal.add(operatorA, minute(-450 * day), {"bv-1", "ld-positive"},
                  BiologicalRead{Seen::growth});
    cycle("ld-later", 450 * day, 4'000);
    m_journal.add(operatorA, minute(450 * day), {"bv-2", "ld-later"},
                  BiologicalRead{Seen::unclear});
    cycle("ld-test", -450 * day, 401, Purpose::bowieDick);
    m_journal.add(operatorA, minute(-450 * day), {"ci-1", "ld-test"},
                  ChemicalRead{Seen::notUniform});
    for (int i = 1; i <= 6; ++i) { // enough that none is the next of the load
        cycle("ld-q" + std::to_string(i), -440 * day + i, 401 + i, Purpose::bowieDick);
        cycle("ld-r" + std::to_string(i), -30 * day + i, 501 + i, Purpose::bowieDick);
    }
    auto found = inReach();
    EXPECT_THAT(found, IsSupersetOf({"ld-later", "ld-positive", "ld-test"}));
    EXPECT_EQ(std::ranges::count(found, "ld-q1"), 0);
    say("ld-test", -445 * day, FailureResolved{true, Reach::sterilizer, "gasket"}, leadC);
    found = inReach();
    EXPECT_THAT(found, IsSupersetOf({"ld-q1", "ld-q5"}));
    EXPECT_EQ(std::ranges::count(found, "ld-q6"), 0);
}

TEST_F(Reaching, HasWhatSharesAnItemALabelOrAnIncident)
{
    LW_HIDE_COUNTERS();
    const auto item = [&](const std::string& id, const std::string& load,
                          const std::string& label) {
        m_journal.add(operatorA, minute(noon), {id, load}, ItemAdded{.label = label});
    };
    item("it-1", "ld-1", "Set A");
    cycle("ld-moved", longAgo, 500);
    m_journal.add(operatorA, minute(noon), {"it-1", "ld-moved", "ld-1"},
                  ItemMoved{"ld-moved", "ld-1", "again"});
    cycle("ld-label", noon - day, 501);
    item("it-2", "ld-label", "SETA");
    cycle("ld-other", noon - day, 502);
    item("it-3", "ld-other", "Set B");
    cycle("ld-weeksago", longAgo, 503);
    item("it-4", "ld-weeksago", "Set A");
    cycle("ld-incident", longAgo, 504);
    m_journal.add(supervisorE, minute(noon), {"ic-1", "ld-incident", "sz-1"}, IncidentOpened{});
    const auto found = inReach();
    EXPECT_THAT(found, IsSupersetOf({"ld-incident", "ld-label", "ld-moved"}));
    EXPECT_EQ(std::ranges::count(found, "ld-other"), 0);
    EXPECT_EQ(std::ranges::count(found, "ld-weeksago"), 0);
}

TEST_F(Reaching, DoesNotTakeInTheYearBetweenWhenADateWasTypedWrong)
{
    const std::int64_t wrong =
        m_journal.add(operatorA, minute(noon), {"ld-1"},
                      CycleEnded{{minute(noon + 365 * day), 0}, CycleOutcome::ended, {}, {}});
    m_journal.correct(leadC, minute(noon + 60), wrong,
                      CycleEnded{{minute(noon + 50), 0}, CycleOutcome::ended, {}, {}});
    for (int i = 1; i <= 60; ++i) {
        cycle("ld-n" + std::to_string(i), noon + i * 5 * day, 1'000 + i);
    }
    EXPECT_LE(inReach().size(), 4U);
}

TEST_F(Reaching, DoesNotGrowWithTheJournal)
{
    for (int i = 1; i <= 300; ++i) {
        cycle("ld-n" + std::to_string(i), noon - i * 300, 1'000 - i);
    }
    EXPECT_LE(inReach().size(), 8U);
}

} // namespace
} // namespace loadwarden
