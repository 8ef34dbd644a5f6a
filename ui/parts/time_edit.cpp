#include "ui/parts/time_edit.h"

#include "ui/look/text.h"
#include "ui/parts/clock_text.h"

#include <QHBoxLayout>
#include <QLineEdit>

namespace loadwarden::ui {
namespace {

constexpr int minutesOfDay = 24 * 60;

int minuteIn(const Zone& zone, Instant moment)
{
    const std::int64_t local = moment.ms + zone.offsetAt(moment).ms;
    const std::int64_t day = std::int64_t{zone.dateOf(moment).days} * 86'400'000;
    return static_cast<int>((local - day) / 60'000);
}

} // namespace

TimeEdit::TimeEdit(Zone zone, Instant shown, QWidget* parent)
    : QWidget(parent), m_zone(std::move(zone)), m_date(new QLineEdit), m_time(new QLineEdit)
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::small);
    m_time->setMaximumWidth(100);
    m_date->setMaximumWidth(160);
    m_time->setAccessibleName(tr("Time as 07:14"));
    m_date->setAccessibleName(tr("Date as 2031-03-04"));
    row->addWidget(m_time);
    row->addWidget(m_date);
    row->addStretch();
    setFocusProxy(m_time);
    for (QLineEdit* const line : {m_time, m_date}) {
        connect(line, &QLineEdit::textChanged, this, [this] { m_untouched.reset(); });
        connect(line, &QLineEdit::textEdited, this, &TimeEdit::edited);
    }
    set(shown);
}

void TimeEdit::set(Instant moment)
{
    m_time->setText(minuteText(minuteIn(m_zone, moment)));
    m_date->setText(text(formatDate(m_zone.dateOf(moment))));
    // In the hour that the clocks show twice, the moment itself is still one.
    m_untouched = Instant{moment.ms - moment.ms % 60'000};
}

void TimeEdit::clearTime()
{
    m_untouched.reset();
    m_time->clear();
}

bool TimeEdit::isEmpty() const
{
    return m_time->text().trimmed().isEmpty();
}

std::optional<int> TimeEdit::minuteOfDay() const
{
    return minuteOfDayIn(m_time->text());
}

std::optional<JournalTime> TimeEdit::value() const
{
    if (m_untouched) {
        return journalTime(*m_untouched, m_zone);
    }
    if (!whatIsWrong().isEmpty()) {
        return std::nullopt;
    }
    const Instant moment =
        m_zone.resolve(*parseDate(m_date->text().trimmed().toStdString()), *minuteOfDay());
    return journalTime(moment, m_zone);
}

QString TimeEdit::whatIsWrong() const
{
    if (m_untouched) {
        return {};
    }
    const auto minute = minuteOfDay();
    if (!minute) {
        return tr("Type the time as 07:14.");
    }
    const auto date = parseDate(m_date->text().trimmed().toStdString());
    if (!date) {
        return tr("Type the date as 2031-03-04.");
    }
    const Instant moment = m_zone.resolve(*date, *minute);
    if (minuteIn(m_zone, moment) != *minute % minutesOfDay) {
        return tr("The clocks skip this time on that day. Type a time before or after the change.");
    }
    for (const int shift : {30, 60, 120}) {
        const Instant again = moment + Duration::minutes(shift);
        if (minuteIn(m_zone, again) == *minute && m_zone.dateOf(again) == *date) {
            return tr(
                "The clocks show this time twice on that day. Type a time before or after the "
                "change, and write in the reason which one it was.");
        }
    }
    return {};
}

} // namespace loadwarden::ui
