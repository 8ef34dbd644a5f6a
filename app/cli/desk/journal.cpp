#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/journal_commands.h"
#include "app/cli/desk/load_commands.h"
#include "app/cli/desk/said_progress.h"
#include "app/cli/paragraph.h"
#include "core/desk/journal_copy.h"
#include "core/desk/load_view.h"
#include "core/desk/sealing.h"
#include "core/desk/upkeep.h"
#include "core/exchange/evidence_writer.h"
#include "core/store/store_error.h"

#include <QCoreApplication>

#include <ostream>

namespace loadwarden::cli {

namespace {

std::vector<Head> headsOf(const Arguments& given)
{
    std::vector<Head> heads;
    for (const std::string& text : listOf(given.value("--expect"))) {
        const auto head = parseHead(text);
        if (!head) {
            throw UsageError("--expect needs what stands on the paper: a number, a colon and 64 "
                             "digits 0 to 9, a to f; not \""
                             + text + '"');
        }
        heads.push_back(*head);
    }
    return heads;
}

/// By which keys the seals are, where it is more than one.
void sayKeys(Office& office, const VerifyReport& report, std::ostream& out)
{
    if (report.sealKeys.size() < 2) {
        return;
    }
    for (const SealedBy& by : sealedBy(office, report)) {
        const SealsOfKey& each = by.seals;
        out << "Key " << hexOf(each.key.key).substr(0, 16) << ", ";
        if (by.recordedBy.empty()) {
            out << "that of the first seal";
        } else {
            out << "recorded by " << by.recordedBy << " on "
                << sayTime(by.recordedAt, {.zone = office.zone()}) << " (entry "
                << each.key.recorded << ") because: " << oneLine(by.why);
        }
        if (each.held == 0) {
            out << ": no seals that hold.\n";
        } else {
            out << ": " << each.held << " seals that hold, of entries " << each.from << " to "
                << each.to << ".\n";
        }
    }
    out << "Ask those who are named whether they recorded these keys: nothing before a key's first "
           "seal is vouched for by it alone.\n";
}

int newKey(DeskSession& session, const std::string& why)
{
    const SignedIn& who = session.who();
    const NewSealKey made =
        session.must(recordSealKey(session.office(), who, session.signature(), why));
    session.out() << (made.wasThere ? "The key that this user has is" : "A new key is made and")
                  << " recorded as entry " << made.appended.firstSeq << ": " << hexOf(made.key)
                  << ". The journal is sealed with it.\n"
                  << "Keep it apart from the backups, and write its number down on paper. Seals of "
                     "the old key stay good for what they vouch for.\n";
    return exitDone;
}

int sayReport(const VerifyReport& report, std::ostream& out)
{
    for (const JournalFault& fault : report.faults) {
        out << sentenceOf(fault) << '\n';
    }
    const auto shown = static_cast<std::int64_t>(report.faults.size());
    if (report.faultCount > shown) {
        out << "And " << report.faultCount - shown << " more.\n";
    }
    for (const ClockStep& step : report.clockSteps) {
        out << "Entry " << step.seq << " was recorded with a clock " << step.behind.ms / 1'000
            << " seconds behind the entry before. No fault.\n";
    }
    out << report.entries << " entries, the newest " << report.head.seq << ':'
        << hexOf(report.head.hash) << ". Seals that hold: " << report.sealsHeld
        << ", the newest of them for entry " << report.sealedTo << ".\n"
        << (report.sound() ? "Nothing is wrong with what was looked at.\n"
                           : "This journal was damaged or tampered with. Stop working in it, keep "
                             "the file as it is, and compare it with the newest backup.\n");
    return report.sound() ? exitDone : exitWithheld;
}

/// The tables by which loads are found and put together: a wrong one hides what stands in the
/// entries.
int sayTables(const std::string& file, Progress& progress, std::ostream& out)
{
    try {
        const RebuildReport report = compareTables(file, progress);
        for (const IndexDifference& difference : report.differences) {
            out << "Table " << difference.table
                << (difference.missing ? " lacks " : " has too much: ") << difference.row << '\n';
        }
        out << (report.differenceCount == 0
                    ? "The tables beside it are as the entries say.\n"
                    : "The tables beside the entries were changed: what they find is wrong. Have "
                      "\"loadwarden-cli journal rebuild\" fill them anew, and find out who "
                      "changed them.\n");
        return report.differenceCount == 0 ? exitDone : exitWithheld;
    } catch (const StoreError& error) {
        if (error.fault() != StoreFault::inUse) {
            throw;
        }
        out << "Somebody works in it now: the tables beside it were not compared with it.\n";
        return exitDone;
    }
}

} // namespace

int verify(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--expect", true}});
    const Arguments given(arguments, options);
    if (!given.rest().empty()) {
        throw UsageError("verify is used as \"verify [--expect SEQ:HASH,…]\"");
    }
    const auto application = makeApplication();
    const SystemClock clock;
    RandomIdSource ids;
    const std::string file = journalFile(given);
    SaidProgress progress(streams.err);
    int code = exitDone;
    {
        Office office(file, Access::read, workplace(clock, ids), Trust::none);
        const VerifyReport report = verifyHere(office, headsOf(given), true, progress);
        code = sayReport(report, streams.out);
        try {
            sayKeys(office, report, streams.out);
        } catch (const StoreError&) {
            // What cannot be read stands in the report already.
            streams.out << "It cannot be read by which keys it was sealed.\n";
        }
    }
    return code == exitDone ? sayTables(file, progress, streams.out) : code;
}

int backup(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({});
    const Arguments given(arguments, options);
    if (given.rest().size() != 1) {
        throw UsageError("backup is used as \"backup NEW-FILE\"");
    }
    DeskSession session(given, Access::write, streams);
    SaidProgress progress(streams.err);
    const SignedIn& who = session.who();
    const Backup made =
        session.must(backUpJournal(session.office(), who, std::string(given.rest()[0]), progress));
    streams.out << made.file.string() << ": " << made.bytes << " bytes, " << made.report.entries
                << " entries, read back and verified. Keep it on another disk.\n"
                << "Its newest entry, to be kept on paper: " << made.report.head.seq << ':'
                << hexOf(made.report.head.hash) << '\n';
    return exitDone;
}

int restore(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--expect", true}, {"--go-on", false}});
    const Arguments given(arguments, options);
    if (given.rest().size() != 2) {
        throw UsageError("restore is used as \"restore BACKUP NEW-FILE [--go-on] "
                         "[--expect SEQ:HASH]\"");
    }
    const auto application = makeApplication();
    const SystemClock clock;
    RandomIdSource ids;
    const Workplace place = workplace(clock, ids);
    SaidProgress progress(streams.err);
    const RestoreRequest request{.backup = std::string(given.rest()[0]),
                                 .target = std::string(given.rest()[1]),
                                 .workstation = place.workstation,
                                 .seals = {},
                                 .keys = {},
                                 .expected = headsOf(given)};
    const bool goesOn = given.has("--go-on");
    const RestoredJournal done =
        restoreJournal(request, goesOn ? Restoring::goOn : Restoring::drill, place, progress);
    streams.out << "The backup ends with entry " << done.restored.backupHead.seq << " of "
                << sayTime(done.restored.backupTime, {}) << ". ";
    if (done.lost > 0) {
        streams.out << "This computer has seen " << done.lost
                    << " entries more, which are not in it: growth in a vial or a failed test may "
                       "be among them. Enter them again from paper before anything is signed.\n";
    } else {
        streams.out << "What was recorded after it is not in it: enter it again from paper.\n";
    }
    streams.out << "Lot control numbers that may be on labels since then are skipped. The journal "
                   "goes on with entry "
                << done.restored.head.seq << ".\n";
    if (!goesOn) {
        streams.out << "This was a drill: this computer goes on with the journal from before. When "
                       "that is lost, restore with --go-on.\n";
    }
    return exitDone;
}

int exportEvidence(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--as-of", true}});
    const Arguments given(arguments, options);
    if (given.rest().empty()) {
        throw UsageError("export is used as \"export LOT…\"");
    }
    DeskSession session(given, Access::read, streams);
    const auto seq = given.value("--as-of");
    for (const std::string_view name : given.rest()) {
        const std::string cycle = session.cycle(name);
        ReadSnapshot snapshot(session.office().connection());
        const auto view =
            viewCycle(snapshot, session.office().entries(), cycle, session.office().now(),
                      seq ? whole(*seq, "--as-of") : toTheEnd);
        if (!view) {
            session.refuse({.why = RefusalWhy::unknown, .subject = std::string(name)});
        }
        if (view->isImported()) {
            session.refuse({.why = RefusalWhy::imported, .subject = view->lot()});
        }
        streams.out << writeEvidence(view->folded.record);
    }
    return exitDone;
}

int journal(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--why", true}});
    const Arguments given(arguments, options);
    const std::string_view word = given.rest().size() == 1 ? given.rest()[0] : "";
    const bool exports = word == "export";
    if (!exports && word != "seal" && word != "rebuild" && word != "new-key") {
        throw UsageError("journal is used as \"journal export\", \"journal seal\", "
                         "\"journal rebuild\" or \"journal new-key --why TEXT\"");
    }
    const std::string why = word == "new-key" ? given.needed("--why") : "";
    DeskSession session(given, exports ? Access::read : Access::write, streams);
    if (word == "new-key") {
        return newKey(session, why);
    }
    if (!exports) {
        const SignedIn& who = session.who();
        {
            ReadSnapshot snapshot(session.office().connection());
            (void)session.must(
                authorFor(snapshot, who, Task::sealJournal, nullptr, session.office().now()));
        }
        if (word == "rebuild") {
            SaidProgress progress(streams.err);
            const RebuildReport report =
                rebuildIndexes(session.office().connection(), {}, Rebuild::replace, progress);
            streams.out << report.differenceCount << " rows of the tables were put right.\n";
            return exitDone;
        }
        const Seal seal = sealNow(session.office());
        streams.out << writeSeal(seal) << '\n';
        return exitDone;
    }
    NoProgress unseen;
    (void)forEachLine(
        session.office(), [&](std::string_view line) { streams.out << line << '\n'; }, unseen);
    return exitDone;
}

} // namespace loadwarden::cli
