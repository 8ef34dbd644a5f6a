#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/load_commands.h"
#include "app/cli/paragraph.h"
#include "app/cli/trace/trace_command.h"
#include "app/cli/trace/trace_files.h"
#include "app/cli/trace/trace_report.h"
#include "core/cycle/simulation/trace_text.h"
#include "core/desk/trace_work.h"
#include "core/words/say_trace.h"

#include <filesystem>
#include <ostream>

namespace loadwarden::cli {

namespace {

constexpr std::string_view usage = "trace attach LOT FILE [--map MAP]";

/// The mapping given, else the remembered one where it fits; one that is only proposed is used for
/// no record.
TraceMapping mappingFor(const TraceBasis& basis, const Arguments& given, std::string_view bytes)
{
    if (auto mapping = mappingGiven(given)) {
        return *std::move(mapping);
    }
    ChosenMapping chosen = chooseMapping(bytes, basis.remembered);
    if (chosen.origin == MappingOrigin::remembered) {
        return std::move(chosen.mapping);
    }
    std::string why = basis.remembered
                          ? "This file is not written as the sterilizer's last one was: "
                                + oneLine(say(chosen.misfits.front()).says)
                          : "Nobody has confirmed yet how this sterilizer's recorder writes.";
    throw Refused(why
                  + " Write a proposal with trace --propose FILE, look at it and correct it, and "
                    "give it with --map.");
}

/// What is recorded by hand is said in the act, as of other acts.
ToRecord complete(DeskSession& session, const Arguments& given, ToRecord act)
{
    act.happenedAt = session.happenedAt();
    act.reason = given.value("--reason").value_or("");
    return act;
}

} // namespace

int attachTrace(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--map", true}});
    const Arguments given(arguments, options);
    const std::string lot(argument(given, 1, usage));
    const std::string_view name = argument(given, 2, usage);
    if (name == "-" || given.has("--paper")) {
        throw UsageError("trace attach records the file of a recorder under its name, for whoever "
                         "signs in");
    }
    const std::string bytes = readTraceFile(name, streams);
    DeskSession session(given, Access::write, streams);
    const std::string cycle = session.cycle(lot);
    std::optional<TraceBasis> basis;
    {
        ReadSnapshot snapshot(session.office().connection());
        basis = traceBasisOf(snapshot, session.office().entries(), cycle, session.office().now());
    }
    if (!basis) {
        throw Refused("Nothing was recorded of this load. Look for its lot control number with "
                      "load list.");
    }
    TraceReport report{.name = std::string(name),
                       .isSimulated = simulation::saysSimulated(bytes),
                       .mapping = mappingFor(*basis, given, bytes)};
    TraceWork work =
        readForLoad(*basis, session.office().place().ids.next("tr"),
                    std::filesystem::path(name).filename().string(), bytes, report.mapping);
    const Appended appended = session.must(
        Recorder(session.office())
            .attach(session.who(), complete(session, given, std::move(work.act)), bytes));
    if (!session.wantsJson()) {
        report.specification = basis->specification.value_or(CycleSpecification{});
        report.reading = std::move(work.reading);
        report.asked = std::move(work.asked);
        report.evaluation = std::move(work.evaluation);
        std::string text;
        appendReport(text, report);
        session.out() << text << traceCautions();
    }
    session.sayRecorded(appended, "Trace.");
    return exitDone;
}

} // namespace loadwarden::cli
