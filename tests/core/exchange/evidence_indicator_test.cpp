#include "tests/core/exchange/evidence_support.h"

// Chemical indicators, Bowie-Dick sheets, vials.

namespace loadwarden::tests {

namespace {

TEST(EvidenceIndicatorFields, ChemicalIndicator)
{
    const EvidenceRecord record = mustRead(withItem(
        R"("external":{"product":"C1","lot":"N1","place":"outside","alsoUsedIn":["L7","L8"],
            "readings":[{"seen":"end-colour-reached","voided":{)"
        + act("p1", "07:00") + "}," + act("p2", "08:00") + R"(}],"lost":{)" + act("p3", "09:00")
        + R"(},"unsettled":{)" + act("p4", "10:00") + "}}"));
    ASSERT_TRUE(record.load.items.at(0).external);
    const ChemicalIndicator& indicator = *record.load.items[0].external;
    EXPECT_EQ(indicator.product, "C1");
    EXPECT_EQ(indicator.lot, "N1");
    EXPECT_EQ(indicator.place, "outside");
    EXPECT_EQ(indicator.alsoUsedIn, (std::vector<std::string>{"L7", "L8"}));
    ASSERT_EQ(indicator.readings.size(), 1U);
    EXPECT_EQ(indicator.readings[0].seen, Seen::endColourReached);
    ASSERT_TRUE(indicator.readings[0].voided);
    expectAct(*indicator.readings[0].voided, "p1", "07:00");
    expectAct(indicator.readings[0].act, "p2", "08:00");
    ASSERT_TRUE(indicator.lost);
    expectAct(*indicator.lost, "p3", "09:00");
    ASSERT_TRUE(indicator.unsettled);
    expectAct(*indicator.unsettled, "p4", "10:00");
}

TEST(EvidenceIndicatorFields, WhatIsSeenOfAChemicalIndicator)
{
    const std::pair<const char*, Seen> words[] = {
        {"front-in-accept-zone", Seen::frontInAcceptZone},
        {"front-on-boundary", Seen::frontOnBoundary},
        {"front-short-of-boundary", Seen::frontShortOfBoundary},
        {"end-colour-reached", Seen::endColourReached},
        {"end-colour-partly", Seen::endColourPartly},
        {"unchanged", Seen::unchanged},
        {"uniform-complete", Seen::uniformComplete},
        {"uniform-incomplete", Seen::uniformIncomplete},
        {"not-uniform", Seen::notUniform},
        {"absent", Seen::absent},
        {"unclear", Seen::unclear},
    };
    for (const auto& [word, seen] : words) {
        const std::string reading =
            R"({"seen":")" + std::string(word) + R"(","happenedAt":"2031-03-04T08:00Z"})";
        const EvidenceRecord record = mustRead(
            withCycle(R"("sheet":{"product":"C1","lot":"N1","alsoUsedIn":["L7"],"readings":[)"
                      + reading + R"(],"lost":{"happenedAt":"2031-03-04T08:00Z"},
                "unsettled":{"happenedAt":"2031-03-04T09:00Z"}})"));
        const auto& sheet = record.sterilizer->cycles.at(0).sheet;
        ASSERT_TRUE(sheet) << word;
        EXPECT_EQ(sheet->readings.at(0).seen, seen) << word;
        EXPECT_FALSE(sheet->readings.at(0).voided);
        EXPECT_EQ(sheet->product, "C1");
        EXPECT_EQ(sheet->lot, "N1");
        EXPECT_EQ(sheet->alsoUsedIn.size(), 1U);
        EXPECT_TRUE(sheet->lost);
        EXPECT_TRUE(sheet->unsettled);
    }
}

TEST(EvidenceIndicatorFields, Vial)
{
    const EvidenceRecord record = mustRead(withLoad(
        R"("pcds":[{"id":"D1","indicators":[{"product":"C1"}],"vials":[{"id":"V1","product":"B1",
            "lot":"N1","incubator":"Q1","activation":{)"
        + act("p1", "07:00")
        + R"(},"incubationStart":"2031-03-04T07:05Z","processIndicator":"changed",
            "alsoUsedIn":["L7"],"readings":[{"seen":"growth","voided":{)"
        + act("p2", "08:00") + "}," + act("p3", "09:00")
        + R"(},{"seen":"no-growth","happenedAt":"2031-03-04T09:00Z"},
            {"seen":"unclear","happenedAt":"2031-03-04T09:00Z"}],"voided":{)"
        + act("p4", "10:00") + R"(},"lost":{)" + act("p5", "11:00") + R"(},"unsettled":{)"
        + act("p6", "12:00") + R"(},"incidentFinding":{"was":"other-load",)" + act("p7", "13:00")
        + R"(}},{"id":"V2","incidentFinding":{"was":"control","happenedAt":"2031-03-04T09:00Z"}}]}])"));
    ASSERT_EQ(record.load.pcds.size(), 1U);
    EXPECT_EQ(record.load.pcds[0].id, "D1");
    EXPECT_EQ(record.load.pcds[0].indicators.at(0).product, "C1");
    ASSERT_EQ(record.load.pcds[0].vials.size(), 2U);
    const Vial& vial = record.load.pcds[0].vials[0];
    EXPECT_EQ(vial.id, "V1");
    EXPECT_EQ(vial.product, "B1");
    EXPECT_EQ(vial.lot, "N1");
    EXPECT_EQ(vial.incubator, "Q1");
    ASSERT_TRUE(vial.activation);
    expectAct(*vial.activation, "p1", "07:00");
    EXPECT_EQ(vial.incubationStart, at("07:05"));
    EXPECT_EQ(vial.processIndicator, ProcessIndicator::changed);
    EXPECT_EQ(vial.alsoUsedIn, std::vector<std::string>{"L7"});
    ASSERT_EQ(vial.readings.size(), 3U);
    EXPECT_EQ(vial.readings[0].seen, Seen::growth);
    ASSERT_TRUE(vial.readings[0].voided);
    expectAct(*vial.readings[0].voided, "p2", "08:00");
    expectAct(vial.readings[0].act, "p3", "09:00");
    EXPECT_EQ(vial.readings[1].seen, Seen::noGrowth);
    EXPECT_EQ(vial.readings[2].seen, Seen::unclear);
    ASSERT_TRUE(vial.voided && vial.lost && vial.unsettled && vial.incidentFinding);
    expectAct(*vial.voided, "p4", "10:00");
    expectAct(*vial.lost, "p5", "11:00");
    expectAct(*vial.unsettled, "p6", "12:00");
    EXPECT_EQ(vial.incidentFinding->was, FoundToBe::otherLoad);
    expectAct(vial.incidentFinding->act, "p7", "13:00");
    const Vial& bare = record.load.pcds[0].vials[1];
    EXPECT_EQ(bare.processIndicator, ProcessIndicator::unknown);
    EXPECT_FALSE(bare.incubationStart);
    EXPECT_EQ(bare.incidentFinding->was, FoundToBe::control);
}

TEST(EvidenceIndicatorFields, VialsOfOtherCyclesAndOfATest)
{
    EXPECT_EQ(
        mustRead(withCycle(R"("vials":[{"id":"V1"}])")).sterilizer->cycles.at(0).vials.at(0).id,
        "V1");
    const EvidenceRecord record = mustRead(
        R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},"test":{"kind":"qualification","lot":"T1",
            "start":"2031-03-04T06:00Z","vials":[{"id":"V2"}]}})");
    ASSERT_TRUE(record.test);
    EXPECT_EQ(record.test->vials.at(0).id, "V2");
}

} // namespace

} // namespace loadwarden::tests
