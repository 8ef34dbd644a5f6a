#pragma once

#include "core/quantities/instant.h"
#include "core/quantities/person.h"

#include <cstdint>
#include <string>

namespace loadwarden {

/// Role that a person held at the time of an act, from least to greatest right.
enum class Role : std::uint8_t { viewer, operating, lead, supervisor };

/// Who did something, in which role, when it happened and when it was recorded.
/// A `by` without a name is an unsigned act.
struct Act {
    std::string by;
    Role role = Role::operating;
    Instant happenedAt{};
    Instant recordedAt{};

    friend bool operator==(const Act&, const Act&) = default;
};

/// Whether an act is signed by somebody who records: a viewer does not.
[[nodiscard]] inline bool isSigned(const Act& act)
{
    return isNamed(act.by) && act.role != Role::viewer;
}

/// Whether an act was recorded by now and not before it happened.
[[nodiscard]] inline bool hasPossibleTimes(const Act& act, Instant now)
{
    return act.recordedAt <= now && act.happenedAt <= act.recordedAt;
}

/// Whether an act may help a load: named, by someone who records, at possible times (RULES.md, 1).
[[nodiscard]] inline bool stands(const Act& act, Instant now)
{
    return hasPossibleTimes(act, now) && isSigned(act);
}

/// Whether an act stands and was done by someone of at least the given role.
[[nodiscard]] inline bool standsAs(const Act& act, Role least, Instant now)
{
    return act.role >= least && stands(act, now);
}

} // namespace loadwarden
