#pragma once

#include "core/desk/used_items.h"
#include "core/words/say_refusal.h"

#include <string>
#include <string_view>

namespace loadwarden {

/// What an act of that kind is, without an article where one of them is meant: "physical reading".
/// A kind that this version does not know keeps its own word.
[[nodiscard]] std::string sayKind(std::string_view kind);

/// That an item was used which nobody released, and what to do now.
[[nodiscard]] Told say(const UnreleasedUse& use);

} // namespace loadwarden
