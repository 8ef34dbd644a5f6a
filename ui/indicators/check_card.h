#pragma once

#include "core/indicators/reading_check.h"
#include "ui/look/look.h"

#include <QFrame>

class QLabel;
class QVBoxLayout;

namespace loadwarden::ui {

class IndicatorSchematic;

/// One drawn indicator, large, with what its product's directions say.
class CheckCard : public QFrame {
    Q_OBJECT

public:
    explicit CheckCard(Look& look, QWidget* parent = nullptr);

    /// `product` may be null.
    void show(const Drawn& drawn, const CheckProduct* product);
    using QWidget::show;

private:
    Look& m_look;
    QLabel* m_product;
    QLabel* m_type;
    IndicatorSchematic* m_picture;
    QLabel* m_legend;
    QVBoxLayout* m_samples; ///< start and end colour
    QLabel* m_directions;
};

} // namespace loadwarden::ui
