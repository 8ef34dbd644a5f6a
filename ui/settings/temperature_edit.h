#pragma once

#include "core/cycle/quantity.h"

#include <QWidget>

#include <optional>

namespace loadwarden::ui {

class NumberEdit;

/// A temperature as registers state it: `inFahrenheit` only beside one in °C (ACTS.md, 1).
struct StatedTemperature {
    std::optional<Quantity> temperature;
    std::optional<Quantity> inFahrenheit;
};

/// Thousandths of a degree, as typed in either unit or both.
[[nodiscard]] StatedTemperature statedTemperature(std::optional<std::int64_t> celsius,
                                                  std::optional<std::int64_t> fahrenheit);

/// A temperature that may be left out, in °C, in °F, or in both where the instructions state both.
class TemperatureEdit : public QWidget {
    Q_OBJECT

public:
    explicit TemperatureEdit(QWidget* parent = nullptr);

    void set(const StatedTemperature& stated);
    [[nodiscard]] bool isGood() const;
    /// Nothing of what is no number.
    [[nodiscard]] StatedTemperature value() const;
    /// What a screen reader calls both lines.
    void setName(const QString& name);

private:
    NumberEdit* m_celsius;
    NumberEdit* m_fahrenheit;
};

} // namespace loadwarden::ui
