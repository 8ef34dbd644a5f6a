#include "core/store/verify.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

namespace loadwarden::testing {
namespace {

Sight sightOn(WorkingDepartment& department, const std::string& cycle)
{
    return sightFrom(department.view(cycle));
}

TEST(MainJob, FromFoundingToARelease)
{
    WorkingDepartment department;
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    EXPECT_EQ(department.view(load).decision.verdict, Verdict::quarantine);
    department.readLoad(load);
    department.incubate(load);
    department.readBiological(load, local("08:40", "2031-03-05"));

    const CycleView view = department.view(load);
    EXPECT_EQ(view.lot(), "1-2031-063-02");
    EXPECT_EQ(view.folded.phase, Phase::awaitingDecision);
    ASSERT_EQ(view.decision.verdict, Verdict::release) << sightOf(view);
    Dispositions dispositions(department.office());
    must(dispositions.sign(department.operating(),
                           department.signature(department.operating(), operatorPin),
                           sightFrom(view), Verdict::release));
    const CycleView after = department.view(load);
    EXPECT_EQ(after.folded.phase, Phase::disposed);
    EXPECT_EQ(after.folded.digest, view.folded.digest);

    NoProgress progress;
    EXPECT_TRUE(verifyJournal(department.office().connection(), {}, progress).sound());
}

TEST(MainJob, AnImplantWaitsForItsVialAndForALead)
{
    WorkingDepartment department;
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::yes);
    department.readLoad(load);
    department.incubate(load);
    Dispositions dispositions(department.office());
    department.setClock(local("09:00"));
    const SignedIn& lead = department.lead();
    EXPECT_EQ(whyOf(dispositions.sign(lead, department.signature(lead, leadPin),
                                      sightOn(department, load), Verdict::release)),
              RefusalWhy::notReleasable);
    department.readBiological(load, local("08:40", "2031-03-05"));
    ASSERT_EQ(department.view(load).decision.verdict, Verdict::release)
        << sightOf(department.view(load));
    const SignedIn& operating = department.operating();
    EXPECT_EQ(whyOf(dispositions.sign(operating, department.signature(operating, operatorPin),
                                      sightOn(department, load), Verdict::release)),
              RefusalWhy::roleTooLow);
    // The stricter is open to anyone who records.
    must(dispositions.sign(operating, department.signature(operating, operatorPin),
                           sightOn(department, load), Verdict::quarantine));
    must(dispositions.sign(lead, department.signature(lead, leadPin), sightOn(department, load),
                           Verdict::release));
    EXPECT_EQ(department.view(load).folded.phase, Phase::disposed);
}

TEST(MainJob, AnEmergencyReleaseIsASupervisorsAgainstQuarantineOnly)
{
    WorkingDepartment department;
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::yes);
    department.readLoad(load);
    department.incubate(load);
    department.setClock(local("09:00"));
    const Emergency emergency{"case 7", "operating room lead", "trauma", "a second set"};
    const std::string item = WorkingDepartment::partOf("it", load);
    Dispositions dispositions(department.office());
    const SignedIn& lead = department.lead();
    EXPECT_EQ(whyOf(dispositions.releaseInEmergency(lead, department.signature(lead, leadPin),
                                                    sightOn(department, load), item, emergency)),
              RefusalWhy::roleTooLow);
    const SignedIn boss = department.supervisor();
    must(dispositions.releaseInEmergency(boss, department.signature(boss, supervisorPin),
                                         sightOn(department, load), item, emergency));
    // It is no disposition of the load, and changes no verdict.
    EXPECT_EQ(department.view(load).decision.verdict, Verdict::quarantine);
    EXPECT_EQ(department.view(load).folded.phase, Phase::awaitingDecision);
    department.readBiological(load, local("08:40", "2031-03-05"), Seen::growth);
    EXPECT_EQ(department.view(load).decision.verdict, Verdict::reprocess);
    EXPECT_EQ(whyOf(dispositions.releaseInEmergency(boss, department.signature(boss, supervisorPin),
                                                    sightOn(department, load), item, emergency)),
              RefusalWhy::notReleasable);
}

TEST(Signing, IsRefusedOnAStaleSightWithWhatHasChanged)
{
    WorkingDepartment department;
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    department.incubate(load);
    department.readBiological(load, local("08:40", "2031-03-05"));
    const Sight sight = sightOn(department, load);
    const std::string external = WorkingDepartment::partOf("ci-e", load);
    const Appended late = department.record(department.second(),
                                            ChemicalRead{Seen::endColourPartly}, {external, load});
    Dispositions dispositions(department.office());
    const auto answer = dispositions.sign(department.operating(),
                                          department.signature(department.operating(), operatorPin),
                                          sight, Verdict::release);
    ASSERT_EQ(whyOf(answer), RefusalWhy::stale);
    const std::vector<CameSince>& since = std::get<Refusal>(answer).since;
    ASSERT_EQ(since.size(), 1U);
    EXPECT_EQ(since[0].seq, late.firstSeq);
    EXPECT_EQ(since[0].kind, "chemical.read");
    EXPECT_EQ(since[0].thing, external);
    EXPECT_EQ(since[0].value, "end-colour-partly");
    EXPECT_EQ(since[0].by, "Name of st-o2");
    EXPECT_EQ(since[0].at, late.recordedAt.at);
    EXPECT_EQ(department.view(load).folded.phase, Phase::awaitingDecision);
}

