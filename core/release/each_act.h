#pragma once

#include "core/release/evidence.h"

#include <optional>
#include <vector>

namespace loadwarden {

/// Calls `visit(const Act&, bool insideLoad)` for every act of the evidence, wherever it stands.
template <class Visit>
class ActWalk {
public:
    explicit ActWalk(Visit visit) : m_visit(visit) {}

    void walk(const EvidenceRecord& record, const std::vector<Control>& controls)
    {
        if (record.sterilizer) {
            sterilizer(*record.sterilizer);
        }
        for (const Control& control : controls) {
            one(control.activation);
            readings(control.readings);
            one(control.unsettled);
        }
        if (record.test) {
            cycle(*record.test);
            return;
        }
        m_insideLoad = true;
        load(record.load);
    }

private:
    void one(const Act& act) { m_visit(act, m_insideLoad); }
    void one(const std::optional<Act>& act)
    {
        if (act) {
            m_visit(*act, m_insideLoad);
        }
    }
    template <class Each>
    void acts(const std::vector<Each>& list)
    {
        for (const Each& each : list) {
            one(each.act);
        }
    }
    void readings(const std::vector<IndicatorReading>& list)
    {
        for (const IndicatorReading& reading : list) {
            one(reading.act);
            one(reading.voided);
        }
    }
    void indicator(const ChemicalIndicator& indicator)
    {
        readings(indicator.readings);
        one(indicator.lost);
        one(indicator.unsettled);
    }
    void vial(const Vial& vial)
    {
        one(vial.activation);
        readings(vial.readings);
        one(vial.voided);
        one(vial.lost);
        one(vial.unsettled);
        if (vial.incidentFinding) {
            one(vial.incidentFinding->act);
        }
    }
    void sterilizer(const SterilizerRecord& sterilizer)
    {
        acts(sterilizer.service);
        for (const HistoryCycle& past : sterilizer.cycles) {
            cycle(past);
        }
        for (const Incident& incident : sterilizer.incidents) {
            acts(incident.closings);
        }
    }
    void cycle(const HistoryCycle& cycle)
    {
        acts(cycle.failures);
        acts(cycle.resolutions);
        for (const Vial& each : cycle.vials) {
            vial(each);
        }
        if (cycle.sheet) {
            indicator(*cycle.sheet);
        }
        if (cycle.voidReason) {
            one(cycle.voidReason->act);
        }
        if (cycle.leak) {
            one(cycle.leak->act);
        }
        if (cycle.physical) {
            one(cycle.physical->act);
        }
        for (const ChemicalIndicator& each : cycle.indicators) {
            indicator(each);
        }
    }
    void item(const Item& item)
    {
        one(item.recorded);
        one(item.confirmed);
        acts(item.checks);
        one(item.checkLost);
        if (item.external) {
            indicator(*item.external);
        }
        for (const ChemicalIndicator& each : item.internals) {
            indicator(each);
        }
    }
    void load(const LoadRecord& load)
    {
        acts(load.alarms);
        if (load.printout) {
            one(load.printout->act);
        }
        one(load.printoutLost);
        acts(load.printoutAnswers);
        acts(load.readings);
        acts(load.lostReadings);
        for (const Act& verification : load.verifications) {
            one(verification);
        }
        for (const ProcessChallengeDevice& pcd : load.pcds) {
            for (const ChemicalIndicator& each : pcd.indicators) {
                indicator(each);
            }
            for (const Vial& each : pcd.vials) {
                vial(each);
            }
        }
        for (const Item& each : load.items) {
            item(each);
        }
        for (const AerationRun& run : load.aerationRuns) {
            one(run.start);
            one(run.end);
            one(run.interrupted);
        }
        acts(load.reviews);
    }

    Visit m_visit;
    bool m_insideLoad = false;
};

template <class Visit>
void forEachAct(const EvidenceRecord& record, const std::vector<Control>& controls, Visit visit)
{
    ActWalk<Visit>(visit).walk(record, controls);
}

} // namespace loadwarden
