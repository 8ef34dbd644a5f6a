#include "core/acts/fold/cycle_parts.h"

#include <algorithm>

// The sterilizer's own record of a cycle, and what people said of it.

namespace loadwarden {
namespace {

std::optional<Instant> instantOf(const std::optional<JournalTime>& time)
{
    return time ? std::optional(time->at) : std::nullopt;
}

bool isSame(const PrintoutRecorded& a, const PrintoutRecorded& b)
{
    return a.program == b.program && a.sterilizer == b.sterilizer && a.counter == b.counter
           && instantOf(a.start) == instantOf(b.start) && instantOf(a.end) == instantOf(b.end);
}

/// Two printouts that disagree are none: it is not known which is this cycle's.
void foldPrintout(Folding& folding, CycleFold& into, bool own)
{
    const auto said = saidOf<PrintoutRecorded>(folding, into.id, own, true);
    if (said.empty()) {
        return;
    }
    if (!said.agree(isSame)) {
        for (std::size_t i = 1; i < said.values.size(); ++i) {
            folding.misfit(*said.values[i].entry, MisfitWhy::saidTwice);
        }
        return;
    }
    const PrintoutRecorded& first = *said.first().act;
    into.load.printout = Printout{.program = first.program,
                                  .sterilizer = first.sterilizer,
                                  .counter = first.counter,
                                  .start = instantOf(first.start),
                                  .end = instantOf(first.end),
                                  .act = actOf(*said.first().entry)};
}

/// Whether another of some traces has that name.
bool isTaken(const std::vector<TraceFindings>& traces, std::string_view id)
{
    return std::ranges::find(traces, id, &TraceFindings::id) != traces.end();
}

/// Traces of one id, as where a correction stands beside what it does not take away, are told apart
/// by a number.
void foldTraces(Folding& folding, CycleFold& into, bool own)
{
    std::vector<TraceFindings>& traces = into.load.traces;
    folding.eachValue<TraceRead>(into.id, own, [&](const Entry& entry, const TraceRead& act) {
        TraceFindings trace = act.findings;
        const std::string id(entry.subject("tr"));
        trace.id = id;
        for (int number = 2; isTaken(traces, trace.id); ++number) {
            trace.id = id + '@' + std::to_string(number);
        }
        trace.start = instantOf(act.start);
        trace.act = actOf(entry);
        traces.push_back(std::move(trace));
    });
}

void foldAeration(Folding& folding, CycleFold& into, bool own)
{
    struct Run {
        std::string_view id;
        AerationRun run;
    };
    std::vector<Run> runs;
    const auto runOf = [&runs](const Entry& entry) {
        return std::ranges::find(runs, entry.subject("ar"), &Run::id);
    };
    folding.eachValue<AerationStarted>(
        into.id, own, [&](const Entry& entry, const AerationStarted& act) {
            const std::int64_t celsius = act.celsius.thousandths / 10;
            if (const auto run = runOf(entry); run != runs.end()) {
                run->run.celsiusHundredths = std::min(run->run.celsiusHundredths, celsius);
                folding.misfit(entry, MisfitWhy::saidTwice);
                return;
            }
            runs.push_back(
                {entry.subject("ar"), {.start = actOf(entry), .celsiusHundredths = celsius}});
        });
    const auto close = [&](std::optional<Act> AerationRun::*how) {
        return [&, how](const Entry& entry, const auto&) {
            const auto run = runOf(entry);
            if (run == runs.end()) {
                folding.misfit(entry, MisfitWhy::notOpen);
            } else if (run->run.*how) {
                folding.misfit(entry, MisfitWhy::saidTwice);
            } else {
                run->run.*how = actOf(entry);
            }
        };
    };
    folding.eachValue<AerationEnded>(into.id, own, close(&AerationRun::end));
    folding.eachValue<AerationInterrupted>(into.id, own, close(&AerationRun::interrupted));
    for (Run& run : runs) {
        into.load.aerationRuns.push_back(std::move(run.run));
    }
}

void foldImmediateUse(Folding& folding, CycleFold& into, bool own)
{
    folding.eachValue<ImmediateUseStated>(
        into.id, own, [&](const Entry& entry, const ImmediateUseStated& act) {
            ImmediateUse& use =
                into.load.immediateUse ? *into.load.immediateUse : into.load.immediateUse.emplace();
            if (act.forStorage && !use.forStorage.value_or(false)) {
                use.forStorage = act.forStorage;
            }
            if (!isSigned(actOf(entry))) {
                folding.misfit(entry, MisfitWhy::unsignedFact);
                return;
            }
            use.reason = act.why.empty() ? use.reason : act.why;
            use.caseReference = act.caseReference.empty() ? use.caseReference : act.caseReference;
        });
}

} // namespace

void foldSterilizersRecord(Folding& folding, CycleFold& into, bool own)
{
    LoadRecord& load = into.load;
    foldPrintout(folding, into, own);
    load.printoutLost = firstAct(saidOf<PrintoutLost>(folding, into.id, own, true));
    folding.eachValue<PrintoutAnswered>(
        into.id, own, [&](const Entry& entry, const PrintoutAnswered& act) {
            load.printoutAnswers.push_back({act.answer, act.field, actOf(entry)});
        });
    folding.eachValue<PhysicalRead>(into.id, own, [&](const Entry& entry, const PhysicalRead& act) {
        load.readings.push_back({.parameter = act.parameter,
                                 .value = act.value.value,
                                 .typed = act.value.typed,
                                 .act = actOf(entry)});
    });
    foldTraces(folding, into, own);
    folding.eachValue<PhysicalLost>(into.id, own, [&](const Entry& entry, const PhysicalLost& act) {
        load.lostReadings.push_back({act.parameter, actOf(entry)});
    });
    folding.eachValue<PhysicalVerified>(into.id, own,
                                        [&](const Entry& entry, const PhysicalVerified&) {
                                            load.verifications.push_back(actOf(entry));
                                        });
    folding.eachValue<AlarmRecorded>(into.id, own,
                                     [&](const Entry& entry, const AlarmRecorded& act) {
                                         load.alarms.push_back({act.code, actOf(entry)});
                                     });
    foldAeration(folding, into, own);
    foldImmediateUse(folding, into, own);
    // What the author of a review had seen is known only when everything has been folded.
    folding.eachValue<ReviewRecorded>(into.id, own,
                                      [&](const Entry& entry, const ReviewRecorded& act) {
                                          load.reviews.push_back({.finding = act.finding,
                                                                  .subject = act.subject,
                                                                  .answer = act.answer,
                                                                  .why = act.why,
                                                                  .newestSeen = Instant{},
                                                                  .act = actOf(entry)});
                                      });
}

} // namespace loadwarden
