#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {

void inTest(const View& view, std::size_t index, FindingSink& sink)
{
    const std::string& label = view.load.items[index].label;
    for (const PastCycle& past : view.history) {
        const auto& inside = past.cycle->items;
        if (past.cycle->kind != CycleKind::load
            && std::find(inside.begin(), inside.end(), label) != inside.end()) {
            sink.add(Key::itemInTest, Outcome::fails, past.cycle->lot);
        }
    }
}

} // namespace loadwarden::rules
