#include "core/quantities/decimal.h"
#include "core/quantities/temperature.h"
#include "core/quantities/zone.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <rapidcheck.h>
#include <string>

namespace loadwarden {
namespace {

Zone anyZone()
{
    const std::string name = *rc::gen::element<std::string>(
        "America/Chicago", "America/New_York", "America/St_Johns", "America/Sao_Paulo",
        "Africa/Casablanca", "Asia/Gaza", "Asia/Kathmandu", "Australia/Lord_Howe", "Pacific/Apia",
        "Etc/GMT+5", "UTC");
    return Zone::find(name).value();
}

/// A moment of this century; half of them near a change of the zone's offset.
Instant anyInstant(const Zone& zone)
{
    const Instant t{*rc::gen::inRange<std::int64_t>(946'684'800'000, 4'102'444'800'000)};
    if (*rc::gen::arbitrary<bool>()) {
        return t;
    }
    Instant before = t;
    Instant after = t + Duration::hours(4392); // half a year
    if (zone.offsetAt(before) == zone.offsetAt(after)) {
        return t;
    }
    while (after - before > Duration{1}) {
        const Instant middle = before + Duration{(after - before).ms / 2};
        (zone.offsetAt(middle) == zone.offsetAt(before) ? before : after) = middle;
    }
    return after + Duration{*rc::gen::inRange<std::int64_t>(-90'000'000, 90'000'000)};
}

int anyMinute()
{
    return *rc::gen::inRange(0, 1440);
}

RC_GTEST_PROP(ZoneProperties, AMomentLiesInItsPeriod, ())
{
    const Zone zone = anyZone();
    const Instant t = anyInstant(zone);
    const int minute = anyMinute();
    const Date period = zone.periodOf(t, minute);
    RC_ASSERT(zone.periodBegin(period, minute) <= t);
    RC_ASSERT(t < zone.periodBegin(period + 1, minute));
}

RC_GTEST_PROP(ZoneProperties, ResolvingALocalTimeGivesTheFirstMomentThatHasIt, ())
{
    const Zone zone = anyZone();
    const Instant t = anyInstant(zone);
    const std::int64_t local = t.ms + zone.offsetAt(t).ms;
    const Date date = zone.dateOf(t);
    const std::int64_t sinceMidnight = local - date.days * std::int64_t{86'400'000};
    const auto minute = static_cast<int>(sinceMidnight / 60'000);
    const Instant resolved = zone.resolve(date, minute);
    RC_ASSERT(resolved <= t);
    // Either this very minute, or the one in the stretch of the offset before.
    if (zone.offsetAt(resolved) == zone.offsetAt(t)) {
        RC_ASSERT(minuteOf(resolved) == minuteOf(t));
    } else {
        RC_ASSERT(zone.offsetAt(resolved) > zone.offsetAt(t));
    }
}

RC_GTEST_PROP(ZoneProperties, LaterLocalTimesAreNeverEarlierMoments, ())
{
    const Zone zone = anyZone();
    const Date date = zone.dateOf(anyInstant(zone));
    const int minute = *rc::gen::inRange(0, 1439);
    RC_ASSERT(zone.resolve(date, minute) <= zone.resolve(date, minute + 1));
    RC_ASSERT(zone.resolve(date, 1439) <= zone.resolve(date + 1, 0));
}

RC_GTEST_PROP(InstantProperties, FormattedIsReadBack, ())
{
    const Instant t{*rc::gen::inRange<std::int64_t>(946'684'800'000, 4'102'444'800'000)};
    RC_ASSERT(parseInstant(formatUtc(t)) == t);
}

RC_GTEST_PROP(DecimalProperties, MovingThePointAndTheExponentChangesNothing, ())
{
    const std::int64_t scaled =
        *rc::gen::inRange<std::int64_t>(-1'000'000'000'000, 1'000'000'000'000);
    const int decimals = *rc::gen::inRange(0, 7);
    const std::string text = std::to_string(scaled);
    RC_ASSERT(parseDecimal(text + "e-" + std::to_string(decimals), decimals) == scaled);
    const std::size_t sign = scaled < 0 ? 1 : 0;
    const auto point = *rc::gen::inRange<std::size_t>(1, text.size() - sign + 1);
    const auto exponent = static_cast<int>(text.size() - sign - point) - decimals;
    std::string moved = text.substr(0, sign + point);
    if (sign + point < text.size()) {
        moved += '.' + text.substr(sign + point);
    }
    moved += 'E' + std::to_string(exponent);
    RC_ASSERT(parseDecimal(moved, decimals) == scaled);
}

RC_GTEST_PROP(TemperatureProperties, ScalesOrderAlike, ())
{
    const auto celsius = *rc::gen::inRange<std::int64_t>(-27'315, 30'000);
    const auto fahrenheit = *rc::gen::inRange<std::int64_t>(-45'967, 60'000);
    // °C = (°F - 32) / 1.8, in whole numbers: 9 c compares with 5 (f - 32).
    RC_ASSERT((Temperature::fromCelsiusHundredths(celsius)
               <=> Temperature::fromFahrenheitHundredths(fahrenheit))
              == (9 * celsius <=> 5 * (fahrenheit - 3'200)));
}

} // namespace
} // namespace loadwarden
