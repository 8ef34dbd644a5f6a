#pragma once

#include <QSize>
#include <QString>
#include <QWidget>

#include <vector>

// What can be wrong with a page for somebody's eyes, fingers or screen reader. Each check looks at
// what is painted or told, not at the code that made it.

namespace loadwarden::ui_tests {

struct Fault {
    QString what;
    QString where;
};

/// Visible widgets of a window.
[[nodiscard]] std::vector<QWidget*> visibleWidgets(const QWidget& window);

/// Text whose strongest pixels have less than 4.5:1 on what is behind them (WCAG 2.2, 1.4.3).
[[nodiscard]] std::vector<Fault> lowContrast(QWidget& window);
/// Text that has less room than it needs, and what reaches over the window's edge.
[[nodiscard]] std::vector<Fault> clippedText(const QWidget& window);
/// What makes a window wider or higher than that: widgets that cannot be smaller.
[[nodiscard]] std::vector<Fault> tooLarge(const QWidget& window, const QSize& most);
/// What is wider than its scroll area, which does not scroll that way.
[[nodiscard]] std::vector<Fault> cutByScrolling(const QWidget& window);
/// What takes the keyboard or the pointer and has no name for a screen reader.
[[nodiscard]] std::vector<Fault> nameless(const QWidget& window);
/// What Tab does not reach, and where it goes back up though nothing stands to the right.
[[nodiscard]] std::vector<Fault> wrongTabOrder(QWidget& window);
/// What is pressed and is smaller than 44 pixels.
[[nodiscard]] std::vector<Fault> smallTargets(const QWidget& window);

} // namespace loadwarden::ui_tests
