#include "core/cycle/trace/row_reader.h"

#include "core/cycle/trace/header_search.h"
#include "core/cycle/trace/trace_units.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loadwarden {
namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
constexpr std::size_t mostShownBytes = 60;

bool hasLetter(std::string_view text)
{
    return std::ranges::any_of(text, [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')
               || static_cast<unsigned char>(c) >= 0x80;
    });
}

bool hasFigure(std::string_view text)
{
    return std::ranges::any_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

std::string_view fieldAt(const LineCutter& line, std::size_t column)
{
    return column < line.fields().size() ? line.fields()[column].text : std::string_view();
}

std::optional<WrittenTime> timeOf(const LineCutter& line, const TraceMapping& mapping)
{
    const std::string_view date =
        mapping.time.dateColumn ? fieldAt(line, *mapping.time.dateColumn) : std::string_view();
    return readTime(fieldAt(line, mapping.time.column), date, mapping.time, mapping.decimal);
}

} // namespace

RowReader::RowReader(TraceReading& reading, const TraceMapping& mapping, const TraceLimits& limits,
                     const std::optional<AbsolutePressure>& atmosphere, DefectLog& log)
    : m_reading(reading),
      m_mapping(mapping),
      m_limits(limits),
      m_log(log),
      m_times(mapping.time.form, limits),
      m_mostColumns(std::max(mapping.columns, mapping.header.size()))
{
    constexpr double micropascalsInKPa = 1e9;
    for (const MappedChannel& channel : mapping.channels) {
        if (channel.role == ChannelRole::notUsed) {
            continue;
        }
        if (isTemperature(channel.role)) {
            m_used.push_back(
                {channel.column, channel.unit, 0, limits.leastCelsius, limits.mostCelsius});
            continue;
        }
        const double offset =
            channel.zero == PressureZero::absolute ? 0
            : atmosphere ? static_cast<double>(atmosphere->micropascals()) / micropascalsInKPa
                         : nothing;
        m_used.push_back({channel.column, channel.unit, offset, limits.leastKPa, limits.mostKPa});
    }
}

bool RowReader::take(const LineCutter& line)
{
    if (line.isBlank()) {
        return true;
    }
    ++m_row;
    if (!isWhole(line)) {
        return true;
    }
    const std::optional<WrittenTime> time = timeOf(line, m_mapping);
    if (!time) {
        if (m_reading.trace.samples() != 0 && isHeader(line, m_mapping)) {
            say(TraceDefectKind::anotherStart, SampleFate::leftOut, line);
            return false;
        }
        if (isFree(line)) {
            say(TraceDefectKind::freeLine, SampleFate::leftOut, line, 0, 0);
        } else {
            say(TraceDefectKind::timeUnreadable, SampleFate::leftOut, line, 0,
                m_mapping.time.column);
        }
        return true;
    }
    if (!hasSameCounter(line)) {
        return false;
    }
    return putTime(line, *time);
}

/// Whether a line has as many fields as it should; says so where it has not.
bool RowReader::isWhole(const LineCutter& line)
{
    const bool isLast = !line.hasLineEnd();
    if (line.openQuote()) {
        say(isLast ? TraceDefectKind::cutOff : TraceDefectKind::quoteNotClosed, SampleFate::leftOut,
            line);
        return false;
    }
    const auto asCount = [](std::size_t n) { return static_cast<double>(n); };
    const TraceDefect few{.value = asCount(line.fieldCount()), .limit = asCount(m_mapping.columns)};
    if (line.fieldCount() < m_mapping.columns) {
        const bool isSaid = isFree(line);
        const std::string_view first = fieldAt(line, 0);
        if (isLast && (!isSaid || line.fieldCount() > 1 || hasFigure(first))) {
            say(TraceDefectKind::cutOff, SampleFate::leftOut, line, 0, {}, few);
        } else if (isSaid) {
            say(TraceDefectKind::freeLine, SampleFate::leftOut, line, 0, 0);
        } else {
            say(TraceDefectKind::tooFewFields, SampleFate::leftOut, line, 0, {}, few);
        }
        return false;
    }
    if (line.filledCount() > m_mostColumns) {
        if (isFree(line)) {
            say(TraceDefectKind::freeLine, SampleFate::leftOut, line, 0, 0);
        } else {
            say(TraceDefectKind::tooManyFields, SampleFate::leftOut, line, 0, {},
                {.value = asCount(line.filledCount()), .limit = asCount(m_mostColumns)});
        }
        return false;
    }
    return true;
}

/// Whether a line holds no sample: no number stands where the mapping has a channel, and it has no
/// time, or words in the place of fields that are missing.
bool RowReader::isFree(const LineCutter& line) const
{
    for (const Used& used : m_used) {
        if (readNumber(fieldAt(line, used.column), m_mapping.decimal)) {
            return false;
        }
    }
    if (!timeOf(line, m_mapping)) {
        return true;
    }
    if (line.fieldCount() >= m_mapping.columns) {
        return false;
    }
    for (std::size_t i = 0; i < line.fields().size(); ++i) {
        const std::string_view text = line.fields()[i].text;
        if (i != m_mapping.time.column && hasLetter(text) && !saysNoValue(text)) {
            return true;
        }
    }
    return false;
}

