#pragma once

#include "core/indicators/indicator.h"

namespace loadwarden {

/// Calls `visit(const Act&)` for every entry behind a positive vial: its growth readings or, where
/// there is none, its unclear ones and the declaration that they cannot be settled.
template <class Visit>
void forEachPositiveAct(const Vial& vial, Visit visit)
{
    bool grown = false;
    for (const IndicatorReading& reading : vial.readings) {
        if (reading.seen == Seen::growth) {
            visit(reading.act);
            grown = true;
        }
    }
    if (grown) {
        return;
    }
    for (const IndicatorReading& reading : vial.readings) {
        if (reading.seen == Seen::unclear) {
            visit(reading.act);
        }
    }
    if (vial.unsettled) {
        visit(*vial.unsettled);
    }
}

} // namespace loadwarden
