#include "app/cli/desk/service.h"

#include "core/acts/fold/facts.h"
#include "core/desk/journal_entries.h"
#include "core/sterilizers/sterilizer_words.h"

namespace loadwarden::cli {

std::string whyOut(Office& office, const std::string& sterilizer)
{
    ReadSnapshot snapshot(office.connection());
    const std::vector<loadwarden::Entry> entries = registerEntries(snapshot, "sz");
    const FactBook book(entries);
    std::string why = "it was never returned to service";
    for (const std::uint32_t index : book.about(sterilizer)) {
        const Fact& fact = book.facts()[index];
        if (!fact.stands()) {
            continue;
        }
        const AnyAct& act = fact.current().act;
        if (const auto* const out = std::get_if<SterilizerTakenOut>(&act)) {
            why = std::string(wordOf(serviceStateWords, out->state)) + ", " + out->why;
        } else if (std::holds_alternative<SterilizerReturned>(act)) {
            why.clear();
        }
    }
    return why;
}

} // namespace loadwarden::cli
