#include "core/acts/fold/facility.h"

namespace loadwarden {

Facility foldFacility(Folding& folding)
{
    const Fact* newest = nullptr;
    for (const Fact& fact : folding.book().facts()) {
        if (std::holds_alternative<FacilityRecorded>(fact.origin->act)) {
            folding.take(fact, false);
            newest = fact.stands() ? &fact : newest;
        } else if (newest == nullptr && std::holds_alternative<JournalOpened>(fact.origin->act)) {
            folding.take(fact, false);
            newest = &fact;
        }
    }
    Facility facility;
    if (newest == nullptr) {
        return facility;
    }
    std::string_view zone;
    if (const auto* recorded = std::get_if<FacilityRecorded>(&newest->current().act)) {
        zone = recorded->timeZone;
        if (recorded->atmosphereKPa) {
            facility.atmosphere =
                AbsolutePressure::fromKPaThousandths(recorded->atmosphereKPa->thousandths);
        }
    } else {
        zone = std::get<JournalOpened>(newest->current().act).timeZone;
    }
    facility.zone = Zone::find(zone).value_or(facility.zone);
    return facility;
}

} // namespace loadwarden
