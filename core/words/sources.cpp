#include "core/words/say.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {

namespace {

struct Sources {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    static QString of(Key key);
};

/// Paid standards are named by document and topic. "(restated)": known from a text that restates
/// it.
QString Sources::of(Key key)
{
    switch (key) {
    case Key::orderDisagrees:
    case Key::orderOffsetUnknown:
    case Key::orderHistoryDisagrees:
    case Key::orderOverlaps: return tr("common practice, no source");

    case Key::actUnsigned:
        return tr("21 CFR 11.50, 11.70: a signature shows name, date and time, and meaning");
    case Key::actTimesImpossible:
    case Key::actRecordedLate: return tr("common practice, no source");

    case Key::recordMissing: return tr("ANSI/AAMI ST79: what a load record holds (restated)");
    case Key::recordTimes:
    case Key::recordTooShort:
    case Key::recordMethodUnknown: return tr("common practice, no source");

    case Key::printoutLost:
    case Key::printoutMissing:
        return tr("ANSI/AAMI ST79: the physical record belongs to the load record (restated)");
    case Key::printoutWrongCycle:
    case Key::printoutIncomplete:
    case Key::printoutOffsetUnknown:
    case Key::printoutCounterUsed:
    case Key::printoutDiffers:
    case Key::printoutConfirmed: return tr("common practice, no source");

    case Key::cycleAborted:
        return tr("common practice, no source; gloves after an aborted hydrogen peroxide cycle: "
                  "public training texts (restated)");
    case Key::cycleNotEnded:
    case Key::cycleAbortedDrying:
    case Key::alarmExposure:
    case Key::alarmNotListed: return tr("common practice, no source");

    case Key::sterilizerServiceUnknown:
    case Key::sterilizerNotInService:
        return tr("ANSI/AAMI ST79: qualification after installation, repair or failure (restated)");
    case Key::sterilizerHeld:
    case Key::sterilizerHoldNotKnown:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), "
            "Table 12: out of service after a positive biological indicator; ANSI/AAMI ST79: "
            "qualification after a process failure (restated)");
    case Key::sterilizerTakenOutDuring: return tr("common practice, no source");

    case Key::processFailureOpen:
        return tr("ANSI/AAMI ST79: process failures and their causes (restated)");

