#include "core/desk/act_values.h"

#include "core/acts/floor_words.h"
#include "core/acts/fold/seen.h"
#include "core/cycle/cycle_words.h"
#include "core/indicators/indicator_words.h"

#include <array>
#include <optional>
#include <utility>

namespace loadwarden {
namespace {

std::string textOfSeen(Seen seen)
{
    const std::string_view growth = wordOf(growthSeenWords, seen);
    return std::string(growth.empty() ? wordOf(chemicalSeenWords, seen) : growth);
}

std::string textOfCheck(const PackageChecked& check)
{
    const std::array<std::pair<const char*, std::optional<bool>>, 5> answers = {
        {{"cooled", check.cooled},
         {"dry", check.dry},
         {"intact", check.intact},
         {"label agrees", check.labelAgrees},
         {"sealed", check.sealed}}};
    std::string text;
    for (const auto& [what, answer] : answers) {
        if (answer) {
            text += (text.empty() ? "" : ", ") + std::string(what) + (*answer ? ": yes" : ": no");
        }
    }
    return text;
}

std::string textOfReport(const ItemReported& report)
{
    std::string text = report.indicator ? textOfSeen(*report.indicator) : std::string();
    for (const PackageFault fault : report.faults) {
        text += (text.empty() ? "" : ", ") + std::string(wordOf(packageFaultWords, fault));
    }
    return text;
}

std::string textOfTrace(const TraceFindings& shows)
{
    const std::array<std::pair<const char*, Shown>, 6> answers = {
        {{"exposure", shows.exposure},
         {"uninterrupted", shows.uninterrupted},
         {"notBelow", shows.notBelow},
         {"notAbove", shows.notAbove},
         {"saturated", shows.saturated},
         {"drying", shows.drying}}};
    std::string text;
    for (const auto& [what, answer] : answers) {
        if (answer != Shown::notAsked) {
            text += (text.empty() ? "" : ", ") + std::string(what) + ": "
                    + std::string(wordOf(shownWords, answer));
        }
    }
    return text;
}

} // namespace

std::string valueRead(const AnyAct& act)
{
    if (const std::optional<Seen> seen = seenIn(act)) {
        return textOfSeen(*seen);
    }
    if (const auto* const read = std::get_if<PhysicalRead>(&act)) {
        return std::string(textOf(read->parameter)) + ' ' + read->value.typed + ' '
               + std::string(textOf(read->value.value.unit));
    }
    if (const auto* const check = std::get_if<PackageChecked>(&act)) {
        return textOfCheck(*check);
    }
    if (const auto* const report = std::get_if<ItemReported>(&act)) {
        return textOfReport(*report);
    }
    if (const auto* const trace = std::get_if<TraceRead>(&act)) {
        return textOfTrace(trace->findings);
    }
    if (const auto* const alarm = std::get_if<AlarmRecorded>(&act)) {
        return alarm->code;
    }
    return {};
}

} // namespace loadwarden
