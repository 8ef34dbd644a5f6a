#include "ui/indicators/front_reader.h"

#include "core/indicators/front.h"
#include "ui/indicators/front_strip.h"
#include "ui/look/text.h"

#include <QLocale>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

constexpr double tenths = 10;

QString millimetres(double tenthsMm)
{
    return QLocale().toString(tenthsMm / tenths, 'f', 1);
}

} // namespace

FrontReader::FrontReader(Look& look, const ReadingGuide& guide, AnswersBy answersBy,
                         QWidget* parent)
    : IndicatorReader(parent),
      m_directions(guide.directions),
      m_boundary(boundaryOf(guide.directions).value_or(unstatedBoundary)),
      m_strip(new FrontStrip(look, m_boundary)),
      m_place(makeMuted({})),
      m_says(new SeenLine(look,
                          tr("Place the front where you see it end: drag it, or use the "
                             "arrow keys (with Shift in small steps)."),
                          2))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    column->addWidget(m_strip);
    column->addWidget(m_place);
    column->addWidget(m_says);
    if (answersBy == AnswersBy::reader) {
        m_notSure = makeButton(tr("Not sure"), ButtonKind::choice);
        m_notSure->setAccessibleName(tr("Not sure where the front ends"));
        column->addWidget(m_notSure, 0, Qt::AlignLeft);
        connect(m_notSure, &QPushButton::toggled, this, &FrontReader::showPlace);
    }
    connect(m_strip, &FrontStrip::placed, this, [this] {
        if (m_notSure != nullptr) {
            const QSignalBlocker quiet(m_notSure);
            m_notSure->setChecked(false);
        }
        showPlace();
    });
    showPlace();
}

std::optional<Seen> FrontReader::seen() const
{
    if (m_notSure != nullptr && m_notSure->isChecked()) {
        return Seen::unclear;
    }
    const std::optional<int> front = m_strip->front();
    return front ? std::optional(seenOfFront(*front, m_boundary)) : std::nullopt;
}

void FrontReader::clear()
{
    m_strip->clear();
}

QString FrontReader::placeText(int front) const
{
    if (!boundaryOf(m_directions)) {
        return tr("Front at %1 % of the strip; its own boundary is not stated, so this one is only "
                  "drawn.")
            .arg(QLocale().toString(front / tenths, 'f', 1));
    }
    const auto strip = static_cast<double>(*m_directions->stripTenthsMm);
    return tr("Front at %1 mm, boundary at %2 mm of %3 mm")
        .arg(millimetres(strip * front / wholeStrip),
             millimetres(static_cast<double>(*m_directions->boundaryTenthsMm)), millimetres(strip));
}

void FrontReader::showPlace()
{
    const std::optional<int> front = m_strip->front();
    m_place->setText(front ? placeText(*front)
                     : boundaryOf(m_directions)
                         ? tr("Drawn to the scale of the product's directions")
                         : tr("Not to scale: the product's measures are not stated"));
    m_says->show(seen());
    m_strip->setAccessibleDescription(m_place->text() + QStringLiteral(". ") + m_says->text());
    emit changed();
}

} // namespace loadwarden::ui
