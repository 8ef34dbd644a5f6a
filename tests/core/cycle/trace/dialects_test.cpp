#include "tests/core/cycle/trace/reading_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using namespace test_reading;
using testing::DoubleEq;
using testing::DoubleNear;
using testing::ElementsAre;
using testing::IsEmpty;
using Kind = TraceDefectKind;

TEST(TraceDialects, ReadSeparatorsAndDecimalMarks)
{
    struct Case {
        const char* text;
        FieldSeparator separator;
        DecimalMark decimal;
    };
    const Case cases[] = {
        {"0,20.5,101.3\n1,21.25,99\n", FieldSeparator::comma, DecimalMark::point},
        {"0;20.5;101.3\n1;21.25;99\n", FieldSeparator::semicolon, DecimalMark::point},
        {"0;20,5;101,3\n1;21,25;99\n", FieldSeparator::semicolon, DecimalMark::comma},
        {"0\t20,5\t101,3\n1\t21,25\t99\n", FieldSeparator::tab, DecimalMark::comma},
        {"0\t20.5\t101.3\n1\t21.25\t99\n", FieldSeparator::tab, DecimalMark::point},
        {"0,\"20,5\",\"101,3\"\n1,\"21,25\",99\n", FieldSeparator::comma, DecimalMark::comma},
    };
    for (const Case& each : cases) {
        SCOPED_TRACE(each.text);
        TraceMapping mapping = plainMapping();
        mapping.separator = each.separator;
        mapping.decimal = each.decimal;
        const TraceReading reading = read(each.text, mapping);
        EXPECT_THAT(reading.defects, IsEmpty());
        EXPECT_THAT(reading.trace.seconds, ElementsAre(0, 1));
        ASSERT_EQ(reading.trace.channels.size(), 2U);
        EXPECT_THAT(reading.trace.channels[0].values, ElementsAre(20.5, 21.25));
        EXPECT_THAT(reading.trace.channels[1].values, ElementsAre(101.3, 99));
        EXPECT_TRUE(isUsable(reading));
    }
}

TEST(TraceDialects, ReadLineEndsQuotesBlanksAndMark)
{
    const char* texts[] = {
        "0,20.5,101.3\r\n1,21.25,99\r\n",
        "0,20.5,101.3\r1,21.25,99\r",
        "0,20.5,101.3\n\r\n1,21.25,99\r",
        ("\xEF\xBB\xBF"
         "0,20.5,101.3\n1,21.25,99\n"),
        "\"0\",\"20.5\",\"101.3\"\n\"1\",\"21.25\",\"99\"\n",
        " 0 , \"20.5\" ,  101.3\n\t1, 21.25 ,+99  \n",
        "0,20.5,101.3,,\n1,21.25,99,\n",
        "0,2.05e1,1013e-1\n1,21.250,99.\n",
    };
    for (const char* text : texts) {
        SCOPED_TRACE(text);
        const TraceReading reading = read(text, plainMapping());
        EXPECT_THAT(reading.defects, IsEmpty());
        ASSERT_THAT(reading.trace.seconds, ElementsAre(0, 1));
        EXPECT_THAT(reading.trace.channels[0].values, ElementsAre(20.5, 21.25));
        EXPECT_THAT(reading.trace.channels[1].values, ElementsAre(101.3, 99));
    }
}

