#include "app/cli/trace/trace_report.h"

#include "app/cli/paragraph.h"
#include "app/cli/streams.h"
#include "core/quantities/date.h"
#include "core/words/say.h"
#include "core/words/say_trace.h"
#include "core/words/say_trace_found.h"

#include <algorithm>
#include <cmath>

namespace loadwarden::cli {

namespace {

/// A line of a table: each text in its column, in characters; the last as it is.
std::string row(std::initializer_list<std::string> texts, std::initializer_list<std::size_t> widths)
{
    std::string line = "  ";
    auto width = widths.begin();
    for (const std::string& text : texts) {
        line += text;
        if (width != widths.end()) {
            const auto characters = static_cast<std::size_t>(std::ranges::count_if(
                text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
            line.append(characters < *width ? *width - characters : 1, ' ');
            ++width;
        }
    }
    line.resize(line.find_last_not_of(' ') + 1);
    return line + '\n';
}

std::string clockText(double secondsOfDay)
{
    const std::string time = lengthText(3600 + secondsOfDay); // an hour more, so that it has hours
    const auto hour = static_cast<int>(secondsOfDay / 3600);
    return (hour < 10 ? "0" : "") + std::to_string(hour) + time.substr(time.find(':'));
}

class Report {
public:
    Report(std::string& out, const TraceReport& report)
        : m_out(out), m_report(report), m_found(report.evaluation), m_trace(report.reading.trace)
    {
    }

    void append()
    {
        m_out += oneLine(m_report.name) + ": " + verdict() + '\n';
        if (m_report.isSimulated) {
            paragraph("SIMULATED: its first line says so. It is the record of no sterilizer.");
        }
        appendSource();
        appendMapping();
        for (const TraceProblem problem : m_found.problems) {
            paragraph(say(problem)
                      + (problem == TraceProblem::noAtmosphere
                             ? " Without a journal it is stated with --atmosphere."
                             : ""));
        }
        appendAnswers();
        appendPhases();
        appendHold();
        appendLethality();
        appendLeak();
        appendDefects();
        m_out += '\n';
    }

private:
    void paragraph(const std::string& text) { appendParagraph(m_out, 2, "", oneLine(text), 0); }

    [[nodiscard]] std::string verdict() const
    {
        switch (exitCodeOf(m_report)) {
        case exitDone: return "all that was asked is met";
        case exitBad: return "not usable";
        default: break;
        }
        const std::vector<TraceAnswer> answers = answersOf(m_report);
        if (answers.empty()) {
            return "nothing was asked";
        }
        const bool isBad =
            std::ranges::find(answers, Shown::notMet, &TraceAnswer::shown) != answers.end();
        return isBad ? "not all that was asked is met" : "not all that was asked can be told";
    }

    void appendSource()
    {
        const TraceReading& reading = m_report.reading;
        std::string text = std::to_string(m_trace.samples()) + " samples";
        if (std::isfinite(reading.sampling.typical)) {
            text += ", " + sayNumber(reading.sampling.typical, 2) + " s apart (at most "
                    + sayNumber(reading.sampling.largest, 2) + " s)";
        }
        text += '.';
        if (!reading.counter.empty()) {
            text += " Cycle counter " + reading.counter + '.';
        }
        if (reading.start.secondsOfDay) {
            text += " By the recorder's clock the first is of "
                    + (reading.start.date ? formatDate(*reading.start.date) + ' ' : std::string())
                    + clockText(*reading.start.secondsOfDay) + '.';
        }
        paragraph(text);
        paragraph("Asked by " + m_report.specification.id + ", revision "
                  + std::to_string(m_report.specification.revision) + '.');
    }

    void appendMapping()
    {
        if (!m_report.isProposed) {
            return;
        }
        const TraceMapping& mapping = m_report.mapping;
        paragraph("Read as the file itself proposes, which nobody has confirmed. Look at it with "
                  "trace --propose, correct it, and give it with --map:");
        const auto column = [&](std::size_t index, const std::string& what) {
            const std::string name = index < mapping.header.size() ? mapping.header[index] : "";
            m_out += row({"  column " + std::to_string(index + 1), oneLine(name), what}, {12, 32});
        };
        column(mapping.time.column, "time, " + say(mapping.time.form));
        for (const MappedChannel& channel : mapping.channels) {
            const std::string unit = channel.role == ChannelRole::notUsed ? ""
                                     : isTemperature(channel.role)
                                         ? ", " + say(channel.unit)
                                         : ", " + say(channel.unit) + ' ' + say(channel.zero);
            column(channel.column, say(channel.role) + unit);
        }
        for (const ProposalNote& note : m_report.notes) {
            const bool isOfUse = note.item != ProposedItem::header;
            if (note.sureness == Sureness::guessed && isOfUse) {
                paragraph((note.column == 0 ? std::string()
                                            : "Column " + std::to_string(note.column) + ", ")
                          + say(note.item) + ": " + say(note));
            }
        }
        if (const MappingFault fault = faultOf(mapping); fault != MappingFault::none) {
            paragraph(say(fault));
        }
    }

    void appendAnswers()
    {
        const std::vector<TraceAnswer> answers = answersOf(m_report);
        if (answers.empty()) {
            return;
        }
        m_out += '\n' + row({"Asked", "Found", "Answer"}, {40, 26});
        for (const TraceAnswer& answer : answers) {
            m_out += row({answer.asked, answer.found, say(answer.shown)}, {40, 26});
        }
    }

    [[nodiscard]] static std::string momentText(const Moment& moment)
    {
        if (!std::isfinite(moment.earliest)) {
            return "the beginning";
        }
        return std::isfinite(moment.latest) ? lengthText(Bounds{moment.earliest, moment.latest})
                                            : "the end";
    }

    void appendPhases()
    {
        if (m_found.phases.phases.empty()) {
            return;
        }
        m_out += '\n' + row({"Phase", "From", "To", "Lasts"}, {18, 20, 20});
        for (const TracePhase& phase : m_found.phases.phases) {
            m_out += row({say(phase.kind), momentText(phase.begin.at), momentText(phase.end.at),
                          lengthText(phase.seconds)},
                         {18, 20, 20});
        }
        const std::vector<Pulse>& pulses = m_found.phases.pulses;
        if (!pulses.empty()) {
            std::string text =
                "Pulses of air removal: " + std::to_string(pulses.size())
                + (m_found.phases.pulsesSure ? "" : " (not sure: the samples are too far apart)")
                + "; kPa absolute, down and up:";
            for (const Pulse& pulse : pulses) {
                text += ' ' + numberText(pulse.depthKPa, 1) + '/' + numberText(pulse.heightKPa, 1);
            }
            paragraph(text + '.');
        }
    }

    [[nodiscard]] std::string channelName(std::size_t channel) const
    {
        return channel < m_trace.channels.size() ? oneLine(m_trace.channels[channel].name)
                                                 : std::string();
    }

    void appendHold()
    {
        const Exposure& exposure = m_found.exposure;
        if (exposure.rule == HoldRule::none) {
            return;
        }
        m_out += '\n'
                 + row({exposure.rule == HoldRule::band ? "While it was held"
                                                        : "The plateau, outside the band",
                        "Least", "Greatest", "Mean", "Drift a minute"},
                       {32, 12, 12, 12});
        for (const ChannelFigures& figures : exposure.channels) {
            m_out += row({channelName(figures.channel), numberText(figures.least, 2),
                          numberText(figures.greatest, 2), numberText(figures.mean, 2),
                          numberText(figures.driftPerMinute, 3)},
                         {32, 12, 12, 12});
        }
        for (const Interruption& each : exposure.interruptions) {
            paragraph("Break of " + lengthText(each.seconds) + " from "
                      + lengthText(m_trace.seconds[each.between.first]) + " on: " + say(each.cause)
                      + (std::isfinite(each.coldest)
                             ? ", coldest " + numberText(each.coldest, 2) + " °C."
                             : "."));
        }
        if (std::ranges::none_of(m_found.saturation, [](const SaturationDifference& each) {
                return each.measured > 0;
            })) {
            return;
        }
        m_out += '\n' + row({"Less saturation, K", "Least", "Greatest", "Mean"}, {32, 12, 12});
        for (const SaturationDifference& each : m_found.saturation) {
            m_out += row({channelName(each.channel), numberText(each.least, 2),
                          numberText(each.greatest, 2), numberText(each.mean, 2)},
                         {32, 12, 12});
        }
        paragraph("Less saturation: above 0 the steam is hotter than its pressure says "
                  "(superheat); below "
                  "0 it is colder, as where air or another gas that does not condense is in it. A "
                  "sensor out of calibration, or a wrong atmosphere, looks the same.");
    }

    void appendLethality()
    {
        if (m_found.lethality.empty()) {
            return;
        }
        const LethalReference& reference = m_report.asked.f0;
        m_out += '\n'
                 + row({"F0, min at " + numberText(reference.celsius, 2) + " °C, z "
                            + numberText(reference.zKelvin, 1) + " K",
                        "Whole cycle", "While held"},
                       {40, 16});
        const auto add = [&](const std::string& name, const CycleLethality& f0) {
            m_out +=
                row({name, numberText(f0.whole.minutes, 2), numberText(f0.exposure.minutes, 2)},
                    {40, 16});
            if (f0.whole.leftOutSeconds > 0) {
                paragraph("Not counted: " + lengthText(f0.whole.leftOutSeconds)
                          + " without a value.");
            }
        };
        for (const ChannelLethality& each : m_found.lethality) {
            add(channelName(each.channel), each.f0);
        }
        add("the coldest of them at each moment", m_found.coldest);
    }

    void appendLeak()
    {
        if (!m_found.leak) {
            return;
        }
        const LeakTest& leak = *m_found.leak;
        const auto rate = [](const LeakRate& each) {
            return numberText(each.mbarPerMinute(), 2) + " mbar/min ("
                   + numberText(each.mmHgPerMinute(), 2) + " mmHg/min)";
        };
        m_out += '\n';
        paragraph("Leak: " + rate(leak.byReadings) + " by two readings, " + rate(leak.byRegression)
                  + " by the straight line. Settling and measuring complete: "
                  + say(leak.isComplete) + '.');
        if (leak.isTemperatureDoubtful) {
            paragraph("The temperature changed, or was not measured, while the pressure was: the "
                      "rate is doubtful.");
        }
    }

    void appendDefects()
    {
        const TraceReading& reading = m_report.reading;
        if (reading.defects.empty()) {
            return;
        }
        m_out += "\n  What is wrong with the text, or must be said of it\n";
        constexpr std::size_t mostSaid = 40;
        for (std::size_t i = 0; i < reading.defects.size() && i < mostSaid; ++i) {
            const TraceDefectSaid said = say(reading.defects[i]);
            appendParagraph(m_out, 2, "- ", oneLine(said.says + ' ' + said.next), 2);
        }
        std::int64_t all = 0;
        for (const std::int64_t count : reading.counts) {
            all += count;
        }
        if (all > static_cast<std::int64_t>(mostSaid)) {
            paragraph("In all " + std::to_string(all) + "; --json tells more of them.");
        }
    }

    std::string& m_out;
    const TraceReport& m_report;
    const TraceEvaluation& m_found;
    const Trace& m_trace;
};

} // namespace

void appendReport(std::string& out, const TraceReport& report)
{
    Report(out, report).append();
}

std::string traceCautions()
{
    std::string text;
    appendParagraph(text, 0, "", say(Caveat::chamberIsNotPack) + ' ' + caution(), 0);
    return text;
}

} // namespace loadwarden::cli
