#pragma once

class QLayout;
class QWidget;

namespace loadwarden::ui {

/// Takes everything out of a layout and what stands in it; widgets are hidden at once and destroyed
/// once control is back in the event loop, so that one of them may be what asked for it.
void clearLayout(QLayout* layout);

/// Shows what was put into the layouts below a widget and gives it its place, at once. Qt does both
/// an event loop later; until then a page that was filled anew would be short, and what somebody
/// had scrolled to would be gone.
void settleLayouts(QWidget* root);

} // namespace loadwarden::ui
