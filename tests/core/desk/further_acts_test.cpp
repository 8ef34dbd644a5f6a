// What a cycle's page offers to record besides its ordinary course.
#include "core/desk/further_acts.h"
#include "core/desk/reservations.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace loadwarden {
namespace {

using loadwarden::testing::local;
using loadwarden::testing::must;
using loadwarden::testing::WorkingDepartment;
using ::testing::Contains;
using ::testing::IsEmpty;
using ::testing::Not;

class FurtherActs : public ::testing::Test {
protected:
    std::vector<FurtherChoice> offered(const std::string& cycle)
    {
        ReadSnapshot snapshot(department.office().connection());
        return furtherActs(
            loadSheetOf(snapshot, department.office().entries(), cycle, department.now()).value());
    }

    std::vector<Further> kinds(const std::string& cycle)
    {
        std::vector<Further> all;
        for (const FurtherChoice& each : offered(cycle)) {
            all.push_back(each.what);
        }
        return all;
    }

    WorkingDepartment department;
};

TEST_F(FurtherActs, OfALoadThatEndedAreWhatItAsksFor)
{
    department.passBowieDick();
    const std::string cycle = department.runLoad(Implant::no);
    const std::vector<Further> before = kinds(cycle);
    EXPECT_THAT(before, Contains(Further::losePrintout));
    EXPECT_THAT(before, Contains(Further::loseParameter));
    EXPECT_THAT(before, Contains(Further::loseCheck));
    EXPECT_THAT(before, Contains(Further::use)) << "also of what nobody released";
    EXPECT_THAT(before, Not(Contains(Further::distribute)));
    EXPECT_THAT(before, Not(Contains(Further::moveItem))) << "it was inside";
    EXPECT_THAT(before, Not(Contains(Further::rereadIndicator))) << "nobody has read one";
    EXPECT_THAT(before, Not(Contains(Further::unsettle)));
    EXPECT_THAT(before, Not(Contains(Further::classAlarm)));

    department.setClock(local("08:30"));
    const SignedIn& who = department.operating();
    const std::string indicator = WorkingDepartment::partOf("ci-p", cycle);
    department.record(who, ChemicalRead{Seen::unclear}, {indicator, cycle});
    department.record(who, AlarmRecorded{"E7"}, {cycle});
    department.record(who, PhysicalLost{Parameter::drying}, {cycle});
    department.record(who, PrintoutLost{}, {cycle});
    const std::vector<FurtherChoice> after = offered(cycle);
    const auto find = [&](Further what) {
        return std::ranges::find(after, what, &FurtherChoice::what);
    };
    ASSERT_NE(find(Further::unsettle), after.end());
    EXPECT_EQ(find(Further::unsettle)->of.front().id, indicator);
    EXPECT_EQ(find(Further::rereadIndicator), after.end()) << "it waits for its second reader";
    ASSERT_NE(find(Further::classAlarm), after.end());
    EXPECT_EQ(find(Further::classAlarm)->of.front().id, "E7");
    EXPECT_EQ(find(Further::losePrintout), after.end());
    ASSERT_NE(find(Further::loseParameter), after.end());
    const std::string drying = std::to_string(static_cast<int>(Parameter::drying));
    EXPECT_EQ(std::ranges::count(find(Further::loseParameter)->of, drying, &Choice::id), 0);
}

TEST_F(FurtherActs, OfAnItemThatIsNotYetInTheChamber)
{
    department.passBowieDick();
    const std::string cycle =
        must(reserveCycle(department.office(), department.operating(),
                          {.sterilizer = "sz-1", .specification = "sp-1"}))
            .cycle;
    EXPECT_THAT(offered(cycle), IsEmpty());
    department.record(department.operating(), ItemAdded{.label = "I1", .implant = Implant::no},
                      {"it-further", cycle});
    EXPECT_THAT(kinds(cycle), ::testing::ElementsAre(Further::moveItem));
}

TEST_F(FurtherActs, OfAPositiveAreItsIncidentUntilItIsClosed)
{
    department.passBowieDick();
    const std::string cycle = department.runLoad(Implant::no);
    department.readLoad(cycle);
    department.incubate(cycle);
    EXPECT_THAT(kinds(cycle), Not(Contains(Further::openIncident)));
    department.readBiological(cycle, local("09:00", "2031-03-05"), Seen::growth);
    EXPECT_THAT(kinds(cycle), Contains(Further::openIncident));
    department.record(department.operating(), IncidentOpened{}, {"ic-1", cycle, "sz-1"});
    const std::vector<FurtherChoice> open = offered(cycle);
    EXPECT_EQ(std::ranges::count(open, Further::openIncident, &FurtherChoice::what), 0);
    const auto find = std::ranges::find(open, Further::findIncident, &FurtherChoice::what);
    ASSERT_NE(find, open.end());
    EXPECT_EQ(find->of.front().id, WorkingDepartment::partOf("bv", cycle));
    const auto close = std::ranges::find(open, Further::closeIncident, &FurtherChoice::what);
    ASSERT_NE(close, open.end());
    EXPECT_EQ(close->of.front().id, "ic-1");
}

} // namespace
} // namespace loadwarden
