#include "ui/shell/shortcuts.h"

#include <QWidget>

#include <algorithm>

namespace loadwarden::ui {
namespace {

std::vector<QAction*> actionsOf(const QWidget* window)
{
    std::vector<QAction*> found;
    const auto take = [&](const QWidget* widget) {
        for (QAction* const action : widget->actions()) {
            if (!action->shortcut().isEmpty() && action->isVisible()
                && std::ranges::find(found, action) == found.end()) {
                found.push_back(action);
            }
        }
    };
    take(window);
    for (const QWidget* const widget : window->findChildren<QWidget*>()) {
        if (widget->isVisible()) {
            take(widget);
        }
    }
    return found;
}

} // namespace

std::vector<ShortcutLine> shortcutsOf(const QWidget* window)
{
    std::vector<ShortcutLine> lines;
    for (const QAction* const action : actionsOf(window)) {
        QString does = action->text();
        lines.push_back({action->shortcut().toString(QKeySequence::NativeText), does.remove(u'&')});
    }
    return lines;
}

QAction* actionFor(const QWidget* window, const QKeySequence& keys)
{
    for (QAction* const action : actionsOf(window)) {
        if (action->isEnabled() && action->shortcut().matches(keys) == QKeySequence::ExactMatch) {
            return action;
        }
    }
    return nullptr;
}

} // namespace loadwarden::ui
