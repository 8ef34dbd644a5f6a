#include "core/desk/to_record.h"

namespace loadwarden {

Entry asEntry(const ToRecord& act, const Author& author, std::int64_t seq, const JournalTime& now,
              const std::string& workstation)
{
    return {.seq = seq,
            .hash = {},
            .recordedAt = now,
            .happenedAt = act.happenedAt.value_or(now),
            .happenedFrom = act.happenedAt ? act.happenedFrom : TimeSource::clock,
            .actor = author.id,
            .role = author.role,
            .workstation = workstation,
            .subjects = act.subjects,
            .reason = act.reason,
            .supersedes = act.supersedes,
            .basedOn = act.basedOn,
            .act = act.act,
            .paper = act.paper};
}

} // namespace loadwarden
