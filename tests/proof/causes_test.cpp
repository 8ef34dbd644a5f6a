// Why what was read does not count: every cause of core/release/RULES.md, 4a, by one change.

#include "tests/proof/finding_rows.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using proof::act;
using proof::end;
using proof::expectSaid;
using proof::lotOf;
using proof::named;
using proof::pcdIndicator;
using proof::vialOf;

// RULES.md, 4a, Chemical, in its order; every change but the last leaves the one before unmade.
TEST(Causes, OfAChemicalIndicatorThatDoesNotCount)
{
    using R = EvidenceRecord;
    const auto reading = [](auto change) {
        return [change](R& r) { change(pcdIndicator(r).readings.front()); };
    };
    const auto product = [](auto change) {
        return [change](R& r) { change(named(r.products, pcdIndicator(r).product)); };
    };
    const std::pair<Cause, std::function<void(R&)>> causes[] = {
        {Cause::productUnknown, [](R& r) { pcdIndicator(r).product = "NONE"; }},
        {Cause::productUnfit,
         product([](IndicatorProduct& p) { p.kind = IndicatorKind::biological; })},
        {Cause::lotUnknown, [](R& r) { pcdIndicator(r).lot = "NONE"; }},
        {Cause::lotWithoutDate, [](R& r) { lotOf(r, pcdIndicator(r).product).expires.reset(); }},
        {Cause::lotExpired, [](R& r) { lotOf(r, pcdIndicator(r).product).expires = Date{0}; }},
        {Cause::method, product([](IndicatorProduct& p) { p.methods = {}; })},
        {Cause::cycleType, product([](IndicatorProduct& p) { p.cycleTypes = {"other"}; })},
        {Cause::type, product([](IndicatorProduct& p) { p.type = 4; })},
        {Cause::usedElsewhere, [](R& r) { pcdIndicator(r).alsoUsedIn = {"L-OTHER"}; }},
        {Cause::unsignedAct, reading([](IndicatorReading& each) { each.act.by = " "; })},
        {Cause::unsignedAct, reading([](IndicatorReading& each) { each.act.role = Role::viewer; })},
        {Cause::timesImpossible, reading([](IndicatorReading& each) {
             each.act.happenedAt = each.act.recordedAt + Duration::milliseconds(1);
         })},
        {Cause::otherResponse,
         reading([](IndicatorReading& each) { each.seen = Seen::endColourReached; })},
        {Cause::voided, reading([](IndicatorReading& each) {
             each.voided = act("", Role::viewer, each.act.recordedAt);
         })},
        {Cause::readEarly,
         [](R& r) {
             pcdIndicator(r).readings.front().act.happenedAt = end(r) - Duration::milliseconds(1);
         }},
        {Cause::readLate, product([](IndicatorProduct& p) { p.readWithinMinutes = 1; })},
    };
    for (const auto& [cause, change] : causes) {
        expectSaid({std::string(textOf(cause)), "steam-prevacuum-implant", change, Key::pcdInvalid,
                    Outcome::waits, "PCD-1", cause});
    }
    // The reading that came last speaks; what spoils the indicator speaks before any reading.
    expectSaid({"two readings", "steam-prevacuum-implant",
                [](R& r) {
                    auto& readings = pcdIndicator(r).readings;
                    readings.push_back(readings.front());
                    readings.front().act.by.clear();
                    readings.back().seen = Seen::endColourReached;
                },
                Key::pcdInvalid, Outcome::waits, "PCD-1", Cause::otherResponse});
    expectSaid({"spoiled and unsigned", "steam-prevacuum-implant",
                [](R& r) {
                    pcdIndicator(r).lot = "NONE";
                    pcdIndicator(r).readings.front().act.by.clear();
                },
                Key::pcdInvalid, Outcome::waits, "PCD-1", Cause::lotUnknown});
    expectSaid({"beside an accepted one", "steam-prevacuum-implant",
                [](R& r) {
                    auto& indicators = r.load.pcds.front().indicators;
                    indicators.push_back(indicators.front());
                    indicators.back().alsoUsedIn = {"L-OTHER"};
                },
                Key::pcdInvalidNoted, Outcome::note, "PCD-1", Cause::usedElsewhere});
    const auto unsignedExternal = [](R& r) {
        r.load.items.front().external->readings.front().act.by.clear();
    };
    expectSaid({"outside",
                "steam-prevacuum-implant",
                unsignedExternal,
                Key::itemExternalInvalid,
                Outcome::waits,
                {},
                Cause::unsignedAct});
    expectSaid({"outside, lost",
                "steam-prevacuum-implant",
                [unsignedExternal](R& r) {
                    unsignedExternal(r);
                    r.load.items.front().external->lost =
                        act("p1", Role::operating, end(r) + Duration::hours(1));
                },
                Key::itemExternalLost,
                Outcome::fails,
                {},
                Cause::unsignedAct});
    expectSaid({"outside, unread and lost", "steam-prevacuum-implant",
                [](R& r) {
                    r.load.items.front().external->readings.clear();
                    r.load.items.front().external->alsoUsedIn = {"L-OTHER"};
                    r.load.items.front().external->lost =
                        act("p1", Role::operating, end(r) + Duration::hours(1));
                },
                Key::itemExternalLost, Outcome::fails});
    expectSaid({"inside", "steam-prevacuum-implant",
                [](R& r) {
                    r.load.items.front().internals.front().readings.push_back(
                        {Seen::endColourReached,
                         act("p1", Role::operating, end(r) + Duration::hours(1)),
                         {}});
                },
                Key::itemInternalInvalid, Outcome::note, "centre", Cause::otherResponse});
}

