#include "tests/proof/situations.h"

#include "core/indicators/chemical.h"

#include <algorithm>

namespace loadwarden::proof {

std::vector<ChemicalIndicator*> indicatorsOf(EvidenceRecord& record)
{
    std::vector<ChemicalIndicator*> all;
    for (ProcessChallengeDevice& pcd : record.load.pcds) {
        for (ChemicalIndicator& each : pcd.indicators) {
            all.push_back(&each);
        }
    }
    for (Item& item : record.load.items) {
        if (item.external) {
            all.push_back(&*item.external);
        }
        for (ChemicalIndicator& each : item.internals) {
            all.push_back(&each);
        }
    }
    return all;
}

std::vector<Vial*> vialsOf(EvidenceRecord& record)
{
    std::vector<Vial*> all;
    for (ProcessChallengeDevice& pcd : record.load.pcds) {
        for (Vial& each : pcd.vials) {
            all.push_back(&each);
        }
    }
    return all;
}

namespace {

const std::vector<std::string>& bases()
{
    static const std::vector<std::string> names{"steam-gravity",
                                                "steam-prevacuum",
                                                "steam-prevacuum-implant",
                                                "steam-flush",
                                                "ethylene-oxide",
                                                "hydrogen-peroxide",
                                                "dry-heat",
                                                "immediate-use",
                                                "steam-prevacuum-autumn-night",
                                                "steam-prevacuum-spring-night"};
    return names;
}

const std::vector<Policy>& policies()
{
    static const std::vector<Policy> all{
        Policy{},
        support::policyWith(
            {{"air_removal.made_after", "\"review\""}, {"implant.hold", "\"implants-only\""}}),
        support::policyWith({{"bi.routine_blocks", "true"},
                             {"bi.readout", "\"last\""},
                             {"physical.above_maximum", "\"fails\""},
                             {"trace.asked", "\"yes\""},
                             {"trace.passable_defects", "[]"},
                             {"scope.by", "\"sterilizer\""},
                             {"control.per", "\"load\""}}),
        support::policyWith({{"pcd.steam", "\"required\""},
                             {"bi.steam", "\"every-load\""},
                             {"packages.wet_for_supervisor", "1"},
                             {"process.failed_packages", "1"}})};
    return all;
}

/// Makes an act not stand, in one of the ways there are.
void spoilAct(Act& act, Instant now)
{
    switch (*rc::gen::inRange(0, 5)) {
    case 0: act.by.clear(); break;
    case 4: act.by.assign(3, ' '); break;
    case 1: act.role = Role::viewer; break;
    case 2: act.recordedAt = now + Duration::minutes(1); break;
    default: act.happenedAt = act.recordedAt + Duration::minutes(1); break;
    }
}

/// Every act that stands for something good only once the cycle is over: of the physical record,
/// the indicators, the packages, the aeration.
std::vector<Act*> actsAfterTheCycle(EvidenceRecord& record)
{
    std::vector<Act*> all;
    LoadRecord& load = record.load;
    for (ParameterReading& reading : load.readings) {
        all.push_back(&reading.act);
    }
    if (load.printout) {
        all.push_back(&load.printout->act);
    }
    for (Act& act : load.verifications) {
        all.push_back(&act);
    }
    for (ChemicalIndicator* indicator : indicatorsOf(record)) {
        for (IndicatorReading& reading : indicator->readings) {
            all.push_back(&reading.act);
        }
    }
    for (Vial* vial : vialsOf(record)) {
        for (IndicatorReading& reading : vial->readings) {
            all.push_back(&reading.act);
        }
    }
    for (Item& item : load.items) {
        for (PackageCheck& check : item.checks) {
            all.push_back(&check.act);
        }
    }
    for (AerationRun& run : load.aerationRuns) {
        all.push_back(&run.start);
    }
    return all;
}

/// The good readings of indicators, vials, controls and Bowie-Dick sheets.
std::vector<IndicatorReading*> goodReadings(EvidenceRecord& record)
{
    std::vector<IndicatorReading*> all;
    const auto take = [&all](std::vector<IndicatorReading>& readings, auto isGood) {
        for (IndicatorReading& reading : readings) {
            if (isGood(reading.seen)) {
                all.push_back(&reading);
            }
        }
    };
    for (ChemicalIndicator* indicator : indicatorsOf(record)) {
        take(indicator->readings, isGoodAnswer);
    }
    for (HistoryCycle& cycle : record.sterilizer->cycles) {
        if (cycle.sheet && cycle.end < record.load.start) {
            take(cycle.sheet->readings, isGoodAnswer);
        }
    }
    for (Vial* vial : vialsOf(record)) {
        take(vial->readings, [](Seen seen) { return seen == Seen::noGrowth; });
    }
    for (Control& control : record.controls) {
        take(control.readings, [](Seen seen) { return seen == Seen::growth; });
    }
    return all;
}

/// Somebody, in any role, named or not, at a moment that is possible or not.
Act anybody(Instant now)
{
    Act act{*rc::gen::element<std::string>("p1", "p7", "", "  "),
            *rc::gen::element(Role::viewer, Role::operating, Role::lead, Role::supervisor), now,
            now};
    if (*rc::gen::inRange(0, 2) == 0) {
        act.recordedAt = now + Duration::minutes(1);
    }
    return act;
}

/// Another reader's unclear answer: before the others, which may then settle it, or after them all.
IndicatorReading unclear(const std::vector<IndicatorReading>& others, Instant end)
{
    Instant at = end;
    if (*rc::gen::inRange(0, 2) == 0) {
        for (const IndicatorReading& other : others) {
            at = std::max(at, other.act.recordedAt);
        }
    }
    return {Seen::unclear, {"p7", Role::operating, at, at}, {}};
}

/// A recording of the load's cycle that shows anything.
TraceFindings anyTrace(const EvidenceRecord& record, Instant now)
{
    const auto answer = [] {
        return *rc::gen::element(Shown::met, Shown::met, Shown::met, Shown::open, Shown::notMet,
                                 Shown::notAsked);
    };
    TraceFindings trace;
    trace.id = "TR-" + std::to_string(record.load.traces.size() + 1);
    if (record.specification) {
        trace.specification = record.specification->id;
        trace.revision = record.specification->revision + (*rc::gen::inRange(0, 8) == 0 ? 1 : 0);
    }
    trace.counter = record.load.counter;
    if (*rc::gen::inRange(0, 4) == 0) {
        trace.defects.emplace_back(*rc::gen::element("midnight", "gap"));
    }
    trace.exposure = answer();
    trace.uninterrupted = answer();
    trace.notBelow = answer();
    trace.notAbove = answer();
    trace.saturated = answer();
    trace.drying = answer();
    trace.exposureLeastMs = *rc::gen::element<std::int64_t>(200'000, 1'800'000);
    trace.act = *rc::gen::inRange(0, 3) == 0 ? anybody(now) : Act{"p1", Role::operating, now, now};
    return trace;
}

/// A change that adds trouble, so that what is spoiled afterwards is spoiled in company.
void disturb(EvidenceRecord& record)
{
    const Instant end = record.load.end.value();
    switch (*rc::gen::inRange(0, 12)) {
    case 0: break;
    case 11: record.load.traces.push_back(anyTrace(record, record.decideAt.value())); break;
    case 10:
        if (!record.load.pcds.empty()) {
            ProcessChallengeDevice second = record.load.pcds.front();
            second.id += "-2";
            for (Vial& vial : second.vials) {
                vial.id += "-2";
            }
            record.load.pcds.push_back(std::move(second));
        }
        break;
    case 9:
        if (Vial* vial = pick(vialsOf(record))) {
            vial->readings.push_back(unclear(vial->readings, end));
        }
        break;
    case 1:
        if (ChemicalIndicator* indicator = pick(indicatorsOf(record))) {
            indicator->readings.push_back(unclear(indicator->readings, end));
        }
        break;
    case 2:
        if (Vial* vial = pick(vialsOf(record))) {
            vial->readings.push_back({Seen::growth, {"p7", Role::operating, end, end}, {}});
        }
        break;
    case 3:
        if (Item* item = pick(record.load.items); item != nullptr && !item->checks.empty()) {
            item->checks.front().dry = false;
        }
        break;
    case 4:
        if (ParameterReading* reading = pick(record.load.readings)) {
            reading->value.thousandths -= 1000;
        }
        break;
    case 5:
        if (Vial* vial = pick(vialsOf(record))) {
            vial->readings.clear();
        }
        break;
    case 6:
        if (ChemicalIndicator* indicator = pick(indicatorsOf(record))) {
            indicator->lot.clear();
        }
        break;
    case 7:
        if (Item* item = pick(record.load.items)) {
            item->implant = Implant::unknown;
        }
        break;
    default:
        if (ChemicalIndicator* indicator = pick(indicatorsOf(record));
            indicator && !indicator->readings.empty()) {
            indicator->readings.front().seen = Seen::absent;
        }
        break;
    }
}

} // namespace

bool degrade(EvidenceRecord& record, Instant now)
{
    const auto spoilReadings = [&](std::vector<IndicatorReading>& readings) {
        IndicatorReading* reading = pick(readings);
        if (reading == nullptr || reading->seen == Seen::unclear) {
            return false;
        }
        if (isGoodAnswer(reading->seen) || reading->seen == Seen::noGrowth) {
            if (*rc::gen::inRange(0, 2) == 0) {
                readings.erase(readings.begin() + (reading - readings.data()));
                return true;
            }
        }
        spoilAct(reading->act, now);
        return true;
    };
    switch (*rc::gen::inRange(0, 21)) {
    case 20:
        if (TraceFindings* trace = pick(record.load.traces)) {
            spoilAct(trace->act, now);
            return true;
        }
        return false;
    case 18:
        if (Vial* vial = pick(vialsOf(record))) {
            vial->alsoUsedIn = {"L-OTHER"};
            return true;
        }
        return false;
    case 19:
        if (Vial* vial = pick(vialsOf(record))) {
            vial->processIndicator = ProcessIndicator::unchanged;
            return true;
        }
        return false;
    case 16:
        if (Act* act = pick(actsAfterTheCycle(record))) {
            act->happenedAt = record.load.end.value() - Duration::milliseconds(1);
            return true;
        }
        return false;
    case 17:
        if (IndicatorReading* reading = pick(goodReadings(record))) {
            reading->voided = anybody(now);
            return true;
        }
        return false;
    case 0:
    case 1:
        if (ChemicalIndicator* indicator = pick(indicatorsOf(record))) {
            return spoilReadings(indicator->readings);
        }
        return false;
    case 2:
    case 3:
        if (Vial* vial = pick(vialsOf(record))) {
            return spoilReadings(vial->readings);
        }
        return false;
    case 4:
        if (Control* control = pick(record.controls)) {
            if (IndicatorReading* reading = pick(control->readings);
                reading && reading->seen == Seen::growth) {
                spoilAct(reading->act, now);
                return true;
            }
        }
        return false;
    case 5:
        if (ChemicalIndicator* indicator = pick(indicatorsOf(record));
            indicator && !indicator->readings.empty()) {
            indicator->alsoUsedIn = {"L-OTHER"};
            return true;
        }
        return false;
    case 6:
        if (Vial* vial = pick(vialsOf(record))) {
            vial->activation.reset();
            return true;
        }
        return false;
    case 7: {
        IndicatorLot* lot = pick(record.lots);
        if (lot != nullptr) {
            lot->expires = Date{0};
        }
        return lot != nullptr;
    }
    case 8: {
        // A reading recorded after the newest signature raises a duty to sign again: that one is no
        // pass, and taking it away is not degrading (RULES.md, 1).
        ParameterReading* reading = pick(record.load.readings);
        const bool signedAfter =
            reading != nullptr
            && std::any_of(
                record.load.verifications.begin(), record.load.verifications.end(),
                [&](const Act& act) { return act.happenedAt >= reading->act.recordedAt; });
        if (signedAfter) {
            spoilAct(reading->act, now);
        }
        return signedAfter;
    }
    case 9:
        if (Act* act = pick(record.load.verifications)) {
            spoilAct(*act, now);
            return true;
        }
        return false;
    case 10:
        if (record.load.printout) {
            spoilAct(record.load.printout->act, now);
            return true;
        }
        return false;
    case 11:
        if (Item* item = pick(record.load.items); item != nullptr && item->recorded) {
            item->recorded.reset();
            return true;
        }
        return false;
    case 12:
        if (Item* item = pick(record.load.items); item != nullptr && !item->checks.empty()) {
            spoilAct(item->checks.front().act, now);
            return true;
        }
        return false;
    case 13:
        for (HistoryCycle& cycle : record.sterilizer->cycles) {
            if (cycle.kind == CycleKind::bowieDick && cycle.sheet && !cycle.sheet->readings.empty()
                && cycle.end < record.load.start) {
                return spoilReadings(cycle.sheet->readings);
            }
        }
        return false;
    case 14:
        if (ServiceEntry* entry = pick(record.sterilizer->service);
            entry && entry->state == ServiceState::inService) {
            spoilAct(entry->act, now);
            return true;
        }
        return false;
    default:
        if (AerationRun* run = pick(record.load.aerationRuns); run != nullptr && run->end) {
            run->end->happenedAt = run->end->happenedAt - Duration::minutes(1);
            return true;
        }
        return false;
    }
}

bool takeFromRegister(EvidenceRecord& record)
{
    switch (*rc::gen::inRange(0, 3)) {
    case 0:
        if (Vial* vial = pick(vialsOf(record))) {
            (*rc::gen::arbitrary<bool>() ? vial->product : vial->lot).clear();
            return true;
        }
        [[fallthrough]];
    case 1:
        if (IndicatorLot* lot = pick(record.lots)) {
            lot->expires.reset();
            return true;
        }
        return false;
    default:
        if (IndicatorProduct* product = pick(record.products)) {
            product->id += "-OTHER";
            return true;
        }
        return false;
    }
}

Situation anySituation()
{
    Situation situation{support::base(bases()[*rc::gen::inRange(std::size_t{0}, bases().size())]),
                        policies()[*rc::gen::inRange(std::size_t{0}, policies().size())],
                        Instant{}};
    situation.now = situation.record.decideAt.value();
    const int disturbances = *rc::gen::inRange(0, 4);
    for (int i = 0; i < disturbances; ++i) {
        disturb(situation.record);
    }
    return situation;
}

bool sayLost(EvidenceRecord& record, Instant now)
{
    const Act lost{"p3", Role::lead, now, now};
    LoadRecord& load = record.load;
    switch (*rc::gen::inRange(0, 5)) {
    case 0:
        if (ChemicalIndicator* indicator = pick(indicatorsOf(record))) {
            indicator->lost = lost;
            return true;
        }
        return false;
    case 1:
        if (Vial* vial = pick(vialsOf(record))) {
            vial->lost = lost;
            return true;
        }
        return false;
    case 2: load.printoutLost = lost; return true;
    case 3:
        load.lostReadings.push_back({*rc::gen::element(Parameter::temperature, Parameter::exposure,
                                                       Parameter::drying, Parameter::pressure),
                                     lost});
        return true;
    default:
        if (Item* item = pick(load.items)) {
            item->checkLost = lost;
            return true;
        }
        return false;
    }
}

namespace {

bool isSame(const Finding& a, const Finding& b)
{
    return a.key == b.key && a.outcome == b.outcome && a.item == b.item && a.subject == b.subject
           && a.cause == b.cause && a.changesAt == b.changesAt && a.count == b.count;
}

} // namespace

bool isSame(const Decision& a, const Decision& b)
{
    return a.verdict == b.verdict && a.findings.size() == b.findings.size()
           && std::equal(a.findings.begin(), a.findings.end(), b.findings.begin(),
                         [](const Finding& x, const Finding& y) { return isSame(x, y); });
}

} // namespace loadwarden::proof
