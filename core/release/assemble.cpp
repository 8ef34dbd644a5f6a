#include "core/release/assemble.h"

#include "core/indicators/chemical.h"
#include "core/release/cycle_contexts.h"
#include "core/release/each_act.h"
#include "core/release/name_index.h"
#include "core/release/rules/cycle_allowed.h"
#include "core/release/rules/specification.h"
#include "core/sterilizers/clock_offset.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace loadwarden {
namespace {

NameIndex<1> byId(const auto& list)
{
    return {list, [](const auto& each) { return NameIndex<1>::Name{each.id}; }};
}

/// Finds what indicators, controls and cycles name, and works out what does not change with time.
class Linker {
public:
    Linker(const IndicatorRegister& known, const Zone& zone)
        : m_known(known),
          m_zone(zone),
          m_products(byId(known.products)),
          m_incubators(byId(known.incubators)),
          m_lots(known.lots,
                 [](const IndicatorLot& lot) {
                     return NameIndex<2>::Name{lot.product, lot.number};
                 }),
          m_controls(known.controls, [](const Control& control) {
              return NameIndex<3>::Name{control.product, control.lot, control.incubator};
          })
    {
    }

    /// The controls in the order into which vials point.
    [[nodiscard]] std::vector<std::int32_t> controlOrder() const { return m_controls.order(); }

    [[nodiscard]] ProductLink link(const std::string& product, const std::string& lot) const
    {
        return {m_products.first({product}), m_lots.first({product, lot})};
    }

    void chemical(ChemicalIndicator& indicator, const CycleContext& cycle) const
    {
        indicator.link = link(indicator.product, indicator.lot);
        sortReadings(indicator.readings);
        prepareChemical(indicator, cycle, m_known);
    }

    void vial(Vial& vial) const
    {
        vial.link = link(vial.product, vial.lot);
        vial.incubatorIndex = m_incubators.first({vial.incubator});
        sortReadings(vial.readings);
        vial.incubationDay.reset();
        if (vial.incubationStart) {
            vial.incubationDay = m_zone.dateOf(*vial.incubationStart);
            vial.midnightAfterStart = m_zone.resolve(*vial.incubationDay + 1, 0);
        }
        vial.controls = {};
        if (isNamed(vial.incubator)) {
            const auto [first, count] = m_controls.run({vial.product, vial.lot, vial.incubator});
            vial.controls = {first, count};
        }
    }

    void control(Control& control) const
    {
        control.link = link(control.product, control.lot);
        sortReadings(control.readings);
        const IndicatorLot* lot = m_known.lotOf(control.link);
        control.lotInDate = false;
        control.incubationDay.reset();
        if (control.incubationStart) {
            const Date day = m_zone.dateOf(*control.incubationStart);
            control.incubationDay = day;
            control.lotInDate = lot != nullptr && lot->expires && day <= *lot->expires
                                && *lot->expires <= day + longestShelfDays;
        }
    }

    void cycle(HistoryCycle& cycle, const CycleTimes& times) const
    {
        for (Vial& each : cycle.vials) {
            vial(each);
        }
        if (cycle.sheet) {
            chemical(*cycle.sheet, sheetContextOf(cycle, times));
        }
        for (ChemicalIndicator& each : cycle.indicators) {
            chemical(each, contextOf(cycle, times));
        }
    }

private:
    const IndicatorRegister& m_known;
    const Zone& m_zone;
    NameIndex<1> m_products;
    NameIndex<1> m_incubators;
    NameIndex<2> m_lots;
    NameIndex<3> m_controls;
};

class ClockCorrection {
public:
    ClockCorrection(const SterilizerRecord* sterilizer, const Zone& zone)
        : m_sterilizer(sterilizer),
          m_zone(zone),
          m_testMinute(sterilizer != nullptr ? sterilizer->testMinute : 0)
    {
    }

    /// A time of the sterilizer's clock on the facility's, or nullopt where the offset is unknown.
    [[nodiscard]] std::optional<Instant> correct(Instant shown) const
    {
        const auto offset =
            m_sterilizer != nullptr ? offsetAt(m_sterilizer->clockOffsets, shown) : std::nullopt;
        return offset ? std::optional(shown - *offset) : std::nullopt;
    }

