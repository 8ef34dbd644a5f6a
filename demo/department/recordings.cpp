#include "demo/department/recordings.h"

#include "core/cycle/simulation/trace_text.h"

namespace loadwarden::demo {

namespace {

using simulation::Settings;
using simulation::TextSettings;

/// A line every ten seconds, so that the journal stays small.
constexpr double samplingSeconds = 10;

Settings settingsOf(const RecordedCycle& cycle, double atmosphereKPa)
{
    Settings settings;
    settings.setCelsius = 132;
    settings.exposureSeconds = 270;
    settings.dryingSeconds = 1'500;
    settings.atmosphereKPa = atmosphereKPa;
    settings.samplingSeconds = samplingSeconds;
    settings.seed = static_cast<std::uint64_t>(cycle.counter);
    settings.faults = cycle.faults;
    return settings;
}

/// Three recorders that write in three ways.
TextSettings wayOf(const std::string& sterilizer)
{
    TextSettings way;
    way.time = TimeForm::dateTime;
    if (sterilizer == "sz-2") {
        way.separator = FieldSeparator::semicolon;
        way.decimal = DecimalMark::comma;
        way.pressure = RecorderUnit::bar;
        way.zero = PressureZero::gauge;
    } else if (sterilizer == "sz-3") {
        way.separator = FieldSeparator::tab;
        way.temperature = RecorderUnit::fahrenheit;
        way.pressure = RecorderUnit::psi;
        way.order = DateOrder::monthDayYear;
    }
    return way;
}

} // namespace

RecorderFile recorderFileOf(const RecordedCycle& cycle, const Zone& zone, double atmosphereKPa)
{
    TextSettings way = wayOf(cycle.sterilizer);
    way.atmosphereKPa = atmosphereKPa;
    way.counter = cycle.counter;
    way.date = zone.dateOf(cycle.start);
    // What a clock shows, also on the day on which the clocks are changed.
    constexpr std::int64_t dayMs = 86'400'000;
    const Instant shown = cycle.start + zone.offsetAt(cycle.start);
    way.secondsOfDay = static_cast<double>(shown.ms % dayMs) / 1'000;
    const Trace trace = simulation::simulate(settingsOf(cycle, atmosphereKPa)).trace;
    return {.name = "sterilizer-" + cycle.sterilizer.substr(3) + "_cycle-"
                    + std::to_string(cycle.counter) + "_simulated.txt",
            .text = simulation::writeTraceText(trace, way),
            .mapping = simulation::mappingOfText(trace, way)};
}

} // namespace loadwarden::demo
