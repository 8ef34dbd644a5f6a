#include "core/desk/trace_work.h"

#include "core/acts/fold/facts.h"
#include "core/cycle/trace/asked_by.h"
#include "core/cycle/trace/findings_of.h"
#include "core/desk/journal_entries.h"
#include "core/desk/load_view.h"
#include "core/exchange/trace_mapping_json.h"
#include "core/store/finder.h"
#include "core/store/queries.h"

#include <algorithm>
#include <utility>

namespace loadwarden {
namespace {

constexpr std::int64_t mostCyclesBack = 200;

struct RecordedTrace {
    std::int64_t seq = 0;
    std::string cycle;
};

/// Traces that were recorded of a sterilizer's newest cycles, corrected or not, the last first.
std::vector<RecordedTrace> tracesOf(ReadSnapshot& snapshot, std::string_view sterilizer)
{
    std::vector<RecordedTrace> traces;
    for (const FoundCycle& cycle :
         Finder(snapshot).newestBehind(sterilizer, {}, INT64_MIN, mostCyclesBack)) {
        Statement rows = snapshot.statement(sqlOf(Query::ofKindAbout, snapshot.dialect()));
        rows.bind(":subject", cycle.id).bind(":kind", "trace.read");
        while (rows.step()) {
            traces.push_back({rows.integer(0), cycle.id});
        }
    }
    std::ranges::sort(traces, std::greater(), &RecordedTrace::seq);
    return traces;
}

/// The mapping of a trace, if this entry is the version of it that counts.
std::optional<TraceMapping> mappingIn(ReadSnapshot& snapshot, const RecordedTrace& trace)
{
    const std::vector<Entry> entries = entriesAbout(snapshot, trace.cycle);
    const FactBook book(entries);
    for (const Fact& fact : book.facts()) {
        if (!fact.stands() || fact.current().seq != trace.seq) {
            continue;
        }
        if (const auto* const read = std::get_if<TraceRead>(&fact.current().act)) {
            auto mapping = readTraceMapping(read->mapping);
            if (auto* const good = std::get_if<TraceMapping>(&mapping)) {
                return std::move(*good);
            }
        }
    }
    return std::nullopt;
}

std::optional<TraceMapping> rememberedMapping(ReadSnapshot& snapshot, std::string_view sterilizer)
{
    if (sterilizer.empty()) {
        return std::nullopt; // it would be that of any
    }
    for (const RecordedTrace& trace : tracesOf(snapshot, sterilizer)) {
        if (auto mapping = mappingIn(snapshot, trace)) {
            return mapping;
        }
    }
    return std::nullopt;
}

} // namespace

std::optional<TraceBasis> traceBasisOf(ReadSnapshot& snapshot, EntryCache& cache,
                                       std::string_view cycle, Instant now)
{
    auto view = viewCycle(snapshot, cache, cycle, now);
    if (!view) {
        return std::nullopt;
    }
    EvidenceRecord& record = view->folded.record;
    return TraceBasis{.cycle = std::string(cycle),
                      .specification = std::move(record.specification),
                      .atmosphere = record.atmosphere,
                      .zone = record.zone,
                      .remembered = rememberedMapping(snapshot, view->folded.sterilizer)};
}

ChosenMapping chooseMapping(std::string_view bytes, const std::optional<TraceMapping>& remembered)
{
    ChosenMapping chosen;
    if (remembered) {
        chosen.misfits = misfitsOf(bytes, *remembered);
        if (chosen.misfits.empty()) {
            chosen.mapping = *remembered;
            chosen.origin = MappingOrigin::remembered;
            return chosen;
        }
    }
    MappingProposal proposal = proposeMapping(bytes);
    chosen.mapping = std::move(proposal.mapping);
    chosen.notes = std::move(proposal.notes);
    return chosen;
}

TraceWork readForLoad(const TraceBasis& basis, const std::string& id, const std::string& fileName,
                      std::string_view bytes, const TraceMapping& mapping)
{
    TraceWork work;
    work.reading = readTrace(bytes, mapping, basis.atmosphere);
    const CycleSpecification nothing{}; // asks nothing, and of a specification nothing is known
    const CycleSpecification& specification = basis.specification ? *basis.specification : nothing;
    work.asked = askedBy(specification, mapping, basis.atmosphere);
    work.evaluation = evaluate(work.reading.trace, work.asked);

    TraceRead read{.fileName = fileName,
                   .bytes = static_cast<std::int64_t>(bytes.size()),
                   .mapping = writeTraceMapping(mapping),
                   .findings =
                       findingsOf(work.reading, work.evaluation,
                                  basis.specification ? &specification : nullptr, basis.zone)};
    // In an entry it is the act's.
    if (const auto start = std::exchange(read.findings.start, std::nullopt)) {
        read.start = journalTime(*start, basis.zone);
    }
    work.act = {.act = std::move(read), .subjects = {id, basis.cycle}};
    return work;
}

} // namespace loadwarden
