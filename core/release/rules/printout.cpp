#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

bool isOff(const std::optional<Instant>& printed, const std::optional<Instant>& recorded,
           Duration tolerance)
{
    if (!printed || !recorded) {
        return false;
    }
    const Duration apart = *printed - *recorded;
    return (apart < Duration{} ? -apart : apart) > tolerance;
}

bool differs(const View& view, const Printout& printout)
{
    const Evidence& evidence = view.evidence;
    const auto wordsDiffer = [](std::string_view a, std::string_view b) {
        return !a.empty() && !b.empty() && a != b;
    };
    return (view.specification != nullptr
            && wordsDiffer(printout.program, view.specification->program))
           || (view.sterilizer != nullptr && wordsDiffer(printout.sterilizer, view.sterilizer->id))
           || (printout.counter && view.load.counter && *printout.counter != *view.load.counter)
           || isOff(evidence.printoutStart, evidence.load.start, view.policy.clockTolerance)
           || isOff(evidence.printoutEnd, evidence.load.end, view.policy.clockTolerance);
}

bool isIncomplete(const View& view, const Printout& printout)
{
    return printout.program.empty() || printout.sterilizer.empty() || !printout.counter
           || !printout.start || !printout.end || !view.load.counter
           || view.specification == nullptr || view.specification->program.empty()
           || view.sterilizer == nullptr;
}

bool isCounterUsed(const View& view, const Printout& printout)
{
    return std::any_of(view.history.begin(), view.history.end(), [&](const PastCycle& past) {
        const auto& used = past.cycle->counter;
        return used && (used == printout.counter || used == view.load.counter);
    });
}

bool isConfirmed(const View& view, const Printout& printout)
{
    return std::any_of(view.load.printoutAnswers.begin(), view.load.printoutAnswers.end(),
                       [&](const PrintoutStatement& each) {
                           return each.answer == PrintoutAnswer::recordRight
                                  && standsAs(each.act, Role::lead, view.now)
                                  && isAnotherPerson(each.act.by, view.load.operatedBy)
                                  && each.act.recordedAt >= printout.act.recordedAt;
                       });
}

} // namespace

void printout(const View& view, FindingSink& sink)
{
    const LoadRecord& load = view.load;
    if (std::any_of(load.printoutAnswers.begin(), load.printoutAnswers.end(),
                    [](const PrintoutStatement& each) {
                        return each.answer != PrintoutAnswer::recordRight;
                    })) {
        sink.add(Key::printoutWrongCycle, Outcome::fails);
    }
    const auto& end = view.evidence.load.end;
    const bool counts = load.printout && stands(load.printout->act, view.now)
                        && (!end || load.printout->act.happenedAt >= *end);
    if (!counts) {
        const bool lost = load.printoutLost && stands(*load.printoutLost, view.now);
        sink.add(lost ? Key::printoutLost : Key::printoutMissing,
                 lost ? Outcome::fails : Outcome::waits);
        return;
    }
    const Printout& printed = *load.printout;
    const bool incomplete = isIncomplete(view, printed);
    const bool offsetUnknown = view.evidence.printoutOffsetUnknown;
    const bool counterUsed = isCounterUsed(view, printed);
    const bool different = differs(view, printed);
    if (!incomplete && !offsetUnknown && !counterUsed && !different) {
        return;
    }
    if (isConfirmed(view, printed)) {
        sink.add(Key::printoutConfirmed, Outcome::note);
        return;
    }
    const auto waits = [&sink](bool applies, Key key) {
        if (applies) {
            sink.add(key, Outcome::waits);
        }
    };
    waits(incomplete, Key::printoutIncomplete);
    waits(offsetUnknown, Key::printoutOffsetUnknown);
    waits(counterUsed, Key::printoutCounterUsed);
    waits(different, Key::printoutDiffers);
}

} // namespace loadwarden::rules
