#include "core/words/say_reading.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {
namespace {

struct Text {
    QString says;
    QString source;
};

class ReadingWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden)

public:
    static QString practice() { return tr("common practice, no source"); }

    static QString bowieDick()
    {
        return tr("CDC Guideline for Disinfection and Sterilization in Healthcare Facilities "
                  "(2008) and public training texts: Bowie-Dick test (restated)");
    }

    static Text of(ReadingRule rule);
    static QString of(SheetPattern pattern);
    static Text suggestionOf(SheetPattern pattern);
    static QString of(ReadAs readAs);
    static QString of(AnswerMark mark);
    static TypeSaid ofType(int type);

private:
    static TypeSaid typeOf(const QString& name, const QString& can, const QString& cannot,
                           const QString& source)
    {
        return {name.toStdString(), can.toStdString(), cannot.toStdString(), source.toStdString()};
    }
};

Text ReadingWords::of(ReadingRule rule)
{
    switch (rule) {
    case ReadingRule::frontEntered:
        return {tr("Accept: the front has entered the accept zone; it need not fill it."),
                practice()};
    case ReadingRule::frontOnBoundary:
        return {tr("Reject: the front stands on the boundary. The accept zone begins behind it."),
                practice()};
    case ReadingRule::frontShort:
        return {tr("Reject: the front is short of the boundary."), practice()};
    case ReadingRule::endColourReached:
        return {tr("Accept: all of it has the end colour of the product's own directions."),
                practice()};
    case ReadingRule::endColourPartly:
        return {tr("Reject: the end colour is reached only in part."), practice()};
    case ReadingRule::unchanged:
        return {tr("Reject: it has not changed."),
                tr("CDC Guideline for Disinfection and Sterilization in Healthcare Facilities "
                   "(2008): an indicator that does not respond (restated)")};
    case ReadingRule::uniformComplete:
        return {tr("Accept: the change is uniform and complete."), bowieDick()};
    case ReadingRule::uniformIncomplete:
        return {tr("Reject: the change is uniform, but it is not complete."), bowieDick()};
    case ReadingRule::notUniform:
        return {tr("Reject: the change is not uniform, wherever the pale place is."), bowieDick()};
    case ReadingRule::absent: return {tr("Reject: the indicator is missing."), practice()};
    case ReadingRule::unclear:
        return {tr("Unclear: a second named person reads it, who does not see the first answer. If "
                   "it stays unclear, it counts as rejected."),
                practice()};
    }
    return {};
}

QString ReadingWords::of(SheetPattern pattern)
{
    switch (pattern) {
    case SheetPattern::complete: return tr("uniform and complete");
    case SheetPattern::incomplete: return tr("uniform, not complete");
    case SheetPattern::paleCentre: return tr("pale centre");
    case SheetPattern::paleEdge: return tr("pale edge");
    case SheetPattern::streaks: return tr("streaks or patches");
    case SheetPattern::noChange: return tr("no change");
    case SheetPattern::damaged: return tr("damaged");
    case SheetPattern::unclear: return tr("unclear");
    }
    return {};
}

Text ReadingWords::suggestionOf(SheetPattern pattern)
{
    switch (pattern) {
    case SheetPattern::complete:
        return {tr("Air was removed from this pack and steam reached all of it; it says nothing "
                   "about any load."),
                tr("HTM 2010: the test is for air removal and does not show that a load was "
                   "sterilized (restated)")};
    case SheetPattern::incomplete:
        return {tr("The exposure may have been too short or too cool, or the steam not as it must "
                   "be."),
                practice()};
    case SheetPattern::paleCentre:
        return {tr("Air may have stayed in the pack: look for a leak, and at vacuum pump, gasket, "
                   "steam and drain."),
                practice()};
    case SheetPattern::paleEdge:
        return {tr("Moisture, or how the pack lay, may have kept steam from the edge."),
                practice()};
    case SheetPattern::streaks:
        return {tr("Air may have stayed in places, or the steam may have been wet."), practice()};
    case SheetPattern::noChange:
        return {tr("It may not have been exposed, or may be made for another process."),
                practice()};
    case SheetPattern::damaged:
        return {tr("A torn, wet or stained sheet cannot be judged: nobody guesses what it would "
                   "have shown."),
                practice()};
    case SheetPattern::unclear:
        return {tr("It suggests nothing until a second person has read it."), practice()};
    }
    return {};
}

