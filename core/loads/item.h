#pragma once

#include "core/cycle/quantity.h"
#include "core/indicators/indicator.h"
#include "core/packaging/packaging.h"
#include "core/quantities/act.h"
#include "core/quantities/date.h"
#include "core/quantities/method.h"
#include "core/quantities/temperature.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// How an allowed cycle compares with the program.
enum class Match : std::uint8_t { no, unknown, yes };

/// A cycle that a device's instructions allow. What is left out was not stated.
struct AllowedCycle {
    Method method = Method::unknown;
    AirRemoval airRemoval = AirRemoval::unknown;
    std::optional<Quantity> temperature;  ///< celsius where stated in both units
    std::optional<Quantity> inFahrenheit; ///< where stated in both units; what counts is celsius
    std::optional<std::int64_t> leastMs;
    std::optional<std::int64_t> mostMs;
    std::optional<std::int64_t> dryingMs;
    std::string program;
    std::string sterilizerModel;

    // Set by assemble.
    /// How far its temperature lies from the program's, above or below; nullopt: one is not known,
    /// or its method is not.
    std::optional<TemperatureDifference> apart;
    Match match = Match::no; ///< with the program, whatever `apart` is

    friend bool operator==(const AllowedCycle&, const AllowedCycle&) = default;
};

struct Device {
    std::string name;
    std::vector<AllowedCycle> allowedCycles;
    std::optional<std::int64_t> aerationMinutes;

    friend bool operator==(const Device&, const Device&) = default;
};

enum class Implant : std::uint8_t { no, yes, unknown };

enum class Lumen : std::uint8_t { none, listed, unlisted };

/// What hydrogen peroxide must not meet; left out: not known.
struct PeroxideFacts {
    std::optional<bool> cellulose;
    std::optional<bool> liquidOrPowder;
    std::optional<bool> moist;
    std::optional<Lumen> lumen;

    friend bool operator==(const PeroxideFacts&, const PeroxideFacts&) = default;
};

/// One packed instance with one label.
struct Item {
    std::string label;
    std::optional<Act> recorded;
    std::optional<Act> confirmed;
    std::vector<std::string> alsoInLots;
    Implant implant = Implant::unknown;
    std::string packaging;
    std::optional<Date> packagingExpires;
    bool internalVisible = false;
    std::vector<PackageCheck> checks;
    std::optional<Act> checkLost;
    std::optional<ChemicalIndicator> external;
    std::vector<ChemicalIndicator> internals;
    std::vector<Device> devices;
    PeroxideFacts peroxide;

    // Set by assemble.
    std::int32_t packagingIndex = -1;
    std::optional<Instant> inLoadOfHistory; ///< the latest start of those that list its label
    std::vector<std::int32_t> inTests; ///< tests of the history that list its label, in their order

    friend bool operator==(const Item&, const Item&) = default;
};

} // namespace loadwarden
