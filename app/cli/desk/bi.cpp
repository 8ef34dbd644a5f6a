#include "app/cli/desk/journal_commands.h"
#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/parts.h"
#include "core/acts/fold/registers.h"
#include "core/desk/journal_entries.h"
#include "core/desk/load_view.h"
#include "core/indicators/indicator_words.h"
#include "core/store/finder.h"

#include <ostream>
#include <set>

namespace loadwarden::cli {

namespace {

/// "LOT v1", a vial of a load, or "bc-…", a control: the subjects of what is said of it.
std::vector<std::string> subjectsOf(DeskSession& session, const Arguments& given, std::size_t& next)
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
    if (seen == "growth" && subjects.size() > 1 && !session.wantsJson()) {
        session.out() << "A vial that was in a load has grown. Hold this load and what that "
                         "sterilizer has run since its last negative vial, take the sterilizer out "
                         "of use, tell a supervisor, open an incident. \"load decide\" says what "
                         "follows for each load.\n";
    }
    return exitDone;
}

int processIndicator(DeskSession& session, const Arguments& given)
{
    std::size_t next = 0;
    const std::vector<std::string> subjects = subjectsOf(session, given, next);
    const std::string_view seen =
        argument(given, next, "bi process-indicator LOT v1 changed|unchanged");
    session.sayRecorded(
        session.record(ProcessIndicatorRead{wordIn(processIndicatorWords, seen, "what was seen")},
                       subjects),
        std::string(seen) + '.');
    return exitDone;
}

int control(DeskSession& session, const Arguments& given)
{
    const std::string id = session.office().place().ids.next("bc");
    const ControlPrepared prepared{std::string(given.value("--product").value_or("")),
                                   std::string(given.value("--lot").value_or("")),
                                   {}};
    const Appended appended = session.record(prepared, {id});
    if (session.wantsJson()) {
        session.out() << "{\"control\":\"" << id << "\",\"entry\":" << appended.firstSeq << "}\n";
    } else {
        session.sayRecorded(appended, "Control " + id + '.');
    }
    return exitDone;
}

constexpr std::int64_t mostRows = 10'000;

/// When a vial may be read for release; nullopt where its product does not say.
std::optional<Instant> dueAt(const FactBook& products, const FoundVial& vial)
{
    const Fact* const product = peekRevision<ProductRecorded>(products, vial.product, newest);
    if (product == nullptr) {
        return std::nullopt;
    }
    const auto& recorded = std::get<ProductRecorded>(product->current().act).product;
    return Instant{vial.incubated} + Duration::minutes(recorded.releaseMinutes);
}

/// Controls beside a load's vials that nobody has read.
void sayControls(DeskSession& session, const CycleView& view, std::set<std::string>& said)
{
    for (const Control& control : view.folded.record.controls) {
        if (control.readings.empty() && said.insert(control.id).second) {
            session.out() << control.id << "  a control, "
                          << (control.incubationStart ? "not read yet" : "not in an incubator yet")
                          << '\n';
        }
    }
}

/// Whether a vial's only answers came before it was due: none of them counts.
bool wasReadTooEarly(ReadSnapshot& snapshot, const std::string& vial, Instant dueAt)
{
    bool early = false;
    for (const loadwarden::Entry& entry : entriesAbout(snapshot, vial)) {
        const auto* const read = std::get_if<BiologicalRead>(&entry.act);
        if (read != nullptr && (read->seen != Seen::noGrowth || entry.happenedAt.at >= dueAt)) {
            return false;
        }
        early = early || read != nullptr;
    }
    return early;
}

/// Vials of loads that nobody has signed and that were read too early.
void sayReadTooEarly(DeskSession& session, ReadSnapshot& snapshot, const FactBook& products,
                     std::set<std::string>& controls)
{
    Finder finder(snapshot);
    for (const FoundCycle& cycle : finder.openCycles(mostRows)) {
        for (const FoundVial& vial : finder.vialsOf(cycle.id)) {
            const auto at = dueAt(products, vial);
            if (!at || vial.incubated == 0 || !wasReadTooEarly(snapshot, vial.id, *at)) {
                continue;
            }
            session.out() << (cycle.lot.empty() ? cycle.id : cycle.lot) << ' ' << vial.id
                          << "  was read too early; read it again from "
                          << sayTime(*at, session.style()) << " on\n";
            if (const auto view = session.view(snapshot, cycle.id)) {
                sayControls(session, *view, controls);
            }
        }
    }
}

int due(DeskSession& session)
{
    Office& office = session.office();
    const Instant now = session.moment();
    ReadSnapshot snapshot(office.connection());
    const std::vector<loadwarden::Entry> productEntries = registerEntries(snapshot, "pr");
    const FactBook products(productEntries);
    std::set<std::string> controls;
    for (const FoundVial& vial : Finder(snapshot).openVials(mostRows)) {
        const auto view = session.view(snapshot, vial.cycle);
        std::string name = vial.id;
        for (const Part& each : partsOf(snapshot, vial.cycle)) {
            if (each.id == vial.id && view) {
                name = view->lot() + ' ' + each.name;
            }
        }
        session.out() << name << "  in " << vial.incubator << " since "
                      << sayTime(Instant{vial.incubated}, session.style());
        const auto at = dueAt(products, vial);
        if (!at) {
            session.out() << ", its product is not known\n";
        } else {
            session.out() << (*at <= now ? ", due since " : ", due at ")
                          << sayTime(*at, session.style()) << '\n';
        }
        if (view) {
            sayControls(session, *view, controls);
        }
    }
    sayReadTooEarly(session, snapshot, products, controls);
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
