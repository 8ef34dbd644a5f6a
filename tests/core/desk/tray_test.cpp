#include "core/desk/tray.h"
#include "core/words/say_tray.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

// What is said to somebody who stands before a tray.

namespace loadwarden::testing {
namespace {

class Trays : public ::testing::Test {
protected:
    std::optional<TraySheet> tray(const std::string& label)
    {
        ReadSnapshot snapshot(department.office().connection());
        return trayOf(snapshot, department.office().entries(), label, department.office().now());
    }
    TrayStand standOf(const std::string& label)
    {
        const auto found = tray(label);
        EXPECT_TRUE(found.has_value());
        return found ? found->stand : TrayStand::notUnderstood;
    }
    void sign(const std::string& cycle, Verdict meaning)
    {
        must(Dispositions(department.office())
                 .sign(department.lead(), department.signature(department.lead(), leadPin),
                       sightFrom(department.view(cycle)), meaning));
    }

    WorkingDepartment department;
};

TEST_F(Trays, AreFollowedFromTheLoadToTheirUse)
{
    EXPECT_FALSE(tray("I1"));
    EXPECT_FALSE(tray(""));
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    const std::string item = WorkingDepartment::partOf("it", load);
    EXPECT_EQ(standOf("I1"), TrayStand::waits);
    EXPECT_EQ(tray("I1")->answer(), TrayAnswer::mayNot);
    EXPECT_FALSE(tray("I1")->findings.empty());
    department.readLoad(load);
    EXPECT_EQ(standOf(" i1 "), TrayStand::notSigned) << "as a person types it";
    sign(load, Verdict::release);
    const auto released = tray("I1");
    ASSERT_TRUE(released);
    EXPECT_EQ(released->stand, TrayStand::released);
    EXPECT_EQ(released->answer(), TrayAnswer::mayBeUsed);
    EXPECT_EQ(released->lot, department.view(load).lot());
    ASSERT_TRUE(released->signature);
    EXPECT_EQ(released->signature->meaning, Verdict::release);
    EXPECT_TRUE(released->findings.empty());
    EXPECT_FALSE(say(*released, {}).checks.empty());

    department.record(department.second(), ItemUsed{"case 7"}, {item, load});
    EXPECT_EQ(standOf("I1"), TrayStand::used);
    EXPECT_THAT(say(*tray("I1"), {}).why, ::testing::HasSubstr("case 7"));
}

TEST_F(Trays, ThatWereReleasedAndAreWorseNowMayNotBeUsed)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    const std::string item = WorkingDepartment::partOf("it", load);
    department.readLoad(load);
    sign(load, Verdict::release);
    department.record(department.second(), PackageChecked{.dry = false}, {item, load});
    const auto wet = tray("I1");
    ASSERT_TRUE(wet);
    EXPECT_EQ(wet->answer(), TrayAnswer::mayNot);
    EXPECT_THAT(wet->stand, ::testing::AnyOf(TrayStand::fails, TrayStand::worseSince));
    EXPECT_FALSE(wet->findings.empty());
    EXPECT_TRUE(say(*wet, {}).checks.empty());
}

TEST_F(Trays, OfWhichNobodyReleasedTheLoadMayNotBeUsed)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    sign(load, Verdict::quarantine);
    EXPECT_EQ(standOf("I1"), TrayStand::signedHeld);
}

TEST_F(Trays, ThatWereReleasedInAnEmergencyAreForOneCase)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::yes);
    const std::string item = WorkingDepartment::partOf("it", load);
    department.readLoad(load);
    EXPECT_EQ(standOf("I1"), TrayStand::waits);
    const SignedIn boss = department.supervisor();
    must(Dispositions(department.office())
             .releaseInEmergency(boss, department.signature(boss, supervisorPin),
                                 sightFrom(department.view(load)), item,
                                 {"case 7", "operating room lead", "trauma", "a second set"}));
    const auto urgent = tray("I1");
    ASSERT_TRUE(urgent);
    EXPECT_EQ(urgent->stand, TrayStand::emergency);
    EXPECT_EQ(urgent->answer(), TrayAnswer::askLead);
    EXPECT_EQ(urgent->caseReference, "case 7");
}

