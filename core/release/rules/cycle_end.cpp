#include "core/release/rules/rules.h"

#include <algorithm>
#include <utility>

namespace loadwarden::rules {
namespace {

enum class Class : std::uint8_t { harmless, notListed, exposureAffecting };

Class classOf(const View& view, const std::string& code)
{
    if (view.sterilizer == nullptr) {
        return Class::notListed;
    }
    Class found = Class::notListed;
    for (const ListedAlarm& listed : view.sterilizer->alarms) {
        if (listed.code != code) {
            continue;
        }
        if (listed.effect == AlarmEffect::exposureAffecting) {
            return Class::exposureAffecting;
        }
        found = Class::harmless;
    }
    return found;
}

} // namespace

void cycleEnd(const View& view, FindingSink& sink)
{
    const LoadRecord& load = view.load;
    if (load.outcome == CycleOutcome::unknown) {
        sink.add(Key::cycleNotEnded, Outcome::waits);
    }
    // Whoever states a phase of abort says that the cycle was aborted, whatever its outcome says.
    if (load.outcome == CycleOutcome::aborted || load.abortPhase) {
        const bool drying = load.abortPhase == AbortPhase::drying;
        sink.add(drying ? Key::cycleAbortedDrying : Key::cycleAborted, Outcome::fails);
    }
    for (const Alarm& alarm : load.alarms) {
        const Class effect = classOf(view, alarm.code);
        if (effect == Class::exposureAffecting) {
            sink.addOnce(Key::alarmExposure, Outcome::fails, alarm.code);
        } else if (effect == Class::notListed) {
            // Several alarms of one code are one finding, said where the first of them stands.
            const auto isSame = [&alarm](const Alarm& other) { return other.code == alarm.code; };
            if (&*std::find_if(load.alarms.begin(), load.alarms.end(), isSame) == &alarm) {
                std::pmr::vector<const Act*> same(view.memory);
                for (const Alarm& other : load.alarms) {
                    if (isSame(other)) {
                        same.push_back(&other.act);
                    }
                }
                sink.addReviewOfNewest(Key::alarmNotListed, Reviewer::lead, alarm.code,
                                       std::move(same));
            }
        }
    }
}

} // namespace loadwarden::rules
