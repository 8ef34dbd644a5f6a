#pragma once

#include "core/desk/refusal.h"
#include "core/words/say.h"

#include <string>

namespace loadwarden {

/// A refusal in words: what is refused and why, and what to do. Both end with a full stop.
struct Told {
    std::string says;
    std::string next;
};

[[nodiscard]] Told say(const Refusal& refusal, const HouseStyle& style);

} // namespace loadwarden
