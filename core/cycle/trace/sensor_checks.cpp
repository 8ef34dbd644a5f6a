#include "core/cycle/trace/sensor_checks.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loadwarden {
namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

SamplingFacts samplingOf(const std::vector<double>& seconds)
{
    if (seconds.size() < 2) {
        return {};
    }
    std::vector<double> steps(seconds.size() - 1);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        steps[i] = seconds[i + 1] - seconds[i];
    }
    const auto [least, largest] = std::ranges::minmax_element(steps);
    SamplingFacts facts{nothing, *least, *largest};
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::ranges::nth_element(steps, middle);
    facts.typical = *middle;
    return facts;
}

/// What the values of a channel span between two samples, both included.
double spanOf(const std::vector<double>& values, std::size_t begin, std::size_t end)
{
    double least = std::numeric_limits<double>::infinity();
    double most = -least;
    for (std::size_t i = begin; i < end; ++i) {
        least = values[i] < least ? values[i] : least; // NaN compares false
        most = values[i] > most ? values[i] : most;
    }
    return most > least ? most - least : 0;
}

class SensorChecks {
public:
    SensorChecks(TraceReading& reading, const TraceMapping& mapping, const TraceLimits& limits,
                 DefectLog& log)
        : m_reading(reading), m_trace(reading.trace), m_limits(limits), m_log(log)
    {
        for (const MappedChannel& channel : mapping.channels) {
            if (channel.role != ChannelRole::notUsed) {
                m_columns.push_back(channel.column + 1);
            }
        }
    }

    void findGaps()
    {
        const double longest = m_reading.sampling.typical * m_limits.gapSteps;
        for (std::size_t i = 1; i < m_trace.samples(); ++i) {
            const double step = m_trace.seconds[i] - m_trace.seconds[i - 1];
            if (step > longest) {
                say(i, i, 0, {.kind = TraceDefectKind::gap, .value = step, .limit = longest});
            }
        }
    }

    void findJumps(std::size_t channel)
    {
        const std::vector<double>& values = m_trace.channels[channel].values;
        const double rate = isTemperature(m_trace.channels[channel].role)
                                ? m_limits.mostKelvinPerSecond
                                : m_limits.mostKPaPerSecond;
        std::size_t before = values.size();
        for (std::size_t i = 0; i < values.size(); ++i) {
            if (std::isnan(values[i])) {
                continue;
            }
            if (before < i) {
                const double over = m_trace.seconds[i] - m_trace.seconds[before];
                const double change = values[i] - values[before];
                if (std::abs(change) > rate * over) {
                    say(i, i, channel + 1,
                        {.kind = TraceDefectKind::jump,
                         .value = change,
                         .limit = rate * over,
                         .over = over});
                }
            }
            before = i;
        }
    }

    void findFlat(std::size_t channel)
    {
        const std::vector<double>& values = m_trace.channels[channel].values;
        std::size_t begin = 0;
        while (begin < values.size()) {
            std::size_t end = begin + 1;
            while (end < values.size() && values[end] == values[begin]) {
                ++end;
            }
            judgeRun(channel, begin, end);
            begin = end;
        }
    }

private:
    void judgeRun(std::size_t channel, std::size_t begin, std::size_t end)
    {
        const double over = m_trace.seconds[end - 1] - m_trace.seconds[begin];
        const bool isWhole = end - begin == m_trace.samples();
        if (static_cast<std::int64_t>(end - begin) < m_limits.flatSamples
            || (over < m_limits.flatSeconds && !isWhole) || !hasChanged(channel, begin, end)) {
            return;
        }
        say(begin, end - 1, channel + 1,
            {.kind = TraceDefectKind::flat,
             .value = m_trace.channels[channel].values[begin],
             .over = over});
    }

    /// Whether another sensor shows that the chamber changed while this one did not. Pressure
    /// stands still while a chamber in vacuum or open to the room cools: only above the atmosphere
    /// it must follow the temperature.
    [[nodiscard]] bool hasChanged(std::size_t channel, std::size_t begin, std::size_t end) const
    {
        constexpr double abovePressureOfRoom = 115;
        const TraceChannel& flat = m_trace.channels[channel];
        if (!isTemperature(flat.role) && !(flat.values[begin] > abovePressureOfRoom)
            && end - begin != m_trace.samples()) {
            return false;
        }
        for (std::size_t i = 0; i < m_trace.channels.size(); ++i) {
            const TraceChannel& other = m_trace.channels[i];
            const double much =
                isTemperature(other.role) ? m_limits.changedKelvin : m_limits.changedKPa;
            if (i != channel && spanOf(other.values, begin, end) > much) {
                return true;
            }
        }
        return false;
    }

    /// Says a defect of the samples from begin to last.
    void say(std::size_t begin, std::size_t last, std::size_t slot, TraceDefect defect)
    {
        const std::int64_t line = m_reading.lines[last];
        const auto row = static_cast<std::int64_t>(begin);
        if (begin == last && m_log.prolong(defect.kind, slot, row, line)) {
            return;
        }
        defect.place = {m_reading.lines[begin], 1};
        defect.lastLine = line;
        if (slot != 0) {
            defect.column = m_columns[slot - 1];
            defect.channel = m_trace.channels[slot - 1].name;
            defect.role = m_trace.channels[slot - 1].role;
        }
        defect.samples = static_cast<std::int64_t>(last - begin) + 1;
        m_log.add(std::move(defect), slot, row);
    }

    TraceReading& m_reading;
    const Trace& m_trace;
    const TraceLimits& m_limits;
    DefectLog& m_log;
    std::vector<std::size_t> m_columns;
};

} // namespace

void checkSensors(TraceReading& reading, const TraceMapping& mapping, const TraceLimits& limits,
                  DefectLog& log)
{
    reading.sampling = samplingOf(reading.trace.seconds);
    SensorChecks checks(reading, mapping, limits, log);
    checks.findGaps();
    for (std::size_t channel = 0; channel < reading.trace.channels.size(); ++channel) {
        checks.findJumps(channel);
        checks.findFlat(channel);
    }
}

} // namespace loadwarden
