#include "core/cycle/limits.h"
#include "core/quantities/temperature.h"
#include "core/release/entry_cause.h"
#include "core/release/rules/rules.h"
#include "core/release/rules/specification.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

/// How far above its setting no sensor reads: Fahrenheit typed as Celsius lies further. Steam's
/// pressure valves open long before (common practice, no source).
TemperatureDifference implausiblyAbove(Method method)
{
    return TemperatureDifference::fromKelvinHundredths(method == Method::steam ? 10'00 : 30'00);
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

/// Why the reading of a parameter that was recorded last does not count; none where there is none.
Cause causeOfLast(const View& view, Parameter parameter)
{
    const Act* last = nullptr;
    for (const ParameterReading& reading : view.load.readings) {
        if (reading.parameter == parameter) {
            last = lastRecorded(last, reading.act);
        }
    }
    return last == nullptr ? Cause::none : causeOf(*last, view.evidence.load.end, view.now);
}

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
            anyStanding || causeOf(reading.act, view.evidence.load.end, view.now) == Cause::none;
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
    if (!anyStanding && isRecorded(view.evidence.record, limit.parameter)) {
        const auto& lost = view.load.lostReadings;
        const bool isLost = std::any_of(lost.begin(), lost.end(), [&](const LostReading& each) {
            return each.parameter == limit.parameter && stands(each.act, view.now);
        });
        if (isLost) {
            sink.add(Key::physicalLost, Outcome::fails, name);
        } else {
            sink.add(Key::physicalMissing, Outcome::waits, name).cause =
                causeOfLast(view, limit.parameter);
        }
    }
}

/// A temperature that no sensor reads in such a cycle, by the program's setting or, where that is
/// not stated, by the least limit.
void judgePlausibility(const View& view, FindingSink& sink)
{
    const auto& set = view.specification->settings.temperature;
    const Limit* limit = findLimit(*view.specification, Parameter::temperature);
    const Quantity* hottest = nullptr;
    const std::int64_t above = implausiblyAbove(view.method).units();
    for (const ParameterReading& reading : view.load.readings) {
        if (reading.parameter != Parameter::temperature) {
            continue;
        }
        const Quantity* expected = set                ? &*set
                                   : limit != nullptr ? checkLeast(*limit, reading.value, {}).limit
                                                      : nullptr;
        const std::int64_t read = temperatureUnits(reading.value);
        if (expected != nullptr && read > temperatureUnits(*expected) + above
            && (hottest == nullptr || read > temperatureUnits(*hottest))) {
            hottest = &reading.value;
        }
    }
    if (hottest != nullptr) {
        sink.add(Key::physicalImplausible, Outcome::waits, textOf(Parameter::temperature)).value =
            *hottest;
    }
}

/// Notes what was read though the specification has no limit for it: nothing judges that.
void noteUnjudged(const View& view, FindingSink& sink)
{
    for (const ParameterReading& reading : view.load.readings) {
        const Limit* limit = findLimit(*view.specification, reading.parameter);
        if ((limit == nullptr || (limit->least.empty() && limit->most.empty()))
            && !isLimitMissing(view.evidence.record, reading.parameter)) {
            sink.addOnce(Key::physicalNotJudged, Outcome::note, textOf(reading.parameter));
        }
    }
}

} // namespace

void physical(const View& view, FindingSink& sink)
{
    if (view.specification == nullptr) {
        return;
    }
    for (const SpecificationFault& fault : view.evidence.specificationFaults) {
        sink.add(fault.key, Outcome::waits, textOf(fault.parameter)).limit = fault.limit;
    }
    judgePlausibility(view, sink);
    noteUnjudged(view, sink);
    for (const Limit& limit : view.specification->limits) {
        judgeParameter(view, limit, sink);
    }
}

} // namespace loadwarden::rules
