#include "core/desk/load_sheet.h"

#include "core/acts/fold/facts.h"
#include "core/acts/fold/seen.h"
#include "core/cycle/limits.h"
#include "core/desk/journal_entries.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// Adds what entries say to a sheet.
class Making {
public:
    explicit Making(LoadSheet& sheet) : m_sheet(sheet), m_book(sheet.record.entries) {}

    void make()
    {
        items();
        parameters();
        for (const Fact& fact : m_book.facts()) {
            place(fact);
        }
        for (const Fact& fact : m_book.facts()) {
            read(fact);
            if (fact.stands() && std::holds_alternative<CycleUnloaded>(fact.origin->act)) {
                m_sheet.unloaded = fact.current().happenedAt.at;
            }
        }
    }

private:
    [[nodiscard]] const CycleView& view() const { return m_sheet.record.view; }

    void items()
    {
        const FoldedEvidence& folded = view().folded;
        const bool hasEnded = m_sheet.state.ended;
        for (std::size_t i = 0; i < folded.itemIds.size() && !view().isTest(); ++i) {
            const Item& item = folded.record.load.items[i];
            SheetItem row{.id = folded.itemIds[i],
                          .label = item.label,
                          .implant = item.implant,
                          .packaging = item.packaging.empty()
                                           ? std::string()
                                           : m_sheet.record.names.of(item.packaging),
                          .devices = {},
                          .verdict = {},
                          .check = {}};
            for (const Device& device : item.devices) {
                row.devices.push_back(device.name);
            }
            if (hasEnded && i < view().decision.items.size()) {
                row.verdict = view().decision.items[i].verdict;
            }
            if (!item.checks.empty()) {
                row.check = *std::ranges::max_element(item.checks, {}, [](const auto& check) {
                    return check.act.happenedAt;
                });
            }
            m_sheet.items.push_back(std::move(row));
        }
    }

    void parameters()
    {
        if (view().isTest()) {
            return;
        }
        const EvidenceRecord& record = view().folded.record;
        for (std::size_t i = 0; i < parameterCount; ++i) {
            const auto parameter = static_cast<Parameter>(i);
            const Limit* const limit =
                record.specification ? findLimit(*record.specification, parameter) : nullptr;
            SheetParameter row{.parameter = parameter, .least = {}, .most = {}, .readings = {}};
            if (limit != nullptr) {
                row.least = limit->least;
                row.most = limit->most;
            }
            std::ranges::copy_if(
                record.load.readings, std::back_inserter(row.readings),
                [&](const ParameterReading& reading) { return reading.parameter == parameter; });
            row.isLost = std::ranges::any_of(record.load.lostReadings, [&](const auto& lost) {
                return lost.parameter == parameter;
            });
            // Without a specification nobody knows what its record states: all are asked.
            if (limit != nullptr || !row.readings.empty() || row.isLost || !record.specification) {
                m_sheet.parameters.push_back(std::move(row));
            }
        }
    }

    /// What an entry puts into the cycle.
    void place(const Fact& fact)
    {
        const Entry& entry = fact.stands() ? fact.current() : *fact.origin;
        const bool struck = !fact.stands();
        if (const auto* const pcd = std::get_if<PcdPlaced>(&entry.act)) {
            const std::string id(entry.subject("pd"));
            for (const PlacedIndicator& each : pcd->indicators) {
                add(each, IndicatorPlace::pcd, id, pcd->mark, struck);
            }
            for (const PlacedIndicator& each : pcd->vials) {
                add(each, IndicatorPlace::pcd, id, pcd->mark, struck);
            }
        } else if (const auto* const item = std::get_if<ItemAdded>(&entry.act)) {
            const std::string id(entry.subject("it"));
            const bool isIn = std::ranges::find(m_sheet.items, id, &SheetItem::id)
                              != m_sheet.items.end();
            if (item->external) {
                add(*item->external, IndicatorPlace::outside, id, item->label, struck || !isIn);
            }
            for (const PlacedIndicator& each : item->internals) {
                add(each, IndicatorPlace::inside, id, item->label, struck || !isIn);
            }
        } else if (const auto* const sheet = std::get_if<SheetPlaced>(&entry.act)) {
            add({.id = std::string(entry.subject("ci")),
                 .product = sheet->product,
                 .lot = sheet->lot,
                 .place = {}},
                IndicatorPlace::sheet, {}, {}, struck);
        }
    }

