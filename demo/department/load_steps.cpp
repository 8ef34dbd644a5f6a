#include "demo/department/load_steps.h"

#include <optional>

namespace loadwarden::demo {

namespace {

TypedQuantity typed(const std::string& text, Unit unit, std::int64_t thousandths)
{
    return {text, {unit, thousandths}};
}

} // namespace

void LoadSteps::fill(Load& load, int day)
{
    load.cycle =
        m_department
            .reserve(on(day), {.sterilizer = load.sterilizer, .specification = "sp-wrapped"})
            .cycle;
    const int items = 3 + m_department.draw(3);
    for (int i = 0; i < items; ++i) {
        const std::string item = m_department.newId("it");
        const std::string external = m_department.newId("ci");
        const std::string internal = m_department.newId("ci");
        ItemAdded added{.label = "T" + std::to_string(1'000 + load.number * 10 + i),
                        .implant = hasImplant(load) && i == 0 ? Implant::yes : Implant::no,
                        .packaging = "pk-wrap",
                        .devices = {"dv-general"}};
        added.external = PlacedIndicator{external, "pr-tape", "pl-tape", {}};
        added.internals = {{internal, "pr-strip", "pl-strip", "centre"}};
        m_department.record(on(day), added, {item, load.cycle, external, internal});
        load.items.push_back(item);
        load.externals.push_back(external);
    }
    load.strip = m_department.newId("ci");
    std::vector<std::string> subjects{m_department.newId("pd"), load.cycle, load.strip};
    PcdPlaced placed{
        .mark = "A", .indicators = {{load.strip, "pr-strip", "pl-strip", {}}}, .vials = {}};
    if (load.hasVial) {
        load.vial = m_department.newId("bv");
        subjects.push_back(load.vial);
        placed.vials = {{load.vial, "pr-vial", vialLot(load), {}}};
    }
    m_department.record(on(day), placed, subjects);
}

void LoadSteps::start(Load& load, int day)
{
    load.counter = m_counters.next(load.sterilizer);
    m_department.record(on(day),
                        CycleStarted{ClockSource::facility, m_department.shown(), load.counter},
                        {load.cycle});
}

void LoadSteps::end(Load& load, int day)
{
    const bool aborted = load.matter == Matter::aborted;
    m_department.record(on(day),
                        CycleEnded{m_department.shown(),
                                   aborted ? CycleOutcome::aborted : CycleOutcome::ended,
                                   aborted ? std::optional(AbortPhase::exposure) : std::nullopt,
                                   {}},
                        {load.cycle});
    m_department.record(on(day), CycleUnloaded{}, {load.cycle});
    m_department.record(on(day),
                        PrintoutRecorded{"PREVAC 132", "STERILIZER " + load.sterilizer.substr(3),
                                         load.counter,
                                         journalTime(load.start, m_department.office().zone()),
                                         m_department.shown()},
                        {load.cycle});
}

void LoadSteps::read(Load& load, int day)
{
    const bool low = load.matter == Matter::lowTemperature;
    m_department.record(
        on(day),
        PhysicalRead{Parameter::temperature, low ? typed("131.4", Unit::celsius, 131'400)
                                                 : typed("132.6", Unit::celsius, 132'600)},
        {load.cycle});
    if (load.matter == Matter::readingTypedWrongly) {
        const Appended wrong = m_department.record(
            on(day), PhysicalRead{Parameter::exposure, typed("0.4", Unit::minutes, 400)},
            {load.cycle});
        m_department.correct(lead(), wrong.firstSeq, "the printout says 4.0",
                             PhysicalRead{Parameter::exposure, typed("4.0", Unit::minutes, 4'000)},
                             {load.cycle});
    } else {
        m_department.record(on(day),
                            PhysicalRead{Parameter::exposure, typed("4.0", Unit::minutes, 4'000)},
                            {load.cycle});
    }
    if (load.matter != Matter::readingMissing) {
        m_department.record(on(day),
                            PhysicalRead{Parameter::drying, typed("25", Unit::minutes, 25'000)},
                            {load.cycle});
    }
    m_department.record(on(day), PhysicalVerified{}, {load.cycle});
    if (load.matter == Matter::frontOnBoundary || load.matter == Matter::secondReaderAwaited) {
        m_department.record(on(day), ChemicalRead{Seen::unclear}, {load.strip, load.cycle});
        if (load.matter == Matter::frontOnBoundary) {
            m_department.record(lead(), ChemicalRead{Seen::frontInAcceptZone},
                                {load.strip, load.cycle});
        }
    } else {
        m_department.record(on(day), ChemicalRead{Seen::frontInAcceptZone},
                            {load.strip, load.cycle});
    }
    for (const std::string& external : load.externals) {
        m_department.record(on(day), ChemicalRead{Seen::endColourReached}, {external, load.cycle});
    }
}

void LoadSteps::attach(Load& load, int day)
{
    const RecordedCycle own{.sterilizer = load.sterilizer,
                            .counter = load.counter,
                            .start = load.start,
                            .faults = faultsOf(load.matter)};
    if (load.matter != Matter::otherRecording) {
        m_department.attach(on(day), load.cycle, m_department.newId("tr"), own);
        return;
    }
    // First the file of the load before; a lead sees what the program says of it.
    RecordedCycle other = own;
    other.counter -= 1;
    other.start = after(other.start, -95);
    const std::string trace = m_department.newId("tr");
    const Appended wrong = m_department.attach(on(day), load.cycle, trace, other);
    m_department.at(after(load.start, 66), [=, this, cycle = load.cycle] {
        m_department.correct(lead(), wrong.firstSeq, "it is the file of the load before",
                             EntryVoided{}, {trace, cycle});
        m_department.attach(on(day), cycle, m_department.newId("tr"), own);
    });
}

void LoadSteps::check(Load& load, int day)
{
    for (std::size_t i = 0; i < load.items.size(); ++i) {
        const bool dry = load.matter != Matter::wetPackage || i != 0;
        m_department.record(
            on(day),
            PackageChecked{
                .cooled = true, .dry = dry, .intact = true, .sealed = true, .labelAgrees = true},
            {load.items[i], load.cycle});
    }
}

void LoadSteps::sign(Load& load, int day)
{
    load.isSigned = true;
    const bool asks = load.matter == Matter::implant;
    const Verdict verdict = m_department.signAsDecided(asks ? lead() : on(day), load.cycle);
    if (load.matter == Matter::lowTemperature || load.matter == Matter::aborted
        || load.matter == Matter::exposureInterrupted) {
        m_department.record(lead(), FailureRecorded{FailureKind::physical}, {load.cycle});
        m_department.record(
            lead(),
            FailureResolved{true, Reach::thatLoad, "steam supply was low; the boiler was fed"},
            {load.cycle});
    }
    if (verdict == Verdict::release && !load.items.empty() && load.number % 4 == 0) {
        m_department.record(on(day), ItemDistributed{"operating room 2"},
                            {load.items.back(), load.cycle});
    }
}

} // namespace loadwarden::demo
