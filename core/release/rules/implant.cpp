#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void implant(const View& view, FindingSink& sink)
{
    const Outcome waiting = view.holdsImplantsOnly() ? Outcome::note : Outcome::waits;
    switch (view.implant) {
    case ImplantState::holds: break;
    case ImplantState::failsBi:
    case ImplantState::failsIndicator:
        if (view.hasPositiveVial) {
            sink.add(Key::implantBiPositive, Outcome::fails);
        }
        for (const ProcessChallengeDevice* pcd : view.implantRejections) {
            sink.add(Key::implantIndicatorRejected, Outcome::fails, pcd->id);
        }
        break;
    case ImplantState::missing: sink.add(Key::implantMissing, waiting); break;
    case ImplantState::pending: sink.add(Key::implantPending, waiting); break;
    case ImplantState::indicatorMissing: sink.add(Key::implantIndicatorMissing, waiting); break;
    case ImplantState::impossible: sink.add(Key::implantImpossible, Outcome::fails); break;
    }
}

} // namespace loadwarden::rules
