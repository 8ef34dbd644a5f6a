// What needs somebody, and the sterilizers' day.
#include "core/desk/kept_today.h"
#include "core/desk/look_up.h"
#include "core/desk/today.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace loadwarden {
namespace {

using loadwarden::testing::leadPin;
using loadwarden::testing::local;
using loadwarden::testing::must;
using loadwarden::testing::operatorPin;
using loadwarden::testing::WorkingDepartment;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::Field;
using ::testing::IsEmpty;
using ::testing::Not;

class TodayOfADepartment : public ::testing::Test {
protected:
    Today today()
    {
        ReadSnapshot snapshot(department.office().connection());
        return todayOf(snapshot, department.office().entries(), department.office().zone(),
                       department.now());
    }

    std::vector<NeedKind> kinds()
    {
        std::vector<NeedKind> kinds;
        for (const Need& need : today().needs) {
            kinds.push_back(need.kind);
        }
        return kinds;
    }

    std::optional<Need> need(NeedKind kind)
    {
        const Today now = today();
        const auto found = std::ranges::find(now.needs, kind, &Need::kind);
        return found == now.needs.end() ? std::nullopt : std::optional(*found);
    }

    LookedUp look(std::string_view text)
    {
        ReadSnapshot snapshot(department.office().connection());
        return lookUp(snapshot, text);
    }

