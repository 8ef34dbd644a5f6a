#pragma once

#include "core/desk/biologicals.h"
#include "core/words/say.h"

#include <QString>

#include <optional>

namespace loadwarden::ui {

/// "in 23 h", "in 12 min"; rounded up, so that it never says less than is left.
[[nodiscard]] QString countdownText(Duration left);

/// When that text changes next; nullopt: never.
[[nodiscard]] std::optional<Instant> countdownChangesAt(Instant due, Instant now);

/// Where a vial or a control stands, in a sentence.
[[nodiscard]] QString standingText(const BiTest& test, Instant now, const HouseStyle& style);

} // namespace loadwarden::ui
