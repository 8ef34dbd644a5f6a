#pragma once

#include "ui/look/look.h"
#include "ui/trace/trace_scene.h"

#include <QWidget>

#include <memory>
#include <optional>

class QLabel;
class QPushButton;

namespace loadwarden::ui {

class TraceChart;
class TraceLegend;

/// A trace as a picture, to be looked at by pointer and by keys: left and right move it, plus and
/// minus zoom, 0 shows all of it, E the exposure; with Shift left and right read sample by sample.
/// The pointer reads values, drags and, once the picture has the keyboard, zooms by its wheel.
class TracePlot : public QWidget {
    Q_OBJECT

public:
    explicit TracePlot(Look& look, QWidget* parent = nullptr);

    /// `trace` may go afterwards. `simulated` is said on the picture.
    void show(const Trace& trace, const TraceEvaluation& evaluation, const AskedOfTrace& asked,
              bool simulated);
    using QWidget::show;

    /// The part of the time that is seen, in seconds.
    [[nodiscard]] std::pair<double, double> viewed() const;
    /// What is read under the pointer, in words; empty: nothing.
    [[nodiscard]] QString said() const;
    [[nodiscard]] const TraceScene& scene() const { return *m_scene; }

    /// Which part of the time is painted.
    enum class Part : std::uint8_t { seen, whole };
    /// Paints it, in light colours, into a rectangle of any device.
    void paint(QPainter& painter, const QRectF& in, Part part) const;
    /// Writes what is seen as a picture; PNG, or SVG where the file ends so. False: it could not be
    /// written.
    [[nodiscard]] bool save(const QString& file) const;
    [[nodiscard]] static bool canSaveSvg();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void dress();
    void zoom(double factor, std::optional<double> about = std::nullopt);
    void pan(double part);
    void showAll();
    void showExposure();
    void readAt(double seconds);
    void readNext(int step);
    void readNothing();
    void askForFile();

    Look& m_look;
    std::shared_ptr<const TraceScene> m_scene;
    TraceLegend* m_legend;
    TraceChart* m_chart;
    QPushButton* m_exposure;
    QLabel* m_saved;
    std::optional<std::size_t> m_sample;
    std::optional<double> m_draggedFrom; ///< the pointer, pixels
};

} // namespace loadwarden::ui
