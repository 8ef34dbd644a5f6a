#include "ui/load/cycle_list.h"

#include "core/words/say.h"
#include "ui/look/glyphs.h"
#include "ui/look/text.h"
#include "ui/today/cycle_text.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>

namespace loadwarden::ui {
namespace {

enum Data { cycleId = Qt::UserRole, glyph, tone, first, second, isHeading };

/// A row with a mark and two lines of words, or a heading.
class CycleRow : public QStyledItemDelegate {
public:
    CycleRow(Look& look, QListWidget* list) : QStyledItemDelegate(list), m_look(look), m_list(list)
    {
    }

    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override
    {
        const QFontMetrics metrics(m_look.font(Type::body));
        const int line = metrics.height();
        if (index.data(isHeading).toBool()) {
            return {option.rect.width(), line + 20};
        }
        // Where it stands is never cut: it goes into as many lines as it needs.
        const int width = m_list->viewport()->width() - 2 * space::medium - side - space::small;
        const int words =
            metrics
                .boundingRect(QRect(0, 0, std::max(width, 1), INT16_MAX),
                              Qt::AlignLeft | Qt::TextWordWrap, index.data(second).toString())
                .height();
        return {option.rect.width(), std::max(line + words + 16, 52)};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override
    {
        const Colours& colours = m_look.colours();
        const QRect rect = option.rect;
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        if (index.data(isHeading).toBool()) {
            painter->setFont(m_look.font(Type::body));
            painter->setPen(colours.muted);
            painter->drawText(rect.adjusted(space::medium, 0, -space::small, -4),
                              Qt::AlignLeft | Qt::AlignBottom, index.data(first).toString());
            painter->restore();
            return;
        }
        const bool isChosen = (option.state & QStyle::State_Selected) != 0;
        if (isChosen) {
            painter->fillRect(rect, colours.accentSoft);
            painter->fillRect(QRect(rect.left(), rect.top(), 4, rect.height()), colours.accent);
        }
        const auto shape = static_cast<Glyph>(index.data(glyph).toInt());
        const auto which = static_cast<ToneOf>(index.data(tone).toInt());
        paintGlyph(*painter, shape,
                   QRectF(rect.left() + space::medium, rect.center().y() - side / 2.0, side, side),
                   toneOf(colours, which).ink, isChosen ? colours.accentSoft : colours.window);
        const QRect words = rect.adjusted(space::medium + side + space::medium, 6, -space::small, -6);
        painter->setFont(m_look.font(Type::strong));
        painter->setPen(colours.ink);
        painter->drawText(
            words, Qt::AlignLeft | Qt::AlignTop,
            QFontMetrics(painter->font())
                .elidedText(index.data(first).toString(), Qt::ElideRight, words.width()));
        painter->setFont(m_look.font(Type::body));
        painter->setPen(isChosen ? colours.ink : colours.muted);
        painter->drawText(words.adjusted(0, QFontMetrics(m_look.font(Type::strong)).height(), 0, 0),
                          Qt::AlignLeft | Qt::AlignBottom | Qt::TextWordWrap,
                          index.data(second).toString());
        if ((option.state & QStyle::State_HasFocus) != 0) {
            painter->setPen(QPen(colours.focus, 2));
            painter->setBrush(Qt::NoBrush);
            painter->drawRect(rect.adjusted(1, 1, -2, -2));
        }
        painter->restore();
    }

private:
    static constexpr int side = 22; ///< of the mark

    Look& m_look;
    QListWidget* m_list;
};

} // namespace

CycleList::CycleList(Look& look, QWidget* parent) : QListWidget(parent), m_look(look)
{
    setObjectName(QStringLiteral("cycles"));
    setItemDelegate(new CycleRow(look, this));
    setAccessibleName(tr("Loads and tests at hand"));
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setResizeMode(QListView::Adjust); // rows are as tall as their words at this width
    // Not currentItemChanged: the list takes its first row as current when Tab comes to it.
    for (const auto by : {&QListWidget::itemClicked, &QListWidget::itemActivated}) {
        connect(this, by, this, [this](const QListWidgetItem* item) { choose(item); });
    }
    connect(&look, &Look::changed, this, &QListWidget::doItemsLayout);
}

void CycleList::show(const std::vector<CycleAtHand>& cycles, Instant now, const HouseStyle& style)
{
    clear();
    std::optional<AtHand> group;
    for (const CycleAtHand& row : cycles) {
        const AtHand waits = waitsFor(row.cycle);
        if (group != waits) {
            group = waits;
            auto* const heading = new QListWidgetItem(this);
            heading->setFlags(Qt::NoItemFlags);
            heading->setData(isHeading, true);
            const QString words = waits == AtHand::atWork      ? tr("At work")
                                  : waits == AtHand::undecided ? tr("To be signed or settled")
                                                               : tr("Done today");
            heading->setData(first, words);
            heading->setData(Qt::AccessibleTextRole, words);
        }
        auto* const item = new QListWidgetItem(this);
        const CycleMark mark = markOf(row.cycle);
        const QString lot = text(row.cycle.lot.empty() ? row.cycle.id : row.cycle.lot);
        item->setData(cycleId, text(row.cycle.id));
        item->setData(glyph, static_cast<int>(mark.glyph));
        item->setData(tone, static_cast<int>(mark.tone));
        item->setData(first, lot);
        item->setData(second, row.cycle.isTest()
                                  ? tr("%1, %2", "what a cycle is, where it stands")
                                        .arg(purposeText(row.cycle.purpose), stateText(row.cycle))
                                  : stateText(row.cycle));
        item->setData(Qt::AccessibleTextRole, cycleText(row.cycle, now, style));
        item->setToolTip(tr("%1: %2", "a sterilizer, a cycle of it")
                             .arg(text(row.sterilizerName), cycleText(row.cycle, now, style)));
        if (text(row.cycle.id) == m_marked) {
            setCurrentItem(item);
        }
    }
}

void CycleList::choose(const QListWidgetItem* item)
{
    const QString cycle = item == nullptr ? QString() : item->data(cycleId).toString();
    if (!cycle.isEmpty() && cycle != m_marked) {
        m_marked = cycle;
        emit chosen(cycle);
    }
}

void CycleList::keyPressEvent(QKeyEvent* event)
{
    QListWidget::keyPressEvent(event);
    const int keys[] = {Qt::Key_Up, Qt::Key_Down, Qt::Key_Home, Qt::Key_End, Qt::Key_PageUp,
                        Qt::Key_PageDown};
    if (std::ranges::find(keys, event->key()) != std::end(keys)) {
        choose(currentItem());
    }
}

void CycleList::mark(const QString& cycle)
{
    m_marked = cycle;
    setCurrentItem(nullptr);
    for (int i = 0; i < count(); ++i) {
        if (item(i)->data(cycleId).toString() == cycle) {
            setCurrentItem(item(i));
        }
    }
}

} // namespace loadwarden::ui
