#pragma once

#include "core/cycle/trace/evaluate.h"
#include "core/cycle/trace/mapping_proposal.h"
#include "core/cycle/trace/trace_reader.h"
#include "core/desk/to_record.h"
#include "core/quantities/pressure.h"
#include "core/quantities/zone.h"
#include "core/store/reach/entry_cache.h"
#include "core/store/read_snapshot.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// What of a cycle and of the registers its trace is read by. A value: a file may be read elsewhere
/// while others go on working.
struct TraceBasis {
    std::string cycle; ///< ld-
    /// That is bound to it; nullopt: none, and nothing can be asked of a trace.
    std::optional<CycleSpecification> specification;
    std::optional<AbsolutePressure> atmosphere; ///< of the site; nullopt: not recorded
    Zone zone = *Zone::find("UTC");             ///< of the facility
    /// The mapping of the trace that was recorded last, of those of the sterilizer's newest cycles
    /// (200) that stand; nullopt: none of them has one that can be read.
    std::optional<TraceMapping> remembered;
};

/// nullopt where nothing was recorded of the cycle. Throws StoreError.
[[nodiscard]] std::optional<TraceBasis> traceBasisOf(ReadSnapshot& snapshot, EntryCache& cache,
                                                     std::string_view cycle, Instant now);

/// Where a mapping comes from: one that is only proposed must be confirmed by a person.
enum class MappingOrigin : std::uint8_t { remembered, proposed };

struct ChosenMapping {
    TraceMapping mapping;
    MappingOrigin origin = MappingOrigin::proposed;
    std::vector<ProposalNote> notes;  ///< of a proposal
    std::vector<TraceDefect> misfits; ///< why the remembered one is not used; empty: there is none
};

/// The remembered mapping if it fits the file, else a proposal. Pure.
[[nodiscard]] ChosenMapping chooseMapping(std::string_view bytes,
                                          const std::optional<TraceMapping>& remembered);

/// All that is known of a load's trace, and the act that records it.
struct TraceWork {
    TraceReading reading;
    AskedOfTrace asked;
    TraceEvaluation evaluation;
    ToRecord act; ///< a TraceRead, for Recorder::attach()
};

/// Reads a file of a cycle's recorder by a mapping and evaluates it. `id` is the trace's (tr-), the
/// file's name without its folder. Pure and total.
[[nodiscard]] TraceWork readForLoad(const TraceBasis& basis, const std::string& id,
                                    const std::string& fileName, std::string_view bytes,
                                    const TraceMapping& mapping);

} // namespace loadwarden
