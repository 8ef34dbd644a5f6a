#include "core/desk/names.h"

#include "core/acts/fold/facts.h"
#include "core/desk/journal_entries.h"

#include <array>

namespace loadwarden {
namespace {

struct NameOfAct {
    std::string operator()(const StaffRecorded& act) const { return act.name; }
    std::string operator()(const SterilizerRecorded& act) const { return act.name; }
    std::string operator()(const SpecificationRecorded& act) const
    {
        return act.specification.program.empty() ? act.specification.id : act.specification.program;
    }
    std::string operator()(const ProductRecorded& act) const { return act.name; }
    std::string operator()(const ProductLotRecorded& act) const { return act.number; }
    std::string operator()(const PackagingRecorded& act) const { return act.name; }
    std::string operator()(const DeviceRecorded& act) const { return act.device.name; }
    std::string operator()(const IncubatorRecorded& act) const { return act.name; }
    template <class Other>
    std::string operator()(const Other&) const
    {
        return {};
    }
};

} // namespace

Names::Names(ReadSnapshot& snapshot)
{
    constexpr std::array registers = {"st", "sz", "sp", "pr", "pl", "pk", "dv", "in"};
    for (const char* const prefix : registers) {
        const std::vector<Entry> entries = registerEntries(snapshot, prefix);
        const FactBook book(entries);
        for (const Fact& fact : book.facts()) {
            set(fact.origin->subject(prefix), std::visit(NameOfAct{}, fact.current().act));
        }
    }
}

std::string Names::of(std::string_view id) const
{
    const auto found = m_names.find(id);
    return found == m_names.end() ? std::string(id) : found->second;
}

void Names::set(std::string_view id, std::string_view name)
{
    if (!id.empty() && !name.empty()) {
        m_names.insert_or_assign(std::string(id), std::string(name));
    }
}

} // namespace loadwarden
