#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void itemImplant(const View& view, std::size_t index, FindingSink& sink)
{
    if (view.load.items[index].implant == Implant::no) {
        return;
    }
    if (view.isImmediateUse()) {
        sink.add(Key::itemImplantImmediateUse, Outcome::waits);
    } else if (view.implant != ImplantState::holds) {
        sink.add(Key::itemImplantWaits, Outcome::waits);
    }
}

} // namespace loadwarden::rules
