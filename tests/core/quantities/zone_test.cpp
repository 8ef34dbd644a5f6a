#include "core/quantities/zone.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <memory>
#include <sstream>
#include <string>
#include <thread>
#include <vector>

namespace loadwarden {
namespace {

Zone zone(std::string_view name)
{
    const std::optional<Zone> found = Zone::find(name);
    if (!found) {
        throw std::runtime_error("this computer has no time zone " + std::string(name));
    }
    return *found;
}

Date date(std::string_view text)
{
    return parseDate(text).value();
}

Instant at(std::string_view text)
{
    return parseInstant(text).value();
}

TEST(ZoneFind, KnowsNamesOnly)
{
    for (const char* name :
         {"America/Chicago", "UTC", "Etc/GMT+5", "America/Argentina/Buenos_Aires",
          "America/North_Dakota/New_Salem", "America/Port-au-Prince"}) {
        EXPECT_TRUE(Zone::find(name)) << name;
    }
    for (const char* name :
         {"", "/", "America", "America/", "/America/Chicago", "America//Chicago", "America/Nowhere",
          "america/chicago", "America/Chicago ", "America/../Asia/Tokyo", "./UTC", "UTC+03:00",
          "UTC+3", "ABC5", "CST6CDT,M3.2.0,M11.1.0", "CST6CDT,M3.2.0/2,M11.1.0/2",
          "right/America/Chicago", "posix/America/Chicago", "\xc3\x84/B"}) {
        EXPECT_FALSE(Zone::find(name)) << name;
    }
    using namespace std::string_view_literals;
    EXPECT_FALSE(Zone::find("America/Chicago\0"sv));
    std::string longName(1'000'000, 'A');
    longName[2] = '/';
    EXPECT_FALSE(Zone::find(longName));
}

TEST(ZoneFind, GivesTheSameZoneToManyThreads)
{
    std::array<bool, 4> right{};
    std::vector<std::thread> threads;
    threads.reserve(right.size());
    for (bool& result : right) {
        threads.emplace_back([&result] {
            result = true;
            for (int i = 0; i < 500; ++i) {
                const Zone tokyo = zone("Asia/Tokyo");
                const Zone denver = zone("America/Denver");
                result = result && tokyo.offsetAt(Instant{}) == Duration::hours(9)
                         && denver.name() == "America/Denver";
            }
        });
    }
    for (std::thread& thread : threads) {
        thread.join();
    }
    EXPECT_EQ(right, (std::array{true, true, true, true}));
}

// Since 2007 clocks in the United States go forward at 02:00 on the second Sunday of March and back
// at 02:00 on the first Sunday of November (Energy Policy Act of 2005, section 110; 15 U.S.C. 260a;
// from memory). In 2031 these are 9 March and 2 November.
TEST(Zone, ResolvesTheTimesAtWhichClocksChange)
{
    const Zone chicago = zone("America/Chicago");
    EXPECT_EQ(chicago.resolve(date("2031-03-09"), 119), at("2031-03-09T07:59Z"));
    EXPECT_EQ(chicago.resolve(date("2031-03-09"), 120), at("2031-03-09T08:00Z")); // not there
    EXPECT_EQ(chicago.resolve(date("2031-03-09"), 150), at("2031-03-09T08:00Z")); // not there
    EXPECT_EQ(chicago.resolve(date("2031-03-09"), 180), at("2031-03-09T08:00Z"));
    EXPECT_EQ(chicago.resolve(date("2031-11-02"), 90), at("2031-11-02T06:30Z")); // the first
    EXPECT_EQ(chicago.resolve(date("2031-11-02"), 120), at("2031-11-02T08:00Z"));
}

TEST(Zone, FacilityDaysHave23And25Hours)
{
    const Zone chicago = zone("America/Chicago");
    const auto length = [&](std::string_view day) {
        return chicago.periodBegin(date(day) + 1, 0) - chicago.periodBegin(date(day), 0);
    };
    EXPECT_EQ(length("2031-03-09"), Duration::hours(23));
    EXPECT_EQ(length("2031-11-02"), Duration::hours(25));
    EXPECT_EQ(length("2031-11-03"), Duration::hours(24));
}

TEST(Zone, PeriodBeginsAtTheTestMinute)
{
    const Zone chicago = zone("America/Chicago");
    const int six = 6 * 60;
    EXPECT_EQ(chicago.periodOf(at("2031-03-04T06:00-06:00"), six), date("2031-03-04"));
    EXPECT_EQ(chicago.periodOf(at("2031-03-04T05:59:59.999-06:00"), six), date("2031-03-03"));
    EXPECT_EQ(chicago.periodOf(at("2031-03-04T00:00-06:00"), 0), date("2031-03-04"));
    // The second 01:30 of the night belongs to the period that began at the first.
    EXPECT_EQ(chicago.periodOf(at("2031-11-02T01:30-05:00"), 90), date("2031-11-02"));
    EXPECT_EQ(chicago.periodOf(at("2031-11-02T01:00-06:00"), 90), date("2031-11-02"));
    EXPECT_EQ(chicago.periodOf(at("2031-11-02T01:29-05:00"), 90), date("2031-11-01"));
}

// Newfoundland put its clocks back at 00:01 until 2011 (tz database, file northamerica): the old
// date came once more after the new one had begun.
TEST(Zone, APeriodOnceBegunDoesNotEndWhenTheOldDateComesAgain)
{
    const Zone newfoundland = zone("America/St_Johns");
    const Instant again = at("2010-11-06T23:30-03:30");
    EXPECT_EQ(newfoundland.dateOf(again), date("2010-11-06"));
    EXPECT_EQ(newfoundland.periodOf(again, 0), date("2010-11-07"));
}

// Samoa went over the date line and had no 30 December 2011 (tz database, file australasia).
TEST(Zone, OfADayLeftOutEveryTimeIsTheEndOfTheGap)
{
    const Zone samoa = zone("Pacific/Apia");
    const Instant end = at("2011-12-30T10:00Z");
    EXPECT_EQ(samoa.resolve(date("2011-12-30"), 0), end);
    EXPECT_EQ(samoa.resolve(date("2011-12-30"), 1439), end);
    EXPECT_EQ(samoa.resolve(date("2011-12-31"), 0), end);
    EXPECT_EQ(samoa.dateOf(end), date("2011-12-31"));
    EXPECT_EQ(samoa.dateOf(end - Duration{1}), date("2011-12-29"));
    EXPECT_EQ(samoa.periodOf(end, 0), date("2011-12-31"));
    EXPECT_EQ(samoa.periodOf(end, 6 * 60), date("2011-12-30"));
}

TEST(Zone, NearestOffsetGoesOnOutsideTheKnownYears)
{
    const Zone nepal = zone("Asia/Kathmandu");
    EXPECT_EQ(nepal.offsetAt(Instant{INT64_MIN}), Duration::minutes(345));
    EXPECT_EQ(nepal.offsetAt(Instant{INT64_MAX}), Duration::minutes(345));
}

// Python's zoneinfo as the outside source; see zones_table.py beside this file.
TEST(Zone, AgreesWithPythonsZoneinfo)
{
    const std::string command =
        LOADWARDEN_PYTHON " '" LOADWARDEN_SOURCE_DIR "/tests/core/quantities/zones_table.py'";
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    ASSERT_TRUE(pipe);
    std::array<char, 256> line{};
    int rows = 0;
    while (std::fgets(line.data(), static_cast<int>(line.size()), pipe.get()) != nullptr) {
        ++rows;
        std::istringstream fields(line.data());
        std::string kind;
        std::string name;
        fields >> kind >> name;
        if (kind == "resolve") {
            std::string day;
            int minute = 0;
            std::int64_t expected = 0;
            fields >> day >> minute >> expected;
            ASSERT_FALSE(fields.fail()) << line.data();
            // Days of 2100, beside the last change of 2099, cannot be written in evidence.
            if (const std::optional<Date> parsed = parseDate(day)) {
                ASSERT_EQ(zone(name).resolve(*parsed, minute).ms, expected) << line.data();
            }
        } else {
            ASSERT_EQ(kind, "period") << line.data();
            std::int64_t moment = 0;
            int minute = 0;
            std::string expected;
            fields >> moment >> minute >> expected;
            ASSERT_FALSE(fields.fail()) << line.data();
            ASSERT_EQ(formatDate(zone(name).periodOf(Instant{moment}, minute)), expected)
                << line.data();
        }
    }
    EXPECT_EQ(pclose(pipe.release()), 0);
    EXPECT_GT(rows, 30'000);
}

} // namespace
} // namespace loadwarden
