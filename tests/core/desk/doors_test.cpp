#include "core/desk/people.h"
#include "core/desk/upkeep.h"
#include "core/exchange/policy_reader.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

// Ways in which something could be recorded that must not be.

namespace loadwarden::testing {
namespace {

class Doors : public ::testing::Test {
protected:
    std::optional<RefusalWhy> why(const SignedIn& who, const std::string& pin, ToRecord act)
    {
        return whyOf(
            Recorder(department.office()).record(who, act, department.signature(who, pin)));
    }
    std::optional<RefusalWhy> bossWhy(AnyAct act, std::vector<std::string> subjects,
                                      std::int64_t supersedes = 0)
    {
        return why(department.supervisor(), supervisorPin,
                   {.act = std::move(act),
                    .subjects = std::move(subjects),
                    .reason = supersedes == 0 ? "" : "why",
                    .supersedes = supersedes});
    }

    WorkingDepartment department;
};

TEST_F(Doors, WhatIsTypedFromPaperNeedsItsTimeAndTheRoleOfItsAuthor)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    ToRecord read{.act = ChemicalRead{Seen::endColourReached},
                  .subjects = {WorkingDepartment::partOf("ci-e", load), load},
                  .paper = FromPaper{"st-o2", Role::operating}};
    EXPECT_EQ(why(department.operating(), operatorPin, read), RefusalWhy::timeNeeded);
    read.happenedAt = JournalTime{local("07:50"), -360};
    read.paper->role = Role::supervisor;
    EXPECT_EQ(why(department.operating(), operatorPin, read), RefusalWhy::paperRole);
    read.paper = FromPaper{"st-nobody", Role::operating};
    EXPECT_EQ(why(department.operating(), operatorPin, read), RefusalWhy::personUnknown);
    read.paper = FromPaper{"st-o2", Role::operating};
    EXPECT_EQ(why(department.operating(), operatorPin, read), std::nullopt);
}

TEST_F(Doors, ABadgeThatReadsAsAnotherIsRefusedAndAnIdIsAlwaysItsOwn)
{
    const auto boss = [&](const std::string& badge) {
        return StaffRecorded{.name = "Boss", .role = Role::supervisor, .badge = badge};
    };
    EXPECT_EQ(bossWhy(boss("ST-O2"), {"st-sup"}), RefusalWhy::badgeTaken);
    EXPECT_EQ(bossWhy(boss("name of st-o2"), {"st-sup"}), RefusalWhy::badgeTaken);
    EXPECT_EQ(bossWhy(boss("B-2"), {"st-sup"}), std::nullopt);
    ReadSnapshot snapshot(department.office().connection());
    EXPECT_EQ(personById(peopleOf(snapshot), "B-2"), std::nullopt);
    EXPECT_EQ(findPerson(peopleOf(snapshot), "b-2")->id, "st-sup");
}

TEST_F(Doors, SomebodyCanAlwaysSignAsSupervisor)
{
    (void)department.hire("st-two", Role::supervisor, "792817");
    const SignedIn boss = department.supervisor();
    const std::vector<ToRecord> both = {
        {.act = StaffRecorded{.name = "A", .role = Role::lead}, .subjects = {"st-two"}},
        {.act = StaffRecorded{.name = "B", .role = Role::lead}, .subjects = {"st-sup"}}};
    EXPECT_EQ(whyOf(Recorder(department.office())
                        .record(boss, both, department.signature(boss, supervisorPin))),
              RefusalWhy::lastSupervisor);
    // One of them may go; a supervisor without a PIN is nobody who can sign.
    EXPECT_EQ(bossWhy(StaffRecorded{.name = "C", .role = Role::supervisor}, {"st-three"}),
              std::nullopt);
    EXPECT_EQ(bossWhy(StaffRecorded{.name = "A", .role = Role::lead}, {"st-two"}), std::nullopt);
    EXPECT_EQ(bossWhy(StaffRecorded{.name = "B", .role = Role::lead}, {"st-sup"}),
              RefusalWhy::lastSupervisor);
}

TEST_F(Doors, APolicyIsOneThatThisProgramDecidesBy)
{
    const std::string good(defaultPolicyText());
    EXPECT_EQ(bossWhy(PolicyRecorded{"p", 1, hexOf(hashOf("not toml")), "not toml"}, {"po-2"}),
              RefusalWhy::malformed);
    EXPECT_EQ(bossWhy(PolicyRecorded{"p", 1, hexOf(hashOf("other")), good}, {"po-2"}),
              RefusalWhy::malformed);
    EXPECT_EQ(bossWhy(PolicyRecorded{"p", 1, hexOf(hashOf(good)), good}, {"po-2"}), std::nullopt);
}

TEST_F(Doors, LotControlNumbersAreReservedAndNotTyped)
{
    EXPECT_EQ(bossWhy(CycleReserved{.lot = "1-2031-063-01"}, {"ld-0", "sz-1"}),
              RefusalWhy::otherDoor);
    const auto reserved = must(reserveCycle(department.office(), department.operating(),
                                            {.sterilizer = "sz-1", .specification = "sp-1"}));
    CycleReserved amended{.lot = "1-2031-063-99"};
    EXPECT_EQ(bossWhy(amended, {reserved.cycle, "sz-1", "sp-1"}, reserved.appended.firstSeq),
              RefusalWhy::notCorrectable);
    ReadSnapshot snapshot(department.office().connection());
    EXPECT_EQ(findCycle(snapshot, reserved.lot), reserved.cycle);
    EXPECT_EQ(findCycle(snapshot, reserved.lot + "9"), std::nullopt);
}

TEST_F(Doors, ALotControlNumberIsNotGivenAgainWhereItsTableWasEmptied)
{
    const auto first =
        must(reserveCycle(department.office(), department.operating(), {.sterilizer = "sz-1"}));
    {
        WriteTransaction transaction(department.office().connection());
        transaction.define("DROP TRIGGER j_lot_no_delete");
        transaction.define("DELETE FROM j_lot");
        transaction.commit();
    }
    const auto second =
        must(reserveCycle(department.office(), department.operating(), {.sterilizer = "sz-1"}));
    EXPECT_NE(first.lot, second.lot);
}

TEST_F(Doors, ActsThatAreNoneAreRefusedBeforeAnythingLooksAtThem)
{
    EXPECT_EQ(bossWhy(StaffRecorded{.name = "N", .role = Role::lead}, {}), RefusalWhy::malformed);
    EXPECT_EQ(bossWhy(SterilizerRecorded{.name = "S"}, {"s"}), RefusalWhy::malformed);
    EXPECT_EQ(bossWhy(IncubatorRecorded{.name = ""}, {"in-2"}), RefusalWhy::malformed);
}

TEST_F(Doors, AnAnnotationBringsNothingIntoALoad)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    const std::int64_t end = department.view(load).folded.history.back().seq;
    EXPECT_EQ(bossWhy(EntryAnnotated{"note"}, {"ci-zz", load}, end), RefusalWhy::otherFact);
    EXPECT_EQ(bossWhy(EntryAnnotated{"note"}, {load}, end), std::nullopt);
    EXPECT_EQ(bossWhy(ChemicalRead{Seen::endColourReached}, {"ci-zz", load}), RefusalWhy::unknown);
}

