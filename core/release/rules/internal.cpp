#include "core/release/rules/rules.h"

namespace loadwarden::rules {
namespace {

/// Whether an item is in a rigid container of an immediate-use cycle, which stays closed until it
/// is used.
bool isReadOnOpening(const View& view, const Item& item)
{
    return view.isImmediateUse() && view.isIn(PackageForm::rigidContainer, item);
}

void judgeOne(const View& view, const Item& item, const ChemicalIndicator& indicator,
              const ChemicalJudgement& judged, bool required, FindingSink& sink)
{
    const std::string_view place = indicator.place;
    if (isLost(indicator, judged.state, view.now)) {
        sink.addOnce(required ? Key::itemInternalLost : Key::itemInternalLostNoted,
                     required ? Outcome::fails : Outcome::note, place);
        return;
    }
    switch (judged.state) {
    case ChemicalState::accepted: break;
    case ChemicalState::rejected:
        sink.addOnce(judged.absent ? Key::itemInternalAbsent : Key::itemInternalRejected,
                     Outcome::fails, place);
        break;
    case ChemicalState::unclear:
        sink.addOnce(Key::itemInternalUnclear, Outcome::waits, place);
        break;
    case ChemicalState::invalid:
    case ChemicalState::unread:
        if (required && !judged.spoiled && isReadOnOpening(view, item)) {
            sink.addOnce(Key::itemInternalOnOpening, Outcome::note, place);
        } else if (judged.state == ChemicalState::invalid) {
            sink.addOnce(Key::itemInternalInvalid, required ? Outcome::waits : Outcome::note, place,
                         judged.cause);
        } else if (required) {
            sink.addOnce(Key::itemInternalNotRead, Outcome::waits, place);
        }
        break;
    }
}

} // namespace

void internal(const View& view, std::size_t index, FindingSink& sink)
{
    const Item& item = view.load.items[index];
    const bool required = view.isImmediateUse() || item.internalVisible;
    if (required && item.internals.empty()) {
        sink.add(Key::itemInternalMissing, Outcome::waits);
    }
    const auto judged = view.internalsOf(index);
    for (std::size_t i = 0; i < judged.size(); ++i) {
        judgeOne(view, item, item.internals[i], judged[i], required, sink);
    }
}

} // namespace loadwarden::rules
