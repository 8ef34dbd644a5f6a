#include "core/exchange/embedded.h"
#include "core/exchange/specification_library.h"
#include "core/exchange/specification_reader.h"
#include "policy_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

namespace loadwarden {

using namespace testing;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

namespace {

using Values = std::vector<Quantity>;

constexpr Quantity celsius(std::int64_t whole)
{
    return {Unit::celsius, whole * 1000};
}
constexpr Quantity fahrenheit(std::int64_t whole)
{
    return {Unit::fahrenheit, whole * 1000};
}
constexpr Quantity minutes(std::int64_t whole)
{
    return {Unit::minutes, whole * 1000};
}

/// The published numbers of one stored specification. Empty: the source states none.
struct Published {
    const char* name;
    Method method;
    AirRemoval airRemoval;
    Purpose purpose;
    Values leastTemperature;
    Values mostTemperature;
    std::optional<int> leastMinutes;
    std::optional<int> mostMinutes;
    std::optional<int> leastDryingMinutes;
};

const Published published[] = {
    // CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), Table 7,
    // gravity displacement, wrapped instruments: 30 min at 250 °F (121 °C), dry 15-30 min
    {"steam-gravity-121-wrapped@1",
     Method::steam,
     AirRemoval::gravity,
     Purpose::routine,
     {celsius(121), fahrenheit(250)},
     {},
     30,
     {},
     15},
    // the same row: 15 min at 270 °F (132 °C), dry 15-30 min
    {"steam-gravity-132-wrapped@1",
     Method::steam,
     AirRemoval::gravity,
     Purpose::routine,
     {celsius(132), fahrenheit(270)},
     {},
     15,
     {},
     15},
    // CDC (2008), Table 7, dynamic air removal, wrapped instruments: 4 min at 270 °F (132 °C),
    // dry 20-30 min
    {"steam-prevacuum-132-wrapped@1",
     Method::steam,
     AirRemoval::prevacuum,
     Purpose::routine,
     {celsius(132), fahrenheit(270)},
     {},
     4,
     {},
     20},
    // ANSI/AAMI ST79, dynamic air removal: 3 min at 275 °F (135 °C), dry 16 min: from memory
    {"steam-prevacuum-135-wrapped@1",
     Method::steam,
     AirRemoval::prevacuum,
     Purpose::routine,
     {celsius(135), fahrenheit(275)},
     {},
     3,
     {},
     16},
    // common practice, no source
    {"steam-flush-132-wrapped@1",
     Method::steam,
     AirRemoval::steamFlushPressurePulse,
     Purpose::routine,
     {celsius(132), fahrenheit(270)},
     {},
     4,
     {},
     20},
    // CDC-era tables of immediate-use cycles, as restated in the trade press: nonporous 3 min at
    // 270 °F (132 °C), vacuum
    {"steam-prevacuum-132-immediate-nonporous@1",
     Method::steam,
     AirRemoval::prevacuum,
     Purpose::immediateUse,
     {celsius(132), fahrenheit(270)},
     {},
     3,
     {},
     {}},
    // the same tables: nonporous 3 min at 270 °F (132 °C), gravity
    {"steam-gravity-132-immediate-nonporous@1",
     Method::steam,
     AirRemoval::gravity,
     Purpose::immediateUse,
     {celsius(132), fahrenheit(270)},
     {},
     3,
     {},
     {}},
    // Central Sterilising Club handbook (United Kingdom, 2025), EN 285, HTM 01-01: 134 °C 3 min;
    // band of 3 K above it: from memory
    {"steam-prevacuum-134-european@1",
     Method::steam,
     AirRemoval::prevacuum,
     Purpose::routine,
     {celsius(134)},
     {celsius(137)},
     3,
     {},
     {}},
    // CDC (2008), ethylene oxide: 37-63 °C, 1-6 h; the least temperature is common practice, no
    // source: 5 K below what it is set to
    {"ethylene-oxide-55@2",
     Method::ethyleneOxide,
     AirRemoval::unknown,
     Purpose::routine,
     {celsius(50)},
     {celsius(63)},
     60,
     360,
     {}},
    // no published exposure that holds for all programs: the facility states its own
    {"hydrogen-peroxide-generic@1",
     Method::hydrogenPeroxide,
     AirRemoval::unknown,
     Purpose::routine,
     {},
     {},
     {},
     {},
     {}},
    // JADA 122 (1991), also CDC: 170 °C (340 °F) 60 min, as restated
    {"dry-heat-170-60@1",
     Method::dryHeat,
     AirRemoval::unknown,
     Purpose::routine,
     {celsius(170), fahrenheit(340)},
     {},
     60,
     {},
     {}},
    // the same: 160 °C 120 min, as restated; 320 °F is 160 °C exactly
    {"dry-heat-160-120@1",
     Method::dryHeat,
     AirRemoval::unknown,
     Purpose::routine,
     {celsius(160), fahrenheit(320)},
     {},
     120,
     {},
     {}},
};

const Limit* limitOf(const CycleSpecification& specification, Parameter parameter)
{
    for (const Limit& limit : specification.limits) {
        if (limit.parameter == parameter) {
            return &limit;
        }
    }
    return nullptr;
}

Values least(const CycleSpecification& specification, Parameter parameter)
{
    const Limit* limit = limitOf(specification, parameter);
    return limit == nullptr ? Values{} : limit->least;
}

Values most(const CycleSpecification& specification, Parameter parameter)
{
    const Limit* limit = limitOf(specification, parameter);
    return limit == nullptr ? Values{} : limit->most;
}

Values inMinutes(std::optional<int> value)
{
    return value ? Values{minutes(*value)} : Values{};
}

constexpr std::string_view sound = R"(specification_version = 1
id = "own-cycle"
revision = 3
title = "A cycle"
method = "steam"
air_removal = "prevacuum"
purpose = "routine"
cycle_type = "own"
program = "P4"
extended = true

[settings.temperature]
celsius = 132.25
source = "the sterilizer's validation"
confidence = "facility"

[settings.exposure]
minutes = 4.5
source = "the sterilizer's validation"
confidence = "facility"

[settings.drying]
minutes = 20
source = "the sterilizer's validation"
confidence = "facility"

[limits.pressure.least]
kpa_absolute = 286.5
psi_gauge = 26.85
source = "the sterilizer's validation"
confidence = "facility"

[limits.pressure.most]
kpa_absolute = 320
source = "the sterilizer's validation"
confidence = "facility"

[limits.exposure.least]
minutes = 4
source = "the sterilizer's validation"
confidence = "facility"
)";

std::vector<SpecificationError> errorsOfSpecification(std::string_view text)
{
    auto read = readSpecification(text, "own.toml");
    auto* errors = std::get_if<std::vector<SpecificationError>>(&read);
    return errors == nullptr ? std::vector<SpecificationError>{} : std::move(*errors);
}

/// A directory that is gone after the test.
class Directory {
public:
    Directory()
        : m_path(std::filesystem::temp_directory_path()
                 / ("loadwarden-"
                    + std::to_string(::testing::UnitTest::GetInstance()->random_seed()) + "-"
                    + std::to_string(reinterpret_cast<std::uintptr_t>(this))))
    {
        std::filesystem::create_directory(m_path);
    }
    Directory(const Directory&) = delete;
    Directory& operator=(const Directory&) = delete;
    ~Directory() { std::filesystem::remove_all(m_path); }

