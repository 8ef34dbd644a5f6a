#pragma once

#include "core/quantities/date.h"
#include "core/quantities/method.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

enum class IndicatorKind : std::uint8_t { chemical, biological };

/// How a product answers; says which of the seen answers fit it.
enum class Response : std::uint8_t { movingFront, colour, sheet, growth };

enum class Species : std::uint8_t { geobacillusStearothermophilus, bacillusAtrophaeus, other };

/// How far one control reaches.
enum class ControlReach : std::uint8_t { day, lot, load };

/// Within which exposure a Bowie-Dick sheet may be judged. Bounds inclusive.
struct SheetDirections {
    std::optional<std::int64_t> leastMs;
    std::optional<std::int64_t> mostMs;
    std::optional<std::int64_t> leastCelsiusHundredths;
    std::optional<std::int64_t> mostCelsiusHundredths;
    bool dryingForbidden = false;

    friend bool operator==(const SheetDirections&, const SheetDirections&) = default;
};

/// An indicator product by its instructions for use.
struct IndicatorProduct {
    std::string id;
    IndicatorKind kind = IndicatorKind::chemical;
    int type = 0; ///< ISO 11140-1 type, chemical only
    MethodSet methods;
    std::vector<std::string> cycleTypes; ///< empty: any
    Response response = Response::colour;
    std::optional<std::int64_t> readWithinMinutes; ///< after the cycle's end, chemical only
    SheetDirections sheet;

    // Biological only; times in minutes from the start of incubation unless said otherwise.
    Species species = Species::other;
    std::int64_t releaseMinutes = 0;
    std::optional<std::int64_t> lastMinutes;
    std::optional<std::int64_t> latestMinutes;
    std::optional<std::int64_t> startWithinMinutes; ///< incubation start after the cycle's end
    bool needsActivation = false;
    bool hasProcessIndicator = false;
    std::optional<ControlReach> control;
    std::vector<int> implantIndicatorTypes;

    friend bool operator==(const IndicatorProduct&, const IndicatorProduct&) = default;
};

/// No shelf life is ten years: an expiry later than this many days after the cycle is a slip and
/// counts as not stated (RULES.md, 3; common practice, no source).
inline constexpr int longestShelfDays = 3'653;

struct IndicatorLot {
    std::string product;
    std::string number;
    std::optional<Date> expires;
    bool recalled = false; ///< by its maker, or taken out by the facility: nothing of it counts

    friend bool operator==(const IndicatorLot&, const IndicatorLot&) = default;
};

} // namespace loadwarden