TEST(TraceDialects, ReadEveryFormOfTime)
{
    struct Case {
        const char* first;
        const char* second;
        TimeColumn time;
        double seconds;
    };
    const auto dated = [](DateOrder order) {
        return TimeColumn{.form = TimeForm::dateTime, .order = order};
    };
    const Case cases[] = {
        {"100", "101.5", {.form = TimeForm::seconds}, 1.5},
        {"0", "0.5", {.form = TimeForm::minutes}, 30},
        {"00:59", "01:01", {.form = TimeForm::minutesSeconds}, 2},
        {"59:59.5", "120:00", {.form = TimeForm::minutesSeconds}, 3600.5},
        {"07:59", "08:00", {.form = TimeForm::hoursMinutes}, 60},
        {"11:59 AM", "12:01 pm", {.form = TimeForm::hoursMinutes}, 120},
        {"12:59 am", "1:00 a.m.", {.form = TimeForm::hoursMinutes}, 60},
        {"00:00:59", "00:01:00.25", {.form = TimeForm::hoursMinutesSeconds}, 1.25},
        {"26:00:00", "27:00:01", {.form = TimeForm::hoursMinutesSeconds}, 3601},
        {"11:59:59 PM", "12:00:00 AM", {.form = TimeForm::hoursMinutesSeconds}, 1},
        {"2031-02-28 23:59:59", "2031-03-01T00:00:01", dated(DateOrder::yearMonthDay), 2},
        {"2031/3/4 7:14", "2031/3/4 7:15", dated(DateOrder::yearMonthDay), 60},
        {"04.03.2031 07:14:05", "04.03.31 07:14:06", dated(DateOrder::dayMonthYear), 1},
        {"03/04/2031 11:59:59 AM", "3/4/2031, 12:00:00 PM", dated(DateOrder::monthDayYear), 1},
        {"04-Mar-2031 07:14:05", "04 March 2031 07:14:06", dated(DateOrder::dayMonthYear), 1},
        {"2031-03-04T07:14:05Z", "2031-03-04T08:14:06.5+01:00", dated(DateOrder::yearMonthDay),
         1.5},
        {"2031-03-04 00:10:00-0600", "2031-03-03 22:10:01-08", dated(DateOrder::yearMonthDay), 1},
        {"2028-02-29 23:59:59", "2028-03-01 00:00:00", dated(DateOrder::yearMonthDay), 1},
    };
    for (const Case& each : cases) {
        SCOPED_TRACE(each.second);
        TraceMapping mapping = oneChannel();
        mapping.separator = FieldSeparator::semicolon;
        mapping.time = each.time;
        const std::string text =
            std::string(each.first) + ";20\n" + std::string(each.second) + ";21\n";
        const TraceReading reading = read(text, mapping);
        ASSERT_EQ(reading.trace.samples(), 2U);
        EXPECT_THAT(reading.trace.seconds[1], DoubleNear(each.seconds, 1e-9));
        EXPECT_TRUE(isUsable(reading));
    }
}

TEST(TraceDialects, RefuseWhatIsNoTime)
{
    struct Case {
        const char* text;
        TimeColumn time;
    };
    const auto dated = [](DateOrder order) {
        return TimeColumn{.form = TimeForm::dateTime, .order = order};
    };
    const Case cases[] = {
        {"1:60", {.form = TimeForm::minutesSeconds}},
        {"1:2:3", {.form = TimeForm::minutesSeconds}},
        {"07:14", {.form = TimeForm::hoursMinutesSeconds}},
        {"07:14:05", {.form = TimeForm::hoursMinutes}},
        {"07:14:05 XM", {.form = TimeForm::hoursMinutesSeconds}},
        {"13:14:05 PM", {.form = TimeForm::hoursMinutesSeconds}},
        {"07:14:05x", {.form = TimeForm::hoursMinutesSeconds}},
        {"-07:14:05", {.form = TimeForm::hoursMinutesSeconds}},
        {"1e999", {.form = TimeForm::seconds}},
        {"inf", {.form = TimeForm::seconds}},
        {"0x10", {.form = TimeForm::seconds}},
        {"2031-02-29 07:14:05", dated(DateOrder::yearMonthDay)},
        {"13/13/2031 07:14:05", dated(DateOrder::monthDayYear)},
        {"1999-03-04 07:14:05", dated(DateOrder::yearMonthDay)},
        {"2031-03/04 07:14:05", dated(DateOrder::yearMonthDay)},
        {"2031-03-04", dated(DateOrder::yearMonthDay)},
        {"2031-03-04 07:14:05+99:00", dated(DateOrder::yearMonthDay)},
        {"2031-03-04 24:00:00", dated(DateOrder::yearMonthDay)},
    };
    for (const Case& each : cases) {
        SCOPED_TRACE(each.text);
        TraceMapping mapping = oneChannel();
        mapping.time = each.time;
        const TraceReading reading = read(std::string(each.text) + ",20\n", mapping);
        EXPECT_THAT(kindsOf(reading), ElementsAre(Kind::noSamples, Kind::timeUnreadable));
    }
}

