#include "core/release/rules/rules.h"

namespace loadwarden::rules {

bool isUnsuitableForPeroxide(const Item& item)
{
    const PeroxideFacts& facts = item.peroxide;
    return facts.cellulose == true || facts.liquidOrPowder == true || facts.moist == true
           || facts.lumen == Lumen::unlisted;
}

void itemPeroxide(const View& view, std::size_t index, FindingSink& sink)
{
    const Item& item = view.load.items[index];
    const PeroxideFacts& facts = item.peroxide;
    if (isUnsuitableForPeroxide(item)) {
        sink.add(Key::itemPeroxideUnsuitable, Outcome::fails);
    } else if (!facts.cellulose || !facts.liquidOrPowder || !facts.moist || !facts.lumen) {
        sink.add(Key::itemPeroxideUnknown, Outcome::waits);
    }
}

} // namespace loadwarden::rules
