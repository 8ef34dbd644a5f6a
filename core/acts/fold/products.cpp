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

/// A control's product and lot.
struct OfControl {
    std::string product; ///< pr-; empty: not known
    std::string lot;     ///< number, where the register has it as one of that product; else id

    /// Whether a control of these can be one of a vial's.
    [[nodiscard]] bool fits(const Vial& vial) const
    {
        return !product.empty() && product == idIn(vial.product) && !lot.empty() && lot == vial.lot;
    }
};

OfControl ofControl(const FactBook& book, std::string_view product, std::string_view lot)
{
    OfControl of{std::string(product), std::string(lot)};
    const Fact* const known = peekRevision<ProductLotRecorded>(book, lot, newest);
    if (known == nullptr) {
        return of;
    }
    const std::string_view ofLot = known->origin->subject("pr");
    if (of.product.empty()) {
        of.product = ofLot;
    }
    if (of.product == ofLot) {
        of.lot = std::get<ProductLotRecorded>(known->current().act).number;
    }
    return of;
}

/// Whether anybody ever said, also if it was struck or amended, that a control is of the product
/// and lot of a vial.
bool wasSaidToFit(const FactBook& book, std::string_view id, const Vial& vial)
{
    for (const std::uint32_t index : book.about(id)) {
        for (const Entry* const entry : book.facts()[index].chain) {
            const auto* const prepared = std::get_if<ControlPrepared>(&entry->act);
            if (prepared != nullptr
                && ofControl(book, prepared->product, prepared->lot).fits(vial)) {
                return true;
            }
        }
    }
    return false;
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
        const Fact* const found = peekRevision<ProductLotRecorded>(folding.book(), id, newest);
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
    const FactBook& book = folding.book();
    for (const std::string& id : idsOf<ControlPrepared>(book, "bc")) {
        // A control beside no vial of the record is no evidence.
        bool said = false;
        bool own = false;
        for (const Vial* const vial : vials) {
            if (wasSaidToFit(book, id, *vial)) {
                said = true;
                own = own || ownVials.contains(vial->id);
            }
        }
        if (!said) {
            continue;
        }
        Control control = foldControl(folding, id, own);
        const OfControl of = ofControl(book, control.product, control.lot);
        control.lot = of.lot;
        const auto fits = [&of](const Vial* vial) { return of.fits(*vial); };
        if (std::ranges::none_of(vials, fits)) {
            continue;
        }
        for (const auto& [bound, name] : names) {
            if (idIn(bound) != of.product) {
                continue;
            }
            Control copy = control;
            copy.product = name;
            copy.id = name == of.product ? id : id + name.substr(name.find('@'));
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
