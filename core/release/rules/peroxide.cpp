#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void peroxide(const View& view, FindingSink& sink)
{
    if (view.method != Method::hydrogenPeroxide) {
        return;
    }
    for (const Item& item : view.load.items) {
        if (!isUnsuitableForPeroxide(item)) {
            continue;
        }
        if (item.recorded) {
            sink.addReview(Key::peroxideItemUnsuitable, Reviewer::lead, item.label, *item.recorded);
        } else {
            sink.addReview(Key::peroxideItemUnsuitable, Reviewer::lead, item.label,
                           Instant{INT64_MIN}, {});
        }
    }
}

} // namespace loadwarden::rules
