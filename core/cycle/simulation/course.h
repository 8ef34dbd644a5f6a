#pragma once

#include "core/cycle/simulation/simulation.h"

#include <vector>

namespace loadwarden::simulation {

/// What the sensors of a simulated cycle would show without noise, every Truth::step seconds, and
/// what the sterilizer did when.
struct Course {
    std::vector<double> chamber;
    std::vector<double> drain;
    std::vector<double> load;
    std::vector<double> kPa;

    std::vector<PulseTruth> pulses;
    Span heating;
    std::optional<Span> timed;
    Span exhaust;
    Span drying;
    Span leak; ///< in which a leak test measures
    double airAdmission = 0;

    [[nodiscard]] double end() const
    {
        return chamber.empty() ? 0 : Truth::step * static_cast<double>(chamber.size() - 1);
    }
};

[[nodiscard]] Course run(const Settings& settings);

} // namespace loadwarden::simulation
