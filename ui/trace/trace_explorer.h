#pragma once

#include "core/cycle/trace/certificate.h"
#include "core/cycle/trace/microbiology.h"
#include "ui/look/look.h"

#include <QWidget>

class QGridLayout;
class QLabel;

namespace loadwarden::ui {

class SlideField;
class SurvivorChart;

/// What a constant temperature held for a time does to spores and to a unit's own germs.
struct Explored {
    double minutes = 0; ///< F at the reference of the spores
    Inactivation spores;
    ResistanceWindow window; ///< that the spores' N0 and D imply
    Inactivation unit;
};

/// `minutes` at `celsius`.
[[nodiscard]] Explored explore(double celsius, double minutes, const Population& spores,
                               const Population& unit);

/// To teach and to learn with: nothing here is of a load. Temperature, time, and the populations
/// can be moved, and the answers follow.
class TraceExplorer : public QWidget {
    Q_OBJECT

public:
    explicit TraceExplorer(Look& look, QWidget* parent = nullptr);

    [[nodiscard]] Explored explored() const;

private:
    QLabel* addAnswer(QGridLayout* grid, const QString& name);
    void answer();

    SlideField* m_celsius;
    SlideField* m_minutes;
    SlideField* m_spores;
    SlideField* m_sporesD;
    SlideField* m_z;
    SlideField* m_unit;
    SlideField* m_unitD;
    SurvivorChart* m_chart;
    QLabel* m_worth;
    QLabel* m_reduction;
    QLabel* m_survivors;
    QLabel* m_grows;
    QLabel* m_window;
    QLabel* m_unitReduction;
    QLabel* m_notSterile;
    QLabel* m_says;
};

} // namespace loadwarden::ui
