#include "core/release/rules/rules.h"

namespace loadwarden::rules {
namespace {

bool isUnclearOrBad(const IndicatorReading& reading)
{
    return reading.seen == Seen::unclear || isBadAnswer(reading.seen)
           || reading.seen == Seen::growth;
}

/// Says what became of the voided bad or unclear answers of one indicator. Growth and what is
/// unclear are never taken out.
void take(const View& view, const std::vector<IndicatorReading>& readings, std::string_view subject,
          FindingSink& sink)
{
    for (const IndicatorReading& reading : readings) {
        if (!reading.voided || !isUnclearOrBad(reading)) {
            continue;
        }
        const bool takenOut = isBadAnswer(reading.seen) && isBadVoided(reading, view.now);
        sink.addOnce(takenOut ? Key::voidingBadAnswer : Key::voidingNotCounted, Outcome::note,
                     subject);
    }
}

void takeControl(const View& view, const Control& control, FindingSink& sink)
{
    const auto dead = deadFrom(control, view.biological, view.evidence.known);
    for (const IndicatorReading& reading : control.readings) {
        // One that is not known to be early is a bad answer, also of a control that says nothing.
        const bool bad =
            reading.seen == Seen::noGrowth && (!dead || reading.act.happenedAt >= *dead);
        if (!reading.voided || (!bad && reading.seen != Seen::unclear)) {
            continue;
        }
        sink.addOnce(bad && isBadVoided(reading, view.now) ? Key::voidingBadAnswer
                                                           : Key::voidingNotCounted,
                     Outcome::note, control.id);
    }
}

} // namespace

void voiding(const View& view, FindingSink& sink)
{
    if (!view.evidence.hasVoidedHarm) {
        return;
    }
    for (const ProcessChallengeDevice& pcd : view.load.pcds) {
        for (const ChemicalIndicator& each : pcd.indicators) {
            take(view, each.readings, pcd.id, sink);
        }
    }
    for (const Item& item : view.load.items) {
        if (item.external) {
            take(view, item.external->readings, item.label, sink);
        }
        for (const ChemicalIndicator& each : item.internals) {
            take(view, each.readings, item.label, sink);
        }
    }
    for (const LoadVial& each : view.vials) {
        take(view, each.vial->readings, each.vial->id, sink);
    }
    for (const Control& control : view.evidence.known.controls) {
        takeControl(view, control, sink);
    }
}

} // namespace loadwarden::rules
