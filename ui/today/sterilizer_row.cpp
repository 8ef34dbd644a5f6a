#include "ui/today/sterilizer_row.h"

#include "ui/look/text.h"
#include "ui/parts/clock_text.h"
#include "ui/parts/glyph_view.h"
#include "ui/today/cycle_text.h"
#include "ui/today/day_track.h"

#include <QCoreApplication>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

struct Shown {
    Glyph glyph;
    ToneOf tone;
    QString says;
};

struct RowWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::SterilizerRow)

public:
    static Shown state(const SterilizerDay& day, Instant now, const HouseStyle& style)
    {
        switch (day.service) {
        case ServiceState::inService: break;
        case ServiceState::outOfService:
            return {Glyph::failed, ToneOf::bad,
                    day.since ? tr("Out of service: %1").arg(text(day.why))
                              : tr("Not yet returned to service")};
        case ServiceState::qualification:
            return {Glyph::pending, ToneOf::waiting, tr("In qualification: %1").arg(text(day.why))};
        case ServiceState::held:
            return {Glyph::failed, ToneOf::bad, tr("Held: %1").arg(text(day.why))};
        }
        if (day.now) {
            const QString lot = text(day.now->lot.empty() ? day.now->id : day.now->lot);
            return day.now->phase == Phase::running && day.now->start
                       ? Shown{Glyph::running, ToneOf::neutral,
                               tr("%1 runs since %2")
                                   .arg(lot, dayClockText(*day.now->start, now, style))}
                       : Shown{Glyph::pending, ToneOf::neutral, tr("%1 is being loaded").arg(lot)};
        }
        return {Glyph::note, ToneOf::neutral, tr("In service")};
    }

    static Shown test(const SterilizerDay& day, Instant now, const HouseStyle& style)
    {
        const QString at = day.testRun && day.testRun->start
                               ? dayClockText(*day.testRun->start, now, style)
                               : QString();
        switch (day.test) {
        case PeriodTest::notAsked: return {Glyph::note, ToneOf::neutral, tr("No air-removal test")};
        case PeriodTest::notRun: return {Glyph::pending, ToneOf::waiting, tr("Bowie-Dick not run")};
        case PeriodTest::notRead:
            return {Glyph::pending, ToneOf::waiting, tr("Bowie-Dick %1 not read").arg(at)};
        case PeriodTest::failed:
            return {Glyph::failed, ToneOf::bad, tr("Bowie-Dick %1 failed").arg(at)};
        case PeriodTest::voided:
            return {Glyph::voided, ToneOf::neutral, tr("Bowie-Dick %1 void").arg(at)};
        case PeriodTest::passed:
            return {Glyph::passed, ToneOf::good, tr("Bowie-Dick %1 passed").arg(at)};
        }
        return {Glyph::note, ToneOf::neutral, {}};
    }
};

QHBoxLayout* line(GlyphView* glyph, QLabel* says)
{
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::small);
    row->addWidget(glyph, 0, Qt::AlignTop);
    row->addWidget(says, 1);
    return row;
}

} // namespace

SterilizerRow::SterilizerRow(Look& look, QWidget* parent)
    : QWidget(parent),
      m_name(makeLabel({}, Type::strong)),
      m_stateGlyph(new GlyphView(look, Glyph::note, ToneOf::neutral, 18)),
      m_state(makeLabel({})),
      m_testGlyph(new GlyphView(look, Glyph::note, ToneOf::neutral, 18)),
      m_test(makeLabel({})),
      m_track(new DayTrack(look))
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, space::small, 0, space::small);
    row->setSpacing(space::large);
    auto* const words = new QWidget;
    words->setFixedWidth(300);
    auto* const column = new QVBoxLayout(words);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(m_name);
    column->addLayout(line(m_stateGlyph, m_state));
    column->addLayout(line(m_testGlyph, m_test));
    column->addStretch();
    row->addWidget(words);
    row->addWidget(m_track, 1, Qt::AlignVCenter);
    connect(m_track, &DayTrack::chosen, this, &SterilizerRow::chosen);
    connect(m_track, &DayTrack::selected, this, &SterilizerRow::pointedAt);
}

void SterilizerRow::show(const SterilizerDay& day, const Today& today, const HouseStyle& style)
{
    m_name->setText(text(day.name));
    const Shown state = RowWords::state(day, today.now, style);
    m_stateGlyph->show(state.glyph, state.tone);
    m_state->setText(state.says);
    const Shown test = RowWords::test(day, today.now, style);
    m_testGlyph->show(test.glyph, test.tone);
    m_test->setText(test.says);
    m_track->show(text(day.name), day.cycles, {today.dayBegin, today.dayEnd, today.now}, style);
}

} // namespace loadwarden::ui
