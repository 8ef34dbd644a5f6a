#pragma once

#include "core/acts/entry.h"

namespace loadwarden {

/// Whether taking the fact of an entry away could better a verdict (ACTS.md, 5). Where that is not
/// known it could.
[[nodiscard]] bool mayHarm(const Entry& entry);

/// Whether what `to` says harms at least as much as what `from` says, of the same thing.
[[nodiscard]] bool harmsAtLeast(const Entry& to, const Entry& from);

/// Whether it is growth, an unclear reading or the settling of a vial: nothing takes that away.
[[nodiscard]] bool makesPositive(const Entry& entry);

/// Whether acts of this kind are never corrected.
[[nodiscard]] bool isFinal(const AnyAct& act);

} // namespace loadwarden