bool RowReader::hasSameCounter(const LineCutter& line)
{
    if (!m_mapping.counterColumn) {
        return true;
    }
    const TextField& field = line.fields()[*m_mapping.counterColumn];
    if (field.text.empty() || field.text == m_counter) {
        return true;
    }
    if (m_counter.empty()) {
        m_counter = field.text;
        m_reading.counter = textOf(field, m_mapping.encoding);
        return true;
    }
    say(TraceDefectKind::anotherCounter, SampleFate::leftOut, line, 0, m_mapping.counterColumn,
        {.expected = m_reading.counter});
    return false;
}

bool RowReader::putTime(const LineCutter& line, const WrittenTime& time)
{
    const std::size_t column = m_mapping.time.column;
    if (m_reading.trace.samples() >= m_limits.mostSamples) {
        say(TraceDefectKind::tooManySamples, SampleFate::leftOut, line, 0, {},
            {.limit = static_cast<double>(m_limits.mostSamples)});
        return false;
    }
    switch (m_times.put(time)) {
    case TimeStep::repeated:
        say(TraceDefectKind::timeRepeated, SampleFate::leftOut, line, 0, column);
        return true;
    case TimeStep::backward:
        say(TraceDefectKind::timeBackward, SampleFate::leftOut, line, 0, column,
            {.value = -m_times.step()});
        return true;
    case TimeStep::beginsAgain:
        say(TraceDefectKind::anotherStart, SampleFate::leftOut, line, 0, column);
        return false;
    case TimeStep::pastMidnight:
        say(TraceDefectKind::midnight, SampleFate::kept, line, 0, column);
        break;
    case TimeStep::forward: break;
    }
    if (m_reading.trace.seconds.empty()) {
        keepStart(time);
    }
    m_reading.trace.seconds.push_back(m_times.seconds());
    m_reading.lines.push_back(line.line());
    takeValues(line);
    if (!line.hasLineEnd()) {
        say(TraceDefectKind::lastLineOpen, SampleFate::kept, line);
    }
    return true;
}

void RowReader::keepStart(const WrittenTime& time)
{
    constexpr double day = 86'400;
    if (m_mapping.time.form == TimeForm::dateTime) {
        const double before = std::floor(time.seconds / day);
        m_reading.start.date =
            Date{static_cast<std::int32_t>(time.day) + static_cast<std::int32_t>(before)};
        m_reading.start.secondsOfDay = time.seconds - before * day;
    } else if (endsAtMidnight(m_mapping.time.form) && time.seconds < day) {
        m_reading.start.secondsOfDay = time.seconds;
    }
}

void RowReader::takeValues(const LineCutter& line)
{
    for (std::size_t i = 0; i < m_used.size(); ++i) {
        m_reading.trace.channels[i].values.push_back(valueOf(line, i));
    }
}

double RowReader::valueOf(const LineCutter& line, std::size_t channel)
{
    const Used& used = m_used[channel];
    const std::string_view text = line.fields()[used.column].text;
    const std::optional<double> number = readNumber(text, m_mapping.decimal);
    if (!number) {
        say(saysNoValue(text) ? TraceDefectKind::valueMissing : TraceDefectKind::textInNumber,
            SampleFate::valueLeftOut, line, channel + 1, used.column);
        return nothing;
    }
    const double value = inHouseUnit(*number, used.unit) + used.offset;
    if (value < used.least || value > used.most) {
        say(TraceDefectKind::valueImpossible, SampleFate::valueLeftOut, line, channel + 1,
            used.column);
        return nothing;
    }
    return value; // NaN where the atmosphere is not known, which is said once
}

void RowReader::say(TraceDefectKind kind, SampleFate fate, const LineCutter& line, std::size_t slot,
                    std::optional<std::size_t> column, TraceDefect values)
{
    if (m_log.prolong(kind, slot, m_row, line.line())) {
        return;
    }
    values.kind = kind;
    values.fate = fate;
    const bool hasField = column && *column < line.fields().size();
    values.place = line.placeOf(hasField                          ? line.fields()[*column].at
                                : line.openQuote()                ? *line.openQuote()
                                : kind == TraceDefectKind::cutOff ? line.end()
                                                                  : line.begin(),
                                m_mapping.encoding);
    if (hasField) {
        values.column = *column + 1;
        values.text = textOf(line.fields()[*column], m_mapping.encoding, mostShownBytes);
    }
    if (slot != 0) {
        values.channel = m_reading.trace.channels[slot - 1].name;
        values.role = m_reading.trace.channels[slot - 1].role;
    }
    m_log.add(std::move(values), slot, m_row);
}

} // namespace loadwarden
