#pragma once

#include "core/desk/to_record.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

// Which ids acts bring in, and which must be there before them.

namespace loadwarden {

/// "ld" of "ld-1".
[[nodiscard]] inline std::string_view prefixOf(std::string_view id)
{
    return id.substr(0, 2);
}

/// Whether an act is one of these.
template <class... Acts>
[[nodiscard]] bool isAny(const AnyAct& act)
{
    return (std::holds_alternative<Acts>(act) || ...);
}

/// Whether an act may name an id that nobody has named before.
[[nodiscard]] bool mayBringIn(const ToRecord& act, std::string_view id);

/// Whether an act must not name that id once somebody has: what it brings in is one thing.
[[nodiscard]] bool bringsInOnlyNew(const ToRecord& act, std::string_view id);

/// Ids that a body names and that must be in a register.
[[nodiscard]] std::vector<std::string> referencesOf(const AnyAct& act);

/// Whether a sterilizer's id, sz- and a rest, ends as lot control numbers on labels begin: 1 to 8
/// digits and capital letters, so that no two differ by case alone.
[[nodiscard]] bool canBeginALot(std::string_view id);

} // namespace loadwarden
