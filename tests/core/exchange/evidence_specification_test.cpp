#include "core/exchange/specification_library.h"
#include "tests/core/exchange/evidence_support.h"

namespace loadwarden::tests {

namespace {

std::string withSpecification(const std::string& fields)
{
    return withTop(R"("specification":{"id":"N1","revision":1,"purpose":"routine",)" + fields
                   + "}");
}

TEST(EvidenceSpecificationFields, AllOfThem)
{
    const EvidenceRecord record = mustRead(withTop(
        R"("specification":{"id":"N1","revision":100000,"method":"steam","airRemoval":"prevacuum",
            "purpose":"immediate-use","program":"P1","cycleType":"t1","extended":true,
            "settings":{"fahrenheit":270,"celsius":132.05,"exposureMinutes":4.5,"dryingMinutes":20},
            "limits":[{"mostFahrenheit":277,"leastFahrenheit":270,"mostCelsius":136,"leastCelsius":132,
             "parameter":"temperature"},{"parameter":"exposure","leastMinutes":4,"mostMinutes":4.25},
             {"leastPsiGauge":27,"leastBarGauge":1.9,"leastKPaGauge":190,"leastBarAbsolute":2.9,
              "leastKPaAbsolute":290,"parameter":"pressure","mostPsiGauge":35,"mostKPaAbsolute":330,
              "mostBarAbsolute":3.3,"mostBarGauge":2.3,"mostKPaGauge":230},
             {"parameter":"drying","mostMinutes":30},
             {"parameter":"concentration","leastMgPerL":450,"mostMgPerL":1200},
             {"parameter":"humidity","leastPercent":40,"mostPercent":80}]})"));
    ASSERT_TRUE(record.specification);
    const CycleSpecification& specification = *record.specification;
    EXPECT_EQ(specification.id, "N1");
    EXPECT_EQ(specification.revision, 100'000);
    EXPECT_EQ(specification.method, Method::steam);
    EXPECT_EQ(specification.airRemoval, AirRemoval::prevacuum);
    EXPECT_EQ(specification.purpose, Purpose::immediateUse);
    EXPECT_EQ(specification.program, "P1");
    EXPECT_EQ(specification.cycleType, "t1");
    EXPECT_TRUE(specification.extended);
    EXPECT_EQ(specification.settings.temperature, (Quantity{Unit::celsius, 132'050}));
    EXPECT_EQ(specification.settings.exposureMs, 270'000);
    EXPECT_EQ(specification.settings.dryingMs, 1'200'000);
    using Values = std::vector<Quantity>;
    ASSERT_EQ(specification.limits.size(), 6U);
    EXPECT_EQ(specification.limits[0].parameter, Parameter::temperature);
    EXPECT_EQ(specification.limits[0].least,
              (Values{{Unit::celsius, 132'000}, {Unit::fahrenheit, 270'000}}));
    EXPECT_EQ(specification.limits[0].most,
              (Values{{Unit::celsius, 136'000}, {Unit::fahrenheit, 277'000}}));
    EXPECT_EQ(specification.limits[1].parameter, Parameter::exposure);
    EXPECT_EQ(specification.limits[1].least, (Values{{Unit::minutes, 4'000}}));
    EXPECT_EQ(specification.limits[1].most, (Values{{Unit::minutes, 4'250}}));
    EXPECT_EQ(specification.limits[2].parameter, Parameter::pressure);
    EXPECT_EQ(specification.limits[2].least, (Values{{Unit::kPaAbsolute, 290'000},
                                                     {Unit::barAbsolute, 2'900},
                                                     {Unit::kPaGauge, 190'000},
                                                     {Unit::barGauge, 1'900},
                                                     {Unit::psiGauge, 27'000}}));
    EXPECT_EQ(specification.limits[2].most, (Values{{Unit::kPaAbsolute, 330'000},
                                                    {Unit::barAbsolute, 3'300},
                                                    {Unit::kPaGauge, 230'000},
                                                    {Unit::barGauge, 2'300},
                                                    {Unit::psiGauge, 35'000}}));
    EXPECT_TRUE(specification.limits[3].least.empty());
    EXPECT_EQ(specification.limits[3].parameter, Parameter::drying);
    EXPECT_EQ(specification.limits[3].most, (Values{{Unit::minutes, 30'000}}));
    EXPECT_EQ(specification.limits[4].parameter, Parameter::concentration);
    EXPECT_EQ(specification.limits[4].least, (Values{{Unit::mgPerL, 450'000}}));
    EXPECT_EQ(specification.limits[4].most, (Values{{Unit::mgPerL, 1'200'000}}));
    EXPECT_EQ(specification.limits[5].parameter, Parameter::humidity);
    EXPECT_EQ(specification.limits[5].least, (Values{{Unit::percent, 40'000}}));
    EXPECT_EQ(specification.limits[5].most, (Values{{Unit::percent, 80'000}}));
}

TEST(EvidenceSpecificationFields, WhatIsLeftOut)
{
    const EvidenceRecord record = mustRead(withSpecification(R"("settings":{"fahrenheit":270})"));
    ASSERT_TRUE(record.specification);
    EXPECT_EQ(record.specification->method, Method::unknown);
    EXPECT_EQ(record.specification->airRemoval, AirRemoval::unknown);
    EXPECT_EQ(record.specification->purpose, Purpose::routine);
    EXPECT_FALSE(record.specification->extended);
    EXPECT_EQ(record.specification->settings.temperature, (Quantity{Unit::fahrenheit, 270'000}));
    EXPECT_FALSE(record.specification->settings.exposureMs);
    EXPECT_FALSE(record.specification->settings.dryingMs);
}

TEST(EvidenceSpecificationFields, LimitsThatContradict)
{
    const auto refusal = [](const std::string& limits) {
        return mustRefuse(withSpecification(R"("limits":[)" + limits + "]"));
    };
    EXPECT_EQ(
        refusal(R"({"parameter":"temperature","leastCelsius":133,"mostCelsius":132.99})").pointer,
        "/specification/limits/0/leastCelsius");
    EXPECT_EQ(refusal(R"({"parameter":"pressure","mostPsiGauge":26.9,"leastPsiGauge":27})").pointer,
              "/specification/limits/0/leastPsiGauge");
    EXPECT_EQ(
        refusal(
            R"({"parameter":"exposure","leastMinutes":3},{"parameter":"drying","leastMinutes":3},
                         {"parameter":"exposure","mostMinutes":4})")
            .pointer,
        "/specification/limits/2/parameter");
    EXPECT_EQ(refusal(R"({"parameter":"exposure","leastMinutes":3,"leastCelsius":132})").pointer,
              "/specification/limits/0/leastCelsius");
    EXPECT_EQ(refusal(R"({"parameter":"drying","mostPercent":3})").pointer,
              "/specification/limits/0/mostPercent");
    EXPECT_EQ(refusal(R"({"parameter":"humidity"})").pointer, "/specification/limits/0");
    EXPECT_EQ(refusal(R"({"leastMinutes":3})").pointer, "/specification/limits/0");
    mustRead(withSpecification(
        R"("limits":[{"parameter":"temperature","leastCelsius":132,"mostCelsius":132,"mostFahrenheit":100}])"));
}

TEST(EvidenceSpecificationFields, StoredOnesByName)
{
    const SpecificationLibrary library = SpecificationLibrary::builtIn();
    ASSERT_FALSE(library.names().empty());
    const std::string name = "steam-prevacuum-132-wrapped@1";
    const auto found =
        readEvidence(withTop(R"("specification":")" + name + '"'), "file", 1, &library);
    ASSERT_TRUE(std::holds_alternative<EvidenceRecord>(found));
    const auto& specification = std::get<EvidenceRecord>(found).specification;
    ASSERT_TRUE(specification);
    EXPECT_EQ(specification->id, "steam-prevacuum-132-wrapped");
    EXPECT_EQ(specification->revision, 1);
    for (const char* unknown : {"steam-prevacuum-132-wrapped@2", "steam-prevacuum-132-wrapped",
                                "steam-prevacuum-132-wrapped@01", "Steam@1", "@1", "a@", "a@100000",
                                "", "a@1 ", "a@1@1"}) {
        const auto refused = readEvidence(
            withTop(R"("specification":")" + std::string(unknown) + '"'), "file", 1, &library);
        ASSERT_TRUE(std::holds_alternative<ReadError>(refused)) << unknown;
        EXPECT_EQ(std::get<ReadError>(refused).problems.at(0).pointer, "/specification") << unknown;
    }
    EXPECT_EQ(mustRefuse(withTop(R"("specification":")" + name + '"')).pointer, "/specification")
        << "without a library";
}

TEST(EvidenceSpecificationFields, PurposeFitsWhatTheRecordIsOf)
{
    const SpecificationLibrary library = SpecificationLibrary::builtIn();
    const std::string test = R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},
        "test":{"kind":"leak","lot":"T1","start":"2031-03-04T06:00Z"},"specification":)";
    EXPECT_EQ(mustRefuse(test + R"({"id":"N1","revision":1,"purpose":"routine"}})").pointer,
              "/specification/purpose");
    EXPECT_EQ(mustRefuse(test + R"({"id":"N1","revision":1,"purpose":"bowie-dick"}})").pointer,
              "/specification/purpose");
    mustRead(test + R"({"id":"N1","revision":1,"purpose":"leak"}})");
    for (const char* purpose : {"warm-up", "bowie-dick", "leak", "qualification"}) {
        EXPECT_EQ(mustRefuse(withTop(R"("specification":{"id":"N1","revision":1,"purpose":")"
                                     + std::string(purpose) + "\"}"))
                      .pointer,
                  "/specification/purpose");
    }
    const auto named =
        readEvidence(test + R"("steam-prevacuum-132-wrapped@1"})", "file", 1, &library);
    ASSERT_TRUE(std::holds_alternative<ReadError>(named));
    EXPECT_EQ(std::get<ReadError>(named).problems.at(0).pointer, "/specification");
}

} // namespace

} // namespace loadwarden::tests
