#include "core/desk/biologicals.h"
#include "core/desk/recorder.h"
#include "core/release/assemble.h"
#include "core/release/cycle_contexts.h"
#include "core/release/settings.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// What the rules make of a vial now that somebody has read it.
void judgeAnswer(BiAnswer& answer, const CycleView& view, const std::string& vial, Seen seen)
{
    const Evidence evidence = assemble(view.folded.record);
    const BiologicalSettings settings = biologicalSettings(view.policy);
    const auto look = [&](const Vial& each, const CycleContext& context, bool ofHistory) {
        if (each.id != vial) {
            return;
        }
        const VialJudgement judged =
            judgeVial(each, context, ofHistory, settings, evidence.known, view.now);
        answer.isPositive = judged.state == VialState::positive;
        answer.dueAt = judged.dueAt;
        answer.counts = seen != Seen::noGrowth || judged.state != VialState::pending
                        || judged.why == PendingWhy::control
                        || judged.why == PendingWhy::processIndicator;
    };
    if (view.isTest()) {
        for (const Vial& each : evidence.record.test->vials) {
            look(each, contextOf(*evidence.record.test, *evidence.test), true);
        }
        return;
    }
    for (const ProcessChallengeDevice& pcd : evidence.record.load.pcds) {
        for (const Vial& each : pcd.vials) {
            look(each, loadContextOf(evidence.record, evidence.load), false);
        }
    }
}

} // namespace

OrRefusal<BiAnswer> readBiological(Office& office, const SignedIn& who, const std::string& id,
                                   const std::string& cycle, Seen seen)
{
    std::vector<std::string> subjects{id};
    if (!cycle.empty()) {
        subjects.push_back(cycle);
    }
    auto recorded = Recorder(office).record(
        who, {.act = BiologicalRead{seen}, .subjects = std::move(subjects)});
    if (auto* const refusal = std::get_if<Refusal>(&recorded)) {
        return std::move(*refusal);
    }
    BiAnswer answer{.appended = std::get<Appended>(recorded)};
    ReadSnapshot snapshot(office.connection());
    if (!cycle.empty()) {
        if (const auto view = viewCycle(snapshot, office.entries(), cycle, office.now())) {
            judgeAnswer(answer, *view, id, seen);
        }
        return answer;
    }
    // A control is judged where a vial has it beside it.
    for (const BiGroup& group : biologicalsOf(snapshot, office.entries(), office.now()).groups) {
        const auto control = std::ranges::find(group.controls, id, &BiTest::id);
        if (control != group.controls.end()) {
            answer.counts = control->control != ControlState::pending || seen == Seen::unclear;
            answer.dueAt = control->dueAt;
            answer.isDeadControl = control->control == ControlState::dead;
        }
    }
    return answer;
}

} // namespace loadwarden
