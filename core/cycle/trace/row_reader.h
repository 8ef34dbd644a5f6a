#pragma once

#include "core/cycle/trace/defect_log.h"
#include "core/cycle/trace/text_lines.h"
#include "core/cycle/trace/time_line.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Makes samples of the lines of a file whose mapping is sound.
class RowReader {
public:
    RowReader(TraceReading& reading, const TraceMapping& mapping, const TraceLimits& limits,
              const std::optional<AbsolutePressure>& atmosphere, DefectLog& log);

    /// Takes the next line; false: what follows belongs to another cycle or is too much.
    [[nodiscard]] bool take(const LineCutter& line);

private:
    struct Used {
        std::size_t column;
        RecorderUnit unit;
        double offset; ///< in kPa: the atmosphere; NaN where it is needed and not known
        double least;  ///< in the house's unit: what is beyond is no value
        double most;
    };

    [[nodiscard]] std::optional<TraceDefect> wrongShape(const LineCutter& line) const;
    [[nodiscard]] bool takeFreeLine(const LineCutter& line);
    [[nodiscard]] bool isSameCounter(const std::string& counter);
    [[nodiscard]] bool hasSameCounter(const LineCutter& line);
    [[nodiscard]] bool putTime(const LineCutter& line, const WrittenTime& time);
    void keepStart(const WrittenTime& time);
    void takeValues(const LineCutter& line);
    [[nodiscard]] double valueOf(const LineCutter& line, std::size_t channel);

    void say(TraceDefectKind kind, SampleFate fate, const LineCutter& line, std::size_t slot = 0,
             std::optional<std::size_t> column = {}, TraceDefect values = {});

    TraceReading& m_reading;
    const TraceMapping& m_mapping;
    const TraceLimits& m_limits;
    DefectLog& m_log;
    TimeLine m_times;
    std::vector<Used> m_used;
    std::size_t m_mostColumns;
    std::string m_counterAsWritten; ///< in its column, in the bytes of the file
    std::int64_t m_row = 0;
};

} // namespace loadwarden
