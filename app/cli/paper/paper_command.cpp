#include "app/cli/paper/paper_command.h"

#include "app/cli/desk/desk_session.h"
#include "app/cli/paper/paper_output.h"
#include "app/cli/paper/topic_paper.h"
#include "core/desk/cycle_record.h"
#include "core/desk/handover.h"
#include "core/desk/sterilizer_log.h"
#include "ui/paper/sheets/blank_load.h"
#include "ui/paper/sheets/day_sheet.h"
#include "ui/paper/sheets/hold_sheet.h"
#include "ui/paper/sheets/load_record.h"
#include "ui/paper/sheets/reprocess_ticket.h"
#include "ui/paper/sheets/shift_handover.h"

#include <array>

namespace loadwarden::cli {

namespace {

using paper::House;
using paper::Pages;

bool inFahrenheit(const Arguments& given)
{
    const std::string_view unit = given.value("--unit").value_or("celsius");
    if (unit != "celsius" && unit != "fahrenheit") {
        throw UsageError("--unit is celsius or fahrenheit, not \"" + std::string(unit) + '"');
    }
    return unit == "fahrenheit";
}

/// A sheet about one thing that is asked for by name.
class Asked {
public:
    Asked(DeskSession& session, const Arguments& given)
        : m_session(session),
          m_given(given),
          m_house{.style = {.zone = session.office().zone(), .fahrenheit = inFahrenheit(given)},
                  .facility = session.office().identity().facility,
                  .journal = session.office().identity().id,
                  .size = pageGiven(given)}
    {
    }

    [[nodiscard]] const House& house() const { return m_house; }

    [[nodiscard]] std::string name(const char* usage) const
    {
        if (m_given.rest().size() < 2) {
            throw UsageError(std::string("missing argument: paper ") + usage);
        }
        return std::string(m_given.rest()[1]);
    }

    [[nodiscard]] CycleRecord record(const char* usage)
    {
        const std::string cycle = m_session.cycle(name(usage));
        ReadSnapshot snapshot(m_session.office().connection());
        auto found = recordOfCycle(snapshot, m_session.office().entries(), cycle,
                                   m_session.moment(), upTo(snapshot));
        if (!found) {
            m_session.refuse({.why = RefusalWhy::unknown, .subject = cycle});
        }
        return *std::move(found);
    }

    [[nodiscard]] SterilizerLog log()
    {
        const std::string sterilizer = knownSterilizer(name("day sz-ID"));
        const Zone& zone = m_session.office().zone();
        Date day = zone.dateOf(m_session.moment());
        if (const auto text = m_given.value("--day")) {
            const auto parsed = parseDate(*text);
            if (!parsed) {
                throw UsageError("--day needs a date, as 2031-03-04");
            }
            day = *parsed;
        }
        ReadSnapshot snapshot(m_session.office().connection());
        return logOfSterilizer(snapshot, m_session.office().entries(), zone, sterilizer, day,
                               m_session.moment(), upTo(snapshot));
    }

    [[nodiscard]] Handover handover()
    {
        ReadSnapshot snapshot(m_session.office().connection());
        return handoverAt(snapshot, m_session.office().entries(), m_session.office().zone(),
                          m_session.moment(), upTo(snapshot));
    }

    /// The name of the sterilizer that is named by id; empty where none is.
    [[nodiscard]] std::string sterilizerName()
    {
        if (m_given.rest().size() < 2) {
            return {};
        }
        const std::string id = knownSterilizer(std::string(m_given.rest()[1]));
        ReadSnapshot snapshot(m_session.office().connection());
        return Names(snapshot).of(id);
    }

private:
    [[nodiscard]] std::string knownSterilizer(const std::string& id)
    {
        ReadSnapshot snapshot(m_session.office().connection());
        if (Names(snapshot).of(id) == id || !hasPrefix(id, "sz")) {
            m_session.refuse({.why = RefusalWhy::unknown, .subject = id});
        }
        return id;
    }

    [[nodiscard]] std::int64_t upTo(ReadSnapshot& snapshot) const
    {
        return m_given.has("--at") ? newestAt(snapshot, m_session.moment()) : toTheEnd;
    }

    DeskSession& m_session;
    const Arguments& m_given;
    House m_house;
};

Pages recordSheet(Asked& asked)
{
    return loadRecord(asked.record("record LOT"), asked.house());
}

Pages holdOf(Asked& asked)
{
    const CycleRecord record = asked.record("hold LOT");
    if (!paper::isHeld(record)) {
        throw Refused("Nothing of this load is held: it is decided and signed as release, or it "
                      "is a test. Hold sheets are for what must not be used.");
    }
    return holdSheet(record, asked.house());
}

Pages ticketOf(Asked& asked)
{
    const CycleRecord record = asked.record("ticket LOT");
    if (!paper::isToReprocess(record)) {
        throw Refused("Nothing of this load is to be reprocessed. \"load decide\" says what is "
                      "decided of it.");
    }
    return reprocessTicket(record, asked.house());
}

Pages handoverSheet(Asked& asked)
{
    return shiftHandover(asked.handover(), asked.house());
}

Pages dayOf(Asked& asked)
{
    return daySheet(asked.log(), asked.house());
}

Pages blankLoadSheet(Asked& asked)
{
    return blankLoad(asked.house(), asked.sterilizerName());
}

Pages blankBiologicalSheet(Asked& asked)
{
    return blankBiologicals(asked.house());
}

struct Kind {
    std::string_view name;
    Pages (*make)(Asked&);
};

constexpr std::array kinds = {
    Kind{"record", recordSheet},
    Kind{"hold", holdOf},
    Kind{"ticket", ticketOf},
    Kind{"handover", handoverSheet},
    Kind{"day", dayOf},
    Kind{"blank-load", blankLoadSheet},
    Kind{"blank-bi", blankBiologicalSheet},
};

} // namespace

int paper(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--out", true},
                                          {"--page", true},
                                          {"--unit", true},
                                          {"--day", true},
                                          {"--topics", true},
                                          {"--policy", true},
                                          {"--language", true}});
    const Arguments given(arguments, options);
    const std::string_view word = given.rest().empty() ? "" : given.rest().front();
    if (std::ranges::find(topicPapers, word) != topicPapers.end()) {
        return topicPaper(given, streams);
    }
    const auto kind = std::ranges::find(kinds, word, &Kind::name);
    if (kind == kinds.end()) {
        std::string names;
        for (const Kind& each : kinds) {
            names += std::string(each.name) + ", ";
        }
        throw UsageError("behind paper stands one of: " + names + std::string(topicPapers[0]) + " or "
                         + std::string(topicPapers[1]));
    }
    const std::string out = given.needed("--out");
    const auto application = makePaintingApplication();
    DeskSession session(given, Access::read, streams);
    Asked asked(session, given);
    writeSheet(kind->make(asked), out, given, streams);
    return exitDone;
}

} // namespace loadwarden::cli
