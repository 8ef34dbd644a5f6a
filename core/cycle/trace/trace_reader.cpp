#include "core/cycle/trace/trace_reader.h"

#include "core/cycle/trace/header_search.h"
#include "core/cycle/trace/row_reader.h"
#include "core/cycle/trace/row_shape.h"
#include "core/cycle/trace/sensor_checks.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace loadwarden {
namespace {

constexpr double kPaOf(AbsolutePressure pressure)
{
    return static_cast<double>(pressure.micropascals()) / 1e9;
}

class TraceParser {
public:
    TraceParser(TraceReading& reading, std::string_view bytes, const TraceMapping& mapping,
                const TraceLimits& limits)
        : m_reading(reading),
          m_bytes(bytes),
          m_mapping(mapping),
          m_limits(limits),
          m_log(reading, mapping.channels.size(), limits)
    {
    }

    void parse(const std::optional<AbsolutePressure>& atmosphere)
    {
        if (!isReadable()) {
            return;
        }
        for (const MappedChannel& channel : m_mapping.channels) {
            if (channel.role != ChannelRole::notUsed) {
                m_reading.trace.channels.push_back({channel.name, channel.role, {}});
            }
        }
        readLines(checked(atmosphere));
        if (m_reading.trace.samples() == 0) {
            m_log.add({.kind = TraceDefectKind::noSamples});
        }
        checkSensors(m_reading, m_mapping, m_limits, m_log);
    }

private:
    /// Whether there is text and a mapping to begin with.
    bool isReadable()
    {
        if (m_bytes.size() == byteOrderMarkOf(m_bytes)) {
            m_log.add({.kind = TraceDefectKind::empty});
        } else if (m_bytes.size() > m_limits.mostBytes) {
            m_log.add({.kind = TraceDefectKind::tooLarge,
                       .value = static_cast<double>(m_bytes.size()),
                       .limit = static_cast<double>(m_limits.mostBytes)});
        } else if (m_bytes.starts_with("\xFF\xFE") || m_bytes.starts_with("\xFE\xFF")) {
            m_log.add({.kind = TraceDefectKind::notText});
        } else if (const std::size_t zero = m_bytes.find('\0'); zero != std::string_view::npos) {
            LineCutter line(m_bytes, m_mapping.separator);
            while (line.next() && line.end() < zero) {
            }
            m_log.add({.kind = TraceDefectKind::notText,
                       .place = line.placeOf(zero, m_mapping.encoding)});
        } else if (const MappingFault fault = faultOf(m_mapping); fault != MappingFault::none) {
            m_log.add(
                {.kind = TraceDefectKind::mappingUnsound, .value = static_cast<double>(fault)});
        } else {
            return true;
        }
        return false;
    }

    /// The atmosphere where it can be one; says where it is needed and missing or impossible.
    std::optional<AbsolutePressure> checked(const std::optional<AbsolutePressure>& atmosphere)
    {
        std::optional<AbsolutePressure> good = atmosphere;
        const bool needsOne = std::ranges::any_of(m_mapping.channels, isGauge);
        if (atmosphere && needsOne
            && (kPaOf(*atmosphere) < m_limits.leastAtmosphereKPa
                || kPaOf(*atmosphere) > m_limits.mostAtmosphereKPa)) {
            m_log.add({.kind = TraceDefectKind::atmosphereImpossible, .value = kPaOf(*atmosphere)});
            good.reset();
        }
        for (const MappedChannel& channel : m_mapping.channels) {
            if (isGauge(channel) && !good) {
                m_log.add({.kind = TraceDefectKind::gaugeWithoutAtmosphere,
                           .fate = SampleFate::valueLeftOut,
                           .column = channel.column + 1,
                           .channel = channel.name,
                           .role = channel.role});
            }
        }
        return good;
    }

    static bool isGauge(const MappedChannel& channel)
    {
        return channel.role == ChannelRole::chamberPressure && channel.zero == PressureZero::gauge;
    }

    void readLines(const std::optional<AbsolutePressure>& atmosphere)
    {
        HeaderFound header = findHeader(m_bytes, m_mapping);
        if (header.differs) {
            m_log.add(std::move(*header.differs));
        }
        findCounter(header.begin);
        reserve(header.begin);
        RowReader rows(m_reading, m_mapping, m_limits, atmosphere, m_log);
        LineCutter line(m_bytes, m_mapping.separator, header.begin, header.line);
        while (line.next()) {
            if (!rows.take(line)) {
                leaveOutRest(line);
                return;
            }
        }
    }

    /// The cycle counter in the free lines before the samples.
    void findCounter(std::size_t samplesBegin)
    {
        LineCutter line(m_bytes, m_mapping.separator, byteOrderMarkOf(m_bytes));
        while (!m_mapping.counterLabel.empty() && m_reading.counter.empty() && line.next()
               && line.begin() < samplesBegin) {
            if (const auto counter = labelledCounter(line, m_mapping)) {
                m_reading.counter = counter->text;
            }
        }
    }

    /// As many samples as a line like the first leaves room for.
    void reserve(std::size_t begin)
    {
        LineCutter line(m_bytes, m_mapping.separator, begin);
        if (!line.next()) {
            return;
        }
        const std::size_t length =
            std::max({line.end() - line.begin(), m_mapping.columns, std::size_t{8}});
        const std::size_t samples =
            std::min((m_bytes.size() - begin) / length * 9 / 8 + 1, m_limits.mostSamples);
        m_reading.trace.seconds.reserve(samples);
        m_reading.lines.reserve(samples);
        for (TraceChannel& channel : m_reading.trace.channels) {
            channel.values.reserve(samples);
        }
    }

    /// Says of the defect by which reading ended how far it reaches.
    void leaveOutRest(LineCutter& line)
    {
        std::int64_t samples = 1;
        std::int64_t last = line.line();
        while (line.next()) {
            samples += line.isBlank() ? 0 : 1;
            last = line.isBlank() ? last : line.line();
        }
        m_log.prolongLast(samples, last);
    }

    TraceReading& m_reading;
    std::string_view m_bytes;
    const TraceMapping& m_mapping;
    const TraceLimits& m_limits;
    DefectLog m_log;
};

} // namespace

TraceReading readTrace(std::string_view bytes, const TraceMapping& mapping,
                       const std::optional<AbsolutePressure>& atmosphere, const TraceLimits& limits)
{
    TraceReading reading;
    TraceParser(reading, bytes, mapping, limits).parse(atmosphere);
    std::ranges::stable_sort(reading.defects, {}, [](const TraceDefect& defect) {
        return std::tuple(defect.samples != 0, defect.place.line, defect.place.column);
    });
    return reading;
}

bool isUsable(const TraceReading& reading, const TraceDefectSet& unusable)
{
    if (reading.trace.samples() == 0) {
        return false;
    }
    for (std::size_t i = 0; i < traceDefectKindCount; ++i) {
        if (reading.counts[i] != 0 && unusable.has(static_cast<TraceDefectKind>(i))) {
            return false;
        }
    }
    return true;
}

} // namespace loadwarden
