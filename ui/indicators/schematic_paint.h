#pragma once

#include "core/indicators/sheet_pattern.h"
#include "ui/look/look.h"

#include <QFontMetrics>
#include <QPainter>
#include <QRectF>

#include <optional>

// Indicators as plain strips, patches and grids in the program's own style: hatching instead of
// colours, so that what is marked stays marked in print and for everybody's eyes, and words outside
// of what is drawn. No maker's product looks so.

namespace loadwarden::ui {

/// A strip with the words above and below it, of a given height.
struct StripPlace {
    QRectF strip;
    double boundary = 0; ///< x of the line

    /// In a widget so wide; `height` of the strip alone.
    StripPlace(const QFontMetrics& metrics, double width, double height, int boundaryThousandths);

    [[nodiscard]] double xOf(int thousandths) const;
    /// Within the strip, whatever is asked.
    [[nodiscard]] int thousandthsAt(double x) const;
};

/// Height of all of it.
[[nodiscard]] int heightOfStrip(const QFontMetrics& metrics, int height);

/// With the front where it ends; none: nobody has placed it.
void paintStrip(QPainter& painter, const Colours& colours, const StripPlace& place,
                std::optional<int> front);

/// A patch of which so many thousandths have changed.
void paintPatch(QPainter& painter, const Colours& colours, const QRectF& patch, int changed);

/// A grid with its cells as they are marked.
void paintSheet(QPainter& painter, const Colours& colours, const QRectF& square,
                const SheetCells& cells);

/// A cell alone, as in a legend.
void paintCell(QPainter& painter, const Colours& colours, const QRectF& cell, CellMark mark);

} // namespace loadwarden::ui
