#pragma once

#include "core/cycle/trace/evaluate.h"
#include "core/cycle/trace/trace_reader.h"
#include "ui/look/look.h"

#include <QWidget>

#include <vector>

class QVBoxLayout;

namespace loadwarden::ui {

struct TraceFact;
struct TraceFactGroup;

/// What is computed of a trace, in words: each figure with the answer to what is asked of it and
/// what that means, and the defects of its text with line and column.
class TraceFacts : public QWidget {
    Q_OBJECT

public:
    explicit TraceFacts(Look& look, QWidget* parent = nullptr);

    void show(const Trace& trace, const TraceEvaluation& evaluation, const AskedOfTrace& asked,
              const std::vector<TraceDefect>& defects = {});
    using QWidget::show;

private:
    void addGroup(const TraceFactGroup& group);
    void addFact(const TraceFact& fact);
    void addDefects(const std::vector<TraceDefect>& defects);

    Look& m_look;
    QVBoxLayout* m_rows;
};

} // namespace loadwarden::ui