TEST_F(Doors, AnItemIsMovedOutOfTheLoadThatHasItAndItsIndicatorsGoWithIt)
{
    department.setClock(local("06:30"));
    const SignedIn& who = department.operating();
    const auto reserve = [&] {
        return must(reserveCycle(department.office(), who,
                                 {.sterilizer = "sz-1", .specification = "sp-1"}))
            .cycle;
    };
    const std::string from = reserve();
    const std::string to = reserve();
    ItemAdded item{.label = "I1", .implant = Implant::no, .packaging = "pk-1"};
    item.external = PlacedIndicator{"ci-1", "pr-1", "pl-1", {}};
    department.record(who, item, {"it-1", from, "ci-1"});
    Recorder recorder(department.office());
    const auto why = [&](AnyAct act, std::vector<std::string> subjects) {
        return whyOf(
            recorder.record(who, {.act = std::move(act), .subjects = std::move(subjects)}));
    };
    EXPECT_EQ(why(ItemAdded{.label = "i 1", .packaging = "pk-1"}, {"it-2", from}),
              RefusalWhy::alreadyThere)
        << "two items of one label";
    EXPECT_EQ(why(ItemMoved{to, from, "why"}, {"it-1", to, from}), RefusalWhy::notPlaced);
    EXPECT_EQ(why(ItemMoved{from, to, "why"}, {"it-1", from, to}), std::nullopt);
    for (const std::string& cycle : {from, to}) {
        department.record(who, CycleStarted{.shown = {local("06:30"), -360}}, {cycle});
        department.record(who, CycleEnded{.shown = {local("06:30"), -360}}, {cycle});
    }
    EXPECT_EQ(why(ChemicalRead{Seen::unchanged}, {"ci-1", from}), RefusalWhy::notPlaced);
    EXPECT_EQ(why(ChemicalRead{Seen::unchanged}, {"ci-1", to}), std::nullopt);
}

