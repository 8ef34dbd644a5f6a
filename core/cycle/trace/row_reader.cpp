#include "core/cycle/trace/row_reader.h"

#include "core/cycle/trace/header_search.h"
#include "core/cycle/trace/row_shape.h"
#include "core/cycle/trace/trace_units.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loadwarden {
namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
constexpr std::size_t mostShownBytes = 60;

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
    if (const std::optional<TraceDefect> wrong = wrongShape(line)) {
        if (wrong->kind == TraceDefectKind::freeLine) {
            return takeFreeLine(line);
        }
        say(wrong->kind, SampleFate::leftOut, line, 0, {}, *wrong);
        return true;
    }
    const std::optional<WrittenTime> time = timeOf(line, m_mapping);
    if (!time) {
        if (m_reading.trace.samples() != 0 && isHeader(line, m_mapping)) {
            say(TraceDefectKind::anotherStart, SampleFate::leftOut, line);
            return false;
        }
        if (isFreeLine(line, m_mapping)) {
            return takeFreeLine(line);
        }
        say(TraceDefectKind::timeUnreadable, SampleFate::leftOut, line, 0, m_mapping.time.column);
        return true;
    }
    return hasSameCounter(line) && putTime(line, *time);
}

/// What is wrong with a line that has not the fields of a sample.
std::optional<TraceDefect> RowReader::wrongShape(const LineCutter& line) const
{
    const bool isLast = !line.hasLineEnd();
    if (line.openQuote()) {
        return TraceDefect{.kind =
                               isLast ? TraceDefectKind::cutOff : TraceDefectKind::quoteNotClosed};
    }
    const bool isFew = line.fieldCount() < m_mapping.columns;
    if (!isFew && line.filledCount() <= m_mostColumns) {
        return std::nullopt;
    }
    const std::size_t fields = isFew ? line.fieldCount() : line.filledCount();
    TraceDefect wrong{.kind =
                          isFew ? TraceDefectKind::tooFewFields : TraceDefectKind::tooManyFields,
                      .value = static_cast<double>(fields),
                      .limit = static_cast<double>(isFew ? m_mapping.columns : m_mostColumns)};
    const bool isFree = isFreeLine(line, m_mapping);
    // A last line of words alone was not cut off from a sample.
    if (isFew && isLast && (!isFree || fields > 1 || hasFigure(fieldAt(line, 0)))) {
        wrong.kind = TraceDefectKind::cutOff;
    } else if (isFree) {
        wrong.kind = TraceDefectKind::freeLine;
    }
    return wrong;
}

bool RowReader::hasSameCounter(const LineCutter& line)
{
    if (!m_mapping.counterColumn) {
        return true;
    }
    const TextField& field = line.fields()[*m_mapping.counterColumn];
    if (field.text.empty() || field.text == m_counterAsWritten) {
        return true;
    }
    if (!isSameCounter(textOf(field, m_mapping.encoding))) {
        say(TraceDefectKind::anotherCounter, SampleFate::leftOut, line, 0, m_mapping.counterColumn,
            {.expected = m_reading.counter});
        return false;
    }
    m_counterAsWritten = field.text;
    return true;
}

/// Whether a counter is that of the samples so far; the first is taken.
bool RowReader::isSameCounter(const std::string& counter)
{
    if (m_reading.counter.empty()) {
        m_reading.counter = counter;
    }
    return m_reading.counter == counter;
}

bool RowReader::takeFreeLine(const LineCutter& line)
{
    const std::optional<LabelledCounter> counter = labelledCounter(line, m_mapping);
    if (counter && !isSameCounter(counter->text)) {
        say(TraceDefectKind::anotherCounter, SampleFate::leftOut, line, 0, counter->column,
            {.text = counter->text, .expected = m_reading.counter});
        return false;
    }
    say(TraceDefectKind::freeLine, SampleFate::leftOut, line, 0, 0);
    return true;
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
    }
    if (hasField && values.text.empty()) {
        values.text = textOf(line.fields()[*column], m_mapping.encoding, mostShownBytes);
    }
    if (slot != 0) {
        values.channel = m_reading.trace.channels[slot - 1].name;
        values.role = m_reading.trace.channels[slot - 1].role;
    }
    m_log.add(std::move(values), slot, m_row);
}

} // namespace loadwarden
