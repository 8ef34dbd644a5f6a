#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/service.h"
#include "core/cycle/cycle_words.h"
#include "core/desk/reservations.h"
#include "core/loads/load_words.h"
#include "core/quantities/method_words.h"

#include <ostream>

namespace loadwarden::cli {

namespace {

/// "PRODUCT/LOT/PLACE", of which all but the product may be left out.
PlacedIndicator indicatorOf(const std::string& text, const std::string& id)
{
    PlacedIndicator indicator{.id = id, .product = {}, .lot = {}, .place = {}};
    std::size_t begin = 0;
    for (std::string* const into : {&indicator.product, &indicator.lot, &indicator.place}) {
        const std::size_t end = text.find('/', begin);
        *into = text.substr(begin, end == std::string::npos ? end : end - begin);
        if (end == std::string::npos) {
            break;
        }
        begin = end + 1;
    }
    return indicator;
}

std::vector<PlacedIndicator> indicatorsOf(DeskSession& session, std::string_view prefix,
                                          std::optional<std::string_view> texts,
                                          std::vector<std::string>& subjects)
{
    std::vector<PlacedIndicator> indicators;
    for (const std::string& text : listOf(texts)) {
        const std::string id = session.office().place().ids.next(prefix);
        subjects.push_back(id);
        indicators.push_back(indicatorOf(text, id));
    }
    return indicators;
}

JournalTime nowOr(DeskSession& session)
{
    return session.happenedAt().value_or(
        journalTime(session.office().now(), session.office().zone()));
}

/// --shown, or when it happened.
JournalTime shown(DeskSession& session, const Arguments& given)
{
    const auto text = given.value("--shown");
    return text ? DeskSession::time(*text, "--shown") : nowOr(session);
}

std::optional<std::int64_t> counterOf(const Arguments& given)
{
    const auto text = given.value("--counter");
    return text ? std::optional(whole(*text, "--counter")) : std::nullopt;
}

} // namespace

int reserveLoad(DeskSession& session, const Arguments& given)
{
    const auto sterilizer = given.value("--sterilizer");
    if (!sterilizer) {
        throw UsageError("load reserve needs --sterilizer ID");
    }
    CycleWanted wanted{.sterilizer = std::string(*sterilizer),
                       .specification = std::string(given.value("--specification").value_or("")),
                       .cycleType = std::string(given.value("--cycle-type").value_or(""))};
    if (const auto purpose = given.value("--purpose")) {
        wanted.purpose = wordIn(purposeWords, *purpose, "--purpose");
    }
    if (const auto method = given.value("--method")) {
        wanted.method = wordIn(methodWords, *method, "--method");
    }
    const SignedIn& who = session.who();
    if (const std::string why = whyOut(session.office(), wanted.sterilizer); !why.empty()) {
        session.warn("This sterilizer is not in service: " + why
                     + ". Only what puts it right is run in it.");
    }
    const ReservedCycle reserved = session.must(reserveCycle(session.office(), who, wanted));
    if (session.wantsJson()) {
        session.out() << "{\"cycle\":\"" << reserved.cycle << "\",\"lot\":\"" << reserved.lot
                      << "\"}\n";
    } else {
        session.out() << "Lot control number " << reserved.lot << " is reserved (" << reserved.cycle
                      << ").\n";
    }
    return exitDone;
}

int addItem(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage = "load add LOT LABEL --implant yes|no|unknown [--packaging "
                                       "ID] [--devices ID,ID] [--external PRODUCT/LOT] [--internal "
                                       "PRODUCT/LOT/PLACE,…]";
    const std::string cycle = session.cycle(argument(given, 1, usage));
    const std::string label(argument(given, 2, usage));
    const std::string item = session.office().place().ids.next("it");
    std::vector<std::string> subjects{item, cycle};
    ItemAdded added{.label = label,
                    .packaging = std::string(given.value("--packaging").value_or("")),
                    .internalVisible = given.has("--internal-visible"),
                    .devices = listOf(given.value("--devices"))};
    added.implant = wordIn(implantWords, given.value("--implant").value_or("unknown"), "--implant");
    if (const auto day = given.value("--packaging-expires")) {
        added.packagingExpires = parseDate(*day);
        if (!added.packagingExpires) {
            throw UsageError("--packaging-expires needs a date, as 2031-03-04");
        }
    }
    const auto external = indicatorsOf(session, "ci", given.value("--external"), subjects);
    if (external.size() > 1) {
        throw UsageError("an item has one external indicator");
    }
    if (!external.empty()) {
        added.external = external.front();
    }
    added.internals = indicatorsOf(session, "ci", given.value("--internal"), subjects);
    session.sayRecorded(session.record(added, subjects), "Item " + label + ".");
    return exitDone;
}

int removeItem(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage = "load remove LOT LABEL --why TEXT";
    const std::string cycle = session.cycle(argument(given, 1, usage));
    const std::string item = part(session, cycle, argument(given, 2, usage));
    const ItemRemoved removed{std::string(given.value("--why").value_or(""))};
    session.sayRecorded(session.record(removed, {item, cycle}), "Removed.");
    return exitDone;
}

int moveItem(DeskSession& session, const Arguments& given)
{
    constexpr std::string_view usage = "load move LOT LABEL OTHER-LOT --why TEXT";
    const std::string from = session.cycle(argument(given, 1, usage));
    const std::string item = part(session, from, argument(given, 2, usage));
    const std::string to = session.cycle(argument(given, 3, usage));
    const ItemMoved moved{
        .from = from, .to = to, .why = std::string(given.value("--why").value_or(""))};
    session.sayRecorded(session.record(moved, {item, from, to}), "Moved.");
    return exitDone;
}

int placePcd(DeskSession& session, const Arguments& given)
{
    const std::string cycle = session.cycle(argument(
        given, 1,
        "load pcd LOT [--mark TEXT] [--indicators PRODUCT/LOT,…] [--vials PRODUCT/LOT,…]"));
    std::vector<std::string> subjects{session.office().place().ids.next("pd"), cycle};
    PcdPlaced placed{
        .mark = std::string(given.value("--mark").value_or("")), .indicators = {}, .vials = {}};
    placed.indicators = indicatorsOf(session, "ci", given.value("--indicators"), subjects);
    placed.vials = indicatorsOf(session, "bv", given.value("--vials"), subjects);
    session.sayRecorded(session.record(placed, subjects), "Process challenge device.");
    return exitDone;
}

int placeSheet(DeskSession& session, const Arguments& given)
{
    const std::string cycle =
        session.cycle(argument(given, 1, "load sheet TEST --product ID --lot ID"));
    const SheetPlaced placed{std::string(given.value("--product").value_or("")),
                             std::string(given.value("--lot").value_or(""))};
    session.sayRecorded(session.record(placed, {session.office().place().ids.next("ci"), cycle}),
                        "Sheet.");
    return exitDone;
}

int startLoad(DeskSession& session, const Arguments& given)
{
    const std::string cycle =
        session.cycle(argument(given, 1, "load start LOT [--counter N] [--clock sterilizer]"));
    CycleStarted started{.shown = shown(session, given), .counter = counterOf(given)};
    if (const auto clock = given.value("--clock")) {
        started.clock = wordIn(clockWords, *clock, "--clock");
    }
    session.sayRecorded(session.record(started, {cycle}), "Started.");
    return exitDone;
}

int endLoad(DeskSession& session, const Arguments& given)
{
    const std::string cycle =
        session.cycle(argument(given, 1, "load end LOT [--counter N] [--aborted PHASE]"));
    CycleEnded ended{.shown = shown(session, given), .counter = counterOf(given)};
    if (const auto phase = given.value("--aborted")) {
        ended.outcome = CycleOutcome::aborted;
        ended.abortPhase = wordIn(abortPhaseWords, *phase, "--aborted");
    }
    session.sayRecorded(session.record(ended, {cycle}), ended.abortPhase ? "Aborted." : "Ended.");
    return exitDone;
}

int unloadLoad(DeskSession& session, const Arguments& given)
{
    const std::string cycle = session.cycle(argument(given, 1, "load unload LOT"));
    session.sayRecorded(session.record(CycleUnloaded{}, {cycle}), "Unloaded.");
    return exitDone;
}

} // namespace loadwarden::cli
