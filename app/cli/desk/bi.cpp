#include "app/cli/commands.h"
#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/parts.h"
#include "core/desk/cycle_list.h"
#include "core/indicators/indicator_words.h"

#include <ostream>

namespace loadwarden::cli {

namespace {

/// "LOT v1", a vial of a load, or "bc-…", a control: the subjects of what is said of it.
std::vector<std::string> subjectsOf(DeskSession& session, const Arguments& given,
                                    std::size_t& next)
{
    constexpr std::string_view usage = "bi activate|incubate|read LOT v1, or bi … bc-ID";
    const std::string_view first = argument(given, 1, usage);
    if (hasPrefix(first, "bc")) {
        next = 2;
        return {std::string(first)};
    }
    const std::string cycle = session.cycle(first);
    next = 3;
    return {part(session, cycle, argument(given, 2, usage)), cycle};
}

int activate(DeskSession& session, const Arguments& given)
{
    std::size_t next = 0;
    session.sayRecorded(session.record(BiologicalActivated{}, subjectsOf(session, given, next)),
                        "Activated.");
    return exitDone;
}

int incubate(DeskSession& session, const Arguments& given)
{
    const auto incubator = given.value("--incubator");
    if (!incubator) {
        throw UsageError("bi incubate needs --incubator ID");
    }
    std::size_t next = 0;
    std::vector<std::string> subjects = subjectsOf(session, given, next);
    subjects.emplace_back(*incubator);
    session.sayRecorded(session.record(BiologicalIncubated{}, subjects), "In the incubator.");
    return exitDone;
}

int read(DeskSession& session, const Arguments& given)
{
    std::size_t next = 0;
    const std::vector<std::string> subjects = subjectsOf(session, given, next);
    const std::string_view seen =
        argument(given, next, "bi read LOT v1 growth|no-growth|unclear, or bi read bc-ID …");
    session.sayRecorded(
        session.record(BiologicalRead{wordIn(growthSeenWords, seen, "what was seen")}, subjects),
        std::string(seen) + '.');
    return exitDone;
}

int processIndicator(DeskSession& session, const Arguments& given)
{
    std::size_t next = 0;
    const std::vector<std::string> subjects = subjectsOf(session, given, next);
    const std::string_view seen =
        argument(given, next, "bi process-indicator LOT v1 changed|unchanged");
    session.sayRecorded(session.record(ProcessIndicatorRead{wordIn(processIndicatorWords, seen,
                                                                   "what was seen")},
                                       subjects),
                        std::string(seen) + '.');
    return exitDone;
}

int control(DeskSession& session, const Arguments& given)
{
    const std::string id = session.office().place().ids.next("bc");
    const ControlPrepared prepared{std::string(given.value("--product").value_or("")),
                                   std::string(given.value("--lot").value_or("")), {}};
    const Appended appended = session.record(prepared, {id});
    if (session.wantsJson()) {
        session.out() << "{\"control\":\"" << id << "\",\"entry\":" << appended.firstSeq << "}\n";
    } else {
        session.sayRecorded(appended, "Control " + id + '.');
    }
    return exitDone;
}

int due(DeskSession& session)
{
    const Instant now = session.office().now();
    ReadSnapshot snapshot(session.office().connection());
    for (const IncubatingRow& row : incubating(snapshot)) {
        std::string name = row.id;
        if (!row.cycle.empty()) {
            const auto view = viewCycle(snapshot, row.cycle, now);
            for (const Part& each : partsOf(snapshot, row.cycle)) {
                if (each.id == row.id && view) {
                    name = view->lot() + ' ' + each.name;
                }
            }
        }
        session.out() << name << "  in since " << sayTime(row.since, session.style());
        if (!row.due) {
            session.out() << ", its product is not known\n";
        } else {
            session.out() << (*row.due <= now ? ", due since " : ", due at ")
                          << sayTime(*row.due, session.style()) << '\n';
        }
    }
    return exitDone;
}

} // namespace

int bi(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options =
        withDeskOptions({{"--incubator", true}, {"--product", true}, {"--lot", true}});
    const Arguments given(arguments, options);
    const std::string_view word = given.rest().empty() ? "" : given.rest().front();
    if (word == "due") {
        DeskSession session(given, Access::read, streams);
        return due(session);
    }
    using Run = int (*)(DeskSession&, const Arguments&);
    const Run run = word == "activate"            ? activate
                    : word == "incubate"          ? incubate
                    : word == "read"              ? read
                    : word == "process-indicator" ? processIndicator
                    : word == "control"           ? control
                                                  : nullptr;
    if (run == nullptr) {
        throw UsageError("behind bi stands one of: control, activate, incubate, "
                         "process-indicator, read, due");
    }
    DeskSession session(given, Access::write, streams);
    return run(session, given);
}

} // namespace loadwarden::cli
