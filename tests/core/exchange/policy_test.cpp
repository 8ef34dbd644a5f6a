#include "core/exchange/milder_values.h"
#include "core/exchange/policy_reader.h"
#include "core/exchange/policy_rows.h"
#include "core/exchange/policy_settings.h"
#include "policy_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace loadwarden {

using namespace testing;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

namespace {

void expectSameSettings(const Policy& a, const Policy& b)
{
    EXPECT_EQ(a.clockTolerance, b.clockTolerance);
    EXPECT_EQ(a.lateAfter, b.lateAfter);
    EXPECT_EQ(a.failedPackages, b.failedPackages);
    EXPECT_EQ(a.rejectedForSupervisor, b.rejectedForSupervisor);
    EXPECT_EQ(a.wetForSupervisor, b.wetForSupervisor);
    EXPECT_EQ(a.scopeBy, b.scopeBy);
    EXPECT_EQ(a.airTestForGravity, b.airTestForGravity);
    EXPECT_EQ(a.airTestForSteamFlush, b.airTestForSteamFlush);
    EXPECT_EQ(a.madeAfter, b.madeAfter);
    EXPECT_EQ(a.aboveMaximum, b.aboveMaximum);
    EXPECT_EQ(a.traceAsked, b.traceAsked);
    EXPECT_EQ(a.passesFreeLine, b.passesFreeLine);
    EXPECT_EQ(a.passesMidnight, b.passesMidnight);
    EXPECT_EQ(a.passesLastLineOpen, b.passesLastLineOpen);
    EXPECT_EQ(a.traceDiffersUnits, b.traceDiffersUnits);
    EXPECT_EQ(a.traceDiffers, b.traceDiffers);
    EXPECT_EQ(a.pcdSteam, b.pcdSteam);
    EXPECT_EQ(a.pcdHydrogenPeroxide, b.pcdHydrogenPeroxide);
    EXPECT_EQ(a.pcdDryHeat, b.pcdDryHeat);
    for (int type = 0; type < 8; ++type) {
        EXPECT_EQ(a.pcdTypesSteam.contains(type), b.pcdTypesSteam.contains(type)) << type;
        EXPECT_EQ(a.pcdTypesOther.contains(type), b.pcdTypesOther.contains(type)) << type;
        EXPECT_EQ(a.internalTypesSteam.contains(type), b.internalTypesSteam.contains(type)) << type;
        EXPECT_EQ(a.internalTypesOther.contains(type), b.internalTypesOther.contains(type)) << type;
    }
    EXPECT_EQ(a.biSteam, b.biSteam);
    EXPECT_EQ(a.biDryHeat, b.biDryHeat);
    EXPECT_EQ(a.biHydrogenPeroxide, b.biHydrogenPeroxide);
    EXPECT_EQ(a.biEthyleneOxide, b.biEthyleneOxide);
    EXPECT_EQ(a.readout, b.readout);
    EXPECT_EQ(a.routineBlocks, b.routineBlocks);
    EXPECT_EQ(a.implantHold, b.implantHold);
    EXPECT_EQ(a.controlPer, b.controlPer);
    EXPECT_EQ(a.controlWindow, b.controlWindow);
    EXPECT_EQ(a.temperatureToleranceUnits, b.temperatureToleranceUnits);
    EXPECT_EQ(a.sheetReadWithin, b.sheetReadWithin);
    EXPECT_EQ(a.leakMostThousandthsMbarPerMinute, b.leakMostThousandthsMbarPerMinute);
    EXPECT_EQ(a.leakSettle, b.leakSettle);
    EXPECT_EQ(a.leakTest, b.leakTest);
}

Policy read(std::string_view text)
{
    auto answer = readPolicy(text, "policy.toml");
    if (const auto* errors = std::get_if<std::vector<PolicyError>>(&answer)) {
        ADD_FAILURE() << textOf(errors->front());
        return {};
    }
    return std::get<Policy>(std::move(answer));
}

} // namespace

