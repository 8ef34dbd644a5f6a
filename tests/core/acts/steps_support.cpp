#include "tests/core/acts/steps_support.h"

namespace loadwarden::tests {
namespace {

/// An act of somebody.
template <class Act>
Step does(const Person& who, std::vector<std::string> subjects, const Act& act)
{
    return [=](Journal& journal, Instant when) { journal.add(who, when, subjects, act); };
}

/// A correction of the newest entry that is no correction itself, of the kinds in question.
template <class... Acts>
Step corrects(const Person& who, const AnyAct& act)
{
    return [=](Journal& journal, Instant when) {
        for (std::int64_t seq = journal.entries().back().seq; seq > 0; --seq) {
            const AnyAct& old = journal.entry(seq).act;
            if ((std::holds_alternative<Acts>(old) || ...)
                && (std::holds_alternative<EntryVoided>(act) || old.index() == act.index())) {
                journal.correct(who, when, seq, act);
                return;
            }
        }
    };
}

template <class... Acts>
Step voids(const Person& who)
{
    return corrects<Acts...>(who, EntryVoided{});
}

PhysicalRead warm(const std::string& text, std::int64_t thousandths)
{
    return {Parameter::temperature, typed(text, Unit::celsius, thousandths)};
}

} // namespace

std::vector<Step> steps()
{
    const std::vector<std::string> load{"ld-1"};
    const std::vector<std::string> pcd{"ci-3", "ld-1"};
    const std::vector<std::string> vial{"bv-1", "ld-1"};
    const std::vector<std::string> item{"it-1", "ld-1"};
    const Seen good = Seen::frontInAcceptZone;
    return {
        does(operatorA, load, PhysicalVerified{}),
        does(viewerG, load, PhysicalVerified{}),
        does(operatorB, load, warm("132.4", 132'400)),
        does(operatorA, load, warm("13.2", 13'200)),
        does(leadC, load, warm("131.9", 131'900)),
        does(operatorA, pcd, ChemicalRead{good}),
        does(operatorB, pcd, ChemicalRead{good}),
        does(operatorA, pcd, ChemicalRead{Seen::frontOnBoundary}),
        does(supervisorE, pcd, ChemicalRead{Seen::unclear}),
        does(operatorB, vial, BiologicalRead{Seen::noGrowth}),
        does(operatorA, vial, BiologicalRead{Seen::growth}),
        does(operatorA, vial, BiologicalRead{Seen::unclear}),
        does(operatorB, {"bc-1"}, BiologicalRead{Seen::growth}),
        does(operatorA, {"bc-1"}, BiologicalRead{Seen::noGrowth}),
        does(operatorA, load, CycleEnded{{at(7, 50), 0}, CycleOutcome::ended, {}, {}}),
        does(operatorA, load, CycleEnded{{at(7, 50), 0}, CycleOutcome::aborted, {}, {}}),
        does(operatorB, load, CycleEnded{{at(7, 51), 0}, CycleOutcome::ended, {}, {}}),
        does(operatorA, {"it-2", "ld-1"}, ItemAdded{.label = "I2", .implant = Implant::no}),
        does(operatorA, item, PackageChecked{true, true, true, true, true}),
        does(operatorB, item, PackageChecked{.dry = false}),
        does(
            operatorB, load,
            PrintoutRecorded{"P1", "S1", 101, JournalTime{at(7, 0), 0}, JournalTime{at(7, 50), 0}}),
        does(operatorB, load, PrintoutRecorded{"P1", "S1", 102, {}, {}}),
        voids<PhysicalRead>(operatorB),
        voids<PhysicalRead>(leadD),
        voids<PhysicalRead, PhysicalVerified, ChemicalRead, BiologicalRead, CycleEnded,
              PackageChecked, PrintoutRecorded, ItemAdded>(operatorA),
        voids<PhysicalRead, PhysicalVerified, ChemicalRead, BiologicalRead, CycleEnded,
              PackageChecked, PrintoutRecorded, ItemAdded>(supervisorE),
        corrects<PhysicalRead>(operatorB, warm("132", 132'000)),
        corrects<PhysicalRead>(supervisorF, warm("132", 132'000)),
        corrects<PhysicalRead>(operatorA, warm("100", 100'000)),
        corrects<ChemicalRead>(supervisorF, ChemicalRead{good}),
        corrects<BiologicalRead>(supervisorF, BiologicalRead{Seen::noGrowth}),
        corrects<CycleEnded>(leadD, CycleEnded{{at(7, 50), 0}, CycleOutcome::ended, {}, {}}),
    };
}

} // namespace loadwarden::tests
