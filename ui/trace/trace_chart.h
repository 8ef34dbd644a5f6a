#pragma once

#include "ui/trace/trace_scene.h"

#include <qcustomplot.h>

#include <memory>
#include <optional>
#include <vector>

namespace loadwarden::ui {

struct Colours;

/// The picture of a trace: temperatures with pressure on an axis of its own, below them on the same
/// time the difference from saturation and the lethality so far. Only draws; TracePlot listens.
class TraceChart : public QCustomPlot {
public:
    TraceChart();

    /// Draws anew, all of the time.
    void show(std::shared_ptr<const TraceScene> scene, const Colours& colours, const QFont& font);
    /// Shows that part of the time, as far as there is one, and fits the temperatures to it.
    void view(double from, double to);
    [[nodiscard]] QCPRange viewed() const { return m_view; }
    /// A line at the sample that is read; nullopt: none.
    void readAt(std::optional<double> seconds);
    [[nodiscard]] double secondsAt(double x) const;
    /// Where the pointer reads values.
    [[nodiscard]] QRect frame() const;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QCPAxisRect* addRect(const QString& caption, int stretch);
    void addSeries(std::size_t place, QCPAxis* value);
    void addMarks(std::size_t place);
    void addPhases();
    void addLimits();
    void addLimit(QCPAxisRect* rect, QCPAxis::AxisType side, double at, const QString& says,
                  bool isAbove);
    QCPItemText* addText(QCPAxisRect* rect, const QString& says);
    void dress(QCPAxisRect& rect);
    void fitValues();
    void fitTicks(); ///< as many as their labels have room for
    void placePhaseNames();
    [[nodiscard]] QCPAxis* axisOf(SeriesKind kind) const;
    [[nodiscard]] QPen linePen(const QColor& colour, Qt::PenStyle style, double width) const;

    std::shared_ptr<const TraceScene> m_scene;
    const Colours* m_colours = nullptr;
    QFont m_font;
    QCPMarginGroup* m_margins;
    QCPAxisRect* m_main = nullptr;
    QCPAxisRect* m_saturation = nullptr; ///< null: none
    QCPAxisRect* m_lethality = nullptr;  ///< null: none
    std::vector<QCPItemStraightLine*> m_reading;
    std::vector<std::pair<QCPItemText*, ScenePhase>> m_names;
    QCPRange m_view;
};

} // namespace loadwarden::ui
