#pragma once

#include "core/acts/entry.h"

#include <cstdint>
#include <optional>

namespace loadwarden {

/// Whether an act can only be about a chemical indicator, whatever else is among its subjects.
[[nodiscard]] bool isChemical(const AnyAct& act);

/// What an answer says of its indicator, from best to worst.
enum class SeenRank : std::uint8_t { good, unclear, bad };

/// What was seen, where the act is a reading.
[[nodiscard]] std::optional<Seen> seenIn(const AnyAct& act);

/// What was seen, taken as good, unclear or bad (core/release/RULES.md, 3); of a control growth is
/// good.
[[nodiscard]] SeenRank rankOf(Seen seen, bool ofControl);

/// The same for a reading's entry, whose subjects say whether it is of a control.
[[nodiscard]] SeenRank rankOf(const Entry& entry, Seen seen);

} // namespace loadwarden
