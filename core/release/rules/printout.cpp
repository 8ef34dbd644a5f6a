#include "core/release/entry_cause.h"
#include "core/release/rules/rules.h"

#include <algorithm>
#include <bitset>

namespace loadwarden::rules {
namespace {

bool isOff(const std::optional<Instant>& printed, const std::optional<Instant>& recorded,
           Duration tolerance)
{
    return printed && recorded && magnitude(*printed - *recorded) > tolerance;
}

bool isCounterUsed(const View& view, const Printout& printout)
{
    return std::any_of(view.history.begin(), view.history.end(), [&](const PastCycle& past) {
        const auto& used = past.cycle->counter;
        return used && (used == printout.counter || used == view.load.counter);
    });
}

/// A set of the printout's fields.
class FieldFlags {
public:
    void add(PrintoutField field) { m_has.set(static_cast<std::size_t>(field)); }
    [[nodiscard]] bool has(PrintoutField field) const
    {
        return m_has.test(static_cast<std::size_t>(field));
    }

private:
    std::bitset<printoutFieldCount> m_has;
};

/// Whether the printout shows by itself that it is of this cycle: its start or end agrees, or its
/// counter, which no other cycle has.
bool agreesByItself(const View& view, const Printout& printed)
{
    const Evidence& evidence = view.evidence;
    const Duration tolerance = view.policy.clockTolerance;
    const auto agrees = [tolerance](const auto& shown, const auto& recorded) {
        return shown && recorded && !isOff(shown, recorded, tolerance);
    };
    return (printed.counter && printed.counter == view.load.counter
            && !isCounterUsed(view, printed))
           || agrees(evidence.printoutStart, evidence.load.start)
           || agrees(evidence.printoutEnd, evidence.load.end);
}

/// What leads confirmed who neither ran the load nor recorded its printout.
FieldFlags confirmedFields(const View& view, const Printout& printout)
{
    FieldFlags confirmed;
    if (view.load.printoutAnswers.empty() || !agreesByItself(view, printout)) {
        return confirmed; // nobody did, or it may be of any cycle
    }
    for (const PrintoutStatement& each : view.load.printoutAnswers) {
        if (each.answer == PrintoutAnswer::recordRight && each.field
            && standsAs(each.act, Role::lead, view.now)
            && isAnotherPerson(each.act.by, view.load.operatedBy)
            && isAnotherPerson(each.act.by, printout.act.by)
            && each.act.recordedAt >= printout.act.recordedAt) {
            confirmed.add(*each.field);
        }
    }
    return confirmed;
}

/// Compares printout and record field by field. What was confirmed becomes a note of its field.
class Comparison {
public:
    Comparison(FindingSink& sink, FieldFlags confirmed) : m_sink(sink), m_confirmed(confirmed) {}

    void waits(bool applies, Key key, PrintoutField field)
    {
        if (applies && !takeConfirmed(field)) {
            m_sink.add(key, Outcome::waits, textOf(field));
        }
    }

    /// A name that says which cycle the printout is of: another name cannot be confirmed away.
    void name(PrintoutField field, std::string_view printed, std::string_view recorded)
    {
        const bool known = isNamed(printed) && isNamed(recorded);
        waits(!known, Key::printoutIncomplete, field);
        if (known && printed != recorded) {
            m_sink.add(Key::printoutDiffers, Outcome::waits, textOf(field));
        }
    }

    void counterUsed(bool applies)
    {
        if (applies && !takeConfirmed(PrintoutField::counter)) {
            m_sink.add(Key::printoutCounterUsed, Outcome::waits);
        }
    }

    void offsetUnknown(const Printout& printed)
    {
        const bool start = !printed.start || m_confirmed.has(PrintoutField::start);
        const bool end = !printed.end || m_confirmed.has(PrintoutField::end);
        if (!start || !end) {
            m_sink.add(Key::printoutOffsetUnknown, Outcome::waits);
        } else {
            m_taken.add(printed.start ? PrintoutField::start : PrintoutField::end);
        }
    }

    void sayConfirmed()
    {
        for (std::size_t i = 0; i < printoutFieldCount; ++i) {
            const auto field = static_cast<PrintoutField>(i);
            if (m_taken.has(field)) {
                m_sink.add(Key::printoutConfirmed, Outcome::note, textOf(field));
            }
        }
    }

private:
    bool takeConfirmed(PrintoutField field)
    {
        if (m_confirmed.has(field)) {
            m_taken.add(field);
            return true;
        }
        return false;
    }

    FindingSink& m_sink;
    FieldFlags m_confirmed;
    FieldFlags m_taken;
};

void compare(const View& view, const Printout& printed, FindingSink& sink)
{
    using enum PrintoutField;
    const Evidence& evidence = view.evidence;
    const auto& counted = view.load.counter;
    const Duration tolerance = view.policy.clockTolerance;
    Comparison comparison(sink, confirmedFields(view, printed));
    comparison.name(program, printed.program,
                    view.specification != nullptr ? std::string_view(view.specification->program)
                                                  : std::string_view());
    comparison.name(PrintoutField::sterilizer, printed.sterilizer,
                    view.sterilizer != nullptr ? std::string_view(view.sterilizer->id)
                                               : std::string_view());
    comparison.waits(!printed.counter || !counted, Key::printoutIncomplete, counter);
    comparison.waits(printed.counter && counted && *printed.counter != *counted,
                     Key::printoutDiffers, counter);
    comparison.counterUsed(isCounterUsed(view, printed));
    comparison.waits(!printed.start, Key::printoutIncomplete, start);
    comparison.waits(isOff(evidence.printoutStart, evidence.load.start, tolerance),
                     Key::printoutDiffers, start);
    comparison.waits(!printed.end, Key::printoutIncomplete, end);
    comparison.waits(isOff(evidence.printoutEnd, evidence.load.end, tolerance),
                     Key::printoutDiffers, end);
    if (evidence.printoutOffsetUnknown) {
        comparison.offsetUnknown(printed);
    }
    comparison.sayConfirmed();
}

/// Whether a printout shows anything that could be compared.
bool showsAnything(const Printout& printed)
{
    return isNamed(printed.program) || isNamed(printed.sterilizer) || printed.counter
           || printed.start || printed.end;
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
    const bool counts = load.printout && causeOf(load.printout->act, end, view.now) == Cause::none
                        && showsAnything(*load.printout);
    if (counts) {
        compare(view, *load.printout, sink);
        return;
    }
    const bool lost = load.printoutLost && stands(*load.printoutLost, view.now);
    if (lost) {
        sink.add(Key::printoutLost, Outcome::fails);
    } else {
        sink.add(Key::printoutMissing, Outcome::waits).cause =
            load.printout ? causeOf(load.printout->act, end, view.now) : Cause::none;
    }
}

} // namespace loadwarden::rules
