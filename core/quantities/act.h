#pragma once

#include "core/quantities/instant.h"

#include <cstdint>
#include <string>

namespace loadwarden {

/// Role that a person held at the time of an act, from least to greatest right.
enum class Role : std::uint8_t { viewer, operating, lead, supervisor };

/// Who did something, in which role, when it happened and when it was recorded.
/// An empty `by` is an unsigned act.
struct Act {
    std::string by;
    Role role = Role::operating;
    Instant happenedAt{};
    Instant recordedAt{};
};

/// Whether an act may help a load: named, by someone who records, at possible times (RULES.md, 1).
[[nodiscard]] inline bool stands(const Act& act, Instant now)
{
    return !act.by.empty() && act.role != Role::viewer && act.happenedAt <= act.recordedAt
           && act.recordedAt <= now;
}

/// Whether an act stands and was done by someone of at least the given role.
[[nodiscard]] inline bool standsAs(const Act& act, Role least, Instant now)
{
    return act.role >= least && stands(act, now);
}

} // namespace loadwarden
