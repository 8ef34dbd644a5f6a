#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void external(const View& view, std::size_t index, FindingSink& sink)
{
    const Item& item = view.load.items[index];
    const ItemIndicators& indicators = view.items[index];
    const ChemicalJudgement& judged = indicators.external;
    if (judged.state == ChemicalState::rejected) {
        if (!judged.absent) {
            sink.add(Key::itemExternalRejected, Outcome::fails);
        } else if (indicators.externalAsked) {
            sink.add(Key::itemExternalAbsent, Outcome::fails);
        }
        return;
    }
    if (!indicators.externalAsked || judged.state == ChemicalState::accepted) {
        return;
    }
    if (item.external && isLost(*item.external, judged.state, view.now)) {
        Finding& lost = sink.add(Key::itemExternalLost, Outcome::fails);
        lost.cause = judged.state == ChemicalState::invalid ? judged.cause : Cause::none;
    } else if (judged.state == ChemicalState::unclear) {
        sink.add(Key::itemExternalUnclear, Outcome::waits);
    } else if (judged.state == ChemicalState::invalid) {
        sink.add(Key::itemExternalInvalid, Outcome::waits).cause = judged.cause;
    } else {
        sink.add(Key::itemExternalNotRead, Outcome::waits);
    }
}

} // namespace loadwarden::rules
