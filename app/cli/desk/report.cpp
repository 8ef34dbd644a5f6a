#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "core/acts/floor_words.h"
#include "core/desk/floor.h"
#include "core/desk/tray.h"
#include "core/indicators/chemical.h"
#include "core/indicators/indicator_words.h"

namespace loadwarden::cli {

int report(std::span<const std::string_view> arguments, Streams streams)
{
    constexpr std::string_view usage =
        "it is used as \"report LABEL FOUND… --place PLACE [--says ROLE] [--note TEXT]\"";
    const auto options = withDeskOptions({{"--place", true}, {"--says", true}, {"--note", true}});
    const Arguments given(arguments, options);
    if (given.rest().size() < 2) {
        throw UsageError(std::string(usage));
    }
    ItemReported found{.indicator = {},
                       .faults = {},
                       .place = given.needed("--place"),
                       .by = std::string(given.value("--says").value_or("")),
                       .note = std::string(given.value("--note").value_or(""))};
    for (std::size_t i = 1; i < given.rest().size(); ++i) {
        const std::string_view word = given.rest()[i];
        if (const auto fault = valueOf(packageFaultWords, word)) {
            found.faults.push_back(*fault);
            continue;
        }
        found.indicator = wordIn(chemicalSeenWords, word,
                                 "what was found is wet, torn, unsealed or label-differs; what an "
                                 "indicator inside shows");
        if (!isBadAnswer(*found.indicator)) {
            throw UsageError(
                "an indicator that passes is nothing to report; of one that is unclear "
                "report what it would be at the worst");
        }
    }
    DeskSession session(given, Access::write, streams);
    Office& office = session.office();
    const std::string label(given.rest().front());
    std::optional<TraySheet> tray;
    {
        ReadSnapshot snapshot(office.connection());
        tray = trayOf(snapshot, office.entries(), label, office.now());
    }
    if (!tray) {
        throw Refused("No item with this label is in the journal. Compare it with the label "
                      "itself.");
    }
    session.sayRecorded(
        session.record({reported(office.place().ids, office.zone().dateOf(office.now()), found,
                                 tray->item, tray->cycle)}),
        "Reported on " + tray->label + " of " + tray->lot
            + ". Hold what of this load is still here, and tell the lead.");
    return exitDone;
}

} // namespace loadwarden::cli
