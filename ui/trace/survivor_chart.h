#pragma once

#include "core/cycle/trace/microbiology.h"
#include "ui/look/look.h"

#include <QWidget>

namespace loadwarden::ui {

/// Expected survivors over time at one temperature, each line of ten a tenth of the one above: the
/// spores of a biological indicator, and a unit's own germs.
class SurvivorChart : public QWidget {
    Q_OBJECT

public:
    explicit SurvivorChart(Look& look, QWidget* parent = nullptr);

    /// `rate`: minutes at the reference that one minute is worth.
    void show(double minutes, double rate, const Population& spores, const Population& unit);
    using QWidget::show;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Look& m_look;
    double m_minutes = 0;
    double m_rate = 1;
    Population m_spores;
    Population m_unit;
};

} // namespace loadwarden::ui
