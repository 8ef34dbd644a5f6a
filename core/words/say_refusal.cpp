#include "core/words/say_refusal.h"

#include "core/words/say_act.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {
namespace {

/// The sentences of one refusal.
class RefusalSentences {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    RefusalSentences(const Refusal& refusal, const HouseStyle& style) : r_(refusal), style_(style)
    {
    }

    [[nodiscard]] Told told() const
    {
        const auto [says, next] = pair();
        return {says.toStdString(), next.toStdString()};
    }

private:
    struct Pair {
        QString says;
        QString next;
    };

    [[nodiscard]] QString subject() const { return QString::fromStdString(r_.subject); }
    [[nodiscard]] QString detail() const { return QString::fromStdString(r_.detail); }
    [[nodiscard]] QString entry() const { return QString::number(r_.seq); }
    [[nodiscard]] QString until() const
    {
        // Up to a minute late, never early.
        return QString::fromStdString(
            sayTime(*r_.until + Duration::minutes(1) - Duration::milliseconds(1), style_));
    }
    [[nodiscard]] QString verdict() const
    {
        return QString::fromStdString(say(r_.verdict.value_or(Verdict::quarantine)));
    }
    [[nodiscard]] QString since() const
    {
        QString list;
        for (const CameSince& each : r_.since) {
            const QString kind = QString::fromStdString(sayKind(each.kind));
            const QString by =
                each.by.empty() ? tr("the program") : QString::fromStdString(each.by);
            QString one = kind;
            if (!each.thing.empty()) {
                one = tr("%1 of %2").arg(one, QString::fromStdString(each.thing));
            }
            if (!each.value.empty()) {
                one = tr("%1: %2").arg(one, QString::fromStdString(each.value));
            }
            one = tr("%1 (by %2, %3, entry %4)")
                      .arg(one, by, QString::fromStdString(sayTime(each.at, style_)),
                           QString::number(each.seq));
            list += list.isEmpty() ? one : tr("; %1").arg(one);
        }
        return list;
    }
    [[nodiscard]] QString findings() const
    {
        QString list;
        for (const Finding& each : r_.findings) {
            const QString one = QString::fromStdString(say(each, style_).says);
            list += list.isEmpty() ? one : tr(" %1").arg(one);
        }
        return list;
    }
    [[nodiscard]] QString rightPlace() const
    {
        switch (r_.place.value_or(ProductPlace::chemical)) {
        case ProductPlace::chemical: return tr("a chemical indicator that is no Bowie-Dick sheet");
        case ProductPlace::vial: return tr("a biological indicator");
        case ProductPlace::sheet: return tr("a Bowie-Dick sheet");
        }
        return {};
    }

