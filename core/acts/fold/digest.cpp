#include "core/acts/fold/digest.h"

#include <algorithm>

namespace loadwarden {

std::string evidenceDigest(EntrySpan entries, const std::vector<std::int64_t>& taken,
                           const std::optional<std::string>& policy, const Fact* specification)
{
    std::string lines = "loadwarden evidence 1\n";
    for (const std::int64_t seq : taken) {
        const auto found = std::ranges::lower_bound(entries, seq, {}, &Entry::seq);
        lines += hexOf((*found)->hash) + '\n';
    }
    lines += "policy";
    if (policy) {
        lines += ' ' + *policy;
    }
    lines += "\nspecification";
    if (specification != nullptr) {
        lines += ' ' + hexOf(hashOf(encodeBody({specification->current().act, {}})));
    }
    lines += '\n';
    return hexOf(hashOf(lines));
}

} // namespace loadwarden
