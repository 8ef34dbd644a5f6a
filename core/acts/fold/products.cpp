#include "core/acts/fold/products.h"

#include "core/acts/fold/product_parts.h"
#include "core/acts/fold/registers.h"

#include <charconv>
#include <utility>

namespace loadwarden {
namespace {

/// Where a record needs one revision of a product only, its id is its name.
ProductNames namesOf(const std::set<std::string>& bound)
{
    std::map<std::string, int> revisions;
    for (const std::string& each : bound) {
        ++revisions[idIn(each)];
    }
    ProductNames names;
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
    std::int64_t seq = 0;
    std::from_chars(bound.data() + at + 1, bound.data() + bound.size(), seq);
    return findRecorded<ProductRecorded>(folding, idIn(bound), seq + 1);
}

bool isRecalled(Folding& folding, const std::string& lot)
{
    bool recalled = false;
    folding.each<LotRecalled>(lot, false,
                              [&](const Fact& fact) { recalled = recalled || fact.stands(); });
    return recalled;
}

/// Adds the lots that indicators name, once for each name of their product.
void addLots(Folding& folding, EvidenceRecord& record, const ProductNames& names)
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
            if (idIn(bound) != found->origin->subject("pr")
                || !named.contains({bound, lot.number})) {
                continue;
            }
            folding.take(*found, false);
            const bool recalled = isRecalled(folding, id);
            const auto same = std::ranges::find_if(record.lots, [&](const IndicatorLot& each) {
                return each.product == name && each.number == lot.number;
            });
            if (same == record.lots.end()) {
                record.lots.push_back({.product = name,
                                       .number = lot.number,
                                       .expires = lot.expires,
                                       .recalled = recalled});
                continue;
            }
            same->recalled = same->recalled || recalled;
            if (!same->expires || !lot.expires || *lot.expires < *same->expires) {
                // One number under two ids: what is not known or earlier counts.
                same->expires = same->expires ? lot.expires : std::nullopt;
            }
        }
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
    VialsOfRecord vials;
    const auto bind = [&bound](const auto& each) {
        if (!each.product.empty()) {
            bound.insert(each.product);
        }
    };
    forEachIndicator(std::as_const(record), bind, [&](const Vial& each) {
        bind(each);
        vials.all.push_back(&each);
        if (!each.incubator.empty()) {
            vials.incubators.insert(each.incubator);
        }
    });
    const auto own = [&vials](const Vial& vial) {
        vials.own.insert(vial.id);
        vials.ownIncubators.insert(vial.incubator);
    };
    for (const ProcessChallengeDevice& pcd : record.load.pcds) {
        std::ranges::for_each(pcd.vials, own);
    }
    if (record.test) {
        std::ranges::for_each(record.test->vials, own);
    }

    const ProductNames names = namesOf(bound);
    for (const auto& [each, name] : names) {
        if (const auto* recorded = productOf(folding, each)) {
            IndicatorProduct product = recorded->product;
            product.id = name;
            record.products.push_back(std::move(product));
        }
    }
    addLots(folding, record, names);
    addControls(folding, record, vials, names);
    addIncubators(folding, record, vials);
    addPackagings(folding, record);
    const auto rename = [&names](auto& indicator) {
        if (const auto found = names.find(indicator.product); found != names.end()) {
            indicator.product = found->second;
        }
    };
    forEachIndicator(record, rename, rename);
}

} // namespace loadwarden
