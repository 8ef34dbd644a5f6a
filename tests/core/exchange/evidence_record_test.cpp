#include "tests/core/exchange/evidence_support.h"

// The top of a record, acts, indicator products, lots, packagings, controls and incubators.

namespace loadwarden::tests {

namespace {

TEST(EvidenceRecordFields, TopLevel)
{
    const EvidenceRecord record = mustRead(
        R"({"evidenceVersion":1,"comment":"line 1\nline 2 \u00e9 \ud83d\ude00","decideAt":"2031-03-04T12:30:15.25-06:00",
            "facility":{"timeZone":"America/Chicago","atmosphereKPa":99.213},"load":{"lot":"L1"}})");
    EXPECT_EQ(record.comment, "line 1\nline 2 \xC3\xA9 \xF0\x9F\x98\x80");
    EXPECT_EQ(record.decideAt, Instant{at("18:30").ms + 15'250});
    EXPECT_EQ(record.zone.name(), "America/Chicago");
    EXPECT_EQ(record.atmosphere, AbsolutePressure::fromKPaThousandths(99'213));
    EXPECT_EQ(record.load.lot, "L1");
    EXPECT_FALSE(record.sterilizer);
    EXPECT_FALSE(record.specification);
    EXPECT_FALSE(record.test);
}

TEST(EvidenceRecordFields, TheLeastRecord)
{
    const EvidenceRecord record = mustRead(" \r\n\t{ \"evidenceVersion\" : 1.0 , "
                                           "\"facility\":{\"timeZone\":\"UTC\"}, \"load\":{} } \n");
    EXPECT_TRUE(record.comment.empty());
    EXPECT_FALSE(record.decideAt);
    EXPECT_FALSE(record.atmosphere);
    EXPECT_EQ(record.load.clock, ClockSource::facility);
    EXPECT_EQ(record.load.outcome, CycleOutcome::unknown);
    EXPECT_FALSE(record.load.start);
    EXPECT_FALSE(record.load.counter);
}

TEST(EvidenceRecordFields, ActsAndWhatIsLeftOutOfThem)
{
    const EvidenceRecord record =
        mustRead(withLoad(R"("verifications":[{"happenedAt":"2031-03-04T08:00Z"},
            {"recordedAt":"2031-03-04T09:05Z","happenedAt":"2031-03-04T09:00Z","role":"viewer","by":""},
            {)" + act("p1", "10:00")
                          + R"(},{"happenedAt":"2031-03-04T11:00Z","role":"operator","by":"p2"},
            {"happenedAt":"2031-03-04T12:00Z","role":"supervisor"}])"));
    const std::vector<Act>& acts = record.load.verifications;
    ASSERT_EQ(acts.size(), 5U);
    EXPECT_EQ(acts[0].by, "");
    EXPECT_EQ(acts[0].role, Role::operating);
    EXPECT_EQ(acts[0].happenedAt, at("08:00"));
    EXPECT_EQ(acts[0].recordedAt, at("08:00"));
    EXPECT_EQ(acts[1].by, "");
    EXPECT_EQ(acts[1].role, Role::viewer);
    EXPECT_EQ(acts[1].happenedAt, at("09:00"));
    EXPECT_EQ(acts[1].recordedAt, at("09:05"));
    expectAct(acts[2], "p1", "10:00");
    EXPECT_EQ(acts[3].role, Role::operating);
    EXPECT_EQ(acts[3].by, "p2");
    EXPECT_EQ(acts[4].role, Role::supervisor);
}

TEST(EvidenceRecordFields, ChemicalProduct)
{
    const EvidenceRecord record = mustRead(withTop(
        R"("products":[{"id":"C1","kind":"chemical","type":2,"methods":["steam","dry-heat"],
            "cycleTypes":["t1","t2"],"response":"sheet","readWithinMinutes":45,"leastMinutes":3.5,
            "mostMinutes":4.125,"leastCelsius":132,"mostCelsius":134.25,"dryingForbidden":true},
            {"id":"C2","kind":"chemical","type":5,"methods":[],"response":"moving-front"},
            {"id":"C3","kind":"chemical","type":1,"methods":["steam"],"response":"colour"}])"));
    ASSERT_EQ(record.products.size(), 3U);
    const IndicatorProduct& product = record.products[0];
    EXPECT_EQ(product.id, "C1");
    EXPECT_EQ(product.kind, IndicatorKind::chemical);
    EXPECT_EQ(product.type, 2);
    EXPECT_TRUE(product.methods.contains(Method::steam));
    EXPECT_TRUE(product.methods.contains(Method::dryHeat));
    EXPECT_FALSE(product.methods.contains(Method::ethyleneOxide));
    EXPECT_FALSE(product.methods.contains(Method::hydrogenPeroxide));
    EXPECT_EQ(product.cycleTypes, (std::vector<std::string>{"t1", "t2"}));
    EXPECT_EQ(product.response, Response::sheet);
    EXPECT_EQ(product.readWithinMinutes, 45);
    EXPECT_EQ(product.sheet.leastMs, 210'000);
    EXPECT_EQ(product.sheet.mostMs, 247'500);
    EXPECT_EQ(product.sheet.leastCelsiusHundredths, 13'200);
    EXPECT_EQ(product.sheet.mostCelsiusHundredths, 13'425);
    EXPECT_TRUE(product.sheet.dryingForbidden);
    EXPECT_EQ(record.products[1].response, Response::movingFront);
    EXPECT_TRUE(record.products[1].methods.empty());
    EXPECT_FALSE(record.products[1].readWithinMinutes);
    EXPECT_FALSE(record.products[1].sheet.leastMs);
    EXPECT_EQ(record.products[2].response, Response::colour);
}

TEST(EvidenceRecordFields, BiologicalProduct)
{
    const EvidenceRecord record = mustRead(withTop(
        R"("products":[{"id":"B1","kind":"biological","methods":["ethylene-oxide","hydrogen-peroxide"],
            "response":"growth","species":"bacillus-atrophaeus","releaseMinutes":1440,
            "lastMinutes":2880,"latestMinutes":10080,"startWithinMinutes":240,"needsActivation":true,
            "hasProcessIndicator":true,"control":"lot","implantIndicatorTypes":[5,4]},
            {"id":"B2","kind":"biological","methods":["steam"],"response":"growth",
            "species":"geobacillus-stearothermophilus","releaseMinutes":60,"control":"load"},
            {"id":"B3","kind":"biological","methods":["steam"],"response":"growth","species":"other",
            "releaseMinutes":60,"control":"day"}])"));
    ASSERT_EQ(record.products.size(), 3U);
    const IndicatorProduct& product = record.products[0];
    EXPECT_EQ(product.kind, IndicatorKind::biological);
    EXPECT_TRUE(product.methods.contains(Method::ethyleneOxide));
    EXPECT_TRUE(product.methods.contains(Method::hydrogenPeroxide));
    EXPECT_EQ(product.response, Response::growth);
    EXPECT_EQ(product.species, Species::bacillusAtrophaeus);
    EXPECT_EQ(product.releaseMinutes, 1440);
    EXPECT_EQ(product.lastMinutes, 2880);
    EXPECT_EQ(product.latestMinutes, 10080);
    EXPECT_EQ(product.startWithinMinutes, 240);
    EXPECT_TRUE(product.needsActivation);
    EXPECT_TRUE(product.hasProcessIndicator);
    EXPECT_EQ(product.control, ControlReach::lot);
    EXPECT_EQ(product.implantIndicatorTypes, (std::vector<int>{5, 4}));
    EXPECT_EQ(record.products[1].species, Species::geobacillusStearothermophilus);
    EXPECT_EQ(record.products[1].control, ControlReach::load);
    EXPECT_FALSE(record.products[1].lastMinutes);
    EXPECT_EQ(record.products[2].species, Species::other);
    EXPECT_EQ(record.products[2].control, ControlReach::day);
}

TEST(EvidenceRecordFields, LotsAndPackagings)
{
    const EvidenceRecord record = mustRead(withTop(
        R"("lots":[{"product":"C1","number":"N1","expires":"2032-02-29"},{"product":"C1","number":"N2"},
            {"product":"C2","number":"N1"}],
           "packagings":[{"id":"P1","form":"rigid-container","methods":["steam"],"aerationMinutes":480},
            {"id":"P2","form":"wrap"},{"id":"P3","form":"pouch"},{"id":"P4","form":"open-tray"}])"));
    ASSERT_EQ(record.lots.size(), 3U);
    EXPECT_EQ(record.lots[0].product, "C1");
    EXPECT_EQ(record.lots[0].number, "N1");
    EXPECT_EQ(record.lots[0].expires, parseDate("2032-02-29"));
    EXPECT_FALSE(record.lots[1].expires);
    ASSERT_EQ(record.packagings.size(), 4U);
    EXPECT_EQ(record.packagings[0].id, "P1");
    EXPECT_EQ(record.packagings[0].form, PackageForm::rigidContainer);
    EXPECT_TRUE(record.packagings[0].methods.contains(Method::steam));
    EXPECT_EQ(record.packagings[0].aerationMinutes, 480);
    EXPECT_EQ(record.packagings[1].form, PackageForm::wrap);
    EXPECT_TRUE(record.packagings[1].methods.empty());
    EXPECT_FALSE(record.packagings[1].aerationMinutes);
    EXPECT_EQ(record.packagings[2].form, PackageForm::pouch);
    EXPECT_EQ(record.packagings[3].form, PackageForm::openTray);
}

TEST(EvidenceRecordFields, ControlsAndIncubators)
{
    const EvidenceRecord record = mustRead(withTop(
        R"("controls":[{"id":"K1","product":"B1","lot":"N1","incubator":"Q1","activation":{)"
        + act("p1", "07:00")
        + R"(},"incubationStart":"2031-03-04T07:05Z","processIndicator":"unchanged","forLoad":"L1",
            "readings":[{"seen":"growth",)"
        + act("p2", "08:00")
        + R"(},{"seen":"no-growth","happenedAt":"2031-03-04T08:30Z"}],"unsettled":{)"
        + act("p3", "09:00") + R"(}}],
           "incubators":[{"id":"Q1","outOfRange":[{"from":"2031-03-04T01:00Z","to":"2031-03-04T02:00Z"},
            {"from":"2031-03-04T03:00Z"}]},{"id":"Q2"}])"));
    ASSERT_EQ(record.controls.size(), 1U);
    const Control& control = record.controls[0];
    EXPECT_EQ(control.id, "K1");
    EXPECT_EQ(control.product, "B1");
    EXPECT_EQ(control.lot, "N1");
    EXPECT_EQ(control.incubator, "Q1");
    ASSERT_TRUE(control.activation);
    expectAct(*control.activation, "p1", "07:00");
    EXPECT_EQ(control.incubationStart, at("07:05"));
    EXPECT_EQ(control.processIndicator, ProcessIndicator::unchanged);
    EXPECT_EQ(control.forLoad, "L1");
    ASSERT_EQ(control.readings.size(), 2U);
    EXPECT_EQ(control.readings[0].seen, Seen::growth);
    expectAct(control.readings[0].act, "p2", "08:00");
    EXPECT_EQ(control.readings[1].seen, Seen::noGrowth);
    ASSERT_TRUE(control.unsettled);
    expectAct(*control.unsettled, "p3", "09:00");
    ASSERT_EQ(record.incubators.size(), 2U);
    ASSERT_EQ(record.incubators[0].outOfRange.size(), 2U);
    EXPECT_EQ(record.incubators[0].id, "Q1");
    EXPECT_EQ(record.incubators[0].outOfRange[0].from, at("01:00"));
    EXPECT_EQ(record.incubators[0].outOfRange[0].to, at("02:00"));
    EXPECT_FALSE(record.incubators[0].outOfRange[1].to);
}

} // namespace

} // namespace loadwarden::tests
