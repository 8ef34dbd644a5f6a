#pragma once

#include "core/cycle/specification.h"

#include <QWidget>

#include <array>
#include <vector>

class QLineEdit;

namespace loadwarden::ui {

/// What a program is set to, and the limits of its record: a row for each parameter and unit that
/// is stated, or that the house uses.
class LimitsGrid : public QWidget {
    Q_OBJECT

public:
    LimitsGrid(Unit temperature, Unit pressure, QWidget* parent = nullptr);

    void set(const CycleSpecification& specification);
    /// Writes settings and limits; false where something typed is no number, which is marked.
    [[nodiscard]] bool read(CycleSpecification& specification) const;
    /// Marks what is no number, and nothing else.
    void mark() const;

private:
    struct Row {
        Parameter parameter;
        Unit unit;
        std::array<QWidget*, 4> widgets; ///< label, what it is set to, least, most
        QLineEdit* setting;              ///< null where a program has none
        QLineEdit* least;
        QLineEdit* most;
    };

    void readSettings(ProgramSettings& settings) const;
    [[nodiscard]] const Row& rowOf(Unit unit, Parameter parameter) const;

    Unit m_temperature;
    Unit m_pressure;
    std::vector<Row> m_rows;
};

} // namespace loadwarden::ui
