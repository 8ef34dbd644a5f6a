#pragma once

class QWidget;

namespace loadwarden::ui {

/// What Tab goes to from a widget, before it or after it, in the order in which the layouts below a
/// root have what can be seen; behind the last comes the first. Null: there is nothing to go to.
/// Qt's own chain of focus is that of making: rows that are made anew would come last in it, and
/// Qt 6.4 loses some of them.
[[nodiscard]] QWidget* neighbourByLayout(QWidget* root, const QWidget* from, bool isNext);

} // namespace loadwarden::ui