    WorkingDepartment department;
};

TEST_F(TodayOfADepartment, IsKeptUntilSomethingIsRecordedOrTimeGoesBy)
{
    KeptToday kept;
    const Instant first = department.now();
    EXPECT_EQ(kept.of(department.office()).now, first);
    department.setClock(first + Duration::seconds(59));
    EXPECT_EQ(kept.of(department.office()).now, first);
    EXPECT_EQ(kept.of(department.office()).sterilizers.size(), today().sterilizers.size());
    department.setClock(first + KeptToday::longest);
    EXPECT_EQ(kept.of(department.office()).now, department.now());
    // A clock that was set back.
    department.setClock(first);
    EXPECT_EQ(kept.of(department.office()).now, first);
    EXPECT_THAT(kept.of(department.office()).sterilizers.at(0).cycles, IsEmpty());
    department.passBowieDick();
    department.setClock(local("06:10"));
    const Instant read = kept.of(department.office()).now;
    department.runLoad(Implant::no);
    department.setClock(read + Duration::seconds(1));
    EXPECT_EQ(kept.of(department.office()).now, read + Duration::seconds(1)) << "recorded since";
}

TEST_F(TodayOfADepartment, WithoutCyclesNeedsNobodyAndShowsItsSterilizer)
{
    const Today now = today();
    EXPECT_THAT(now.needs, IsEmpty());
    ASSERT_EQ(now.sterilizers.size(), 1U);
    EXPECT_EQ(now.sterilizers[0].name, "S1");
    EXPECT_EQ(now.sterilizers[0].service, ServiceState::inService);
    EXPECT_EQ(now.sterilizers[0].test, PeriodTest::notAsked);
    EXPECT_GT(now.nextChangeAt, now.now);
    EXPECT_LE(now.nextChangeAt, now.dayEnd);
}

TEST_F(TodayOfADepartment, ShowsTheTestOfThePeriodAndAsksForItInTheNext)
{
    department.passBowieDick();
    const Today now = today();
    EXPECT_EQ(now.sterilizers[0].test, PeriodTest::passed);
    ASSERT_EQ(now.sterilizers[0].cycles.size(), 1U);
    EXPECT_EQ(now.sterilizers[0].cycles[0].test, TestResult::passed);
    EXPECT_EQ(now.sterilizers[0].cycles[0].start, local("06:00"));
    EXPECT_EQ(now.sterilizers[0].cycles[0].end, local("06:05"));
    EXPECT_THAT(now.needs, IsEmpty());
    EXPECT_EQ(now.loadsToday, 0);

    department.setClock(local("00:00", "2031-03-05"));
    EXPECT_THAT(kinds(), ElementsAre(NeedKind::testNotRun));
    EXPECT_EQ(need(NeedKind::testNotRun)->at, local("00:00", "2031-03-05"));
    EXPECT_THAT(today().sterilizers[0].cycles, IsEmpty());
}

TEST_F(TodayOfADepartment, AsksForNoTestOfASterilizerThatIsOut)
{
    department.passBowieDick();
    department.setClock(local("00:00", "2031-03-05"));
    department.record(department.operating(),
                      SterilizerTakenOut{ServiceState::outOfService, "door seal"}, {"sz-1"});
    EXPECT_THAT(kinds(), IsEmpty());
    EXPECT_EQ(today().sterilizers[0].service, ServiceState::outOfService);
    EXPECT_EQ(today().sterilizers[0].why, "door seal");
}

TEST_F(TodayOfADepartment, FollowsALoadUntilItIsSigned)
{
    department.passBowieDick();
    const std::string cycle = department.runLoad(Implant::no);
    EXPECT_THAT(kinds(), Contains(NeedKind::printout));
    EXPECT_EQ(need(NeedKind::printout)->cycle, cycle);
    EXPECT_EQ(need(NeedKind::printout)->sterilizer, "sz-1");
    EXPECT_FALSE(need(NeedKind::printout)->findings.empty());

    department.readLoad(cycle);
    EXPECT_THAT(kinds(), ElementsAre(NeedKind::signature));
    EXPECT_FALSE(need(NeedKind::signature)->hasImplant);
    EXPECT_EQ(today().loadsToday, 1);
    EXPECT_EQ(today().signedToday, 0);

    must(Dispositions(department.office())
             .sign(department.operating(),
                   department.signature(department.operating(), operatorPin),
                   sightFrom(department.view(cycle)), Verdict::release));
    EXPECT_THAT(kinds(), IsEmpty());
    EXPECT_EQ(today().signedToday, 1);
    EXPECT_EQ(today().sterilizers[0].cycles.back().signedAs, Verdict::release);

    // Growth afterwards is worse than what was signed, and comes before everything but growth in
    // a load that nobody signed.
    department.incubate(cycle);
    department.readBiological(cycle, local("09:00", "2031-03-05"), Seen::growth);
    EXPECT_EQ(kinds().front(), NeedKind::evidenceWorse);
}

TEST_F(TodayOfADepartment, NamesWhenAVialOfAnImplantLoadIsDue)
{
    department.passBowieDick();
    const std::string cycle = department.runLoad(Implant::yes);
    department.readLoad(cycle);
    department.incubate(cycle);
    ASSERT_THAT(kinds(), Contains(NeedKind::biologicalComing));
    EXPECT_THAT(kinds(), Not(Contains(NeedKind::biologicalDue)));
    EXPECT_EQ(need(NeedKind::biologicalComing)->subject, department.partOf("bv", cycle));
    EXPECT_TRUE(need(NeedKind::biologicalComing)->hasImplant);
    const Instant due = local("08:35", "2031-03-05");

    department.setClock(due - Duration::milliseconds(1));
    EXPECT_EQ(today().nextChangeAt, due);
    department.setClock(due);
    EXPECT_THAT(kinds(), Contains(NeedKind::biologicalDue));
    EXPECT_EQ(need(NeedKind::biologicalDue)->at, due);
}

TEST_F(TodayOfADepartment, KnowsThePcdThatAVialIsIn)
{
    department.passBowieDick();
    const std::string cycle = department.runLoad(Implant::yes);
    department.readLoad(cycle);
    department.incubate(cycle);
    const auto coming = need(NeedKind::biologicalComing);
    ASSERT_TRUE(coming);
    ASSERT_EQ(coming->parts.size(), 1U);
    EXPECT_EQ(coming->parts[0].id, coming->subject);
    EXPECT_EQ(coming->parts[0].pcdMark, "PCD");
}

CycleView viewWith(Verdict verdict, std::vector<Finding> findings)
{
    CycleView view{.id = "ld-1"};
    view.folded.phase = Phase::awaitingDecision;
    view.decision.verdict = verdict;
    view.decision.findings = std::move(findings);
    return view;
}

TEST(Needs, OfALoadThatFailedIsOneAndSaysWhy)
{
    std::vector<Need> needs;
    appendNeeds(viewWith(Verdict::reprocess,
                         {{.key = Key::pcdRejected, .outcome = Outcome::fails, .subject = "pd-1"},
                          {.key = Key::biControl,
                           .outcome = Outcome::waits,
                           .cause = Cause::controlDead,
                           .subject = "bv-1"}}),
                needs);
    ASSERT_EQ(needs.size(), 1U);
    EXPECT_EQ(needs[0].kind, NeedKind::failed);
    ASSERT_EQ(needs[0].findings.size(), 2U);
    EXPECT_EQ(needs[0].findings[0].key, Key::pcdRejected);
}

TEST(Needs, OfALoadThatFailsByItsVialsHaveAReason)
{
    std::vector<Need> needs;
    appendNeeds(viewWith(Verdict::reprocess,
                         {{.key = Key::biLost, .outcome = Outcome::fails, .subject = "bv-1"}}),
                needs);
    ASSERT_EQ(needs.size(), 1U);
    EXPECT_EQ(needs[0].kind, NeedKind::failed);
    EXPECT_EQ(needs[0].findings.size(), 1U);
}

TEST(Needs, OfWhatOnlyAeratesComeLater)
{
    std::vector<Need> needs;
    const Instant over = local("20:00");
    appendNeeds(viewWith(Verdict::quarantine, {{.key = Key::aerationRunning,
                                                .outcome = Outcome::waits,
                                                .changesAt = over}}),
                needs);
    ASSERT_EQ(needs.size(), 1U);
    EXPECT_EQ(needs[0].kind, NeedKind::aerating);
    EXPECT_EQ(needs[0].at, over);
    EXPECT_FALSE(isForNow(needs[0].kind));
    appendNeeds(viewWith(Verdict::quarantine,
                         {{.key = Key::aerationRunning, .outcome = Outcome::waits},
                          {.key = Key::printoutMissing, .outcome = Outcome::waits}}),
                needs);
    EXPECT_EQ(needs[1].kind, NeedKind::printout) << "something can be done now";
}

TEST(Needs, OfAVialThatIsNotThereAskForTheRecordAndNotForAReading)
{
    for (const Key key : {Key::biMissing, Key::implantMissing, Key::routineNone}) {
        std::vector<Need> needs;
        appendNeeds(viewWith(Verdict::quarantine, {{.key = key, .outcome = Outcome::waits}}), needs);
        ASSERT_EQ(needs.size(), 1U);
        EXPECT_EQ(needs[0].kind, NeedKind::otherEvidence);
    }
}

TEST(Needs, OfALoadThatAeratesNoPackageIsLookedAtYet)
{
    std::vector<Need> needs;
    appendNeeds(viewWith(Verdict::quarantine,
                         {{.key = Key::itemNotChecked, .outcome = Outcome::waits, .item = 0},
                          {.key = Key::aerationRunning, .outcome = Outcome::waits}}),
                needs);
    ASSERT_EQ(needs.size(), 1U);
    EXPECT_EQ(needs[0].kind, NeedKind::aerating);
}

TEST(Needs, OfALoadThatIsStillToAerateNoPackageIsLookedAtYet)
{
    for (const Key key : {Key::aerationNotDone, Key::aerationEndAwaited}) {
        std::vector<Need> needs;
        appendNeeds(
            viewWith(Verdict::quarantine,
                     {{.key = key, .outcome = Outcome::waits},
                      {.key = Key::itemNotChecked, .outcome = Outcome::waits, .item = 0},
                      {.key = Key::itemExternalNotRead, .outcome = Outcome::waits, .item = 0}}),
            needs);
        ASSERT_EQ(needs.size(), 1U);
        EXPECT_EQ(needs[0].kind, NeedKind::otherEvidence);
        EXPECT_EQ(needs[0].findings.front().key, key);
    }
}

TEST(Needs, OfAGoodLoadCountTheItemsThatStayBehind)
{
    CycleView view = viewWith(Verdict::release, {});
    view.decision.items.emplace_back("I1", Verdict::release);
    view.decision.items.emplace_back("I2", Verdict::reprocess);
    std::vector<Need> needs;
    appendNeeds(view, needs);
    ASSERT_EQ(needs.size(), 1U);
    EXPECT_EQ(needs[0].kind, NeedKind::signature);
    EXPECT_EQ(needs[0].behind, 1);
}

TEST_F(TodayOfADepartment, PutsGrowthFirst)
{
    department.passBowieDick();
    const std::string cycle = department.runLoad(Implant::yes);
    department.readLoad(cycle);
    department.incubate(cycle);
    department.readBiological(cycle, local("09:00", "2031-03-05"), Seen::growth);
    EXPECT_EQ(kinds().front(), NeedKind::growth);
}

TEST_F(TodayOfADepartment, NamesARecalledLotAsLongAsItLooksBack)
{
    const std::string lot = "pl-2";
    department.record(department.second(), LotRecalled{"notice"}, {lot, "pr-2"});
    const Instant at = department.now();
    EXPECT_THAT(kinds(), ElementsAre(NeedKind::lotRecalled));
    EXPECT_EQ(need(NeedKind::lotRecalled)->subject, lot);
    EXPECT_EQ(need(NeedKind::lotRecalled)->lot, "N2");
    EXPECT_FALSE(need(NeedKind::lotRecalled)->name.empty());
    EXPECT_EQ(need(NeedKind::lotRecalled)->at, at);
    department.setClock(at + lookBack + Duration::milliseconds(1));
    EXPECT_THAT(kinds(), Not(Contains(NeedKind::lotRecalled)));
}

TEST_F(TodayOfADepartment, WarnsOfLotsFromFourteenDaysBeforeTheyExpire)
{
    const Instant expires = local("00:00", "2032-01-02");
    department.setClock(expires - lotWarning - Duration::milliseconds(1));
    EXPECT_THAT(kinds(), IsEmpty());
    EXPECT_EQ(today().nextChangeAt, expires - lotWarning);
    department.setClock(expires - lotWarning);
    EXPECT_THAT(kinds(), ElementsAre(NeedKind::lotExpires, NeedKind::lotExpires,
                                     NeedKind::lotExpires, NeedKind::lotExpires));
    EXPECT_EQ(need(NeedKind::lotExpires)->lot, "N1");
    EXPECT_EQ(need(NeedKind::lotExpires)->name, "external");
    EXPECT_EQ(need(NeedKind::lotExpires)->at, expires);
    department.setClock(expires + lookBack + Duration::milliseconds(1));
    EXPECT_THAT(kinds(), IsEmpty());
}

TEST_F(TodayOfADepartment, LooksUpWhatAScannerReads)
{
    const std::string cycle = department.runLoad(Implant::no);
    const std::string lot = department.view(cycle).lot();
    EXPECT_EQ(look("badge-st-l").what, LookedUp::What::person);
    EXPECT_EQ(look("badge-st-l").id, "st-l");
    EXPECT_EQ(look("BADGE-ST-L").id, "st-l");
    EXPECT_EQ(look(lot).what, LookedUp::What::cycle);
    EXPECT_EQ(look(lot).cycle, cycle);
    EXPECT_EQ(look(" i1 ").what, LookedUp::What::item);
    EXPECT_EQ(look("I1").cycle, cycle);
    EXPECT_EQ(look("N2").what, LookedUp::What::productLot);
    EXPECT_EQ(look("N2").id, "pl-2");
    for (const char* const unknown : {"", " ", "I", "I11", "N", "nothing"}) {
        EXPECT_EQ(look(unknown).what, LookedUp::What::nothing) << unknown;
    }
}

} // namespace
} // namespace loadwarden
