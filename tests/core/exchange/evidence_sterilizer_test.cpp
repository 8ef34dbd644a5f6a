#include "tests/core/exchange/evidence_support.h"

// A sterilizer and its other cycles.

namespace loadwarden::tests {

namespace {

TEST(EvidenceSterilizerFields, TheSterilizerItself)
{
    const EvidenceRecord record = mustRead(withSterilizer(
        R"("model":"M1","testHour":"23:59","recordsConcentration":false,"recordsHumidity":false,
           "aeration":{"minutes":720,"celsius":52.5},
           "alarms":[{"code":"A1","effect":"harmless"},{"code":"A2","effect":"exposure-affecting"}],
           "clockOffsets":[{"from":"2031-03-04T01:00Z","seconds":-90}],
           "service":[{"state":"in-service",)"
        + act("p1", "01:00") + R"(},{"state":"out-of-service","happenedAt":"2031-03-04T02:00Z"},
            {"state":"qualification","happenedAt":"2031-03-04T03:00Z"},
            {"state":"held","happenedAt":"2031-03-04T04:00Z"}],
           "incidents":[{"positiveLot":"H1","closings":[{"negativeLot":"H2",)"
        + act("p2", "05:00") + R"(}]},{"positiveLot":"H3"}])"));
    ASSERT_TRUE(record.sterilizer);
    const SterilizerRecord& sterilizer = *record.sterilizer;
    EXPECT_EQ(sterilizer.id, "S1");
    EXPECT_EQ(sterilizer.model, "M1");
    EXPECT_EQ(sterilizer.testMinute, 1439);
    EXPECT_FALSE(sterilizer.recordsConcentration);
    EXPECT_FALSE(sterilizer.recordsHumidity);
    ASSERT_TRUE(sterilizer.aeration);
    EXPECT_EQ(sterilizer.aeration->minutes, 720);
    EXPECT_EQ(sterilizer.aeration->celsiusHundredths, 5'250);
    ASSERT_EQ(sterilizer.alarms.size(), 2U);
    EXPECT_EQ(sterilizer.alarms[0].code, "A1");
    EXPECT_EQ(sterilizer.alarms[0].effect, AlarmEffect::harmless);
    EXPECT_EQ(sterilizer.alarms[1].effect, AlarmEffect::exposureAffecting);
    ASSERT_EQ(sterilizer.clockOffsets.size(), 1U);
    EXPECT_EQ(sterilizer.clockOffsets[0].from, at("01:00"));
    EXPECT_EQ(sterilizer.clockOffsets[0].offset, Duration::seconds(-90));
    ASSERT_EQ(sterilizer.service.size(), 4U);
    EXPECT_EQ(sterilizer.service[0].state, ServiceState::inService);
    expectAct(sterilizer.service[0].act, "p1", "01:00");
    EXPECT_EQ(sterilizer.service[1].state, ServiceState::outOfService);
    EXPECT_EQ(sterilizer.service[2].state, ServiceState::qualification);
    EXPECT_EQ(sterilizer.service[3].state, ServiceState::held);
    ASSERT_EQ(sterilizer.incidents.size(), 2U);
    EXPECT_EQ(sterilizer.incidents[0].positiveLot, "H1");
    ASSERT_EQ(sterilizer.incidents[0].closings.size(), 1U);
    EXPECT_EQ(sterilizer.incidents[0].closings[0].negativeLot, "H2");
    expectAct(sterilizer.incidents[0].closings[0].act, "p2", "05:00");
}

TEST(EvidenceSterilizerFields, WhatIsLeftOutOfASterilizer)
{
    const EvidenceRecord record = mustRead(withTop(R"("sterilizer":{"id":"S1"})"));
    ASSERT_TRUE(record.sterilizer);
    EXPECT_EQ(record.sterilizer->model, "");
    EXPECT_EQ(record.sterilizer->testMinute, 0);
    EXPECT_TRUE(record.sterilizer->recordsConcentration) << "not said is yes";
    EXPECT_TRUE(record.sterilizer->recordsHumidity) << "not said is yes";
    EXPECT_FALSE(record.sterilizer->aeration);
    EXPECT_TRUE(record.sterilizer->cycles.empty());
}

TEST(EvidenceSterilizerFields, TestHourAtBothEnds)
{
    EXPECT_EQ(mustRead(withSterilizer(R"("testHour":"00:00")")).sterilizer->testMinute, 0);
    EXPECT_EQ(mustRead(withSterilizer(R"("testHour":"19:05")")).sterilizer->testMinute, 1145);
    for (const char* wrong :
         {"24:00", "23:60", "7:00", "07:0", "07-00", "", "07:000", "29:00", "a7:00"}) {
        EXPECT_EQ(mustRefuse(withSterilizer(R"("testHour":")" + std::string(wrong) + '"')).pointer,
                  "/sterilizer/testHour")
            << wrong;
    }
}

TEST(EvidenceSterilizerFields, ACycleOfTheHistory)
{
    const EvidenceRecord record = mustRead(withSterilizer(
        R"("cycles":[{"kind":"qualification","lot":"H1","method":"steam","cycleType":"t1",
            "clock":"sterilizer","start":"2031-03-04T06:00Z","end":"2031-03-04T06:40Z","counter":12,
            "outcome":"aborted","items":["I1","I2"],
            "failures":[{"kind":"physical",)"
        + act("p1", "07:00") + R"(},{"kind":"pcd-rejected","happenedAt":"2031-03-04T07:10Z"}],
            "packagesRejectedOrWet":3,
            "resolutions":[{"cause":"known","reach":"sterilizer","what":"door seal",)"
        + act("p2", "08:00")
        + R"(},{"cause":"unknown","reach":"that-load","happenedAt":"2031-03-04T08:10Z"}],
            "exposure":{"minutes":3.5,"celsius":134.01},"chamberEmpty":true,"dryingRun":false,
            "voidReason":{"why":"pack was damp",)"
        + act("p3", "09:00") + R"(},"leak":{"settledMinutes":5,"minutes":10.5,"riseMbar":-1.25,)"
        + act("p4", "10:00") + R"(},"physical":{"good":true,)" + act("p5", "11:00")
        + R"(},"indicators":[{"product":"C1","lot":"N1","place":"shelf"}]}])"));
    ASSERT_EQ(record.sterilizer->cycles.size(), 1U);
    const HistoryCycle& cycle = record.sterilizer->cycles[0];
    EXPECT_EQ(cycle.kind, CycleKind::qualification);
    EXPECT_EQ(cycle.lot, "H1");
    EXPECT_EQ(cycle.method, Method::steam);
    EXPECT_EQ(cycle.cycleType, "t1");
    EXPECT_EQ(cycle.clock, ClockSource::sterilizer);
    EXPECT_EQ(cycle.start, at("06:00"));
    EXPECT_EQ(cycle.end, at("06:40"));
    EXPECT_EQ(cycle.counter, 12);
    EXPECT_EQ(cycle.outcome, CycleOutcome::aborted);
    EXPECT_EQ(cycle.items, (std::vector<std::string>{"I1", "I2"}));
    ASSERT_EQ(cycle.failures.size(), 2U);
    EXPECT_EQ(cycle.failures[0].kind, FailureKind::physical);
    expectAct(cycle.failures[0].act, "p1", "07:00");
    EXPECT_EQ(cycle.failures[1].kind, FailureKind::pcdRejected);
    EXPECT_EQ(cycle.packagesRejectedOrWet, 3);
    ASSERT_EQ(cycle.resolutions.size(), 2U);
    EXPECT_TRUE(cycle.resolutions[0].causeKnown);
    EXPECT_EQ(cycle.resolutions[0].reach, Reach::sterilizer);
    EXPECT_EQ(cycle.resolutions[0].what, "door seal");
    expectAct(cycle.resolutions[0].act, "p2", "08:00");
    EXPECT_FALSE(cycle.resolutions[1].causeKnown);
    EXPECT_EQ(cycle.resolutions[1].reach, Reach::thatLoad);
    EXPECT_EQ(cycle.exposureMs, 210'000);
    EXPECT_EQ(cycle.exposureCelsiusHundredths, 13'401);
    EXPECT_EQ(cycle.chamberEmpty, true);
    EXPECT_EQ(cycle.dryingRun, false);
    ASSERT_TRUE(cycle.voidReason);
    EXPECT_EQ(cycle.voidReason->why, "pack was damp");
    expectAct(cycle.voidReason->act, "p3", "09:00");
    ASSERT_TRUE(cycle.leak);
    EXPECT_EQ(cycle.leak->settledMs, 300'000);
    EXPECT_EQ(cycle.leak->testMs, 630'000);
    EXPECT_EQ(cycle.leak->riseThousandthsMbar, -1'250);
    expectAct(cycle.leak->act, "p4", "10:00");
    ASSERT_TRUE(cycle.physical);
    EXPECT_TRUE(cycle.physical->good);
    expectAct(cycle.physical->act, "p5", "11:00");
    ASSERT_EQ(cycle.indicators.size(), 1U);
    EXPECT_EQ(cycle.indicators[0].place, "shelf");
    EXPECT_FALSE(cycle.sheet);
}

TEST(EvidenceSterilizerFields, WhatIsLeftOutOfACycle)
{
    const HistoryCycle cycle = mustRead(withCycle(R"("items":[])")).sterilizer->cycles.at(0);
    EXPECT_EQ(cycle.kind, CycleKind::load);
    EXPECT_EQ(cycle.method, Method::unknown);
    EXPECT_EQ(cycle.clock, ClockSource::facility);
    EXPECT_EQ(cycle.outcome, CycleOutcome::unknown);
    EXPECT_EQ(cycle.packagesRejectedOrWet, 0);
    EXPECT_FALSE(cycle.end);
    EXPECT_FALSE(cycle.counter);
    EXPECT_FALSE(cycle.exposureMs);
    EXPECT_FALSE(cycle.exposureCelsiusHundredths);
    EXPECT_FALSE(cycle.chamberEmpty);
    EXPECT_FALSE(cycle.dryingRun);
    EXPECT_FALSE(cycle.leak);
    EXPECT_FALSE(cycle.physical);
    EXPECT_FALSE(cycle.voidReason);
}

TEST(EvidenceSterilizerFields, KindsAndMethods)
{
    const auto kind = [](const std::string& word) {
        return mustRead(R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},"test":{"kind":")"
                        + word + R"(","lot":"T1","start":"2031-03-04T06:00Z"}})")
            .test->kind;
    };
    EXPECT_EQ(kind("warm-up"), CycleKind::warmUp);
    EXPECT_EQ(kind("bowie-dick"), CycleKind::bowieDick);
    EXPECT_EQ(kind("leak"), CycleKind::leak);
    EXPECT_EQ(kind("qualification"), CycleKind::qualification);
    const auto method = [](const std::string& word) {
        return mustRead(withCycle(R"("method":")" + word + '"')).sterilizer->cycles.at(0).method;
    };
    EXPECT_EQ(method("steam"), Method::steam);
    EXPECT_EQ(method("ethylene-oxide"), Method::ethyleneOxide);
    EXPECT_EQ(method("hydrogen-peroxide"), Method::hydrogenPeroxide);
    EXPECT_EQ(method("dry-heat"), Method::dryHeat);
    EXPECT_EQ(method("unknown"), Method::unknown);
}

} // namespace

} // namespace loadwarden::tests
