#include "ui/paper/sheets/house.h"

#include <QCoreApplication>

namespace loadwarden::paper {

QString tr(const char* words)
{
    return QCoreApplication::translate("loadwarden", words);
}

QString timeText(Instant at, const HouseStyle& style)
{
    return text(sayTime(at, style));
}

QString clockText(Instant at, const HouseStyle& style)
{
    // What differs from the day and the time of the day is an offset: then nothing is left out.
    const QString whole = timeText(at, style);
    constexpr qsizetype time = 5;
    const bool endsWithTime = whole.size() > time && whole[whole.size() - 3] == u':';
    return endsWithTime ? whole.right(time) : whole;
}

Frame frameOf(const House& house, const QString& title, const QString& subject, Instant now,
              const Head& head)
{
    return {.title = title,
            .subject = subject,
            .facility = text(house.facility),
            .made = tr("As of %1").arg(timeText(now, house.style)),
            .journal = tr("Journal %1, newest entry and its hash:\n%2:%3")
                           .arg(text(house.journal))
                           .arg(head.seq)
                           .arg(text(hexOf(head.hash)))};
}

Frame blankFrame(const House& house, const QString& title, const QString& subject)
{
    return {.title = title,
            .subject = subject,
            .facility = text(house.facility),
            .made = tr("To be typed into the journal later, as from paper"),
            .journal = {}};
}

} // namespace loadwarden::paper
