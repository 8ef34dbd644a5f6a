#pragma once

#include "core/cycle/trace/trace_reader.h"

#include <string>
#include <string_view>
#include <vector>

/// Mappings and texts for the tests that read traces.
namespace loadwarden::test_reading {

/// Seconds, a chamber temperature in °C and an absolute pressure in kPa, no header, commas.
inline TraceMapping plainMapping()
{
    TraceMapping mapping;
    mapping.columns = 3;
    mapping.time = {.column = 0, .form = TimeForm::seconds};
    mapping.channels = {
        {1, "A", ChannelRole::chamberTemperature, RecorderUnit::celsius, PressureZero::absolute},
        {2, "B", ChannelRole::chamberPressure, RecorderUnit::kPa, PressureZero::absolute}};
    return mapping;
}

/// The same with one channel, a temperature.
inline TraceMapping oneChannel(TimeForm form = TimeForm::seconds)
{
    TraceMapping mapping = plainMapping();
    mapping.columns = 2;
    mapping.time.form = form;
    mapping.channels.pop_back();
    return mapping;
}

inline TraceReading read(std::string_view text, const TraceMapping& mapping,
                         const TraceLimits& limits = {})
{
    return readTrace(text, mapping, AbsolutePressure::fromKPaThousandths(101'325), limits);
}

inline std::vector<TraceDefectKind> kindsOf(const TraceReading& reading)
{
    std::vector<TraceDefectKind> kinds;
    for (const TraceDefect& defect : reading.defects) {
        kinds.push_back(defect.kind);
    }
    return kinds;
}

/// Lines of one second each with values that rise slowly, from a second on.
inline std::string slowLines(int from, int to)
{
    std::string text;
    for (int i = from; i < to; ++i) {
        text += std::to_string(i) + ',' + std::to_string(20 + i % 7) + ".5,"
                + std::to_string(100 + i % 5) + '\n';
    }
    return text;
}

} // namespace loadwarden::test_reading
