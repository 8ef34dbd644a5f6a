#include "tests/core/cycle/trace/reading_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

using namespace test_reading;
using testing::ElementsAre;
using testing::IsEmpty;
using Kind = TraceDefectKind;

/// The only defect of a reading.
TraceDefect onlyOf(const TraceReading& reading)
{
    EXPECT_EQ(reading.defects.size(), 1U);
    for (const TraceDefect& defect : reading.defects) {
        EXPECT_EQ(reading.count(defect.kind), 1) << static_cast<int>(defect.kind);
    }
    return reading.defects.empty() ? TraceDefect{} : reading.defects.front();
}

TEST(TraceDefects, OfAFileThatIsNone)
{
    const auto kinds = [](std::string_view text) { return kindsOf(read(text, plainMapping())); };
    EXPECT_THAT(kinds(""), ElementsAre(Kind::empty));
    EXPECT_THAT(kinds("\xEF\xBB\xBF"), ElementsAre(Kind::empty));
    EXPECT_THAT(kinds("\n\n"), ElementsAre(Kind::noSamples));
    EXPECT_THAT(kinds(std::string_view("\xFF\xFE"
                                       "0\0,\0",
                                       6)),
                ElementsAre(Kind::notText));
    const TraceDefect zero = onlyOf(read(std::string_view("0,1,2\n1,\0,2\n", 12), plainMapping()));
    EXPECT_EQ(zero.kind, Kind::notText);
    EXPECT_EQ(zero.place, (TextPlace{2, 3}));
    TraceLimits limits;
    limits.mostBytes = 10;
    const TraceDefect large = onlyOf(read("0,20,101\n1,20,101\n", plainMapping(), limits));
    EXPECT_EQ(large.kind, Kind::tooLarge);
    EXPECT_EQ(large.value, 18);
    EXPECT_EQ(large.limit, 10);
    limits = {};
    limits.mostSamples = 3;
    const TraceReading many = read(slowLines(0, 10), plainMapping(), limits);
    EXPECT_EQ(many.trace.samples(), 3U);
    EXPECT_EQ(onlyOf(many).kind, Kind::tooManySamples);
    EXPECT_EQ(onlyOf(many).samples, 7);
}

TEST(TraceDefects, AnUnsoundMappingReadsNothing)
{
    TraceMapping mapping = plainMapping();
    mapping.channels[1].column = 1;
    const TraceDefect defect = onlyOf(read("0,20,101\n", mapping));
    EXPECT_EQ(defect.kind, Kind::mappingUnsound);
    EXPECT_EQ(defect.value, static_cast<double>(MappingFault::columnTwice));
}

TEST(TraceDefects, AnotherHeaderIsSaidAndMakesATraceUnusable)
{
    TraceMapping mapping = plainMapping();
    mapping.header = {"t", "A", "B"};
    mapping.headerLine = 2;
    const TraceReading reading = read("free\nt,B,A\n0,20,101\n", mapping);
    const TraceDefect defect = onlyOf(reading);
    EXPECT_EQ(defect.kind, Kind::headerDiffers);
    EXPECT_EQ(defect.place, (TextPlace{2, 3}));
    EXPECT_EQ(defect.column, 2U);
    EXPECT_EQ(defect.text, "B");
    EXPECT_EQ(defect.expected, "A");
    EXPECT_EQ(reading.trace.samples(), 1U);
    EXPECT_FALSE(isUsable(reading));
    EXPECT_EQ(read("t,A\n0,20,101\n", mapping).count(Kind::headerDiffers), 1);
    EXPECT_EQ(read("t", mapping).count(Kind::headerDiffers), 1);
    EXPECT_EQ(read("free\nt,A,B,C\n0,20,101\n", mapping).count(Kind::headerDiffers), 1);
}

