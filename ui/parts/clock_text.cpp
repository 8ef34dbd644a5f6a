#include "ui/parts/clock_text.h"

#include <QDate>
#include <QLocale>

namespace loadwarden::ui {

QString clockText(Instant moment, const std::optional<Zone>& zone)
{
    constexpr std::int64_t minutesOfDay = 24 * 60;
    const Instant local{moment.ms + (zone ? zone->offsetAt(moment).ms : 0)};
    const std::int64_t minute = ((minuteOf(local) % minutesOfDay) + minutesOfDay) % minutesOfDay;
    return QStringLiteral("%1:%2")
        .arg(minute / 60, 2, 10, QLatin1Char('0'))
        .arg(minute % 60, 2, 10, QLatin1Char('0'));
}

QString dayText(Date day)
{
    return QLocale().toString(QDate(1970, 1, 1).addDays(day.days),
                              QStringLiteral("dddd, d MMMM yyyy"));
}

} // namespace loadwarden::ui
