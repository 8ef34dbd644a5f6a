#include "core/words/say.h"

#include <QCoreApplication>
#include <QString>

#include <chrono>
#include <cstdlib>

namespace loadwarden {

namespace {

struct Values {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    static QString month(unsigned number);
    static QString unit(Unit unit);
};

QString Values::month(unsigned number)
{
    switch (number) {
    case 1: return tr("Jan");
    case 2: return tr("Feb");
    case 3: return tr("Mar");
    case 4: return tr("Apr");
    case 5: return tr("May");
    case 6: return tr("Jun");
    case 7: return tr("Jul");
    case 8: return tr("Aug");
    case 9: return tr("Sep");
    case 10: return tr("Oct");
    case 11: return tr("Nov");
    default: return tr("Dec");
    }
}

/// A unit behind its number.
QString Values::unit(Unit unit)
{
    switch (unit) {
    case Unit::celsius: return tr("%1 °C");
    case Unit::fahrenheit: return tr("%1 °F");
    case Unit::minutes: return tr("%1 min");
    case Unit::seconds: return tr("%1 s");
    case Unit::kPaAbsolute: return tr("%1 kPa abs");
    case Unit::barAbsolute: return tr("%1 bar abs");
    case Unit::kPaGauge: return tr("%1 kPa gauge");
    case Unit::barGauge: return tr("%1 bar gauge");
    case Unit::psiGauge: return tr("%1 psi gauge");
    case Unit::mgPerL: return tr("%1 mg/L");
    case Unit::percent: return tr("%1 %", "relative humidity");
    }
    return {};
}

QString twoDigits(std::int64_t n)
{
    return QString::number(n).rightJustified(2, u'0');
}

QString hoursAndMinutes(std::int64_t minutes)
{
    return twoDigits(minutes / 60) + u':' + twoDigits(minutes % 60);
}

QString offsetText(Duration offset)
{
    const std::int64_t minutes = std::abs(offset.ms) / 60'000;
    return QStringLiteral("UTC") + (offset.ms < 0 ? u'-' : u'+') + hoursAndMinutes(minutes);
}

/// Whether the clock showed, or will show, the same local time once more within a day.
bool comesTwice(Instant t, const Zone& zone)
{
    const Duration offset = zone.offsetAt(t);
    for (const Duration day : {Duration::hours(-24), Duration::hours(24)}) {
        const Duration other = zone.offsetAt(t + day);
        const Instant same = t + offset - other;
        if (other != offset && zone.offsetAt(same) == other) {
            return true;
        }
    }
    return false;
}

} // namespace

std::string sayTime(Instant t, const HouseStyle& style)
{
    const Duration offset = style.zone ? style.zone->offsetAt(t) : Duration{};
    const std::int64_t localMinute = minuteOf(t + offset);
    const auto sinceEpoch = std::chrono::minutes(localMinute);
    const auto day = std::chrono::floor<std::chrono::days>(sinceEpoch);
    const std::chrono::year_month_day date{std::chrono::sys_days(day)};

    const QString said =
        QCoreApplication::translate("loadwarden", "%1 %2 %3 %4", "day, month, year, time of day")
            .arg(QString::number(unsigned{date.day()}), Values::month(unsigned{date.month()}),
                 QString::number(int{date.year()}), hoursAndMinutes((sinceEpoch - day).count()));
    if (style.zone && !comesTwice(t, *style.zone)) {
        return said.toStdString();
    }
    return QCoreApplication::translate("loadwarden", "%1 (%2)", "a time, its offset from UTC")
        .arg(said, offsetText(offset))
        .toStdString();
}

std::string sayQuantity(const Quantity& quantity)
{
    const bool negative = quantity.thousandths < 0;
    // The sign is taken off digit by digit, so that the lowest number there is has one, too.
    const std::int64_t whole = std::abs(quantity.thousandths / 1000);
    const std::int64_t rest = std::abs(quantity.thousandths % 1000);
    QString number = (negative ? QStringLiteral("-") : QString()) + QString::number(whole);
    if (rest != 0) {
        QString decimals = QString::number(rest).rightJustified(3, u'0');
        while (decimals.endsWith(u'0')) {
            decimals.chop(1);
        }
        number += u'.' + decimals;
    }
    return Values::unit(quantity.unit).arg(number).toStdString();
}

} // namespace loadwarden
