// Why an indicator or its reading does not count (RULES.md, 4a), and what may mend it.
#include "core/words/sentences.h"

namespace loadwarden {

bool Sentences::isOfVial() const noexcept
{
    return isVoidVial() || f_.key == Key::biNotCounted || f_.key == Key::biNotRegistered;
}

bool Sentences::isVoidVial() const noexcept
{
    return f_.key == Key::biVoid || f_.key == Key::testBiVoid;
}

bool Sentences::isOfReview() const noexcept
{
    return f_.key == Key::reviewNotCounted;
}

bool Sentences::isEntry() const noexcept
{
    return f_.key == Key::printoutMissing || f_.key == Key::physicalMissing
           || f_.key == Key::itemNotChecked;
}

Words Sentences::withEntryCause(const QString& missing, const QString& notCounted,
                                const QString& next) const
{
    return hasCause() ? withCause({notCounted, next}, {}) : Words{missing, next};
}

Words Sentences::withCause(Words words, const QString& otherwise) const
{
    if (!hasCause()) {
        return words;
    }
    const Words why = because();
    words.says = tr("%1 %2", "a finding, then its cause").arg(words.says, why.says);
    if (!words.next.isEmpty()) {
        words.next =
            otherwise.isEmpty()
                ? why.next
                : tr("%1 %2", "what may mend it, then what to do if not").arg(why.next, otherwise);
    }
    return words;
}

Words Sentences::because() const
{
    switch (f_.cause) {
    case Cause::none: break;
    case Cause::productUnknown:
        return {tr("Its product is not named, or is not among the products of this record."),
                tr("Record its product as the package names it, with what its instructions for use "
                   "state.")};
    case Cause::productUnfit:
        return {isOfVial() ? tr("Its product is recorded as a chemical indicator.")
                           : tr("Its product is recorded as a biological indicator."),
                tr("Compare its product with the package, and correct what was typed wrong.")};
    case Cause::lotUnknown:
        return {tr("Its lot is not named, or is not among the lots of its product."),
                tr("Record its lot from the package, with the expiry date.")};
    case Cause::lotWithoutDate:
        return {tr("No expiry date that can be right is recorded for its lot."),
                tr("Record the expiry date of its lot from the package.")};
    case Cause::incubatorUnknown:
        return {tr("The incubator that it names is not among the incubators of this record, so "
                   "that nobody knows whether it was in range."),
                tr("Record that incubator, with the times at which it was out of range, or correct "
                   "its name.")};
    case Cause::readoutImplausible:
        return {tr("Its product is recorded with a shorter readout than any has for this method."),
                tr("Look its readout up in the product's instructions for use, and record it in "
                   "minutes. Hours may have been typed for minutes.")};
    case Cause::lotExpired:
        return {tr("Its lot had expired on the day of the cycle."),
                tr("Compare lot and expiry date with the package, and correct what was typed "
                   "wrong. Take every expired indicator out of use.")};
    case Cause::lotRecalled:
        return {tr("Its lot was recalled by its maker, or taken out by this facility: nothing of it "
                   "counts, also where it was read before."),
                tr("Use an indicator of another lot. Where the cycle is over and none was in it, "
                   "process the load again. Follow the maker's notice.")};
    case Cause::method:
        if (f_.key == Key::itemCycleNotAllowed) {
            return {tr("They allow another method."), compareWithInstructions()};
        }
        return {tr("Its product is not meant for the method of this cycle."),
                tr("Compare its product and the method of the cycle with the instructions for use, "
                   "and correct what was typed wrong.")};
    case Cause::cycleType:
        return {tr("Its product is meant for certain cycle types, and the type of this cycle is "
                   "another or is not recorded."),
                tr("Compare the cycle type with the product's instructions for use, and record or "
                   "correct it.")};
    case Cause::type:
        return {tr("Its type is not one of those that count at this place."),
                tr("Compare type and place with the instructions for use and facility policy, and "
                   "correct what was typed wrong.")};
    case Cause::species:
        return {tr("Its test organism is not that for the method of this cycle."),
                tr("Compare the organism with the product's instructions for use, and correct what "
                   "was typed wrong.")};
    case Cause::usedElsewhere:
        return {tr("It is recorded as used in another cycle, too."),
                tr("Find out in which cycle it was, and correct the record that is wrong.")};
    case Cause::notActivated:
        return {tr("Its product must be activated after the cycle and before incubation, and no "
                   "signed activation in that time is recorded."),
                tr("If it was activated then, have the person who did it record it under their own "
                   "name, and check the times.")};
    case Cause::processIndicator:
        return {tr("The process indicator on it did not change, as if it had not been in a "
                   "cycle."),
                tr("Look at the process indicator again, and correct what was typed wrong.")};
    case Cause::incubatedEarly:
        return {tr("Its incubation began before the cycle had ended."),
                tr("Check the end of the cycle and the start of incubation, and correct what was "
                   "typed wrong.")};
    case Cause::incubatedLate:
        return {tr("Its incubation began later after the cycle than its instructions for use "
                   "allow."),
                tr("Check the end of the cycle and the start of incubation, and correct what was "
                   "typed wrong.")};
    case Cause::controlDead:
        return {tr("Its control did not grow, so that no growth in it shows nothing."),
                tr("Find out why the control did not grow before more of that lot or that "
                   "incubator is relied on.")};
    case Cause::controlMissing:
        return {tr("There is no control for it that counts: of its product and lot, in date, and "
                   "in the same incubator at that time."),
                tr("If a control was incubated, record it with product, lot, incubator, start and "
                   "reading.")};
    case Cause::lost:
        return {tr("It cannot be obtained."),
                tr("If it is found after all, correct the statement that it is lost, and read "
                   "it.")};
    case Cause::unsignedAct:
        if (isOfReview()) {
            return {tr("It has no name, or was recorded by someone who may only look."),
                    tr("Have the reviewer record it under their own name.")};
        }
        if (isEntry()) {
            return {tr("It has no name, or was recorded by someone who may only look."),
                    tr("Have the person who did it record it under their own name.")};
        }
        return {tr("Its reading has no name, or was recorded by someone who may only look."),
                tr("Have the person who read it record the reading under their own name.")};
    case Cause::timesImpossible:
        if (isOfReview() || isEntry()) {
            return {tr("It was recorded before it happened, or lies in the future."),
                    tr("Check the clock of the workstation and its time, and correct what is "
                       "wrong.")};
        }
        return {tr("Its reading was recorded before it happened, or lies in the future."),
                tr("Check the clock of the workstation and the time of the reading, and correct "
                   "what is wrong.")};
    case Cause::otherResponse:
        return {tr("What was recorded as seen is not how its product answers."),
                tr("Look at it again by the product's directions, and record what you see.")};
    case Cause::voided:
        return isVoidVial() ? Words{tr("A lead declared it void."),
                                    tr("Ask the lead for the reason, and see that it is recorded.")}
                            : Words{tr("Its reading was declared void."),
                                    tr("Read it again by the product's directions, and record what "
                                       "you see.")};
    case Cause::readEarly:
        if (isEntry()) {
            return {tr("It was made before the cycle had ended, or the end of the cycle is not "
                       "recorded."),
                    tr("See that the end of the cycle is recorded, and record it after that.")};
        }
        return isOfVial()
                   ? Words{tr("The reading came before its full time of incubation, or the end of "
                              "the "
                              "cycle is not recorded."),
                           tr("See that the end of the cycle is recorded. Read it again now that "
                              "the full time is over, with its control, and record both.")}
                   : Words{tr("It was read before the cycle had ended, or the end of the cycle is "
                              "not recorded."),
                           tr("See that the end of the cycle is recorded. Read it after that, and "
                              "record what you see.")};
    case Cause::incubator:
        return {tr("The reading came while its incubator was out of range, or too soon after that: "
                   "the time of incubation begins anew when the incubator is back in range."),
                tr("Leave it in an incubator that is in range for the full time, then read it with "
                   "its control, and record both.")};
    case Cause::readLate:
        return {tr("It was read later than its instructions for use allow."),
                tr("Check the time of the reading, and correct what was typed wrong.")};
    case Cause::voider:
        return {tr("Who read it also took out the rejected reading of the same indicator."),
                tr("Have another person read it by the product's directions, and record what they "
                   "see.")};
    case Cause::itemsInside: return {tr("Items were in the test cycle."), checkTest()};
    case Cause::aborted: return {tr("The test cycle was aborted."), checkTest()};
    case Cause::notSteam: return {tr("It did not run in a steam cycle."), checkTest()};
    case Cause::sheetSpoiled:
        return {tr("Its sheet does not count: product, lot, expiry date or another use of it are "
                   "against it."),
                checkTest()};
    case Cause::chamberNotEmpty: return {tr("The chamber was not empty."), checkTest()};
    case Cause::outsideDirections:
        return {tr("Time or temperature of exposure lay outside its directions."), checkTest()};
    case Cause::dryingRun:
        return {tr("A drying phase ran, which its directions forbid."), checkTest()};
    case Cause::airRemoval:
        return {tr("They ask for another way of removing air."), compareWithInstructions()};
    case Cause::temperature:
        return {style_.fahrenheit
                    ? tr("They ask for another temperature. Hotter is not more: 275 °F for 3 min "
                         "does not stand in for 270 °F for 4 min.")
                    : tr("They ask for another temperature. Hotter is not more: 135 °C for 3 min "
                         "does not stand in for 132 °C for 4 min."),
                compareWithInstructions()};
    case Cause::exposureShort:
        return {tr("They ask for a longer exposure than the program is set to."),
                compareWithInstructions()};
    case Cause::exposureLong:
        return {tr("They allow no exposure as long as the program is set to."),
                compareWithInstructions()};
    case Cause::drying:
        return {tr("They ask for a longer drying than the program is set to."),
                compareWithInstructions()};
    case Cause::program: return {tr("They name another program."), compareWithInstructions()};
    case Cause::model:
        return {tr("They name another model of sterilizer."), compareWithInstructions()};
    case Cause::noFinding:
        return {tr("No such finding asks for a review here."),
                tr("Compare finding and subject in the review with the findings of this load.")};
    case Cause::role:
        return {tr("Its author held no role that may answer this finding."),
                tr("Have a lead or supervisor review it, as the finding says.")};
    case Cause::noWhy:
        return {tr("It gives no reason."),
                tr("Have the reviewer write why the load is not affected.")};
    case Cause::beforeEnd:
        return {tr("It was given before the load's cycle had ended."),
                tr("Have it reviewed after the end of the cycle.")};
    case Cause::newer:
        return {tr("Something newer was recorded than its author had seen, such as a start of "
                   "incubation or a reading, or it names as seen what came after it."),
                tr("Have it reviewed again with everything that is recorded now.")};
    case Cause::raisedIt:
        return {tr("Its author is the one whose entry raised the finding."),
                tr("Have somebody else review it, as the finding says.")};
    case Cause::ownLoad:
        return {tr("Its author ran this load."),
                tr("Have a lead who did not run the load review it, or a supervisor.")};
    }
    return {};
}

QString Sentences::checkTest()
{
    return tr("Compare the record of the test with what was done, and correct what was typed "
              "wrong.");
}

QString Sentences::compareWithInstructions()
{
    return tr("Compare the recorded instructions for use and the cycle specification with their "
              "documents, and correct what was typed wrong.");
}

} // namespace loadwarden
