#pragma once

#include "ui/look/look.h"

#include <QAbstractSlider>

#include <optional>

namespace loadwarden::ui {

/// A strip with one boundary, on which the front is placed where one sees it: dragged, or moved by
/// arrow keys (with Shift by a thousandth of the strip), Page Up, Page Down, Home and End. Its
/// value is in thousandths of the strip; nothing outside of the strip can be reached.
class FrontStrip : public QAbstractSlider {
    Q_OBJECT

public:
    FrontStrip(Look& look, int boundary, QWidget* parent = nullptr);

    /// nullopt: nobody has placed it yet.
    [[nodiscard]] std::optional<int> front() const;
    void clear();

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

signals:
    void placed();

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void sliderChange(SliderChange change) override;

private:
    void placeAt(double x);
    void setPlaced();

    Look& m_look;
    int m_boundary;
    bool m_isPlaced = false;
};

} // namespace loadwarden::ui
