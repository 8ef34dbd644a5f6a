#include "core/acts/fold/out_of_range.h"

namespace loadwarden {

std::vector<OutOfRange> spansOutOfRange(Folding& folding, std::string_view incubator, bool own)
{
    std::vector<OutOfRange> spans;
    folding.eachValue<IncubatorOutOfRange>(incubator, own,
                                           [&](const Entry& entry, const IncubatorOutOfRange&) {
                                               spans.push_back({entry.happenedAt.at, std::nullopt});
                                           });
    folding.eachValue<IncubatorInRange>(
        incubator, own, [&](const Entry& entry, const IncubatorInRange&) {
            if (!isSigned(actOf(entry))) {
                folding.misfit(entry, MisfitWhy::unsignedFact);
                return;
            }
            const Instant at = entry.happenedAt.at;
            for (OutOfRange& span : spans) {
                if (span.from <= at && (!span.to || at < *span.to)) {
                    span.to = at;
                }
            }
        });
    return spans;
}

} // namespace loadwarden
