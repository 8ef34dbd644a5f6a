#pragma once

#include "core/cycle/trace/mapping_proposal.h"
#include "core/cycle/trace/trace_defect.h"
#include "core/cycle/trace/trace_mapping.h"

#include <string>

namespace loadwarden {

/// A defect of a recorder's text in words. `says` names line and column and ends with a full stop;
/// so does `next`, what became of the samples and what to do.
struct TraceDefectSaid {
    std::string says;
    std::string next;
};

[[nodiscard]] TraceDefectSaid say(const TraceDefect& defect);

/// What is wrong with a mapping in itself, a sentence; empty for none.
[[nodiscard]] std::string say(MappingFault fault);

/// Why an item of a mapping is proposed, and how sure it is: a sentence.
[[nodiscard]] std::string say(const ProposalNote& note);

// Labels: without a full stop.
[[nodiscard]] std::string say(ChannelRole role);
[[nodiscard]] std::string say(RecorderUnit unit);
[[nodiscard]] std::string say(PressureZero zero);
[[nodiscard]] std::string say(TimeForm form);
[[nodiscard]] std::string say(DateOrder order);
[[nodiscard]] std::string say(FieldSeparator separator);
[[nodiscard]] std::string say(DecimalMark mark);
[[nodiscard]] std::string say(TextEncoding encoding);
[[nodiscard]] std::string say(Sureness sureness);
[[nodiscard]] std::string say(ProposedItem item);
[[nodiscard]] std::string say(TraceDefectKind kind); ///< a heading for a policy or a list

} // namespace loadwarden
