#pragma once

#include "ui/look/colours.h"
#include "ui/trace/trace_scene.h"

#include <QPen>

namespace loadwarden::ui {

/// How a line is drawn: lines of different sensors differ in their dashes, too. `scale`: widths of
/// another resolution.
[[nodiscard]] QPen penOf(const TraceSeries& series, const Colours& colours, double scale = 1);

} // namespace loadwarden::ui
