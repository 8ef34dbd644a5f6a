// Degrading: taking away or spoiling a pass, or spoiling a failure, never improves a verdict
// (core/release/RULES.md, 1). And what must hold of any decision.

#include "core/indicators/chemical.h"
#include "core/release/assemble.h"
#include "tests/support/evidence_files.h"

#include <rapidcheck/gtest.h>

#include <algorithm>
#include <functional>

namespace loadwarden {
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
                             {"scope.by", "\"sterilizer\""},
                             {"control.per", "\"load\""}}),
        support::policyWith({{"pcd.steam", "\"required\""},
                             {"bi.steam", "\"every-load\""},
                             {"packages.wet_for_supervisor", "1"},
                             {"process.failed_packages", "1"}})};
    return all;
}

/// Every chemical indicator of a record, with Bowie-Dick sheets only where asked for.
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

/// One element of a list, or null where it is empty.
template <class T>
T* pick(std::vector<T>& from)
{
    return from.empty() ? nullptr : &from[*rc::gen::inRange(std::size_t{0}, from.size())];
}
template <class T>
T* pick(const std::vector<T*>& from)
{
    return from.empty() ? nullptr : from[*rc::gen::inRange(std::size_t{0}, from.size())];
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

/// A change that adds trouble, so that what is spoiled afterwards is spoiled in company.
void disturb(EvidenceRecord& record)
{
    const Instant end = record.load.end.value();
    switch (*rc::gen::inRange(0, 9)) {
    case 0: break;
    case 1:
        if (ChemicalIndicator* indicator = pick(indicatorsOf(record))) {
            indicator->readings.push_back({Seen::unclear, {"p7", Role::operating, end, end}, {}});
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

/// Takes away or spoils one pass, or makes one failure invalid. False where there was none to take.
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
    switch (*rc::gen::inRange(0, 18)) {
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

struct Situation {
    EvidenceRecord record;
    Policy policy;
    Instant now;
};

Situation anySituation()
{
    Situation situation{support::base(bases()[*rc::gen::inRange(std::size_t{0}, bases().size())]),
                        policies()[*rc::gen::inRange(std::size_t{0}, policies().size())],
                        Instant{}};
    situation.now = situation.record.decideAt.value();
    const int disturbances = *rc::gen::inRange(0, 3);
    for (int i = 0; i < disturbances; ++i) {
        disturb(situation.record);
    }
    return situation;
}

/// Whether neither the load nor any of its items has a better verdict than before.
bool isNoBetter(const Decision& after, const Decision& before)
{
    return after.verdict >= before.verdict
           && std::equal(
               after.items.begin(), after.items.end(), before.items.begin(), before.items.end(),
               [](const ItemDecision& a, const ItemDecision& b) { return a.verdict >= b.verdict; });
}

RC_GTEST_PROP(Degradation, NeverImprovesAVerdict, ())
{
    Situation situation = anySituation();
    EvidenceRecord& record = situation.record;
    const Decision before = support::decideRecordAt(record, situation.policy, situation.now);
    EvidenceRecord worse = record;
    RC_PRE(degrade(worse, situation.now));
    const Decision after =
        support::decideRecordAt(std::move(worse), situation.policy, situation.now);
    RC_LOG() << support::describe(before) << "then" << std::endl << support::describe(after);
    RC_CLASSIFY(before.verdict == Verdict::release, "from release");
    RC_CLASSIFY(before.verdict == Verdict::quarantine, "from quarantine");
    RC_CLASSIFY(before.verdict == Verdict::reprocess, "from reprocess");
    RC_ASSERT(isNoBetter(after, before));
}

RC_GTEST_PROP(AnyDecision, HasItemsNoBetterThanTheirLoad, ())
{
    const Situation situation = anySituation();
    const Decision decision =
        support::decideRecordAt(situation.record, situation.policy, situation.now);
    for (const ItemDecision& item : decision.items) {
        RC_ASSERT(item.verdict >= decision.verdict);
    }
}

RC_GTEST_PROP(AnyDecision, SaysWhyAnythingIsHeld, ())
{
    const Situation situation = anySituation();
    const Decision decision =
        support::decideRecordAt(situation.record, situation.policy, situation.now);
    const auto blocks = [&](std::int32_t item) {
        return std::any_of(decision.findings.begin(), decision.findings.end(),
                           [item](const Finding& finding) {
                               return finding.outcome > Outcome::note
                                      && (finding.item == -1 || finding.item == item);
                           });
    };
    if (decision.verdict != Verdict::release) {
        RC_ASSERT(blocks(-1));
    }
    for (std::size_t i = 0; i < decision.items.size(); ++i) {
        if (decision.items[i].verdict != Verdict::release) {
            RC_ASSERT(blocks(static_cast<std::int32_t>(i)));
        }
    }
}

/// Says of something that it cannot be obtained. False where there was nothing to say it of.
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

/// Whether something is said to be unread, or read so that it does not count: being lost matters
/// for these.
bool anythingUnread(const Decision& decision)
{
    static const std::vector<Key> keys{Key::printoutMissing,     Key::physicalMissing,
                                       Key::pcdNotRead,          Key::pcdInvalid,
                                       Key::pcdInvalidNoted,     Key::itemExternalNotRead,
                                       Key::itemExternalInvalid, Key::itemInternalNotRead,
                                       Key::itemInternalInvalid, Key::itemInternalOnOpening,
                                       Key::itemNotChecked,      Key::biUnclear,
                                       Key::biNotStarted,        Key::biIncubating,
                                       Key::biNotCounted,        Key::biDue,
                                       Key::biProcessIndicator,  Key::biControl};
    return std::any_of(decision.findings.begin(), decision.findings.end(),
                       [](const Finding& finding) {
                           return std::find(keys.begin(), keys.end(), finding.key) != keys.end();
                       });
}

RC_GTEST_PROP(Degradation, SayingLostNeverHelpsWhereNothingIsUnread, ())
{
    Situation situation = anySituation();
    EvidenceRecord& record = situation.record;
    const Decision before = support::decideRecordAt(record, situation.policy, situation.now);
    RC_PRE(!anythingUnread(before));
    EvidenceRecord worse = record;
    RC_PRE(sayLost(worse, situation.now));
    const Decision after =
        support::decideRecordAt(std::move(worse), situation.policy, situation.now);
    RC_LOG() << support::describe(before) << "then" << std::endl << support::describe(after);
    RC_ASSERT(isNoBetter(after, before));
}

bool isSame(const Finding& a, const Finding& b)
{
    return a.key == b.key && a.outcome == b.outcome && a.item == b.item && a.subject == b.subject
           && a.cause == b.cause && a.changesAt == b.changesAt && a.count == b.count;
}

bool isSame(const Decision& a, const Decision& b)
{
    return a.verdict == b.verdict && a.findings.size() == b.findings.size()
           && std::equal(a.findings.begin(), a.findings.end(), b.findings.begin(),
                         [](const Finding& x, const Finding& y) { return isSame(x, y); });
}

// Whoever read a bad answer cannot take it back alone: not by declaring it void, in whatever role
// and however they spell their name.
RC_GTEST_PROP(Voiding, OfABadReadingByItsOwnReaderChangesNothing, ())
{
    Situation situation = anySituation();
    EvidenceRecord& record = situation.record;
    const Act reader{"p7", Role::lead, situation.now, situation.now};
    const bool ofControl = !record.controls.empty() && *rc::gen::inRange(0, 3) == 0;
    std::vector<IndicatorReading>* readings = nullptr;
    if (ofControl) {
        readings = &pick(record.controls)->readings;
        readings->push_back({Seen::noGrowth, reader, {}});
    } else if (Vial* vial = pick(vialsOf(record)); vial && *rc::gen::inRange(0, 3) == 0) {
        readings = &vial->readings;
        readings->push_back({Seen::growth, reader, {}});
    } else if (ChemicalIndicator* indicator = pick(indicatorsOf(record))) {
        readings = &indicator->readings;
        readings->push_back(
            {*rc::gen::element(Seen::frontOnBoundary, Seen::unchanged, Seen::absent), reader, {}});
    }
    RC_PRE(readings != nullptr);
    const Decision before = support::decideRecordAt(record, situation.policy, situation.now);
    Act voiding = reader;
    voiding.by = *rc::gen::element<std::string>("p7", "P7", " p 7");
    voiding.role = *rc::gen::element(Role::operating, Role::lead, Role::supervisor);
    readings->back().voided = voiding;
    const Decision after = support::decideRecordAt(record, situation.policy, situation.now);
    RC_LOG() << support::describe(before) << "then" << std::endl << support::describe(after);
    RC_ASSERT(isSame(before, after));

    // Another lead can, growth in a vial apart: so the check above is no idle one.
    readings->back().voided->by = "p8";
    readings->back().voided->role = Role::lead;
    const Decision byAnother = support::decideRecordAt(record, situation.policy, situation.now);
    RC_CLASSIFY(!isSame(before, byAnother), "another lead changes it");
}

/// Moves the moment of the decision to somewhere in the load's life, so that some of it is yet to
/// come.
Instant someMoment(const EvidenceRecord& record, Instant now)
{
    const std::int64_t from = record.load.start->ms;
    return Instant{*rc::gen::inRange(from, now.ms + 1)};
}

RC_GTEST_PROP(NextChange, IsTheFirstMomentAtWhichTimeAloneChangesTheDecision, ())
{
    const Situation situation = anySituation();
    const Instant now = someMoment(situation.record, situation.now);
    const Decision decision = support::decideRecordAt(situation.record, situation.policy, now);
    RC_CLASSIFY(decision.nextChangeAt.has_value(), "time alone will change it");
    if (!decision.nextChangeAt) {
        // Nothing to come: a year on, the same is said.
        RC_ASSERT(isSame(decision, support::decideRecordAt(situation.record, situation.policy,
                                                           now + Duration::hours(24 * 365))));
        return;
    }
    const Instant change = *decision.nextChangeAt;
    RC_ASSERT(change > now);
    const Decision justBefore = support::decideRecordAt(situation.record, situation.policy,
                                                        change - Duration::milliseconds(1));
    const Decision at = support::decideRecordAt(situation.record, situation.policy, change);
    RC_LOG() << formatUtc(now) << support::describe(justBefore) << "then at " << formatUtc(change)
             << support::describe(at);
    RC_ASSERT(isSame(decision, justBefore));
    RC_ASSERT(!isSame(justBefore, at));
}

} // namespace
} // namespace loadwarden