    [[nodiscard]] Pair pair() const
    {
        switch (r_.why) {
        case RefusalWhy::personUnknown:
            return {tr("Nobody of the staff has the id, badge or name “%1”.").arg(subject()),
                    tr("Scan the badge again; who is new is registered by a supervisor.")};
        case RefusalWhy::personInactive:
            return {tr("%1 is registered as not working here any more.").arg(subject()),
                    tr("A supervisor can make the entry active again.")};
        case RefusalWhy::pinNotSet:
            return {tr("%1 has no PIN yet.").arg(subject()),
                    tr("A supervisor sets a first one together with the person.")};
        case RefusalWhy::pinWrong:
            return r_.until
                       ? Pair{tr("This is not the PIN of %1.").arg(subject()),
                              tr("Wait until %1 before you try again. Who has forgotten the PIN "
                                 "asks a supervisor for a new one.")
                                  .arg(until())}
                       : Pair{tr("This is not the PIN of %1.").arg(subject()),
                              tr("Type it again.")};
        case RefusalWhy::pinWait:
            return {tr("The PIN of %1 was wrong several times; the next try counts from %2 on.")
                        .arg(subject(), until()),
                    tr("Wait. Who has forgotten the PIN asks a supervisor for a new one.")};
        case RefusalWhy::pinTooShort:
            return {tr("A PIN has 6 to 12 digits and nothing else."), tr("Choose another.")};
        case RefusalWhy::pinTooEasy:
            return {tr("A PIN of one digit repeated, or of digits in a row, is guessed at once."),
                    tr("Choose another.")};
        case RefusalWhy::pinNeeded:
            return {tr("This is signed, and there is no PIN given for it."),
                    tr("Give the PIN of who is signed in.")};
        case RefusalWhy::roleTooLow:
            return {r_.subject.empty()
                        ? tr("This is done in another role.")
                        : tr("This is done by somebody in the role “%1”, or a higher one.")
                              .arg(subject()),
                    tr("Ask somebody who has that role to sign in and do it.")};
        case RefusalWhy::badgeTaken:
            return {tr("The badge “%1” reads as somebody else's badge, id or name.").arg(subject()),
                    tr("Check the badge; one badge is one person.")};
        case RefusalWhy::paperRole:
            return {tr("The role of %1 is another than was typed.").arg(subject()),
                    tr("Type the role in which the person is registered.")};
        case RefusalWhy::lastSupervisor:
            return {tr("Nobody would be left who can sign as a supervisor."),
                    tr("Register another supervisor first.")};
        case RefusalWhy::unknown:
            return {tr("There is nothing with the name “%1” in this journal.").arg(subject()),
                    tr("Check the name, or register or reserve it first.")};
        case RefusalWhy::severalBear:
            return {
                tr("Several loads bear the lot control number %1: %2.").arg(subject(), detail()),
                tr("Name the one that you mean by its id.")};
        case RefusalWhy::alreadyThere:
            return {tr("There is “%1” in this journal already.").arg(subject()),
                    tr("Take another id; what is there is corrected, not entered again.")};
        case RefusalWhy::badId:
            return {tr("A sterilizer cannot have the id “%1”.").arg(subject()),
                    tr("A sterilizer's id is sz- and 1 to 8 digits or capital letters, with which "
                       "its lot control numbers begin.")};
        case RefusalWhy::malformed:
            return {tr("This is not recorded as it was typed (%1): %2.").arg(subject(), trimmed()),
                    tr("Correct it, and record it again.")};
        case RefusalWhy::notPlaced:
            return {tr("There is no “%1” in the cycle %2.").arg(subject(), detail()),
                    tr("Check the label and the lot control number.")};
        case RefusalWhy::otherDoor:
            return {tr("What is of the kind %1 is not recorded like this.").arg(subject()),
                    tr("Use the command that there is for it.")};
        case RefusalWhy::notReleased:
            return {tr("The item “%1” has not been released.").arg(subject()),
                    tr("Keep it here until its load is signed as released.")};
        case RefusalWhy::wrongProduct:
            return {tr("Here goes %2, and the product “%1” is registered as something else.")
                        .arg(subject(), rightPlace()),
                    tr("Look at what is in your hand, and name its product; if the register says "
                       "the wrong kind, a supervisor corrects the register.")};
        case RefusalWhy::notALoad:
            return {tr("%1 is a test cycle, not a load.").arg(subject()),
                    tr("Check the lot control number.")};
        case RefusalWhy::notATest:
            return {tr("%1 is a load, not a test cycle.").arg(subject()),
                    tr("Check the lot control number.")};
        case RefusalWhy::inFuture:
            return {tr("This time is still to come, by the computer's clock."),
                    tr("Type the time at which it was; if the clock is wrong, have it set right.")};
        case RefusalWhy::timeNeeded:
            return {tr("What is typed from paper needs the time at which it was done."),
                    tr("Give that time, as it stands on the paper.")};
        case RefusalWhy::beforeStart:
            return {tr("At this time %1 had not started yet.").arg(subject()),
                    tr("Type a time from its start on. If the start is wrong, correct its entry.")};
        case RefusalWhy::beforeEnd:
            return {tr("At this time %1 had not ended yet.").arg(subject()),
                    tr("Type a time from its end on. If the end is wrong, correct its entry.")};
        case RefusalWhy::notStarted:
            return {tr("%1 has not been recorded as started.").arg(subject()),
                    tr("Record its start first.")};
        case RefusalWhy::alreadyStarted:
            return {tr("%1 has been recorded as started already.").arg(subject()),
                    tr("If that start is wrong, correct its entry.")};
        case RefusalWhy::notEnded:
            return {tr("%1 has not been recorded as ended.").arg(subject()),
                    tr("Record its end first.")};
        case RefusalWhy::alreadyEnded:
            return {tr("%1 has been recorded as ended already.").arg(subject()),
                    tr("If that end is wrong, correct its entry.")};
        case RefusalWhy::noSuchEntry:
            return {tr("There is no entry %1.").arg(entry()),
                    tr("Look for its number in the history of the load.")};
        case RefusalWhy::notCurrent:
            return {tr("This entry has been corrected or struck by entry %1.").arg(entry()),
                    tr("Correct that one, if it is wrong.")};
        case RefusalWhy::notCorrectable:
            return {tr("An entry of this kind is not corrected."),
                    tr("Enter what is right anew, or annotate it.")};
        case RefusalWhy::reasonNeeded:
            return {tr("A correction needs a reason."), tr("Say why, in a few words.")};
        case RefusalWhy::secondPerson:
            return {
                tr("This correction could make a verdict better. It is made by a second person, of "
                   "a higher role than those who said it before."),
                tr("Ask a lead or supervisor who has not said it to correct it. Until then add "
                   "a reading of your own, if there is one, or annotate the entry.")};
        case RefusalWhy::positiveStays:
            return {tr("What makes a vial positive is not taken back by anybody."),
                    tr("Its incident closes it: a supervisor says there what was found.")};
        case RefusalWhy::otherFact:
            return {tr("A correction is of the same kind as entry %1 and about the same things.")
                        .arg(entry()),
                    tr("What belongs elsewhere is voided here and entered there.")};
        case RefusalWhy::noSuchFinding:
            return {tr("The load has no finding “%1” with that subject now.").arg(subject()),
                    tr("Look at the decision again.")};
        case RefusalWhy::notReviewable:
            return {tr("No review answers the finding “%1”.").arg(subject()),
                    tr("Do what the decision says beside it.")};
        case RefusalWhy::reviewerTooLow:
            return {tr("This finding is reviewed by the role “%1”.").arg(subject()),
                    tr("Ask somebody who has it.")};
        case RefusalWhy::stale:
            return {tr("Since you looked, this was recorded about the load: %1.").arg(since()),
                    tr("Look at the load again, then sign.")};
        case RefusalWhy::changed:
            return {tr("What is decided about %1 is no longer what you saw; it is now: %2.")
                        .arg(subject(), verdict()),
                    tr("Look at the load again, then sign.")};
        case RefusalWhy::notUnderstood:
            return {tr("The journal holds entries about this that this version of the program does "
                       "not know."),
                    tr("Use the version with which they were recorded; with this one nothing is "
                       "signed.")};
        case RefusalWhy::notReleasable:
            return {tr("%1 is decided as: %2. It is signed as that, or as something stricter.")
                        .arg(subject(), verdict()),
                    tr("Do what its reasons say; then it is decided anew.")};
        case RefusalWhy::nothingToSign:
            return {tr("%1 needs no exception: it may go.").arg(subject()),
                    tr("Sign its release.")};
        case RefusalWhy::notAnImplant:
            return {tr("The item “%1” is no implant.").arg(subject()),
                    tr("Only an implant is released in an emergency.")};
        case RefusalWhy::notOnlyTheVial:
            return {tr("In an emergency only the missing answer of a vial is overruled. About %1 "
                       "more is open: %2")
                        .arg(subject(), findings()),
                    tr("Do what the decision says about these first.")};
        case RefusalWhy::imported:
            return {tr("%1 is history of the time before this journal: nothing is decided or "
                       "signed about it here.")
                        .arg(subject()),
                    tr("Look at what its old record says.")};
        case RefusalWhy::keyKnown:
            return {tr("This user's key for seals is there, and this journal knows it."),
                    tr("Nothing needs to be done. To seal with another key, take that file away "
                       "to where it is kept, and ask again.")};
        case RefusalWhy::importedOtherwise:
            return {tr("The load %1 of that source stands in the journal already, and says "
                       "something else there (entry %2).")
                        .arg(subject(), entry()),
                    tr("If the entry is wrong, amend it; else take the line out.")};
        case RefusalWhy::rowTwice:
            return {
                tr("The load %1 of that source stands in line %2 already.").arg(subject(), entry()),
                tr("Take one of the lines out.")};
        case RefusalWhy::lotOfOwnLoad:
            return {tr("A load of this journal bears the lot control number %1.").arg(subject()),
                    tr("Look whether it is the same load; else give the old one another name, "
                       "such as the number with the register before it.")};
        }
        return {};
    }

    [[nodiscard]] QString trimmed() const
    {
        QString text = detail();
        while (text.endsWith(QLatin1Char('.'))) {
            text.chop(1);
        }
        return text;
    }

    const Refusal& r_;
    const HouseStyle& style_;
};

} // namespace

Told say(const Refusal& refusal, const HouseStyle& style)
{
    return RefusalSentences(refusal, style).told();
}

} // namespace loadwarden
