#include "core/desk/service_now.h"

#include "core/acts/fold/facts.h"

namespace loadwarden {

ServiceNow serviceAfter(std::span<const Entry> entries)
{
    ServiceNow service;
    const FactBook book(entries);
    for (const Fact& fact : book.facts()) {
        if (!fact.stands()) {
            continue;
        }
        if (const auto* const out = std::get_if<SterilizerTakenOut>(&fact.current().act)) {
            service = {out->state, out->why, fact.current().recordedAt.at};
        } else if (std::holds_alternative<SterilizerReturned>(fact.current().act)) {
            service = {ServiceState::inService, {}, fact.current().recordedAt.at};
        }
    }
    return service;
}

} // namespace loadwarden
