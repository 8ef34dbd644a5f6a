#include "core/acts/fold/facility.h"

namespace loadwarden {

Facility foldFacility(Folding& folding)
{
    Facility facility;
    const Fact* taken = nullptr;
    for (const Fact& fact : folding.book().facts()) {
        const AnyAct& act = fact.current().act;
        std::optional<Zone> zone;
        if (const auto* opened = std::get_if<JournalOpened>(&act)) {
            zone = Zone::find(opened->timeZone);
        } else if (const auto* recorded = std::get_if<FacilityRecorded>(&act);
                   recorded != nullptr && fact.stands()) {
            zone = Zone::find(recorded->timeZone);
            facility.atmosphere.reset();
            if (recorded->atmosphereKPa) {
                facility.atmosphere =
                    AbsolutePressure::fromKPaThousandths(recorded->atmosphereKPa->thousandths);
            }
        }
        if (zone) {
            facility.zone = *zone;
            taken = &fact;
        }
    }
    if (taken != nullptr) {
        folding.take(*taken, false);
    }
    return facility;
}

} // namespace loadwarden
