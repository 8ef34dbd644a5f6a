#include "ui/settings/register_list.h"

#include <QPainter>
#include <QStyledItemDelegate>

#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int idRole = Qt::UserRole;
constexpr int saysRole = Qt::UserRole + 1;
constexpr int pastRole = Qt::UserRole + 2;
constexpr int mark = 4; ///< at the left of what is chosen

/// Paints a name and, below it, what is said of it.
class LinePainter : public QStyledItemDelegate {
public:
    LinePainter(Look& look, QListWidget* list)
        : QStyledItemDelegate(list), m_look(look), m_list(list)
    {
    }

    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& /*option*/,
                                 const QModelIndex& /*index*/) const override
    {
        const int height = QFontMetrics(m_look.font(Type::strong)).height()
                           + QFontMetrics(m_look.font(Type::body)).height() + 2 * space::small;
        return {0, std::max(height, space::target)};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override
    {
        const Colours& colours = m_look.colours();
        const bool isChosen = (option.state & QStyle::State_Selected) != 0;
        painter->save();
        if (isChosen) {
            painter->fillRect(option.rect, colours.accentSoft);
            painter->fillRect(QRect(option.rect.topLeft(), QSize(mark, option.rect.height())),
                              colours.accent);
        }
        const QRect words =
            option.rect.adjusted(space::medium, space::small, -space::small, -space::small);
        const bool isPast = index.data(pastRole).toBool();
        line(*painter, words, Qt::AlignTop, m_look.font(isPast ? Type::body : Type::strong),
             isPast && !isChosen ? colours.muted : colours.ink,
             index.data(Qt::DisplayRole).toString());
        line(*painter, words, Qt::AlignBottom, m_look.font(Type::body),
             isChosen ? colours.ink : colours.muted, index.data(saysRole).toString());
        painter->setPen(QPen(colours.line, 1));
        painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
        if (isChosen && m_list->hasFocus()) {
            painter->setPen(QPen(colours.focus, 2));
            painter->drawRect(option.rect.adjusted(1, 1, -1, -1));
        }
        painter->restore();
    }

private:
    static void line(QPainter& painter, const QRect& where, Qt::Alignment side, const QFont& font,
                     const QColor& colour, const QString& says)
    {
        painter.setFont(font);
        painter.setPen(colour);
        painter.drawText(where, static_cast<int>(Qt::AlignLeft | side) | Qt::TextSingleLine,
                         QFontMetrics(font).elidedText(says, Qt::ElideRight, where.width()));
    }

    Look& m_look;
    QListWidget* m_list;
};

} // namespace

RegisterList::RegisterList(Look& look, const QString& name, QWidget* parent) : QListWidget(parent)
{
    setObjectName(QStringLiteral("register"));
    setAccessibleName(name);
    setItemDelegate(new LinePainter(look, this));
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setTabKeyNavigation(false);
    connect(&look, &Look::changed, this, [this] {
        doItemsLayout();
        viewport()->update();
    });
    connect(this, &QListWidget::currentRowChanged, this, &RegisterList::tell);
}

void RegisterList::show(const std::vector<RegisterLine>& lines)
{
    const QString before = chosenId();
    m_isShowing = true;
    clear();
    for (const RegisterLine& line : lines) {
        auto* const item = new QListWidgetItem(line.name, this);
        item->setData(idRole, line.id.isNull() ? QStringLiteral("") : line.id);
        item->setData(saysRole, line.says);
        item->setData(pastRole, line.isPast);
        item->setData(
            Qt::AccessibleTextRole,
            line.says.isEmpty()
                ? line.name
                : tr("%1, %2", "a thing and what is said of it").arg(line.name, line.says));
        // What is cut in the list is whole here.
        item->setToolTip(line.says.isEmpty() ? line.name : line.name + u'\n' + line.says);
    }
    m_isShowing = false;
    if (!before.isNull()) {
        choose(before);
    }
    tell();
}

void RegisterList::choose(const QString& id)
{
    for (int row = 0; row < count(); ++row) {
        if (item(row)->data(idRole).toString() == id) {
            setCurrentRow(row);
            return;
        }
    }
}

QString RegisterList::chosenId() const
{
    const QListWidgetItem* const item = currentItem();
    if (item == nullptr) {
        return {};
    }
    const QString id = item->data(idRole).toString();
    return id.isEmpty() ? QStringLiteral("") : id;
}

void RegisterList::tell()
{
    if (m_isShowing) {
        return;
    }
    const QString now = chosenId();
    const bool isSame = now == m_told && now.isNull() == m_told.isNull();
    m_told = now;
    if (!isSame) {
        emit chosen(now);
    }
}

} // namespace loadwarden::ui
