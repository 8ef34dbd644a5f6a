// For every rule a state in which it alone blocks: with the whole table the load (or the item) may
// not go, with the table built without that one rule it may. Printed as a table; a rule without a
// state fails the test.

#include "core/release/assemble.h"
#include "tests/support/evidence_files.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <functional>

namespace loadwarden {
namespace {

struct Necessity {
    RuleId rule;
    std::string base;
    std::string how;
    std::function<void(EvidenceRecord&)> change;
    std::vector<support::PolicyChange> policy;
};

Act act(const std::string& by, Role role, Instant at)
{
    return {by, role, at, at};
}

IndicatorReading looked(Seen seen, Instant at)
{
    return {seen, act("p1", Role::operating, at), std::nullopt};
}

Instant start(const EvidenceRecord& record)
{
    return record.load.start.value();
}
Instant end(const EvidenceRecord& record)
{
    return record.load.end.value();
}

/// A past load of the record's sterilizer and cycle type, two days before, with a counter of its
/// own.
HistoryCycle& addPastLoad(EvidenceRecord& record, const std::string& lot)
{
    HistoryCycle past;
    past.lot = lot;
    past.method = record.specification->method;
    past.cycleType = record.specification->cycleType;
    past.start = start(record) - Duration::hours(48);
    past.end = past.start + Duration::minutes(50);
    past.counter = 7;
    past.outcome = CycleOutcome::ended;
    record.sterilizer->cycles.push_back(past);
    return record.sterilizer->cycles.back();
}

/// A supervisor returned the sterilizer to service half an hour before the load.
void returnToService(EvidenceRecord& record)
{
    record.sterilizer->service.push_back(
        {ServiceState::inService,
         act("p4", Role::supervisor, start(record) - Duration::minutes(30))});
}

const std::vector<Necessity>& necessities()
{
    static const std::vector<Necessity> all{
        {RuleId::order,
         "steam-gravity",
         "a past cycle with the smaller counter began later",
         [](EvidenceRecord& r) {
             HistoryCycle& past = addPastLoad(r, "PAST");
             past.start = end(r) + Duration::hours(1);
             past.end.reset();
         },
         {}},
        {RuleId::acts,
         "steam-gravity",
         "a second reading of the temperature is unsigned",
         [](EvidenceRecord& r) {
             ParameterReading again = r.load.readings.front();
             again.act.by.clear();
             r.load.readings.push_back(again);
         },
         {}},
        {RuleId::record,
         "steam-gravity",
         "nobody is named as operator",
         [](EvidenceRecord& r) { r.load.operatedBy.clear(); },
         {}},
        {RuleId::printout,
         "steam-gravity",
         "the printout names another program",
         [](EvidenceRecord& r) { r.load.printout->program = "P-OTHER"; },
         {}},
        {RuleId::cycleEnd,
         "steam-gravity",
         "aborted while drying",
         [](EvidenceRecord& r) {
             r.load.outcome = CycleOutcome::aborted;
             r.load.abortPhase = AbortPhase::drying;
         },
         {}},
        {RuleId::sterilizer,
         "steam-gravity",
         "taken out of service before the load",
         [](EvidenceRecord& r) {
             r.sterilizer->service.push_back(
                 {ServiceState::outOfService,
                  act("p4", Role::supervisor, start(r) - Duration::minutes(10))});
         },
         {}},
        {RuleId::processFailure,
         "steam-gravity",
         "a load two days ago was aborted, no cause recorded",
         [](EvidenceRecord& r) { addPastLoad(r, "PAST").outcome = CycleOutcome::aborted; },
         {}},
        {RuleId::scope,
         "steam-gravity",
         "growth two days ago, returned to service, incident open",
         [](EvidenceRecord& r) {
             HistoryCycle& past = addPastLoad(r, "PAST");
             Vial vial;
             vial.id = "V-PAST";
             vial.readings.push_back(looked(Seen::growth, past.start + Duration::hours(30)));
             past.vials.push_back(vial);
             returnToService(r);
         },
         {}},
        {RuleId::airRemoval,
         "steam-prevacuum",
         "no Bowie-Dick was made",
         [](EvidenceRecord& r) {
             std::erase_if(r.sterilizer->cycles, [](const HistoryCycle& cycle) {
                 return cycle.kind == CycleKind::bowieDick;
             });
         },
         {}},
        {RuleId::physical,
         "steam-gravity",
         "the temperature was a hundredth below its limit",
         [](EvidenceRecord& r) {
             const Limit& limit = r.specification->limits.front();
             r.load.readings.front().value = limit.least.front();
             r.load.readings.front().value.thousandths -= 10;
         },
         {}},
        {RuleId::trace,
         "steam-gravity",
         "the sterilizer's recording shows a shorter exposure than what was typed",
         [](EvidenceRecord& r) {
             TraceFindings trace;
             trace.id = "TR-1";
             trace.specification = r.specification->id;
             trace.revision = r.specification->revision;
             trace.exposure = Shown::notMet;
             trace.act = act("p1", Role::operating, end(r));
             r.load.traces.push_back(trace);
         },
         {}},
        {RuleId::verification,
         "steam-gravity",
         "nobody verified the physical record",
         [](EvidenceRecord& r) { r.load.verifications.clear(); },
         {}},
        {RuleId::pcd,
         "steam-prevacuum",
         "the PCD's integrator stopped short of the boundary",
         [](EvidenceRecord& r) {
             r.load.pcds.front().indicators.front().readings.front().seen =
                 Seen::frontShortOfBoundary;
         },
         {}},
        {RuleId::implant,
         "steam-prevacuum-implant",
         "only a type 6 indicator beside the negative BI",
         [](EvidenceRecord& r) {
             for (IndicatorProduct& product : r.products) {
                 product.type = product.type == 5 ? 6 : product.type;
             }
         },
         {}},
        {RuleId::bi,
         "ethylene-oxide",
         "the BI was not read",
         [](EvidenceRecord& r) { r.load.pcds.front().vials.front().readings.clear(); },
         {}},
        {RuleId::routineBi,
         "steam-gravity",
         "no BI that day, and loads wait for one",
         [](EvidenceRecord& r) {
             for (ProcessChallengeDevice& pcd : r.load.pcds) {
                 pcd.vials.clear();
             }
             for (HistoryCycle& past : r.sterilizer->cycles) {
                 past.vials.clear();
             }
         },
         {{"bi.routine_blocks", "true"}}},
        {RuleId::packages,
         "steam-prevacuum",
         "two packages wet",
         [](EvidenceRecord& r) {
             r.load.items[0].checks.front().dry = false;
             r.load.items[1].checks.front().dry = false;
         },
         {}},
        {RuleId::aeration,
         "ethylene-oxide",
         "the aeration run was interrupted",
         [](EvidenceRecord& r) {
             r.load.aerationRuns.front().interrupted =
                 act("p1", Role::operating, end(r) + Duration::hours(1));
         },
         {}},
        {RuleId::peroxide,
         "hydrogen-peroxide",
         "a package holds cellulose",
         [](EvidenceRecord& r) { r.load.items.front().peroxide.cellulose = true; },
         {}},
        {RuleId::immediate,
         "immediate-use",
         "no reason for immediate use",
         [](EvidenceRecord& r) { r.load.immediateUse->reason.clear(); },
         {}},
        {RuleId::reviews,
         "steam-gravity",
         "a lead found something not isolated",
         [](EvidenceRecord& r) {
             Review review;
             review.finding = "packages.wet";
             review.answer = ReviewAnswer::notIsolated;
             review.why = "several packages of the week were damp";
             review.newestSeen = end(r);
             review.act = act("p3", Role::lead, end(r) + Duration::hours(1));
             r.load.reviews.push_back(review);
         },
         {}},
        {RuleId::wasInside,
         "steam-gravity",
         "its label stands in two loads",
         [](EvidenceRecord& r) { r.load.items.front().alsoInLots = {"L-OTHER"}; },
         {}},
        {RuleId::external,
         "steam-prevacuum",
         "the external indicator was not read",
         [](EvidenceRecord& r) { r.load.items.front().external->readings.clear(); },
         {}},
        {RuleId::package,
         "steam-gravity",
         "the package was torn",
         [](EvidenceRecord& r) { r.load.items.front().checks.front().intact = false; },
         {}},
        {RuleId::internal,
         "steam-prevacuum",
         "an internal indicator was unclear",
         [](EvidenceRecord& r) {
             r.load.items.front().internals.front().readings = {
                 looked(Seen::unclear, end(r) + Duration::hours(1))};
         },
         {}},
        {RuleId::cycleAllowed,
         "steam-gravity",
         "a device asks for a minute more",
         [](EvidenceRecord& r) {
             AllowedCycle& allowed = r.load.items.front().devices.front().allowedCycles.front();
             allowed.leastMs = *r.specification->settings.exposureMs + 60'000;
             r.load.items.front().devices.front().allowedCycles = {allowed};
         },
         {}},
        {RuleId::itemImplant,
         "steam-prevacuum-implant",
         "the implant's BI was not read; only implants are held",
         [](EvidenceRecord& r) {
             for (ProcessChallengeDevice& pcd : r.load.pcds) {
                 for (Vial& vial : pcd.vials) {
                     vial.readings.clear();
                 }
             }
         },
         {{"implant.hold", "\"implants-only\""}}},
        {RuleId::itemPeroxide,
         "hydrogen-peroxide",
         "it is not known whether the item has a lumen",
         [](EvidenceRecord& r) { r.load.items.front().peroxide.lumen.reset(); },
         {}},
        {RuleId::inTest,
         "steam-gravity",
         "its label was found in a leak test",
         [](EvidenceRecord& r) {
             HistoryCycle& test = addPastLoad(r, "LEAK");
             test.kind = CycleKind::leak;
             test.items = {r.load.items.front().label};
         },
         {}},
    };
    return all;
}

bool isItemRule(RuleId rule)
{
    const auto items = allRules().items;
    return std::any_of(items.begin(), items.end(),
                       [rule](const ItemRule& each) { return each.id == rule; });
}

Decision withoutRule(RuleId rule, const Evidence& evidence, const Policy& policy, Instant now)
{
    std::vector<LoadRule> load;
    for (const LoadRule& each : allRules().load) {
        if (each.id != rule) {
            load.push_back(each);
        }
    }
    std::vector<ItemRule> items;
    for (const ItemRule& each : allRules().items) {
        if (each.id != rule) {
            items.push_back(each);
        }
    }
    return decideWith({load, items}, evidence, policy, now);
}

Verdict worstItem(const Decision& decision)
{
    Verdict worst = Verdict::release;
    for (const ItemDecision& item : decision.items) {
        worst = std::max(worst, item.verdict);
    }
    return worst;
}

TEST(Necessity, EveryRuleAloneBlocksSomething)
{
    std::vector<RuleId> asked;
    for (const LoadRule& rule : allRules().load) {
        asked.push_back(rule.id);
    }
    for (const ItemRule& rule : allRules().items) {
        asked.push_back(rule.id);
    }
    std::printf("%-16s %-5s %-11s %-11s %s\n", "rule", "of", "with it", "without", "state");
    for (RuleId rule : asked) {
        if (rule == RuleId::voiding) {
            continue; // never blocks; see OneRuleOnlySays
        }
        const auto found =
            std::find_if(necessities().begin(), necessities().end(),
                         [rule](const Necessity& each) { return each.rule == rule; });
        ASSERT_NE(found, necessities().end())
            << "no state shows that the rule " << textOf(rule) << " is needed";
        SCOPED_TRACE(std::string(textOf(rule)) + ": " + found->how);
        EvidenceRecord record = support::base(found->base);
        const Instant now = record.decideAt.value();
        found->change(record);
        const Policy policy = support::policyWith(found->policy);
        const Evidence evidence = assemble(std::move(record));
        const Decision with = decide(evidence, policy, now);
        const Decision without = withoutRule(rule, evidence, policy, now);
        SCOPED_TRACE(support::describe(with));
        SCOPED_TRACE(support::describe(without));
        const bool ofItem = isItemRule(rule);
        const Verdict blocked = ofItem ? worstItem(with) : with.verdict;
        const Verdict free = ofItem ? worstItem(without) : without.verdict;
        std::printf("%-16s %-5s %-11s %-11s %s\n", std::string(textOf(rule)).c_str(),
                    ofItem ? "item" : "load", std::string(textOf(blocked)).c_str(),
                    std::string(textOf(free)).c_str(), found->how.c_str());
        EXPECT_NE(blocked, Verdict::release);
        EXPECT_EQ(free, Verdict::release);
        if (ofItem) {
            EXPECT_EQ(with.verdict, Verdict::release) << "the load itself may go";
        }
    }
}

// Declaring a bad answer void can free a load; that it was done stays said.
TEST(Necessity, OneRuleOnlySays)
{
    EvidenceRecord record = support::base("steam-prevacuum-implant");
    const Instant now = record.decideAt.value();
    IndicatorReading wrong = looked(Seen::frontShortOfBoundary, end(record) + Duration::minutes(5));
    wrong.voided = act("p3", Role::lead, end(record) + Duration::minutes(6));
    record.load.pcds.front().indicators.front().readings.push_back(wrong);
    const Evidence evidence = assemble(std::move(record));
    const Decision with = decide(evidence, Policy{}, now);
    const Decision without = withoutRule(RuleId::voiding, evidence, Policy{}, now);
    EXPECT_EQ(with.findings.size(), without.findings.size() + 1);
    EXPECT_EQ(ruleOf(with.findings.back().key), RuleId::voiding);
    EXPECT_EQ(textOf(with.verdict), textOf(without.verdict));
}

} // namespace
} // namespace loadwarden
