#include "core/cycle/simulation/simulation.h"
#include "core/cycle/simulation/trace_text.h"
#include "core/cycle/trace/mapping_proposal.h"
#include "core/cycle/trace/trace_reader.h"
#include "core/cycle/trace/trace_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

// The text of a simulated cycle is read back as what was simulated, in every dialect, and with the
// defects that it was given and no other.

namespace loadwarden::simulation {
namespace {

using ::testing::Contains;
using ::testing::IsEmpty;
using ::testing::StartsWith;
using Kind = TraceDefectKind;

Cycle aCycle(double samplingSeconds = 1)
{
    Settings settings;
    settings.samplingSeconds = samplingSeconds;
    settings.atmosphereKPa = 95;
    return simulate(settings);
}

TraceReading readBack(const std::string& text, const TraceMapping& mapping)
{
    return readTrace(text, mapping, AbsolutePressure::fromKPaThousandths(95'000));
}

std::vector<Kind> kindsOf(const TraceReading& reading)
{
    std::vector<Kind> kinds;
    for (const auto& [text, kind] : traceDefectWords) {
        if (reading.count(kind) > 0) {
            kinds.push_back(kind);
        }
    }
    return kinds;
}

void expectSame(const Trace& read, const Trace& written, double kelvin, double kPa, double seconds)
{
    ASSERT_EQ(read.samples(), written.samples());
    ASSERT_EQ(read.channels.size(), written.channels.size());
    for (std::size_t i = 0; i < read.samples(); ++i) {
        ASSERT_NEAR(read.seconds[i], written.seconds[i], seconds) << i;
        for (std::size_t k = 0; k < read.channels.size(); ++k) {
            const double most = isTemperature(written.channels[k].role) ? kelvin : kPa;
            const double value = read.channels[k].values[i];
            ASSERT_EQ(read.channels[k].role, written.channels[k].role);
            ASSERT_EQ(std::isnan(value), std::isnan(written.channels[k].values[i])) << i;
            if (!std::isnan(value)) {
                ASSERT_NEAR(value, written.channels[k].values[i], most) << i << ' ' << k;
            }
        }
    }
}

TEST(TraceText, IsReadBackInEveryUnitAndDialect)
{
    const Cycle cycle = aCycle(5);
    for (const auto& separator : fieldSeparatorWords) {
        for (const auto& decimal : decimalMarkWords) {
            for (const auto& unit : recorderUnitWords) {
                for (const auto& zero : pressureZeroWords) {
                    SCOPED_TRACE(testing::Message() << separator.text << ' ' << decimal.text << ' '
                                                    << unit.text << ' ' << zero.text);
                    TextSettings settings{.separator = separator.value,
                                          .decimal = decimal.value,
                                          .zero = zero.value,
                                          .atmosphereKPa = 95};
                    (isTemperature(unit.value) ? settings.temperature : settings.pressure) =
                        unit.value;
                    const std::string text = writeTraceText(cycle.trace, settings);
                    const TraceReading reading =
                        readBack(text, mappingOfText(cycle.trace, settings));
                    EXPECT_THAT(kindsOf(reading), IsEmpty());
                    // Half of the last decimal.
                    expectSame(reading.trace, cycle.trace, 0.00501, 0.01, 1e-9);
                }
            }
        }
    }
}

TEST(TraceText, IsReadBackInEveryFormOfTime)
{
    const Cycle cycle = aCycle(60); // of which hours and minutes lose nothing
    for (const auto& form : timeFormWords) {
        for (const auto& order : dateOrderWords) {
            SCOPED_TRACE(testing::Message() << form.text << ' ' << order.text);
            const TextSettings settings{.time = form.value, .order = order.value};
            const TraceReading reading = readBack(writeTraceText(cycle.trace, settings),
                                                  mappingOfText(cycle.trace, settings));
            EXPECT_THAT(kindsOf(reading), IsEmpty());
            expectSame(reading.trace, cycle.trace, 0.00501, 0.01, 0.006);
            if (form.value == TimeForm::dateTime) {
                EXPECT_EQ(reading.start.date, settings.date);
                EXPECT_EQ(reading.start.secondsOfDay, settings.secondsOfDay);
            }
        }
    }
}

TEST(TraceText, PassesMidnight)
{
    const Cycle cycle = aCycle();
    TextSettings settings{.time = TimeForm::hoursMinutesSeconds, .secondsOfDay = 86'000};
    TraceReading reading =
        readBack(writeTraceText(cycle.trace, settings), mappingOfText(cycle.trace, settings));
    EXPECT_THAT(kindsOf(reading), ::testing::ElementsAre(Kind::midnight));
    expectSame(reading.trace, cycle.trace, 0.00501, 0.01, 1e-9);
    settings.time = TimeForm::dateTime;
    reading = readBack(writeTraceText(cycle.trace, settings), mappingOfText(cycle.trace, settings));
    EXPECT_THAT(kindsOf(reading), IsEmpty());
    expectSame(reading.trace, cycle.trace, 0.00501, 0.01, 1e-9);
}

TEST(TraceText, SaysOfItselfWhatTheProposalNeeds)
{
    const Cycle cycle = aCycle(20);
    for (const auto& separator : fieldSeparatorWords) {
        for (const RecorderUnit pressure :
             {RecorderUnit::kPa, RecorderUnit::bar, RecorderUnit::psi}) {
            for (const auto& zero : pressureZeroWords) {
                for (const TimeForm form : {TimeForm::seconds, TimeForm::minutes,
                                            TimeForm::hoursMinutesSeconds, TimeForm::dateTime}) {
                    SCOPED_TRACE(testing::Message() << separator.text << ' ' << zero.text << ' '
                                                    << wordOf(timeFormWords, form));
                    TextSettings settings{.separator = separator.value,
                                          .pressure = pressure,
                                          .zero = zero.value,
                                          .time = form,
                                          .counter = 4113};
                    settings.temperature = pressure == RecorderUnit::psi ? RecorderUnit::fahrenheit
                                                                         : RecorderUnit::celsius;
                    const std::string text = writeTraceText(cycle.trace, settings);
                    const TraceMapping truth = mappingOfText(cycle.trace, settings);
                    const TraceMapping proposed = proposeMapping(text).mapping;
                    EXPECT_EQ(proposed.separator, truth.separator);
                    EXPECT_EQ(proposed.header, truth.header);
                    EXPECT_EQ(proposed.headerLine, truth.headerLine);
                    EXPECT_EQ(proposed.time, truth.time);
                    EXPECT_EQ(proposed.channels, truth.channels);
                    EXPECT_EQ(readBack(text, truth).counter, "4113");
                    EXPECT_EQ(readBack(text, proposed).counter, "4113");
                    EXPECT_THAT(misfitsOf(text, truth), IsEmpty());
                }
            }
        }
    }
}

TEST(TraceText, HasTheDefectsThatWereAskedFor)
{
    const Cycle cycle = aCycle();
    for (const auto& [word, kind] : traceDefectWords) {
        if (!isWritable(kind)) {
            continue;
        }
        SCOPED_TRACE(word);
        const TextSettings settings{.counter = 17, .defects = {kind}};
        const TraceReading reading =
            readBack(writeTraceText(cycle.trace, settings), mappingOfText(cycle.trace, settings));
        EXPECT_THAT(kindsOf(reading), ::testing::ElementsAre(kind));
    }
}

TEST(TraceText, HasSeveralAtOnce)
{
    const Cycle cycle = aCycle();
    const TextSettings settings{
        .defects = {Kind::gap, Kind::textInNumber, Kind::timeBackward, Kind::lastLineOpen}};
    const TraceReading reading =
        readBack(writeTraceText(cycle.trace, settings), mappingOfText(cycle.trace, settings));
    EXPECT_THAT(kindsOf(reading), ::testing::UnorderedElementsAreArray(settings.defects));
}

TEST(TraceText, SaysThatItIsSimulated)
{
    const std::string text = writeTraceText(aCycle(10).trace, {});
    EXPECT_THAT(text, StartsWith("SIMULATED"));
    EXPECT_TRUE(saysSimulated(text));
    EXPECT_FALSE(saysSimulated("Time (s),Chamber temperature (°C)\n0,20\nSIMULATED\n"));
    EXPECT_FALSE(saysSimulated(""));
    EXPECT_THAT(writeTraceText({}, {.defects = {Kind::gap, Kind::cutOff}}),
                StartsWith("SIMULATED"));
}

} // namespace
} // namespace loadwarden::simulation
