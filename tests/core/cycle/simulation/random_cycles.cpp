#include "tests/core/cycle/simulation/random_cycles.h"

#include "tests/core/cycle/simulation/tolerances.h"

#include <array>
#include <random>

namespace loadwarden::testing {

using simulation::FaultKind;
using simulation::Program;
using simulation::Settings;

Settings cleanCycle(std::uint64_t seed)
{
    std::mt19937_64 random(seed);
    const auto among = [&random](const auto& values) { return values[random() % values.size()]; };
    const auto between = [&random](double least, double most) {
        return std::uniform_real_distribution<double>(least, most)(random);
    };
    Settings settings;
    settings.seed = seed;
    settings.program = among(std::array{Program::gravity, Program::prevacuum, Program::steamFlush});
    settings.setCelsius = among(std::array{121.0, 132.0, 134.0, 135.0});
    settings.exposureSeconds = settings.setCelsius < 125 ? between(900, 1800) : between(180, 900);
    settings.dryingSeconds = between(300, 1800);
    settings.pulses = static_cast<int>(2 + random() % 5);
    settings.lowKPa = between(6, 20);
    settings.highKPa = between(140, 185);
    settings.atmosphereKPa = between(85, 103);
    settings.samplingSeconds = among(std::array{1.0, 1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0});
    settings.noiseKelvin = between(0.01, 0.12);
    settings.noiseKPa = between(0.05, 0.4);
    return settings;
}

Settings faultyCycle(std::uint64_t seed, FaultKind kind, double share)
{
    Settings settings = cleanCycle(seed);
    settings.faults.push_back(
        {.kind = kind, .size = share * leastSize(kind, settings.samplingSeconds), .kelvin = 2});
    return settings;
}

} // namespace loadwarden::testing
