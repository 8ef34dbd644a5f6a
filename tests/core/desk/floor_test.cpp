#include "core/desk/dispositions.h"
#include "core/desk/floor.h"
#include "core/desk/today.h"
#include "core/desk/tray.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

// What the floor asks and reports, on a journal.

namespace loadwarden::testing {
namespace {

class Floor : public ::testing::Test {
protected:
    std::string releasedLoad()
    {
        department.passBowieDick();
        std::string load = department.runLoad(Implant::no);
        department.readLoad(load);
        must(Dispositions(department.office())
                 .sign(department.lead(), department.signature(department.lead(), leadPin),
                       sightFrom(department.view(load)), Verdict::release));
        return load;
    }
    [[nodiscard]] Date today()
    {
        return department.office().zone().dateOf(department.office().now());
    }
    OrRefusal<Appended> record(const SignedIn& who, const ToRecord& act)
    {
        return Recorder(department.office()).record(who, act);
    }
    OrRefusal<Appended> report(const std::string& load, const ItemReported& found)
    {
        return record(department.second(), reported(department.office().place().ids, today(), found,
                                                    WorkingDepartment::partOf("it", load), load));
    }
    [[nodiscard]] std::vector<Need> needs()
    {
        ReadSnapshot snapshot(department.office().connection());
        return todayOf(snapshot, department.office().entries(), department.office().zone(),
                       department.office().now())
            .needs;
    }
    [[nodiscard]] TrayStand standOf(const std::string& label)
    {
        ReadSnapshot snapshot(department.office().connection());
        return trayOf(snapshot, department.office().entries(), label, department.office().now())
            ->stand;
    }

    WorkingDepartment department;
};

constexpr auto isOf = [](const std::string& load) {
    return [load](const Need& need) {
        return need.cycle == load && need.kind == NeedKind::evidenceWorse;
    };
};

TEST_F(Floor, ReportsWhatFailedAndEverybodySeesItAtOnce)
{
    const std::string load = releasedLoad();
    ASSERT_EQ(standOf("I1"), TrayStand::released);
    must(report(load, {.indicator = Seen::frontShortOfBoundary, .place = "Room 4"}));
    EXPECT_EQ(standOf("I1"), TrayStand::fails);
    EXPECT_TRUE(std::ranges::any_of(needs(), isOf(load)));
}

TEST_F(Floor, ReportsLongAfterTheLoadAreSeenToo)
{
    const std::string load = releasedLoad();
    department.setClock(department.now() + Duration::hours(24 * 90));
    EXPECT_FALSE(std::ranges::any_of(needs(), isOf(load)));
    must(report(load, {.faults = {PackageFault::torn}, .place = "Room 4"}));
    EXPECT_EQ(standOf("I1"), TrayStand::fails);
    EXPECT_EQ(std::ranges::count_if(needs(), isOf(load)), 1);
}

TEST_F(Floor, ReportsNothingOfWhatHasNotEndedOrIsNotThere)
{
    const std::string load = must(reserveCycle(department.office(), department.operating(),
                                               {.sterilizer = "sz-1", .specification = "sp-1"}))
                                 .cycle;
    department.record(department.operating(), ItemAdded{.label = "T-9"}, {"it-9", load});
    IdSource& ids = department.office().place().ids;
    const ItemReported found{.faults = {PackageFault::wet}, .place = "Room 4"};
    const auto early = record(department.second(), reported(ids, today(), found, "it-9", load));
    ASSERT_TRUE(std::holds_alternative<Refusal>(early));
    EXPECT_EQ(std::get<Refusal>(early).why, RefusalWhy::notEnded);
    const std::string ended = releasedLoad();
    const auto other = record(department.second(), reported(ids, today(), found, "it-9", ended));
    ASSERT_TRUE(std::holds_alternative<Refusal>(other));
    EXPECT_EQ(std::get<Refusal>(other).why, RefusalWhy::notPlaced);
}

TEST_F(Floor, QuestionsAreCountedByMonthPlaceAndTopic)
{
    const auto ask = [&](const char* place, const char* topic, bool wasMisread) {
        must(record(department.operating(), asked(department.office().place().ids, today(),
                                                  {.asked = "what is it?",
                                                   .place = place,
                                                   .topic = topic,
                                                   .answer = "as it says",
                                                   .wasMisread = wasMisread})));
    };
    const Date first = today();
    ask("Room 4", "wet-pack", false);
    ask("room 4 ", "wet-pack", true);
    ask("Room 4", "front", false);
    ask("Ward 2", "wet-pack", false);
    department.setClock(department.now() + Duration::hours(24 * 40));
    ask("Room 4", "wet-pack", false);
    ReadSnapshot snapshot(department.office().connection());
    const auto month = [](Date day) { return *parseDate(formatDate(day).substr(0, 8) + "01"); };
    const auto all = countQuestions(fromFloorSince(snapshot, first), department.office().zone());
    EXPECT_THAT(all, ::testing::ElementsAre(AskedOften{month(today()), "Room 4", "wet-pack", 1, 0},
                                            AskedOften{month(first), "Room 4", "wet-pack", 2, 1},
                                            AskedOften{month(first), "Room 4", "front", 1, 0},
                                            AskedOften{month(first), "Ward 2", "wet-pack", 1, 0}));
    EXPECT_EQ(fromFloorSince(snapshot, first + 1).size(), 1U) << "the older ones are not read";
}

} // namespace
} // namespace loadwarden::testing
