#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/parts.h"
#include "app/cli/desk/sight.h"
#include "app/cli/paragraph.h"
#include "app/cli/plain_text.h"
#include "core/acts/codec.h"
#include "core/desk/journal_entries.h"
#include "core/desk/people.h"
#include "core/desk/used_items.h"
#include "core/exchange/decision_writer.h"
#include "core/quantities/role_words.h"
#include "core/store/act_entry.h"
#include "core/store/finder.h"
#include "core/words/say_act.h"

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
    auto view = session.view(snapshot, cycle);
    if (!view) {
        session.refuse({.why = RefusalWhy::unknown, .subject = cycle});
    }
    return *std::move(view);
}

std::string phaseText(const CycleView& view)
{
    const std::string as = view.signedAs ? " as " + say(*view.signedAs) : "";
    switch (view.folded.phase) {
    case Phase::beingLoaded: return "being loaded";
    case Phase::running: return "running";
    case Phase::awaitingDecision: return view.isTest() ? "ended" : "awaiting decision";
    case Phase::disposed: return "signed" + as;
    case Phase::evidenceChanged: return "signed" + as + ", evidence changed since";
    case Phase::imported: return "imported";
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
    if (isWorseThanSigned(view)) {
        appendParagraph(text, 2, "",
                        "Signed as " + say(*view.signedAs)
                            + ", and decided worse now: find out where its items are, and have "
                              "somebody sign anew.",
                        2);
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

/// What the old record of an imported load says.
int sayImported(DeskSession& session, const CycleView& view)
{
    std::ostream& out = session.out();
    if (!view.imported) {
        out << view.id << ": imported, and struck since.\n";
        return exitDone;
    }
    const auto& said = std::get<HistoryImported>(view.imported->act);
    if (session.wantsJson()) {
        out << "{\"id\":\"" << view.id << "\",\"entry\":" << view.imported->seq
            << ",\"imported\":" << encodeBody({said, {}}) << "}\n";
        return exitDone;
    }
    const auto line = [](std::string_view lead, const std::string& text) {
        std::string paragraph;
        appendParagraph(paragraph, 2, lead, oneLine(text), 4);
        return paragraph;
    };
    const Zone& zone = session.office().zone();
    const Instant start = view.imported->happenedAt.at;
    out << oneLine(said.lot) << " (" << view.id << "): imported from " << oneLine(said.source)
        << ", entry " << view.imported->seq << ". Nothing is decided or signed about it here.\n"
        << line("Start: ",
                said.dayOnly ? formatDate(zone.dateOf(start)) : sayTime(start, session.style()));
    if (said.end) {
        out << line("End: ", sayTime(said.end->at, session.style()));
    }
    const std::string_view registered = view.imported->subject("sz");
    if (!registered.empty() || !said.sterilizer.empty()) {
        out << line("Sterilizer: ", registered.empty() ? said.sterilizer : std::string(registered));
    }
    out << line("Outcome, in its words: ", said.outcome);
    for (const std::string& label : said.labels) {
        out << line("Item: ", label);
    }
    std::string_view left = said.record;
    for (bool isFirst = true; !left.empty(); isFirst = false) {
        const std::size_t end = left.find('\n');
        out << line(isFirst ? "Record: " : "  ", std::string(left.substr(0, end)));
        left = end == std::string_view::npos ? "" : left.substr(end + 1);
    }
    return exitDone;
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

/// " ATTENTION: …", where items of it were used that nobody released.
std::string usesText(ReadSnapshot& snapshot, const std::string& cycle)
{
    std::string labels;
    for (const UnreleasedUse& use : unreleasedUses(snapshot, cycle)) {
        labels += (labels.empty() ? "" : ", ") + oneLine(use.label);
    }
    return labels.empty() ? "" : " ATTENTION: used without a release: " + labels;
}

/// One line: where it stands and, once it has ended, what is decided now.
void sayInList(DeskSession& session, ReadSnapshot& snapshot, const FoundCycle& found)
{
    const auto view = session.view(snapshot, found.id);
    if (!view) {
        return;
    }
    session.out() << (found.lot.empty() ? found.id : found.lot) << "  "
                  << (view->isImported() ? "" : found.purpose + ", ") << phaseText(*view);
    if (view->isImported()) {
        if (view->imported) {
            const auto& said = std::get<HistoryImported>(view->imported->act);
            session.out() << " from " << oneLine(said.source) << ": " << oneLine(said.outcome);
        } else {
            session.out() << ", struck since";
        }
        session.out() << '\n';
        return;
    }
    const Phase phase = view->folded.phase;
    if (phase == Phase::beingLoaded || phase == Phase::running) {
        session.out() << '\n';
        return;
    }
    if (view->isTest()) {
        session.out() << ": " << say(view->judgement.result) << '\n';
        return;
    }
    const std::string uses = usesText(snapshot, view->id);
    const auto worse = std::ranges::count_if(view->decision.items, [&](const ItemDecision& item) {
        return item.verdict > view->decision.verdict;
    });
    session.out() << ": " << say(view->decision.verdict);
    if (worse != 0) {
        session.out() << ", but not " << worse << (worse == 1 ? " item" : " items");
    }
    session.out() << (isWorseThanSigned(*view) ? " (worse than signed)" : "") << uses << '\n';
}

} // namespace

int decideLoad(DeskSession& session, const Arguments& given)
{
    const CycleView view = viewOf(session, given);
    if (view.isImported()) {
        session.refuse({.why = RefusalWhy::imported, .subject = view.lot()});
    }
    return sayDecision(session, view);
}

int showLoad(DeskSession& session, const Arguments& given)
{
    const CycleView view = viewOf(session, given);
    if (view.isImported()) {
        return sayImported(session, view);
    }
    if (!session.wantsJson()) {
        session.out() << view.lot() << " (" << view.id << "): " << phaseText(view) << ".\n";
        ReadSnapshot snapshot(session.office().connection());
        for (const Part& part : partsOf(snapshot, view.id)) {
            session.out() << "  " << part.name << "  " << part.what
                          << (part.what.empty() ? "" : "  ") << '(' << part.id << ')'
                          << (part.left.empty() ? "" : "  " + part.left) << '\n';
        }
        for (const UnreleasedUse& use : unreleasedUses(snapshot, view.id)) {
            const Told told = say(use);
            std::string text;
            appendParagraph(text, 0, "ATTENTION: ", told.says + ' ' + told.next, 2);
            session.out() << text;
        }
        session.out() << '\n';
    }
    return sayDecision(session, view);
}

int listLoads(DeskSession& session, const Arguments& given)
{
    const Zone& zone = session.office().zone();
    Date day = zone.dateOf(session.moment());
    if (const auto text = given.value("--day")) {
        const auto parsed = parseDate(*text);
        if (!parsed) {
            throw UsageError("--day needs a date, as 2031-03-04");
        }
        day = *parsed;
    }
    ReadSnapshot snapshot(session.office().connection());
    Finder finder(snapshot);
    const bool open = given.has("--open");
    const std::vector<FoundCycle> cycles =
        open ? finder.openCycles(mostRows)
             : finder.cyclesBetween("", zone.resolve(day, 0).ms, zone.resolve(day + 1, 0).ms - 1,
                                    mostRows);
    for (const FoundCycle& found : cycles) {
        // A test is never signed: of those only what has not ended is open.
        const bool isTest = found.purpose != "routine" && found.purpose != "immediate-use";
        if (!open || !isTest || !found.hasEnded) {
            sayInList(session, snapshot, found);
        }
    }
    return exitDone;
}

int showHistory(DeskSession& session, const Arguments& given)
{
    const CycleView view = viewOf(session, given);
    ReadSnapshot snapshot(session.office().connection());
    const std::vector<Person> people = peopleOf(snapshot);
    const std::vector<Part> parts = partsOf(snapshot, view.id);
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
        std::string of;
        for (const std::string& id : entry.subjects) {
            const auto named = std::ranges::find(parts, id, &Part::id);
            if (id != view.id) {
                of += (of.empty() ? " of " : ", ") + (named == parts.end() ? id : named->name);
            }
        }
        text += of;
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
