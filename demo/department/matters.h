#pragma once

#include "core/cycle/simulation/simulation.h"

#include <optional>
#include <vector>

namespace loadwarden::demo {

/// What is the matter with a load.
enum class Matter {
    nothing,
    implant,
    frontOnBoundary, ///< read as accepted first, settled by a second reader
    lowTemperature,
    aborted,
    wetPackage,
    readingTypedWrongly,
    readingMissing,
    positive,
    secondReaderAwaited, ///< one reader was not sure, and nobody else has looked
    controlDead,         ///< an implant's vial showed no growth, and neither did its control
    // What the typed numbers hide and the recording shows.
    exposureInterrupted,
    airInSteam,     ///< residual air: the steam is cooler than its pressure says
    settingTyped,   ///< drying as the program is set to, where it ended early
    otherRecording, ///< that of the load before, struck and replaced by its own
};

/// What the typed numbers of a load hide, by day, sterilizer and turn; nullopt: nothing.
[[nodiscard]] std::optional<Matter> hiddenMatter(int day, int which, int turn);

/// What is the matter with any other, by a number drawn from 0 to 99.
[[nodiscard]] Matter drawnMatter(int drawn);

/// What its recorder saw besides a good cycle.
[[nodiscard]] std::vector<simulation::Fault> faultsOf(Matter matter);

} // namespace loadwarden::demo
