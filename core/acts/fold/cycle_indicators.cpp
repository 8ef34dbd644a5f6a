#include "core/acts/fold/cycle_parts.h"
#include "core/acts/fold/indicator_fold.h"
#include "core/acts/fold/seen.h"

#include <algorithm>
#include <iterator>

// What was placed in a cycle beside the items, and what was read without having been placed.

namespace loadwarden {
namespace {

/// Whether an act says something of an indicator that must not be lost when nobody placed it.
bool saysSomething(const AnyAct& act)
{
    return seenIn(act) || std::holds_alternative<ChemicalLost>(act)
           || std::holds_alternative<ChemicalUnsettled>(act)
           || std::holds_alternative<BiologicalActivated>(act)
           || std::holds_alternative<BiologicalIncubated>(act)
           || std::holds_alternative<BiologicalLost>(act)
           || std::holds_alternative<BiologicalUnsettled>(act)
           || std::holds_alternative<BiologicalVoided>(act)
           || std::holds_alternative<IncidentFound>(act);
}

ProcessChallengeDevice& pcdOf(LoadRecord& load, std::string_view id)
{
    const auto found = std::ranges::find(load.pcds, id, &ProcessChallengeDevice::id);
    return found != load.pcds.end()
               ? *found
               : load.pcds.emplace_back(ProcessChallengeDevice{.id = std::string(id)});
}

class Placing {
public:
    Placing(Folding& folding, CycleFold& into, bool own)
        : m_folding(folding), m_into(into), m_own(own)
    {
    }

    void chemical(std::string_view pcd, const PlacedIndicator& placed)
    {
        if (take(placed.id)) {
            pcdOf(m_into.load, pcd)
                .indicators.push_back(foldChemical(m_folding, placed, m_into.id, m_own));
        }
    }

    void vial(std::string_view pcd, const PlacedIndicator& placed)
    {
        if (take(placed.id)) {
            pcdOf(m_into.load, pcd).vials.push_back(foldVial(m_folding, placed, m_into.id, m_own));
        }
    }

    /// A second sheet is taken for the first where it shows a failure; that it is good says nothing
    /// of the first.
    void sheet(const PlacedIndicator& placed)
    {
        if (!take(placed.id)) {
            return;
        }
        ChemicalIndicator folded = foldChemical(m_folding, placed, m_into.id, m_own);
        std::optional<ChemicalIndicator>& sheet = m_into.cycle.sheet;
        if (!sheet) {
            sheet = std::move(folded);
            return;
        }
        std::ranges::copy_if(folded.readings, std::back_inserter(sheet->readings),
                             [](const IndicatorReading& reading) {
                                 return rankOf(reading.seen, false) != SeenRank::good;
                             });
        sheet->lost = sheet->lost ? sheet->lost : folded.lost;
        sheet->unsettled = sheet->unsettled ? sheet->unsettled : folded.unsettled;
        sheet->alsoUsedIn.insert(sheet->alsoUsedIn.end(), folded.alsoUsedIn.begin(),
                                 folded.alsoUsedIn.end());
    }

    [[nodiscard]] bool isPlaced(std::string_view id) const
    {
        return std::ranges::find(m_into.placed, id) != m_into.placed.end();
    }

private:
    bool take(const std::string& id)
    {
        if (isPlaced(id)) {
            return false;
        }
        m_into.placed.push_back(id);
        return true;
    }

    Folding& m_folding;
    CycleFold& m_into;
    bool m_own;
};

} // namespace

void foldIndicators(Folding& folding, CycleFold& into, bool own)
{
    Placing placing(folding, into, own);
    folding.eachValue<PcdPlaced>(into.id, own, [&](const Entry& entry, const PcdPlaced& act) {
        const std::string_view pcd = entry.subject("pd");
        pcdOf(into.load, pcd);
        into.pcdMarks[std::string(pcd)] = act.mark;
        for (const PlacedIndicator& each : act.indicators) {
            placing.chemical(pcd, each);
        }
        for (const PlacedIndicator& each : act.vials) {
            placing.vial(pcd, each);
        }
    });
    const bool isSheet = into.purpose == Purpose::bowieDick;
    folding.eachValue<SheetPlaced>(into.id, own, [&](const Entry& entry, const SheetPlaced& act) {
        const PlacedIndicator placed{.id = std::string(entry.subject("ci")),
                                     .product = act.product,
                                     .lot = act.lot,
                                     .place = {}};
        if (isSheet) {
            placing.sheet(placed);
        } else {
            placing.chemical(placed.id, placed);
        }
    });
    for (const std::uint32_t index : folding.book().about(into.id)) {
        const Fact& fact = folding.book().facts()[index];
        if (!fact.stands() || !saysSomething(fact.origin->act)) {
            continue;
        }
        const std::string vial(isChemical(fact.origin->act) ? std::string_view{}
                                                            : fact.origin->subject("bv"));
        const std::string id = vial.empty() ? std::string(fact.origin->subject("ci")) : vial;
        if (id.empty() || placing.isPlaced(id)) {
            continue;
        }
        folding.misfit(*fact.origin, MisfitWhy::notPlaced);
        const PlacedIndicator unplaced{.id = id, .product = {}, .lot = {}, .place = {}};
        if (!vial.empty()) {
            placing.vial(id, unplaced);
        } else if (isSheet) {
            placing.sheet(unplaced);
        } else {
            placing.chemical(id, unplaced);
        }
    }
}

} // namespace loadwarden
