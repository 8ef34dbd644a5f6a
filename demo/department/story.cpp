#include "demo/department/department.h"

#include <memory>
#include <optional>

// What happens in three weeks: mostly what should, and some of what does.

namespace loadwarden::demo {

namespace {

constexpr int days = 21;
constexpr int loadsPlanned = 300;
constexpr int positiveDay = 11;    ///< a vial of sterilizer 2 grows
constexpr int livingLoads = 1'000; ///< from this number on: those of the living day

/// What is the matter with a load.
enum class Matter {
    nothing,
    implant,
    frontOnBoundary, ///< read as accepted first, settled by a second reader
    lowTemperature,
    aborted,
    wetPackage,
    readingTypedWrongly,
    readingMissing,
    positive,
    secondReaderAwaited, ///< one reader was not sure, and nobody else has looked
    controlDead,         ///< an implant's vial showed no growth, and neither did its control
    // What the typed numbers hide and the recording shows.
    exposureInterrupted,
    airInSteam,     ///< residual air: the steam is cooler than its pressure says
    settingTyped,   ///< drying as the program is set to, where it ended early
    otherRecording, ///< that of the load before, struck and replaced by its own
};

/// What is the matter with a load that its typed numbers hide, by day, sterilizer and turn.
constexpr struct {
    int day;
    int which;
    int turn;
    Matter matter;
} hidden[] = {{4, 1, 2, Matter::exposureInterrupted},
              {7, 1, 4, Matter::airInSteam},
              {8, 2, 3, Matter::settingTyped},
              {9, 1, 3, Matter::otherRecording}};

/// What its recorder saw besides a good cycle.
std::vector<simulation::Fault> faultsOf(Matter matter)
{
    using simulation::FaultKind;
    switch (matter) {
    case Matter::lowTemperature: return {{.kind = FaultKind::lowTemperature, .size = 0.6}};
    case Matter::exposureInterrupted:
        return {{.kind = FaultKind::interruptedExposure, .size = 30, .kelvin = 0.3}};
    case Matter::airInSteam: return {{.kind = FaultKind::residualAir, .size = 3}};
    case Matter::settingTyped: return {{.kind = FaultKind::shortDrying, .size = 780}};
    default: return {};
    }
}

struct Load {
    std::string sterilizer;
    int number = 0; ///< in the order of their starts, from 0
    Instant start;
    Matter matter = Matter::nothing;
    bool hasVial = false;
    bool isLeft = false; ///< nobody signs it
    bool isSigned = false;
    std::string cycle;
    std::vector<std::string> items;
    std::vector<std::string> externals;
    std::string strip;
    std::string vial;
    std::string control; ///< empty: another load's is beside its vial
    std::int64_t counter = 0;
};

Instant after(Instant moment, int minutes)
{
    return moment + Duration::minutes(minutes);
}

TypedQuantity typed(const std::string& text, Unit unit, std::int64_t thousandths)
{
    return {text, {unit, thousandths}};
}

/// Two shifts: who works then.
const Worker& onDuty(Instant moment, int day)
{
    return moment < onDay(day, 14, 0) ? morning() : evening();
}

class Weeks {
public:
    explicit Weeks(Department& department) : m_department(department) {}

    void plan()
    {
        int number = 0;
        for (int day = 0; day < days; ++day) {
            m_department.at(onDay(day, 5, 0), [this] { m_department.seal(); });
            for (const int which : {1, 2}) {
                planTest(day, which);
            }
            const int perSterilizer = day % 7 == 6 ? 6 : 8; // Sundays are quieter
            for (int turn = 0; turn < perSterilizer && number < loadsPlanned; ++turn) {
                for (const int which : {1, 2}) {
                    const bool isOut = which == 2 && day == positiveDay && turn > 0;
                    if (number < loadsPlanned && !isOut) {
                        planLoad(day, which, turn, number++, matterOf(day, which, turn), false);
                    }
                }
            }
        }
    }