// RULES.md, 4a, Vial, in its order.
TEST(Causes, OfAVialThatDoesNotCount)
{
    using R = EvidenceRecord;
    const auto product = [](auto change) {
        return [change](R& r) { change(named(r.products, vialOf(r).product)); };
    };
    const std::pair<Cause, std::function<void(R&)>> voids[] = {
        {Cause::voided,
         [](R& r) { vialOf(r).voided = act("p3", Role::lead, end(r) + Duration::hours(1)); }},
        {Cause::productUnfit, [](R& r) { vialOf(r).product = "INT5-ST"; }},
        {Cause::lotExpired, [](R& r) { lotOf(r, vialOf(r).product).expires = Date{0}; }},
        {Cause::method, product([](IndicatorProduct& p) { p.methods = {}; })},
        {Cause::cycleType, product([](IndicatorProduct& p) { p.cycleTypes = {"other"}; })},
        {Cause::species, product([](IndicatorProduct& p) { p.species = Species::other; })},
        {Cause::usedElsewhere, [](R& r) { vialOf(r).alsoUsedIn = {"L-OTHER"}; }},
        {Cause::notActivated, [](R& r) { vialOf(r).activation->by.clear(); }},
        {Cause::processIndicator,
         [](R& r) { vialOf(r).processIndicator = ProcessIndicator::unchanged; }},
        {Cause::incubatedEarly,
         [](R& r) {
             named(r.products, vialOf(r).product).needsActivation = false;
             vialOf(r).incubationStart = end(r) - Duration::milliseconds(1);
         }},
        {Cause::notActivated,
         [](R& r) { vialOf(r).activation->happenedAt = end(r) - Duration::milliseconds(1); }},
        {Cause::notActivated,
         [](R& r) {
             vialOf(r).activation =
                 act("p1", Role::operating, *vialOf(r).incubationStart + Duration::minutes(1));
         }},
        {Cause::incubatedLate, product([](IndicatorProduct& p) { p.startWithinMinutes = 19; })},
        {Cause::controlDead,
         [](R& r) { r.controls.front().readings.front().seen = Seen::noGrowth; }},
        {Cause::controlMissing,
         [](R& r) {
             r.controls.clear();
             r.decideAt = *r.decideAt + Duration::hours(24);
         }},
        {Cause::readLate, product([](IndicatorProduct& p) { p.latestMinutes = 64; })},
    };
    for (const auto& [cause, change] : voids) {
        expectSaid({std::string(textOf(cause)), "steam-prevacuum-implant", change, Key::biVoid,
                    Outcome::fails, "V1", cause});
    }
    const std::pair<Cause, std::function<void(R&)>> unregistered[] = {
        {Cause::productUnknown, [](R& r) { vialOf(r).product = "NONE"; }},
        {Cause::lotUnknown, [](R& r) { vialOf(r).lot = "NONE"; }},
        {Cause::lotWithoutDate, [](R& r) { lotOf(r, vialOf(r).product).expires.reset(); }},
        {Cause::lotWithoutDate,
         [](R& r) { lotOf(r, vialOf(r).product).expires = r.zone.dateOf(*r.load.start) + 3'654; }},
    };
    for (const auto& [cause, change] : unregistered) {
        expectSaid({std::string(textOf(cause)), "steam-prevacuum-implant", change,
                    Key::biNotRegistered, Outcome::waits, "V1", cause});
    }
    expectSaid(
        {"ten years are a shelf life still",
         "steam-prevacuum-implant",
         [](R& r) { lotOf(r, vialOf(r).product).expires = r.zone.dateOf(*r.load.start) + 3'653; },
         Key::biNotRegistered,
         Outcome::waits,
         {},
         {},
         false});
    const auto reading = [](auto change) {
        return [change](R& r) { change(vialOf(r).readings.front()); };
    };
    const std::pair<Cause, std::function<void(R&)>> notCounted[] = {
        {Cause::unsignedAct, reading([](IndicatorReading& each) { each.act.by.clear(); })},
        {Cause::timesImpossible, reading([](IndicatorReading& each) {
             each.act.happenedAt = each.act.recordedAt + Duration::milliseconds(1);
         })},
        {Cause::voided, reading([](IndicatorReading& each) {
             each.voided = act("p1", Role::operating, each.act.recordedAt);
         })},
        {Cause::readEarly,
         [](R& r) {
             vialOf(r).readings.front().act.happenedAt =
                 *vialOf(r).incubationStart + Duration::minutes(60) - Duration::milliseconds(1);
         }},
        {Cause::incubator,
         [](R& r) {
             r.incubators.front().outOfRange.push_back(
                 {*vialOf(r).incubationStart, *vialOf(r).incubationStart + Duration::minutes(10)});
         }},
    };
    for (const auto& [cause, change] : notCounted) {
        expectSaid({std::string(textOf(cause)), "steam-prevacuum-implant", change,
                    Key::biNotCounted, Outcome::waits, "V1", cause});
    }
    expectSaid({"unread", "steam-prevacuum-implant", [](R& r) { vialOf(r).readings.clear(); },
                Key::biDue, Outcome::waits, "V1"});
    expectSaid({"a void vial of a qualification",
                "test-qualification",
                [](R& r) { r.test->vials.front().alsoUsedIn = {"L-OTHER"}; },
                Key::testBiVoid,
                Outcome::waits,
                {},
                Cause::usedElsewhere});
    expectSaid({"a lost vial of a qualification",
                "test-qualification",
                [](R& r) {
                    r.test->vials.front().readings.clear();
                    r.test->vials.front().lost = act("p1", Role::operating, *r.decideAt);
                },
                Key::testBiVoid,
                Outcome::waits,
                {},
                Cause::lost});
}

} // namespace
} // namespace loadwarden
