#include "core/desk/sheet_part.h"

#include <algorithm>

namespace loadwarden {

SheetPart partOf(const Finding& finding)
{
    switch (ruleOf(finding.key)) {
    case RuleId::order:
    case RuleId::record:
    case RuleId::cycleEnd: return SheetPart::cycle;
    case RuleId::printout:
    case RuleId::physical:
    case RuleId::verification: return SheetPart::printout;
    case RuleId::trace:
        return finding.key == Key::traceDiffers ? SheetPart::printout : SheetPart::trace;
    case RuleId::sterilizer:
    case RuleId::processFailure:
    case RuleId::scope:
    case RuleId::airRemoval: return SheetPart::sterilizer;
    case RuleId::pcd:
    case RuleId::internal:
    case RuleId::external: return SheetPart::indicators;
    case RuleId::packages:
        return finding.key == Key::packagesWet ? SheetPart::packages : SheetPart::indicators;
    case RuleId::implant:
        return finding.key == Key::implantIndicatorMissing
                       || finding.key == Key::implantIndicatorRejected
                   ? SheetPart::indicators
                   : SheetPart::biologicals;
    case RuleId::bi:
    case RuleId::routineBi: return SheetPart::biologicals;
    case RuleId::package: return SheetPart::packages;
    case RuleId::aeration: return SheetPart::aeration;
    case RuleId::immediate: return SheetPart::immediateUse;
    case RuleId::peroxide:
    case RuleId::wasInside:
    case RuleId::cycleAllowed:
    case RuleId::itemImplant:
    case RuleId::itemPeroxide:
    case RuleId::inTest: return SheetPart::contents;
    case RuleId::test: return SheetPart::test;
    case RuleId::acts:
    case RuleId::reviews:
    case RuleId::voiding: return SheetPart::history;
    }
    return SheetPart::history;
}

bool isKnownBeforeTheEnd(const Finding& finding)
{
    switch (partOf(finding)) {
    case SheetPart::sterilizer:
    case SheetPart::contents:
    case SheetPart::immediateUse: return true;
    default: return finding.outcome == Outcome::fails || finding.outcome == Outcome::review;
    }
}

bool isBeforeAerationsEnd(const std::vector<Finding>& findings)
{
    return std::ranges::any_of(findings, [](const Finding& finding) {
        return finding.key == Key::aerationRunning || finding.key == Key::aerationEndAwaited
               || finding.key == Key::aerationNotDone;
    });
}

bool isForUnloading(const Finding& finding)
{
    return finding.key == Key::itemNotChecked || finding.key == Key::itemExternalNotRead
           || finding.key == Key::itemInternalNotRead;
}

} // namespace loadwarden
