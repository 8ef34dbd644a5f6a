#include "ui/parts/flow_layout.h"

#include <algorithm>

namespace loadwarden::ui {

FlowLayout::FlowLayout()
{
    setContentsMargins(0, 0, 0, 0);
}

FlowLayout::~FlowLayout() = default;

void FlowLayout::addItem(QLayoutItem* item)
{
    m_items.emplace_back(item);
}

int FlowLayout::count() const
{
    return static_cast<int>(m_items.size());
}

QLayoutItem* FlowLayout::itemAt(int index) const
{
    return index < 0 || index >= count() ? nullptr : m_items[static_cast<std::size_t>(index)].get();
}

QLayoutItem* FlowLayout::takeAt(int index)
{
    if (index < 0 || index >= count()) {
        return nullptr;
    }
    QLayoutItem* const item = m_items[static_cast<std::size_t>(index)].release();
    m_items.erase(m_items.begin() + index);
    return item;
}

int FlowLayout::heightForWidth(int width) const
{
    return arrange({0, 0, width, 0}, false);
}

QSize FlowLayout::sizeHint() const
{
    // As if there were room for all beside each other.
    QSize size;
    for (const auto& item : m_items) {
        if (!item->isEmpty()) {
            const QSize hint = item->sizeHint();
            size = {size.width() + (size.width() > 0 ? spacing() : 0) + hint.width(),
                    std::max(size.height(), hint.height())};
        }
    }
    return size;
}

QSize FlowLayout::minimumSize() const
{
    QSize size;
    for (const auto& item : m_items) {
        if (!item->isEmpty()) {
            size = size.expandedTo(item->minimumSize());
        }
    }
    return size;
}

void FlowLayout::setGeometry(const QRect& rect)
{
    QLayout::setGeometry(rect);
    arrange(rect, true);
}

int FlowLayout::arrange(const QRect& rect, bool moves) const
{
    int x = rect.x();
    int y = rect.y();
    int lineHeight = 0;
    for (const auto& item : m_items) {
        if (item->isEmpty()) {
            continue;
        }
        const QSize hint = item->sizeHint();
        const int width = std::clamp(hint.width(), item->minimumSize().width(),
                                     std::max(rect.width(), item->minimumSize().width()));
        if (x > rect.x() && x + width > rect.x() + rect.width()) {
            x = rect.x();
            y += lineHeight + spacing();
            lineHeight = 0;
        }
        const int height =
            item->hasHeightForWidth() ? item->heightForWidth(width) : hint.height();
        if (moves) {
            item->setGeometry({x, y, width, height});
        }
        x += width + spacing();
        lineHeight = std::max(lineHeight, height);
    }
    return y + lineHeight - rect.y();
}

} // namespace loadwarden::ui
