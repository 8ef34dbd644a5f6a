#include "core/desk/product_checks.h"

#include "core/acts/fold/registers.h"
#include "core/desk/journal_entries.h"

namespace loadwarden {
namespace {

ProductPlace placeFor(const IndicatorProduct& product)
{
    if (product.kind == IndicatorKind::biological) {
        return ProductPlace::vial;
    }
    return product.response == Response::sheet ? ProductPlace::sheet : ProductPlace::chemical;
}

} // namespace

std::optional<Refusal> ProductChecks::check(const AnyAct& act)
{
    const auto all = [this](const std::vector<PlacedIndicator>& indicators,
                            ProductPlace place) -> std::optional<Refusal> {
        for (const PlacedIndicator& each : indicators) {
            if (auto refusal = checkOne(each.product, each.lot, place)) {
                return refusal;
            }
        }
        return std::nullopt;
    };
    if (const auto* const item = std::get_if<ItemAdded>(&act)) {
        if (item->external) {
            if (auto refusal = all({*item->external}, ProductPlace::chemical)) {
                return refusal;
            }
        }
        return all(item->internals, ProductPlace::chemical);
    }
    if (const auto* const pcd = std::get_if<PcdPlaced>(&act)) {
        if (auto refusal = all(pcd->indicators, ProductPlace::chemical)) {
            return refusal;
        }
        return all(pcd->vials, ProductPlace::vial);
    }
    if (const auto* const sheet = std::get_if<SheetPlaced>(&act)) {
        return checkOne(sheet->product, sheet->lot, ProductPlace::sheet);
    }
    if (const auto* const control = std::get_if<ControlPrepared>(&act)) {
        return checkOne(control->product, control->lot, ProductPlace::vial);
    }
    return std::nullopt;
}

std::optional<Refusal> ProductChecks::checkOne(const std::string& product, const std::string& lot,
                                               ProductPlace place)
{
    for (const std::string& each : {product, productOf(lot)}) {
        const auto right = placeOf(each);
        if (right && *right != place) {
            return Refusal{.why = RefusalWhy::wrongProduct, .subject = each, .place = place};
        }
    }
    return std::nullopt;
}

std::optional<ProductPlace> ProductChecks::placeOf(const std::string& product)
{
    if (product.empty()) {
        return std::nullopt;
    }
    const auto [found, isNew] = m_places.emplace(product, std::nullopt);
    if (isNew) {
        const std::vector<Entry> entries = entriesAbout(m_snapshot, product);
        const FactBook book(entries);
        if (const Fact* const fact = peekRevision<ProductRecorded>(book, product, newest)) {
            found->second = placeFor(std::get<ProductRecorded>(fact->current().act).product);
        }
    }
    return found->second;
}

std::string ProductChecks::productOf(const std::string& lot)
{
    if (lot.empty()) {
        return {};
    }
    const auto [found, isNew] = m_products.emplace(lot, std::string());
    if (isNew) {
        const std::vector<Entry> entries = entriesAbout(m_snapshot, lot);
        const FactBook book(entries);
        if (const Fact* const fact = peekRevision<ProductLotRecorded>(book, lot, newest)) {
            found->second = fact->current().subject("pr");
        }
    }
    return found->second;
}

void ProductChecks::note(const ToRecord& act)
{
    if (const auto* const product = std::get_if<ProductRecorded>(&act.act)) {
        m_places[act.subjects.front()] = placeFor(product->product);
    } else if (std::holds_alternative<ProductLotRecorded>(act.act)) {
        for (const std::string& id : act.subjects) {
            if (hasPrefix(id, "pr")) {
                m_products[act.subjects.front()] = id;
            }
        }
    }
}

} // namespace loadwarden
