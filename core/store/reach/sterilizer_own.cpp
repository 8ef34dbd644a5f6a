#include "core/store/reach/sterilizer_own.h"

#include <algorithm>
#include <cstdlib>

namespace loadwarden {

SterilizerOwn sterilizerOwn(const std::vector<std::shared_ptr<const Entry>>& entries)
{
    SterilizerOwn own;
    std::map<std::int64_t, std::string> classings; // seq and code
    for (const auto& entry : entries) {
        if (const auto* const compared = std::get_if<ClockCompared>(&entry->act)) {
            own.clockWidth = std::max(own.clockWidth, 2 * std::abs(compared->seconds) * 1'000);
        } else if (const auto* const classed = std::get_if<AlarmClassed>(&entry->act)) {
            const bool harmless = classed->alarm.effect == AlarmEffect::harmless;
            const auto [place, isNew] = own.harmlessCode.emplace(classed->alarm.code, harmless);
            place->second = place->second && harmless;
            classings.emplace(entry->seq, classed->alarm.code);
        }
        if (const auto corrected = classings.find(entry->supersedes);
            corrected != classings.end() && !std::holds_alternative<EntryAnnotated>(entry->act)) {
            // Whether it is still classed as harmless is for the fold to say.
            own.harmlessCode[corrected->second] = false;
        }
        if (!entry->subject("ic").empty()) {
            for (const std::string& id : entry->subjects) {
                if (hasPrefix(id, "ld")) {
                    own.inIncidents.insert(id);
                }
            }
        }
    }
    return own;
}

} // namespace loadwarden
