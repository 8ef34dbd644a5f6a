#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/history_file.h"
#include "app/cli/desk/journal_commands.h"
#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/said_progress.h"
#include "app/cli/paragraph.h"
#include "core/desk/sealing.h"
#include "core/store/store_error.h"

#include <algorithm>
#include <fstream>
#include <ostream>

namespace loadwarden::cli {

namespace {

constexpr std::int64_t longFile = 2'000; ///< lines that take a moment

HistoryFile readFile(const std::string& name, const std::string& source, const Zone& zone,
                     std::istream& standardInput)
{
    if (name == "-") {
        return readHistory(standardInput, "standard input", source, zone);
    }
    std::ifstream file(name, std::ios::binary);
    if (!file) {
        throw std::runtime_error(name + ": cannot be opened as a file");
    }
    return readHistory(file, name, source, zone);
}

LineProblem inWords(const OldLoadProblem& problem, const HouseStyle& style)
{
    const Told told = say(problem.why, style);
    return {problem.line, problem.field, told.says + ' ' + told.next};
}

void sayProblems(const std::vector<LineProblem>& problems, const std::string& name,
                 std::ostream& out)
{
    for (const LineProblem& problem : problems) {
        const bool hasStop = problem.says.ends_with('.');
        out << name << ", line " << problem.line
            << (problem.field.empty() ? "" : ", " + oneLine(problem.field)) << ": "
            << oneLine(problem.says) << (hasStop ? "" : ".") << '\n';
    }
}

void sealAtTheEnd(DeskSession& session)
{
    try {
        (void)sealNow(session.office());
    } catch (const StoreError& error) {
        session.warn("A seal could not be made. " + error.says() + ' ' + error.next());
    }
}

} // namespace

int importFile(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--source", true}, {"--skip-bad", false}});
    const Arguments given(arguments, options);
    if (given.rest().size() != 1) {
        throw UsageError("import is used as \"import FILE [--source NAME] [--skip-bad]\": old "
                         "loads as JSON, one on each line");
    }
    const std::string name(given.rest().front());
    DeskSession session(given, Access::write, streams);
    const HistoryFile file = readFile(name, std::string(given.value("--source").value_or("")),
                                      session.office().zone(), streams.in);
    const SignedIn& who = session.who();

    StoppableProgress progress(streams.err, longFile);
    SortedHistory sorted = session.must(sortHistory(session.office(), who, file.loads, progress));
    if (sorted.cancelled) {
        throw Refused("It was stopped.");
    }
    std::vector<LineProblem> problems = file.problems;
    for (const OldLoadProblem& each : sorted.problems) {
        problems.push_back(inWords(each, session.style()));
    }
    std::ranges::stable_sort(problems, {}, &LineProblem::line);
    sayProblems(problems, name == "-" ? "standard input" : name, streams.err);
    if (!problems.empty() && !given.has("--skip-bad")) {
        throw std::runtime_error("nothing was imported. Put the lines right, or leave them out "
                                 "with --skip-bad");
    }

    ImportedHistory done;
    if (!sorted.good.empty()) {
        done = session.must(
            importHistory(session.office(), who, session.signature(), sorted.good, progress));
        sealAtTheEnd(session);
    }
    const std::int64_t bad =
        file.lines - sorted.already - static_cast<std::int64_t>(sorted.good.size());
    if (session.wantsJson()) {
        streams.out << "{\"already\":" << sorted.already << ",\"imported\":" << done.imported
                    << ",\"leftOut\":" << bad
                    << ",\"stopped\":" << (done.cancelled ? "true" : "false") << "}\n";
    } else {
        streams.out << done.imported << " loads imported";
        if (sorted.already != 0) {
            streams.out << ", " << sorted.already << " were there already";
        }
        streams.out << (bad == 0 ? "" : ", " + std::to_string(bad) + " left out, as said above")
                    << ".\n";
        if (done.cancelled) {
            streams.out << "It was stopped; the journal is whole. The same command goes on where "
                           "it ended.\n";
        }
        streams.out << "They are history: found and shown, and nothing is decided by them. What "
                       "still holds a sterilizer today (growth, a failed test, a repair) is not "
                       "known from them: take that sterilizer out with \"sterilizer take-out\".\n";
    }
    return bad == 0 && !done.cancelled ? exitDone : exitWithheld;
}

} // namespace loadwarden::cli
