#pragma once

#include "core/release/evidence.h"

#include <optional>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Where an act stands in the evidence.
struct ActPlace {
    std::string_view field;  ///< the field that holds it, or the list in which it stands; a literal
    bool insideLoad = false; ///< the load's own, as against its sterilizer's or a control's
};

/// Calls `visit(const Act&, const ActPlace&)` for every act of the evidence, wherever it stands.
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
            one("activation", control.activation);
            readings(control.readings);
            one("unsettled", control.unsettled);
        }
        if (record.test) {
            cycle(*record.test);
            return;
        }
        m_insideLoad = true;
        load(record.load);
    }

private:
    void one(std::string_view field, const Act& act)
    {
        m_visit(act, ActPlace{field, m_insideLoad});
    }
    void one(std::string_view field, const std::optional<Act>& act)
    {
        if (act) {
            one(field, *act);
        }
    }
    template <class Each>
    void acts(std::string_view field, const std::vector<Each>& list)
    {
        for (const Each& each : list) {
            one(field, each.act);
        }
    }
    void readings(const std::vector<IndicatorReading>& list)
    {
        for (const IndicatorReading& reading : list) {
            one("readings", reading.act);
            one("voided", reading.voided);
        }
    }
    void indicator(const ChemicalIndicator& indicator)
    {
        readings(indicator.readings);
        one("lost", indicator.lost);
        one("unsettled", indicator.unsettled);
    }
    void vial(const Vial& vial)
    {
        one("activation", vial.activation);
        readings(vial.readings);
        one("voided", vial.voided);
        one("lost", vial.lost);
        one("unsettled", vial.unsettled);
        if (vial.incidentFinding) {
            one("incidentFinding", vial.incidentFinding->act);
        }
    }
    void sterilizer(const SterilizerRecord& sterilizer)
    {
        acts("service", sterilizer.service);
        for (const HistoryCycle& past : sterilizer.cycles) {
            cycle(past);
        }
        for (const Incident& incident : sterilizer.incidents) {
            acts("closings", incident.closings);
        }
    }
    void cycle(const HistoryCycle& cycle)
    {
        acts("failures", cycle.failures);
        acts("resolutions", cycle.resolutions);
        for (const Vial& each : cycle.vials) {
            vial(each);
        }
        if (cycle.sheet) {
            indicator(*cycle.sheet);
        }
        if (cycle.voidReason) {
            one("voidReason", cycle.voidReason->act);
        }
        if (cycle.leak) {
            one("leak", cycle.leak->act);
        }
        if (cycle.physical) {
            one("physical", cycle.physical->act);
        }
        for (const ChemicalIndicator& each : cycle.indicators) {
            indicator(each);
        }
    }
    void item(const Item& item)
    {
        one("recorded", item.recorded);
        one("confirmed", item.confirmed);
        acts("checks", item.checks);
        one("checkLost", item.checkLost);
        if (item.external) {
            indicator(*item.external);
        }
        for (const ChemicalIndicator& each : item.internals) {
            indicator(each);
        }
    }
    void load(const LoadRecord& load)
    {
        acts("alarms", load.alarms);
        if (load.printout) {
            one("printout", load.printout->act);
        }
        one("printoutLost", load.printoutLost);
        acts("printoutAnswers", load.printoutAnswers);
        acts("readings", load.readings);
        acts("traces", load.traces);
        acts("lostReadings", load.lostReadings);
        for (const Act& verification : load.verifications) {
            one("verifications", verification);
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
            one("start", run.start);
            one("end", run.end);
            one("interrupted", run.interrupted);
        }
        acts("reviews", load.reviews);
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
