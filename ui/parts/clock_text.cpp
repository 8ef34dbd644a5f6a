#include "ui/parts/clock_text.h"

#include "ui/look/text.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

namespace loadwarden::ui {
namespace {

struct ClockWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::ClockWords)
};

/// Without a zone nobody knows: then the day is said.
bool isSameDay(Instant a, Instant b, const std::optional<Zone>& zone)
{
    return zone && zone->dateOf(a) == zone->dateOf(b);
}

} // namespace

QString clockText(Instant moment, const std::optional<Zone>& zone)
{
    constexpr std::int64_t minutesOfDay = 24 * 60;
    const Instant local{moment.ms + (zone ? zone->offsetAt(moment).ms : 0)};
    const std::int64_t minute = ((minuteOf(local) % minutesOfDay) + minutesOfDay) % minutesOfDay;
    return QStringLiteral("%1:%2")
        .arg(minute / 60, 2, 10, QLatin1Char('0'))
        .arg(minute % 60, 2, 10, QLatin1Char('0'));
}

QString dayClockText(Instant moment, Instant now, const HouseStyle& style)
{
    return isSameDay(moment, now, style.zone) ? clockText(moment, style.zone)
                                              : text(sayTime(moment, style));
}

QString spanText(Instant from, Instant to, Instant now, const HouseStyle& style)
{
    const QString until =
        isSameDay(from, to, style.zone) ? clockText(to, style.zone) : text(sayTime(to, style));
    return ClockWords::tr("%1 to %2", "a time, a later one")
        .arg(dayClockText(from, now, style), until);
}

QString dayText(Date day)
{
    return QLocale().toString(QDate(1970, 1, 1).addDays(day.days),
                              QStringLiteral("dddd, d MMMM yyyy"));
}

std::optional<int> minuteOfDayIn(const QString& typed)
{
    QString digits = typed.trimmed();
    const auto colon = digits.indexOf(u':');
    if (colon >= 0) {
        digits.remove(colon, 1);
        if (digits.size() - colon != 2) {
            return std::nullopt;
        }
    }
    bool isNumber = false;
    const int number = digits.toInt(&isNumber);
    const int hour = number / 100;
    const int minute = number % 100;
    if (!isNumber || digits.size() < 3 || digits.size() > 4 || number < 0 || hour > 23
        || minute > 59) {
        return std::nullopt;
    }
    return hour * 60 + minute;
}

QString minuteText(std::int64_t minuteOfDay)
{
    const auto twoDigits = [](std::int64_t number) {
        return QString::number(number).rightJustified(2, u'0');
    };
    return twoDigits(minuteOfDay / 60) + u':' + twoDigits(minuteOfDay % 60);
}

} // namespace loadwarden::ui