TEST_F(Doors, AnItemGoesOutWhenItIsReleasedAndAnEmergencyTakesACycleThatEnded)
{
    department.setClock(local("06:30"));
    const SignedIn boss = department.supervisor();
    const auto reserved = must(reserveCycle(department.office(), department.operating(),
                                            {.sterilizer = "sz-1", .specification = "sp-1"}));
    department.record(department.operating(),
                      ItemAdded{.label = "I9", .implant = Implant::yes, .packaging = "pk-1"},
                      {"it-9", reserved.cycle});
    EXPECT_EQ(whyOf(Dispositions(department.office())
                        .releaseInEmergency(boss, department.signature(boss, supervisorPin),
                                            sightFrom(department.view(reserved.cycle)), "it-9",
                                            {"case", "surgeon", "why", "what"})),
              RefusalWhy::notEnded);

    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    const std::string item = WorkingDepartment::partOf("it", load);
    EXPECT_EQ(bossWhy(ItemDistributed{"operating room"}, {item, load}), RefusalWhy::notReleased);
    must(Dispositions(department.office())
             .sign(department.operating(),
                   department.signature(department.operating(), operatorPin),
                   sightFrom(department.view(load)), department.view(load).decision.verdict));
    const bool released = department.view(load).decision.verdict == Verdict::release;
    EXPECT_EQ(bossWhy(ItemDistributed{"operating room"}, {item, load}),
              released ? std::nullopt : std::optional(RefusalWhy::notReleased));
}

TEST_F(Doors, ACorrectionWithoutEffectIsRefusedAndSaysWhoseItIs)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    department.incubate(load);
    department.readBiological(load, local("08:40", "2031-03-05"), Seen::growth);
    const std::string vial = WorkingDepartment::partOf("bv", load);
    const SignedIn& who = department.operating();
    const std::int64_t growth = [&] {
        ReadSnapshot snapshot(department.office().connection());
        return JournalReader(snapshot).head().seq;
    }();
    EXPECT_EQ(bossWhy(EntryVoided{}, {vial, load}, growth), RefusalWhy::positiveStays);
    const Appended wet = department.record(who, PackageChecked{.dry = false},
                                           {WorkingDepartment::partOf("it", load), load});
    const ToRecord dry{.act = PackageChecked{.dry = true},
                       .subjects = {WorkingDepartment::partOf("it", load), load},
                       .reason = "why",
                       .supersedes = wet.firstSeq};
    EXPECT_EQ(why(department.second(), operatorPin, dry), RefusalWhy::secondPerson);
    EXPECT_EQ(why(who, operatorPin, dry), RefusalWhy::secondPerson);
    EXPECT_EQ(why(department.lead(), leadPin, dry), std::nullopt);
    EXPECT_EQ(why(department.lead(), leadPin, dry), RefusalWhy::notCurrent);
}

