#pragma once

#include "core/release/decision.h"

#include <QRectF>

class QPainter;

namespace loadwarden::paper {

/// A verdict's shape in black: a disc with a tick, a square with two bars, a triangle on its point
/// with a stroke. The word always stands beside it.
void paintMark(QPainter& painter, Verdict verdict, const QRectF& in);

/// The same in outline, for a test.
void paintMark(QPainter& painter, TestResult result, const QRectF& in);

} // namespace loadwarden::paper
