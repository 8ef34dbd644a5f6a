#include "core/acts/fold/names.h"

#include "core/acts/fold/members.h"

#include <map>
#include <set>

namespace loadwarden {
namespace {

/// Makes a name differ from those that are taken, and takes it.
void makeUnique(std::set<std::string>& taken, std::string& name)
{
    const std::string first = name;
    for (int number = 2; !taken.insert(name).second; ++number) {
        name = first + '@' + std::to_string(number);
    }
}

void nameVials(EvidenceRecord& record)
{
    std::set<std::string> taken;
    for (const Control& control : record.controls) {
        taken.insert(control.id);
    }
    const auto name = [&taken](std::vector<Vial>& vials) {
        for (Vial& vial : vials) {
            makeUnique(taken, vial.id);
        }
    };
    for (ProcessChallengeDevice& pcd : record.load.pcds) {
        name(pcd.vials);
    }
    if (record.test) {
        name(record.test->vials);
    }
    if (record.sterilizer) {
        for (HistoryCycle& cycle : record.sterilizer->cycles) {
            name(cycle.vials);
        }
    }
}

} // namespace

void nameCycles(const FactBook& book, const CycleFold& own,
                const std::vector<std::string>& cycleIds, EvidenceRecord& record)
{
    nameVials(record);
    const std::string& ownLot = record.test ? record.test->lot : record.load.lot;
    std::set<std::string> taken{ownLot};
    std::map<std::string, std::string> names;
    if (!ownLot.empty()) {
        names[own.id] = ownLot;
    }
    for (std::size_t i = 0; i < cycleIds.size(); ++i) {
        std::string& lot = record.sterilizer->cycles[i].lot;
        if (taken.contains(lot)) {
            lot = cycleIds[i];
        }
        makeUnique(taken, lot);
        names[cycleIds[i]] = lot;
    }
    const auto nameOf = [&](const std::string& id) {
        if (const auto found = names.find(id); found != names.end()) {
            return found->second;
        }
        // Not in the record: by its lot, unless a cycle of the record has that.
        std::string lot = lotOf(book, id);
        return taken.contains(lot) ? id : lot;
    };
    for (Control& control : record.controls) {
        if (!control.forLoad.empty()) {
            control.forLoad = nameOf(control.forLoad);
        }
    }
    if (!record.sterilizer) {
        return;
    }
    for (Incident& incident : record.sterilizer->incidents) {
        incident.positiveLot = nameOf(incident.positiveLot);
        for (Closing& closing : incident.closings) {
            closing.negativeLot = nameOf(closing.negativeLot);
        }
    }
}

} // namespace loadwarden
