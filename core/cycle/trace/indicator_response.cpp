#include "core/cycle/trace/indicator_response.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {

std::optional<StatedLine> statedLine(std::span<const StatedValue> stated)
{
    double meanCelsius = 0;
    double meanLog = 0;
    const auto count = static_cast<double>(stated.size());
    for (const StatedValue& value : stated) {
        if (!(value.minutes > 0) || !std::isfinite(value.minutes)
            || !std::isfinite(value.celsius)) {
            return std::nullopt;
        }
        meanCelsius += value.celsius / count;
        meanLog += std::log10(value.minutes) / count;
    }
    double squares = 0;
    double products = 0;
    double logSquares = 0;
    for (const StatedValue& value : stated) {
        const double celsius = value.celsius - meanCelsius;
        const double log = std::log10(value.minutes) - meanLog;
        squares += celsius * celsius;
        products += celsius * log;
        logSquares += log * log;
    }
    if (!(squares > 0) || !(products < 0)) {
        return std::nullopt;
    }
    StatedLine line;
    line.reference = {meanCelsius, -squares / products};
    line.minutes = std::pow(10.0, meanLog);
    const auto [least, most] = std::ranges::minmax(stated, {}, &StatedValue::celsius);
    line.leastCelsius = least.celsius;
    line.mostCelsius = most.celsius;
    line.correlation = products / std::sqrt(squares * logSquares);
    if (!isSound(line.reference)) {
        return std::nullopt;
    }
    return line;
}

double minutesToEndpoint(const StatedLine& line, double celsius)
{
    return line.minutes / lethalRate(celsius, line.reference);
}

IndicatorResponse expectedResponse(const StatedLine& line, std::span<const double> seconds,
                                   std::span<const double> celsius, double mostStepSeconds)
{
    const Lethality delivered = lethality(seconds, celsius, line.reference, mostStepSeconds);
    return {delivered.minutes / line.minutes, delivered.leftOutSeconds,
            std::ranges::any_of(celsius, [&](double value) { return value > line.mostCelsius; })};
}

} // namespace loadwarden