TEST(DefaultPolicy, IsTheFileAndTheStructsDefaults)
{
    std::ifstream file(LOADWARDEN_SOURCE_DIR "/resources/policies/us-hospital.toml",
                       std::ios::binary);
    const std::string text(std::istreambuf_iterator<char>(file), {});
    ASSERT_FALSE(text.empty());
    EXPECT_EQ(defaultPolicyText(), text);

    const Policy& policy = defaultPolicy();
    EXPECT_EQ(policy.id, "us-hospital");
    EXPECT_EQ(policy.revision, 1);
    EXPECT_EQ(policy.title, "United States hospital practice");
    expectSameSettings(policy, Policy{});
}

TEST(DefaultPolicy, IsDigestedByItsBytes)
{
    // Any byte counts, also one in a comment. tests/app/cli_test.py compares the digest itself with
    // that of Python's hashlib.
    const Policy one = read(defaultPolicyText());
    const Policy other = read(std::string(defaultPolicyText()) + "# one more\n");
    EXPECT_EQ(one.digest.size(), 64U);
    EXPECT_EQ(one.digest, defaultPolicy().digest);
    EXPECT_NE(one.digest, other.digest);
}

TEST(DefaultPolicy, LendsItsIdToNoOther)
{
    const std::string text(defaultPolicyText());
    const std::string setting =
        replaced(text, headOf("leak.test_minutes") + "10", headOf("leak.test_minutes") + "12");
    const std::string revision = replaced(text, "revision = 1", "revision = 2");
    for (const std::string& borrowed : {setting, revision}) {
        const std::vector<PolicyError> errors = errorsOf(borrowed);
        ASSERT_EQ(errors.size(), 1U);
        EXPECT_EQ(errors[0].field, "id");
        EXPECT_EQ(errors[0].line, lineOf(text, "\nid =") + 1);
        EXPECT_THAT(errors[0].message, HasSubstr("an id of its own"));
        read(replaced(borrowed, "id = \"us-hospital\"", "id = \"own\""));
    }
    // What is no setting may differ.
    EXPECT_EQ(read(replaced(text, "title = \"", "title = \"Our ")).title.substr(0, 4), "Our ");
}

/// Reads a value that is allowed and is not the default, and finds it where it belongs.
struct Change {
    const char* setting;
    const char* value;
    bool (*holds)(const Policy&);
};

class ChangedSetting : public ::testing::TestWithParam<Change> {};

TEST_P(ChangedSetting, ReachesItsField)
{
    const Change& change = GetParam();
    EXPECT_FALSE(change.holds(Policy{})) << "the value is the default";
    EXPECT_TRUE(change.holds(read(withValue(change.setting, change.value))))
        << change.setting << " = " << change.value;
}

