#pragma once

class QLayout;

namespace loadwarden::ui {

/// Takes everything out of a layout and what stands in it; widgets are hidden at once and destroyed
/// once control is back in the event loop, so that one of them may be what asked for it.
void clearLayout(QLayout* layout);

} // namespace loadwarden::ui
