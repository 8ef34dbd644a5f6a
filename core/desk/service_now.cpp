#include "core/desk/service_now.h"

namespace loadwarden {
namespace {

void take(const Fact& fact, ServiceNow& service)
{
    if (!fact.stands()) {
        return;
    }
    const Entry& entry = fact.current();
    if (const auto* const out = std::get_if<SterilizerTakenOut>(&entry.act)) {
        service = {out->state, out->why, entry.recordedAt.at};
    } else if (std::holds_alternative<SterilizerReturned>(entry.act)) {
        service = {ServiceState::inService, {}, entry.recordedAt.at};
    }
}

} // namespace

ServiceNow serviceAfter(std::span<const Entry> entries)
{
    ServiceNow service;
    const FactBook book(entries);
    for (const Fact& fact : book.facts()) {
        take(fact, service);
    }
    return service;
}

ServiceNow serviceIn(const FactBook& book, std::string_view sterilizer)
{
    ServiceNow service;
    for (const std::uint32_t index : book.about(sterilizer)) {
        take(book.facts()[index], service);
    }
    return service;
}

} // namespace loadwarden