INSTANTIATE_TEST_SUITE_P(
    EverySetting, ChangedSetting,
    ::testing::Values(
        Change{"printout.clock_tolerance_minutes", "2.5",
               [](const Policy& p) { return p.clockTolerance == Duration::seconds(150); }},
        Change{"acts.late_hours", "0.5",
               [](const Policy& p) { return p.lateAfter == Duration::minutes(30); }},
        Change{"process.failed_packages", "1",
               [](const Policy& p) { return p.failedPackages == 1; }},
        Change{"packages.rejected_for_supervisor", "1",
               [](const Policy& p) { return p.rejectedForSupervisor == 1; }},
        Change{"packages.wet_for_supervisor", "1",
               [](const Policy& p) { return p.wetForSupervisor == 1; }},
        Change{"scope.by", "\"sterilizer\"",
               [](const Policy& p) { return p.scopeBy == ScopeBy::sterilizer; }},
        Change{"air_removal.also_for", "[\"gravity\"]",
               [](const Policy& p) { return p.airTestForGravity && !p.airTestForSteamFlush; }},
        Change{"air_removal.also_for", "[\"steam-flush-pressure-pulse\"]",
               [](const Policy& p) { return !p.airTestForGravity && p.airTestForSteamFlush; }},
        Change{"air_removal.also_for", "[\"steam-flush-pressure-pulse\", \"gravity\"]",
               [](const Policy& p) { return p.airTestForGravity && p.airTestForSteamFlush; }},
        Change{"air_removal.made_after", "\"review\"",
               [](const Policy& p) { return p.madeAfter == MadeAfter::review; }},
        Change{"physical.above_maximum", "\"fails\"",
               [](const Policy& p) { return p.aboveMaximum == AboveMaximum::fails; }},
        Change{"trace.asked", "\"yes\"", [](const Policy& p) { return p.traceAsked; }},
        Change{"trace.passable_defects", "[]",
               [](const Policy& p) {
                   return !p.passesFreeLine && !p.passesMidnight && !p.passesLastLineOpen;
               }},
        Change{"trace.passable_defects", "[\"midnight\", \"free-line\"]",
               [](const Policy& p) {
                   return p.passesFreeLine && p.passesMidnight && !p.passesLastLineOpen;
               }},
        Change{"trace.passable_defects", "[\"last-line-open\"]",
               [](const Policy& p) {
                   return !p.passesFreeLine && !p.passesMidnight && p.passesLastLineOpen;
               }},
        Change{"trace.differs_kelvin", "0.25",
               [](const Policy& p) { return p.traceDiffersUnits == 450; }},
        Change{"trace.differs_seconds", "7.5",
               [](const Policy& p) { return p.traceDiffers == Duration::milliseconds(7'500); }},
        Change{"pcd.steam", "\"required\"",
               [](const Policy& p) { return p.pcdSteam == PcdRequirement::required; }},
        Change{"pcd.hydrogen_peroxide", "\"required\"",
               [](const Policy& p) { return p.pcdHydrogenPeroxide == PcdRequirement::required; }},
        Change{"pcd.dry_heat", "\"required\"",
               [](const Policy& p) { return p.pcdDryHeat == PcdRequirement::required; }},
        Change{"pcd.types_steam", "[5]",
               [](const Policy& p) {
                   return p.pcdTypesSteam.contains(5) && !p.pcdTypesSteam.contains(6);
               }},
        Change{"pcd.types_other", "[1, 6]",
               [](const Policy& p) {
                   return p.pcdTypesOther.contains(1) && !p.pcdTypesOther.contains(3)
                          && p.pcdTypesOther.contains(6);
               }},
        Change{"internal.types_steam", "[6, 4]",
               [](const Policy& p) {
                   return !p.internalTypesSteam.contains(3) && p.internalTypesSteam.contains(4);
               }},
        Change{"internal.types_other", "[4]",
               [](const Policy& p) {
                   return !p.internalTypesOther.contains(1) && p.internalTypesOther.contains(4);
               }},
        Change{"bi.steam", "\"weekly\"",
               [](const Policy& p) { return p.biSteam == BiFrequency::weekly; }},
        Change{"bi.steam", "\"every-load\"",
               [](const Policy& p) { return p.biSteam == BiFrequency::everyLoad; }},
        Change{"bi.dry_heat", "\"weekly\"",
               [](const Policy& p) { return p.biDryHeat == BiFrequency::weekly; }},
        Change{"bi.hydrogen_peroxide", "\"every-load\"",
               [](const Policy& p) { return p.biHydrogenPeroxide == BiFrequency::everyLoad; }},
        Change{"bi.readout", "\"last\"",
               [](const Policy& p) { return p.readout == BiReadout::last; }},
        Change{"bi.routine_blocks", "true", [](const Policy& p) { return p.routineBlocks; }},
        Change{"implant.hold", "\"implants-only\"",
               [](const Policy& p) { return p.implantHold == ImplantHold::implantsOnly; }},
        Change{"control.per", "\"load\"",
               [](const Policy& p) { return p.controlPer == ControlReach::load; }},
        Change{"control.window_hours", "0.25",
               [](const Policy& p) { return p.controlWindow == Duration::minutes(15); }},
        Change{"device.temperature_tolerance_kelvin", "0.25",
               [](const Policy& p) { return p.temperatureToleranceUnits == 450; }},
        Change{"bowie_dick.read_within_minutes", "30",
               [](const Policy& p) { return p.sheetReadWithin == Duration::minutes(30); }},
        Change{"leak.most_mbar_per_minute", "1",
               [](const Policy& p) { return p.leakMostThousandthsMbarPerMinute == 1000; }},
        Change{"leak.settle_minutes", "7.5",
               [](const Policy& p) { return p.leakSettle == Duration::seconds(450); }},
        Change{"leak.test_minutes", "60",
               [](const Policy& p) { return p.leakTest == Duration::minutes(60); }}));

/// A value that is refused, with what the error must say.
struct Refusal {
    const char* setting;
    const char* value;
    const char* says;
};

class RefusedValue : public ::testing::TestWithParam<Refusal> {};

TEST_P(RefusedValue, IsSaidWithItsLineAndFieldAndWhatIsAllowed)
{
    const Refusal& refusal = GetParam();
    const std::string text = withValue(refusal.setting, refusal.value);
    const auto errors = errorsOf(text);
    ASSERT_EQ(errors.size(), 1U) << refusal.setting << " = " << refusal.value;
    EXPECT_EQ(errors[0].file, "policy.toml");
    EXPECT_EQ(errors[0].line, valueLineOf(text, refusal.setting));
    EXPECT_EQ(errors[0].field, std::string(refusal.setting) + ".value");
    EXPECT_THAT(errors[0].message, HasSubstr(refusal.says));
}

INSTANTIATE_TEST_SUITE_P(
    EverySetting, RefusedValue,
    ::testing::Values(
        Refusal{"printout.clock_tolerance_minutes", "5.001",
                "5.001 is milder than the default; allowed: 0 to 5"},
        Refusal{"printout.clock_tolerance_minutes", "-1", "out of range; allowed: 0 to 5"},
        Refusal{"printout.clock_tolerance_minutes", "\"5\"", "must be a number"},
        Refusal{"printout.clock_tolerance_minutes", "1.0005", "at most 3 decimals"},
        Refusal{"printout.clock_tolerance_minutes", "inf", "at most 3 decimals"},
        Refusal{"printout.clock_tolerance_minutes", "nan", "at most 3 decimals"},
        Refusal{"acts.late_hours", "5", "milder than the default; allowed: 0 to 4"},
        Refusal{"process.failed_packages", "3", "milder than the default; allowed: 1 to 2"},
        Refusal{"process.failed_packages", "0", "out of range; allowed: 1 to 2"},
        Refusal{"process.failed_packages", "1.5", "must be a whole number; allowed: 1 to 2"},
        Refusal{"packages.rejected_for_supervisor", "3", "milder"},
        Refusal{"packages.wet_for_supervisor", "9223372036854775807", "allowed: 1 to 2"},
        Refusal{"scope.by", "\"load\"", "allowed: cycle-type, sterilizer"},
        Refusal{"scope.by", "1", "allowed: cycle-type, sterilizer"},
        Refusal{"air_removal.also_for", "[\"prevacuum\"]", "allowed: any of gravity"},
        Refusal{"air_removal.also_for", "[\"gravity\", \"gravity\"]", "names gravity twice"},
        Refusal{"air_removal.also_for", "\"gravity\"", "must be a list"},
        Refusal{"air_removal.made_after", "\"note\"", "allowed: fails, review (milder)"},
        Refusal{"physical.above_maximum", "\"note\"", "allowed: review, fails"},
        Refusal{"trace.asked", "true", "allowed: no, yes"},
        Refusal{"trace.passable_defects", "[\"gap\"]",
                "allowed: any of free-line, midnight, last-line-open"},
        Refusal{"trace.passable_defects", "[\"midnight\", \"midnight\"]", "names midnight twice"},
        Refusal{"trace.differs_kelvin", "1.01", "1.01 is milder than the default; allowed: 0 to 1"},
        Refusal{"trace.differs_kelvin", "0.125", "at most 2 decimals"},
        Refusal{"trace.differs_seconds", "60.001",
                "60.001 is milder than the default; allowed: 0 to 60"},
        Refusal{"trace.differs_seconds", "-1", "out of range"},
        Refusal{"pcd.steam", "\"never\"", "allowed: if-placed, required"},
        Refusal{"pcd.hydrogen_peroxide", "true", "allowed: if-placed, required"},
        Refusal{"pcd.dry_heat", "\"Required\"", "allowed: if-placed, required"},
        Refusal{"pcd.types_steam", "[]", "must not be empty"},
        Refusal{"pcd.types_steam", "[4, 5]", "type 4 is milder than the default; allowed: 5, 6"},
        Refusal{"pcd.types_steam", "[5, 5]", "names type 5 twice"},
        Refusal{"pcd.types_steam", "5", "must be a list"},
        Refusal{"pcd.types_other", "[2]", "type 2 is milder than the default"},
        Refusal{"pcd.types_other", "[7]", "not an ISO 11140-1 type"},
        Refusal{"internal.types_steam", "[1]", "allowed: 3, 4, 5, 6"},
        Refusal{"internal.types_other", "[\"3\"]", "not an ISO 11140-1 type"},
        Refusal{"bi.steam", "\"monthly\"", "allowed: weekly (milder), each-day, every-load"},
        Refusal{"bi.dry_heat", "\"none\"", "allowed: weekly (milder), each-day, every-load"},
        Refusal{"bi.hydrogen_peroxide", "\"weekly\"",
                "weekly is milder than the default; allowed: each-day, every-load"},
        Refusal{"bi.ethylene_oxide", "\"each-day\"",
                "each-day is milder than the default; allowed: every-load"},
        Refusal{"bi.readout", "\"first\"", "allowed: release, last"},
        Refusal{"bi.routine_blocks", "\"true\"", "must be false or true"},
        Refusal{"bi.routine_blocks", "0", "must be false or true"},
        Refusal{"implant.hold", "\"none\"", "allowed: whole-load, implants-only (milder)"},
        Refusal{"control.per", "\"lot\"", "lot is milder than the default; allowed: day, load"},
        Refusal{"control.window_hours", "2.5", "milder than the default; allowed: 0 to 2"},
        Refusal{"device.temperature_tolerance_kelvin", "0.51",
                "0.51 is milder than the default; allowed: 0 to 0.5"},
        Refusal{"device.temperature_tolerance_kelvin", "0.125", "at most 2 decimals"},
        Refusal{"bowie_dick.read_within_minutes", "61",
                "milder than the default; allowed: 1 to 60"},
        Refusal{"bowie_dick.read_within_minutes", "0", "out of range"},
        Refusal{"leak.most_mbar_per_minute", "1.31",
                "1.31 is milder than the default; allowed: 0.1 to 1.3"},
        Refusal{"leak.most_mbar_per_minute", "0", "out of range"},
        Refusal{"leak.settle_minutes", "4", "4 is milder than the default; allowed: 5 to 60"},
        Refusal{"leak.settle_minutes", "61", "out of range; allowed: 5 to 60"},
        Refusal{"leak.test_minutes", "9.999", "milder than the default; allowed: 10 to 60"}));

TEST(PolicyFile, NeedsEverySettingWithItsValueSourceAndConfidence)
{
    for (const settings::Setting& setting : settings::all) {
        const std::string name = std::string(setting.section) + "." + std::string(setting.name);
        const std::string text(defaultPolicyText());
        const std::size_t begin = text.find("[" + name + "]");
        ASSERT_NE(begin, std::string::npos) << name;
        const std::size_t end = std::min(text.find("\n\n", begin), text.size());

        std::string without = text;
        without.erase(begin, end - begin);
        auto errors = errorsOf(without);
        ASSERT_EQ(errors.size(), 1U) << name;
        EXPECT_EQ(errors[0].field, name);
        EXPECT_EQ(errors[0].message, "is missing");

        for (const char* key : {"value", "source", "confidence"}) {
            const std::size_t line = text.find(std::string("\n") + key + " = ", begin) + 1;
            std::string lacking = text;
            lacking.erase(line, lacking.find('\n', line) - line);
            errors = errorsOf(lacking);
            ASSERT_EQ(errors.size(), 1U) << name << " " << key;
            EXPECT_EQ(errors[0].field, name + "." + key);
            EXPECT_EQ(errors[0].line, lineOf(lacking, "[" + name + "]"));
            EXPECT_EQ(errors[0].message, "is missing");
        }
    }
}

TEST(PolicyFile, HoldsNothingUnknown)
{
    const std::string text(defaultPolicyText());
    struct Unknown {
        std::string text;
        std::string field;
        int line;
    };
    const std::string leak = "[leak.settle_minutes]\n";
    const Unknown cases[] = {
        {replaced(text, "revision = 1\n", "revision = 1\nrevison = 2\n"), "revison",
         lineOf(text, "revision = 1\n") + 1},
        {text + "\n[leak.settel_minutes]\nvalue = 5\n", "leak.settel_minutes",
         lineOf(text + "\n[leak.settel_minutes]", "[leak.settel")},
        {text + "\n[leeks]\n", "leeks", lineOf(text + "\n[leeks]", "[leeks]")},
        {replaced(text, leak, leak + "unit = \"min\"\n"), "leak.settle_minutes.unit",
         lineOf(text, leak) + 1},
    };
    for (const Unknown& unknown : cases) {
        const auto errors = errorsOf(unknown.text);
        ASSERT_EQ(errors.size(), 1U) << unknown.field;
        EXPECT_EQ(errors[0].field, unknown.field);
        EXPECT_EQ(errors[0].line, unknown.line);
        EXPECT_EQ(errors[0].message, "is not known here");
    }
}

/// The default policy as files of version 1 stated it, without what came later.
std::string textOfVersion1()
{
    std::string text =
        replaced(std::string(defaultPolicyText()), "policy_version = 2", "policy_version = 1");
    for (const settings::Setting& setting : settings::all) {
        if (setting.since > 1) {
            const std::string head =
                "[" + std::string(setting.section) + "." + std::string(setting.name) + "]";
            const std::size_t begin = text.rfind("\n\n", text.find(head));
            text.erase(begin, text.find("\n\n", begin + 2) - begin);
        }
    }
    return text;
}

TEST(PolicyFile, OfVersion1MeansTheDefaultsOfWhatCameLater)
{
    const std::string text = textOfVersion1();
    ASSERT_THAT(text, ::testing::Not(HasSubstr("trace.")));
    const auto read = readPolicy(text, "policy.toml");
    ASSERT_TRUE(std::holds_alternative<Policy>(read));
    Policy expected = defaultPolicy();
    expected.digest = std::get<Policy>(read).digest;
    EXPECT_EQ(std::get<Policy>(read), expected);
    EXPECT_NE(expected.digest, defaultPolicy().digest);

    EXPECT_EQ(policyRows(text), policyRows(defaultPolicyText()));
    EXPECT_THAT(policyDifferences(text, defaultPolicyText()), IsEmpty());
    const auto differences = policyDifferences(text, withValue("trace.asked", "\"yes\""));
    ASSERT_EQ(differences.size(), 1U);
    EXPECT_EQ(differences[0].section + "." + differences[0].name, "trace.asked");
    EXPECT_EQ(differences[0].before, "no");
    EXPECT_EQ(differences[0].after, "yes");
}

TEST(PolicyFile, OfVersion1StatesNothingThatCameLater)
{
    const auto errors = errorsOf(
        replaced(std::string(defaultPolicyText()), "policy_version = 2", "policy_version = 1"));
    ASSERT_EQ(errors.size(), 1U);
    EXPECT_EQ(errors[0].field, "trace");
    EXPECT_EQ(errors[0].message, "is not known here");
}

TEST(PolicyFile, NamesItselfProperly)
{
    const std::string text(defaultPolicyText());
    struct Bad {
        const char* what;
        const char* with;
        const char* field;
        const char* says;
    };
    const Bad cases[] = {
        {"policy_version = 2", "policy_version = 3", "policy_version", "from 1 to 2"},
        {"id = \"us-hospital\"", "id = \"Our Hospital\"", "id", "a to z, 0 to 9 and -"},
        {"id = \"us-hospital\"", "id = \" \"", "id", "must not be empty"},
        {"id = \"us-hospital\"", "id = 7", "id", "must be a text in quotes"},
        {"revision = 1", "revision = 0", "revision", "from 1 to 100000"},
        {"revision = 1", "revision = 1.0", "revision", "must be a whole number"},
        {"title = \"United States hospital practice\"", "", "title", "is missing"},
        {"confidence = \"common-practice\"", "confidence = \"sure\"",
         "printout.clock_tolerance_minutes.confidence", "seen, restated, memory"},
        {"source = \"common practice, no source\"", "source = \"\"",
         "printout.clock_tolerance_minutes.source", "must not be empty"},
    };
    for (const Bad& bad : cases) {
        const auto errors = errorsOf(replaced(text, bad.what, bad.with));
        ASSERT_EQ(errors.size(), 1U) << bad.with;
        EXPECT_EQ(errors[0].field, bad.field) << bad.with;
        EXPECT_THAT(errors[0].message, HasSubstr(bad.says)) << bad.with;
    }
}

TEST(PolicyFile, SaysAllErrorsAtOnceByLine)
{
    std::string text = withValue("leak.test_minutes", "1");
    text = replaced(text, headOf("bi.steam") + "\"each-day\"", headOf("bi.steam") + "\"never\"");
    text = replaced(text, "revision = 1\n", "revision = \"one\"\n");
    text += "\n[extra]\n";
    const auto errors = errorsOf(text);
    ASSERT_EQ(errors.size(), 4U);
    EXPECT_EQ(errors[0].field, "revision");
    EXPECT_EQ(errors[1].field, "bi.steam.value");
    EXPECT_EQ(errors[2].field, "leak.test_minutes.value");
    EXPECT_EQ(errors[3].field, "extra");
    EXPECT_TRUE(
        std::is_sorted(errors.begin(), errors.end(),
                       [](const PolicyError& a, const PolicyError& b) { return a.line < b.line; }));
    EXPECT_THAT(textOf(errors[0]), HasSubstr("policy.toml:9: revision: must be a whole number"));
}

TEST(PolicyFile, SaysWhereItIsNoToml)
{
    for (const std::string& text :
         {std::string("policy_version = = 1\n"), std::string("[a\n"), std::string("a = \"\xff\"\n"),
          std::string(defaultPolicyText()) + "[bi.steam]\nvalue = \"weekly\"\n"}) {
        const auto errors = errorsOf(text);
        ASSERT_EQ(errors.size(), 1U);
        EXPECT_THAT(errors[0].message, HasSubstr("cannot be read as TOML; a line is"));
        EXPECT_GE(errors[0].line, 1);
    }
    const auto errors = errorsOf("policy_version = 1\nid = us\n");
    ASSERT_EQ(errors.size(), 1U);
    EXPECT_THAT(textOf(errors[0]),
                ::testing::StartsWith("policy.toml:2: column 6: cannot be read"));
}

TEST(PolicyFile, ErrorsRepeatNothingThatCannotBeSeen)
{
    const auto errors = errorsOf("\"a\u202Eb\" = 1\n" + std::string(defaultPolicyText()));
    ASSERT_EQ(errors.size(), 1U);
    EXPECT_THAT(textOf(errors[0]), HasSubstr("a<U+202E>b: is not known here"));
}

TEST(MilderValues, AreThoseThatTheFileNamesAsMilder)
{
    EXPECT_THAT(milderValues(defaultPolicyText()), IsEmpty());
    std::string text(defaultPolicyText());
    std::vector<MilderValue> expected;
    // every "(milder)" of the default policy's file, in its order
    for (std::size_t at = 0; (at = text.find(" (milder)", at)) != std::string::npos; ++at) {
        const std::size_t word = text.find_last_of(" :", at - 1) + 1;
        const std::string milder = text.substr(word, at - word);
        const std::size_t section = text.find('[', at) + 1;
        const std::size_t value = text.find("value = \"", at) + 9;
        const std::string before = text.substr(value, text.find('"', value) - value);
        text.replace(value, before.size(), milder);
        expected.push_back(
            {static_cast<int>(
                 std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(value), '\n'))
                 + 1,
             text.substr(section, text.find(']', section) - section) + ".value", milder, before});
    }
    ASSERT_GE(expected.size(), 4U);
    EXPECT_EQ(expected.back().field, "implant.hold.value");
    EXPECT_EQ(milderValues(text), expected);
}

TEST(PolicyFile, MayBeEmptyOrOfOtherKindsWithoutHarm)
{
    EXPECT_EQ(errorsOf("").size(), settings::all.size() + 4);
    for (const char* text : {"leak = 5\n", "leak = []\n", "[[leak]]\n", "leak.settle_minutes = 5\n",
                             "bi.steam.value = [[1]]\n"}) {
        EXPECT_FALSE(errorsOf(text).empty()) << text;
    }
    EXPECT_THAT(errorsOf(defaultPolicyText()), IsEmpty());
}

} // namespace loadwarden
