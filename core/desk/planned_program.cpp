#include "core/desk/planned_program.h"

#include <algorithm>

namespace loadwarden {
namespace {

const Entry* reservationOf(const LoadSheet& sheet)
{
    const auto found = std::ranges::find_if(sheet.record.entries, [](const Entry& entry) {
        return std::holds_alternative<CycleReserved>(entry.act);
    });
    return found == sheet.record.entries.end() ? nullptr : &*found;
}

} // namespace

std::string_view reservedSpecification(const LoadSheet& sheet)
{
    const Entry* const reservation = reservationOf(sheet);
    return reservation == nullptr ? std::string_view() : reservation->subject("sp");
}

const CycleSpecification* plannedProgram(const LoadSheet& sheet)
{
    const auto& bound = sheet.view().folded.record.specification;
    if (bound) {
        return &*bound;
    }
    const auto found =
        std::ranges::find(sheet.choices.specifications, reservedSpecification(sheet),
                          [](const SpecificationChoice& each) { return std::string_view(each.id); });
    return sheet.state.started || found == sheet.choices.specifications.end()
               ? nullptr
               : &found->specification;
}

Method plannedMethod(const LoadSheet& sheet)
{
    if (const CycleSpecification* const program = plannedProgram(sheet)) {
        return program->method;
    }
    const Entry* const reservation = reservationOf(sheet);
    return reservation == nullptr ? Method::unknown
                                  : std::get<CycleReserved>(reservation->act).method;
}

} // namespace loadwarden
