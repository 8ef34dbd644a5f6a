#pragma once

#include "core/desk/sterilizer_day.h"
#include "core/words/say.h"
#include "ui/look/look.h"

#include <QWidget>

#include <optional>
#include <vector>

namespace loadwarden::ui {

/// The facility day of one sterilizer as a line of time, its cycles on it with their answers in
/// shape. Left and right go from cycle to cycle, Enter opens one; what it is stands in words beside
/// it (`selected`).
class DayTrack : public QWidget {
    Q_OBJECT

public:
    struct Span {
        Instant begin{};
        Instant end{};
        Instant now{};
    };

    explicit DayTrack(Look& look, QWidget* parent = nullptr);

    void show(const QString& name, std::vector<DayCycle> cycles, Span span,
              const HouseStyle& style);
    [[nodiscard]] std::optional<int> selection() const { return m_selected; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return {320, sizeHint().height()}; }

signals:
    /// In words; empty: none.
    void selected(const QString& what);
    void chosen(const QString& cycle);

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    [[nodiscard]] double x(Instant moment) const;
    [[nodiscard]] QRectF barOf(const DayCycle& cycle) const;
    [[nodiscard]] std::optional<int> cycleAt(const QPointF& point) const;
    [[nodiscard]] int lineHeight() const;
    void select(std::optional<int> index);
    void paintHours(QPainter& painter) const;
    void paintCycle(QPainter& painter, int index) const;
    void paintNow(QPainter& painter) const;

    Look& m_look;
    std::vector<DayCycle> m_cycles;
    Span m_span;
    HouseStyle m_style;
    std::optional<int> m_selected;
};

} // namespace loadwarden::ui
