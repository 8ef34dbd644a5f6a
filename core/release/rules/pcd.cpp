#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {

namespace {

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
    const auto& indicators = view.pcdIndicators;
    const bool anyAccepted =
        std::any_of(indicators.begin(), indicators.end(), [](const PcdIndicator& each) {
            return each.judged.state == ChemicalState::accepted;
        });
    for (const PcdIndicator& each : indicators) {
        const std::string_view where = each.pcd->id;
        if (isLost(*each.indicator, each.judged.state, view.now)) {
            const bool fails = view.pcdRequired && !anyAccepted;
            sink.addOnce(fails ? Key::pcdLost : Key::pcdLostNoted,
                         fails ? Outcome::fails : Outcome::note, where);
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
    if (view.pcdRequired && indicators.empty()) {
        sink.add(Key::pcdMissing, Outcome::waits);
    }
}

} // namespace loadwarden::rules
