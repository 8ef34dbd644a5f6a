#include "app/cli/arguments.h"
#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/load_commands.h"
#include "app/cli/trace/trace_command.h"
#include "app/cli/trace/trace_files.h"
#include "core/cycle/simulation/simulation_words.h"
#include "core/cycle/simulation/trace_text.h"
#include "core/cycle/trace/trace_words.h"

#include <array>
#include <cmath>
#include <ostream>

namespace loadwarden::cli {

namespace {

using simulation::Fault;
using simulation::Settings;
using simulation::TextSettings;

constexpr std::array options = {Option{"--simulate", false},        Option{"--program", true},
                                Option{"--celsius", true},          Option{"--band-kelvin", true},
                                Option{"--exposure", true},         Option{"--drying", true},
                                Option{"--pulses", true},           Option{"--every", true},
                                Option{"--settle", true},           Option{"--seed", true},
                                Option{"--faults", true},           Option{"--atmosphere", true},
                                Option{"--separator", true},        Option{"--decimal", true},
                                Option{"--temperature-unit", true}, Option{"--pressure-unit", true},
                                Option{"--pressure-zero", true},    Option{"--time-form", true},
                                Option{"--date-order", true},       Option{"--begins", true},
                                Option{"--counter", true},          Option{"--defects", true}};

/// The value of an option between two bounds, or what stands there already.
void take(const Arguments& given, std::string_view option, double least, double most, double& into)
{
    const auto value = numberGiven(given, option);
    if (!value) {
        return;
    }
    if (*value < least || *value > most) {
        throw UsageError(std::string(option) + " needs a number from "
                         + std::to_string(std::lround(least)) + " to "
                         + std::to_string(std::lround(most)));
    }
    into = *value;
}

template <class Table, class Value>
void takeWord(const Arguments& given, std::string_view option, const Table& table, Value& into)
{
    if (const auto text = given.value(option)) {
        into = wordIn(table, *text, option);
    }
}

/// "KIND=SIZE" or "KIND=SIZE:KELVIN".
Fault faultIn(std::string_view text)
{
    const std::size_t equals = text.find('=');
    if (equals == std::string_view::npos) {
        throw UsageError("--faults needs KIND=SIZE, as short-exposure=30, not \""
                         + std::string(text) + '"');
    }
    Fault fault{.kind = wordIn(simulation::faultWords, text.substr(0, equals), "a fault")};
    const std::string_view size = text.substr(equals + 1);
    const std::size_t colon = size.find(':');
    fault.size = numberIn(size.substr(0, colon), "--faults");
    if (colon != std::string_view::npos) {
        fault.kelvin = numberIn(size.substr(colon + 1), "--faults");
    }
    return fault;
}

Settings settingsIn(const Arguments& given)
{
    constexpr double day = 86'400;
    Settings settings;
    takeWord(given, "--program", simulation::programWords, settings.program);
    take(given, "--celsius", 105, 150, settings.setCelsius);
    take(given, "--band-kelvin", 1, 20, settings.bandKelvin);
    take(given, "--exposure", 0, day, settings.exposureSeconds);
    take(given, "--drying", 0, day, settings.dryingSeconds);
    take(given, "--settle", 0, day, settings.settleSeconds);
    take(given, "--every", 1, 600, settings.samplingSeconds);
    double pulses = settings.pulses;
    take(given, "--pulses", 0, 20, pulses);
    settings.pulses = static_cast<int>(std::lround(pulses));
    if (const auto atmosphere = atmosphereGiven(given)) {
        settings.atmosphereKPa = static_cast<double>(atmosphere->micropascals()) / 1e9;
    }
    if (const auto seed = given.value("--seed")) {
        settings.seed = static_cast<std::uint64_t>(whole(*seed, "--seed"));
    }
    for (const std::string& fault : listOf(given.value("--faults"))) {
        settings.faults.push_back(faultIn(fault));
    }
    return settings;
}

/// "2031-03-04T07:00": what the recorder's clock shows, so without an offset.
void takeBegin(std::string_view text, TextSettings& into)
{
    const auto at = parseInstant(std::string(text) + 'Z');
    if (!at) {
        throw UsageError("--begins needs a local time, as 2031-03-04T07:00, not \""
                         + std::string(text) + '"');
    }
    constexpr std::int64_t dayMs = 86'400'000;
    into.date = Date{static_cast<std::int32_t>(at->ms / dayMs)};
    into.secondsOfDay = static_cast<double>(at->ms % dayMs) / 1000;
}

TextSettings textIn(const Arguments& given, double atmosphereKPa)
{
    TextSettings text;
    text.atmosphereKPa = atmosphereKPa;
    takeWord(given, "--separator", fieldSeparatorWords, text.separator);
    takeWord(given, "--decimal", decimalMarkWords, text.decimal);
    takeWord(given, "--temperature-unit", recorderUnitWords, text.temperature);
    takeWord(given, "--pressure-unit", recorderUnitWords, text.pressure);
    takeWord(given, "--pressure-zero", pressureZeroWords, text.zero);
    takeWord(given, "--time-form", timeFormWords, text.time);
    takeWord(given, "--date-order", dateOrderWords, text.order);
    if (!isTemperature(text.temperature) || isTemperature(text.pressure)) {
        throw UsageError("a temperature needs a unit of temperature, a pressure one of pressure");
    }
    if (const auto begins = given.value("--begins")) {
        takeBegin(*begins, text);
    }
    if (const auto counter = given.value("--counter")) {
        text.counter = whole(*counter, "--counter");
    }
    for (const std::string& defect : listOf(given.value("--defects"))) {
        const TraceDefectKind kind = wordIn(traceDefectWords, defect, "a defect");
        if (!simulation::isWritable(kind)) {
            throw UsageError("a text with the defect " + defect + " cannot be written");
        }
        text.defects.push_back(kind);
    }
    return text;
}

} // namespace

int simulateTrace(std::span<const std::string_view> arguments, Streams streams)
{
    const Arguments given(arguments, options);
    if (!given.rest().empty()) {
        throw UsageError("trace --simulate takes no file; it writes one to standard output");
    }
    const Settings settings = settingsIn(given);
    const TextSettings text = textIn(given, settings.atmosphereKPa);
    streams.out << simulation::writeTraceText(simulation::simulate(settings).trace, text);
    return exitDone;
}

} // namespace loadwarden::cli
