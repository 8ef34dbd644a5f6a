#include "ui/indicators/colour_reader.h"

#include "core/words/say_terms.h"
#include "ui/indicators/schematic_paint.h"
#include "ui/look/text.h"

#include <QButtonGroup>
#include <QCoreApplication>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

constexpr int swatchWidth = 88;
constexpr QSize patchSize(96, 44);

struct ColourWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::ColourWords)
};

/// A patch of which a part has changed, beside words that say the same.
class Patch : public QWidget {
public:
    Patch(Look& look, int changed) : m_look(look), m_changed(changed)
    {
        setFixedSize(patchSize);
        connect(&look, &Look::changed, this, qOverload<>(&QWidget::update));
    }

protected:
    void paintEvent(QPaintEvent* /*event*/) override
    {
        QPainter painter(this);
        paintPatch(painter, m_look.colours(), QRectF(rect()).adjusted(2, 2, -2, -2), m_changed);
    }

private:
    Look& m_look;
    int m_changed;
};

QWidget* makeSample(Look& look, const QString& heading, const std::optional<ColourSample>& sample)
{
    auto* const box = new QWidget;
    auto* const row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::medium);
    auto* const swatch = new Swatch(look, sample ? text(sample->rgb) : QString());
    row->addWidget(swatch, 0, Qt::AlignTop);
    auto* const words = new QVBoxLayout;
    words->setSpacing(0);
    words->addWidget(makeMuted(heading));
    words->addWidget(makeLabel(sample && !sample->name.empty() ? text(sample->name)
                                                               : ColourWords::tr("not named"),
                               Type::strong));
    if (!swatch->hasSample()) {
        words->addWidget(makeMuted(ColourWords::tr("no sample taken")));
    }
    words->addStretch();
    row->addLayout(words, 1);
    return box;
}

struct PatchChoice {
    Seen seen;
    int changed;
};

constexpr PatchChoice patchChoices[] = {
    {Seen::endColourReached, 1'000}, {Seen::endColourPartly, 500}, {Seen::unchanged, 0}};

} // namespace

Swatch::Swatch(Look& look, const QString& rgb, QWidget* parent)
    : QWidget(parent), m_look(look), m_colour(QColor::fromString(rgb))
{
    setFixedSize(swatchWidth, space::target);
}

void Swatch::paintEvent(QPaintEvent* /*event*/)
{
    const Colours& colours = m_look.colours();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF in = QRectF(rect()).adjusted(1, 1, -1, -1);
    painter.setPen(QPen(colours.edge, 2, hasSample() ? Qt::SolidLine : Qt::DashLine));
    painter.setBrush(hasSample() ? QBrush(m_colour) : Qt::NoBrush);
    painter.drawRect(in);
    if (!hasSample()) {
        painter.drawLine(in.bottomLeft(), in.topRight());
    }
}

QWidget* makeColourSamples(Look& look, const std::optional<ReadingDirections>& directions)
{
    auto* const box = new QWidget;
    auto* const column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::large);
    row->addWidget(makeSample(look, ColourWords::tr("Start colour"),
                              directions ? directions->startColour : std::nullopt),
                   1);
    row->addWidget(makeSample(look, ColourWords::tr("End colour"),
                              directions ? directions->endColour : std::nullopt),
                   1);
    column->addLayout(row);
    column->addWidget(makeMuted(
        ColourWords::tr("Makers' colours differ, and colours on a screen do not replace the "
                        "maker's directions: compare with those.")));
    return box;
}

ColourReader::ColourReader(Look& look, const ReadingGuide& guide, AnswersBy answersBy,
                           QWidget* parent)
    : IndicatorReader(parent), m_look(look), m_choices(new QButtonGroup(this))
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::medium);
    column->addWidget(makeColourSamples(look, guide.directions));
    column->addWidget(makePatches(answersBy));
    if (answersBy == AnswersBy::reader) {
        m_says = new SeenLine(look, tr("Choose what you see."), 1);
        column->addWidget(m_says);
        connect(m_choices, &QButtonGroup::idToggled, this, [this] {
            m_says->show(seen());
            emit changed();
        });
    }
}

QWidget* ColourReader::makePatches(AnswersBy answersBy)
{
    auto* const box = new QWidget;
    auto* const grid = new QGridLayout(box);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(space::small);
    grid->setColumnStretch(1, 1);
    int line = 0;
    const auto add = [&](Seen seen, QWidget* patch) {
        QString word = text(say(seen));
        word[0] = word[0].toUpper();
        if (patch != nullptr) {
            grid->addWidget(patch, line, 0);
        }
        if (answersBy == AnswersBy::reader) {
            auto* const button = makeButton(word, ButtonKind::choice);
            m_choices->addButton(button, static_cast<int>(seen));
            grid->addWidget(button, line, 1, Qt::AlignLeft);
        } else {
            grid->addWidget(makeLabel(word), line, 1, Qt::AlignVCenter);
        }
        ++line;
    };
    for (const PatchChoice& choice : patchChoices) {
        add(choice.seen, new Patch(m_look, choice.changed));
    }
    if (answersBy == AnswersBy::reader) {
        add(Seen::unclear, nullptr);
    }
    return box;
}

std::optional<Seen> ColourReader::seen() const
{
    const int chosen = m_choices->checkedId();
    return chosen < 0 ? std::nullopt : std::optional(static_cast<Seen>(chosen));
}

void ColourReader::clear()
{
    m_choices->setExclusive(false);
    if (QAbstractButton* const chosen = m_choices->checkedButton()) {
        chosen->setChecked(false);
    }
    m_choices->setExclusive(true);
}

} // namespace loadwarden::ui
