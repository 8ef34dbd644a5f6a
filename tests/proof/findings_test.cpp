// What one change to a releasable record makes the decision say: key, subject, cause. Each row is a
// line of core/release/RULES.md, on both sides of its bound where it has one.

#include "tests/proof/finding_rows.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using proof::act;
using proof::confirm;
using proof::expectSaid;
using proof::limitOf;
using proof::readingOf;
using proof::Row;

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
    const auto confirmed = [](auto change, PrintoutField field) {
        return [change, field](R& r) {
            change(r);
            confirm(r, field);
        };
    };
    using enum PrintoutField;
    const auto otherProgram = [](R& r) { r.load.printout->program = "P-OTHER"; };
    const auto otherSterilizer = [](R& r) { r.load.printout->sterilizer = "S-OTHER"; };
    const auto otherCounter = [](R& r) { r.load.printout->counter = 4'711; };
    const auto both = [](R& r) {
        r.load.printout->program = "P-OTHER";
        r.load.printout->end.reset();
    };
    constexpr auto note = Outcome::note;
    const Row rows[] = {
        {"program", "steam-gravity", otherProgram, Key::printoutDiffers, Outcome::waits, "program"},
        {"program, confirmed", "steam-gravity", confirmed(otherProgram, program),
         Key::printoutDiffers, Outcome::waits, "program"},
        {"nothing to confirm",
         "steam-gravity",
         confirmed(otherProgram, program),
         Key::printoutConfirmed,
         note,
         {},
         {},
         false},
        {"sterilizer, confirmed", "steam-gravity",
         confirmed(otherSterilizer, PrintoutField::sterilizer), Key::printoutDiffers,
         Outcome::waits, "sterilizer"},
        {"counter", "steam-gravity", otherCounter, Key::printoutDiffers, Outcome::waits, "counter"},
        {"counter, confirmed",
         "steam-gravity",
         confirmed(otherCounter, counter),
         Key::printoutDiffers,
         Outcome::waits,
         {},
         {},
         false},
        {"counter, confirmed, is said", "steam-gravity", confirmed(otherCounter, counter),
         Key::printoutConfirmed, note, "counter"},
        {"another field than confirmed", "steam-gravity", confirmed(otherCounter, start),
         Key::printoutDiffers, Outcome::waits, "counter"},
        {"end left out", "steam-gravity", [](R& r) { r.load.printout->end.reset(); },
         Key::printoutIncomplete, Outcome::waits, "end"},
        {"one of two is confirmed", "steam-gravity", confirmed(both, end), Key::printoutConfirmed,
         note, "end"},
        {"and the other is not", "steam-gravity", confirmed(both, end), Key::printoutDiffers,
         Outcome::waits, "program"},
        {"program left out of the specification", "steam-gravity",
         [](R& r) { r.specification->program.clear(); }, Key::printoutIncomplete, Outcome::waits,
         "program"},
        {"the operator confirms, written otherwise", "steam-gravity",
         [](R& r) {
             r.load.printout->counter = 4'711;
             confirm(r, counter);
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
        {"10 K above",
         "steam-gravity",
         read(Unit::celsius, 131'000),
         Key::physicalImplausible,
         waits,
         {},
         {},
         false},
        {"a hundredth more", "steam-gravity", read(Unit::celsius, 131'010),
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
             readingOf(r, Parameter::temperature).value = {Unit::celsius, 131'010};
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
         Outcome::waits, "BD1", Cause::notSteam},
        {"void by its chamber", "steam-prevacuum", [past](R& r) { past(r).chamberEmpty = false; },
         Key::airRemovalVoid, Outcome::waits, "BD1", Cause::chamberNotEmpty},
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

} // namespace
} // namespace loadwarden
