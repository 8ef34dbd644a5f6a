#pragma once

#include "core/cycle/quantity.h"
#include "core/quantities/method.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// What a cycle is run for. Everything after immediateUse is a test and holds no items.
enum class Purpose : std::uint8_t { routine, immediateUse, warmUp, bowieDick, leak, qualification };

/// Inclusive limits of one parameter, a value for each unit in which it is used, in the order in
/// which a unit without a value of its own looks for one: celsius, fahrenheit; minutes;
/// kPaAbsolute, barAbsolute, kPaGauge, barGauge, psiGauge.
struct Limit {
    Parameter parameter = Parameter::temperature;
    std::vector<Quantity> least;
    std::vector<Quantity> most;

    friend bool operator==(const Limit&, const Limit&) = default;
};

/// What the program is set to, as against what its record shows.
struct ProgramSettings {
    std::optional<Quantity> temperature;  ///< celsius where stated in both units
    std::optional<Quantity> inFahrenheit; ///< where stated in both units
    std::optional<std::int64_t> exposureMs;
    std::optional<std::int64_t> dryingMs;

    friend bool operator==(const ProgramSettings&, const ProgramSettings&) = default;
};

/// A sterilizer's program and the limits of its record, in one revision.
struct CycleSpecification {
    std::string id;
    int revision = 0;
    Method method = Method::unknown;
    AirRemoval airRemoval = AirRemoval::unknown;
    Purpose purpose = Purpose::routine;
    std::string program;   ///< empty: not stated
    std::string cycleType; ///< empty: unknown
    bool extended = false;
    ProgramSettings settings;
    std::vector<Limit> limits; ///< one entry a parameter

    friend bool operator==(const CycleSpecification&, const CycleSpecification&) = default;
};

} // namespace loadwarden
