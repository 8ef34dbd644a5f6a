#include "tests/core/store/reach/weeks.h"

#include <algorithm>
#include <random>

namespace loadwarden::tests {
namespace {

class Department {
public:
    Department(std::uint64_t seed, const WeeksOptions& options)
        : m_random(seed), m_options(options), m_journal(morning())
    {
        for (int i = 2; i <= options.sterilizers; ++i) {
            const std::string id = "sz-" + std::to_string(i);
            m_journal.add(supervisorE, at(5, 40), {id},
                          SterilizerRecorded{.name = "S" + std::to_string(i), .model = "M1"});
            m_journal.add(supervisorE, at(5, 40), {id}, SterilizerReturned{"installed"});
        }
        m_journal.add(operatorA, at(5, 45), {"pl-9", "pr-4"},
                      ProductLotRecorded{"N4", parseDate("2032-01-01")});
        m_journal.add(operatorA, at(5, 45), {"pl-5", "pr-4"},
                      ProductLotRecorded{"N5", parseDate("2032-01-01")});
    }

    Journal all()
    {
        for (int day = 0; day < m_options.days; ++day) {
            m_day = day;
            addRegisters();
            for (int i = 1; i <= m_options.sterilizers; ++i) {
                m_sterilizer = i;
                m_minute = 7 * 60 + 10 * i;
                m_controlOfDay.clear();
                if (i > 1 || day > 0) {
                    addTest();
                }
                const int loads = between(m_options.oddities ? 0 : 1, m_options.loadsADay);
                for (int load = 0; load < loads; ++load) {
                    addLoad(load == 0);
                }
            }
            addFollowUps();
        }
        return m_journal;
    }

private:
    bool chance(int percent) { return between(1, 100) <= percent; }
    int between(int least, int most)
    {
        // Not a distribution of the library's: each has its own.
        return least + static_cast<int>(m_random() % static_cast<std::uint64_t>(most - least + 1));
    }
    bool odd(int percent) { return m_options.oddities && chance(percent); }
    std::string next(const char* prefix) { return prefix + std::to_string(++m_number); }
    [[nodiscard]] std::string sterilizer() const { return "sz-" + std::to_string(m_sterilizer); }
    [[nodiscard]] Instant now() const
    {
        return at(0, 0) + Duration::minutes(m_day * 1440 + m_minute);
    }
    Instant later(int minutes)
    {
        m_minute += minutes;
        return now();
    }
    [[nodiscard]] JournalTime shown() const { return {now(), 0}; }
    std::int64_t& counter() { return m_counters[static_cast<std::size_t>(m_sterilizer)]; }