TEST_F(Doors, TheCodeOfWhatWasSeenBelongsToTheNewestEntrySeen)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    Sight sight = sightFrom(department.view(load));
    const auto sign = [&](const Sight& seen) {
        return whyOf(Dispositions(department.office())
                         .sign(department.operating(),
                               department.signature(department.operating(), operatorPin), seen,
                               Verdict::reprocess));
    };
    Sight later = sight;
    ++later.seen;
    EXPECT_EQ(sign(later), RefusalWhy::changed);
    department.record(department.operating(), IncubatorOutOfRange{}, {"in-1"});
    EXPECT_EQ(sign(later), RefusalWhy::changed) << "nobody saw it with that entry";
    EXPECT_EQ(sign(sight), std::nullopt);
}

TEST_F(Doors, AReviewIsOfAFindingThatIsThereByWhoMayReviewIt)
{
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    department.record(department.operating(), AlarmRecorded{"E17"}, {load});
    Dispositions dispositions(department.office());
    const auto review = [&](const SignedIn& who, const std::string& pin, const ReviewAsked& asked) {
        return whyOf(dispositions.review(who, department.signature(who, pin),
                                         sightFrom(department.view(load)), asked));
    };
    const ReviewAsked asked{"alarm.not-listed", "E17", ReviewAnswer::isolated, "a door switch"};
    EXPECT_EQ(review(department.operating(), operatorPin, asked), RefusalWhy::roleTooLow);
    EXPECT_EQ(review(department.lead(), leadPin, {"alarm.not-listed", "E18", {}, "why"}),
              RefusalWhy::noSuchFinding);
    EXPECT_EQ(review(department.lead(), leadPin, {"verification.by-operator", "", {}, "why"}),
              RefusalWhy::notReviewable);
    EXPECT_EQ(review(department.lead(), leadPin, asked), std::nullopt);
    const auto isOpen = [](const Finding& finding) {
        return finding.key == Key::alarmNotListed && finding.outcome == Outcome::review;
    };
    EXPECT_TRUE(std::ranges::none_of(department.view(load).decision.findings, isOpen));
}

TEST_F(Doors, TablesThatWereChangedAreFound)
{
    department.passBowieDick();
    NoProgress progress;
    department.close();
    EXPECT_EQ(compareTables(department.file(), progress).differenceCount, 0);
    department.open();
    for (const char* const table : {"p_mark", "p_own", "p_cycle", "p_subject"}) {
        WriteTransaction transaction(department.office().connection());
        transaction.define(std::string("DELETE FROM ") + table);
        transaction.commit();
    }
    department.close();
    EXPECT_GT(compareTables(department.file(), progress).differenceCount, 0);
}

TEST_F(Doors, ADrillLeavesTheJournalInUse)
{
    NoProgress progress;
    const SignedIn& lead = department.lead();
    must(backUpJournal(department.office(), lead, department.folder() / "backup", progress));
    EXPECT_EQ(whyOf(backUpJournal(department.office(), department.operating(),
                                  department.folder() / "no", progress)),
              RefusalWhy::roleTooLow);
    department.record(department.operating(), IncubatorOutOfRange{}, {"in-1"});
    const RestoredJournal drill = restoreJournal({.backup = department.folder() / "backup",
                                                  .target = department.folder() / "drill",
                                                  .workstation = "ws-1"},
                                                 Restoring::drill, department.place(), progress);
    EXPECT_EQ(drill.lost, 1);
    department.close();
    department.open();
    (void)restoreJournal({.backup = department.folder() / "backup",
                          .target = department.folder() / "real",
                          .workstation = "ws-1"},
                         Restoring::goOn, department.place(), progress);
    department.close();
    EXPECT_EQ(faultOf([&] { department.open(); }), StoreFault::headChanged);
}

} // namespace
} // namespace loadwarden::testing
