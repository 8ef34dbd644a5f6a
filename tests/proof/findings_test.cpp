// What one change to a releasable record makes the decision say: key, subject, cause. Each row is a
// line of core/release/RULES.md, on both sides of its bound where it has one.

#include "core/release/assemble.h"
#include "tests/support/evidence_files.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

namespace loadwarden {
namespace {

struct Row {
    std::string how;
    std::string base;
    std::function<void(EvidenceRecord&)> change;
    Key key{};
    Outcome outcome = Outcome::waits;
    std::string subject{};
    Cause cause = Cause::none;
    bool said = true; ///< false: the key is not said at all
};

Act act(const std::string& by, Role role, Instant at)
{
    return {by, role, at, at};
}

Instant end(const EvidenceRecord& record)
{
    return record.load.end.value();
}

ChemicalIndicator& pcdIndicator(EvidenceRecord& record)
{
    return record.load.pcds.front().indicators.front();
}

Vial& vialOf(EvidenceRecord& record)
{
    return record.load.pcds.front().vials.front();
}

template <class List>
auto& named(List& list, const std::string& id)
{
    return *std::find_if(list.begin(), list.end(), [&](const auto& each) { return each.id == id; });
}

IndicatorLot& lotOf(EvidenceRecord& record, const std::string& product)
{
    return *std::find_if(record.lots.begin(), record.lots.end(),
                         [&](const IndicatorLot& lot) { return lot.product == product; });
}

Limit& limitOf(EvidenceRecord& record, Parameter parameter)
{
    auto& limits = record.specification->limits;
    return *std::find_if(limits.begin(), limits.end(),
                         [&](const Limit& limit) { return limit.parameter == parameter; });
}

ParameterReading& readingOf(EvidenceRecord& record, Parameter parameter)
{
    auto& readings = record.load.readings;
    return *std::find_if(readings.begin(), readings.end(), [&](const ParameterReading& reading) {
        return reading.parameter == parameter;
    });
}

/// A lead who did not run the load says that the record is right.
void confirm(EvidenceRecord& record)
{
    record.load.printoutAnswers.push_back(
        {PrintoutAnswer::recordRight, act("p3", Role::lead, end(record) + Duration::hours(1))});
}

void expectSaid(const Row& row)
{
    SCOPED_TRACE(row.how);
    EvidenceRecord record = support::base(row.base);
    row.change(record);
    const Instant now = record.decideAt.value();
    const Evidence evidence = assemble(std::move(record));
    const std::vector<Finding> findings = evidence.record.test
                                              ? judgeTest(evidence, Policy{}, now).findings
                                              : decide(evidence, Policy{}, now).findings;
    const auto isAsked = [&row](const Finding& finding) {
        return finding.key == row.key && (!row.said || finding.subject == row.subject);
    };
    const auto found = std::find_if(findings.begin(), findings.end(), isAsked);
    ASSERT_EQ(found != findings.end(), row.said) << textOf(row.key) << " of " << row.subject;
    if (row.said) {
        EXPECT_EQ(textOf(found->outcome), textOf(row.outcome));
        EXPECT_EQ(textOf(found->cause), textOf(row.cause));
        EXPECT_EQ(std::count_if(findings.begin(), findings.end(), isAsked), 1);
    }
}

TEST(Findings, OfTheRecord)
{
    using R = EvidenceRecord;
    // 30 min of exposure and 15 of drying, with a minute allowed for seconds left out.
    const auto runs = [](Duration time) {
        return [time](R& r) { r.load.end = r.load.start.value() + time; };
    };
    const Row rows[] = {
        {"44 min are enough for 45",
         "steam-gravity",
         runs(Duration::minutes(44)),
         Key::recordTooShort,
         Outcome::waits,
         {},
         {},
         false},
        {"a millisecond less is not", "steam-gravity",
         runs(Duration::minutes(44) - Duration::milliseconds(1)), Key::recordTooShort},
        {"an unsigned reading counts, and seconds do", "steam-gravity",
         [](R& r) {
             ParameterReading longer = readingOf(r, Parameter::exposure);
             longer.value = {Unit::seconds, 36 * 60 * 1'000 + 1};
             longer.act.by.clear();
             r.load.readings.push_back(longer);
         },
         Key::recordTooShort},
        {"36 min do not",
         "steam-gravity",
         [](R& r) {
             readingOf(r, Parameter::exposure).value = {Unit::minutes, 36'000};
         },
         Key::recordTooShort,
         Outcome::waits,
         {},
         {},
         false},
        {"backwards times are no short cycle",
         "steam-gravity",
         runs(-Duration::minutes(1)),
         Key::recordTooShort,
         Outcome::waits,
         {},
         {},
         false},
        {"an operator of blanks is none", "steam-gravity", [](R& r) { r.load.operatedBy = "  "; },
         Key::recordMissing, Outcome::waits, "operator"},
        {"a phase of abort is an abort", "steam-gravity",
         [](R& r) { r.load.abortPhase = AbortPhase::exposure; }, Key::cycleAborted, Outcome::fails},
        {"also one that is not known", "steam-gravity",
         [](R& r) { r.load.abortPhase = AbortPhase::unknown; }, Key::cycleAborted, Outcome::fails},
        {"and drying", "steam-gravity", [](R& r) { r.load.abortPhase = AbortPhase::drying; },
         Key::cycleAbortedDrying, Outcome::fails},
        {"aborted, no phase stated", "steam-gravity",
         [](R& r) { r.load.outcome = CycleOutcome::aborted; }, Key::cycleAborted, Outcome::fails},
    };
    for (const Row& row : rows) {
        expectSaid(row);
    }
}

TEST(Findings, OfActsThatAreNotSigned)
{
    using R = EvidenceRecord;
    const Row rows[] = {
        {"blanks are no name", "steam-gravity",
         [](R& r) { r.load.readings.front().act.by = "   "; }, Key::actUnsigned, Outcome::waits,
         "readings"},
        {"a viewer records nothing", "steam-gravity",
         [](R& r) { r.load.verifications.front().role = Role::viewer; }, Key::actUnsigned,
         Outcome::waits, "verifications"},
        {"of an item", "steam-gravity", [](R& r) { r.load.items.front().recorded->by.clear(); },
         Key::actUnsigned, Outcome::waits, "recorded"},
        {"of the printout", "steam-gravity", [](R& r) { r.load.printout->act.by.clear(); },
         Key::actUnsigned, Outcome::waits, "printout"},
        {"of the sterilizer", "steam-gravity",
         [](R& r) { r.sterilizer->service.front().act.by.clear(); }, Key::actUnsigned,
         Outcome::waits, "service"},
        {"of aeration", "ethylene-oxide",
         [](R& r) { r.load.aerationRuns.front().start.by.clear(); }, Key::actUnsigned,
         Outcome::waits, "start"},
    };
    for (const Row& row : rows) {
        expectSaid(row);
    }
}

TEST(Findings, OfThePrintout)
{
    using R = EvidenceRecord;
    const auto confirmed = [](auto change) {
        return [change](R& r) {
            change(r);
            confirm(r);
        };
    };
    const auto program = [](R& r) { r.load.printout->program = "P-OTHER"; };
    const auto sterilizer = [](R& r) { r.load.printout->sterilizer = "S-OTHER"; };
    const auto counter = [](R& r) { r.load.printout->counter = 4'711; };
    const auto both = [](R& r) {
        r.load.printout->program = "P-OTHER";
        r.load.printout->end.reset();
    };
    constexpr auto note = Outcome::note;
    const Row rows[] = {
        {"program", "steam-gravity", program, Key::printoutDiffers, Outcome::waits, "program"},
        {"program, confirmed", "steam-gravity", confirmed(program), Key::printoutDiffers,
         Outcome::waits, "program"},
        {"nothing to confirm",
         "steam-gravity",
         confirmed(program),
         Key::printoutConfirmed,
         note,
         {},
         {},
         false},
        {"sterilizer, confirmed", "steam-gravity", confirmed(sterilizer), Key::printoutDiffers,
         Outcome::waits, "sterilizer"},
        {"counter", "steam-gravity", counter, Key::printoutDiffers, Outcome::waits, "counter"},
        {"counter, confirmed",
         "steam-gravity",
         confirmed(counter),
         Key::printoutDiffers,
         Outcome::waits,
         {},
         {},
         false},
        {"counter, confirmed, is said", "steam-gravity", confirmed(counter), Key::printoutConfirmed,
         note},
        {"end left out", "steam-gravity", [](R& r) { r.load.printout->end.reset(); },
         Key::printoutIncomplete, Outcome::waits, "end"},
        {"one of two is confirmed", "steam-gravity", confirmed(both), Key::printoutConfirmed, note},
        {"and the other is not", "steam-gravity", confirmed(both), Key::printoutDiffers,
         Outcome::waits, "program"},
        {"program left out of the specification", "steam-gravity",
         [](R& r) { r.specification->program.clear(); }, Key::printoutIncomplete, Outcome::waits,
         "program"},
        {"the operator confirms, written otherwise", "steam-gravity",
         [](R& r) {
             r.load.printout->counter = 4'711;
             confirm(r);
             r.load.printoutAnswers.front().act.by = "P 1";
         },
         Key::printoutDiffers, Outcome::waits, "counter"},
    };
    for (const Row& row : rows) {
        expectSaid(row);
    }
}

TEST(Findings, OfTheCycleSpecification)
{
    using R = EvidenceRecord;
    const auto least = [](Parameter parameter, Unit unit, std::int64_t thousandths) {
        return [=](R& r) { limitOf(r, parameter).least = {{unit, thousandths}}; };
    };
    const auto read = [](Unit unit, std::int64_t thousandths) {
        return [=](R& r) { readingOf(r, Parameter::temperature).value = {unit, thousandths}; };
    };
    constexpr auto waits = Outcome::waits;
    const Row rows[] = {
        {"drying is set and has no limit", "steam-gravity",
         [](R& r) { r.specification->limits.pop_back(); }, Key::physicalLimitsMissing, waits,
         "drying"},
        {"drying is not set",
         "steam-gravity",
         [](R& r) {
             r.specification->limits.pop_back();
             r.specification->settings.dryingMs = 0;
         },
         Key::physicalLimitsMissing,
         waits,
         {},
         {},
         false},
        // The program is set to 121 °C, 30 min, 15 min.
        {"half a kelvin below",
         "steam-gravity",
         least(Parameter::temperature, Unit::celsius, 120'500),
         Key::physicalLimitMilder,
         waits,
         {},
         {},
         false},
        {"a hundredth more", "steam-gravity", least(Parameter::temperature, Unit::celsius, 120'490),
         Key::physicalLimitMilder, waits, "temperature"},
        {"248.9 °F are 120.5 °C",
         "steam-gravity",
         least(Parameter::temperature, Unit::fahrenheit, 248'900),
         Key::physicalLimitMilder,
         waits,
         {},
         {},
         false},
        {"248.89 °F are less", "steam-gravity",
         least(Parameter::temperature, Unit::fahrenheit, 248'890), Key::physicalLimitMilder, waits,
         "temperature"},
        {"the milder of two units", "steam-gravity",
         [](R& r) {
             limitOf(r, Parameter::temperature).least = {{Unit::celsius, 121'000},
                                                         {Unit::fahrenheit, 248'000}};
         },
         Key::physicalLimitMilder, waits, "temperature"},
        {"a thousandth of a minute of exposure", "steam-gravity",
         least(Parameter::exposure, Unit::minutes, 29'999), Key::physicalLimitMilder, waits,
         "exposure"},
        {"a thousandth of a minute of drying", "steam-gravity",
         least(Parameter::drying, Unit::minutes, 14'999), Key::physicalLimitMilder, waits,
         "drying"},
        {"nothing set",
         "steam-gravity",
         [](R& r) {
             r.specification->settings = {};
             limitOf(r, Parameter::exposure).least = {{Unit::minutes, 1}};
         },
         Key::physicalLimitMilder,
         waits,
         {},
         {},
         false},
        {"a gas is set within its limits",
         "ethylene-oxide",
         [](R&) {},
         Key::physicalLimitMilder,
         waits,
         {},
         {},
         false},
        {"30 K above",
         "steam-gravity",
         read(Unit::celsius, 151'000),
         Key::physicalImplausible,
         waits,
         {},
         {},
         false},
        {"a hundredth more", "steam-gravity", read(Unit::celsius, 151'010),
         Key::physicalImplausible, waits, "temperature"},
        {"Fahrenheit typed as Celsius", "steam-gravity", read(Unit::celsius, 250'000),
         Key::physicalImplausible, waits, "temperature"},
        {"Fahrenheit typed as such",
         "steam-gravity",
         read(Unit::fahrenheit, 250'000),
         Key::physicalImplausible,
         waits,
         {},
         {},
         false},
        {"not set: by the least limit", "steam-gravity",
         [](R& r) {
             r.specification->settings.temperature.reset();
             readingOf(r, Parameter::temperature).value = {Unit::celsius, 151'010};
         },
         Key::physicalImplausible, waits, "temperature"},
        {"nothing to compare with",
         "steam-gravity",
         [](R& r) {
             r.specification->settings.temperature.reset();
             limitOf(r, Parameter::temperature).least.clear();
             readingOf(r, Parameter::temperature).value = {Unit::celsius, 250'000};
         },
         Key::physicalImplausible,
         waits,
         {},
         {},
         false},
        {"an aeration of nothing", "ethylene-oxide",
         [](R& r) {
             r.sterilizer->aeration->minutes = 0;
             for (Packaging& each : r.packagings) {
                 each.aerationMinutes = 0;
             }
             for (Item& item : r.load.items) {
                 for (Device& device : item.devices) {
                     device.aerationMinutes = 0;
                 }
             }
         },
         Key::aerationNotStated},
    };
    for (const Row& row : rows) {
        expectSaid(row);
    }
}

TEST(Findings, OfTheBowieDick)
{
    using R = EvidenceRecord;
    const auto past = [](R& r) -> HistoryCycle& { return r.sterilizer->cycles.back(); };
    const Row rows[] = {
        {"a test that was not steam", "test-bowie-dick",
         [](R& r) { r.test->method = Method::dryHeat; }, Key::testNotSteam},
        {"of a method not known",
         "test-bowie-dick",
         [](R& r) { r.test->method = Method::unknown; },
         Key::testNotSteam,
         Outcome::waits,
         {},
         {},
         false},
        {"void by its method", "steam-prevacuum",
         [past](R& r) { past(r).method = Method::ethyleneOxide; }, Key::airRemovalVoid,
         Outcome::waits, "BD1"},
        {"void by its chamber", "steam-prevacuum", [past](R& r) { past(r).chamberEmpty = false; },
         Key::airRemovalVoid, Outcome::waits, "BD1"},
        {"a lead said why",
         "steam-prevacuum",
         [past](R& r) {
             past(r).chamberEmpty = false;
             past(r).voidReason = {"the cart was left inside",
                                   act("p3", Role::lead, *past(r).end + Duration::minutes(5))};
         },
         Key::airRemovalVoid,
         Outcome::waits,
         {},
         {},
         false},
        {"not read is not void", "steam-prevacuum",
         [past](R& r) { past(r).sheet->readings.clear(); }, Key::airRemovalNotRead, Outcome::waits,
         "BD1"},
        {"its sheet expired",
         "test-bowie-dick",
         [](R& r) { r.lots.front().expires = Date{0}; },
         Key::testSheetSpoiled,
         Outcome::waits,
         {},
         Cause::lotExpired},
        {"its sheet of another type",
         "test-bowie-dick",
         [](R& r) { r.products.front().type = 3; },
         Key::testSheetSpoiled,
         Outcome::waits,
         {},
         Cause::type},
    };
    for (const Row& row : rows) {
        expectSaid(row);
    }
}

// RULES.md, 4a, Chemical, in its order; every change but the last leaves the one before unmade.
TEST(Findings, OfAChemicalIndicatorThatDoesNotCount)
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
TEST(Findings, OfAVialThatDoesNotCount)
{
    using R = EvidenceRecord;
    const auto product = [](auto change) {
        return [change](R& r) { change(named(r.products, vialOf(r).product)); };
    };
    const std::pair<Cause, std::function<void(R&)>> voids[] = {
        {Cause::voided,
         [](R& r) { vialOf(r).voided = act("p3", Role::lead, end(r) + Duration::hours(1)); }},
        {Cause::productUnknown, [](R& r) { vialOf(r).product = "NONE"; }},
        {Cause::productUnfit, [](R& r) { vialOf(r).product = "INT5-ST"; }},
        {Cause::lotUnknown, [](R& r) { vialOf(r).lot = "NONE"; }},
        {Cause::lotWithoutDate, [](R& r) { lotOf(r, vialOf(r).product).expires.reset(); }},
        {Cause::lotExpired, [](R& r) { lotOf(r, vialOf(r).product).expires = Date{0}; }},
        {Cause::method, product([](IndicatorProduct& p) { p.methods = {}; })},
        {Cause::cycleType, product([](IndicatorProduct& p) { p.cycleTypes = {"other"}; })},
        {Cause::species, product([](IndicatorProduct& p) { p.species = Species::other; })},
        {Cause::usedElsewhere, [](R& r) { vialOf(r).alsoUsedIn = {"L-OTHER"}; }},
        {Cause::notActivated, [](R& r) { vialOf(r).activation->by.clear(); }},
        {Cause::processIndicator,
         [](R& r) { vialOf(r).processIndicator = ProcessIndicator::unchanged; }},
        {Cause::incubatedEarly,
         [](R& r) { vialOf(r).incubationStart = end(r) - Duration::milliseconds(1); }},
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