TEST(TraceDefects, GaugeNeedsTheAtmosphere)
{
    TraceMapping mapping = plainMapping();
    mapping.channels[1].zero = PressureZero::gauge;
    const TraceReading without = readTrace("0,20,1\n1,20.5,2\n", mapping, std::nullopt);
    EXPECT_EQ(onlyOf(without).kind, Kind::gaugeWithoutAtmosphere);
    EXPECT_EQ(onlyOf(without).channel, "B");
    ASSERT_EQ(without.trace.samples(), 2U);
    EXPECT_TRUE(std::isnan(without.trace.channels[1].values[1]));
    EXPECT_EQ(without.trace.channels[0].values[1], 20.5);
    EXPECT_FALSE(isUsable(without));
    const TraceReading strange =
        readTrace("0,20,1\n", mapping, AbsolutePressure::fromKPaThousandths(1'013));
    EXPECT_THAT(kindsOf(strange),
                ElementsAre(Kind::atmosphereImpossible, Kind::gaugeWithoutAtmosphere));
    EXPECT_TRUE(std::isnan(strange.trace.channels[1].values[0]));
}

TEST(TraceDefects, LinesOfTextAreNoSamples)
{
    const TraceReading reading =
        read("0,20,101\n1,21,101\nDoor,closed,\n2,Exposure\nend of report\n"
             "3,22,101\n",
             plainMapping());
    EXPECT_THAT(reading.trace.seconds, ElementsAre(0, 1, 3));
    const TraceDefect defect = onlyOf(reading);
    EXPECT_EQ(defect.kind, Kind::freeLine);
    EXPECT_EQ(defect.place.line, 3);
    EXPECT_EQ(defect.lastLine, 5);
    EXPECT_EQ(defect.samples, 3);
    EXPECT_EQ(defect.fate, SampleFate::leftOut);
    EXPECT_EQ(defect.text, "Door");
    EXPECT_TRUE(isUsable(reading));
}

TEST(TraceDefects, TooFewAndTooManyFields)
{
    const TraceReading few = read("0,20,101\n1,20\n2,21,101\n", plainMapping());
    EXPECT_EQ(onlyOf(few).kind, Kind::tooFewFields);
    EXPECT_EQ(onlyOf(few).place.line, 2);
    EXPECT_EQ(onlyOf(few).value, 2);
    EXPECT_EQ(onlyOf(few).limit, 3);
    EXPECT_THAT(few.trace.seconds, ElementsAre(0, 2));
    // A decimal comma where commas separate.
    const TraceReading many = read("0,20,5,101\n1,20,5,101\n2,21,101\n", plainMapping());
    EXPECT_EQ(onlyOf(many).kind, Kind::tooManyFields);
    EXPECT_EQ(onlyOf(many).lastLine, 2);
    EXPECT_THAT(many.trace.seconds, ElementsAre(0));
    EXPECT_EQ(many.lines.front(), 3);
}

TEST(TraceDefects, AFileCutOff)
{
    for (const char* end : {"2,2", "2", "2,21,\"10", "2:"}) {
        SCOPED_TRACE(end);
        const TraceReading reading =
            read(std::string("0,20,101\n1,20,102\n") + end, plainMapping());
        const TraceDefect defect = onlyOf(reading);
        EXPECT_EQ(defect.kind, Kind::cutOff);
        EXPECT_EQ(defect.place.line, 3);
        EXPECT_EQ(reading.trace.samples(), 2U);
        EXPECT_FALSE(isUsable(reading));
    }
    const TraceReading open = read("0,20,101\n1,20,10", plainMapping());
    EXPECT_EQ(open.count(Kind::lastLineOpen), 1);
    EXPECT_EQ(open.trace.samples(), 2U);
    const TraceReading words = read("0,20,101\n1,20,102\nend", plainMapping());
    EXPECT_EQ(onlyOf(words).kind, Kind::freeLine);
}

TEST(TraceDefects, AQuoteWithoutItsSecond)
{
    const std::string far(5000, '1');
    const TraceReading reading =
        read("0,20,101\n1,\"20,101\n2,21,101\n" + far + "\n", plainMapping());
    EXPECT_EQ(reading.count(Kind::quoteNotClosed), 1);
    EXPECT_EQ(reading.defects.front().place, (TextPlace{2, 3}));
    EXPECT_THAT(reading.trace.seconds, ElementsAre(0, 2));
}

TEST(TraceDefects, TimesThatCannotBe)
{
    const TraceReading bad = read("0,20\nx1,21\n2,22\n", oneChannel());
    EXPECT_EQ(onlyOf(bad).kind, Kind::timeUnreadable);
    EXPECT_EQ(onlyOf(bad).text, "x1");
    EXPECT_EQ(onlyOf(bad).place, (TextPlace{2, 1}));

    const TraceReading again = read("0,20\n1,21\n1,22\n1,23\n2,24\n", oneChannel());
    EXPECT_EQ(onlyOf(again).kind, Kind::timeRepeated);
    EXPECT_EQ(onlyOf(again).samples, 2);
    EXPECT_THAT(again.trace.channels[0].values, ElementsAre(20, 21, 24));

    const TraceReading back = read("0,20\n10,21\n20,22\n15,23\n20,24\n25,25\n", oneChannel());
    EXPECT_THAT(kindsOf(back), ElementsAre(Kind::timeBackward, Kind::timeRepeated));
    EXPECT_EQ(back.defects[0].value, 5);
    EXPECT_THAT(back.trace.seconds, ElementsAre(0, 10, 20, 25));
}

TEST(TraceDefects, MidnightIsSaidAndGoesOn)
{
    const TraceReading reading = read("23:59:58,20\n23:59:59,21\n00:00:00,22\n00:00:01,21\n",
                                      oneChannel(TimeForm::hoursMinutesSeconds));
    EXPECT_THAT(reading.trace.seconds, ElementsAre(0, 1, 2, 3));
    EXPECT_EQ(onlyOf(reading).kind, Kind::midnight);
    EXPECT_EQ(onlyOf(reading).place.line, 3);
    EXPECT_EQ(onlyOf(reading).fate, SampleFate::kept);
    EXPECT_TRUE(isUsable(reading));
    // A clock set back is not midnight, nor is a step of more than an hour over it.
    const TraceReading back = read("07:14:00,20\n07:14:30,21\n07:13:50,22\n07:15:00,21\n",
                                   oneChannel(TimeForm::hoursMinutesSeconds));
    EXPECT_EQ(onlyOf(back).kind, Kind::timeBackward);
    const TraceReading far =
        read("22:30:00,20\n22:31:00,21\n00:00:00,22\n", oneChannel(TimeForm::hoursMinutesSeconds));
    EXPECT_EQ(onlyOf(far).kind, Kind::timeBackward);
    // m:s has no midnight.
    const TraceReading hour =
        read("59:58,20\n59:59,21\n00:00,22\n", oneChannel(TimeForm::minutesSeconds));
    EXPECT_EQ(onlyOf(hour).kind, Kind::timeBackward);
}

TEST(TraceDefects, AnotherCycleEndsTheTrace)
{
    const TraceReading byTime = read(slowLines(0, 5) + slowLines(0, 4) + "\n", plainMapping());
    EXPECT_EQ(byTime.trace.samples(), 5U);
    EXPECT_EQ(onlyOf(byTime).kind, Kind::anotherStart);
    EXPECT_EQ(onlyOf(byTime).place.line, 6);
    EXPECT_EQ(onlyOf(byTime).lastLine, 9);
    EXPECT_EQ(onlyOf(byTime).samples, 4);

    TraceMapping headed = plainMapping();
    headed.header = {"t", "A", "B"};
    headed.headerLine = 1;
    const TraceReading byHeader =
        read("t,A,B\n" + slowLines(0, 5) + "\nt,A,B\n" + slowLines(5, 9), headed);
    EXPECT_EQ(byHeader.trace.samples(), 5U);
    EXPECT_EQ(onlyOf(byHeader).kind, Kind::anotherStart);
    EXPECT_EQ(onlyOf(byHeader).place.line, 8);

    TraceMapping counted = oneChannel();
    counted.columns = 3;
    counted.counterColumn = 2;
    const TraceReading byCounter =
        read("0,20,0411\n1,21,0411\n2,22,\n3,22,0412\n4,21,0411\n", counted);
    EXPECT_EQ(byCounter.counter, "0411");
    EXPECT_EQ(byCounter.trace.samples(), 3U);
    EXPECT_EQ(onlyOf(byCounter).kind, Kind::anotherCounter);
    EXPECT_EQ(onlyOf(byCounter).text, "0412");
    EXPECT_EQ(onlyOf(byCounter).expected, "0411");
    EXPECT_EQ(onlyOf(byCounter).place, (TextPlace{4, 6}));
    EXPECT_EQ(onlyOf(byCounter).samples, 2);
}

TEST(TraceDefects, ACounterInFreeLines)
{
    TraceMapping mapping = plainMapping();
    mapping.header = {"t", "A", "B"};
    mapping.headerLine = 3;
    mapping.counterLabel = "Cycle no";
    for (const char* before :
         {"Cycle no: 411\n", "x\nCycle no,411\n", "Cycle now,9\nCycle no.,411\n"}) {
        SCOPED_TRACE(before);
        const TraceReading reading = read(before + ("t,A,B\n" + slowLines(0, 3)), mapping);
        EXPECT_EQ(reading.counter, "411");
        EXPECT_THAT(reading.defects, IsEmpty());
    }
    const TraceReading two = read("Cycle no: 411\nt,A,B\n" + slowLines(0, 3) + "Cycle no: 411\n"
                                      + "Cycle no: 412\nt,A,B\n" + slowLines(3, 6),
                                  mapping);
    EXPECT_THAT(kindsOf(two), ElementsAre(Kind::freeLine, Kind::anotherCounter));
    EXPECT_EQ(two.defects.back().text, "412");
    EXPECT_EQ(two.defects.back().expected, "411");
    EXPECT_EQ(two.trace.samples(), 3U);
}

TEST(TraceDefects, GapsAreJudgedByTheTypicalStep)
{
    const TraceReading reading =
        read("0,20\n1,20\n2,21\n3,20\n5.5,21\n6.5,20\n9.1,21\n", oneChannel());
    const TraceDefect defect = onlyOf(reading);
    EXPECT_EQ(defect.kind, Kind::gap);
    EXPECT_EQ(defect.place.line, 7);
    EXPECT_NEAR(defect.value, 2.6, 1e-9);
    EXPECT_EQ(defect.limit, 2.5);
    EXPECT_EQ(defect.fate, SampleFate::kept);
    EXPECT_THAT(read("0,20\n60,20\n120,21\n180,20\n", oneChannel()).defects, IsEmpty());
}

TEST(TraceDefects, ValuesThatAreNone)
{
    const TraceReading text = read("0,20\n1,OPEN\n2,21,\n", oneChannel());
    EXPECT_EQ(onlyOf(text).kind, Kind::textInNumber);
    EXPECT_EQ(onlyOf(text).text, "OPEN");
    EXPECT_EQ(onlyOf(text).channel, "A");
    EXPECT_EQ(onlyOf(text).column, 2U);
    EXPECT_EQ(onlyOf(text).fate, SampleFate::valueLeftOut);
    EXPECT_TRUE(std::isnan(text.trace.channels[0].values[1]));
    EXPECT_EQ(text.trace.samples(), 3U);
    for (const char* bad :
         {"1.234.5", "20;5", "2O", "20 C", "1 000", "0x1F", "inf", "1e999", "--5", "+-5", "1,5"}) {
        SCOPED_TRACE(bad);
        EXPECT_EQ(
            read("0,20\n1,\"" + std::string(bad) + "\"\n", oneChannel()).count(Kind::textInNumber),
            1);
    }
    TraceMapping comma = oneChannel();
    comma.separator = FieldSeparator::semicolon;
    comma.decimal = DecimalMark::comma;
    EXPECT_EQ(read("0;20,5\n1;20.5\n", comma).count(Kind::textInNumber), 1);

    for (const char* none : {"", "-", "---", "NaN", "n/a", "NULL"}) {
        SCOPED_TRACE(none);
        const TraceReading missing =
            read("0,20\n1," + std::string(none) + "\n2,21\n", oneChannel());
        EXPECT_EQ(onlyOf(missing).kind, Kind::valueMissing);
        EXPECT_EQ(onlyOf(missing).place, (TextPlace{2, 3}));
    }
    // Broken and shorted sensors as recorders write them.
    for (const char* impossible : {"850", "-200", "999.9", "3276.7", "250.1"}) {
        SCOPED_TRACE(impossible);
        const TraceReading reading =
            read("0,20\n1," + std::string(impossible) + "\n2,21\n", oneChannel());
        EXPECT_EQ(onlyOf(reading).kind, Kind::valueImpossible);
        EXPECT_EQ(onlyOf(reading).text, impossible);
        EXPECT_TRUE(std::isnan(reading.trace.channels[0].values[1]));
    }
}

TEST(TraceDefects, ASensorLostIsOneRun)
{
    std::string text;
    for (int i = 0; i < 10; ++i) {
        text += std::to_string(i) + (i < 3 || i > 7 ? ",20\n" : ",\n");
    }
    const TraceReading reading = read(text, oneChannel());
    const TraceDefect defect = onlyOf(reading);
    EXPECT_EQ(defect.kind, Kind::sensorLost);
    EXPECT_EQ(defect.place, (TextPlace{4, 3}));
    EXPECT_EQ(defect.lastLine, 8);
    EXPECT_EQ(defect.samples, 5);
    EXPECT_EQ(reading.count(Kind::valueMissing), 0);
}

TEST(TraceDefects, AJumpThatASensorCannotMake)
{
    const TraceReading reading = read("0,20\n1,60\n2,100.1\n3,20\n63,139\n64,140\n", oneChannel());
    EXPECT_EQ(reading.count(Kind::jump), 1);
    const TraceDefect defect = reading.defects.front();
    EXPECT_EQ(defect.kind, Kind::jump);
    EXPECT_EQ(defect.place.line, 3);
    EXPECT_EQ(defect.lastLine, 4);
    EXPECT_NEAR(defect.value, 40.1, 1e-9);
    EXPECT_EQ(defect.limit, 40);
    EXPECT_EQ(defect.over, 1);
    EXPECT_EQ(reading.trace.channels[0].values[2], 100.1) << "a jump is kept as it stands";
    TraceLimits limits;
    limits.mostKelvinPerSecond = 100;
    EXPECT_EQ(read("0,20\n1,60\n2,100.1\n3,20\n", oneChannel(), limits).count(Kind::jump), 0);
    const TraceReading pressure = read("0,20,100\n1,20,199\n2,20,300\n", plainMapping());
    EXPECT_EQ(onlyOf(pressure).kind, Kind::jump);
    EXPECT_EQ(onlyOf(pressure).channel, "B");
}

/// A temperature that rises by 60 K while the other value is given.
std::string rising(int samples, const std::string& pressure, bool warms = true)
{
    std::string text;
    for (int i = 0; i < samples; ++i) {
        const double warmth = 60.0 * i / samples;
        text += std::to_string(i * 10) + ',' + (warms ? std::to_string(80 + warmth) : "80") + ','
                + (pressure.empty() ? std::to_string(100 + 2 * warmth) : pressure) + '\n';
    }
    return text;
}

TEST(TraceDefects, AFlatSensorWhileOthersChange)
{
    EXPECT_THAT(read(rising(100, ""), plainMapping()).defects, IsEmpty());
    const TraceReading temperature = read(rising(100, "", false), plainMapping());
    EXPECT_EQ(onlyOf(temperature).kind, Kind::flat);
    EXPECT_EQ(onlyOf(temperature).channel, "A");
    EXPECT_EQ(onlyOf(temperature).value, 80);
    EXPECT_EQ(onlyOf(temperature).over, 990);
    EXPECT_EQ(onlyOf(temperature).samples, 100);
    EXPECT_EQ(onlyOf(temperature).lastLine, 100);
    // Above the atmosphere pressure follows temperature, whatever else the file holds.
    const std::string end = "1000,140,240\n1010,140,241\n";
    EXPECT_EQ(onlyOf(read(rising(100, "240") + end, plainMapping())).kind, Kind::flat);
    EXPECT_THAT(read(rising(100, "101.3") + end, plainMapping()).count(Kind::flat), 0);
    EXPECT_EQ(read(rising(100, "101.3"), plainMapping()).count(Kind::flat), 1) << "all of it";
    // Not for so short a time, and not while nothing else changes.
    EXPECT_EQ(
        read(rising(50, "240") + "500,140,241\n510,140,240\n", plainMapping()).count(Kind::flat),
        0);
    EXPECT_EQ(read(rising(100, "240", false), plainMapping()).count(Kind::flat), 0);
}

TEST(TraceDefects, AreToldUpToALimitAndCountedBeyond)
{
    std::string text;
    for (int i = 0; i < 5000; ++i) {
        text += std::to_string(i) + (i % 2 == 0 ? ",20\n" : ",x\n");
    }
    const TraceReading reading = read(text, oneChannel());
    EXPECT_EQ(reading.defects.size(), mostDefectsTold);
    EXPECT_EQ(reading.count(Kind::textInNumber), 2500);
    EXPECT_EQ(reading.trace.samples(), 5000U);
}

TEST(TraceDefects, WhichMakeATraceUnusableIsAPolicy)
{
    const TraceReading reading = read("0,20\n1,x\n2,21\n", oneChannel());
    EXPECT_FALSE(isUsable(reading));
    EXPECT_TRUE(isUsable(reading, unusableByDefault().remove(Kind::textInNumber)));
    EXPECT_FALSE(isUsable(reading, TraceDefectSet().add(Kind::textInNumber)));
    EXPECT_FALSE(isUsable(read("x\n", oneChannel()), TraceDefectSet())) << "without samples never";
}

} // namespace
} // namespace loadwarden
