#pragma once

#include "core/cycle/trace/trace.h"
#include "core/cycle/trace/trace_defect.h"
#include "core/cycle/trace/trace_mapping.h"
#include "core/quantities/date.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden::simulation {

/// How a recorder that there is not writes a simulated cycle.
struct TextSettings {
    FieldSeparator separator = FieldSeparator::comma;
    DecimalMark decimal = DecimalMark::point;
    RecorderUnit temperature = RecorderUnit::celsius;
    RecorderUnit pressure = RecorderUnit::kPa;
    PressureZero zero = PressureZero::absolute;
    double atmosphereKPa = 101.325; ///< from which gauge pressures count
    TimeForm time = TimeForm::seconds;
    DateOrder order = DateOrder::yearMonthDay;
    Date date{22'342};                    ///< of the first sample; with a date-time
    double secondsOfDay = 7 * 3'600;      ///< of the first sample; where the time is a clock's
    std::optional<std::int64_t> counter;  ///< written in a free line
    std::vector<TraceDefectKind> defects; ///< one of each, spread over the samples, in that order;
                                          ///< those that isWritable() says
};

/// Defects that a text can be given. A jump needs samples at most 2 s apart.
[[nodiscard]] bool isWritable(TraceDefectKind kind);

/// Delimited text in UTF-8 whose first line says that it is simulated; a value that is NaN is an
/// empty field. Values are rounded to what their unit is written with, times in hours and minutes
/// cut to the minute. Units of the other kind count as °C and kPa.
[[nodiscard]] std::string writeTraceText(const Trace& trace, const TextSettings& settings);

/// How that text is read.
[[nodiscard]] TraceMapping mappingOfText(const Trace& trace, const TextSettings& settings);

/// Whether the first line of a file says that it is simulated: whoever shows it, says so.
[[nodiscard]] bool saysSimulated(std::string_view bytes);

} // namespace loadwarden::simulation
