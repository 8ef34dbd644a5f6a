#include "tests/core/exchange/evidence_support.h"

// The load, its printout and readings, its items.

namespace loadwarden::tests {

namespace {

TEST(EvidenceLoadFields, Traces)
{
    const EvidenceRecord record = mustRead(withLoad(
        R"("traces":[{"id":"T1","specification":"sp-1","revision":100000,"counter":0,
            "start":"2031-03-04T06:01Z","defects":["gap","free-line"],"exposure":"met",
            "uninterrupted":"open","notBelow":"not-met","notAbove":"met","saturated":"open",
            "drying":"not-met","leastCelsius":-90,"greatestCelsius":134.05,
            "exposureLeastSeconds":0,"exposureMostSeconds":240.001,"dryingLeastSeconds":1000000,
            "dryingMostSeconds":0.5,)"
        + act("p1", "07:00") + R"(},{"id":"T2","happenedAt":"2031-03-04T08:00Z"}])"));
    ASSERT_EQ(record.load.traces.size(), 2U);
    const TraceFindings& trace = record.load.traces[0];
    EXPECT_EQ(trace.id, "T1");
    EXPECT_EQ(trace.specification, "sp-1");
    EXPECT_EQ(trace.revision, 100'000);
    EXPECT_EQ(trace.counter, 0);
    EXPECT_EQ(trace.start, at("06:01"));
    EXPECT_EQ(trace.defects, (std::vector<std::string>{"gap", "free-line"}));
    EXPECT_EQ(trace.exposure, Shown::met);
    EXPECT_EQ(trace.uninterrupted, Shown::open);
    EXPECT_EQ(trace.notBelow, Shown::notMet);
    EXPECT_EQ(trace.notAbove, Shown::met);
    EXPECT_EQ(trace.saturated, Shown::open);
    EXPECT_EQ(trace.drying, Shown::notMet);
    EXPECT_EQ(trace.leastCelsiusHundredths, -9'000);
    EXPECT_EQ(trace.greatestCelsiusHundredths, 13'405);
    EXPECT_EQ(trace.exposureLeastMs, 0);
    EXPECT_EQ(trace.exposureMostMs, 240'001);
    EXPECT_EQ(trace.dryingLeastMs, 1'000'000'000);
    EXPECT_EQ(trace.dryingMostMs, 500);
    expectAct(trace.act, "p1", "07:00");

    const TraceFindings& bare = record.load.traces[1];
    EXPECT_EQ(bare.exposure, Shown::notAsked);
    EXPECT_FALSE(bare.revision || bare.counter || bare.start || bare.leastCelsiusHundredths);

    for (
        const char* wrong :
        {R"({"id":"T1","exposure":"not-asked","happenedAt":"2031-03-04T08:00Z"})",
         R"({"id":"T1","leastCelsius":121.005,"happenedAt":"2031-03-04T08:00Z"})",
         R"({"id":"T1","dryingMostSeconds":1000000.001,"happenedAt":"2031-03-04T08:00Z"})",
         R"({"id":"T1","happenedAt":"2031-03-04T08:00Z"},{"id":"T1","happenedAt":"2031-03-04T08:00Z"})",
         R"({"happenedAt":"2031-03-04T08:00Z"})", R"({"id":"T1"})"}) {
        const ReadProblem problem =
            mustRefuse(withLoad(R"("traces":[)" + std::string(wrong) + "]"));
        EXPECT_TRUE(problem.pointer.starts_with("/load/traces/")) << problem.pointer;
    }
}

TEST(EvidenceLoadFields, TheLoadItself)
{
    const EvidenceRecord record = mustRead(withLoad(
        R"("lot":"L1","operator":"p9","clock":"sterilizer","start":"2031-03-04T06:00Z",
           "end":"2031-03-04T06:40Z","counter":1000000000,"outcome":"ended","abortPhase":"drying",
           "alarms":[{"code":"A1",)"
        + act("p1", "07:00") + R"(}],"printout":{"program":"P1","sterilizer":"S1","counter":7,
            "start":"2031-03-04T06:01Z","end":"2031-03-04T06:41Z",)"
        + act("p2", "08:00") + R"(},"printoutLost":{)" + act("p3", "09:00")
        + R"(},"printoutAnswers":[{"answer":"record-right",)" + act("p4", "10:00")
        + R"(},{"answer":"wrong-cycle","happenedAt":"2031-03-04T10:00Z"},
            {"answer":"wrong-sterilizer","happenedAt":"2031-03-04T10:00Z"}],
            "lostReadings":[{"parameter":"drying",)"
        + act("p5", "11:00") + R"(}],"verifications":[{)" + act("p6", "12:00")
        + R"(}],"aerationRuns":[{"start":{)" + act("p7", "13:00") + R"(},"end":{)"
        + act("p8", "14:00") + R"(},"interrupted":{)" + act("p9", "15:00")
        + R"(},"celsius":55.25},{"start":{"happenedAt":"2031-03-04T16:00Z"},"celsius":50}],
            "immediateUse":{"reason":"dropped","caseReference":"case 1","forStorage":false},
            "reviews":[{"finding":"physical.above","subject":"temperature","answer":"isolated",
            "why":"probe","newestSeen":"2031-03-04T16:30Z",)"
        + act("p10", "17:00")
        + R"(},{"finding":"x","answer":"not-isolated","newestSeen":"2031-03-04T16:30Z",
            "happenedAt":"2031-03-04T17:00Z"}])"));
    const LoadRecord& load = record.load;
    EXPECT_EQ(load.lot, "L1");
    EXPECT_EQ(load.operatedBy, "p9");
    EXPECT_EQ(load.clock, ClockSource::sterilizer);
    EXPECT_EQ(load.start, at("06:00"));
    EXPECT_EQ(load.end, at("06:40"));
    EXPECT_EQ(load.counter, 1'000'000'000);
    EXPECT_EQ(load.outcome, CycleOutcome::ended);
    EXPECT_EQ(load.abortPhase, AbortPhase::drying);
    ASSERT_EQ(load.alarms.size(), 1U);
    EXPECT_EQ(load.alarms[0].code, "A1");
    expectAct(load.alarms[0].act, "p1", "07:00");
    ASSERT_TRUE(load.printout);
    EXPECT_EQ(load.printout->program, "P1");
    EXPECT_EQ(load.printout->sterilizer, "S1");
    EXPECT_EQ(load.printout->counter, 7);
    EXPECT_EQ(load.printout->start, at("06:01"));
    EXPECT_EQ(load.printout->end, at("06:41"));
    expectAct(load.printout->act, "p2", "08:00");
    ASSERT_TRUE(load.printoutLost);
    expectAct(*load.printoutLost, "p3", "09:00");
    ASSERT_EQ(load.printoutAnswers.size(), 3U);
    EXPECT_EQ(load.printoutAnswers[0].answer, PrintoutAnswer::recordRight);
    expectAct(load.printoutAnswers[0].act, "p4", "10:00");
    EXPECT_EQ(load.printoutAnswers[1].answer, PrintoutAnswer::wrongCycle);
    EXPECT_EQ(load.printoutAnswers[2].answer, PrintoutAnswer::wrongSterilizer);
    ASSERT_EQ(load.lostReadings.size(), 1U);
    EXPECT_EQ(load.lostReadings[0].parameter, Parameter::drying);
    expectAct(load.lostReadings[0].act, "p5", "11:00");
    ASSERT_EQ(load.verifications.size(), 1U);
    expectAct(load.verifications[0], "p6", "12:00");
    ASSERT_EQ(load.aerationRuns.size(), 2U);
    expectAct(load.aerationRuns[0].start, "p7", "13:00");
    ASSERT_TRUE(load.aerationRuns[0].end && load.aerationRuns[0].interrupted);
    expectAct(*load.aerationRuns[0].end, "p8", "14:00");
    expectAct(*load.aerationRuns[0].interrupted, "p9", "15:00");
    EXPECT_EQ(load.aerationRuns[0].celsiusHundredths, 5'525);
    EXPECT_EQ(load.aerationRuns[1].start.recordedAt, at("16:00"));
    EXPECT_FALSE(load.aerationRuns[1].end);
    EXPECT_EQ(load.immediateUse->reason, "dropped");
    EXPECT_EQ(load.immediateUse->caseReference, "case 1");
    EXPECT_EQ(load.immediateUse->forStorage, false);
    ASSERT_EQ(load.reviews.size(), 2U);
    EXPECT_EQ(load.reviews[0].finding, "physical.above");
    EXPECT_EQ(load.reviews[0].subject, "temperature");
    EXPECT_EQ(load.reviews[0].answer, ReviewAnswer::isolated);
    EXPECT_EQ(load.reviews[0].why, "probe");
    EXPECT_EQ(load.reviews[0].newestSeen, at("16:30"));
    expectAct(load.reviews[0].act, "p10", "17:00");
    EXPECT_EQ(load.reviews[1].answer, ReviewAnswer::notIsolated);
    EXPECT_EQ(load.reviews[1].subject, "");
}

TEST(EvidenceLoadFields, AbortPhases)
{
    const std::pair<const char*, AbortPhase> words[] = {
        {"heating", AbortPhase::heating},   {"air-removal", AbortPhase::airRemoval},
        {"exposure", AbortPhase::exposure}, {"exhaust", AbortPhase::exhaust},
        {"drying", AbortPhase::drying},     {"aeration", AbortPhase::aeration},
        {"unknown", AbortPhase::unknown},
    };
    for (const auto& [word, phase] : words) {
        EXPECT_EQ(mustRead(withLoad(R"("abortPhase":")" + std::string(word) + '"')).load.abortPhase,
                  phase)
            << word;
    }
}

struct ReadingCase {
    const char* parameter = nullptr;
    const char* field = nullptr;
    const char* number = nullptr;
    Quantity quantity;
};

TEST(EvidenceLoadFields, ReadingsAreExactAndKeepWhatWasTyped)
{
    const ReadingCase cases[] = {
        {"temperature", "celsius", "132.40", {Unit::celsius, 132'400}},
        {"temperature", "fahrenheit", "270.55", {Unit::fahrenheit, 270'550}},
        {"exposure", "minutes", "4", {Unit::minutes, 4'000}},
        {"exposure", "seconds", "240.125", {Unit::seconds, 240'125}},
        {"drying", "minutes", "1.5e1", {Unit::minutes, 15'000}},
        {"drying", "seconds", "0", {Unit::seconds, 0}},
        {"pressure", "kPaAbsolute", "304.2", {Unit::kPaAbsolute, 304'200}},
        {"pressure", "barAbsolute", "3.042", {Unit::barAbsolute, 3'042}},
        {"pressure", "kPaGauge", "-50.001", {Unit::kPaGauge, -50'001}},
        {"pressure", "barGauge", "2.05", {Unit::barGauge, 2'050}},
        {"pressure", "psiGauge", "28.4", {Unit::psiGauge, 28'400}},
        {"concentration", "mgPerL", "600", {Unit::mgPerL, 600'000}},
        {"humidity", "percent", "55.5", {Unit::percent, 55'500}},
    };
    for (const ReadingCase& c : cases) {
        const EvidenceRecord record =
            mustRead(withLoad(R"("readings":[{"parameter":")" + std::string(c.parameter) + R"(",")"
                              + c.field + "\":" + c.number + "," + act("p1", "08:00") + "}]"));
        ASSERT_EQ(record.load.readings.size(), 1U) << c.field;
        const ParameterReading& reading = record.load.readings[0];
        EXPECT_TRUE(fits(reading.parameter, reading.value.unit)) << c.field;
        EXPECT_EQ(reading.value, c.quantity) << c.field;
        EXPECT_EQ(reading.typed, c.number) << c.field;
        expectAct(reading.act, "p1", "08:00");
    }
}

TEST(EvidenceLoadFields, Item)
{
    const EvidenceRecord record = mustRead(withItem(
        R"("recorded":{)" + act("p1", "07:00") + R"(},"confirmed":{)" + act("p2", "08:00")
        + R"(},"alsoInLots":["L7"],"implant":"yes","packaging":"P1","packagingExpires":"2031-12-31",
            "internalVisible":true,"checks":[{"cooled":true,"dry":false,"intact":true,"sealed":false,
            "labelAgrees":true,)"
        + act("p3", "09:00") + R"(},{"happenedAt":"2031-03-04T09:30Z"}],"checkLost":{)"
        + act("p4", "10:00") + R"(},"internals":[{"place":"corner"},{}],
            "devices":[{"name":"tray","allowedCycles":[{"method":"steam","airRemoval":"gravity",
            "fahrenheit":250,"celsius":121.1,"leastMinutes":30,"mostMinutes":45.5,"dryingMinutes":0.001,
            "program":"P3","sterilizerModel":"M1"},{"airRemoval":"prevacuum","fahrenheit":270.5},
            {"airRemoval":"steam-flush-pressure-pulse"},{"airRemoval":"unknown"}],
            "aerationMinutes":600},{"name":"bare"}],
            "peroxide":{"cellulose":true,"liquidOrPowder":false,"moist":true,"lumen":"listed"})"));
    ASSERT_EQ(record.load.items.size(), 1U);
    const Item& item = record.load.items[0];
    EXPECT_EQ(item.label, "I1");
    ASSERT_TRUE(item.recorded && item.confirmed && item.checkLost);
    expectAct(*item.recorded, "p1", "07:00");
    expectAct(*item.confirmed, "p2", "08:00");
    expectAct(*item.checkLost, "p4", "10:00");
    EXPECT_EQ(item.alsoInLots, std::vector<std::string>{"L7"});
    EXPECT_EQ(item.implant, Implant::yes);
    EXPECT_EQ(item.packaging, "P1");
    EXPECT_EQ(item.packagingExpires, parseDate("2031-12-31"));
    EXPECT_TRUE(item.internalVisible);
    ASSERT_EQ(item.checks.size(), 2U);
    EXPECT_EQ(item.checks[0].cooled, true);
    EXPECT_EQ(item.checks[0].dry, false);
    EXPECT_EQ(item.checks[0].intact, true);
    EXPECT_EQ(item.checks[0].sealed, false);
    EXPECT_EQ(item.checks[0].labelAgrees, true);
    expectAct(item.checks[0].act, "p3", "09:00");
    EXPECT_FALSE(item.checks[1].cooled || item.checks[1].dry || item.checks[1].intact
                 || item.checks[1].sealed || item.checks[1].labelAgrees);
    ASSERT_EQ(item.internals.size(), 2U);
    EXPECT_EQ(item.internals[0].place, "corner");
    EXPECT_FALSE(item.external);
    ASSERT_EQ(item.devices.size(), 2U);
    EXPECT_EQ(item.devices[0].name, "tray");
    EXPECT_EQ(item.devices[0].aerationMinutes, 600);
    EXPECT_FALSE(item.devices[1].aerationMinutes);
    ASSERT_EQ(item.devices[0].allowedCycles.size(), 4U);
    const AllowedCycle& allowed = item.devices[0].allowedCycles[0];
    EXPECT_EQ(allowed.method, Method::steam);
    EXPECT_EQ(allowed.airRemoval, AirRemoval::gravity);
    EXPECT_EQ(allowed.temperature, (Quantity{Unit::celsius, 121'100})) << "celsius counts";
    EXPECT_EQ(allowed.inFahrenheit, (Quantity{Unit::fahrenheit, 250'000})) << "and is kept";
    EXPECT_EQ(allowed.leastMs, 1'800'000);
    EXPECT_EQ(allowed.mostMs, 2'730'000);
    EXPECT_EQ(allowed.dryingMs, 60);
    EXPECT_EQ(allowed.program, "P3");
    EXPECT_EQ(allowed.sterilizerModel, "M1");
    const AllowedCycle& other = item.devices[0].allowedCycles[1];
    EXPECT_EQ(other.method, Method::unknown);
    EXPECT_EQ(other.airRemoval, AirRemoval::prevacuum);
    EXPECT_EQ(other.temperature, (Quantity{Unit::fahrenheit, 270'500}));
    EXPECT_FALSE(other.inFahrenheit);
    EXPECT_FALSE(other.leastMs || other.mostMs || other.dryingMs);
    EXPECT_EQ(item.devices[0].allowedCycles[2].airRemoval, AirRemoval::steamFlushPressurePulse);
    EXPECT_EQ(item.devices[0].allowedCycles[3].airRemoval, AirRemoval::unknown);
    EXPECT_EQ(item.peroxide.cellulose, true);
    EXPECT_EQ(item.peroxide.liquidOrPowder, false);
    EXPECT_EQ(item.peroxide.moist, true);
    EXPECT_EQ(item.peroxide.lumen, Lumen::listed);
}

TEST(EvidenceLoadFields, WhatIsLeftOutOfAnItem)
{
    const EvidenceRecord record = mustRead(withItem(R"("devices":[])"));
    const Item& item = record.load.items.at(0);
    EXPECT_EQ(item.implant, Implant::unknown);
    EXPECT_FALSE(item.internalVisible);
    EXPECT_FALSE(item.recorded || item.confirmed || item.checkLost || item.packagingExpires);
    EXPECT_FALSE(item.peroxide.cellulose || item.peroxide.liquidOrPowder || item.peroxide.moist);
    EXPECT_FALSE(item.peroxide.lumen);
    EXPECT_EQ(mustRead(withItem(R"("implant":"no")")).load.items.at(0).implant, Implant::no);
    EXPECT_EQ(mustRead(withItem(R"("implant":"unknown")")).load.items.at(0).implant,
              Implant::unknown);
    EXPECT_EQ(mustRead(withItem(R"("peroxide":{"lumen":"none"})")).load.items.at(0).peroxide.lumen,
              Lumen::none);
    EXPECT_EQ(
        mustRead(withItem(R"("peroxide":{"lumen":"unlisted"})")).load.items.at(0).peroxide.lumen,
        Lumen::unlisted);
}

} // namespace

} // namespace loadwarden::tests
