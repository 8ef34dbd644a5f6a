#include "core/acts/fold/indicator_fold.h"

#include "core/acts/fold/cycle_parts.h"
#include "core/acts/fold/members.h"
#include "core/acts/fold/readings.h"
#include "core/acts/fold/registers.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// Product and lot as the evidence names them.
struct Link {
    std::string product;
    std::string lot;
};

Link linkOf(Folding& folding, const std::string& product, const std::string& lot,
            std::int64_t firstRead)
{
    const Fact* const known =
        lot.empty() ? nullptr : findRevision<ProductLotRecorded>(folding, lot, newest);
    std::string_view ofLot;
    if (known != nullptr) {
        ofLot = known->origin->subject("pr");
    }
    const std::string_view named = product.empty() ? ofLot : std::string_view(product);
    Link link;
    link.lot = lot;
    if (known != nullptr && named == ofLot) {
        link.lot = std::get<ProductLotRecorded>(known->current().act).number;
    }
    if (!named.empty()) {
        link.product = boundProduct(folding, named, firstRead);
    }
    return link;
}

/// Other cycles in which an indicator was placed, by their lots.
std::vector<std::string> otherCyclesOf(Folding& folding, std::string_view id,
                                       std::string_view cycle)
{
    std::vector<std::string> lots;
    for (const std::uint32_t index : folding.book().about(id)) {
        const Fact& fact = folding.book().facts()[index];
        const AnyAct& act = fact.origin->act;
        const bool places = std::holds_alternative<PcdPlaced>(act)
                            || std::holds_alternative<SheetPlaced>(act)
                            || std::holds_alternative<ItemAdded>(act);
        const std::string_view other = fact.origin->subject("ld");
        if (!places || other == cycle) {
            continue;
        }
        folding.take(fact, false);
        if (!fact.stands()) {
            continue;
        }
        if (std::holds_alternative<ItemAdded>(act)) {
            // An item that was taken out again took its indicators with it.
            const std::vector<Member> members = membersOf(folding, other, false);
            if (std::ranges::find(members, fact.origin->subject("it"), &Member::id)
                == members.end()) {
                continue;
            }
        }
        std::string lot = lotOf(folding.book(), other);
        if (std::ranges::find(lots, lot) == lots.end()) {
            lots.push_back(std::move(lot));
        }
    }
    return lots;
}

struct Incubation {
    std::optional<Instant> start;
    std::string incubator;
};

/// The start of an incubation; said twice and differently it has not started.
Incubation incubationOf(Folding& folding, std::string_view id, bool own)
{
    Incubation incubation;
    const auto said = saidOf<BiologicalIncubated>(folding, id, own, false);
    for (std::size_t i = 0; i < said.values.size(); ++i) {
        const Entry& entry = *said.values[i].entry;
        const Instant at = entry.happenedAt.at;
        if (i == 0) {
            incubation = {at, std::string(entry.subject("in"))};
        } else if (at != said.first().entry->happenedAt.at
                   || entry.subject("in") != incubation.incubator) {
            folding.misfit(entry, MisfitWhy::saidTwice);
            incubation.start.reset();
        }
    }
    return incubation;
}

/// What a process indicator showed; `worse` wins where both were said.
ProcessIndicator processIndicatorOf(Folding& folding, std::string_view id, bool own,
                                    ProcessIndicator worse)
{
    ProcessIndicator shown = ProcessIndicator::unknown;
    folding.eachValue<ProcessIndicatorRead>(
        id, own, [&](const Entry& entry, const ProcessIndicatorRead& act) {
            if (act.seen == worse) {
                shown = worse;
            } else if (!isSigned(actOf(entry))) {
                folding.misfit(entry, MisfitWhy::unsignedFact);
            } else if (shown == ProcessIndicator::unknown) {
                shown = act.seen;
            }
        });
    return shown;
}

} // namespace