    void add(const PlacedIndicator& placed, IndicatorPlace where, const std::string& holder,
             const std::string& holderName, bool isStruck)
    {
        if (m_sheet.indicator(placed.id) != nullptr) {
            return;
        }
        SheetIndicator row{.id = placed.id,
                           .isVial = hasPrefix(placed.id, "bv"),
                           .where = where,
                           .holder = holder,
                           .holderName = holderName,
                           .place = placed.place,
                           .product = placed.product,
                           .productName = placed.product.empty()
                                              ? std::string()
                                              : m_sheet.record.names.of(placed.product),
                           .lotNumber = placed.lot.empty() ? std::string()
                                                           : m_sheet.record.names.of(placed.lot),
                           .response = {},
                           .readings = {}};
        row.isStruck = isStruck;
        // The evidence calls it by its id, and by the revision where there are two.
        for (const IndicatorProduct& product : view().folded.record.products) {
            if (!placed.product.empty()
                && (product.id == placed.product
                    || product.id.starts_with(placed.product + '@'))) {
                row.response = product.response;
            }
        }
        m_sheet.indicators.push_back(std::move(row));
    }

    /// What an entry says of an indicator.
    void read(const Fact& fact)
    {
        SheetIndicator* const row = indicatorOf(*fact.origin);
        if (row == nullptr) {
            return;
        }
        const Entry& entry = fact.stands() ? fact.current() : *fact.origin;
        const auto seen = seenIn(entry.act);
        if (seen) {
            row->readings.push_back({.seq = entry.seq,
                                     .seen = *seen,
                                     .by = m_sheet.record.names.of(
                                         entry.paper ? entry.paper->by : entry.actor),
                                     .at = entry.happenedAt.at,
                                     .isStruck = !fact.stands()});
        } else if (fact.stands()) {
            row->isLost = row->isLost || std::holds_alternative<ChemicalLost>(entry.act)
                          || std::holds_alternative<BiologicalLost>(entry.act);
            row->isUnsettled = row->isUnsettled
                               || std::holds_alternative<ChemicalUnsettled>(entry.act)
                               || std::holds_alternative<BiologicalUnsettled>(entry.act);
        }
    }

    SheetIndicator* indicatorOf(const Entry& entry)
    {
        for (const char* const prefix : {"ci", "bv"}) {
            const std::string_view id = entry.subject(prefix);
            const auto found = std::ranges::find(m_sheet.indicators, id, &SheetIndicator::id);
            if (!id.empty() && found != m_sheet.indicators.end()) {
                return &*found;
            }
        }
        return nullptr;
    }

    LoadSheet& m_sheet;
    FactBook m_book;
};

} // namespace

const SheetReading* SheetIndicator::newestReading() const
{
    const auto found = std::ranges::find_if(
        readings.rbegin(), readings.rend(),
        [](const SheetReading& reading) { return !reading.isStruck; });
    return found == readings.rend() ? nullptr : &*found;
}

std::string SheetIndicator::unclearTo() const
{
    std::string reader;
    for (const SheetReading& reading : readings) {
        if (reading.isStruck) {
            continue;
        }
        if (reading.seen == Seen::unclear) {
            reader = reading.by;
        } else if (reading.by != reader) {
            reader.clear();
        }
    }
    return reader;
}

bool SheetIndicator::awaitsReading() const
{
    return !isVial && !isStruck && !isLost
           && (newestReading() == nullptr || !unclearTo().empty());
}

const SheetIndicator* LoadSheet::indicator(std::string_view id) const
{
    const auto found = std::ranges::find(indicators, id, &SheetIndicator::id);
    return found == indicators.end() ? nullptr : &*found;
}

std::optional<LoadSheet> loadSheetOf(ReadSnapshot& snapshot, EntryCache& cache,
                                     std::string_view cycle, Instant now)
{
    auto record = recordOfCycle(snapshot, cache, cycle, now);
    if (!record) {
        return std::nullopt;
    }
    LoadSheet sheet{.record = *std::move(record),
                    .state = {},
                    .sterilizerName = {},
                    .parameters = {},
                    .indicators = {},
                    .items = {},
                    .uses = unreleasedUses(snapshot, std::string(cycle)),
                    .unloaded = {},
                    .choices = choicesOf(snapshot)};
    sheet.state = stateOfCycle(sheet.record.entries, cycle);
    if (!sheet.record.view.folded.sterilizer.empty()) {
        sheet.sterilizerName = sheet.record.names.of(sheet.record.view.folded.sterilizer);
    }
    Making(sheet).make();
    return sheet;
}

} // namespace loadwarden
