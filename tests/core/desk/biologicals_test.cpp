// Vials and controls under way: what each waits for, what a reading counts, what a positive holds.
#include "core/desk/biologicals.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using loadwarden::testing::local;
using loadwarden::testing::must;
using loadwarden::testing::operatorPin;
using loadwarden::testing::WorkingDepartment;
using ::testing::IsEmpty;
using ::testing::SizeIs;

class BiologicalsOfADepartment : public ::testing::Test {
protected:
    Biologicals now()
    {
        ReadSnapshot snapshot(department.office().connection());
        return biologicalsOf(snapshot, department.office().entries(), department.now());
    }

    /// The only group there is.
    BiGroup group()
    {
        Biologicals made = now();
        EXPECT_EQ(made.groups.size(), 1U);
        return made.groups.at(0);
    }

    BiAnswer read(const std::string& id, const std::string& cycle, Seen seen)
    {
        return must(
            readBiological(department.office(), department.second(), id, cycle, seen));
    }

    /// A load whose vial and control are in the incubator since 08:35.
    std::string incubatingLoad(Implant implant = Implant::no)
    {
        department.passBowieDick();
        const std::string cycle = department.runLoad(implant);
        department.readLoad(cycle);
        department.incubate(cycle);
        return cycle;
    }

    static std::string vialOf(const std::string& cycle)
    {
        return WorkingDepartment::partOf("bv", cycle);
    }
    static std::string controlOf(const std::string& cycle)
    {
        return WorkingDepartment::partOf("bc", cycle);
    }

    WorkingDepartment department;
};

TEST_F(BiologicalsOfADepartment, AreNoneWithoutAVial)
{
    EXPECT_THAT(now().groups, IsEmpty());
    EXPECT_THAT(now().positives, IsEmpty());
    EXPECT_THAT(now().incubators, SizeIs(1));
    EXPECT_FALSE(now().nextChangeAt);
}

TEST_F(BiologicalsOfADepartment, AskForOneStepAfterTheOther)
{
    department.passBowieDick();
    const std::string cycle = department.runLoad(Implant::yes);
    BiGroup made = group();
    EXPECT_EQ(made.productName, "vial");
    EXPECT_EQ(made.lotNumber, "N4");
    EXPECT_EQ(made.productLot, "pl-4");
    EXPECT_TRUE(made.needsActivation);
    EXPECT_TRUE(made.incubator.empty());
    ASSERT_THAT(made.vials, SizeIs(1));
    EXPECT_EQ(made.vials[0].id, vialOf(cycle));
    EXPECT_EQ(made.vials[0].step, BiStep::activate);
    EXPECT_TRUE(made.vials[0].hasImplant);
    EXPECT_EQ(made.vials[0].sterilizer, "S1");

    department.setClock(local("08:30"));
    department.record(department.operating(), BiologicalActivated{}, {vialOf(cycle), cycle});
    EXPECT_EQ(group().vials[0].step, BiStep::incubate);
    department.record(department.operating(), BiologicalIncubated{},
                      {vialOf(cycle), cycle, "in-1"});
    made = group();
    EXPECT_EQ(made.vials[0].step, BiStep::read);
    EXPECT_EQ(made.vials[0].started, local("08:30"));
    EXPECT_EQ(made.vials[0].dueAt, local("08:30", "2031-03-05")) << "24 hours, as its product says";
    EXPECT_FALSE(made.vials[0].isDue(department.now()));
    EXPECT_TRUE(made.isWithoutControl);
    EXPECT_EQ(now().nextChangeAt.has_value(), true);
}

TEST_F(BiologicalsOfADepartment, StandBesideTheirControl)
{
    const std::string cycle = incubatingLoad();
    const BiGroup made = group();
    EXPECT_EQ(made.incubatorName, "incubator");
    EXPECT_FALSE(made.isWithoutControl);
    ASSERT_THAT(made.controls, SizeIs(1));
    EXPECT_EQ(made.controls[0].id, controlOf(cycle));
    EXPECT_TRUE(made.controls[0].isControl);
    EXPECT_EQ(made.controls[0].step, BiStep::read);
    EXPECT_EQ(made.dueAt(), local("08:35", "2031-03-05"));
    department.setClock(local("08:35", "2031-03-05"));
    EXPECT_TRUE(group().vials[0].isDue(department.now()));
}

TEST_F(BiologicalsOfADepartment, AnEarlyNoGrowthIsRecordedAndDoesNotCount)
{
    const std::string cycle = incubatingLoad();
    department.setClock(local("12:00"));
    const BiAnswer early = read(vialOf(cycle), cycle, Seen::noGrowth);
    EXPECT_FALSE(early.counts);
    EXPECT_EQ(early.dueAt, local("08:35", "2031-03-05"));
    EXPECT_FALSE(early.isPositive);
    EXPECT_EQ(group().vials[0].step, BiStep::read);
}

