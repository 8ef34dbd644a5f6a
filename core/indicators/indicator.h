#pragma once

#include "core/indicators/cause.h"
#include "core/quantities/act.h"
#include "core/quantities/date.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// What a reader saw.
enum class Seen : std::uint8_t {
    frontInAcceptZone,
    frontOnBoundary,
    frontShortOfBoundary,
    endColourReached,
    endColourPartly,
    unchanged,
    uniformComplete,
    uniformIncomplete,
    notUniform,
    absent,
    growth,
    noGrowth,
    unclear
};

struct IndicatorReading {
    Seen seen = Seen::unclear;
    Act act;
    std::optional<Act> voided;
    /// Of a good answer of a chemical indicator: why it never counts; none: it does once recorded.
    /// Set by assemble.
    Cause cause = Cause::none;

    friend bool operator==(const IndicatorReading&, const IndicatorReading&) = default;
};

/// Where an indicator's product and lot stand in the evidence's lists; -1: in none. Set by
/// assemble.
struct ProductLink {
    std::int32_t product = -1;
    std::int32_t lot = -1;

    friend bool operator==(const ProductLink&, const ProductLink&) = default;
};

/// A chemical indicator, also a Bowie-Dick sheet.
struct ChemicalIndicator {
    std::string product; ///< empty: unknown
    std::string lot;     ///< empty: unknown
    std::string place;   ///< where in the package; empty: not stated
    std::vector<std::string> alsoUsedIn;
    std::vector<IndicatorReading> readings; ///< after assemble: by recordedAt, ties as given
    std::optional<Act> lost;
    std::optional<Act> unsettled;

    // Set by assemble.
    ProductLink link;
    std::int32_t type = 0;       ///< ISO 11140-1 type of the product; 0: unknown
    Cause spoiled = Cause::none; ///< what spoils it in its cycle, its type at its place apart
    bool lacksOnlyLot = false;   ///< nothing spoils it but that its lot, or its date, is not known

    friend bool operator==(const ChemicalIndicator&, const ChemicalIndicator&) = default;
};

enum class ProcessIndicator : std::uint8_t { unknown, changed, unchanged };

/// What an incident found a growing vial to have been.
enum class FoundToBe : std::uint8_t { control, otherLoad };

struct IncidentFinding {
    FoundToBe was = FoundToBe::control;
    Act act;

    friend bool operator==(const IncidentFinding&, const IncidentFinding&) = default;
};

/// A run of the register's `controlOrder`.
struct ControlRun {
    std::int32_t first = 0;
    std::int32_t count = 0;

    friend bool operator==(const ControlRun&, const ControlRun&) = default;
};

/// A biological indicator that was in a cycle.
struct Vial {
    std::string id;
    std::string product;
    std::string lot;
    std::string incubator;
    std::optional<Act> activation;
    std::optional<Instant> incubationStart;
    ProcessIndicator processIndicator = ProcessIndicator::unknown;
    std::vector<std::string> alsoUsedIn;
    std::vector<IndicatorReading> readings;
    std::optional<Act> voided;
    std::optional<Act> lost;
    std::optional<Act> unsettled;
    std::optional<IncidentFinding> incidentFinding;

    // Set by assemble.
    ProductLink link;
    std::int32_t incubatorIndex = -1;
    ControlRun controls;               ///< those of its product, lot and incubator
    std::optional<Date> incubationDay; ///< facility day of incubationStart
    Instant midnightAfterStart{};      ///< next facility midnight after incubationStart

    friend bool operator==(const Vial&, const Vial&) = default;
};

/// An unexposed biological indicator, which must grow.
struct Control {
    std::string id;
    std::string product;
    std::string lot;
    std::string incubator;
    std::optional<Act> activation;
    std::optional<Instant> incubationStart;
    ProcessIndicator processIndicator = ProcessIndicator::unknown;
    std::string forLoad;
    std::vector<IndicatorReading> readings;
    std::optional<Act> unsettled;

    // Set by assemble.
    ProductLink link;
    std::optional<Date> incubationDay; ///< facility day of incubationStart
    bool lotInDate = false; ///< lot has an expiry that can be, on or after the day incubation began

    friend bool operator==(const Control&, const Control&) = default;
};

struct OutOfRange {
    Instant from{};
    std::optional<Instant> to;

    friend bool operator==(const OutOfRange&, const OutOfRange&) = default;
};

struct Incubator {
    std::string id;
    std::vector<OutOfRange> outOfRange;

    friend bool operator==(const Incubator&, const Incubator&) = default;
};

} // namespace loadwarden
