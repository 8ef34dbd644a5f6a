#pragma once

#include <QAction>
#include <QKeySequence>
#include <QString>

#include <vector>

class QWidget;

namespace loadwarden::ui {

/// A shortcut and what it does, as the actions of a window have them.
struct ShortcutLine {
    QString keys;
    QString does;
};

/// Of every action that can be seen of a window, its own and those of its visible widgets, in that
/// order; each once.
[[nodiscard]] std::vector<ShortcutLine> shortcutsOf(const QWidget* window);

/// The enabled action of that shortcut among them, or null.
[[nodiscard]] QAction* actionFor(const QWidget* window, const QKeySequence& keys);

} // namespace loadwarden::ui