    case Key::scopeInPositive:
    case Key::scopeNoHistory:
    case Key::scopeOtherType:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), "
            "Table 12 and text on positive biological indicators (restated); ANSI/AAMI ST79: "
            "recall back to the last negative (from memory)");

    case Key::airRemovalMethodUnknown:
    case Key::airRemovalPutRightLate:
    case Key::airRemovalFailed:
    case Key::airRemovalNotRead:
    case Key::airRemovalVoid:
    case Key::airRemovalNoneYet:
    case Key::airRemovalNoneMade:
    case Key::airRemovalMadeAfter:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008) "
            "and public training texts: Bowie-Dick test (restated)");
    case Key::airRemovalFailedAfter: return tr("common practice, no source");

    case Key::physicalBelow:
        return tr(
            "the cycle specification, from makers' instructions for use; usual steam cycles: "
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), "
            "Table 7");
    case Key::physicalLost:
    case Key::physicalMissing:
        return tr("ANSI/AAMI ST79: the physical record belongs to the load record (restated)");
    case Key::physicalLimitImplausible:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): "
            "the shortest and coolest cycles of steam, ethylene oxide and (restated) dry heat; "
            "drying and hydrogen peroxide common practice, no source");
    case Key::physicalSettingsMissing:
    case Key::physicalLimitsDisagree:
    case Key::physicalLimitsMissing:
    case Key::physicalLimitMilder:
    case Key::physicalImplausible:
    case Key::physicalAtmosphereUnknown:
    case Key::physicalNotJudged:
    case Key::physicalDryingShort:
    case Key::physicalAbove: return tr("common practice, no source");

    case Key::traceExposureShort:
    case Key::traceBelow:
        return tr(
            "the cycle specification, from makers' instructions for use; usual steam cycles: "
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), "
            "Table 7");
    case Key::traceMissing:
    case Key::traceOtherCycle:
    case Key::traceOtherSpecification:
    case Key::traceUnusable:
    case Key::traceInterrupted:
    case Key::traceAbove:
    case Key::traceNotSaturated:
    case Key::traceDryingShort:
    case Key::traceNotShown:
    case Key::traceDiffers: return tr("common practice, no source");

    case Key::verificationByOperator:
    case Key::verificationMissing:
    case Key::verificationStale: return tr("common practice, no source");

    case Key::pcdRejected:
        return tr("AAMI: a chemical indicator that suggests inadequate processing (restated)");
    case Key::pcdMissing:
        return tr(
            "ANSI/AAMI ST79: chemical and biological indicator in one process challenge device "
            "for implants; required elsewhere by facility policy, common practice, no source");
    case Key::pcdLost:
    case Key::pcdLostNoted:
    case Key::pcdEmpty:
    case Key::pcdNoneRecorded:
    case Key::pcdUnclear:
    case Key::pcdInvalidNoted:
    case Key::pcdInvalid:
    case Key::pcdNotRead: return tr("common practice, no source");

    case Key::implantBiPositive:
    case Key::implantIndicatorRejected:
    case Key::implantMissing:
    case Key::implantPending:
    case Key::implantIndicatorMissing:
    case Key::implantImpossible:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): "
            "loads with implants are held until the biological indicator is negative "
            "(restated); ANSI/AAMI ST79: biological indicator and type 5 integrator in one "
            "process challenge device");

    case Key::biPositive:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), "
            "Table 12; other methods than steam: its text (restated); ANSI/AAMI ST79: recall "
            "back to the last negative (from memory)");
    case Key::biControl:
    case Key::biVoid:
        return tr("CDC (2003), EN 285: an unexposed control of the same lot must grow; the rest "
                  "common practice, no source");
    case Key::biIncubating:
    case Key::biNotCounted:
    case Key::biDue:
        return tr(
            "the product's instructions for use; FDA guidance on biological indicators (2007): "
            "short incubation (restated)");
    case Key::biMissing:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008) "
            "and ANSI/AAMI ST79: every load with an implant (restated); ANSI/AAMI ST41: every "
            "ethylene oxide load (from memory)");
    case Key::biPositiveElsewhere:
    case Key::biUnclear:
    case Key::biNotRegistered:
    case Key::biNotStarted:
    case Key::biProcessIndicator:
    case Key::biLost: return tr("common practice, no source");

    case Key::routinePending:
    case Key::routineNone:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008) "
            "and ANSI/AAMI ST79: steam at least weekly, preferably each day of use (restated); "
            "ANSI/AAMI ST58: hydrogen peroxide (from memory)");

    case Key::packagesOneRejected:
    case Key::packagesSeveralRejected:
        return tr(
            "AAMI: a package whose chemical indicator suggests inadequate processing, and the "
            "decision about its load (restated); the numbers common practice, no source");
    case Key::packagesWet:
        return tr("ANSI/AAMI ST79: wet packages (restated); the number common practice, no source");
    case Key::packagesAllUnchanged:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): "
            "an external indicator shows exposure (restated)");

    case Key::aerationNotStated:
    case Key::aerationImplausible:
    case Key::aerationRunning:
    case Key::aerationEndAwaited:
    case Key::aerationNotDone:
        return tr(
            "makers' instructions for use; CDC Guideline for Disinfection and Sterilization in "
            "Healthcare Facilities (2008): ethylene oxide, aeration");

    case Key::peroxideItemUnsuitable:
        return tr("public training texts: what hydrogen peroxide must not meet (restated); the "
                  "effect on the load common practice, no source");

    case Key::immediateForStorage:
    case Key::immediateStorageUnknown:
    case Key::immediateReasonMissing:
    case Key::immediateCaseMissing:
        return tr("Joint Commission, CMS and trade press (2014): record of immediate use");
    case Key::immediatePurposeDiffers:
    case Key::immediateNotSteam: return tr("common practice, no source");

    case Key::reviewNotCounted:
    case Key::voidingBadAnswer:
    case Key::voidingNotCounted: return tr("common practice, no source");
    case Key::reviewNotIsolated: return tr("AAMI: the decision about a whole load (restated)");

    case Key::itemInTwoLoads:
    case Key::itemRecordedLate:
        return tr("ANSI/AAMI ST79: contents in the load record (restated); how it is shown common "
                  "practice, no source");

    case Key::itemExternalAbsent:
    case Key::itemExternalRejected:
    case Key::itemExternalNotRead:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): "
            "an external indicator on every package unless the internal one can be seen "
            "(restated)");
    case Key::itemExternalUnclear:
    case Key::itemExternalInvalid:
    case Key::itemExternalLost: return tr("common practice, no source");

    case Key::itemWet: return tr("ANSI/AAMI ST79: wet packages (restated)");
    case Key::itemLabelDiffers: return tr("APIC: what a package label shows (restated)");
    case Key::itemTorn:
    case Key::itemUnsealed:
    case Key::itemNotChecked:
    case Key::itemCheckLost:
    case Key::itemNotCooled:
    case Key::itemPackagingNotStated:
    case Key::itemPackagingExpired: return tr("common practice, no source");

    case Key::itemInternalRejected:
    case Key::itemInternalUnclear:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): "
            "a package whose internal indicator is unresponsive or unclear is not used "
            "(restated)");
    case Key::itemInternalAbsent:
    case Key::itemInternalLost:
    case Key::itemInternalLostNoted:
    case Key::itemInternalOnOpening:
    case Key::itemInternalInvalid:
    case Key::itemInternalNotRead:
    case Key::itemInternalMissing: return tr("common practice, no source");

    case Key::itemCycleNotAllowed:
        return tr("the device's instructions for use; dynamic air removal at 132 °C for 4 min: CDC "
                  "Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), "
                  "Table 7; 135 °C for 3 min: ANSI/AAMI ST79 (from memory)");
    case Key::itemCycleNoneRecorded:
    case Key::itemCycleValueMissing:
        return tr("the device's instructions for use; common practice, no source");
    case Key::itemCycleExtended: return tr("common practice, no source");

    case Key::itemImplantImmediateUse:
        return tr(
            "Joint Commission, CMS and trade press (2014): implants for immediate use only as "
            "a documented emergency");
    case Key::itemImplantWaits:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008): "
            "loads with implants are held until the biological indicator is negative "
            "(restated)");

    case Key::itemPeroxideUnsuitable:
    case Key::itemPeroxideUnknown:
        return tr("public training texts: what hydrogen peroxide must not meet (restated)");

    case Key::itemInTest: return tr("common practice, no source");

    case Key::testNotSteam:
    case Key::testSheetFailed:
    case Key::testChamberNotEmpty:
    case Key::testOutsideDirections:
    case Key::testReadLate:
    case Key::testNoWarmUp:
        return tr(
            "CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008) "
            "and public training texts: Bowie-Dick test (restated)");
    case Key::testLeakTooHigh:
    case Key::testLeakTooShort:
        return tr("HTM 2010 and EN 285 practice texts: leak test (restated)");
    case Key::testPhysicalFailed:
    case Key::testIndicatorRejected:
    case Key::testBiPositive:
    case Key::testPhysicalMissing:
    case Key::testIndicatorPending:
    case Key::testBiPending: return tr("ANSI/AAMI ST79: qualification (restated)");
    case Key::testBiVoid:
        return tr("CDC (2003), EN 285: an unexposed control of the same lot must grow; the rest "
                  "common practice, no source");
    case Key::testItemsInside:
    case Key::testNotEnded:
    case Key::testTimes:
    case Key::testAborted:
    case Key::testSheetLost:
    case Key::testSheetSpoiled:
    case Key::testDryingRun:
    case Key::testNotRead:
    case Key::testUnclear:
    case Key::testDirectionsMissing:
    case Key::testLeakImplausible:
    case Key::testExposureUnknown: return tr("common practice, no source");
    }
    return {};
}

} // namespace

std::string sourceOf(Key key)
{
    return Sources::of(key).toStdString();
}

} // namespace loadwarden