    /// A time of some clock on the facility's, or nullopt where that is not known.
    [[nodiscard]] std::optional<Instant> known(ClockSource clock,
                                               const std::optional<Instant>& shown) const
    {
        return !shown || clock == ClockSource::facility ? shown : correct(*shown);
    }

    [[nodiscard]] CycleTimes times(ClockSource clock, std::optional<Instant> start,
                                   std::optional<Instant> end,
                                   std::optional<std::int64_t> counter) const
    {
        CycleTimes times;
        times.counter = counter;
        times.start = onFacilityClock(clock, start, times.offsetUnknown);
        times.end = onFacilityClock(clock, end, times.offsetUnknown);
        if (times.start) {
            times.day = m_zone.dateOf(*times.start);
            times.period = m_zone.periodOf(*times.start, m_testMinute);
        }
        return times;
    }

private:
    [[nodiscard]] std::optional<Instant>
    onFacilityClock(ClockSource clock, std::optional<Instant> shown, bool& unknown) const
    {
        if (!shown || clock == ClockSource::facility) {
            return shown;
        }
        const auto corrected = correct(*shown);
        unknown = unknown || !corrected;
        return corrected ? corrected : shown;
    }

    const SterilizerRecord* m_sterilizer;
    const Zone& m_zone;
    int m_testMinute;
};

void linkItems(EvidenceRecord& record, const CycleContext& context, const Linker& linker)
{
    const NameIndex<1> packagings = byId(record.packagings);
    for (Item& item : record.load.items) {
        item.packagingIndex = packagings.first({item.packaging});
        if (item.external) {
            linker.chemical(*item.external, context);
        }
        for (ChemicalIndicator& each : item.internals) {
            linker.chemical(each, context);
        }
    }
}

/// Marks the cycles of the history whose counters say another order than their starts, or which
/// share a counter.
void markContradictions(std::vector<CycleTimes>& history)
{
    std::vector<CycleTimes*> counted;
    for (CycleTimes& times : history) {
        if (times.counter && times.start) {
            counted.push_back(&times);
        }
    }
    std::sort(counted.begin(), counted.end(),
              [](const CycleTimes* a, const CycleTimes* b) { return *a->counter < *b->counter; });
    Instant latestStart{INT64_MIN}; // of smaller counters
    for (auto group = counted.begin(); group != counted.end();) {
        const auto next = std::find_if(group, counted.end(), [group](const CycleTimes* each) {
            return each->counter != (*group)->counter;
        });
        Instant latest = latestStart;
        for (auto each = group; each != next; ++each) {
            (*each)->contradicted = next - group > 1 || *(*each)->start < latestStart;
            latest = std::max(latest, *(*each)->start);
        }
        latestStart = latest;
        group = next;
    }
}

/// Marks the items whose labels, however they are written, other cycles of the sterilizer list too.
void markItemsOfHistory(EvidenceRecord& record, const std::vector<CycleTimes>& history)
{
    std::vector<Item>& items = record.load.items;
    for (Item& item : items) {
        item.inLoadOfHistory.reset();
        item.inTests.clear();
    }
    if (!record.sterilizer) {
        return;
    }
    if (std::all_of(record.sterilizer->cycles.begin(), record.sterilizer->cycles.end(),
                    [](const HistoryCycle& cycle) { return cycle.items.empty(); })) {
        return;
    }
    std::vector<std::string> folded;
    folded.reserve(items.size());
    for (const Item& item : items) {
        folded.push_back(foldedPerson(item.label));
    }
    const NameIndex<1> labels(folded,
                              [](const std::string& each) { return NameIndex<1>::Name{each}; });
    std::int32_t index = 0;
    for (const HistoryCycle& cycle : record.sterilizer->cycles) {
        for (const std::string& label : cycle.items) {
            for (const auto& entry : labels.all({foldedPerson(label)})) {
                Item& item = items[static_cast<std::size_t>(entry.index)];
                if (cycle.kind == CycleKind::load) {
                    const Instant start = *history[static_cast<std::size_t>(index)].start;
                    item.inLoadOfHistory = std::max(item.inLoadOfHistory.value_or(start), start);
                } else if (item.inTests.empty() || item.inTests.back() != index) {
                    item.inTests.push_back(index);
                }
            }
        }
        ++index;
    }
}

/// Aeration takes hours, at warmth: less than an hour (hours typed for minutes), or a temperature
/// outside of 20 to 80 °C, was typed wrong (RULES.md, 5, aeration; common practice, no source).
constexpr std::int64_t shortestAerationMinutes = 60;

/// What a load needs at least: well below the 8 to 12 h at 50 to 60 °C that the CDC Guideline for
/// Disinfection and Sterilization in Healthcare Facilities (2008) names.
constexpr std::int64_t shortestOfLoadMinutes = 240;

bool isPlausible(const SterilizerAeration& stated)
{
    return stated.celsiusHundredths >= 20'00 && stated.celsiusHundredths <= 80'00;
}

/// The longest aeration that sterilizer, packagings and devices ask for, or nullopt where one of
/// them does not state it or states what cannot be: ethylene oxide is never without it.
std::optional<Duration> longestAeration(const EvidenceRecord& record)
{
    if (!record.sterilizer || !record.sterilizer->aeration
        || !isPlausible(*record.sterilizer->aeration)) {
        return std::nullopt;
    }
    std::int64_t longest = 0;
    bool plausible = true;
    const auto take = [&](std::int64_t minutes) {
        longest = std::max(longest, minutes);
        plausible = plausible && (minutes <= 0 || minutes >= shortestAerationMinutes);
    };
    take(record.sterilizer->aeration->minutes);
    for (const Item& item : record.load.items) {
        if (item.packagingIndex < 0 || item.devices.empty()) {
            return std::nullopt;
        }
        const auto& ofPackaging =
            record.packagings[static_cast<std::size_t>(item.packagingIndex)].aerationMinutes;
        if (!ofPackaging) {
            return std::nullopt;
        }
        take(*ofPackaging);
        for (const Device& device : item.devices) {
            if (!device.aerationMinutes) {
                return std::nullopt;
            }
            take(*device.aerationMinutes);
        }
    }
    return plausible && longest >= shortestOfLoadMinutes ? std::optional(Duration::minutes(longest))
                                                         : std::nullopt;
}

/// Whether a list of readings has one that is voided though it helps nobody.
bool anyVoidedHarm(const std::vector<IndicatorReading>& readings)
{
    return std::any_of(readings.begin(), readings.end(), [](const IndicatorReading& reading) {
        return reading.voided && !isGoodAnswer(reading.seen);
    });
}

bool anyVoidedHarm(const EvidenceRecord& record, const IndicatorRegister& known)
{
    const auto has = [](const auto& indicator) { return anyVoidedHarm(indicator.readings); };
    const auto any = [&has](const auto& list) {
        return std::any_of(list.begin(), list.end(), has);
    };
    return any(known.controls)
           || std::any_of(record.load.pcds.begin(), record.load.pcds.end(),
                          [&any](const ProcessChallengeDevice& pcd) {
                              return any(pcd.indicators) || any(pcd.vials);
                          })
           || std::any_of(record.load.items.begin(), record.load.items.end(),
                          [&](const Item& item) {
                              return (item.external && has(*item.external)) || any(item.internals);
                          });
}

/// Whether anything was seen at a package that can speak against its load.
bool hasObjection(const Item& item)
{
    const auto isDoubted = [](const ChemicalIndicator& indicator) {
        return std::any_of(indicator.readings.begin(), indicator.readings.end(),
                           [](const IndicatorReading& each) { return !isGoodAnswer(each.seen); });
    };
    return (item.external && isDoubted(*item.external))
           || std::any_of(item.internals.begin(), item.internals.end(), isDoubted)
           || std::any_of(item.checks.begin(), item.checks.end(),
                          [](const PackageCheck& check) { return check.dry == false; });
}

void countUnsigned(std::vector<UnsignedActs>& all, std::string_view field)
{
    for (UnsignedActs& each : all) {
        if (each.field == field) {
            ++each.count;
            return;
        }
    }
    all.push_back({field, 1});
}

ActSummary summarize(const EvidenceRecord& record, const std::vector<Control>& controls)
{
    ActSummary summary;
    summary.newestRecorded = Instant{INT64_MIN};
    forEachAct(record, controls, [&summary](const Act& act, const ActPlace& place) {
        if (!isSigned(act)) {
            countUnsigned(summary.unsignedActs, place.field);
        }
        summary.backwards += act.happenedAt > act.recordedAt ? 1 : 0;
        summary.newestRecorded = std::max(summary.newestRecorded, act.recordedAt);
        if (place.insideLoad) {
            summary.longestGapInLoad =
                std::max(summary.longestGapInLoad, act.recordedAt - act.happenedAt);
        }
    });
    return summary;
}

void takePrintoutTimes(Evidence& evidence, const ClockCorrection& clock)
{
    if (!evidence.record.load.printout) {
        return;
    }
    const Printout& printout = *evidence.record.load.printout;
    if (printout.start) {
        evidence.printoutStart = clock.correct(*printout.start);
        evidence.printoutOffsetUnknown = !evidence.printoutStart;
    }
    if (printout.end) {
        evidence.printoutEnd = clock.correct(*printout.end);
        evidence.printoutOffsetUnknown = evidence.printoutOffsetUnknown || !evidence.printoutEnd;
    }
}

void takeTraceTimes(Evidence& evidence, const ClockCorrection& clock)
{
    const LoadRecord& load = evidence.record.load;
    evidence.traceStartsApart.reserve(load.traces.size());
    for (const TraceFindings& trace : load.traces) {
        const auto ofLoad = clock.known(load.clock, load.start);
        const auto ofTrace = clock.known(ClockSource::sterilizer, trace.start);
        auto& apart = evidence.traceStartsApart.emplace_back();
        if (ofLoad && ofTrace) {
            apart = magnitude(*ofTrace - *ofLoad);
        }
    }
}

} // namespace

