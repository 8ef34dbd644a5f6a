#include "tests/core/acts/steps_support.h"

namespace loadwarden::tests {
namespace {

/// Which alternative of AnyAct an act is.
template <class Act>
std::size_t indexOf()
{
    return AnyAct(Act{}).index();
}

/// An act of somebody.
Step does(const Person& who, std::vector<std::string> subjects, AnyAct act)
{
    return {who, std::move(subjects), std::move(act), {}};
}

/// A correction of the newest entry of the kinds in question.
template <class... Acts>
Step corrects(const Person& who, AnyAct act)
{
    return {who, {}, std::move(act), {indexOf<Acts>()...}};
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

TraceRead recording(Shown exposure)
{
    TraceRead read;
    read.content = std::string(64, 'a');
    read.fileName = "cycle.csv";
    read.mapping = "{}";
    read.findings.specification = "spec-1";
    read.findings.revision = 1;
    read.findings.exposure = exposure;
    return read;
}

} // namespace

std::optional<std::int64_t> Step::target(std::span<const Entry> entries) const
{
    if (corrects.empty()) {
        return 0;
    }
    for (auto old = entries.rbegin(); old != entries.rend(); ++old) {
        const std::size_t kind = old->act.index();
        if (std::ranges::find(corrects, kind) != corrects.end()
            && (std::holds_alternative<EntryVoided>(act) || kind == act.index())) {
            return old->seq;
        }
    }
    return std::nullopt;
}

void Step::operator()(Journal& journal, Instant when) const
{
    const std::optional<std::int64_t> old = target(journal.entries());
    if (!old) {
        return;
    }
    if (*old == 0) {
        journal.add(who, when, subjects, act);
    } else {
        journal.correct(who, when, *old, act);
    }
}

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
        does(operatorB, pcd, ChemicalRead{good}),
        does(operatorA, pcd, ChemicalRead{Seen::frontOnBoundary}),
        does(supervisorE, pcd, ChemicalRead{Seen::unclear}),
        does(operatorB, vial, BiologicalRead{Seen::noGrowth}),
        does(operatorA, vial, BiologicalRead{Seen::growth}),
        does(operatorB, {"bc-1"}, BiologicalRead{Seen::growth}),
        does(operatorA, {"bc-1"}, BiologicalRead{Seen::noGrowth}),
        does(operatorA, load, CycleEnded{{at(7, 50), 0}, CycleOutcome::aborted, {}, {}}),
        does(operatorB, load, CycleEnded{{at(7, 51), 0}, CycleOutcome::ended, {}, {}}),
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
        corrects<ChemicalRead>(supervisorF, ChemicalRead{good}),
        corrects<BiologicalRead>(supervisorF, BiologicalRead{Seen::noGrowth}),
        corrects<CycleEnded>(leadD, CycleEnded{{at(7, 50), 0}, CycleOutcome::ended, {}, {}}),
        // Of each of these something like it stands above.
        does(leadC, load, warm("131.9", 131'900)),
        does(operatorA, pcd, ChemicalRead{good}),
        does(operatorA, vial, BiologicalRead{Seen::unclear}),
        does(operatorA, load, CycleEnded{{at(7, 50), 0}, CycleOutcome::ended, {}, {}}),
        does(operatorA, {"it-2", "ld-1"}, ItemAdded{.label = "I2", .implant = Implant::no}),
        does(operatorA, item, PackageChecked{true, true, true, true, true}),
        corrects<PhysicalRead>(operatorA, warm("100", 100'000)),
        does(operatorA, {"tr-1", "ld-1"}, recording(Shown::notMet)),
        voids<TraceRead>(leadD),
        corrects<TraceRead>(operatorB, recording(Shown::met)),
        does(operatorB, {"qu-1", "it-1", "ld-1"}, ItemReported{.indicator = Seen::frontOnBoundary, .place = "Room 4"}),
        voids<ItemReported>(leadD),
        voids<ItemReported>(operatorA),
    };
}

} // namespace loadwarden::tests
