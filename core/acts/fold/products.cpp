#include "core/acts/fold/products.h"

#include "core/acts/fold/indicator_fold.h"
#include "core/acts/fold/registers.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace loadwarden {
namespace {

/// The register's id in a bound name: "pr-1" of "pr-1@12".
std::string idIn(const std::string& bound)
{
    return bound.substr(0, bound.find('@'));
}

/// A product of a record: bound name, and the name that it gets there.
using Names = std::map<std::string, std::string>;

/// Where a record needs one revision of a product only, its id is its name.
Names namesOf(const std::set<std::string>& bound)
{
    std::map<std::string, int> revisions;
    for (const std::string& each : bound) {
        ++revisions[idIn(each)];
    }
    Names names;
    for (const std::string& each : bound) {
        names[each] = revisions[idIn(each)] == 1 ? idIn(each) : each;
    }
    return names;
}

const ProductRecorded* productOf(Folding& folding, const std::string& bound)
{
    const std::size_t at = bound.find('@');
    if (at == std::string::npos) {
        return nullptr;
    }
    const std::int64_t seq = std::stoll(bound.substr(at + 1));
    return findRecorded<ProductRecorded>(folding, idIn(bound), seq + 1);
}

/// Every id with that prefix among the first subjects of facts of a kind.
template <class Act>
std::vector<std::string> idsOf(const FactBook& book, std::string_view prefix)
{
    std::vector<std::string> ids;
    for (const Fact& fact : book.facts()) {
        const std::string_view id = fact.origin->subject(prefix);
        if (std::holds_alternative<Act>(fact.origin->act) && !id.empty()
            && std::ranges::find(ids, id) == ids.end()) {
            ids.emplace_back(id);
        }
    }
    return ids;
}

/// The number of a lot, where it is in the register as one of that product; else its id.
std::string numberOf(Folding& folding, const std::string& lot, const std::string& product)
{
    const Fact* const found = findRevision<ProductLotRecorded>(folding, lot, newest);
    return found != nullptr && found->origin->subject("pr") == product
               ? std::get<ProductLotRecorded>(found->current().act).number
               : lot;
}

/// Adds the lots that indicators name, once for each name of their product.
void addLots(Folding& folding, EvidenceRecord& record, const Names& names)
{
    std::set<std::pair<std::string, std::string>> named; // bound product, number
    const auto note = [&named](const auto& indicator) {
        named.emplace(indicator.product, indicator.lot);
    };
    forEachIndicator(std::as_const(record), note, note);
    for (const std::string& id : idsOf<ProductLotRecorded>(folding.book(), "pl")) {
        // Looked at first: a lot that nothing names is no evidence.
        Folding look(folding.book());
        const Fact* const found = findRevision<ProductLotRecorded>(look, id, newest);
        if (found == nullptr) {
            continue;
        }
        const auto& lot = std::get<ProductLotRecorded>(found->current().act);
        for (const auto& [bound, name] : names) {
            const auto isThere = [&](const IndicatorLot& each) {
                return each.product == name && each.number == lot.number;
            };
            if (idIn(bound) == found->origin->subject("pr") && named.contains({bound, lot.number})
                && std::ranges::none_of(record.lots, isThere)) {
                folding.take(*found, false);
                record.lots.push_back(
                    {.product = name, .number = lot.number, .expires = lot.expires});
            }
        }
    }
}

void addControls(Folding& folding, EvidenceRecord& record, const std::vector<const Vial*>& vials,
                 const std::set<std::string>& ownVials, const Names& names)
{
    std::vector<std::string> ids;
    for (const Fact& fact : folding.book().facts()) {
        const std::string_view id = fact.origin->subject("bc");
        if (!id.empty() && std::ranges::find(ids, id) == ids.end()) {
            ids.emplace_back(id);
        }
    }
    for (const std::string& id : ids) {
        // Looked at first: a control beside no vial of the record is no evidence.
        Folding look(folding.book());
        Control control = foldControl(look, id, false);
        control.lot = numberOf(look, control.lot, control.product);
        const auto isBeside = [&control](const Vial* vial) {
            return !control.product.empty() && control.product == idIn(vial->product)
                   && !control.lot.empty() && control.lot == vial->lot;
        };
        if (std::ranges::none_of(vials, isBeside)) {
            continue;
        }
        const bool own = std::ranges::any_of(
            vials, [&](const Vial* vial) { return isBeside(vial) && ownVials.contains(vial->id); });
        control = foldControl(folding, id, own);
        const std::string product = control.product;
        control.lot = numberOf(folding, control.lot, product);
        for (const auto& [bound, name] : names) {
            if (idIn(bound) != product) {
                continue;
            }
            Control copy = control;
            copy.product = name;
            copy.id = name == product ? id : id + name.substr(name.find('@'));
            record.controls.push_back(std::move(copy));
        }
    }
}

void addIncubators(Folding& folding, EvidenceRecord& record,
                   const std::set<std::string>& incubators,
                   const std::set<std::string>& ownIncubators)
{
    for (const std::string& id : incubators) {
        Incubator incubator{.id = id, .outOfRange = {}};
        const bool own = ownIncubators.contains(id);
        folding.eachValue<IncubatorOutOfRange>(
            id, own, [&](const Entry& entry, const IncubatorOutOfRange&) {
                incubator.outOfRange.push_back({entry.happenedAt.at, std::nullopt});
            });
        folding.eachValue<IncubatorInRange>(
            id, own, [&](const Entry& entry, const IncubatorInRange&) {
                if (!isSigned(actOf(entry))) {
                    folding.misfit(entry, MisfitWhy::unsignedFact);
                    return;
                }
                const Instant at = entry.happenedAt.at;
                for (OutOfRange& span : incubator.outOfRange) {
                    if (span.from <= at && (!span.to || at < *span.to)) {
                        span.to = at;
                    }
                }
            });
        record.incubators.push_back(std::move(incubator));
    }
}

void addPackagings(Folding& folding, EvidenceRecord& record)
{
    std::set<std::string> named;
    for (const Item& item : record.load.items) {
        if (!item.packaging.empty()) {
            named.insert(item.packaging);
        }
    }
    for (const std::string& id : named) {
        if (const auto* recorded = findRecorded<PackagingRecorded>(folding, id)) {
            Packaging packaging = recorded->packaging;
            packaging.id = id;
            record.packagings.push_back(std::move(packaging));
        }
    }
}

} // namespace

