#pragma once

#include "core/desk/sterilizer_day.h"
#include "core/words/say.h"
#include "ui/parts/glyph_view.h"

#include <QString>

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

/// "Load 1-2031-063-02, 06:40 to 07:32: Release, signed", with the day where it is not that of
/// `now`.
[[nodiscard]] QString cycleText(const DayCycle& cycle, Instant now, const HouseStyle& style);

} // namespace loadwarden::ui