TEST(Signing, IsRefusedWhereAnotherFactHasChangedTheDecision)
{
    WorkingDepartment department;
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    department.incubate(load);
    department.readBiological(load, local("08:40", "2031-03-05"));
    const Sight sight = sightOn(department, load);
    // Of the control, not of the load.
    department.record(department.second(), BiologicalRead{Seen::noGrowth},
                      {WorkingDepartment::partOf("bc", load)});
    Dispositions dispositions(department.office());
    const auto sign = [&](const Sight& seen) {
        return dispositions.sign(department.operating(),
                                 department.signature(department.operating(), operatorPin), seen,
                                 Verdict::release);
    };
    EXPECT_EQ(whyOf(sign(sight)), RefusalWhy::changed);
    EXPECT_EQ(whyOf(sign(sightOn(department, load))), std::nullopt);
}

TEST(Signing, AChangeAfterwardsShows)
{
    WorkingDepartment department;
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    department.incubate(load);
    department.readBiological(load, local("08:40", "2031-03-05"));
    Dispositions dispositions(department.office());
    must(dispositions.sign(department.operating(),
                           department.signature(department.operating(), operatorPin),
                           sightOn(department, load), Verdict::release));
    department.record(department.second(), PackageChecked{.dry = false},
                      {WorkingDepartment::partOf("it", load), load});
    EXPECT_EQ(department.view(load).folded.phase, Phase::evidenceChanged);
}