TEST_F(BiologicalsOfADepartment, ANegativeBesideItsGrownControlLeaves)
{
    const std::string cycle = incubatingLoad();
    department.setClock(local("08:40", "2031-03-05"));
    const BiAnswer control = read(controlOf(cycle), {}, Seen::growth);
    EXPECT_TRUE(control.counts);
    EXPECT_FALSE(control.isDeadControl);
    EXPECT_EQ(group().controls[0].control, ControlState::grown);
    EXPECT_TRUE(read(vialOf(cycle), cycle, Seen::noGrowth).counts);
    EXPECT_THAT(now().groups, IsEmpty());
    EXPECT_THAT(now().positives, IsEmpty());
}

TEST_F(BiologicalsOfADepartment, ADeadControlVoidsItsVials)
{
    const std::string cycle = incubatingLoad();
    department.setClock(local("08:40", "2031-03-05"));
    EXPECT_TRUE(read(controlOf(cycle), {}, Seen::noGrowth).isDeadControl);
    const BiGroup made = group();
    EXPECT_TRUE(made.isControlDead);
    EXPECT_EQ(made.vials[0].vial.state, VialState::voided);
    EXPECT_EQ(made.vials[0].step, BiStep::none);
}

TEST_F(BiologicalsOfADepartment, AnUnclearVialIsReadByASecondPerson)
{
    const std::string cycle = incubatingLoad();
    department.setClock(local("08:40", "2031-03-05"));
    (void)read(vialOf(cycle), cycle, Seen::unclear);
    EXPECT_EQ(group().vials[0].step, BiStep::readSecond);
}

TEST_F(BiologicalsOfADepartment, GrowthCallsIntoQuestionWhatRanSinceTheLastNegative)
{
    const std::string first = incubatingLoad();
    department.setClock(local("08:40", "2031-03-05"));
    (void)read(controlOf(first), {}, Seen::growth);
    (void)read(vialOf(first), first, Seen::noGrowth);

    // Two loads later on that day: one without a vial read yet, one whose vial grows.
    const auto run = [&](const std::string& tag, const std::string& begin, const std::string& end,
                         bool hasVial) {
        const std::string day = "2031-03-05";
        department.setClock(local(begin, day) - Duration::minutes(5));
        const SignedIn& who = department.operating();
        const std::string cycle =
            must(reserveCycle(department.office(), who,
                              {.sterilizer = "sz-1", .specification = "sp-1"}))
                .cycle;
        if (hasVial) {
            department.record(who, PcdPlaced{"PCD", {}, {{"bv-" + tag, "pr-4", "pl-4", {}}}},
                              {"pd-" + tag, cycle, "bv-" + tag});
        }
        department.setClock(local(begin, day));
        department.record(who, CycleStarted{ClockSource::facility, {local(begin, day), -360}, {}},
                          {cycle});
        department.setClock(local(end, day));
        department.record(
            who, CycleEnded{{local(end, day), -360}, CycleOutcome::ended, {}, {}}, {cycle});
        return cycle;
    };
    const std::string between = run("b", "10:00", "10:50", false);
    const std::string positive = run("p", "11:00", "11:50", true);
    department.setClock(local("12:30", "2031-03-05"));
    department.record(department.operating(), BiologicalActivated{}, {"bv-p", positive});
    department.record(department.operating(), BiologicalIncubated{}, {"bv-p", positive, "in-1"});
    department.setClock(local("15:00", "2031-03-05"));
    EXPECT_TRUE(read("bv-p", positive, Seen::growth).isPositive) << "growth counts at any time";

    const Biologicals made = now();
    ASSERT_THAT(made.positives, SizeIs(1));
    EXPECT_EQ(made.positives[0].cycle, positive);
    EXPECT_EQ(made.positives[0].sterilizerName, "S1");
    EXPECT_EQ(made.positives[0].lastNegativeLot, department.view(first).lot());
    ASSERT_THAT(made.positives[0].held, SizeIs(2)) << "since the negative, not it";
    EXPECT_EQ(made.positives[0].held[0].cycle, between);
    EXPECT_TRUE(made.positives[0].held[1].isPositive);
    EXPECT_FALSE(made.positives[0].isStopped);

    department.record(department.operating(),
                      SterilizerTakenOut{ServiceState::outOfService, "a vial grew"}, {"sz-1"});
    EXPECT_TRUE(now().positives[0].isStopped);
    department.setClock(local("15:00", "2031-04-10"));
    EXPECT_THAT(now().positives, IsEmpty()) << "36 days later it is found in Records";
}

} // namespace
} // namespace loadwarden
