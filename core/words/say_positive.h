#pragma once

#include "core/desk/biologicals.h"
#include "core/words/say.h"

#include <string>
#include <vector>

namespace loadwarden {

/// A positive biological indicator in words: what it is, who must be told, and what comes next, in
/// its order. Each line is whole and ends with a full stop.
struct PositiveSaid {
    std::string what;
    std::string says;
    std::vector<std::string> tell;
    std::vector<std::string> next;
};

[[nodiscard]] PositiveSaid say(const BiPositive& positive, const HouseStyle& style);

} // namespace loadwarden
