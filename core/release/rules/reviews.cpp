#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void reviews(const View& view, FindingSink& sink)
{
    for (const Review& review : view.load.reviews) {
        if (review.answer == ReviewAnswer::notIsolated) {
            sink.addOnce(Key::reviewNotIsolated, Outcome::fails, review.finding);
        }
    }
    sink.sayUncountedReviews();
}

} // namespace loadwarden::rules
