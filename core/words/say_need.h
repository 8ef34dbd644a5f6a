#pragma once

#include "core/desk/needs.h"
#include "core/words/say.h"

#include <string>

namespace loadwarden {

/// What needs somebody, in words: `what` is a heading without a full stop, `says` ends with one,
/// `action` is what a button says that leads to it.
struct NeedSaid {
    std::string what;
    std::string says;
    std::string action;
};

[[nodiscard]] NeedSaid say(const Need& need, const HouseStyle& style);

} // namespace loadwarden
