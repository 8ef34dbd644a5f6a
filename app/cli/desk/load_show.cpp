#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/parts.h"
#include "app/cli/desk/sight.h"
#include "app/cli/paragraph.h"
#include "app/cli/plain_text.h"
#include "core/acts/codec.h"
#include "core/desk/journal_entries.h"
#include "core/desk/people.h"
#include "core/exchange/decision_writer.h"
#include "core/quantities/role_words.h"
#include "core/store/act_entry.h"
#include "core/store/finder.h"

#include <algorithm>
#include <array>
#include <ostream>

namespace loadwarden::cli {

namespace {

constexpr std::int64_t mostRows = 10'000; ///< of a day

CycleView viewOf(DeskSession& session, const Arguments& given)
{
    const std::string cycle = session.cycle(argument(given, 1, "load decide LOT"));
    ReadSnapshot snapshot(session.office().connection());
    auto view = viewCycle(snapshot, session.office().entries(), cycle, session.moment());
    if (!view) {
        session.refuse({.why = RefusalWhy::unknown, .subject = cycle});
    }
    return *std::move(view);
}

std::string_view phaseText(Phase phase)
{
    switch (phase) {
    case Phase::beingLoaded: return "being loaded";
    case Phase::running: return "running";
    case Phase::awaitingDecision: return "awaiting decision";
    case Phase::disposed: return "disposed";
    case Phase::evidenceChanged: return "evidence changed since it was disposed";
    }
    return {};
}

FindingSay sayIn(const HouseStyle& style)
{
    return [style](const Finding& finding) {
        Said said = say(finding, style);
        return FindingText{std::move(said.says), std::move(said.next), std::move(said.source)};
    };
}

/// The decision in words or as JSON, and what to name to sign it.
int sayDecision(DeskSession& session, const CycleView& view)
{
    std::string text;
    const bool isGood =
        view.isTest() ? view.judgement.result == TestResult::passed : allMayGo(view.decision);
    if (session.wantsJson()) {
        const DecisionBasis basis{view.now, view.policy};
        if (view.isTest()) {
            appendJudgement(text, view.judgement, basis, sayIn(session.style()));
        } else {
            appendDecision(text, view.decision, basis, sayIn(session.style()));
        }
        session.out() << text;
        return isGood ? exitDone : exitWithheld;
    }
    ExplainedNotes explained;
    const Occasion occasion{.record = view.id, .zone = session.office().zone(), .now = view.now};
    if (view.isTest()) {
        appendPlain(text, view.judgement, occasion, explained);
    } else {
        appendPlain(text, view.decision, occasion, explained);
    }
    if (!view.folded.isUnderstood) {
        appendParagraph(text, 2, "",
                        "The journal holds entries about this that this version does not know; "
                        "nothing can be signed with it.",
                        2);
    }
    if (!view.isTest()) {
        appendParagraph(text, 2, "To sign what stands here: ", "--seen " + sightText(view), 2);
    }
    appendParagraph(text, 0, "", caution(), 0);
    session.out() << text;
    return isGood ? exitDone : exitWithheld;
}

std::string_view stateText(LineState state)
{
    switch (state) {
    case LineState::stands: return "";
    case LineState::amended: return "amended";
    case LineState::beside: return "counts beside another";
    case LineState::struck: return "struck";
    case LineState::withoutEffect: return "without effect";
    case LineState::notUnderstood: return "not understood";
    }
    return {};
}

std::string nameOf(const std::vector<Person>& people, const std::string& id)
{
    const auto found = std::ranges::find(people, id, &Person::id);
    return id.empty() ? "the program" : found == people.end() ? id : found->name;
}

} // namespace

int decideLoad(DeskSession& session, const Arguments& given)
{
    return sayDecision(session, viewOf(session, given));
}

int showLoad(DeskSession& session, const Arguments& given)
{
    const CycleView view = viewOf(session, given);
    if (!session.wantsJson()) {
        session.out() << view.lot() << " (" << view.id << "): " << phaseText(view.folded.phase)
                      << ".\n";
        ReadSnapshot snapshot(session.office().connection());
        for (const Part& part : partsOf(snapshot, view.id)) {
            session.out() << "  " << part.name << "  " << part.what
                          << (part.what.empty() ? "" : "  ") << '(' << part.id << ")\n";
        }
        session.out() << '\n';
    }
    return sayDecision(session, view);
}

int listLoads(DeskSession& session, const Arguments& given)
{
    Date day = session.office().zone().dateOf(session.moment());
    if (const auto text = given.value("--day")) {
        const auto parsed = parseDate(*text);
        if (!parsed) {
            throw UsageError("--day needs a date, as 2031-03-04");
        }
        day = *parsed;
    }
    ReadSnapshot snapshot(session.office().connection());
    const Zone& zone = session.office().zone();
    const Instant from = zone.resolve(day, 0);
    const Instant behind = zone.resolve(day + 1, 0);
    for (const FoundCycle& found :
         Finder(snapshot).cyclesBetween("", from.ms, behind.ms - 1, mostRows)) {
        const auto view =
            viewCycle(snapshot, session.office().entries(), found.id, session.moment());
        if (!view) {
            continue;
        }
        const std::string verdict =
            view->isTest() ? say(view->judgement.result) : say(view->decision.verdict);
        session.out() << (found.lot.empty() ? found.id : found.lot) << "  " << found.purpose << ", "
                      << phaseText(view->folded.phase) << ": " << verdict << '\n';
    }
    return exitDone;
}

int showHistory(DeskSession& session, const Arguments& given)
{
    const CycleView view = viewOf(session, given);
    ReadSnapshot snapshot(session.office().connection());
    const std::vector<Person> people = peopleOf(snapshot);
    JournalReader reader(snapshot);
    for (const HistoryLine& line : view.folded.history) {
        const auto stored = reader.entry(line.seq);
        if (!stored) {
            continue;
        }
        const loadwarden::Entry entry = understand(stored->bytes, stored->hash);
        std::string text =
            sayTime(entry.happenedAt.at, session.style()) + "  " + nameOf(people, entry.actor)
            + (entry.actor.empty() ? "" : " (" + std::string(wordOf(roleWords, entry.role)) + ")")
            + (entry.paper ? ", from paper of " + nameOf(people, entry.paper->by) : "") + ": "
            + std::string(kindOf(entry.act).kind) + ' ' + encodeBody({entry.act, std::nullopt});
        if (!entry.reason.empty()) {
            text += " because: " + entry.reason;
        }
        if (const std::string_view state = stateText(line.state); !state.empty()) {
            text += " [" + std::string(state)
                    + (line.by == 0 ? "" : " by entry " + std::to_string(line.by)) + ']';
        }
        std::string out;
        appendParagraph(out, 0, std::to_string(line.seq) + "  ", oneLine(text), 6);
        session.out() << out;
    }
    return exitDone;
}

} // namespace loadwarden::cli
