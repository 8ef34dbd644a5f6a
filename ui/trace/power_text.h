#pragma once

#include <QString>

namespace loadwarden::ui {

/// A number of any size: "0.25", "1,200,000", and what is small or great as "3.2 × 10⁻⁸".
[[nodiscard]] QString powerText(double value);

/// A chance from 0 to 1: "63 %", "1.2 × 10⁻⁷", "more than 99.99 %".
[[nodiscard]] QString chanceText(double chance);

} // namespace loadwarden::ui
