#pragma once

#include "core/acts/any_act.h"
#include "core/words/say.h"

#include <functional>
#include <string>
#include <string_view>

namespace loadwarden {

/// What people call that of which an act names only the id; the id itself where nobody knows.
using NameOf = std::function<std::string(std::string_view id)>;

/// An act in words: `what` as a table's heading says it, `value` what was said of it, empty where
/// the act says no more than its kind. Both without a full stop.
struct ActSaid {
    std::string what;
    std::string value;
};

/// Everything that the act says and that people read; an id only where it has no name.
[[nodiscard]] ActSaid say(const AnyAct& act, const NameOf& nameOf, const HouseStyle& style);

/// An indicator by its product, lot and place, as far as they are known.
[[nodiscard]] std::string say(const PlacedIndicator& indicator, const NameOf& nameOf);

} // namespace loadwarden
