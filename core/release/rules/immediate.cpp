#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void immediate(const View& view, FindingSink& sink)
{
    const auto& stated = view.load.immediateUse;
    if (!view.isImmediateUse()) {
        const bool says =
            stated
            && (isNamed(stated->reason) || isNamed(stated->caseReference) || stated->forStorage);
        if (view.specification != nullptr && view.purpose == Purpose::routine && says) {
            sink.add(Key::immediatePurposeDiffers, Outcome::waits);
        }
        return;
    }
    static const ImmediateUse nothing;
    const ImmediateUse& use = stated ? *stated : nothing;
    if (view.method != Method::steam && view.method != Method::unknown) {
        sink.add(Key::immediateNotSteam, Outcome::fails);
    }
    if (!use.forStorage) {
        sink.add(Key::immediateStorageUnknown, Outcome::waits);
    } else if (*use.forStorage) {
        sink.add(Key::immediateForStorage, Outcome::fails);
    }
    if (!isNamed(use.reason)) {
        sink.add(Key::immediateReasonMissing, Outcome::waits);
    }
    if (!isNamed(use.caseReference)) {
        sink.add(Key::immediateCaseMissing, Outcome::waits);
    }
}

} // namespace loadwarden::rules
