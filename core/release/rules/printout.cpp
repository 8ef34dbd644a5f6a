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

/// Compares printout and record field by field. What a lead who did not run the load confirmed
/// becomes one note.
class Comparison {
public:
    Comparison(FindingSink& sink, bool confirmed) : m_sink(sink), m_confirmed(confirmed) {}

    void waits(bool applies, Key key, std::string_view field = {})
    {
        if (applies && m_confirmed) {
            m_anyConfirmed = true;
        } else if (applies) {
            m_sink.add(key, Outcome::waits, field);
        }
    }

    /// A name that says which cycle the printout is of: another name cannot be confirmed away.
    void name(std::string_view field, std::string_view printed, std::string_view recorded)
    {
        waits(printed.empty() || recorded.empty(), Key::printoutIncomplete, field);
        if (!printed.empty() && !recorded.empty() && printed != recorded) {
            m_sink.add(Key::printoutDiffers, Outcome::waits, field);
        }
    }

    [[nodiscard]] bool anyConfirmed() const { return m_anyConfirmed; }

private:
    FindingSink& m_sink;
    bool m_confirmed;
    bool m_anyConfirmed = false;
};

void compare(const View& view, const Printout& printed, FindingSink& sink)
{
    const Evidence& evidence = view.evidence;
    const auto& counter = view.load.counter;
    const Duration tolerance = view.policy.clockTolerance;
    Comparison comparison(sink, isConfirmed(view, printed));
    comparison.name("program", printed.program,
                    view.specification != nullptr ? std::string_view(view.specification->program)
                                                  : std::string_view());
    comparison.name("sterilizer", printed.sterilizer,
                    view.sterilizer != nullptr ? std::string_view(view.sterilizer->id)
                                               : std::string_view());
    comparison.waits(!printed.counter || !counter, Key::printoutIncomplete, "counter");
    comparison.waits(printed.counter && counter && *printed.counter != *counter,
                     Key::printoutDiffers, "counter");
    comparison.waits(isCounterUsed(view, printed), Key::printoutCounterUsed);
    comparison.waits(!printed.start, Key::printoutIncomplete, "start");
    comparison.waits(isOff(evidence.printoutStart, evidence.load.start, tolerance),
                     Key::printoutDiffers, "start");
    comparison.waits(!printed.end, Key::printoutIncomplete, "end");
    comparison.waits(isOff(evidence.printoutEnd, evidence.load.end, tolerance),
                     Key::printoutDiffers, "end");
    comparison.waits(evidence.printoutOffsetUnknown, Key::printoutOffsetUnknown);
    if (comparison.anyConfirmed()) {
        sink.add(Key::printoutConfirmed, Outcome::note);
    }
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
    if (counts) {
        compare(view, *load.printout, sink);
        return;
    }
    const bool lost = load.printoutLost && stands(*load.printoutLost, view.now);
    sink.add(lost ? Key::printoutLost : Key::printoutMissing,
             lost ? Outcome::fails : Outcome::waits);
}

} // namespace loadwarden::rules
