#pragma once

#include "core/indicators/product.h"
#include "ui/look/look.h"

#include <QWidget>

namespace loadwarden::ui {

/// How a kind of indicator answers, drawn as a plain strip or a plain grid in the program's own
/// style, with words outside it: no maker's card.
class IndicatorSchematic : public QWidget {
    Q_OBJECT

public:
    IndicatorSchematic(Look& look, Response response, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void paintFront(class QPainter& painter) const;
    void paintColour(class QPainter& painter) const;
    void paintSheet(class QPainter& painter) const;

    Look& m_look;
    Response m_response;
};

} // namespace loadwarden::ui
