#include "core/desk/policy_now.h"

#include "core/acts/fold/facts.h"
#include "core/desk/journal_entries.h"
#include "core/exchange/policy_reader.h"

namespace loadwarden {

Policy policyNow(ReadSnapshot& snapshot)
{
    Policy policy = defaultPolicy();
    const std::vector<Entry> entries = registerEntries(snapshot, "po");
    const FactBook book(entries);
    const Fact* newest = nullptr;
    for (const Fact& fact : book.facts()) {
        if (fact.stands() && std::holds_alternative<PolicyRecorded>(fact.current().act)) {
            newest = &fact;
        }
    }
    if (newest != nullptr) {
        auto read = readPolicy(std::get<PolicyRecorded>(newest->current().act).toml, "policy");
        if (auto* const known = std::get_if<Policy>(&read)) {
            policy = std::move(*known);
        }
    }
    return policy;
}

} // namespace loadwarden