    void write(const std::string& name, std::string_view text) const
    {
        std::ofstream(m_path / name, std::ios::binary) << text;
    }
    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }

private:
    std::filesystem::path m_path;
};

} // namespace

TEST(StoredSpecifications, StateThePublishedValues)
{
    const SpecificationLibrary library = SpecificationLibrary::builtIn();
    EXPECT_EQ(library.names().size(), std::size(published));
    for (const Published& row : published) {
        SCOPED_TRACE(row.name);
        const CycleSpecification* specification = library.find(row.name);
        ASSERT_NE(specification, nullptr);
        EXPECT_EQ(specification->id + "@" + std::to_string(specification->revision), row.name);
        EXPECT_EQ(specification->method, row.method);
        EXPECT_EQ(specification->airRemoval, row.airRemoval);
        EXPECT_EQ(specification->purpose, row.purpose);
        EXPECT_FALSE(specification->extended);
        EXPECT_FALSE(specification->cycleType.empty());
        EXPECT_TRUE(specification->program.empty()) << "only the facility knows it";
        EXPECT_EQ(least(*specification, Parameter::temperature), row.leastTemperature);
        EXPECT_EQ(most(*specification, Parameter::temperature), row.mostTemperature);
        EXPECT_EQ(least(*specification, Parameter::exposure), inMinutes(row.leastMinutes));
        EXPECT_EQ(most(*specification, Parameter::exposure), inMinutes(row.mostMinutes));
        EXPECT_EQ(least(*specification, Parameter::drying), inMinutes(row.leastDryingMinutes));
        EXPECT_EQ(most(*specification, Parameter::drying), Values{});
        EXPECT_EQ(limitOf(*specification, Parameter::pressure), nullptr);
        if (row.method == Method::steam || row.method == Method::dryHeat) {
            // The program is set to the least values of its record.
            EXPECT_EQ(specification->settings.temperature, row.leastTemperature.front());
            EXPECT_EQ(specification->settings.exposureMs, *row.leastMinutes * 60'000);
        }
    }
}

TEST(StoredSpecifications, HoldTheRangesOfEthyleneOxide)
{
    const SpecificationLibrary library = SpecificationLibrary::builtIn();
    const CycleSpecification& gas = *library.find("ethylene-oxide-55@2");
    // CDC (2008), ethylene oxide: 450-1200 mg/L, relative humidity 40-80 %
    EXPECT_THAT(least(gas, Parameter::concentration), ElementsAre(Quantity{Unit::mgPerL, 450'000}));
    EXPECT_THAT(most(gas, Parameter::concentration),
                ElementsAre(Quantity{Unit::mgPerL, 1'200'000}));
    EXPECT_THAT(least(gas, Parameter::humidity), ElementsAre(Quantity{Unit::percent, 40'000}));
    EXPECT_THAT(most(gas, Parameter::humidity), ElementsAre(Quantity{Unit::percent, 80'000}));
    // common practice, no source
    EXPECT_EQ(gas.settings.temperature, celsius(55));
}

TEST(StoredSpecifications, AreTheFilesOfTheFolder)
{
    const std::filesystem::path folder = LOADWARDEN_SOURCE_DIR "/resources/specifications";
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        files += entry.path().extension() == ".toml" ? 1U : 0U;
    }
    EXPECT_EQ(embedded::specifications().size(), files);
    for (const EmbeddedFile& file : embedded::specifications()) {
        std::ifstream stream(folder / std::string(file.name), std::ios::binary);
        EXPECT_EQ(std::string(std::istreambuf_iterator<char>(stream), {}), file.text) << file.name;
        EXPECT_THAT(std::string(file.text), HasSubstr("A template, not an instruction"));
    }
}

TEST(SpecificationFile, IsReadFieldByField)
{
    auto read = readSpecification(sound, "own.toml");
    ASSERT_TRUE(std::holds_alternative<CycleSpecification>(read))
        << textOf(std::get<std::vector<SpecificationError>>(read).front());
    const auto& specification = std::get<CycleSpecification>(read);
    EXPECT_EQ(specification.id, "own-cycle");
    EXPECT_EQ(specification.revision, 3);
    EXPECT_EQ(specification.method, Method::steam);
    EXPECT_EQ(specification.airRemoval, AirRemoval::prevacuum);
    EXPECT_EQ(specification.purpose, Purpose::routine);
    EXPECT_EQ(specification.cycleType, "own");
    EXPECT_EQ(specification.program, "P4");
    EXPECT_TRUE(specification.extended);
    EXPECT_EQ(specification.settings.temperature, (Quantity{Unit::celsius, 132'250}));
    EXPECT_EQ(specification.settings.exposureMs, 270'000);
    EXPECT_EQ(specification.settings.dryingMs, 1'200'000);
    EXPECT_THAT(
        least(specification, Parameter::pressure),
        ElementsAre(Quantity{Unit::kPaAbsolute, 286'500}, Quantity{Unit::psiGauge, 26'850}));
    EXPECT_THAT(most(specification, Parameter::pressure),
                ElementsAre(Quantity{Unit::kPaAbsolute, 320'000}));
    EXPECT_THAT(least(specification, Parameter::exposure), ElementsAre(minutes(4)));
}

/// A change to the sound file, and the one error that it makes.
struct Defect {
    const char* what;
    const char* with;
    const char* field;
    const char* says;
};

class DefectiveSpecification : public ::testing::TestWithParam<Defect> {};

TEST_P(DefectiveSpecification, IsRefusedAtItsPlace)
{
    const Defect& defect = GetParam();
    const std::string text = replaced(std::string(sound), defect.what, defect.with);
    const auto errors = errorsOfSpecification(text);
    ASSERT_EQ(errors.size(), 1U) << defect.with << (errors.empty() ? "" : textOf(errors.back()));
    EXPECT_EQ(errors[0].file, "own.toml");
    EXPECT_EQ(errors[0].field, defect.field);
    EXPECT_THAT(errors[0].message, HasSubstr(defect.says));
}

INSTANTIATE_TEST_SUITE_P(
    Each, DefectiveSpecification,
    ::testing::Values(
        Defect{"specification_version = 1", "specification_version = 2", "specification_version",
               "from 1 to 1"},
        Defect{"id = \"own-cycle\"", "id = \"own cycle\"", "id", "a to z"},
        Defect{"revision = 3", "revision = 100000", "revision", "from 1 to 99999"},
        Defect{"title = \"A cycle\"\n", "", "title", "is missing"},
        Defect{"method = \"steam\"", "method = \"unknown\"", "method", "steam, ethylene-oxide"},
        Defect{"method = \"steam\"", "method = \"dry-heat\"", "air_removal", "for steam only"},
        Defect{"air_removal = \"prevacuum\"\n", "", "air_removal", "is missing"},
        Defect{"purpose = \"routine\"", "purpose = \"other\"", "purpose", "routine, immediate-use"},
        Defect{"cycle_type = \"own\"", "cycle_type = \"\"", "cycle_type", "must not be empty"},
        Defect{"program = \"P4\"", "program = \"P4\u00A0\"", "program", "character 3 is U+00A0"},
        Defect{"program = \"P4\"", "program = 4", "program", "must be a text"},
        Defect{"extended = true", "extended = 1", "extended", "false or true"},
        Defect{"extended = true", "extended = true\nextnded = true", "extnded", "is not known"},
        Defect{"celsius = 132.25", "celsius = 132.255", "settings.temperature.celsius",
               "at most 2 decimals"},
        Defect{"celsius = 132.25", "celsius = 501", "settings.temperature.celsius", "-90 to 500"},
        Defect{"celsius = 132.25", "celsius = 132\nfahrenheit = 132",
               "settings.temperature.fahrenheit", "more than 2 K apart"},
        Defect{"celsius = 132.25\n", "", "settings.temperature", "states no value"},
        Defect{"celsius = 132.25", "celsius = 132\nminutes = 4", "settings.temperature.minutes",
               "is not known"},
        Defect{"minutes = 4.5", "minutes = \"4.5\"", "settings.exposure.minutes",
               "must be a number"},
        Defect{"minutes = 4.5", "minutes = 3.999", "settings.exposure.minutes",
               "3.999 lies outside the limits of the record"},
        Defect{"kpa_absolute = 320", "kpa_absolute = 286.499", "limits.pressure.least.kpa_absolute",
               "lies above most"},
        Defect{"[limits.pressure.most]", "[limits.pressure.greatest]", "limits.pressure.greatest",
               "is not known"},
        Defect{"[limits.exposure.least]\nminutes = 4\nsource = \"the sterilizer's validation\"\n"
               "confidence = \"facility\"\n",
               "[limits.exposure]\n", "limits.exposure", "neither least nor most"},
        Defect{"confidence = \"facility\"", "confidence = \"high\"",
               "settings.temperature.confidence", "seen, restated"},
        Defect{"source = \"the sterilizer's validation\"\n", "", "settings.temperature.source",
               "is missing"}));

TEST(SpecificationFile, SaysAllErrorsAtOnceByLine)
{
    std::string text = replaced(std::string(sound), "minutes = 4.5", "minutes = -1");
    text = replaced(text, "revision = 3", "revision = 0");
    const auto errors = errorsOfSpecification(text);
    ASSERT_EQ(errors.size(), 2U);
    EXPECT_EQ(textOf(errors[0]), "own.toml:3: revision: must be a whole number from 1 to 99999");
    EXPECT_EQ(errors[1].field, "settings.exposure.minutes");
    EXPECT_EQ(errors[1].line, lineOf(text, "minutes = -1"));
}

TEST(SpecificationLibrary, AddsADirectoryBesideWhatIsStored)
{
    const Directory directory;
    directory.write("own.toml", sound);
    directory.write("notes.txt", "not a specification");
    SpecificationLibrary library = SpecificationLibrary::builtIn();
    EXPECT_THAT(library.addDirectory(directory.path()), IsEmpty());
    ASSERT_NE(library.find("own-cycle@3"), nullptr);
    EXPECT_NE(library.find("steam-prevacuum-132-wrapped@1"), nullptr);
    EXPECT_EQ(library.find("own-cycle"), nullptr);
    EXPECT_EQ(library.find("own-cycle@1"), nullptr);
    EXPECT_EQ(library.find(""), nullptr);
}

TEST(SpecificationLibrary, AddsNothingOfADirectoryInWhichOneFileIsWrong)
{
    const Directory directory;
    directory.write("a.toml", sound);
    directory.write("b.toml", "id = ");
    directory.write("c.toml", sound);
    SpecificationLibrary library = SpecificationLibrary::builtIn();
    const auto errors = library.addDirectory(directory.path());
    ASSERT_EQ(errors.size(), 2U);
    EXPECT_THAT(errors[0].file, HasSubstr("b.toml"));
    EXPECT_THAT(errors[1].message, HasSubstr("own-cycle@3 is there already"));
    EXPECT_EQ(errors[1].line, 2) << "of its id";
    EXPECT_EQ(library.find("own-cycle@3"), nullptr);
}

TEST(SpecificationLibrary, RefusesToReplaceAStoredOneAndADirectoryThatIsNotThere)
{
    const Directory directory;
    directory.write("mine.toml", embedded::specifications().front().text);
    SpecificationLibrary library = SpecificationLibrary::builtIn();
    EXPECT_EQ(library.addDirectory(directory.path()).size(), 1U);
    const auto errors = library.addDirectory(directory.path() / "missing");
    ASSERT_EQ(errors.size(), 1U);
    EXPECT_THAT(textOf(errors[0]), HasSubstr("missing: cannot be read as a directory"));
}

} // namespace loadwarden
