#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void inTest(const View& view, std::size_t index, FindingSink& sink)
{
    for (const std::int32_t test : view.load.items[index].inTests) {
        sink.add(Key::itemInTest, Outcome::fails,
                 view.history[static_cast<std::size_t>(test)].cycle->lot);
    }
}

} // namespace loadwarden::rules
