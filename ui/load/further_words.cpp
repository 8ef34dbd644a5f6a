#include "ui/load/further_words.h"

#include "core/words/say_terms.h"
#include "ui/indicators/reading_panel.h"
#include "ui/load/load_text.h"
#include "ui/look/text.h"

#include <QCoreApplication>

namespace loadwarden::ui {
namespace {

struct Words {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::Further)

public:
    static FurtherWords ofContents(Further what);
    static FurtherWords ofEvidence(Further what);
    static FurtherWords ofFailures(Further what);
    static FurtherWords ofIncidents(Further what);
    static FurtherWords ofUse(Further what);
};

FurtherWords Words::ofContents(Further what)
{
    switch (what) {
    case Further::moveItem:
        return {.name = tr("An item goes into another load"),
                .hint = tr("It keeps its label and what is in it."),
                .of = tr("Which item"),
                .number = tr("Lot control number of the other load"),
                .reason = tr("Why"),
                .button = tr("Move the item")};
    case Further::confirmItem:
        return {.name = tr("An item was inside"),
                .hint = tr("A lead who knows it confirms it, not who recorded it."),
                .of = tr("Which item"),
                .button = tr("Confirm that it was inside")};
    case Further::loseCheck:
        return {.name = tr("A package can no longer be looked at"),
                .hint = tr("Only where nobody looked and it is gone or open: the item is then run "
                           "anew."),
                .of = tr("Which item"),
                .button = tr("Record that nobody looked")};
    default: return {};
    }
}

FurtherWords Words::ofEvidence(Further what)
{
    switch (what) {
    case Further::losePrintout:
        return {.name = tr("The sterilizer's record cannot be found"),
                .hint = tr("Look once more first: nothing replaces it."),
                .button = tr("Record that it is lost")};
    case Further::loseParameter:
        return {.name = tr("A value cannot be read"),
                .hint = tr("The sterilizer's record does not show it, or not legibly."),
                .of = tr("Which value"),
                .button = tr("Record that it cannot be read")};
    case Further::rereadIndicator:
        return {.name = tr("Somebody else reads an indicator once more"),
                .hint = tr("Both answers count and stay; the worse one decides."),
                .of = tr("Which indicator"),
                .how = tr("What is seen"),
                .reason = tr("Why it is read once more"),
                .button = tr("Sign the reading")};
    case Further::unsettle:
        return {.name = tr("Nobody can settle an unclear answer"),
                .hint = tr("A lead says so; it then counts as a bad answer."),
                .of = tr("Which indicator"),
                .reason = tr("Why"),
                .button = tr("Sign that it stays unclear")};
    default: return {};
    }
}

FurtherWords Words::ofFailures(Further what)
{
    switch (what) {
    case Further::classAlarm:
        return {.name = tr("What an alarm of this sterilizer means"),
                .hint = tr("From its maker's instructions; it holds for every load of the "
                           "sterilizer."),
                .of = tr("Which alarm"),
                .how = tr("What it does"),
                .hows = {tr("It can affect the exposure"), tr("It is harmless")},
                .button = tr("Sign what it means")};
    case Further::recordFailure:
        return {.name = tr("The process failed"),
                .hint = tr("What the record does not show by itself. It holds the loads that "
                           "follow until somebody has put it right."),
                .how = tr("What failed"),
                .hows = {tr("The physical record"), tr("An indicator in a PCD")},
                .button = tr("Record the failure")};
    case Further::resolveFailure:
        return {.name = tr("What was done about a failure"),
                .hint = tr("A lead says it once it is done, tests included."),
                .how = tr("The cause"),
                .hows = {tr("It is known"), tr("It is not known")},
                .detail = tr("What it reached"),
                .details = {tr("This load alone"), tr("The sterilizer")},
                .reason = tr("The cause, and what was done"),
                .button = tr("Sign what was done")};
    default: return {};
    }
}

FurtherWords Words::ofIncidents(Further what)
{
    switch (what) {
    case Further::openIncident:
        return {.name = tr("A positive is taken up as an incident"),
                .hint = tr("A positive never disappears by itself: what is done about it is "
                           "recorded in its incident, which a supervisor closes."),
                .button = tr("Open the incident")};
    case Further::findIncident:
        return {.name = tr("What a growth turned out to be"),
                .hint = tr("A supervisor says so, with what shows it. The reading itself stays."),
                .of = tr("Which vial"),
                .how = tr("What it was"),
                .hows = {tr("The control, taken for the vial"), tr("A vial of another load")},
                .reason = tr("What shows it"),
                .button = tr("Sign the finding")};
    case Further::closeIncident:
        return {.name = tr("An incident is closed"),
                .hint = tr("Cause and correction are known, what is in question was found, and a "
                           "later cycle with a biological indicator was negative."),
                .number = tr("Lot control number of the cycle whose vial was negative"),
                .reason = tr("Cause, correction, and what became of the items"),
                .button = tr("Sign the closing")};
    default: return {};
    }
}

FurtherWords Words::ofUse(Further what)
{
    switch (what) {
    case Further::distribute:
        return {.name = tr("An item leaves the department"),
                .of = tr("Which item"),
                .number = tr("To whom"),
                .button = tr("Record where it went")};
    case Further::use:
        return {.name = tr("An item was used"),
                .hint = tr("No patient's name: the reference of the case alone."),
                .of = tr("Which item"),
                .number = tr("Reference of the case"),
                .button = tr("Record the use")};
    case Further::takeBack:
        return {.name = tr("An item came back unused"),
                .of = tr("Which item"),
                .reason = tr("Why it came back"),
                .button = tr("Record that it is back")};
    default: return {};
    }
}

std::vector<ReadingAnswer> answersFor(const LoadSheet& sheet, std::string_view of)
{
    const SheetIndicator* const indicator = sheet.indicator(of);
    return answersOf(indicator == nullptr ? std::nullopt : indicator->response);
}

AnyAct actOf(const FurtherAnswer& answer, const LoadSheet& sheet, const std::string& other)
{
    switch (answer.what) {
    case Further::moveItem:
        return ItemMoved{.from = sheet.view().id, .to = other, .why = answer.reason};
    case Further::confirmItem: return ItemConfirmed{};
    case Further::loseCheck: return PackageCheckLost{};
    case Further::losePrintout: return PrintoutLost{};
    case Further::loseParameter: return PhysicalLost{static_cast<Parameter>(std::stoi(answer.of))};
    case Further::rereadIndicator:
        return ChemicalReread{
            answersFor(sheet, answer.of)[static_cast<std::size_t>(answer.how)].seen};
    case Further::unsettle: return ChemicalUnsettled{answer.reason};
    case Further::classAlarm:
        return AlarmClassed{
            {answer.of, answer.how == 1 ? AlarmEffect::harmless : AlarmEffect::exposureAffecting}};
    case Further::recordFailure:
        return FailureRecorded{answer.how == 1 ? FailureKind::pcdRejected : FailureKind::physical};
    case Further::resolveFailure:
        return FailureResolved{.causeKnown = answer.how == 0,
                               .reach = answer.detail == 0 ? Reach::thatLoad : Reach::sterilizer,
                               .what = answer.reason};
    case Further::openIncident: return IncidentOpened{};
    case Further::findIncident:
        return IncidentFound{.was = answer.how == 1 ? FoundToBe::otherLoad : FoundToBe::control,
                             .why = answer.reason};
    case Further::closeIncident: return IncidentClosed{answer.reason};
    case Further::distribute: return ItemDistributed{answer.number};
    case Further::use: return ItemUsed{answer.number};
    case Further::takeBack: return ItemReturned{answer.reason};
    }
    return PrintoutLost{};
}

/// The newest reading of an indicator, which a second one follows.
std::int64_t newestReading(const LoadSheet& sheet, std::string_view of)
{
    const SheetIndicator* const indicator = sheet.indicator(of);
    const SheetReading* const newest = indicator == nullptr ? nullptr : indicator->newestReading();
    return newest == nullptr ? 0 : newest->seq;
}

/// The newest incident of the load.
std::string incidentOf(const LoadSheet& sheet)
{
    std::string found;
    for (const Entry& entry : sheet.record.entries) {
        if (std::holds_alternative<IncidentOpened>(entry.act)) {
            found = entry.subject("ic");
        }
    }
    return found;
}

} // namespace