    /// What somebody finds who comes in on the Friday at ten past one, besides the three weeks.
    void planLivingDay()
    {
        for (int day = livingDay - 2; day <= livingDay; ++day) {
            planTest(day, 3);
            if (day != livingDay) {
                planTest(day, 4); // on the Friday it is forgotten
            }
        }
        int number = livingLoads;
        const auto left = [&](int turn, Matter matter) {
            planLoad(livingDay, 3, turn, number++, matter, true);
        };
        planLoad(livingDay - 1, 3, 0, number++, Matter::nothing, false);
        left(0, Matter::airInSteam);
        left(1, Matter::controlDead);
        left(2, Matter::secondReaderAwaited);
        left(3, Matter::wetPackage);
    }

private:
    static std::string idOf(int which) { return "sz-" + std::to_string(which); }

    std::int64_t nextCounter(const std::string& sterilizer) { return ++m_counters[sterilizer]; }

    void planTest(int day, int which)
    {
        const Instant start = onDay(day, 5, 30 + which * 7);
        const auto cycle = std::make_shared<std::string>();
        const auto sheet = std::make_shared<std::string>();
        const std::string sterilizer = idOf(which);
        m_department.at(after(start, -5), [=, this] {
            *cycle = m_department
                         .reserve(morning(), {.sterilizer = sterilizer,
                                              .specification = "sp-air",
                                              .purpose = Purpose::bowieDick})
                         .cycle;
            *sheet = m_department.newId("ci");
            m_department.record(morning(), SheetPlaced{"pr-sheet", "pl-sheet"}, {*sheet, *cycle});
        });
        m_department.at(start, [=, this] {
            m_department.record(
                morning(),
                CycleStarted{ClockSource::facility, m_department.shown(), nextCounter(sterilizer)},
                {*cycle});
        });
        m_department.at(after(start, 6), [=, this] {
            m_department.record(
                morning(), CycleEnded{m_department.shown(), CycleOutcome::ended, {}, {}}, {*cycle});
            m_department.record(
                morning(),
                TestConditionsRecorded{.chamberEmpty = true,
                                       .dryingRun = false,
                                       .exposureMinutes = TypedNumber{"3.5", 3'500},
                                       .exposureCelsius = TypedNumber{"134", 134'000}},
                {*cycle});
            m_department.record(morning(), ChemicalRead{Seen::uniformComplete}, {*sheet, *cycle});
        });
    }

    Matter matterOf(int day, int which, int turn)
    {
        if (day == positiveDay && which == 2 && turn == 0) {
            return Matter::positive;
        }
        const int drawn = m_department.draw(99);
        for (const auto& each : hidden) {
            if (each.day == day && each.which == which && each.turn == turn) {
                return each.matter;
            }
        }
        return drawn < 8    ? Matter::implant
               : drawn < 11 ? Matter::frontOnBoundary
               : drawn < 13 ? Matter::wetPackage
               : drawn < 16 ? Matter::readingTypedWrongly
               : drawn < 18 ? Matter::readingMissing
               : drawn < 19 ? Matter::lowTemperature
               : drawn < 20 ? Matter::aborted
                            : Matter::nothing;
    }

    void planLoad(int day, int which, int turn, int number, Matter matter, bool isLeft)
    {
        const auto load = std::make_shared<Load>();
        load->sterilizer = idOf(which);
        load->number = number;
        load->start = onDay(day, 6, 20 + which * 11) + Duration::minutes(turn * 95);
        load->matter = matter;
        load->hasVial = turn == 0 || hasImplant(*load);
        load->isLeft = isLeft;
        m_department.at(after(load->start, -12), [=, this] { fill(*load, day); });
        m_department.at(load->start, [=, this] { start(*load, day); });
        m_department.at(after(load->start, 52), [=, this] { end(*load, day); });
        m_department.at(after(load->start, 57), [=, this] { read(*load, day); });
        if (isRecorded(*load)) {
            m_department.at(after(load->start, 60), [=, this] { attach(*load, day); });
        }
        m_department.at(after(load->start, 75), [=, this] { check(*load, day); });
        if (load->hasVial) {
            m_department.at(after(load->start, 62), [=, this] { incubate(*load, day); });
            m_department.at(after(load->start, 124), [=, this] { readVial(*load, day); });
        }
        if (isLeft) {
            return;
        }
        const int wait = load->matter == Matter::implant ? 130 : 80;
        m_department.at(after(load->start, wait), [=, this] { sign(*load, day); });
    }

    static bool hasImplant(const Load& load)
    {
        return load.matter == Matter::implant || load.matter == Matter::controlDead;
    }

    /// A dead control speaks against every vial of its lot on that day: it has a lot of its own.
    static std::string vialLot(const Load& load)
    {
        return load.matter == Matter::controlDead ? "pl-vial-old" : "pl-vial";
    }

    const Worker& on(int day) const { return onDuty(m_department.now(), day); }

    void fill(Load& load, int day)
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

    void start(Load& load, int day)
    {
        load.counter = nextCounter(load.sterilizer);
        m_department.record(on(day),
                            CycleStarted{ClockSource::facility, m_department.shown(), load.counter},
                            {load.cycle});
    }

    void end(Load& load, int day)
    {
        const bool aborted = load.matter == Matter::aborted;
        m_department.record(on(day),
                            CycleEnded{m_department.shown(),
                                       aborted ? CycleOutcome::aborted : CycleOutcome::ended,
                                       aborted ? std::optional(AbortPhase::exposure) : std::nullopt,
                                       {}},
                            {load.cycle});
        m_department.record(on(day), CycleUnloaded{}, {load.cycle});
        m_department.record(
            on(day),
            PrintoutRecorded{"PREVAC 132", "STERILIZER " + load.sterilizer.substr(3), load.counter,
                             journalTime(load.start, m_department.office().zone()),
                             m_department.shown()},
            {load.cycle});
    }

    void read(Load& load, int day)
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
            m_department.correct(
                lead(), wrong.firstSeq, "the printout says 4.0",
                PhysicalRead{Parameter::exposure, typed("4.0", Unit::minutes, 4'000)},
                {load.cycle});
        } else {
            m_department.record(
                on(day), PhysicalRead{Parameter::exposure, typed("4.0", Unit::minutes, 4'000)},
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
            m_department.record(on(day), ChemicalRead{Seen::endColourReached},
                                {external, load.cycle});
        }
    }

    /// Of an aborted cycle the recorder wrote nothing that can be used; some files nobody fetches.
    static bool isRecorded(const Load& load)
    {
        constexpr int forgotten = 25;
        return load.matter != Matter::aborted && load.number % forgotten != forgotten - 1;
    }

    void attach(Load& load, int day)
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

    void check(Load& load, int day)
    {
        for (std::size_t i = 0; i < load.items.size(); ++i) {
            const bool dry = load.matter != Matter::wetPackage || i != 0;
            m_department.record(on(day),
                                PackageChecked{.cooled = true,
                                               .dry = dry,
                                               .intact = true,
                                               .sealed = true,
                                               .labelAgrees = true},
                                {load.items[i], load.cycle});
        }
    }

    void incubate(Load& load, int day)
    {
        // One control a day of each lot, beside the first vial.
        std::string& control = m_controlOfDay[{day, vialLot(load)}];
        if (control.empty()) {
            control = m_department.newId("bc");
            load.control = control;
            m_department.record(on(day), ControlPrepared{"pr-vial", vialLot(load), {}}, {control});
            m_department.record(on(day), BiologicalActivated{}, {control});
            m_department.record(on(day), BiologicalIncubated{}, {control, "in-1"});
        }
        m_department.record(on(day), BiologicalActivated{}, {load.vial, load.cycle});
        m_department.record(on(day), BiologicalIncubated{}, {load.vial, load.cycle, "in-1"});
    }

    void readVial(Load& load, int day)
    {
        const bool isDead = load.matter == Matter::controlDead;
        if (!load.control.empty()) {
            m_department.record(on(day), BiologicalRead{isDead ? Seen::noGrowth : Seen::growth},
                                {load.control});
        }
        const bool grows = load.matter == Matter::positive;
        m_department.record(on(day), BiologicalRead{grows ? Seen::growth : Seen::noGrowth},
                            {load.vial, load.cycle});
        if (grows) {
            afterAPositive(load, day);
        } else if (load.isSigned) {
            (void)m_department.signAsDecided(on(day), load.cycle); // with the vial's answer
        }
    }

    /// Out of service; the next morning a qualification with a vial, the incident closed, a return.
    void afterAPositive(const Load& load, int day)
    {
        const std::string incident = m_department.newId("ic");
        m_department.record(lead(), IncidentOpened{}, {incident, load.cycle, load.sterilizer});
        m_department.record(
            lead(),
            SterilizerTakenOut{ServiceState::outOfService, "growth in the first load's vial"},
            {load.sterilizer});
        const auto test = std::make_shared<Load>();
        test->sterilizer = load.sterilizer;
        const Instant start = onDay(day + 1, 4, 0);
        m_department.at(after(start, -5), [=, this] {
            test->cycle = m_department
                              .reserve(morning(), {.sterilizer = test->sterilizer,
                                                   .specification = "sp-qualification",
                                                   .purpose = Purpose::qualification})
                              .cycle;
            test->strip = m_department.newId("ci");
            test->vial = m_department.newId("bv");
            m_department.record(morning(),
                                PcdPlaced{"A",
                                          {{test->strip, "pr-strip", "pl-strip", {}}},
                                          {{test->vial, "pr-vial", "pl-vial", {}}}},
                                {m_department.newId("pd"), test->cycle, test->strip, test->vial});
        });
        m_department.at(start, [=, this] {
            m_department.record(morning(),
                                CycleStarted{ClockSource::facility, m_department.shown(),
                                             nextCounter(test->sterilizer)},
                                {test->cycle});
        });
        m_department.at(after(start, 45), [=, this] {
            m_department.record(morning(),
                                CycleEnded{m_department.shown(), CycleOutcome::ended, {}, {}},
                                {test->cycle});
            m_department.record(morning(), ChemicalRead{Seen::frontInAcceptZone},
                                {test->strip, test->cycle});
            m_department.record(lead(), TestPhysicalJudged{true}, {test->cycle});
            incubate(*test, day + 1);
        });
        m_department.at(after(start, 107), [=, this] { readVial(*test, day + 1); });
        m_department.at(after(start, 110), [=, this] {
            m_department.record(boss(),
                                IncidentClosed{"the cause was found and mended, and a "
                                               "qualification with a vial was negative"},
                                {incident, test->cycle, test->sterilizer});
            m_department.record(boss(), SterilizerReturned{"put right and qualified"},
                                {test->sterilizer});
        });
    }

    void sign(Load& load, int day)
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

    Department& m_department;
    std::map<std::pair<int, std::string>, std::string> m_controlOfDay; ///< by day and lot
    std::map<std::string, std::int64_t> m_counters{
        {"sz-1", 4'200}, {"sz-2", 3'900}, {"sz-3", 1'150}, {"sz-4", 7'410}};
};

} // namespace

void planThreeWeeks(Department& department, bool withLivingDay)
{
    // The agenda keeps what it is given until it is done.
    static std::unique_ptr<Weeks> weeks;
    weeks = std::make_unique<Weeks>(department);
    weeks->plan();
    if (withLivingDay) {
        registerForLivingDay(department);
        weeks->planLivingDay();
        planGasLoad(department);
        planImmediateUse(department);
    }
}

} // namespace loadwarden::demo
