#include "core/release/rules/specification.h"

#include "core/cycle/limits.h"
#include "core/quantities/temperature.h"

#include <algorithm>
#include <array>
#include <optional>
#include <span>

namespace loadwarden::rules {
namespace {

/// By how much a least limit of temperature may lie below the program's setting, nullopt where they
/// are not compared. Chambers of ethylene oxide are held less closely (common practice, no source).
std::optional<TemperatureDifference> settingAllowance(Method method)
{
    switch (method) {
    case Method::steam:
    case Method::dryHeat:
    case Method::unknown: return TemperatureDifference::fromKelvinHundredths(50);
    case Method::ethyleneOxide: return TemperatureDifference::fromKelvinHundredths(5'00);
    case Method::hydrogenPeroxide: break;
    }
    return std::nullopt;
}

/// Well below what any published cycle of a method has: under it, somebody typed another unit or
/// another thing. The lowest that the CDC Guideline for Disinfection and Sterilization in
/// Healthcare Facilities (2008) names are, each by itself, steam 121 °C and 3 min, ethylene oxide
/// 37 °C and 1 h; dry heat and hydrogen peroxide are common practice, no source.
struct Floor {
    Method method;
    std::optional<std::int64_t> celsiusHundredths;
    std::int64_t exposureMinutes;
};

constexpr std::array floors{Floor{Method::steam, 110'00, 2}, Floor{Method::dryHeat, 110'00, 5},
                            Floor{Method::ethyleneOxide, 25'00, 30},
                            Floor{Method::hydrogenPeroxide, std::nullopt, 1}};

/// A cooler program needs longer: the same Guideline has steam at 121 °C for 30 min or more, and
/// (restated) dry heat at 170 °C for 60 min, 160 °C for 120 min. Each line holds below its
/// temperature; well below what is published there.
struct CoolerFloor {
    Method method;
    std::int64_t belowCelsiusHundredths;
    std::int64_t exposureMinutes;
};

constexpr std::array coolerFloors{CoolerFloor{Method::steam, 130'00, 10},
                                  CoolerFloor{Method::dryHeat, 185'00, 20},
                                  CoolerFloor{Method::dryHeat, 165'00, 60}};

/// No wrapped load dries in less (common practice, no source).
constexpr Duration shortestDrying = Duration::minutes(1);

/// The shortest exposure that is believed of a program.
Duration shortestExposure(const Floor& floor, const ProgramSettings& set)
{
    std::int64_t minutes = floor.exposureMinutes;
    for (const CoolerFloor& cooler : coolerFloors) {
        if (cooler.method == floor.method && set.temperature
            && temperatureUnits(*set.temperature)
                   < Temperature::fromCelsiusHundredths(cooler.belowCelsiusHundredths).units()) {
            minutes = std::max(minutes, cooler.exposureMinutes);
        }
    }
    return Duration::minutes(minutes);
}

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

using Faults = std::vector<SpecificationFault>;

void takeMissing(const EvidenceRecord& record, Faults& faults)
{
    const CycleSpecification& specification = *record.specification;
    const Method method = specification.method;
    const ProgramSettings& set = specification.settings;
    const auto unset = [&faults](bool applies, Parameter parameter) {
        if (applies) {
            faults.push_back({Key::physicalSettingsMissing, parameter, {}});
        }
    };
    const bool hasSettings = method != Method::hydrogenPeroxide;
    unset(hasSettings && !set.temperature, Parameter::temperature);
    unset(hasSettings && !set.exposureMs, Parameter::exposure);
    unset((method == Method::steam || method == Method::unknown)
              && specification.purpose != Purpose::immediateUse && !set.dryingMs,
          Parameter::drying);
    for (const Parameter parameter :
         {Parameter::temperature, Parameter::exposure, Parameter::drying, Parameter::concentration,
          Parameter::humidity}) {
        if (isLimitMissing(record, parameter)) {
            faults.push_back({Key::physicalLimitsMissing, parameter, {}});
        }
    }
}

void takeImplausible(const CycleSpecification& specification, Faults& faults)
{
    const Method method = specification.method;
    const auto* const floor =
        std::find_if(floors.begin(), floors.end(),
                     [method](const Floor& each) { return each.method == method; });
    if (floor == floors.end()) {
        return;
    }
    const ProgramSettings& set = specification.settings;
    const auto take = [&faults](std::span<const Quantity> least,
                                const std::optional<Quantity>& setting, Parameter parameter,
                                const auto& isTooLow) {
        const auto found = std::find_if(least.begin(), least.end(), isTooLow);
        if (found != least.end()) {
            faults.push_back({Key::physicalLimitImplausible, parameter, *found});
        } else if (setting && isTooLow(*setting)) {
            faults.push_back({Key::physicalLimitImplausible, parameter, setting});
        }
    };
    if (floor->celsiusHundredths) {
        const std::int64_t coolest =
            Temperature::fromCelsiusHundredths(*floor->celsiusHundredths).units();
        take(leastOf(specification, Parameter::temperature), set.temperature,
             Parameter::temperature,
             [coolest](const Quantity& value) { return temperatureUnits(value) < coolest; });
    }
    if (method == Method::steam && specification.purpose == Purpose::routine && set.dryingMs
        && *set.dryingMs < shortestDrying.ms) {
        faults.push_back({Key::physicalLimitImplausible, Parameter::drying,
                          Quantity{Unit::seconds, *set.dryingMs}});
    }

    const std::int64_t shortest = shortestExposure(*floor, set).ms;
    std::optional<Quantity> exposure;
    if (set.exposureMs) {
        exposure = Quantity{Unit::seconds, *set.exposureMs};
    }
    const auto least = leastOf(specification, Parameter::exposure);
    const bool onlyMissing = std::any_of(least.begin(), least.end(), isNotAboveZero);
    take(onlyMissing ? std::span<const Quantity>() : least, exposure, Parameter::exposure,
         [shortest](const Quantity& value) { return milliseconds(value) < shortest; });
}

void takeDisagreeing(const EvidenceRecord& record, Faults& faults)
{
    const CycleSpecification& specification = *record.specification;
    const auto& atmosphere = record.atmosphere;
    const ProgramSettings& set = specification.settings;
    const bool settings =
        set.inFahrenheit && disagree(std::array{*set.temperature, *set.inFahrenheit}, atmosphere);
    if (settings && findLimit(specification, Parameter::temperature) == nullptr) {
        faults.push_back({Key::physicalLimitsDisagree, Parameter::temperature, {}});
    }
    for (const Limit& limit : specification.limits) {
        if (disagree(limit.least, atmosphere) || disagree(limit.most, atmosphere)
            || (settings && limit.parameter == Parameter::temperature)) {
            faults.push_back({Key::physicalLimitsDisagree, limit.parameter, {}});
        }
    }
}

void takeMilder(const CycleSpecification& specification, Faults& faults)
{
    const ProgramSettings& set = specification.settings;
    const auto milder = [&](Parameter parameter, const auto& isMilder) {
        const auto least = leastOf(specification, parameter);
        const auto found = std::find_if(least.begin(), least.end(), isMilder);
        if (found != least.end()) {
            faults.push_back({Key::physicalLimitMilder, parameter, *found});
        }
    };
    const auto allowance = settingAllowance(specification.method);
    if (set.temperature && allowance) {
        const std::int64_t least = temperatureUnits(*set.temperature) - allowance->units();
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

bool isRecorded(const EvidenceRecord& record, Parameter parameter)
{
    if (record.specification->method != Method::ethyleneOxide || !record.sterilizer) {
        return true;
    }
    return (parameter != Parameter::concentration || record.sterilizer->recordsConcentration)
           && (parameter != Parameter::humidity || record.sterilizer->recordsHumidity);
}

bool isLimitMissing(const EvidenceRecord& record, Parameter parameter)
{
    const Method method = record.specification->method;
    const auto least = leastOf(*record.specification, parameter);
    const auto& dryingMs = record.specification->settings.dryingMs;
    switch (parameter) {
    case Parameter::temperature: return least.empty() && method != Method::hydrogenPeroxide;
    case Parameter::exposure:
        return least.empty() || std::any_of(least.begin(), least.end(), isNotAboveZero);
    case Parameter::drying: return least.empty() && dryingMs && *dryingMs > 0;
    case Parameter::concentration:
    case Parameter::humidity:
        return least.empty() && method == Method::ethyleneOxide && isRecorded(record, parameter);
    case Parameter::pressure: break;
    }
    return false;
}

std::vector<SpecificationFault> specificationFaults(const EvidenceRecord& record)
{
    std::vector<SpecificationFault> faults;
    takeMissing(record, faults);
    takeImplausible(*record.specification, faults);
    takeDisagreeing(record, faults);
    takeMilder(*record.specification, faults);
    return faults;
}

} // namespace loadwarden::rules