void foldProducts(Folding& folding, EvidenceRecord& record)
{
    std::set<std::string> bound;
    std::vector<const Vial*> vials;
    std::set<std::string> incubators;
    forEachIndicator(
        record,
        [&](const ChemicalIndicator& each) {
            if (!each.product.empty()) {
                bound.insert(each.product);
            }
        },
        [&](const Vial& each) {
            if (!each.product.empty()) {
                bound.insert(each.product);
            }
            if (!each.incubator.empty()) {
                incubators.insert(each.incubator);
            }
            vials.push_back(&each);
        });
    std::set<std::string> ownVials;
    std::set<std::string> ownIncubators;
    const auto own = [&](const Vial& vial) {
        ownVials.insert(vial.id);
        ownIncubators.insert(vial.incubator);
    };
    for (const ProcessChallengeDevice& pcd : record.load.pcds) {
        std::ranges::for_each(pcd.vials, own);
    }
    if (record.test) {
        std::ranges::for_each(record.test->vials, own);
    }

    const Names names = namesOf(bound);
    for (const auto& [each, name] : names) {
        if (const auto* recorded = productOf(folding, each)) {
            IndicatorProduct product = recorded->product;
            product.id = name;
            record.products.push_back(std::move(product));
        }
    }
    addLots(folding, record, names);
    addControls(folding, record, vials, ownVials, names);
    for (const Control& control : record.controls) {
        if (!control.incubator.empty()) {
            incubators.insert(control.incubator);
        }
    }
    addIncubators(folding, record, incubators, ownIncubators);
    addPackagings(folding, record);
    const auto rename = [&names](auto& indicator) {
        if (const auto found = names.find(indicator.product); found != names.end()) {
            indicator.product = found->second;
        }
    };
    forEachIndicator(record, rename, rename);
}

} // namespace loadwarden
