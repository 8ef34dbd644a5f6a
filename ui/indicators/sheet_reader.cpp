#include "ui/indicators/sheet_reader.h"

#include "core/words/say_reading.h"
#include "ui/indicators/schematic_paint.h"
#include "ui/indicators/sheet_grid.h"
#include "ui/look/text.h"
#include "ui/parts/flow_layout.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QIcon>
#include <QPixmap>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int iconSide = 28;
constexpr CellMark brushes[] = {CellMark::full, CellMark::part, CellMark::none};

QString capitalOf(QString word)
{
    word[0] = word[0].toUpper();
    return word;
}

QPixmap pictureOf(const Colours& colours, CellMark mark, double ratio)
{
    QPixmap picture(QSize(iconSide, iconSide) * ratio);
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    paintCell(painter, colours, QRectF(0.5, 0.5, iconSide - 1, iconSide - 1), mark);
    return picture;
}

SheetCells allOf(CellMark mark)
{
    SheetCells cells{};
    cells.fill(mark);
    return cells;
}

bool hasPalePlace(const SheetCells& cells)
{
    return std::ranges::any_of(
        cells, [](CellMark each) { return each == CellMark::part || each == CellMark::none; });
}

} // namespace

SheetReader::SheetReader(Look& look, AnswersBy answersBy, QWidget* parent)
    : IndicatorReader(parent),
      m_look(look),
      m_grid(new SheetGrid(look)),
      m_cursor(makeMuted({}, false)),
      m_marks(new QButtonGroup(this)),
      m_patterns(new QButtonGroup(this))
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::large);
    row->addLayout(makeGridSide());
    row->addLayout(makePatternSide(look, answersBy), 1);
    connect(m_grid, &SheetGrid::marked, this, &SheetReader::takeMarks);
    connect(m_grid, &SheetGrid::moved, this, [this] { m_cursor->setText(m_grid->cursorText()); });
    connect(m_patterns, &QButtonGroup::idClicked, this, &SheetReader::takeName);
    connect(m_marks, &QButtonGroup::idToggled, this, [this](int id, bool isOn) {
        if (isOn) {
            m_grid->takeUp(static_cast<CellMark>(id));
        }
    });
    connect(&look, &Look::changed, this, &SheetReader::paintIcons);
    m_cursor->setText(m_grid->cursorText());
    paintIcons();
    showPattern();
}

QVBoxLayout* SheetReader::makeGridSide()
{
    auto* const column = new QVBoxLayout;
    column->setSpacing(space::small);
    column->addWidget(m_grid, 0, Qt::AlignLeft);
    column->addWidget(m_cursor);
    column->addStretch();
    return column;
}

QVBoxLayout* SheetReader::makePatternSide(Look& look, AnswersBy answersBy)
{
    auto* const column = new QVBoxLayout;
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("Mark on the sheet"), Type::strong));
    auto* const marks = new FlowLayout;
    marks->setSpacing(space::small);
    for (const CellMark mark : brushes) {
        auto* const button =
            makeButton(tr("%1  (%2)", "a mark, its key")
                           .arg(capitalOf(textOf(mark)), QString::number(static_cast<int>(mark))),
                       ButtonKind::choice);
        button->setAccessibleName(tr("Mark as %1").arg(textOf(mark)));
        button->setIconSize(QSize(iconSide, iconSide));
        m_marks->addButton(button, static_cast<int>(mark));
        marks->addWidget(button);
    }
    m_marks->button(static_cast<int>(CellMark::full))->setChecked(true);
    auto* const all = makeButton(tr("Mark all so"));
    connect(all, &QPushButton::clicked, this,
            [this] { m_grid->setCells(allOf(static_cast<CellMark>(m_marks->checkedId()))); });
    marks->addWidget(all);
    column->addLayout(marks);
    column->addWidget(makeLabel(tr("Or name what you see"), Type::strong));
    auto* const patterns = new FlowLayout;
    patterns->setSpacing(space::small);
    for (const SheetPattern pattern : everySheetPattern) {
        if (pattern == SheetPattern::unclear && answersBy == AnswersBy::surroundings) {
            continue;
        }
        auto* const button = makeButton(capitalOf(text(say(pattern))), ButtonKind::choice);
        m_patterns->addButton(button, static_cast<int>(pattern));
        patterns->addWidget(button);
    }
    column->addLayout(patterns);
    m_says = new SeenLine(look, tr("Nothing is marked or named yet."), 1);
    m_suggests = makeMuted({});
    column->addWidget(m_says);
    column->addWidget(m_suggests);
    column->addStretch();
    return column;
}

void SheetReader::paintIcons()
{
    for (const CellMark mark : brushes) {
        m_marks->button(static_cast<int>(mark))
            ->setIcon(QIcon(pictureOf(m_look.colours(), mark, devicePixelRatioF())));
    }
}

std::optional<SheetPattern> SheetReader::pattern() const
{
    const int chosen = m_patterns->checkedId();
    return chosen < 0 ? std::nullopt : std::optional(static_cast<SheetPattern>(chosen));
}

std::optional<Seen> SheetReader::seen() const
{
    const std::optional<SheetPattern> named = pattern();
    return named ? std::optional(seenOf(*named)) : std::nullopt;
}

void SheetReader::clear()
{
    name(std::nullopt);
    m_isNamedByMarks = false;
    m_grid->setCells({});
}

void SheetReader::name(std::optional<SheetPattern> pattern)
{
    if (pattern) {
        m_patterns->button(static_cast<int>(*pattern))->setChecked(true);
        return;
    }
    m_patterns->setExclusive(false);
    if (QAbstractButton* const chosen = m_patterns->checkedButton()) {
        chosen->setChecked(false);
    }
    m_patterns->setExclusive(true);
}

void SheetReader::takeMarks()
{
    const std::optional<SheetPattern> marked = patternOf(m_grid->cells());
    if (m_isNamedByMarks || !pattern()) {
        name(marked);
        m_isNamedByMarks = marked.has_value();
    }
    refuseComplete();
    showPattern();
}

void SheetReader::takeName()
{
    m_isNamedByMarks = false;
    const bool isRefused = refuseComplete();
    showPattern();
    if (isRefused) {
        m_suggests->setText(tr("On the sheet a place is marked as not fully changed, so it is not "
                               "complete. If that was a slip, mark it anew."));
    }
}

bool SheetReader::refuseComplete()
{
    if (pattern() != SheetPattern::complete || !hasPalePlace(m_grid->cells())) {
        return false;
    }
    const std::optional<SheetPattern> marked = patternOf(m_grid->cells());
    name(marked);
    m_isNamedByMarks = marked.has_value();
    return true;
}

void SheetReader::showPattern()
{
    const std::optional<SheetPattern> named = pattern();
    m_says->show(seen());
    if (named) {
        const ReadingSaid suggestion = suggestionOf(*named);
        m_suggests->setText(tr("%1 Source: %2.", "what a sheet suggests, its source")
                                .arg(text(suggestion.says), text(suggestion.source)));
    } else {
        m_suggests->setText(tr("Only a sheet that is uniform and complete passes."));
    }
    emit changed();
}

} // namespace loadwarden::ui
