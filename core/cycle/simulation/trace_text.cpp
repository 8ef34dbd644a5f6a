#include "core/cycle/simulation/trace_text.h"

#include "core/cycle/simulation/text_form.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace loadwarden::simulation {
namespace {

constexpr std::string_view firstLine = "SIMULATED: computed for a sterilizer that does not exist";
constexpr std::string_view counterLabel = "Cycle counter";
constexpr std::size_t lostSamples = 8;
constexpr std::size_t gapSamples = 10;

using Fields = std::vector<std::string>;

class TextWriter {
public:
    TextWriter(const Trace& trace, const TextSettings& settings)
        : m_trace(trace), m_settings(settings), m_form(settings)
    {
    }

    std::string write()
    {
        makeRows();
        const std::size_t samples = m_rows.size();
        const std::size_t parts = m_settings.defects.size() + 1;
        for (std::size_t i = 0; i < m_settings.defects.size(); ++i) {
            spoilRows(m_settings.defects[i], samples * (i + 1) / parts);
        }
        std::string text(firstLine);
        text += '\n';
        if (m_settings.counter) {
            text += counterLine(*m_settings.counter);
        }
        text += lineOf(m_form.header(m_trace));
        for (const auto& [line, isLeftOut] : m_rows) {
            text += isLeftOut ? "" : line;
        }
        spoilEnd(text);
        return text;
    }

private:
    struct Row {
        std::string line; ///< or several
        bool isLeftOut = false;
    };

    [[nodiscard]] std::string counterLine(std::int64_t counter) const
    {
        return std::string(counterLabel) + ": " + std::to_string(counter) + '\n';
    }

    /// Fields that hold the separator stand in quotation marks (RFC 4180).
    [[nodiscard]] std::string lineOf(const Fields& fields) const
    {
        const char separator = charOf(m_settings.separator);
        std::string line;
        for (const std::string& field : fields) {
            line += &field == fields.data() ? "" : std::string(1, separator);
            line += field.find(separator) == std::string::npos ? field : '"' + field + '"';
        }
        return line + '\n';
    }

    [[nodiscard]] Fields fieldsOf(std::size_t sample) const
    {
        Fields fields{m_form.time(m_trace.seconds[sample])};
        for (const TraceChannel& channel : m_trace.channels) {
            fields.push_back(m_form.value(channel, channel.values[sample]));
        }
        return fields;
    }

    void makeRows()
    {
        for (std::size_t i = 0; i < m_trace.samples(); ++i) {
            m_rows.push_back({lineOf(fieldsOf(i))});
        }
    }

    /// Of a sample's line the field of the last temperature, as what stands there.
    [[nodiscard]] std::string withValue(std::size_t sample, const std::string& text) const
    {
        Fields fields = fieldsOf(sample);
        fields[spoiltColumn()] = text;
        return lineOf(fields);
    }

    [[nodiscard]] std::size_t spoiltColumn() const
    {
        std::size_t column = 1;
        for (std::size_t i = 0; i < m_trace.channels.size(); ++i) {
            column = isTemperature(m_trace.channels[i].role) ? i + 1 : column;
        }
        return column;
    }