Evidence assemble(EvidenceRecord given)
{
    Evidence evidence;
    evidence.record = std::move(given);
    EvidenceRecord& record = evidence.record;
    evidence.known.products = std::move(record.products);
    evidence.known.lots = std::move(record.lots);
    evidence.known.incubators = std::move(record.incubators);
    evidence.known.controls = std::move(record.controls);

    const Linker linker(evidence.known, record.zone);
    for (Control& control : evidence.known.controls) {
        linker.control(control);
    }
    evidence.known.controlOrder = linker.controlOrder();
    const ClockCorrection clock(record.sterilizer ? &*record.sterilizer : nullptr, record.zone);
    if (record.sterilizer) {
        evidence.history.reserve(record.sterilizer->cycles.size());
        for (HistoryCycle& cycle : record.sterilizer->cycles) {
            evidence.history.push_back(
                clock.times(cycle.clock, cycle.start, cycle.end, cycle.counter));
            linker.cycle(cycle, evidence.history.back());
        }
    }
    markContradictions(evidence.history);
    if (record.test) {
        evidence.test = clock.times(record.test->clock, record.test->start, record.test->end,
                                    record.test->counter);
        linker.cycle(*record.test, *evidence.test);
    }

    LoadRecord& load = record.load;
    evidence.load = clock.times(load.clock, load.start, load.end, load.counter);
    if (evidence.load.period) {
        evidence.periodEnd = record.zone.periodBegin(
            *evidence.load.period + 1, record.sterilizer ? record.sterilizer->testMinute : 0);
    }
    takePrintoutTimes(evidence, clock);
    takeTraceTimes(evidence, clock);
    const CycleContext context = loadContextOf(record, evidence.load);
    for (ProcessChallengeDevice& pcd : load.pcds) {
        for (ChemicalIndicator& each : pcd.indicators) {
            linker.chemical(each, context);
        }
        for (Vial& each : pcd.vials) {
            linker.vial(each);
        }
    }
    linkItems(record, context, linker);
    markItemsOfHistory(record, evidence.history);
    for (const Item& item : load.items) {
        evidence.hasImplant = evidence.hasImplant || item.implant != Implant::no;
        evidence.hasItemInTest = evidence.hasItemInTest || !item.inTests.empty();
        evidence.hasObjection = evidence.hasObjection || hasObjection(item);
    }
    evidence.hasVoidedHarm = anyVoidedHarm(record, evidence.known);
    evidence.aeration = longestAeration(record);
    if (record.specification) {
        evidence.specificationFaults = rules::specificationFaults(record);
        rules::compareAllowed(record);
    }
    evidence.acts = summarize(record, evidence.known.controls);
    return evidence;
}

} // namespace loadwarden
