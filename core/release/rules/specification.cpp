#include "core/release/rules/specification.h"

#include "core/cycle/limits.h"
#include "core/quantities/temperature.h"

#include <algorithm>
#include <array>
#include <optional>
#include <span>

namespace loadwarden::rules {
namespace {

/// By how much a least limit of temperature may lie below the program's setting.
constexpr auto settingAllowance = TemperatureDifference::fromKelvinHundredths(50);

/// Well below what any published cycle of a method has: under it, somebody typed another unit or
/// another thing. The lowest that the CDC Guideline for Disinfection and Sterilization in
/// Healthcare Facilities (2008) names are, each by itself, steam 121 °C and 3 min, ethylene oxide
/// 37 °C and 1 h; dry heat is common practice, no source.
struct Floor {
    Method method;
    std::int64_t celsiusHundredths;
    std::int64_t exposureMinutes;
};

constexpr std::array floors{Floor{Method::steam, 110'00, 2}, Floor{Method::dryHeat, 110'00, 5},
                            Floor{Method::ethyleneOxide, 25'00, 30}};

/// The least limits of a parameter, none where it has none.
std::span<const Quantity> leastOf(const CycleSpecification& specification, Parameter parameter)
{
    const Limit* limit = findLimit(specification, parameter);
    return limit == nullptr ? std::span<const Quantity>() : std::span(limit->least);
}

bool isNotAboveZero(const Quantity& least)
{
    return least.thousandths <= 0;
}

void takeMissing(const View& view, FindingSink& sink)
{
    const CycleSpecification& specification = *view.specification;
    const ProgramSettings& set = specification.settings;
    const auto unset = [&sink](bool applies, Parameter parameter) {
        if (applies) {
            sink.add(Key::physicalSettingsMissing, Outcome::waits, textOf(parameter));
        }
    };
    const bool gas = isGas(view.method);
    unset(!gas && !set.temperature, Parameter::temperature);
    unset(!gas && !set.exposureMs, Parameter::exposure);
    unset((view.method == Method::steam || view.method == Method::unknown) && !view.isImmediateUse()
              && !set.dryingMs,
          Parameter::drying);

    const auto missing = [&](bool applies, Parameter parameter) {
        if (applies) {
            sink.add(Key::physicalLimitsMissing, Outcome::waits, textOf(parameter));
        }
    };
    const auto none = [&specification](Parameter parameter) {
        return leastOf(specification, parameter).empty();
    };
    const auto exposure = leastOf(specification, Parameter::exposure);
    missing(none(Parameter::temperature) && view.method != Method::hydrogenPeroxide,
            Parameter::temperature);
    missing(exposure.empty() || std::any_of(exposure.begin(), exposure.end(), isNotAboveZero),
            Parameter::exposure);
    missing(none(Parameter::drying) && set.dryingMs && *set.dryingMs > 0, Parameter::drying);
    if (view.method == Method::ethyleneOxide) {
        for (const Parameter parameter : {Parameter::concentration, Parameter::humidity}) {
            missing(none(parameter) && isRecorded(view, parameter), parameter);
        }
    }
}

void takeImplausible(const View& view, FindingSink& sink)
{
    const auto* const floor =
        std::find_if(floors.begin(), floors.end(),
                     [&view](const Floor& each) { return each.method == view.method; });
    if (floor == floors.end()) {
        return;
    }
    const ProgramSettings& set = view.specification->settings;
    const auto take = [&sink](std::span<const Quantity> least,
                              const std::optional<Quantity>& setting, Parameter parameter,
                              const auto& isTooLow) {
        const auto found = std::find_if(least.begin(), least.end(), isTooLow);
        if (found != least.end()) {
            sink.add(Key::physicalLimitImplausible, Outcome::waits, textOf(parameter)).limit =
                *found;
        } else if (setting && isTooLow(*setting)) {
            sink.add(Key::physicalLimitImplausible, Outcome::waits, textOf(parameter)).limit =
                setting;
        }
    };
    const std::int64_t coolest =
        Temperature::fromCelsiusHundredths(floor->celsiusHundredths).units();
    take(leastOf(*view.specification, Parameter::temperature), set.temperature,
         Parameter::temperature,
         [coolest](const Quantity& value) { return temperatureUnits(value) < coolest; });

    const std::int64_t shortest = Duration::minutes(floor->exposureMinutes).ms;
    std::optional<Quantity> exposure;
    if (set.exposureMs) {
        exposure = Quantity{Unit::seconds, *set.exposureMs};
    }
    const auto least = leastOf(*view.specification, Parameter::exposure);
    const bool onlyMissing = std::any_of(least.begin(), least.end(), isNotAboveZero);
    take(onlyMissing ? std::span<const Quantity>() : least, exposure, Parameter::exposure,
         [shortest](const Quantity& value) { return milliseconds(value) < shortest; });
}

void takeDisagreeing(const View& view, FindingSink& sink)
{
    const auto& atmosphere = view.evidence.record.atmosphere;
    const ProgramSettings& set = view.specification->settings;
    const bool settings =
        set.inFahrenheit && disagree(std::array{*set.temperature, *set.inFahrenheit}, atmosphere);
    if (settings && findLimit(*view.specification, Parameter::temperature) == nullptr) {
        sink.add(Key::physicalLimitsDisagree, Outcome::waits, textOf(Parameter::temperature));
    }
    for (const Limit& limit : view.specification->limits) {
        if (disagree(limit.least, atmosphere) || disagree(limit.most, atmosphere)
            || (settings && limit.parameter == Parameter::temperature)) {
            sink.add(Key::physicalLimitsDisagree, Outcome::waits, textOf(limit.parameter));
        }
    }
}

void takeMilder(const View& view, FindingSink& sink)
{
    const CycleSpecification& specification = *view.specification;
    const ProgramSettings& set = specification.settings;
    const auto milder = [&](Parameter parameter, const auto& isMilder) {
        const auto least = leastOf(specification, parameter);
        const auto found = std::find_if(least.begin(), least.end(), isMilder);
        if (found != least.end()) {
            sink.add(Key::physicalLimitMilder, Outcome::waits, textOf(parameter)).limit = *found;
        }
    };
    if (set.temperature && (view.method == Method::steam || view.method == Method::dryHeat)) {
        const std::int64_t least = temperatureUnits(*set.temperature) - settingAllowance.units();
        milder(Parameter::temperature,
               [least](const Quantity& limit) { return temperatureUnits(limit) < least; });
    }
    const auto shorter = [](std::int64_t setMs) {
        return [setMs](const Quantity& limit) { return milliseconds(limit) < setMs; };
    };
    if (set.exposureMs) {
        milder(Parameter::exposure, shorter(*set.exposureMs));
    }
    if (set.dryingMs) {
        milder(Parameter::drying, shorter(*set.dryingMs));
    }
}

} // namespace

bool isRecorded(const View& view, Parameter parameter)
{
    if (view.method != Method::ethyleneOxide || view.sterilizer == nullptr) {
        return true;
    }
    return (parameter != Parameter::concentration || view.sterilizer->recordsConcentration)
           && (parameter != Parameter::humidity || view.sterilizer->recordsHumidity);
}

void judgeSpecification(const View& view, FindingSink& sink)
{
    takeMissing(view, sink);
    takeImplausible(view, sink);
    takeDisagreeing(view, sink);
    takeMilder(view, sink);
}

} // namespace loadwarden::rules
