#include "core/cycle/limits.h"
#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

std::string_view nameOf(Parameter parameter)
{
    switch (parameter) {
    case Parameter::temperature: return "temperature";
    case Parameter::exposure: return "exposure";
    case Parameter::pressure: return "pressure";
    case Parameter::drying: return "drying";
    case Parameter::concentration: return "concentration";
    case Parameter::humidity: return "humidity";
    }
    return {};
}

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
    const std::string_view name = nameOf(limit.parameter);
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

} // namespace

void physical(const View& view, FindingSink& sink)
{
    if (view.specification == nullptr) {
        return;
    }
    const Limit* exposure = findLimit(*view.specification, Parameter::exposure);
    const auto isNothing = [](const Quantity& least) { return least.thousandths <= 0; };
    if (exposure == nullptr || exposure->least.empty()
        || std::any_of(exposure->least.begin(), exposure->least.end(), isNothing)) {
        sink.add(Key::physicalLimitsMissing, Outcome::waits, nameOf(Parameter::exposure));
    }
    const Limit* temperature = findLimit(*view.specification, Parameter::temperature);
    if (!isGas(view.method) && (temperature == nullptr || temperature->least.empty())) {
        sink.add(Key::physicalLimitsMissing, Outcome::waits, nameOf(Parameter::temperature));
    }
    for (const Limit& limit : view.specification->limits) {
        judgeParameter(view, limit, sink);
    }
}

} // namespace loadwarden::rules
