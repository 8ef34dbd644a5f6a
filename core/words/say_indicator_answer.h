#pragma once

#include "core/desk/indicator_answer.h"
#include "core/words/say.h"

#include <string>

namespace loadwarden {

/// What is said of one indicator. `answer` is a heading without a full stop, the others are
/// sentences.
struct IndicatorSaid {
    std::string answer;
    std::string why;
    std::string next;
    std::string source;
};

[[nodiscard]] IndicatorSaid say(const IndicatorAnswer& answer, Seen seen,
                                std::optional<IndicatorUsedAt> place, const HouseStyle& style);

} // namespace loadwarden
