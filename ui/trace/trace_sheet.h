#pragma once

#include "core/cycle/trace/evaluate.h"
#include "core/cycle/trace/trace_reader.h"
#include "ui/paper/kit/pages.h"

#include <QString>

#include <functional>

class QPainter;
class QRectF;

namespace loadwarden::ui {

/// A recording as it is put on paper.
struct TraceOnPaper {
    QString sterilizer;
    QString file;      ///< its name
    bool kept = false; ///< it is attached to the load
    bool simulated = false;
    /// Paints its picture into a rectangle; called while the pages are painted.
    std::function<void(QPainter&, const QRectF&)> picture;
};

/// Picture, figures in words and defects. The frame says of which load; what is given besides may
/// go once this returns.
[[nodiscard]] paper::Pages traceSheet(const TraceOnPaper& of, const TraceReading& reading,
                                      const TraceEvaluation& evaluation, const AskedOfTrace& asked,
                                      const paper::Frame& frame, paper::PageSize size);

} // namespace loadwarden::ui