    void addRegisters()
    {
        m_minute = 5 * 60;
        m_sterilizer = between(1, m_options.sterilizers);
        if (m_day > 0 && chance(10)) {
            m_journal.correct(supervisorF, now(), m_journal.seqOf<SpecificationRecorded>("sp-1"),
                              specification(131'500 + 500 * between(0, 2)));
        } else if (chance(10)) {
            m_journal.add(supervisorE, now(), {"sp-1"},
                          specification(131'500 + 500 * between(0, 2)));
        }
        if (odd(10)) {
            m_journal.add(operatorA, now(), {sterilizer()},
                          ClockCompared{shown(), between(-90, 90)});
        }
        if (chance(10)) {
            m_journal.add(supervisorE, now(), {sterilizer()},
                          AlarmClassed{{"A" + std::to_string(between(1, 2)),
                                        chance(70) ? AlarmEffect::harmless
                                                   : AlarmEffect::exposureAffecting}});
        }
        if (odd(3)) {
            m_journal.add(leadC, now(), {sterilizer()},
                          SterilizerTakenOut{ServiceState::held, "held"});
            m_journal.add(supervisorE, later(5), {sterilizer()}, SterilizerReturned{"good"});
        }
        if (odd(5)) {
            m_journal.add(operatorA, now(), {"in-1"}, IncubatorOutOfRange{});
            m_journal.add(operatorA, later(20), {"in-1"}, IncubatorInRange{});
        }
    }

    static SpecificationRecorded specification(std::int64_t leastThousandths)
    {
        const Quantity warm{Unit::celsius, 132'000};
        return {{.id = "spec-1",
                 .revision = 1,
                 .method = Method::steam,
                 .airRemoval = AirRemoval::prevacuum,
                 .purpose = Purpose::routine,
                 .program = "P1",
                 .cycleType = "T1",
                 .settings = {.temperature = warm, .exposureMs = 240'000, .dryingMs = 1'200'000},
                 .limits = {{Parameter::temperature, {{Unit::celsius, leastThousandths}}, {}},
                            {Parameter::exposure, {{Unit::minutes, 4'000}}, {}},
                            {Parameter::drying, {{Unit::minutes, 20'000}}, {}}}}};
    }

    void addTest()
    {
        if (odd(10)) {
            return;
        }
        m_minute -= 60;
        const bool failed = chance(5);
        testCycle(failed);
        if (failed) {
            if (chance(70)) {
                m_journal.add(leadC, later(20), {m_cycle},
                              FailureResolved{chance(90), Reach::sterilizer, "gasket"});
                m_journal.add(supervisorE, later(1), {sterilizer()}, SterilizerReturned{"mended"});
                testCycle(false);
            }
        }
        m_minute = std::max(m_minute, 7 * 60 + 10 * m_sterilizer);
    }

    void testCycle(bool failed)
    {
        m_cycle = next("ld-t");
        const std::string sheet = next("ci-");
        m_journal.add(operatorA, now(), {m_cycle, sterilizer(), "sp-2"},
                      CycleReserved{.lot = next("T"), .purpose = Purpose::bowieDick});
        m_journal.add(operatorA, now(), {sheet, m_cycle}, SheetPlaced{"pr-3", "pl-3"});
        m_journal.add(operatorA, later(1), {m_cycle},
                      CycleStarted{ClockSource::facility, shown(), ++counter()});
        m_journal.add(operatorA, later(5), {m_cycle},
                      CycleEnded{shown(), CycleOutcome::ended, {}, {}});
        m_journal.add(operatorA, now(), {m_cycle},
                      TestConditionsRecorded{.chamberEmpty = true,
                                             .dryingRun = false,
                                             .exposureMinutes = TypedNumber{"3.5", 3'500},
                                             .exposureCelsius = TypedNumber{"134", 134'000}});
        m_journal.add(operatorA, later(1), {sheet, m_cycle},
                      ChemicalRead{failed ? Seen::notUniform : Seen::uniformComplete});
        m_minute += 10;
    }

    void addLoad(bool first)
    {
        m_cycle = next("ld-");
        m_loads.push_back(m_cycle);
        m_journal.add(operatorA, now(), {m_cycle, sterilizer(), "sp-1"},
                      CycleReserved{.lot = next("L")});
        std::vector<std::string> chemicals;
        m_items.clear();
        for (int i = between(1, 2); i > 0; --i) {
            const std::string item = next("it-");
            m_items.push_back(item);
            ItemAdded added{.label = odd(10) ? "Set " + std::to_string(between(1, 5)) : item,
                            .implant = chance(20) ? Implant::yes : Implant::no,
                            .packaging = "pk-1",
                            .devices = {"dv-1"}};
            const std::string external = next("ci-");
            added.external = PlacedIndicator{external, "pr-1", "pl-1", {}};
            chemicals.push_back(external);
            m_journal.add(operatorA, now(), {item, m_cycle, external}, added);
        }
        if (!m_moving.empty() && chance(50)) {
            m_journal.add(operatorB, now(), {m_moving[0], m_moving[1], m_cycle},
                          ItemMoved{m_moving[1], m_cycle, "again"});
            m_moving.clear();
        }
        const std::string pcd = next("ci-");
        const bool hasVial = first || chance(30);
        m_vial = hasVial ? next("bv-") : std::string();
        PcdPlaced placed{"PCD", {{pcd, "pr-2", "pl-2", {}}}, {}};
        std::vector<std::string> subjects{next("pd-"), m_cycle, pcd};
        if (hasVial) {
            placed.vials = {{m_vial, "pr-4", m_day % 2 == 0 ? "pl-4" : "pl-9", {}}};
            subjects.push_back(m_vial);
        }
        m_journal.add(operatorA, now(), subjects, placed);
        run();
        read(chemicals, pcd);
        if (hasVial) {
            incubate();
        }
        m_minute += between(5, 15);
    }

    void run()
    {
        const bool sterilizersClock = odd(5);
        const std::int64_t counted = odd(3) ? counter()++ : ++counter();
        m_journal.add(
            operatorA, later(2), {m_cycle},
            CycleStarted{sterilizersClock ? ClockSource::sterilizer : ClockSource::facility,
                         shown(), counted});
        m_start = shown();
        m_minute += 50;
        if (chance(5)) {
            m_journal.add(operatorA, now(), {m_cycle},
                          CycleEnded{shown(), CycleOutcome::aborted, AbortPhase::exposure, {}});
            addTrouble();
        } else if (!odd(4)) {
            m_journal.add(operatorA, now(), {m_cycle},
                          CycleEnded{shown(), CycleOutcome::ended, {}, {}});
            if (odd(4)) {
                m_journal.correct(leadC, later(1), m_journal.seqOf<CycleEnded>(m_cycle),
                                  CycleEnded{shown(), CycleOutcome::ended, {}, {}});
            }
        }
        m_journal.add(operatorA, later(1), {m_cycle},
                      PrintoutRecorded{"P1", "S" + std::to_string(m_sterilizer), counted, m_start,
                                       JournalTime{m_start.at + Duration::minutes(50), 0}});
        if (chance(5)) {
            m_journal.add(operatorA, now(), {m_cycle},
                          AlarmRecorded{"A" + std::to_string(between(1, 3))});
            addTrouble();
        }
    }

    void read(const std::vector<std::string>& chemicals, const std::string& pcd)
    {
        const bool low = chance(5);
        m_journal.add(
            operatorA, now(), {m_cycle},
            PhysicalRead{Parameter::temperature,
                         typed(low ? "131.7" : "132.4", Unit::celsius, low ? 131'700 : 132'400)});
        if (low) {
            addTrouble();
        }
        if (chance(20)) {
            record(chance(20) ? Shown::notMet : Shown::met);
        }
        m_journal.add(operatorA, now(), {m_cycle},
                      PhysicalRead{Parameter::exposure, typed("4", Unit::minutes, 4'000)});
        m_journal.add(operatorA, now(), {m_cycle},
                      PhysicalRead{Parameter::drying, typed("20", Unit::minutes, 20'000)});
        m_journal.add(odd(2) ? viewerG : operatorA, later(1), {m_cycle}, PhysicalVerified{});
        for (const std::string& id : chemicals) {
            const bool bad = chance(4);
            m_journal.add(operatorA, later(1), {id, m_cycle},
                          ChemicalRead{bad ? Seen::unchanged : Seen::endColourReached});
            if (bad) {
                addTrouble();
            }
        }
        const bool rejected = chance(4);
        m_journal.add(operatorA, now(), {pcd, m_cycle},
                      ChemicalRead{rejected ? Seen::frontOnBoundary : Seen::frontInAcceptZone});
        if (rejected) {
            addTrouble();
            if (chance(30)) {
                m_journal.correct(supervisorF, later(1), m_journal.seqOf<ChemicalRead>(pcd),
                                  ChemicalRead{Seen::frontInAcceptZone});
            }
        }
        for (const std::string& item : m_items) {
            const bool wet = chance(4);
            m_journal.add(operatorA, later(1), {item, m_cycle},
                          PackageChecked{true, !wet, true, true, true});
            if (wet) {
                addTrouble();
                m_moving = {item, m_cycle};
            }
        }
        if (odd(2)) {
            Entry strange{.recordedAt = shown(), .happenedAt = shown(), .actor = "st-a"};
            strange.role = Role::operating;
            strange.subjects = {chance(50) ? m_cycle : m_items.front()};
            strange.act = NotUnderstood{"package.weighed", 1, "{}"};
            m_journal.write(strange);
        }
    }

    /// What somebody will perhaps resolve in the evening.
    /// A trace of the cycle.
    void record(Shown exposure)
    {
        TraceRead read;
        read.content = std::string(64, 'a');
        read.fileName = "cycle.csv";
        read.mapping = "{}";
        read.findings.exposure = exposure;
        m_journal.add(operatorA, now(), {next("tr-"), m_cycle}, read);
        if (exposure == Shown::notMet) {
            addTrouble();
        }
    }

    void addTrouble()
    {
        m_troubles.insert(m_cycle);
        if (chance(20)) {
            m_journal.add(operatorB, now(), {m_cycle}, FailureRecorded{FailureKind::physical});
        }
    }

    void incubate()
    {
        const std::string lot = m_day % 2 == 0 ? "pl-4" : "pl-9";
        if (m_controlOfDay.empty() && !odd(10)) {
            m_controlOfDay = next("bc-");
            const bool ofOther = odd(5);
            m_journal.add(operatorA, now(), {m_controlOfDay},
                          ControlPrepared{"pr-4", ofOther ? "pl-5" : lot,
                                          chance(10) ? m_cycle : std::string()});
            m_journal.add(operatorA, now(), {m_controlOfDay}, BiologicalActivated{});
            m_journal.add(operatorA, now(), {m_controlOfDay, "in-1"}, BiologicalIncubated{});
            m_evening.push_back({{m_controlOfDay}, chance(95) ? Seen::growth : Seen::noGrowth});
        }
        const std::vector<std::string> subjects{m_vial, m_cycle};
        m_journal.add(operatorA, later(1), subjects, BiologicalActivated{});
        m_journal.add(operatorA, now(), {m_vial, m_cycle, "in-1"}, BiologicalIncubated{});
        if (!odd(5)) {
            const Seen seen = chance(4) ? Seen::growth : odd(4) ? Seen::unclear : Seen::noGrowth;
            m_evening.push_back({subjects, seen});
        }
    }

    void addFollowUps()
    {
        m_minute = 20 * 60;
        for (const auto& [subjects, seen] : m_evening) {
            m_journal.add(operatorA, now(), subjects, BiologicalRead{seen});
            if (seen == Seen::growth && subjects.size() == 2) {
                m_positives.push_back(subjects[1]);
                if (chance(80)) {
                    m_journal.add(operatorA, later(1),
                                  {next("ic-"), subjects[1], sterilizerOf(subjects[1])},
                                  IncidentOpened{});
                }
                if (chance(50)) {
                    m_journal.add(supervisorE, later(1), {sterilizerOf(subjects[1])},
                                  SterilizerReturned{"tested"});
                }
            }
        }
        for (auto each = m_troubles.begin(); each != m_troubles.end();) {
            if (chance(40)) {
                m_journal.add(chance(90) ? leadC : operatorB, later(1), {*each},
                              FailureResolved{chance(90),
                                              chance(50) ? Reach::thatLoad : Reach::sterilizer,
                                              chance(95) ? "mended" : "-"});
                if (chance(10)) {
                    m_journal.correct(supervisorF, later(1),
                                      m_journal.seqOf<FailureResolved>(*each), EntryVoided{});
                }
                each = m_troubles.erase(each);
            } else {
                ++each;
            }
        }
        if (!m_positives.empty() && !m_loads.empty() && chance(50)) {
            closeIncident();
        }
        m_evening.clear();
    }

    void closeIncident()
    {
        for (const Entry& entry : m_journal.entries()) {
            if (std::holds_alternative<IncidentOpened>(entry.act)
                && entry.subject("ld") == m_positives.back()) {
                const std::string incident(entry.subject("ic"));
                m_journal.add(supervisorE, later(1),
                              {incident, m_loads.back(), std::string(entry.subject("sz"))},
                              IncidentClosed{"negative since"});
                m_positives.pop_back();
                return;
            }
        }
    }

    [[nodiscard]] std::string sterilizerOf(const std::string& cycle) const
    {
        for (const Entry& entry : m_journal.entries()) {
            if (std::holds_alternative<CycleReserved>(entry.act) && entry.isAbout(cycle)) {
                return std::string(entry.subject("sz"));
            }
        }
        return {};
    }

    struct Reading {
        std::vector<std::string> subjects;
        Seen seen;
    };

    std::mt19937_64 m_random;
    WeeksOptions m_options;
    Journal m_journal;
    int m_day = 0;
    int m_minute = 0; ///< of the day; may run over
    int m_sterilizer = 1;
    int m_number = 100;
    std::array<std::int64_t, 10> m_counters{200, 200, 200, 200, 200, 200, 200, 200, 200, 200};
    std::string m_cycle;
    std::string m_vial;
    std::string m_controlOfDay;
    JournalTime m_start;
    std::vector<std::string> m_items;
    std::vector<std::string> m_loads;
    std::vector<std::string> m_moving; ///< item and where it was
    std::set<std::string> m_troubles;
    std::vector<std::string> m_positives;
    std::vector<Reading> m_evening;
};

} // namespace

Journal weeks(std::uint64_t seed, const WeeksOptions& options)
{
    return Department(seed, options).all();
}

std::vector<std::string> cyclesIn(const std::vector<Entry>& entries)
{
    std::vector<std::string> cycles;
    for (const Entry& entry : entries) {
        if (std::holds_alternative<CycleReserved>(entry.act)) {
            cycles.emplace_back(entry.subject("ld"));
        }
    }
    return cycles;
}

} // namespace loadwarden::tests
