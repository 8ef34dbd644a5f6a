#pragma once

#include "core/cycle/trace/lethality.h"

#include <optional>
#include <span>

namespace loadwarden {

/// A chemical indicator's stated value: at this temperature it reaches its endpoint in that time.
struct StatedValue {
    double celsius = 0;
    double minutes = 0;
};

/// The line through a product's stated values: log10(minutes) falls by 1 in each `zKelvin`.
struct StatedLine {
    LethalReference reference; ///< the mean temperature stated; z: the temperature coefficient
    double minutes = 0;        ///< to the endpoint at the reference
    double leastCelsius = 0;   ///< the range stated
    double mostCelsius = 0;
    double correlation = 0; ///< of log10(minutes) with temperature, −1 to 1
};

/// By least squares (ISO 11140-1, the temperature coefficient of integrating indicators). nullopt
/// where they do not make a falling line to which F can be computed: fewer than two temperatures,
/// a time that is not above 0, longer times at higher temperatures, z outside 2 to 100 K.
[[nodiscard]] std::optional<StatedLine> statedLine(std::span<const StatedValue> stated);

/// Minutes to the endpoint at a constant temperature, also beyond the range stated.
[[nodiscard]] double minutesToEndpoint(const StatedLine& line, double celsius);

/// How much of its way to the endpoint a temperature over time takes an indicator: 1 is the
/// endpoint. For the reviewer, never a verdict: what counts is the indicator and its maker's
/// directions, and it stands in the pack, not at the chamber's sensor.
struct IndicatorResponse {
    double fraction = 0;
    double leftOutSeconds = 0;   ///< not counted, as in lethality()
    bool isBeyondStated = false; ///< it was hotter than any temperature stated
};

[[nodiscard]] IndicatorResponse
expectedResponse(const StatedLine& line, std::span<const double> seconds,
                 std::span<const double> celsius,
                 double mostStepSeconds = TraceSettings{}.mostStepSeconds);

} // namespace loadwarden
