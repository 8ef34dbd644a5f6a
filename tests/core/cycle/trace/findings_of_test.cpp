#include "core/cycle/trace/asked_by.h"
#include "core/cycle/trace/findings_of.h"
#include "core/cycle/trace/trace_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace loadwarden {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const Zone chicago = *Zone::find("America/Chicago");

/// Held at 133 °C, 0.1 K colder once, from 60 s to 300 s.
TraceReading aReading()
{
    TraceReading reading;
    std::vector<double> celsius;
    for (int i = 0; i <= 36; ++i) {
        reading.trace.seconds.push_back(10 * i);
        celsius.push_back(i < 6 || i > 30 ? 100 : i == 9 ? 132.9 : 133);
    }
    reading.trace.channels = {
        {"T", ChannelRole::chamberTemperature, celsius},
        {"P", ChannelRole::chamberPressure, std::vector<double>(celsius.size(), 295)}};
    reading.counter = "4113";
    reading.start = {Date{22'342}, 7 * 3600 + 14 * 60 + 5.25};
    return reading;
}

AskedOfTrace asked()
{
    AskedOfTrace result;
    result.band.leastCelsius = 132;
    result.band.required = {0};
    result.leastExposureSeconds = 240;
    result.atmosphereKPa = 101;
    return result;
}

TEST(FindingsOfATrace, AreIntegersOfWhatWasComputed)
{
    const TraceReading reading = aReading();
    const TraceEvaluation evaluation = evaluate(reading.trace, asked());
    CycleSpecification specification;
    specification.id = "s";
    specification.revision = 3;
    const TraceFindings findings = findingsOf(reading, evaluation, &specification, chicago);
    EXPECT_EQ(findings.specification, "s");
    EXPECT_EQ(findings.revision, 3);
    EXPECT_EQ(findings.counter, 4113);
    EXPECT_EQ(findings.exposure, Shown::met);
    EXPECT_EQ(findings.uninterrupted, Shown::met);
    EXPECT_EQ(findings.drying, Shown::notAsked);
    EXPECT_EQ(findings.leastCelsiusHundredths, 13'290);
    EXPECT_EQ(findings.greatestCelsiusHundredths, 13'300);
    EXPECT_EQ(findings.exposureLeastMs, 240'000);
    EXPECT_EQ(findings.exposureMostMs, 260'000);
    EXPECT_THAT(findings.defects, IsEmpty());
    // Day 22,342 is 4 March 2031, in Chicago 6 h behind.
    EXPECT_EQ(findings.start, parseInstant("2031-03-04T07:14:05.25-06:00"));

    EXPECT_EQ(findingsOf(reading, evaluation, nullptr, chicago).specification, "");
    EXPECT_EQ(findingsOf(reading, evaluation, nullptr, chicago).revision, std::nullopt);
}

TEST(FindingsOfATrace, LeaveOutWhatIsNotKnown)
{
    TraceReading reading = aReading();
    reading.counter = "A-17";
    reading.start.date.reset();
    // It begins and ends in the band: nobody knows for how long it had been there.
    reading.trace.channels[0].values.assign(reading.trace.samples(), 133);
    TraceFindings findings =
        findingsOf(reading, evaluate(reading.trace, asked()), nullptr, chicago);
    EXPECT_EQ(findings.counter, std::nullopt);
    EXPECT_EQ(findings.start, std::nullopt);
    EXPECT_EQ(findings.exposureLeastMs, 360'000);
    EXPECT_EQ(findings.exposureMostMs, std::nullopt);

    const TraceReading nothing;
    findings = findingsOf(nothing, evaluate(nothing.trace, asked()), nullptr, chicago);
    EXPECT_EQ(findings.exposure, Shown::open);
    EXPECT_EQ(findings.leastCelsiusHundredths, std::nullopt);
    EXPECT_EQ(findings.exposureLeastMs, std::nullopt);
    EXPECT_EQ(findings.dryingLeastMs, std::nullopt);
    EXPECT_THAT(findings.defects, ElementsAre("no-samples", "required-missing", "no-pressure"));

    for (const char* counter : {"", "-1", "1000000001", "1.0", " 1", "99999999999999999999"}) {
        reading.counter = counter;
        EXPECT_EQ(findingsOf(reading, {}, nullptr, chicago).counter, std::nullopt) << counter;
    }
    reading.counter = "0017";
    EXPECT_EQ(findingsOf(reading, {}, nullptr, chicago).counter, 17);
    for (const int days : {0, 10'957, 47'481, 60'000}) { // beyond the years of a journal
        reading.start = {Date{days}, 10};
        EXPECT_EQ(findingsOf(reading, {}, nullptr, chicago).start, std::nullopt) << days;
    }
}

TEST(FindingsOfATrace, NameEveryKindOfDefectAndProblemOnce)
{
    TraceReading reading = aReading();
    std::set<std::string_view> words;
    for (std::size_t kind = 0; kind < traceDefectKindCount; ++kind) {
        reading.counts[kind] = 3; // also of those that are not told one by one
        words.insert(wordOf(traceDefectWords, static_cast<TraceDefectKind>(kind)));
    }
    TraceEvaluation evaluation;
    for (const auto& [text, problem] : traceProblemWords) {
        evaluation.problems.push_back(problem);
        words.insert(text);
    }
    const auto defects = defectWordsOf(reading, evaluation);
    EXPECT_EQ(defects.size(), words.size());
    EXPECT_EQ(std::set<std::string_view>(defects.begin(), defects.end()), words);
    EXPECT_LE(defects.size(), 100U) << "that many are recorded at most";
    // What a site without an atmosphere leaves open is no trace to help by.
    AskedOfTrace without = asked();
    without.atmosphereKPa = notKnown;
    EXPECT_THAT(defectWordsOf(aReading(), evaluate(aReading().trace, without)),
                ElementsAre("no-atmosphere"));
}

} // namespace
} // namespace loadwarden
