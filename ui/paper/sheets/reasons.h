#pragma once

#include "core/desk/load_view.h"
#include "core/words/say.h"
#include "ui/paper/kit/type.h"

#include <functional>
#include <vector>

namespace loadwarden::paper {

/// What was found, said once for everything of which it is said.
struct Reason {
    Outcome outcome = Outcome::note;
    Key key{};
    Said said;
    std::vector<std::int32_t> items; ///< -1: the load
};

/// The findings of a load or a test, the worst first; those for which `wants` answers false are
/// left out.
[[nodiscard]] std::vector<Reason> reasonsOf(const CycleView& view, const HouseStyle& style,
                                            const std::function<bool(const Finding&)>& wants);
[[nodiscard]] std::vector<Reason> reasonsOf(const CycleView& view, const HouseStyle& style);

/// The labels of its items; empty where it is of the load.
[[nodiscard]] QString itemsText(const Reason& reason, const CycleView& view);

} // namespace loadwarden::paper
