#pragma once

#include "core/cycle/simulation/simulation.h"
#include "core/quantities/word.h"

namespace loadwarden::simulation {

// Words by which a command names what is simulated.

inline constexpr Word<Program> programWords[] = {
    {"gravity", Program::gravity},
    {"prevacuum", Program::prevacuum},
    {"steam-flush", Program::steamFlush},
    {"leak-test", Program::leakTest},
};

inline constexpr Word<FaultKind> faultWords[] = {
    {"short-exposure", FaultKind::shortExposure},
    {"interrupted-exposure", FaultKind::interruptedExposure},
    {"low-temperature", FaultKind::lowTemperature},
    {"high-temperature", FaultKind::highTemperature},
    {"residual-air", FaultKind::residualAir},
    {"superheat", FaultKind::superheat},
    {"slow-heating", FaultKind::slowHeating},
    {"sensor-dropout", FaultKind::sensorDropout},
    {"leak", FaultKind::leak},
    {"short-drying", FaultKind::shortDrying},
};

} // namespace loadwarden::simulation
