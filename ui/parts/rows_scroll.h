#pragma once

class QScrollArea;
class QWidget;

namespace loadwarden::ui {

/// An area that scrolls up and down, with an empty widget for rows in it. What is put in has its
/// place in the window from the beginning: whatever is moved into another widget later gets its
/// style anew, with everything in it.
[[nodiscard]] QScrollArea* makeRowsScroll(QWidget* parent);

} // namespace loadwarden::ui
