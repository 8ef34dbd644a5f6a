#include "core/quantities/date.h"
#include "core/quantities/instant.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

TEST(Duration, CountsInMilliseconds)
{
    EXPECT_EQ(Duration::hours(2), Duration::minutes(120));
    EXPECT_EQ(Duration::minutes(3), Duration::seconds(180));
    EXPECT_EQ(Duration::seconds(1) + Duration::milliseconds(5), Duration{1005});
    EXPECT_EQ(-Duration::seconds(1), Duration::seconds(1) - Duration::seconds(2));
    EXPECT_LT(Duration::minutes(-1), Duration{});
}

TEST(MinuteOf, RoundsDownOnBothSidesOf1970)
{
    EXPECT_EQ(minuteOf(Instant{59'999}), 0);
    EXPECT_EQ(minuteOf(Instant{60'000}), 1);
    EXPECT_EQ(minuteOf(Instant{-1}), -1);
    EXPECT_EQ(minuteOf(Instant{-60'000}), -1);
    EXPECT_EQ(minuteOf(Instant{-60'001}), -2);
}

struct KnownMoment {
    const char* text;
    std::int64_t seconds;
    const char* source;
};

// 1234567890 and 2000000000 are widely printed moments of the POSIX count (IEEE Std 1003.1,
// "Seconds Since the Epoch"); the others by GNU date, `date -u -d TEXT +%s`, coreutils 9.1.
const KnownMoment knownMoments[] = {
    {"2009-02-13T23:31:30Z", 1'234'567'890, "POSIX"},
    {"2033-05-18T03:33:20Z", 2'000'000'000, "POSIX"},
    {"2000-02-29T12:00+05:45", 951'804'900, "GNU date"},
    {"2099-12-31T23:59:59-12:00", 4'102'487'999, "GNU date"},
    {"2031-03-04T07:14-06:00", 1'930'396'440, "GNU date"},
    {"2000-01-01T00:00+14:59", 946'630'860, "arithmetic: 946684800 - 14:59"},
};

TEST(ParseInstant, AgreesWithMomentsKnownOutside)
{
    for (const KnownMoment& known : knownMoments) {
        const auto t = parseInstant(known.text);
        ASSERT_TRUE(t) << known.text;
        EXPECT_EQ(t->ms, known.seconds * 1000) << known.text << ", source: " << known.source;
    }
}

TEST(ParseInstant, ReadsOneToThreeDecimalsOfASecond)
{
    const std::int64_t whole = parseInstant("2031-03-04T13:14:05Z")->ms;
    EXPECT_EQ(parseInstant("2031-03-04T13:14:05.7Z")->ms, whole + 700);
    EXPECT_EQ(parseInstant("2031-03-04T13:14:05.07Z")->ms, whole + 70);
    EXPECT_EQ(parseInstant("2031-03-04T13:14:05.007Z")->ms, whole + 7);
}

TEST(ParseInstant, RefusesWhatIsNotAnExistingMoment)
{
    for (const char* text : {
             "",
             "2031-03-04",
             "2031-03-04T07:14",          // no offset
             "2031-03-04 07:14Z",         // RFC 3339 allows it, the evidence file does not
             "2031-03-04t07:14z",         //
             "2031-03-04T7:14Z",          //
             "2031-03-04T24:00Z",         //
             "2031-03-04T07:60Z",         //
             "2031-03-04T07:14:60Z",      // leap seconds are not counted
             "2031-03-04T07:14:05.Z",     //
             "2031-03-04T07:14:05.1234Z", //
             "2031-03-04T07:14.5Z",       //
             "2031-03-04T07:14+15:00",    //
             "2031-03-04T07:14+06:60",    //
             "2031-03-04T07:14+0600",     //
             "2031-03-04T07:14+06",       //
             "2031-03-04T07:14Zz",        //
             "2031-03-04T07:14Z ",        //
             " 2031-03-04T07:14Z",        //
             "2031-02-29T07:14Z",         // not a leap year
             "2031-04-31T07:14Z",         //
             "2031-13-01T07:14Z",         //
             "2031-00-01T07:14Z",         //
             "2031-01-00T07:14Z",         //
             "1999-12-31T23:59Z",         //
             "2100-01-01T00:00Z",         //
             "+031-03-04T07:14Z",         //
         }) {
        EXPECT_FALSE(parseInstant(text)) << text;
    }
    using namespace std::string_view_literals;
    EXPECT_FALSE(parseInstant("2031-03-04T07:14Z\0"sv));
}

TEST(FormatUtc, WritesMillisecondsAlways)
{
    EXPECT_EQ(formatUtc(*parseInstant("2031-03-04T07:14-06:00")), "2031-03-04T13:14:00.000Z");
    EXPECT_EQ(formatUtc(Instant{-1}), "1969-12-31T23:59:59.999Z");
    EXPECT_EQ(formatUtc(Instant{}), "1970-01-01T00:00:00.000Z");
}

TEST(FormatAt, WritesWhatWasRead)
{
    const std::pair<const char*, Duration> rows[] = {
        {"2031-03-04T07:14-06:00", Duration::hours(-6)},
        {"2031-03-04T23:59:59+12:45", Duration::minutes(765)},
        {"2031-03-04T00:00:00.001-03:30", Duration::minutes(-210)},
        {"2031-03-04T00:00:01.010+00:00", Duration{}},
    };
    for (const auto& [text, offset] : rows) {
        EXPECT_EQ(formatAt(*parseInstant(text), offset), text);
    }
}

TEST(ParseWrittenInstant, TellsTheOffsetBehindTheTime)
{
    const auto offsetIn = [](const char* time) { return parseWrittenInstant(time).value().offset; };
    EXPECT_EQ(offsetIn("2031-03-04T07:14-06:00"), Duration::hours(-6));
    EXPECT_EQ(offsetIn("2031-03-04T07:14:30.5+05:45"), Duration::minutes(345));
    EXPECT_EQ(offsetIn("2031-03-04T07:14+00:00"), Duration{});
    EXPECT_FALSE(offsetIn("2031-03-04T07:14Z"));
    EXPECT_FALSE(parseWrittenInstant("2031-03-04T07:14"));
}

TEST(IsFromMinuteOn, CutsBothMomentsToTheMinute)
{
    constexpr Duration second = Duration::seconds(1);
    for (const Instant minute : {*parseInstant("2031-03-04T07:14Z"), Instant{-60'000}}) {
        EXPECT_TRUE(isFromMinuteOn(minute, minute));
        EXPECT_TRUE(isFromMinuteOn(minute, minute + Duration::milliseconds(59'999)));
        EXPECT_FALSE(isFromMinuteOn(minute, minute + Duration::minutes(1)));
        EXPECT_TRUE(isFromMinuteOn(minute, minute - second));
        EXPECT_FALSE(isFromMinuteOn(minute - second, minute));
        EXPECT_TRUE(isFromMinuteOn(minute + Duration::minutes(1), minute + second));
    }
}

TEST(ParseDate, ReadsExistingDatesOfThisCentury)
{
    EXPECT_EQ(parseDate("2000-01-01")->days, 10'957); // GNU date: 946684800 s / 86400
    EXPECT_TRUE(parseDate("2096-02-29"));
    for (const char* text : {"2095-02-29", "2031-3-04", "2031-03-4", "20310304", "2031-03-32",
                             "2031/03/04", "2031-03-04 ", "1999-12-31", "2100-01-01", ""}) {
        EXPECT_FALSE(parseDate(text)) << text;
    }
}

TEST(FormatDate, GivesBackWhatWasRead)
{
    for (const char* text : {"2000-01-01", "2000-12-31", "2032-02-29", "2099-12-31"}) {
        EXPECT_EQ(formatDate(*parseDate(text)), text);
    }
    EXPECT_EQ(formatDate(*parseDate("2032-02-28") + 2), "2032-03-01");
}

} // namespace
} // namespace loadwarden
