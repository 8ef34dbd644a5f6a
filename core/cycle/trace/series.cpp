#include "core/cycle/trace/series.h"

#include "core/cycle/trace/settings.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {

Line fitLine(std::span<const double> seconds, std::span<const double> values)
{
    const std::size_t samples = std::min(seconds.size(), values.size());
    Line line;
    double meanSecond = 0;
    double meanValue = 0;
    for (std::size_t i = 0; i < samples; ++i) {
        if (!std::isnan(values[i])) {
            ++line.samples;
            meanSecond += seconds[i];
            meanValue += values[i];
        }
    }
    meanSecond /= static_cast<double>(line.samples);
    meanValue /= static_cast<double>(line.samples);
    double squares = 0;
    double products = 0;
    for (std::size_t i = 0; i < samples; ++i) {
        if (!std::isnan(values[i])) {
            squares += (seconds[i] - meanSecond) * (seconds[i] - meanSecond);
            products += (seconds[i] - meanSecond) * (values[i] - meanValue);
        }
    }
    line.slope = squares > 0 ? products / squares : notKnown;
    double residual = 0;
    for (std::size_t i = 0; i < samples; ++i) {
        if (!std::isnan(values[i])) {
            const double off = values[i] - meanValue - line.slope * (seconds[i] - meanSecond);
            residual += off * off;
        }
    }
    line.standardError = line.samples > 2
                             ? std::sqrt(residual / static_cast<double>(line.samples - 2) / squares)
                             : notKnown;
    return line;
}

double timeMean(std::span<const double> seconds, std::span<const double> values)
{
    const std::size_t samples = std::min(seconds.size(), values.size());
    double area = 0;
    double time = 0;
    double sum = 0;
    std::size_t measured = 0;
    for (std::size_t i = 0; i < samples; ++i) {
        if (std::isnan(values[i])) {
            continue;
        }
        sum += values[i];
        ++measured;
        if (i > 0 && !std::isnan(values[i - 1])) {
            const double step = seconds[i] - seconds[i - 1];
            area += (values[i - 1] + values[i]) / 2 * step;
            time += step;
        }
    }
    if (time > 0) {
        return area / time;
    }
    return measured > 0 ? sum / static_cast<double>(measured) : notKnown;
}

} // namespace loadwarden
