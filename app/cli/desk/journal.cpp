#include "app/cli/commands.h"
#include "app/cli/desk/desk_session.h"
#include "app/cli/desk/load_commands.h"
#include "core/desk/load_view.h"
#include "core/desk/sealing.h"
#include "core/desk/upkeep.h"
#include "core/exchange/evidence_writer.h"
#include "core/store/verify.h"

#include <QCoreApplication>

#include <ostream>

namespace loadwarden::cli {

namespace {

/// Says on the terminal how far it has come, at most a hundred times.
class SaidProgress final : public Progress {
public:
    explicit SaidProgress(std::ostream& err) : m_err(err) {}
    ~SaidProgress() override
    {
        if (m_said >= 0) {
            m_err << '\n';
        }
    }
    SaidProgress(const SaidProgress&) = delete;
    SaidProgress& operator=(const SaidProgress&) = delete;

    bool goOn(std::int64_t done, std::int64_t total) override
    {
        constexpr std::int64_t long_ = 100'000; ///< entries that take a moment
        const std::int64_t percent = total <= 0 ? 100 : done * 100 / total;
        if (total >= long_ && percent != m_said) {
            m_said = percent;
            m_err << '\r' << percent << " %" << std::flush;
        }
        return true;
    }

private:
    std::ostream& m_err;
    std::int64_t m_said = -1;
};

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

} // namespace

int verify(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({{"--expect", true}});
    const Arguments given(arguments, options);
    if (!given.rest().empty()) {
        throw UsageError("verify is used as \"verify [--expect SEQ:HASH,…]\"");
    }
    DeskSession session(given, Access::read, streams);
    SaidProgress progress(streams.err);
    const VerifyRequest request{
        .expected = headsOf(given),
        .seals = keptSeals(session.office().place(), session.office().identity().id)};
    return sayReport(verifyJournal(session.office().connection(), request, progress), streams.out);
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
    const auto options = withDeskOptions({{"--expect", true}});
    const Arguments given(arguments, options);
    if (given.rest().size() != 2) {
        throw UsageError("restore is used as \"restore BACKUP NEW-FILE [--expect SEQ:HASH]\"");
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
    const Restored restored = restoreJournal(request, place, progress);
    streams.out << "The backup ends with entry " << restored.backupHead.seq << " of "
                << sayTime(restored.backupTime, {})
                << ". What was recorded after it is not in it: enter it again from paper.\n"
                << "Lot control numbers that may be on labels since then are skipped. The journal "
                   "goes on with entry "
                << restored.head.seq << ".\n";
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
        streams.out << writeEvidence(view->folded.record);
    }
    return exitDone;
}

int journal(std::span<const std::string_view> arguments, Streams streams)
{
    const auto options = withDeskOptions({});
    const Arguments given(arguments, options);
    const bool exports = given.rest().size() == 1 && given.rest()[0] == "export";
    if (!exports && !(given.rest().size() == 1 && given.rest()[0] == "seal")) {
        throw UsageError("journal is used as \"journal export\" or \"journal seal\"");
    }
    DeskSession session(given, exports ? Access::read : Access::write, streams);
    if (!exports) {
        const Seal seal = sealNow(session.office());
        streams.out << writeSeal(seal) << '\n';
        return exitDone;
    }
    ReadSnapshot snapshot(session.office().connection());
    JournalReader reader(snapshot);
    EntryCursor cursor = reader.range(1);
    while (const auto entry = cursor.next()) {
        streams.out << entry->bytes << '\n';
    }
    return exitDone;
}

} // namespace loadwarden::cli
