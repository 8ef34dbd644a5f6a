#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

/// What is lost and not needed is reviewed: once a PCD, where the first of its lost ones stands.
void takeLost(const View& view, const PcdIndicator& first, FindingSink& sink)
{
    std::pmr::vector<const Act*> acts(view.memory);
    for (const PcdIndicator& each : view.pcdIndicators) {
        if (each.pcd == first.pcd && isLost(*each.indicator, each.judged.state, view.now)) {
            if (acts.empty() && &each != &first) {
                return;
            }
            acts.push_back(&*each.indicator->lost);
        }
    }
    sink.addReviewOfNewest(Key::pcdLostNoted, Reviewer::lead, first.pcd->id, std::move(acts));
}

/// What can no longer be read is only noted beside an accepted one; what can waits for it.
void takeInvalid(const PcdIndicator& each, bool anyAccepted, FindingSink& sink)
{
    const bool noted = anyAccepted && (each.judged.spoiled || each.judged.cause == Cause::readLate);
    sink.addOnce(noted ? Key::pcdInvalidNoted : Key::pcdInvalid,
                 noted ? Outcome::note : Outcome::waits, each.pcd->id, each.judged.cause);
}

} // namespace

void pcd(const View& view, FindingSink& sink)
{
    for (const ProcessChallengeDevice& each : view.load.pcds) {
        if (each.indicators.empty() && each.vials.empty()) {
            sink.add(Key::pcdEmpty, Outcome::waits, each.id);
        }
    }
    const auto& indicators = view.pcdIndicators;
    const bool anyAccepted =
        std::any_of(indicators.begin(), indicators.end(), [](const PcdIndicator& each) {
            return each.judged.state == ChemicalState::accepted;
        });
    for (const PcdIndicator& each : indicators) {
        const std::string_view where = each.pcd->id;
        if (isLost(*each.indicator, each.judged.state, view.now)) {
            if (view.pcdRequired && !anyAccepted) {
                sink.addOnce(Key::pcdLost, Outcome::fails, where);
            } else {
                takeLost(view, each, sink);
            }
            continue;
        }
        switch (each.judged.state) {
        case ChemicalState::accepted: break;
        case ChemicalState::rejected: sink.addOnce(Key::pcdRejected, Outcome::fails, where); break;
        case ChemicalState::unclear: sink.addOnce(Key::pcdUnclear, Outcome::waits, where); break;
        case ChemicalState::invalid: takeInvalid(each, anyAccepted, sink); break;
        case ChemicalState::unread: sink.addOnce(Key::pcdNotRead, Outcome::waits, where); break;
        }
    }
    if (!indicators.empty()) {
        return;
    }
    if (view.pcdRequired) {
        sink.add(Key::pcdMissing, Outcome::waits);
    } else if (view.internals.empty()) {
        sink.add(Key::pcdNoneRecorded, Outcome::note);
    }
}

} // namespace loadwarden::rules
