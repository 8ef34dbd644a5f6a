#pragma once

#include "core/cycle/trace/trace.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

enum class TextEncoding : std::uint8_t { utf8, latin1 };

enum class FieldSeparator : std::uint8_t { comma, semicolon, tab };

[[nodiscard]] constexpr char charOf(FieldSeparator separator)
{
    return separator == FieldSeparator::comma ? ',' : separator == FieldSeparator::tab ? '\t' : ';';
}

enum class DecimalMark : std::uint8_t { point, comma };

[[nodiscard]] constexpr char charOf(DecimalMark mark)
{
    return mark == DecimalMark::comma ? ',' : '.';
}

/// How a recorder writes a time: a number, m:s, h:m, h:m:s, or a date with h:m or h:m:s. The last
/// second may have decimals, an hour AM or PM behind it, a date-time an offset from UTC.
enum class TimeForm : std::uint8_t {
    seconds,
    minutes,
    minutesSeconds,
    hoursMinutes,
    hoursMinutesSeconds,
    dateTime
};

/// Whether a time of that form is a clock's that begins again at midnight.
[[nodiscard]] constexpr bool endsAtMidnight(TimeForm form)
{
    return form == TimeForm::hoursMinutes || form == TimeForm::hoursMinutesSeconds;
}

enum class DateOrder : std::uint8_t { yearMonthDay, dayMonthYear, monthDayYear };

/// The units in which recorders write.
enum class RecorderUnit : std::uint8_t {
    celsius,
    fahrenheit,
    kelvin,
    kPa,
    bar,
    mbar,
    psi,
    inHg,
    mmHg
};

[[nodiscard]] constexpr bool isTemperature(RecorderUnit unit)
{
    return unit <= RecorderUnit::kelvin;
}

/// What a pressure is counted from: vacuum or the surrounding atmosphere.
enum class PressureZero : std::uint8_t { absolute, gauge };

/// Where and how the time of a sample stands. Columns are counted from 0.
struct TimeColumn {
    std::size_t column = 0;
    TimeForm form = TimeForm::seconds;
    DateOrder order = DateOrder::yearMonthDay; ///< of dateTime
    std::optional<std::size_t> dateColumn{};   ///< of dateTime: the date stands apart, there

    friend bool operator==(const TimeColumn&, const TimeColumn&) = default;
};

struct MappedChannel {
    std::size_t column = 0; ///< from 0
    std::string name;       ///< as the recorder calls it
    ChannelRole role = ChannelRole::notUsed;
    RecorderUnit unit = RecorderUnit::celsius;
    PressureZero zero = PressureZero::absolute; ///< of a pressure

    friend bool operator==(const MappedChannel&, const MappedChannel&) = default;
};

/// How one recorder's text is read. It belongs to a sterilizer, is confirmed by a person, and is
/// written as JSON by core/exchange/trace_mapping_json.h.
struct TraceMapping {
    TextEncoding encoding = TextEncoding::utf8;
    FieldSeparator separator = FieldSeparator::comma;
    DecimalMark decimal = DecimalMark::point;
    /// The header's fields without the blanks around them; empty: there is none. The header is
    /// looked for by them, since the number of free lines before it may change.
    std::vector<std::string> header{};
    std::size_t headerLine = 0; ///< where it stood in the file that was mapped, from 1; 0: none
    /// Lines between the header, or the file's beginning where there is none, and the samples.
    std::size_t linesToSkip = 0;
    std::size_t columns = 0; ///< fields of a sample's line
    TimeColumn time{};
    std::optional<std::size_t> counterColumn{}; ///< the cycle counter, from 0
    /// What stands before the cycle counter in a free line, in its field or in the one before it,
    /// without the colon; empty: there is no such line.
    std::string counterLabel{};
    std::vector<MappedChannel> channels{}; ///< those notUsed are not read

    friend bool operator==(const TraceMapping&, const TraceMapping&) = default;
};

/// What is wrong with a mapping in itself.
enum class MappingFault : std::uint8_t {
    none,
    noColumns,
    tooManyColumns,    ///< more than mostTraceColumns
    columnOutside,     ///< something stands in a column that the lines do not have
    columnTwice,       ///< two things in one column
    noChannel,         ///< no channel that is used
    unitOfOtherKind,   ///< a temperature in a pressure's unit, or the other way round
    dateWithoutClock,  ///< a column for the date, and a time that is no date-time
    headerWithoutLine, ///< a header without its line, or a line without its header
    impossibleValue    ///< a value that its enumeration does not have
};

inline constexpr std::size_t mostTraceColumns = 256;

[[nodiscard]] MappingFault faultOf(const TraceMapping& mapping) noexcept;

} // namespace loadwarden
