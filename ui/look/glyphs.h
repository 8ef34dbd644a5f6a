#pragma once

#include "core/release/decision.h"

#include <QColor>
#include <QRectF>

class QPainter;

namespace loadwarden::ui {

/// Marks of our own. Each differs from every other by its outline and by what stands in it, so that
/// none is told from another by colour.
enum class Glyph : std::uint8_t {
    release,    ///< a disc with a tick
    quarantine, ///< a square with two bars
    reprocess,  ///< a triangle on its tip with a stroke
    passed,     ///< an open ring with a tick
    failed,     ///< an open triangle on its tip
    voided,     ///< an open ring, struck through
    pending,    ///< an open square with a bar
    running,    ///< a ring, three quarters of it
    note,       ///< a dot
    loadwarden  ///< the program's: a chamber seen from its door
};

/// Paints within the greatest square in the middle of a rectangle. `on` is what stands behind it.
void paintGlyph(QPainter& painter, Glyph glyph, const QRectF& in, const QColor& ink,
                const QColor& on);

[[nodiscard]] Glyph glyphOf(Verdict verdict);
[[nodiscard]] Glyph glyphOf(TestResult result);

} // namespace loadwarden::ui