TEST(Desk, RefusesWhatDoesNotFit)
{
    WorkingDepartment department;
    department.passBowieDick();
    department.setClock(local("06:40"));
    const SignedIn& who = department.operating();
    Recorder recorder(department.office());
    const auto why = [&](AnyAct act, std::vector<std::string> subjects) {
        return whyOf(
            recorder.record(who, {.act = std::move(act), .subjects = std::move(subjects)}));
    };
    EXPECT_EQ(whyOf(reserveCycle(department.office(), who, {.sterilizer = "sz-9"})),
              RefusalWhy::unknown);
    const std::string load = must(reserveCycle(department.office(), who,
                                               {.sterilizer = "sz-1", .specification = "sp-1"}))
                                 .cycle;
    const JournalTime now{local("06:40"), -360};
    EXPECT_EQ(why(CycleEnded{.shown = now}, {load}), RefusalWhy::notStarted);
    EXPECT_EQ(why(CycleStarted{.shown = now}, {"ld-none"}), RefusalWhy::unknown);
    EXPECT_EQ(why(ChemicalRead{Seen::unclear}, {"ci-bd", load}), RefusalWhy::notEnded);
    EXPECT_EQ(why(ItemAdded{.label = "I1", .packaging = "pk-9"}, {"it-1", load}),
              RefusalWhy::unknown);
    EXPECT_EQ(why(ItemAdded{.label = ""}, {"it-1", load}), RefusalWhy::malformed);
    EXPECT_EQ(why(CycleStarted{.shown = now}, {load}), std::nullopt);
    EXPECT_EQ(why(CycleStarted{.shown = now}, {load}), RefusalWhy::alreadyStarted);
    EXPECT_EQ(why(CycleEnded{.shown = now}, {load}), std::nullopt);
    EXPECT_EQ(why(CycleEnded{.shown = now}, {load}), RefusalWhy::alreadyEnded);
    EXPECT_EQ(why(ChemicalRead{Seen::unclear}, {"ci-bd", load}), RefusalWhy::notPlaced);
    EXPECT_EQ(why(LeakRead{}, {load}), RefusalWhy::notATest);
    EXPECT_EQ(whyOf(recorder.record(who, {.act = PhysicalRead{Parameter::temperature,
                                                              {"132", {Unit::celsius, 132'000}}},
                                          .subjects = {load},
                                          .happenedAt = JournalTime{local("06:41"), -360}})),
              RefusalWhy::inFuture);
    EXPECT_EQ(whyOf(recorder.record(who, {.act = PhysicalRead{Parameter::temperature,
                                                              {"132", {Unit::celsius, 132'000}}},
                                          .subjects = {load},
                                          .happenedAt = JournalTime{local("06:39"), -360}})),
              RefusalWhy::beforeEnd);
    EXPECT_EQ(
        whyOf(recorder.record(department.supervisor(),
                              {.act = SterilizerRecorded{.name = "S"}, .subjects = {"sz-lower"}},
                              department.signature(department.supervisor(), supervisorPin))),
        RefusalWhy::badId);
}

TEST(Desk, SeveralActsAreRecordedTogetherOrNotAtAll)
{
    WorkingDepartment department;
    department.setClock(local("06:40"));
    const SignedIn& who = department.operating();
    const std::string load = must(reserveCycle(department.office(), who,
                                               {.sterilizer = "sz-1", .specification = "sp-1"}))
                                 .cycle;
    const JournalTime now{local("06:40"), -360};
    Recorder recorder(department.office());
    const std::vector<ToRecord> good = {
        {.act = CycleStarted{.shown = now}, .subjects = {load}},
        {.act = CycleEnded{.shown = now}, .subjects = {load}},
        {.act = PhysicalRead{Parameter::temperature, {"132", {Unit::celsius, 132'000}}},
         .subjects = {load}}};
    std::vector<ToRecord> bad = good;
    bad.push_back({.act = CycleStarted{.shown = now}, .subjects = {load}});
    EXPECT_EQ(whyOf(recorder.record(who, bad)), RefusalWhy::alreadyStarted);
    EXPECT_FALSE(department.view(load).folded.record.load.start.has_value());
    const Appended appended = must(recorder.record(who, good));
    EXPECT_EQ(appended.head.seq - appended.firstSeq, 2);
    EXPECT_TRUE(department.view(load).folded.record.load.end.has_value());
}

TEST(Corrections, NameTheCurrentVersionAndGiveAReason)
{
    WorkingDepartment department;
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    const std::string external = WorkingDepartment::partOf("ci-e", load);
    const Appended read =
        department.record(department.second(), ChemicalRead{Seen::unclear}, {external, load});
    Recorder recorder(department.office());
    const SignedIn& lead = department.lead();
    const auto amend = [&](std::int64_t seq, const std::string& reason, AnyAct act,
                           std::vector<std::string> subjects) {
        return recorder.record(lead,
                               {.act = std::move(act),
                                .subjects = std::move(subjects),
                                .reason = reason,
                                .supersedes = seq},
                               department.signature(lead, leadPin));
    };
    const ChemicalRead partly{Seen::endColourPartly};
    EXPECT_EQ(whyOf(amend(9'999, "why", partly, {external, load})), RefusalWhy::noSuchEntry);
    EXPECT_EQ(whyOf(amend(read.firstSeq, "", partly, {external, load})), RefusalWhy::reasonNeeded);
    EXPECT_EQ(whyOf(amend(read.firstSeq, "why", PackageChecked{}, {external, load})),
              RefusalWhy::malformed);
    EXPECT_EQ(whyOf(amend(read.firstSeq, "why", partly, {"ci-other", load})),
              RefusalWhy::otherFact);
    EXPECT_EQ(whyOf(recorder.record(lead, {.act = partly,
                                           .subjects = {external, load},
                                           .reason = "why",
                                           .supersedes = read.firstSeq})),
              RefusalWhy::pinNeeded);
    const Appended amended = must(amend(read.firstSeq, "misread", partly, {external, load}));
    const auto again = amend(read.firstSeq, "why", partly, {external, load});
    ASSERT_EQ(whyOf(again), RefusalWhy::notCurrent);
    EXPECT_EQ(std::get<Refusal>(again).seq, amended.firstSeq);
    // Who has said it himself does not take it away.
    EXPECT_EQ(whyOf(amend(amended.firstSeq, "wrong load", EntryVoided{}, {external, load})),
              RefusalWhy::secondPerson);
    must(recorder.record(department.supervisor(),
                         {.act = EntryVoided{},
                          .subjects = {external, load},
                          .reason = "wrong load",
                          .supersedes = amended.firstSeq},
                         department.signature(department.supervisor(), supervisorPin)));
}

TEST(Founding, LeavesNothingWhereItIsRefusedOrSomethingIsThere)
{
    TempFolder folder;
    const FixedClock clock(local("05:00"));
    CountingIdSource ids;
    const Workplace place{.clock = clock,
                          .ids = ids,
                          .workstation = "ws-1",
                          .keep = folder / "keep",
                          .pinCost = PinCost::least()};
    Founding founding{.facility = "F",
                      .timeZone = "America/Chicago",
                      .supervisorId = "st-1",
                      .supervisorName = "S",
                      .supervisorPin = "123456"};
    EXPECT_EQ(whyOf(foundDepartment(folder / "a", founding, place)), RefusalWhy::pinTooEasy);
    founding.supervisorPin = supervisorPin;
    founding.timeZone = "Mars/Base";
    EXPECT_EQ(whyOf(foundDepartment(folder / "a", founding, place)), RefusalWhy::malformed);
    founding.timeZone = "America/Chicago";
    founding.supervisorName = "";
    EXPECT_EQ(whyOf(foundDepartment(folder / "a", founding, place)), RefusalWhy::malformed);
    founding.supervisorName = "S";
    founding.atmosphereKPa = "1013";
    EXPECT_EQ(whyOf(foundDepartment(folder / "a", founding, place)), RefusalWhy::malformed);
    founding.atmosphereKPa = "";
    for (const auto& each : std::filesystem::directory_iterator(folder.path())) {
        EXPECT_EQ(each.path().filename(), "keep");
    }
    must(foundDepartment(folder / "a", founding, place));
    EXPECT_EQ(faultOf([&] { (void)foundDepartment(folder / "a", founding, place); }),
              StoreFault::exists);
}

} // namespace
} // namespace loadwarden::testing
