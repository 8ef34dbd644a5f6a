#include "core/words/say.h"

#include "core/words/sentences.h"

#include <QCoreApplication>
#include <QString>

namespace loadwarden {

Said say(const Finding& finding, const HouseStyle& style)
{
    const Words words = Sentences(finding, style).words();
    return {words.says.toStdString(), words.next.toStdString(), sourceOf(finding.key)};
}

std::string say(Verdict verdict)
{
    switch (verdict) {
    case Verdict::release:
        return QCoreApplication::translate("loadwarden", "Release").toStdString();
    case Verdict::quarantine:
        return QCoreApplication::translate("loadwarden", "Quarantine").toStdString();
    case Verdict::reprocess:
        return QCoreApplication::translate("loadwarden", "Reprocess").toStdString();
    }
    return {};
}

std::string say(TestResult result)
{
    switch (result) {
    case TestResult::failed:
        return QCoreApplication::translate("loadwarden", "Failed").toStdString();
    case TestResult::voided: return QCoreApplication::translate("loadwarden", "Void").toStdString();
    case TestResult::pending:
        return QCoreApplication::translate("loadwarden", "Pending").toStdString();
    case TestResult::passed:
        return QCoreApplication::translate("loadwarden", "Passed").toStdString();
    }
    return {};
}

std::string say(Outcome outcome)
{
    switch (outcome) {
    case Outcome::note: return QCoreApplication::translate("loadwarden", "Note").toStdString();
    case Outcome::waits:
        return QCoreApplication::translate("loadwarden", "Waits for evidence").toStdString();
    case Outcome::review:
        return QCoreApplication::translate("loadwarden", "Waits for a review").toStdString();
    case Outcome::fails:
        return QCoreApplication::translate("loadwarden", "Failed evidence").toStdString();
    }
    return {};
}

std::string caution()
{
    return QCoreApplication::translate(
               "loadwarden",
               "Loadwarden recommends; a named person decides and signs. Makers' "
               "instructions for use (IFU), facility policy, local codes and licensed "
               "practice come first.")
        .toStdString();
}

} // namespace loadwarden