FurtherWords wordsOf(Further what, const LoadSheet& sheet, std::string_view of)
{
    switch (what) {
    case Further::moveItem:
    case Further::confirmItem:
    case Further::loseCheck: return Words::ofContents(what);
    case Further::rereadIndicator: {
        FurtherWords words = Words::ofEvidence(what);
        for (const ReadingAnswer& answer : answersFor(sheet, of)) {
            words.hows << QString(answer.words).replace(u'\n', QStringLiteral(": "));
        }
        return words;
    }
    case Further::losePrintout:
    case Further::loseParameter:
    case Further::unsettle: return Words::ofEvidence(what);
    case Further::classAlarm:
    case Further::recordFailure:
    case Further::resolveFailure: return Words::ofFailures(what);
    case Further::openIncident:
    case Further::findIncident:
    case Further::closeIncident: return Words::ofIncidents(what);
    case Further::distribute:
    case Further::use:
    case Further::takeBack: return Words::ofUse(what);
    }
    return {};
}

QString nameOf(Further what, const Choice& of, const LoadSheet& sheet)
{
    if (what == Further::loseParameter) {
        return capital(text(say(static_cast<Parameter>(std::stoi(of.id)))));
    }
    if (const SheetIndicator* const indicator = sheet.indicator(of.id)) {
        return placeText(*indicator);
    }
    return text(of.name);
}

ToRecord toRecord(const FurtherAnswer& answer, const LoadSheet& sheet, const std::string& other)
{
    ToRecord act{.act = actOf(answer, sheet, other), .subjects = {sheet.view().id}};
    switch (answer.what) {
    case Further::moveItem: act.subjects = {answer.of, sheet.view().id, other}; break;
    case Further::rereadIndicator:
        act.subjects = {answer.of, sheet.view().id};
        act.reason = answer.reason;
        act.supersedes = newestReading(sheet, answer.of);
        break;
    case Further::openIncident:
        act.subjects = {other, sheet.view().id, sheet.view().folded.sterilizer};
        break;
    case Further::findIncident:
        act.subjects = {incidentOf(sheet), answer.of, sheet.view().id};
        break;
    case Further::closeIncident:
        act.subjects = {answer.of, other, sheet.view().folded.sterilizer};
        break;
    case Further::classAlarm: act.subjects = {sheet.view().folded.sterilizer}; break;
    case Further::losePrintout:
    case Further::loseParameter:
    case Further::recordFailure:
    case Further::resolveFailure: break;
    default: act.subjects = {answer.of, sheet.view().id}; break;
    }
    return act;
}

bool namesACycle(Further what)
{
    return what == Further::moveItem || what == Further::closeIncident;
}

} // namespace loadwarden::ui
