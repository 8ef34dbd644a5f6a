#include "core/acts/fold/digest.h"

#include "core/journal/hex.h"

#include <algorithm>

namespace loadwarden {

std::string evidenceDigest(EntrySpan entries, const std::vector<std::int64_t>& taken,
                           const std::optional<std::string>& policy, const Fact* specification)
{
    constexpr std::size_t hexDigits = 64;
    std::string lines = "loadwarden evidence 1\n";
    lines.reserve((taken.size() + 4) * (hexDigits + 1));
    auto found = entries.begin();
    for (const std::int64_t seq : taken) {
        found = std::find_if(found, entries.end(),
                             [seq](const Entry* each) { return each->seq == seq; });
        appendHex(lines, (*found)->hash.bytes);
        lines += '\n';
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
