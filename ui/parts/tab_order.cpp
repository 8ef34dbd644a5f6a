#include "ui/parts/tab_order.h"

#include <QLayout>
#include <QScrollArea>
#include <QWidget>

#include <algorithm>
#include <vector>

namespace loadwarden::ui {
namespace {

void collect(QLayout* layout, std::vector<QWidget*>& found);

void collect(QWidget* widget, std::vector<QWidget*>& found)
{
    if (!widget->isVisible() || !widget->isEnabled()) {
        return;
    }
    if ((widget->focusPolicy() & Qt::TabFocus) == Qt::TabFocus && widget->focusProxy() == nullptr) {
        found.push_back(widget);
    }
    if (auto* const scroll = qobject_cast<QScrollArea*>(widget); scroll && scroll->widget()) {
        collect(scroll->widget(), found);
    } else if (widget->layout() != nullptr) {
        collect(widget->layout(), found);
    }
}

void collect(QLayout* layout, std::vector<QWidget*>& found)
{
    for (int i = 0; i < layout->count(); ++i) {
        QLayoutItem* const item = layout->itemAt(i);
        if (item->widget() != nullptr) {
            collect(item->widget(), found);
        } else if (item->layout() != nullptr) {
            collect(item->layout(), found);
        }
    }
}

} // namespace

QWidget* neighbourByLayout(QWidget* root, const QWidget* from, bool isNext)
{
    std::vector<QWidget*> found;
    collect(root, found);
    if (found.empty()) {
        return nullptr;
    }
    // What has the keyboard may be a part of one of them. One of them may also hold another, which
    // comes after it, so that it is looked for from behind.
    auto at = std::ranges::find(found, from);
    for (auto each = found.end(); at == found.end() && each != found.begin();) {
        --each;
        if (from != nullptr && (*each)->isAncestorOf(from)) {
            at = each;
            break;
        }
    }
    if (at == found.end()) {
        return isNext ? found.front() : found.back();
    }
    const auto index = static_cast<std::size_t>(at - found.begin());
    const std::size_t count = found.size();
    return found[(index + (isNext ? 1 : count - 1)) % count];
}

} // namespace loadwarden::ui
