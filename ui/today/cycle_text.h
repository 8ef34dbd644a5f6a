#pragma once

#include "core/desk/sterilizer_day.h"
#include "ui/parts/glyph_view.h"

#include <QString>

#include <optional>

namespace loadwarden::ui {

/// A cycle as the day of its sterilizer shows it.
struct CycleMark {
    Glyph glyph;
    ToneOf tone;
};

[[nodiscard]] CycleMark markOf(const DayCycle& cycle);

/// "Release, signed", "Bowie-Dick test passed", "Running".
[[nodiscard]] QString stateText(const DayCycle& cycle);

/// What a test is run for, as a heading.
[[nodiscard]] QString purposeText(Purpose purpose);

/// "1-2031-063-02, 06:40 to 07:32: Release, signed".
[[nodiscard]] QString cycleText(const DayCycle& cycle, const std::optional<Zone>& zone);

} // namespace loadwarden::ui