TEST_F(Trays, AreSterilizedOnlyOnceTheCycleHasEnded)
{
    department.passBowieDick();
    const std::string load = must(reserveCycle(department.office(), department.operating(),
                                               {.sterilizer = "sz-1", .specification = "sp-1"}))
                                 .cycle;
    department.record(department.operating(), ItemAdded{.label = "T-9"}, {"it-9", load});
    EXPECT_EQ(standOf("T-9"), TrayStand::notSterilized);
    EXPECT_EQ(tray("T-9")->answer(), TrayAnswer::mayNot);
    department.record(department.operating(), ItemRemoved{"another set"}, {"it-9", load});
    EXPECT_EQ(standOf("T-9"), TrayStand::leftLoad);
}

TEST_F(Trays, AreFoundInTheLoadIntoWhichTheyWereMoved)
{
    const auto reserve = [&] {
        return must(reserveCycle(department.office(), department.operating(),
                                 {.sterilizer = "sz-1", .specification = "sp-1"}))
            .cycle;
    };
    const std::string to = reserve();
    const std::string from = reserve(); // later, and yet it is not there
    department.record(department.operating(), ItemAdded{.label = "T-9"}, {"it-9", from});
    EXPECT_EQ(tray("T-9")->cycle, from);
    department.record(department.operating(), ItemMoved{.from = from, .to = to, .why = "full"},
                      {"it-9", from, to});
    const auto moved = tray("T-9");
    ASSERT_TRUE(moved);
    EXPECT_EQ(moved->cycle, to);
    EXPECT_EQ(moved->stand, TrayStand::notSterilized);
}

TEST_F(Trays, OfALoadBeforeTheSetWasPackedAnewSayNothing)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    sign(load, Verdict::release);
    ASSERT_EQ(standOf("I1"), TrayStand::released);
    // The set comes back, is packed anew under its label, and is taken out before the cycle.
    const std::string next = must(reserveCycle(department.office(), department.operating(),
                                               {.sterilizer = "sz-1", .specification = "sp-1"}))
                                 .cycle;
    department.record(department.operating(), ItemAdded{.label = "I1"}, {"it-9", next});
    department.record(department.operating(), ItemRemoved{"soiled"}, {"it-9", next});
    EXPECT_EQ(standOf("I1"), TrayStand::leftLoad);
    EXPECT_EQ(tray("I1")->answer(), TrayAnswer::mayNot);
}

TEST_F(Trays, ThatWereUsedAreNotUsableBecauseTheyCameBack)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    const std::string item = WorkingDepartment::partOf("it", load);
    department.readLoad(load);
    sign(load, Verdict::release);
    department.record(department.second(), ItemUsed{"case 7"}, {item, load});
    department.record(department.second(), ItemReturned{"for reprocessing"}, {item, load});
    EXPECT_EQ(standOf("I1"), TrayStand::used);
    EXPECT_NE(tray("I1")->answer(), TrayAnswer::mayBeUsed);
}

// A label that recurs in each of many loads: the newest answers, not the first hundred by chance.
TEST_F(Trays, OfManyLoadsTheNewestAnswers)
{
    std::string newest;
    for (int i = 0; i < 120; ++i) {
        newest = must(reserveCycle(department.office(), department.operating(),
                                   {.sterilizer = "sz-1", .specification = "sp-1"}))
                     .cycle;
        // Ids are random in the field; the last of these comes in their middle.
        const int place = i == 119 ? 60 : i < 60 ? i : i + 1;
        std::string id = std::to_string(1000 + place);
        department.record(department.operating(), ItemAdded{.label = "T-9"},
                          {"it-" + id, newest});
        department.setClock(department.now() + Duration::minutes(1));
    }
    EXPECT_EQ(tray("T-9")->cycle, newest);
}

// Whatever is to be done, it is said; and only what may be used is opened.
TEST(WhatIsSaidOfATray, HasAnAnswerAReasonAndWhatToDo)
{
    for (int stand = 0; stand <= static_cast<int>(TrayStand::released); ++stand) {
        TraySheet tray;
        tray.stand = static_cast<TrayStand>(stand);
        tray.lot = "1-2031-063-02";
        const TraySaid said = say(tray, {});
        EXPECT_FALSE(said.answer.empty()) << stand;
        EXPECT_TRUE(said.why.find('.') != std::string::npos) << stand;
        EXPECT_TRUE(said.next.ends_with('.')) << stand;
        EXPECT_EQ(said.checks.empty(), tray.answer() == TrayAnswer::mayNot) << stand;
        EXPECT_EQ(tray.answer() == TrayAnswer::mayBeUsed, tray.stand == TrayStand::released);
    }
    EXPECT_EQ(sayUnknownTray().answer, "May not be used");
}

} // namespace
} // namespace loadwarden::testing
