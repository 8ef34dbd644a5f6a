#include "core/cycle/trace/mapping_proposal.h"
#include "core/cycle/trace/trace_units.h"
#include "tests/core/cycle/trace/reading_support.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <rapidcheck.h>

namespace loadwarden {
namespace {

using namespace test_reading;

/// How a text is written that must be read back.
struct Dialect {
    TraceMapping mapping;
    std::string lineEnd;
    bool quotes = false;
    bool blanks = false;
    bool mark = false;
};

template <class Value>
Value anyOf(Value last)
{
    return static_cast<Value>(*rc::gen::inRange(0, static_cast<int>(last) + 1));
}

Dialect anyDialect()
{
    Dialect dialect;
    TraceMapping& mapping = dialect.mapping;
    mapping.separator = anyOf(FieldSeparator::tab);
    mapping.decimal = anyOf(DecimalMark::comma);
    mapping.encoding = anyOf(TextEncoding::latin1);
    mapping.columns = *rc::gen::inRange<std::size_t>(2, 8);
    mapping.time.column = *rc::gen::inRange<std::size_t>(0, mapping.columns);
    mapping.time.form = *rc::gen::element(TimeForm::seconds, TimeForm::minutesSeconds,
                                          TimeForm::hoursMinutesSeconds, TimeForm::dateTime);
    mapping.time.order = anyOf(DateOrder::monthDayYear);
    for (std::size_t i = 0; i < mapping.columns; ++i) {
        if (i != mapping.time.column) {
            const auto unit = anyOf(RecorderUnit::mmHg);
            mapping.channels.push_back(
                {i, "C" + std::to_string(i),
                 isTemperature(unit) ? ChannelRole::loadTemperature : ChannelRole::chamberPressure,
                 unit, anyOf(PressureZero::gauge)});
        }
    }
    if (*rc::gen::arbitrary<bool>()) {
        mapping.headerLine = 2;
        for (std::size_t i = 0; i < mapping.columns; ++i) {
            mapping.header.push_back("n" + std::to_string(i));
        }
    }
    dialect.lineEnd = *rc::gen::element<std::string>("\n", "\r\n", "\r");
    dialect.quotes = *rc::gen::arbitrary<bool>();
    dialect.blanks = *rc::gen::arbitrary<bool>();
    dialect.mark = *rc::gen::arbitrary<bool>();
    // A comma cannot be both unless there are quotation marks.
    dialect.quotes =
        dialect.quotes
        || (mapping.separator == FieldSeparator::comma && mapping.decimal == DecimalMark::comma);
    return dialect;
}

std::string shortest(double value)
{
    char text[64];
    const auto end = std::to_chars(text, text + sizeof text, value, std::chars_format::fixed);
    return {text, end.ptr};
}

std::string two(int value)
{
    return (value < 10 ? "0" : "") + std::to_string(value);
}

/// Whole seconds in the form of the mapping; date-times on 9 November 2031.
std::string timeText(int seconds, const TraceMapping& mapping)
{
    const std::string clock =
        two(seconds / 3600) + ':' + two(seconds / 60 % 60) + ':' + two(seconds % 60);
    switch (mapping.time.form) {
    case TimeForm::seconds: return std::to_string(seconds);
    case TimeForm::minutesSeconds: return two(seconds / 60) + ':' + two(seconds % 60);
    case TimeForm::dateTime:
        switch (mapping.time.order) {
        case DateOrder::yearMonthDay: return "2031-11-09 " + clock;
        case DateOrder::dayMonthYear: return "09.11.2031 " + clock;
        case DateOrder::monthDayYear: return "11/09/2031 " + clock;
        }
        return {};
    default: return clock;
    }
}

/// The field as a dialect writes it.
std::string fieldText(std::string text, const Dialect& dialect)
{
    if (dialect.mapping.decimal == DecimalMark::comma) {
        std::ranges::replace(text, '.', ',');
    }
    const std::string quoted = dialect.quotes ? '"' + text + '"' : text;
    return dialect.blanks ? ' ' + quoted + ' ' : quoted;
}

struct Written {
    std::string text;
    std::vector<int> seconds;
    std::vector<std::vector<double>> values; ///< by channel, in the recorder's unit
};

Written writeAny(const Dialect& dialect)
{
    const TraceMapping& mapping = dialect.mapping;
    Written written;
    written.values.resize(mapping.channels.size());
    written.text = dialect.mark ? "\xEF\xBB\xBF" : "";
    const char separator = charOf(mapping.separator);
    if (!mapping.header.empty()) {
        written.text += "free line" + dialect.lineEnd;
        for (std::size_t i = 0; i < mapping.columns; ++i) {
            written.text += (i == 0 ? "" : std::string(1, separator)) + mapping.header[i];
        }
        written.text += dialect.lineEnd;
    }
    const int rows = *rc::gen::inRange(1, 30);
    int at = *rc::gen::inRange(0, 3000);
    for (int row = 0; row < rows; ++row) {
        at += *rc::gen::inRange(1, 4);
        written.seconds.push_back(at);
        std::size_t channel = 0;
        for (std::size_t i = 0; i < mapping.columns; ++i) {
            std::string text = timeText(at, mapping);
            const bool isTime = i == mapping.time.column;
            if (!isTime) {
                // Thousandths of 1 to 20 in any unit; some are no values of a sterilizer.
                const double value = *rc::gen::inRange(1, 20'000) / 1000.0;
                written.values[channel++].push_back(value);
                text = shortest(value);
            }
            Dialect own = dialect;
            if (isTime) {
                own.mapping.decimal = DecimalMark::point; // the points of a date stay
            }
            written.text += (i == 0 ? "" : std::string(1, separator)) + fieldText(text, own);
        }
        written.text += dialect.lineEnd;
    }
    return written;
}

RC_GTEST_PROP(TraceReading, WhatIsWrittenIsReadBack, ())
{
    const Dialect dialect = anyDialect();
    const Written written = writeAny(dialect);
    const TraceReading reading = read(written.text, dialect.mapping);
    RC_ASSERT(faultOf(dialect.mapping) == MappingFault::none);
    RC_ASSERT(reading.trace.samples() == written.seconds.size());
    RC_ASSERT(reading.trace.channels.size() == written.values.size());
    for (std::size_t i = 0; i < written.seconds.size(); ++i) {
        RC_ASSERT(reading.trace.seconds[i] == written.seconds[i] - written.seconds[0]);
    }
    for (std::size_t c = 0; c < written.values.size(); ++c) {
        const MappedChannel& channel = dialect.mapping.channels[c];
        const bool isGauge =
            channel.role == ChannelRole::chamberPressure && channel.zero == PressureZero::gauge;
        for (std::size_t i = 0; i < written.values[c].size(); ++i) {
            // The same double as the compiler makes of the number, in the house's unit.
            const double value =
                inHouseUnit(written.values[c][i], channel.unit) + (isGauge ? 101.325 : 0.0);
            const TraceLimits limits;
            const bool isPossible =
                isTemperature(channel.role)
                    ? value >= limits.leastCelsius && value <= limits.mostCelsius
                    : value >= limits.leastKPa && value <= limits.mostKPa;
            const double got = reading.trace.channels[c].values[i];
            RC_ASSERT((isPossible ? got == value : std::isnan(got)));
        }
    }
    if (reading.count(TraceDefectKind::valueImpossible) == 0) {
        RC_ASSERT(misfitsOf(written.text, dialect.mapping).empty());
    }
}

/// The bytes of a good file with some changed, cut, doubled or put in.
std::string spoiled(std::string text)
{
    const int times = *rc::gen::inRange(1, 6);
    for (int i = 0; i < times && !text.empty(); ++i) {
        const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
        const auto length = *rc::gen::inRange<std::size_t>(0, 20);
        switch (*rc::gen::inRange(0, 4)) {
        case 0: text.erase(at, length); break;
        case 1: text.insert(at, text.substr(text.size() - at, length)); break;
        case 2:
            text[at] = *rc::gen::element(',', ';', '"', '\n', '\r', '-', 'x', '\xE9', ':');
            break;
        default: text.insert(at, *rc::gen::element<std::string>("\"", "\r\n", ",", "1e9", "-"));
        }
    }
    return text;
}

RC_GTEST_PROP(TraceReading, OfASpoiledFileStaysInOrderAndSaysWhatIsLost, ())
{
    const Dialect dialect = anyDialect();
    const std::string good = writeAny(dialect).text;
    const std::string text = spoiled(good);
    const TraceReading reading = read(text, dialect.mapping);
    const std::size_t samples = reading.trace.samples();
    RC_ASSERT(reading.lines.size() == samples);
    for (std::size_t i = 1; i < samples; ++i) {
        RC_ASSERT(reading.trace.seconds[i] > reading.trace.seconds[i - 1]);
        RC_ASSERT(reading.lines[i] > reading.lines[i - 1]);
    }
    std::int64_t counted = 0;
    for (const std::int64_t count : reading.counts) {
        RC_ASSERT(count >= 0);
        counted += count;
    }
    RC_ASSERT(static_cast<std::size_t>(counted) == reading.defects.size());
    for (const TraceChannel& channel : reading.trace.channels) {
        RC_ASSERT(channel.values.size() == samples);
        for (std::size_t i = 0; i < samples; ++i) {
            if (!std::isnan(channel.values[i])) {
                continue;
            }
            // Each value that is missing is told of, by its line; a quoted line end may make
            // several lines one.
            const std::int64_t next = i + 1 < samples ? reading.lines[i + 1] : INT64_MAX;
            RC_ASSERT(std::ranges::any_of(reading.defects, [&](const TraceDefect& defect) {
                return defect.channel == channel.name && defect.place.line < next
                       && defect.lastLine >= reading.lines[i]
                       && defect.fate == SampleFate::valueLeftOut;
            }));
        }
    }
}

RC_GTEST_PROP(MappingProposals, ReadWhatIsWritten, ())
{
    Dialect dialect = anyDialect();
    TraceMapping& mapping = dialect.mapping;
    // A clear case: words, and numbers that say which mark is the decimal one.
    RC_PRE(mapping.columns >= 3);
    mapping.header.clear();
    for (std::size_t i = 0; i < mapping.columns; ++i) {
        mapping.header.push_back(i == mapping.time.column ? "Time (s)" : "Chamber temp (degC)");
    }
    for (MappedChannel& channel : mapping.channels) {
        channel.name = "Chamber temp (degC)";
        channel.role = ChannelRole::chamberTemperature;
        channel.unit = RecorderUnit::celsius;
        channel.zero = PressureZero::absolute;
    }
    mapping.headerLine = 2;
    const Written written = writeAny(dialect);
    RC_PRE(written.seconds.size() >= 3);
    const auto hasDecimals = [](double v) { return v != std::floor(v); };
    RC_PRE(std::ranges::all_of(written.values, [&](const std::vector<double>& values) {
        return std::ranges::all_of(values, hasDecimals);
    }));
    const MappingProposal proposal = proposeMapping(written.text);
    RC_ASSERT(proposal.mapping.separator == mapping.separator);
    RC_ASSERT(proposal.mapping.decimal == mapping.decimal);
    RC_ASSERT(proposal.mapping.headerLine == mapping.headerLine);
    RC_ASSERT(proposal.mapping.header == mapping.header);
    RC_ASSERT(proposal.mapping.columns == mapping.columns);
    RC_ASSERT(proposal.mapping.time.column == mapping.time.column);
    RC_ASSERT(proposal.mapping.channels == mapping.channels);
    RC_ASSERT(read(written.text, proposal.mapping).trace.samples() == written.seconds.size());
}

} // namespace
} // namespace loadwarden