TEST(TraceDialects, TakeADateOfItsOwnColumn)
{
    TraceMapping mapping = plainMapping();
    mapping.columns = 4;
    mapping.time = {1, TimeForm::dateTime, DateOrder::dayMonthYear, 0};
    mapping.channels[0].column = 3;
    mapping.channels.pop_back();
    const TraceReading reading =
        read("04.03.2031,23:59:59,x,20\n05.03.2031,00:00:00,x,21\n", mapping);
    EXPECT_THAT(reading.defects, IsEmpty());
    EXPECT_THAT(reading.trace.seconds, ElementsAre(0, 1));
    ASSERT_TRUE(reading.start.date && reading.start.secondsOfDay);
    EXPECT_EQ(formatDate(*reading.start.date), "2031-03-04");
    EXPECT_EQ(*reading.start.secondsOfDay, 86'399);
}

TEST(TraceDialects, ReadUnits)
{
    struct Case {
        RecorderUnit unit;
        PressureZero zero;
        const char* value;
        double house;
    };
    const auto absolute = PressureZero::absolute;
    const auto gauge = PressureZero::gauge;
    // NIST Special Publication 811 (2008), appendix B: t/°C = (t/°F - 32)/1.8, t/°C = T/K - 273.15,
    // 1 psi = 6.894757 kPa, 1 inHg = 3.386389 kPa, 1 mmHg = 0.1333224 kPa, 1 bar = 100 kPa.
    const Case cases[] = {
        {RecorderUnit::celsius, absolute, "134.5", 134.5},
        {RecorderUnit::fahrenheit, absolute, "212", 100},
        {RecorderUnit::fahrenheit, absolute, "270", 132.0 + 2.0 / 9},
        {RecorderUnit::kelvin, absolute, "373.15", 100},
        {RecorderUnit::kPa, absolute, "304.2", 304.2},
        {RecorderUnit::bar, absolute, "3.042", 304.2},
        {RecorderUnit::mbar, absolute, "3042", 304.2},
        {RecorderUnit::psi, absolute, "44.1", 304.0587837},
        {RecorderUnit::inHg, absolute, "29.921", 101.324145269},
        {RecorderUnit::mmHg, absolute, "760", 101.325024},
        {RecorderUnit::kPa, gauge, "202.875", 304.2},
        {RecorderUnit::psi, gauge, "-10", 32.37743},
        {RecorderUnit::bar, gauge, "0", 101.325},
        {RecorderUnit::inHg, gauge, "-28", 6.506108},
    };
    for (const Case& each : cases) {
        SCOPED_TRACE(each.value);
        TraceMapping mapping = oneChannel();
        mapping.channels[0].unit = each.unit;
        mapping.channels[0].zero = each.zero;
        mapping.channels[0].role = isTemperature(each.unit) ? ChannelRole::chamberTemperature
                                                            : ChannelRole::chamberPressure;
        const TraceReading reading = read(std::string("0,") + each.value + "\n", mapping);
        ASSERT_EQ(reading.trace.samples(), 1U);
        EXPECT_THAT(reading.trace.channels[0].values[0], DoubleNear(each.house, 1e-9));
    }
}

TEST(TraceDialects, FindTheHeaderWhereverItStands)
{
    TraceMapping mapping = plainMapping();
    mapping.header = {"Time (s)", "T \"chamber\" °C", "p"};
    mapping.headerLine = 3;
    mapping.linesToSkip = 1;
    for (const std::string before : {"", "Cycle report\nLot,7\n", "1,2,3\n\n\"a\nb\",4,5\nx\n"}) {
        SCOPED_TRACE(before);
        const TraceReading reading =
            read(before + "Time (s),\"T \"\"chamber\"\" °C\" , p\ns,C,kPa\n0,20.5,101\n", mapping);
        EXPECT_THAT(reading.defects, IsEmpty());
        EXPECT_THAT(reading.trace.seconds, ElementsAre(0));
    }
    TraceMapping latin = mapping;
    latin.encoding = TextEncoding::latin1;
    const TraceReading reading = read("Time (s),\"T \"\"chamber\"\" \xB0"
                                      "C\",p\ns,C,kPa\n0,20.5,101\n",
                                      latin);
    EXPECT_THAT(reading.defects, IsEmpty());
    EXPECT_THAT(reading.lines, ElementsAre(3));
}

TEST(TraceDialects, CountAQuotedLineEndAsALine)
{
    TraceMapping mapping = plainMapping();
    mapping.header = {"t", "A\nin °C", "B"};
    mapping.headerLine = 1;
    const TraceReading reading = read("t,\"A\nin °C\",B\r\n0,20,101\r\n1,x,101\r\n", mapping);
    EXPECT_THAT(reading.lines, ElementsAre(3, 4));
    ASSERT_EQ(reading.defects.size(), 1U);
    EXPECT_EQ(reading.defects[0].place, (TextPlace{4, 3}));
}

TEST(TraceDialects, LeaveOutWhatIsNotUsed)
{
    TraceMapping mapping = plainMapping();
    mapping.channels[0].role = ChannelRole::notUsed;
    const TraceReading reading = read("0,no number,101\n1,,102\n", mapping);
    EXPECT_THAT(reading.defects, IsEmpty());
    ASSERT_EQ(reading.trace.channels.size(), 1U);
    EXPECT_EQ(reading.trace.channels[0].name, "B");
}

TEST(TraceDialects, SayHowOftenSamplesWereTaken)
{
    const TraceReading reading = read("0,20\n1,20\n2,21\n2.5,20\n4,21\n5,20\n", oneChannel());
    EXPECT_EQ(reading.sampling.typical, 1);
    EXPECT_EQ(reading.sampling.least, 0.5);
    EXPECT_EQ(reading.sampling.largest, 1.5);
    EXPECT_TRUE(std::isnan(read("0,20\n", oneChannel()).sampling.typical));
}

} // namespace
} // namespace loadwarden