QString ReadingWords::of(ReadAs readAs)
{
    switch (readAs) {
    case ReadAs::accept: return tr("accept");
    case ReadAs::reject: return tr("reject");
    case ReadAs::unclear: return tr("unclear");
    }
    return {};
}

QString ReadingWords::of(AnswerMark mark)
{
    switch (mark) {
    case AnswerMark::right: return tr("Right");
    case AnswerMark::acceptedWhatFails: return tr("Accepted what fails");
    case AnswerMark::rejectedWhatPasses: return tr("Rejected what passes");
    case AnswerMark::notSure: return tr("Not sure");
    }
    return {};
}

TypeSaid ReadingWords::ofType(int type)
{
    const QString standard = tr("ISO 11140-1: the six types");
    switch (type) {
    case 1:
        return typeOf(tr("Type 1, process indicator"),
                      tr("It tells what has been through a process from what has not."),
                      tr("It cannot tell whether air was removed, or whether the sterilant reached "
                         "the inside for long enough."),
                      tr("ISO 11140-1; CDC Guideline for Disinfection and Sterilization in "
                         "Healthcare Facilities (2008): an external indicator shows exposure, not "
                         "sterility (restated)"));
    case 2:
        return typeOf(tr("Type 2, for a specific test"),
                      tr("It answers the one test that it is made for, such as the Bowie-Dick "
                         "test of air removal."),
                      tr("It cannot tell anything about a load."),
                      tr("ISO 11140-1; HTM 2010: the test is for air removal and does not show "
                         "that a load was sterilized (restated)"));
    case 3:
        return typeOf(tr("Type 3, single variable"),
                      tr("It tells whether one variable of the process reached its stated value."),
                      tr("It cannot tell anything about the other variables."), standard);
    case 4:
        return typeOf(tr("Type 4, several variables"),
                      tr("It tells whether the variables that its maker names reached their stated "
                         "values."),
                      tr("It cannot tell anything about variables that are not named."), standard);
    case 5:
        return typeOf(tr("Type 5, integrating"),
                      tr("It answers to all the critical variables of the process together."),
                      tr("It holds no organisms and cannot replace a biological indicator where "
                         "one is asked for, as with implants."),
                      tr("ISO 11140-1; ANSI/AAMI ST79: biological indicator and type 5 integrator "
                         "for implants"));
    case 6:
        return typeOf(tr("Type 6, emulating"),
                      tr("It answers to all the critical variables of one stated cycle."),
                      tr("It cannot tell anything about a cycle of another time or temperature, "
                         "and does not replace a biological indicator."),
                      standard);
    default: break;
    }
    return typeOf(tr("Type not stated"), tr("Its maker's directions say what it answers to."),
                  tr("Until its type is known, nobody can tell what it leaves unsaid."),
                  practice());
}

ReadingSaid said(const Text& text)
{
    return {text.says.toStdString(), text.source.toStdString()};
}

} // namespace

ReadingSaid say(ReadingRule rule)
{
    return said(ReadingWords::of(rule));
}

std::string say(SheetPattern pattern)
{
    return ReadingWords::of(pattern).toStdString();
}

ReadingSaid suggestionOf(SheetPattern pattern)
{
    return said(ReadingWords::suggestionOf(pattern));
}

std::string say(ReadAs readAs)
{
    return ReadingWords::of(readAs).toStdString();
}

std::string say(AnswerMark mark)
{
    return ReadingWords::of(mark).toStdString();
}

TypeSaid sayType(int type)
{
    return ReadingWords::ofType(type);
}

} // namespace loadwarden
