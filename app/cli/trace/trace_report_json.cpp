#include "app/cli/trace/trace_report.h"
#include "core/cycle/trace/findings_of.h"
#include "core/cycle/trace/trace_words.h"
#include "core/exchange/trace_mapping_json.h"
#include "core/quantities/date.h"
#include "core/words/say_trace.h"
#include "core/words/say_trace_found.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace loadwarden::cli {

namespace {

using Json = nlohmann::ordered_json;

/// JSON has no number for what is not known or without an end.
Json number(double value)
{
    return std::isfinite(value) ? Json(value) : Json();
}

Json bounds(const Bounds& value)
{
    return {{"least", number(value.least)}, {"most", number(value.most)}};
}

Json moment(const Moment& value)
{
    return {{"earliest", number(value.earliest)}, {"latest", number(value.latest)}};
}

std::string nameOf(const TraceReport& report, std::size_t channel)
{
    const auto& channels = report.reading.trace.channels;
    return channel < channels.size() ? channels[channel].name : std::string();
}

Json phasesOf(const TraceReport& report)
{
    Json phases = Json::array();
    for (const TracePhase& phase : report.evaluation.phases.phases) {
        phases.push_back({{"phase", say(phase.kind)},
                          {"begin", moment(phase.begin.at)},
                          {"end", moment(phase.end.at)},
                          {"seconds", bounds(phase.seconds)}});
    }
    return phases;
}

Json pulsesOf(const TraceReport& report)
{
    Json pulses = Json::array();
    for (const Pulse& pulse : report.evaluation.phases.pulses) {
        pulses.push_back({{"trough", moment(pulse.trough)},
                          {"depthKPa", number(pulse.depthKPa)},
                          {"peak", moment(pulse.peak)},
                          {"heightKPa", number(pulse.heightKPa)}});
    }
    return pulses;
}

Json exposureOf(const TraceReport& report)
{
    const Exposure& exposure = report.evaluation.exposure;
    if (exposure.rule == HoldRule::none) {
        return {};
    }
    Json channels = Json::array();
    for (const ChannelFigures& each : exposure.channels) {
        channels.push_back({{"channel", nameOf(report, each.channel)},
                            {"least", number(each.least)},
                            {"greatest", number(each.greatest)},
                            {"mean", number(each.mean)},
                            {"driftPerMinute", number(each.driftPerMinute)}});
    }
    Json breaks = Json::array();
    for (const Interruption& each : exposure.interruptions) {
        breaks.push_back({{"fromSeconds", report.reading.trace.seconds[each.between.first]},
                          {"seconds", bounds(each.seconds)},
                          {"cause", say(each.cause)}});
    }
    return {{"inBand", exposure.rule == HoldRule::band},
            {"continuousSeconds", bounds(exposure.continuous)},
            {"begin", moment(exposure.begin)},
            {"end", moment(exposure.end)},
            {"channels", std::move(channels)},
            {"breaks", std::move(breaks)}};
}

Json saturationOf(const TraceReport& report)
{
    Json all = Json::array();
    for (const SaturationDifference& each : report.evaluation.saturation) {
        all.push_back({{"channel", nameOf(report, each.channel)},
                       {"leastKelvin", number(each.least)},
                       {"greatestKelvin", number(each.greatest)},
                       {"meanKelvin", number(each.mean)}});
    }
    return all;
}

Json lethalityOf(const TraceReport& report)
{
    const auto minutes = [](const CycleLethality& f0) {
        return Json{{"wholeMinutes", number(f0.whole.minutes)},
                    {"exposureMinutes", number(f0.exposure.minutes)},
                    {"leftOutSeconds", number(f0.whole.leftOutSeconds)}};
    };
    Json channels = Json::array();
    for (const ChannelLethality& each : report.evaluation.lethality) {
        Json channel{{"channel", nameOf(report, each.channel)}};
        channel.update(minutes(each.f0));
        channels.push_back(std::move(channel));
    }
    return {{"referenceCelsius", report.asked.f0.celsius},
            {"zKelvin", report.asked.f0.zKelvin},
            {"coldest", minutes(report.evaluation.coldest)},
            {"channels", std::move(channels)}};
}

Json leakOf(const TraceReport& report)
{
    if (!report.evaluation.leak) {
        return {};
    }
    const LeakTest& leak = *report.evaluation.leak;
    return {{"complete", say(leak.isComplete)},
            {"mbarPerMinuteByReadings", number(leak.byReadings.mbarPerMinute())},
            {"mbarPerMinuteByRegression", number(leak.byRegression.mbarPerMinute())},
            {"temperatureDoubtful", leak.isTemperatureDoubtful}};
}

Json defectsOf(const TraceReport& report)
{
    Json all = Json::array();
    for (const TraceDefect& defect : report.reading.defects) {
        all.push_back({{"kind", wordOf(traceDefectWords, defect.kind)},
                       {"line", defect.place.line},
                       {"lastLine", defect.lastLine},
                       {"column", defect.column},
                       {"samples", defect.samples},
                       {"says", say(defect).says}});
    }
    return all;
}

Json startOf(const TraceStart& start)
{
    return {{"date", start.date ? Json(formatDate(*start.date)) : Json()},
            {"secondsOfDay", start.secondsOfDay ? Json(*start.secondsOfDay) : Json()}};
}

} // namespace

void appendReportJson(std::string& out, const TraceReport& report)
{
    Json answers = Json::object();
    for (const TraceAnswer& answer : answersOf(report)) {
        answers[answer.key] = wordOf(shownWords, answer.shown);
    }
    const Json line{{"file", report.name},
                    {"simulated", report.isSimulated},
                    {"specification", report.specification.id},
                    {"revision", report.specification.revision},
                    {"mappingConfirmed", !report.isProposed},
                    {"mapping", Json::parse(writeTraceMapping(report.mapping))},
                    {"samples", report.reading.trace.samples()},
                    {"typicalStepSeconds", number(report.reading.sampling.typical)},
                    {"counter", report.reading.counter},
                    {"start", startOf(report.reading.start)},
                    {"usable", exitCodeOf(report) != 2},
                    {"answers", std::move(answers)},
                    {"phases", phasesOf(report)},
                    {"pulses", pulsesOf(report)},
                    {"exposure", exposureOf(report)},
                    {"saturation", saturationOf(report)},
                    {"f0", lethalityOf(report)},
                    {"leak", leakOf(report)},
                    {"defectKinds", defectWordsOf(report.reading, report.evaluation)},
                    {"defects", defectsOf(report)},
                    {"caution", say(Caveat::chamberIsNotPack)}};
    out += line.dump(-1, ' ', false, Json::error_handler_t::replace);
    out += '\n';
}

} // namespace loadwarden::cli
