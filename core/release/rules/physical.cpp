#include "core/cycle/limits.h"
#include "core/quantities/temperature.h"
#include "core/release/rules/rules.h"

#include <algorithm>
#include <span>

namespace loadwarden::rules {
namespace {

/// By how much a least limit of temperature may lie below the program's setting.
constexpr auto settingAllowance = TemperatureDifference::fromKelvinHundredths(50);

/// How far above its setting no sensor reads: Fahrenheit typed as Celsius lies further.
constexpr auto implausiblyAbove = TemperatureDifference::fromKelvinHundredths(30'00);

bool isAsked(const View& view, Parameter parameter)
{
    if (view.method != Method::ethyleneOxide || view.sterilizer == nullptr) {
        return true;
    }
    return (parameter != Parameter::concentration || view.sterilizer->recordsConcentration)
           && (parameter != Parameter::humidity || view.sterilizer->recordsHumidity);
}

/// The readings outside one side of a limit.
struct Outside {
    explicit Outside(std::pmr::memory_resource* memory) : acts(memory) {}

    std::pmr::vector<const Act*> acts;
    Instant newest{};
    Quantity value;
    Quantity limit;

    void take(const ParameterReading& reading, const Quantity& by)
    {
        if (acts.empty() || reading.act.recordedAt >= newest) {
            newest = reading.act.recordedAt;
            value = reading.value;
            limit = by;
        }
        acts.push_back(&reading.act);
    }
    void describe(Finding& finding) const
    {
        finding.value = value;
        finding.limit = limit;
    }
};

void judgeParameter(const View& view, const Limit& limit, FindingSink& sink)
{
    const std::string_view name = textOf(limit.parameter);
    Outside below(view.memory);
    Outside above(view.memory);
    bool anyStanding = false;
    bool needsAtmosphere = false;
    for (const ParameterReading& reading : view.load.readings) {
        if (reading.parameter != limit.parameter) {
            continue;
        }
        anyStanding =
            anyStanding
            || (stands(reading.act, view.now)
                && (!view.evidence.load.end || reading.act.happenedAt >= *view.evidence.load.end));
        const LimitCheck least = checkLeast(limit, reading.value, view.evidence.record.atmosphere);
        const LimitCheck most = checkMost(limit, reading.value, view.evidence.record.atmosphere);
        needsAtmosphere = needsAtmosphere || least.against == Against::needsAtmosphere
                          || most.against == Against::needsAtmosphere;
        if (least.against == Against::beyond) {
            below.take(reading, *least.limit);
        }
        if (most.against == Against::beyond) {
            above.take(reading, *most.limit);
        }
    }
    if (needsAtmosphere) {
        sink.add(Key::physicalAtmosphereUnknown, Outcome::waits, name);
    }
    if (!below.acts.empty()) {
        below.describe(limit.parameter == Parameter::drying
                           ? sink.addReview(Key::physicalDryingShort, Reviewer::lead, name,
                                            below.newest, below.acts)
                           : sink.add(Key::physicalBelow, Outcome::fails, name));
    }
    if (!above.acts.empty()) {
        above.describe(view.policy.aboveMaximum == AboveMaximum::fails
                           ? sink.add(Key::physicalAbove, Outcome::fails, name)
                           : sink.addReview(Key::physicalAbove, Reviewer::lead, name, above.newest,
                                            above.acts));
    }
    if (!anyStanding && isAsked(view, limit.parameter)) {
        const auto& lost = view.load.lostReadings;
        const bool isLost = std::any_of(lost.begin(), lost.end(), [&](const LostReading& each) {
            return each.parameter == limit.parameter && stands(each.act, view.now);
        });
        sink.add(isLost ? Key::physicalLost : Key::physicalMissing,
                 isLost ? Outcome::fails : Outcome::waits, name);
    }
}

/// The least limits of a parameter, none where it has none.
std::span<const Quantity> leastOf(const CycleSpecification& specification, Parameter parameter)
{
    const Limit* limit = findLimit(specification, parameter);
    return limit == nullptr ? std::span<const Quantity>() : std::span(limit->least);
}

/// A cycle specification that says too little, or asks less of the record than its program is set
/// to.
void judgeSpecification(const View& view, FindingSink& sink)
{
    const CycleSpecification& specification = *view.specification;
    const ProgramSettings& set = specification.settings;
    const auto temperature = leastOf(specification, Parameter::temperature);
    const auto exposure = leastOf(specification, Parameter::exposure);
    const auto drying = leastOf(specification, Parameter::drying);
    const auto missing = [&sink](bool isMissing, Parameter parameter) {
        if (isMissing) {
            sink.add(Key::physicalLimitsMissing, Outcome::waits, textOf(parameter));
        }
    };
    missing(exposure.empty()
                || std::any_of(exposure.begin(), exposure.end(),
                               [](const Quantity& least) { return least.thousandths <= 0; }),
            Parameter::exposure);
    missing(temperature.empty() && !isGas(view.method), Parameter::temperature);
    missing(drying.empty() && set.dryingMs && *set.dryingMs > 0, Parameter::drying);

    const auto milder = [&sink](std::span<const Quantity> least, Parameter parameter,
                                const auto& isMilder) {
        const auto found = std::find_if(least.begin(), least.end(), isMilder);
        if (found != least.end()) {
            sink.add(Key::physicalLimitMilder, Outcome::waits, textOf(parameter)).limit = *found;
        }
    };
    if (set.temperature && (view.method == Method::steam || view.method == Method::dryHeat)) {
        const std::int64_t least = temperatureUnits(*set.temperature) - settingAllowance.units();
        milder(temperature, Parameter::temperature,
               [least](const Quantity& limit) { return temperatureUnits(limit) < least; });
    }
    const auto shorter = [](std::int64_t setMs) {
        return [setMs](const Quantity& limit) { return milliseconds(limit) < setMs; };
    };
    if (set.exposureMs) {
        milder(exposure, Parameter::exposure, shorter(*set.exposureMs));
    }
    if (set.dryingMs) {
        milder(drying, Parameter::drying, shorter(*set.dryingMs));
    }
}

/// A temperature that no sensor reads in such a cycle, by the program's setting or, where that is
/// not stated, by the least limit.
void judgePlausibility(const View& view, FindingSink& sink)
{
    const auto& set = view.specification->settings.temperature;
    const Limit* limit = findLimit(*view.specification, Parameter::temperature);
    const Quantity* hottest = nullptr;
    for (const ParameterReading& reading : view.load.readings) {
        if (reading.parameter != Parameter::temperature) {
            continue;
        }
        const Quantity* expected = set                ? &*set
                                   : limit != nullptr ? checkLeast(*limit, reading.value, {}).limit
                                                      : nullptr;
        const std::int64_t read = temperatureUnits(reading.value);
        if (expected != nullptr && read > temperatureUnits(*expected) + implausiblyAbove.units()
            && (hottest == nullptr || read > temperatureUnits(*hottest))) {
            hottest = &reading.value;
        }
    }
    if (hottest != nullptr) {
        sink.add(Key::physicalImplausible, Outcome::waits, textOf(Parameter::temperature)).value =
            *hottest;
    }
}

} // namespace

void physical(const View& view, FindingSink& sink)
{
    if (view.specification == nullptr) {
        return;
    }
    judgeSpecification(view, sink);
    judgePlausibility(view, sink);
    for (const Limit& limit : view.specification->limits) {
        judgeParameter(view, limit, sink);
    }
}

} // namespace loadwarden::rules