    void spoilRows(TraceDefectKind kind, std::size_t at)
    {
        if (at >= m_rows.size() || m_trace.channels.empty()) {
            return;
        }
        const TraceChannel& channel = m_trace.channels[spoiltColumn() - 1];
        const std::size_t before = at < 3 ? 0 : at - 3;
        Row& row = m_rows[at];
        switch (kind) {
        case TraceDefectKind::freeLine: row.line += "Door of the plant room opened\n"; break;
        case TraceDefectKind::tooFewFields:
            row.line = lineOf({fieldsOf(at)[0], fieldsOf(at)[1]});
            break;
        case TraceDefectKind::tooManyFields: {
            Fields fields = fieldsOf(at);
            fields.insert(fields.end(), 2, "1");
            row.line = lineOf(fields);
            break;
        }
        case TraceDefectKind::timeUnreadable: {
            Fields fields = fieldsOf(at);
            fields[0] = "1?";
            row.line = lineOf(fields);
            break;
        }
        case TraceDefectKind::timeRepeated: row.line += row.line; break;
        case TraceDefectKind::timeBackward: row.line += lineOf(fieldsOf(before)); break;
        case TraceDefectKind::gap:
            for (std::size_t i = at; i < std::min(at + gapSamples, m_rows.size() - 1); ++i) {
                m_rows[i].isLeftOut = true;
            }
            break;
        case TraceDefectKind::textInNumber: row.line = withValue(at, "13x.1"); break;
        case TraceDefectKind::valueMissing: row.line = withValue(at, ""); break;
        case TraceDefectKind::sensorLost:
            for (std::size_t i = at; i < std::min(at + lostSamples, m_rows.size()); ++i) {
                m_rows[i].line = withValue(i, "");
            }
            break;
        case TraceDefectKind::valueImpossible:
            row.line = withValue(at, m_form.value(channel, 999));
            break;
        case TraceDefectKind::jump:
            row.line =
                withValue(at, m_form.value(channel, channel.values[at]
                                                        + (channel.values[at] > 130 ? -90 : 90)));
            break;
        case TraceDefectKind::flat:
            for (std::size_t i = at; i < m_rows.size(); ++i) {
                m_rows[i].line = withValue(i, m_form.value(channel, channel.values[at]));
            }
            break;
        default: break; // of the end
        }
    }

    [[nodiscard]] bool has(TraceDefectKind kind) const
    {
        return std::ranges::find(m_settings.defects, kind) != m_settings.defects.end();
    }

    void spoilEnd(std::string& text) const
    {
        if (has(TraceDefectKind::anotherCounter)) {
            text += counterLine(m_settings.counter.value_or(0) + 1);
        }
        if (has(TraceDefectKind::anotherStart)) {
            text += lineOf(m_form.header(m_trace));
        }
        if (m_rows.empty()) {
            return;
        }
        const std::string& last = m_rows.back().line;
        if (has(TraceDefectKind::cutOff)) {
            text += last.substr(0, last.find(charOf(m_settings.separator)) + 2);
        } else if (has(TraceDefectKind::lastLineOpen)) {
            text.pop_back();
        }
    }

    const Trace& m_trace;
    const TextSettings& m_settings;
    TextForm m_form;
    std::vector<Row> m_rows;
};

} // namespace

bool isWritable(TraceDefectKind kind)
{
    using enum TraceDefectKind;
    constexpr TraceDefectKind writable[] = {
        freeLine,     tooFewFields, tooManyFields, cutOff,          lastLineOpen, timeUnreadable,
        timeRepeated, timeBackward, anotherStart,  anotherCounter,  gap,          textInNumber,
        valueMissing, sensorLost,   jump,          valueImpossible, flat};
    return std::ranges::find(writable, kind) != std::end(writable);
}

std::string writeTraceText(const Trace& trace, const TextSettings& settings)
{
    return TextWriter(trace, settings).write();
}

TraceMapping mappingOfText(const Trace& trace, const TextSettings& settings)
{
    const TextForm form(settings);
    TraceMapping mapping{.separator = settings.separator,
                         .decimal = settings.decimal,
                         .header = form.header(trace),
                         .headerLine = settings.counter ? 3U : 2U,
                         .columns = trace.channels.size() + 1,
                         .time = {.form = settings.time, .order = settings.order},
                         .counterLabel = std::string(settings.counter ? counterLabel : "")};
    for (std::size_t i = 0; i < trace.channels.size(); ++i) {
        const ChannelRole role = trace.channels[i].role;
        mapping.channels.push_back(
            {.column = i + 1,
             .name = mapping.header[i + 1],
             .role = role,
             .unit = form.unitOf(role),
             .zero = isTemperature(role) ? PressureZero::absolute : settings.zero});
    }
    return mapping;
}

bool saysSimulated(std::string_view bytes)
{
    return bytes.substr(0, bytes.find_first_of("\r\n")).find("SIMULATED") != std::string_view::npos;
}

} // namespace loadwarden::simulation
