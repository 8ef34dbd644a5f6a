#include "core/release/rules/rules.h"

#include <algorithm>
#include <tuple>
#include <utility>
#include <vector>

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

/// Several alarms of one code are one finding, said where the first of them stands.
void takeAlarms(const View& view, FindingSink& sink)
{
    std::pmr::vector<const Alarm*> byCode(view.memory);
    for (const Alarm& alarm : view.load.alarms) {
        byCode.push_back(&alarm);
    }
    std::sort(byCode.begin(), byCode.end(), [](const Alarm* a, const Alarm* b) {
        return std::tie(a->code, a) < std::tie(b->code, b);
    });
    using Group = std::pair<std::size_t, std::size_t>;
    std::pmr::vector<Group> groups(view.memory);
    for (std::size_t i = 0; i < byCode.size(); ++i) {
        if (i == 0 || byCode[i]->code != byCode[i - 1]->code) {
            groups.emplace_back(i, i);
        }
        groups.back().second = i + 1;
    }
    std::sort(groups.begin(), groups.end(), [&byCode](const Group& a, const Group& b) {
        return byCode[a.first] < byCode[b.first];
    });
    for (const auto& [first, last] : groups) {
        const std::string& code = byCode[first]->code;
        const Class effect = classOf(view, code);
        if (effect == Class::exposureAffecting) {
            sink.add(Key::alarmExposure, Outcome::fails, code);
        } else if (effect == Class::notListed) {
            std::pmr::vector<const Act*> same(view.memory);
            for (std::size_t i = first; i < last; ++i) {
                same.push_back(&byCode[i]->act);
            }
            sink.addReviewOfNewest(Key::alarmNotListed, Reviewer::lead, code, std::move(same));
        }
    }
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
    takeAlarms(view, sink);
}

} // namespace loadwarden::rules
