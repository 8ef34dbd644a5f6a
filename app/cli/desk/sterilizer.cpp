#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "app/cli/desk/service.h"
#include "core/acts/fold/registers.h"
#include "core/desk/journal_entries.h"
#include "core/quantities/decimal.h"
#include "core/sterilizers/sterilizer_words.h"

#include <ostream>

namespace loadwarden::cli {

namespace {

int list(DeskSession& session)
{
    std::vector<Entry> entries;
    {
        ReadSnapshot snapshot(session.office().connection());
        entries = registerEntries(snapshot, "sz");
    }
    const FactBook book(entries);
    for (const Fact& fact : book.facts()) {
        const auto* const recorded = std::get_if<SterilizerRecorded>(&fact.current().act);
        const std::string& id = fact.origin->subjects.front();
        if (recorded != nullptr && peekRevision<SterilizerRecorded>(book, id, newest) == &fact) {
            const std::string why = whyOut(session.office(), id);
            session.out() << id << "  " << recorded->name
                          << (recorded->model.empty() ? "" : ", " + recorded->model)
                          << (why.empty() ? ", in service" : ", not in service: " + why) << '\n';
        }
    }
    return exitDone;
}

/// "06:30" as a minute of the day.
std::int64_t minuteOfDay(std::string_view text)
{
    constexpr std::string_view shape = "dd:dd";
    bool good = text.size() == shape.size();
    for (std::size_t i = 0; good && i < shape.size(); ++i) {
        good = shape[i] == ':' ? text[i] == ':' : text[i] >= '0' && text[i] <= '9';
    }
    const auto digit = [&](std::size_t at) { return std::int64_t{text[at] - '0'}; };
    const std::int64_t hour = good ? digit(0) * 10 + digit(1) : 0;
    if (!good || hour > 23 || digit(3) > 5) {
        throw UsageError("--test-time needs a time of the day, as 06:00, not " + std::string(text));
    }
    return hour * 60 + digit(3) * 10 + digit(4);
}

AnyAct actOf(std::string_view what, const Arguments& given)
{
    if (what == "record") {
        const auto name = given.value("--name");
        if (!name) {
            throw UsageError("sterilizer record needs --name, as its printout calls it");
        }
        return SterilizerRecorded{.name = std::string(*name),
                                  .model = std::string(given.value("--model").value_or("")),
                                  .testMinute =
                                      minuteOfDay(given.value("--test-time").value_or("00:00"))};
    }
    if (what == "return") {
        return SterilizerReturned{given.needed("--why")};
    }
    if (what == "take-out") {
        const auto state = given.value("--state").value_or("out-of-service");
        if (state == "in-service") {
            throw UsageError("it comes back with \"sterilizer return\"");
        }
        return SterilizerTakenOut{wordIn(serviceStateWords, state, "--state"),
                                  given.needed("--why")};
    }
    const auto from = given.value("--from");
    const auto seconds = given.value("--seconds");
    const auto number = seconds ? parseDecimal(*seconds, 0) : std::nullopt;
    if (!from || !number) {
        throw UsageError("sterilizer clock needs --from TIME, since when as its own clock shows "
                         "it, and --seconds N, that clock minus the facility's");
    }
    return ClockCompared{DeskSession::time(*from, "--from"), *number};
}

} // namespace

int sterilizer(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--name", true},
                                          {"--model", true},
                                          {"--test-time", true},
                                          {"--why", true},
                                          {"--state", true},
                                          {"--from", true},
                                          {"--seconds", true}});
    const Arguments given(arguments, options);
    const auto& rest = given.rest();
    if (rest.size() == 1 && rest[0] == "list") {
        DeskSession session(given, Access::read, streams);
        return list(session);
    }
    const bool known = rest.size() == 2
                       && (rest[0] == "record" || rest[0] == "return" || rest[0] == "take-out"
                           || rest[0] == "clock");
    if (!known) {
        throw UsageError("sterilizer is used as \"sterilizer list\", or \"sterilizer record, "
                         "return, take-out or clock ID\"");
    }
    AnyAct act = actOf(rest[0], given);
    DeskSession session(given, Access::write, streams);
    session.sayRecorded(session.record(std::move(act), {std::string(rest[1])}),
                        "Sterilizer " + std::string(rest[1]) + ".");
    return exitDone;
}

} // namespace loadwarden::cli