std::string boundProduct(Folding& folding, std::string_view product, std::int64_t firstRead)
{
    const Fact* found = findRevision<ProductRecorded>(folding, product, firstRead);
    if (found == nullptr) {
        // Entered into the register after the reading.
        found = findFirst<ProductRecorded>(folding, product);
    }
    std::string bound(product);
    return found == nullptr ? bound : bound + '@' + std::to_string(found->origin->seq);
}

ChemicalIndicator foldChemical(Folding& folding, const PlacedIndicator& placed,
                               std::string_view cycle, bool own)
{
    const Readings readings(folding, placed.id, own);
    Link link = linkOf(folding, placed.product, placed.lot, readings.firstRead());
    return {.product = std::move(link.product),
            .lot = std::move(link.lot),
            .place = placed.place,
            .alsoUsedIn = otherCyclesOf(folding, placed.id, cycle),
            .readings = readings.take(),
            .lost = firstAct(saidOf<ChemicalLost>(folding, placed.id, own, true)),
            .unsettled =
                firstAct(saidOf<ChemicalUnsettled>(folding, placed.id, own, true), Role::lead)};
}

Vial foldVial(Folding& folding, const PlacedIndicator& placed, std::string_view cycle, bool own)
{
    const std::string& id = placed.id;
    const Readings readings(folding, id, own);
    Link link = linkOf(folding, placed.product, placed.lot, readings.firstRead());
    Incubation incubation = incubationOf(folding, id, own);
    Vial vial{.id = id,
              .product = std::move(link.product),
              .lot = std::move(link.lot),
              .incubator = std::move(incubation.incubator),
              .activation = firstAct(saidOf<BiologicalActivated>(folding, id, own, true)),
              .incubationStart = incubation.start,
              .processIndicator = processIndicatorOf(folding, id, own, ProcessIndicator::unchanged),
              .alsoUsedIn = otherCyclesOf(folding, id, cycle),
              .readings = readings.take(),
              .voided = firstAct(saidOf<BiologicalVoided>(folding, id, own, true), Role::lead),
              .lost = firstAct(saidOf<BiologicalLost>(folding, id, own, true)),
              .unsettled =
                  firstAct(saidOf<BiologicalUnsettled>(folding, id, own, true), Role::lead)};
    const auto found = saidOf<IncidentFound>(folding, id, own, true);
    for (const auto& value : found.values) {
        const Act act = actOf(*value.entry);
        const bool better = isSigned(act) && act.role == Role::supervisor;
        if (!vial.incidentFinding || better) {
            vial.incidentFinding = IncidentFinding{value.act->was, act};
        }
    }
    return vial;
}

Control foldControl(Folding& folding, std::string_view id, bool own)
{
    const Readings readings(folding, id, own);
    Incubation incubation = incubationOf(folding, id, own);
    Control control{
        .id = std::string(id),
        .incubator = std::move(incubation.incubator),
        .activation = firstAct(saidOf<BiologicalActivated>(folding, id, own, true)),
        .incubationStart = incubation.start,
        .processIndicator = processIndicatorOf(folding, id, own, ProcessIndicator::changed),
        .readings = readings.take(),
        .unsettled = firstAct(saidOf<BiologicalUnsettled>(folding, id, own, true), Role::lead)};
    const auto prepared = saidOf<ControlPrepared>(folding, id, own, true);
    if (!prepared.empty()) {
        const ControlPrepared& first = *prepared.first().act;
        control.product = first.product;
        control.lot = first.lot;
        control.forLoad = first.forLoad;
        if (!prepared.agree([](const ControlPrepared& a, const ControlPrepared& b) {
                return a.product == b.product && a.lot == b.lot && a.forLoad == b.forLoad;
            })) {
            // It is not known of which product or lot it is: it stands for none.
            folding.misfit(*prepared.values.back().entry, MisfitWhy::saidTwice);
            control.product.clear();
            control.lot.clear();
        }
    }
    return control;
}

} // namespace loadwarden
