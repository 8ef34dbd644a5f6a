#include "demo/department/vial_steps.h"

#include <memory>

namespace loadwarden::demo {

void VialSteps::incubate(Load& load, int day)
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

void VialSteps::read(Load& load, int day)
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

void VialSteps::afterAPositive(const Load& load, int day)
{
    const std::string incident = m_department.newId("ic");
    m_department.record(lead(), IncidentOpened{}, {incident, load.cycle, load.sterilizer});
    m_department.record(
        lead(), SterilizerTakenOut{ServiceState::outOfService, "growth in the first load's vial"},
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
                                         m_counters.next(test->sterilizer)},
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
    m_department.at(after(start, 107), [=, this] { read(*test, day + 1); });
    m_department.at(after(start, 110), [=, this] {
        m_department.record(boss(),
                            IncidentClosed{"the cause was found and mended, and a "
                                           "qualification with a vial was negative"},
                            {incident, test->cycle, test->sterilizer});
        m_department.record(boss(), SterilizerReturned{"put right and qualified"},
                            {test->sterilizer});
    });
}

} // namespace loadwarden::demo
