#include "core/words/say.h"

#include <gtest/gtest.h>

#include <cstdint>

namespace loadwarden {

namespace {

std::string timeIn(const char* zone, const char* t)
{
    return sayTime(parseInstant(t).value(), HouseStyle{Zone::find(zone).value(), false});
}

} // namespace

TEST(SayTime, IsInTheZoneOfTheHouse)
{
    EXPECT_EQ(timeIn("America/Chicago", "2031-03-04T13:14:00Z"), "4 Mar 2031 07:14");
    EXPECT_EQ(timeIn("Asia/Kolkata", "2031-12-31T18:30:00Z"), "1 Jan 2032 00:00");
    EXPECT_EQ(timeIn("UTC", "2032-02-29T23:59:59.999Z"), "29 Feb 2032 23:59");
}

TEST(SayTime, HasTheOffsetWithoutAZone)
{
    EXPECT_EQ(sayTime(parseInstant("2031-03-04T07:14:00-06:00").value(), HouseStyle{}),
              "4 Mar 2031 13:14 (UTC+00:00)");
}

TEST(SayTime, FollowsTheClockThroughAGap)
{
    EXPECT_EQ(timeIn("America/Chicago", "2031-03-09T07:59:59Z"), "9 Mar 2031 01:59");
    EXPECT_EQ(timeIn("America/Chicago", "2031-03-09T08:00:00Z"), "9 Mar 2031 03:00");
}

TEST(SayTime, TellsATimeThatComesTwiceApartByItsOffset)
{
    EXPECT_EQ(timeIn("America/Chicago", "2031-11-02T05:59:59Z"), "2 Nov 2031 00:59");
    EXPECT_EQ(timeIn("America/Chicago", "2031-11-02T06:00:00Z"), "2 Nov 2031 01:00 (UTC-05:00)");
    EXPECT_EQ(timeIn("America/Chicago", "2031-11-02T06:59:59Z"), "2 Nov 2031 01:59 (UTC-05:00)");
    EXPECT_EQ(timeIn("America/Chicago", "2031-11-02T07:00:00Z"), "2 Nov 2031 01:00 (UTC-06:00)");
    EXPECT_EQ(timeIn("America/Chicago", "2031-11-02T07:59:59Z"), "2 Nov 2031 01:59 (UTC-06:00)");
    EXPECT_EQ(timeIn("America/Chicago", "2031-11-02T08:00:00Z"), "2 Nov 2031 02:00");
    EXPECT_EQ(timeIn("Australia/Lord_Howe", "2031-04-05T14:45:00Z"),
              "6 Apr 2031 01:45 (UTC+11:00)");
}

TEST(SayTime, NamesEveryMonth)
{
    const char* const months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                  "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    Instant t = parseInstant("2031-01-15T12:00:00Z").value();
    const HouseStyle utc{Zone::find("UTC").value(), false};
    for (const char* month : months) {
        EXPECT_EQ(sayTime(t, utc).substr(3, 3), month);
        t = t + Duration::hours(24 * 30) + Duration::hours(10);
    }
}

TEST(SayTime, TakesMomentsBefore1970)
{
    EXPECT_EQ(sayTime(Instant{-1}, HouseStyle{}), "31 Dec 1969 23:59 (UTC+00:00)");
}

TEST(SayQuantity, IsAsTypedWithItsUnit)
{
    EXPECT_EQ(sayQuantity({Unit::celsius, 131'900}), "131.9 °C"); // typed "131.90"
    EXPECT_EQ(sayQuantity({Unit::fahrenheit, 270'000}), "270 °F");
    EXPECT_EQ(sayQuantity({Unit::minutes, 4'000}), "4 min");
    EXPECT_EQ(sayQuantity({Unit::seconds, 239'005}), "239.005 s");
    EXPECT_EQ(sayQuantity({Unit::kPaAbsolute, 206'800}), "206.8 kPa abs");
    EXPECT_EQ(sayQuantity({Unit::barAbsolute, 3'042}), "3.042 bar abs");
    EXPECT_EQ(sayQuantity({Unit::kPaGauge, 202'875}), "202.875 kPa gauge");
    EXPECT_EQ(sayQuantity({Unit::barGauge, -750}), "-0.75 bar gauge");
    EXPECT_EQ(sayQuantity({Unit::psiGauge, 30'010}), "30.01 psi gauge");
    EXPECT_EQ(sayQuantity({Unit::mgPerL, 450'000}), "450 mg/L");
    EXPECT_EQ(sayQuantity({Unit::percent, 40'500}), "40.5 %");
}

TEST(SayQuantity, TakesZeroAndTheExtremes)
{
    EXPECT_EQ(sayQuantity({Unit::celsius, 0}), "0 °C");
    EXPECT_EQ(sayQuantity({Unit::celsius, -1}), "-0.001 °C");
    EXPECT_EQ(sayQuantity({Unit::celsius, INT64_MAX}), "9223372036854775.807 °C");
    EXPECT_EQ(sayQuantity({Unit::celsius, INT64_MIN}), "-9223372036854775.808 °C");
}

} // namespace loadwarden
