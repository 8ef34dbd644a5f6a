#pragma once

#include "core/indicators/reading_check.h"
#include "ui/look/look.h"

#include <QWidget>

#include <optional>

namespace loadwarden::ui {

/// An indicator as it is drawn to be read: a plain strip, patch or grid, no maker's product.
class IndicatorSchematic : public QWidget {
    Q_OBJECT

public:
    enum class Size : std::uint8_t { small, large };

    IndicatorSchematic(Look& look, Size size, QWidget* parent = nullptr);

    /// A screen reader says only that something is drawn, not what: that would be the answer.
    void show(const Drawn& drawn);
    using QWidget::show;

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] int heightOf() const;

    Look& m_look;
    Size m_size;
    std::optional<Drawn> m_drawn;
};

} // namespace loadwarden::ui
