// Two processes at desks of one file.
#include "core/store/store_error.h"
#include "core/store/verify.h"
#include "tests/core/desk/day_support.h"
#include "tests/core/store/survival/child.h"

#include <gmock/gmock.h>

#include <set>
#include <thread>

namespace loadwarden::testing {
namespace {

constexpr int each = 20;

/// Opens the journal as a command does: where another is at it, waits.
std::unique_ptr<Office> openPatiently(const std::filesystem::path& file, const Workplace& place)
{
    for (;;) {
        try {
            return std::make_unique<Office>(file, Access::write, place);
        } catch (const StoreError& error) {
            if (error.fault() != StoreFault::inUse) {
                throw;
            }
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
}

/// Does something at a desk of its own, in a process of its own.
template <class Work>
Child::Work atADesk(Department& department, const Work& work)
{
    return [&department, work](const Acknowledger& to) {
        Workplace place = department.place();
        RandomIdSource ids; // processes know nothing of each other's
        const Workplace mine{.clock = place.clock,
                             .ids = ids,
                             .workstation = "ws-child",
                             .keep = place.keep,
                             .syncing = place.syncing,
                             .pinCost = place.pinCost};
        work(to, mine);
    };
}

TEST(DesksTogether, LoseNoActAndGiveNoLotTwice)
{
    WorkingDepartment department;
    department.setClock(local("06:40"));
    department.close();
    const auto reserveAll = atADesk(department, [&](const Acknowledger& to, const Workplace& mine) {
        for (int i = 0; i < each; ++i) {
            const auto office = openPatiently(department.file(), mine);
            const SignedIn who = must(SignIn(*office).enter("st-o", operatorPin));
            const ReservedCycle reserved =
                must(reserveCycle(*office, who, {.sterilizer = "sz-1", .specification = "sp-1"}));
            to.say(reserved.appended.head,
                   std::stoll(reserved.lot.substr(reserved.lot.rfind('-') + 1)));
        }
    });
    std::vector<std::unique_ptr<Child>> children;
    for (int i = 0; i < 2; ++i) {
        children.push_back(std::make_unique<Child>(reserveAll));
    }
    std::set<std::int64_t> lots;
    std::vector<Head> heads;
    for (const auto& child : children) {
        for (const Acknowledged& said : child->end()) {
            EXPECT_TRUE(lots.insert(said.tag).second) << "lot number " << said.tag << " twice";
            heads.push_back({said.seq, said.hash});
        }
        EXPECT_EQ(child->status(), 0);
    }
    EXPECT_EQ(heads.size(), 2U * each);
    department.open();
    NoProgress progress;
    const VerifyReport report =
        verifyJournal(department.office().connection(), {.expected = heads}, progress);
    EXPECT_TRUE(report.sound());
}

TEST(DesksTogether, AStaleSignatureIsRefusedWithWhatTheOtherRecorded)
{
    WorkingDepartment department;
    department.passBowieDick();
    const std::string load = department.runLoad(Implant::no);
    department.readLoad(load);
    const Sight sight = sightFrom(department.view(load));
    department.close();
    const std::string external = WorkingDepartment::partOf("ci-e", load);
    Child other(atADesk(department, [&](const Acknowledger& to, const Workplace& mine) {
        const auto office = openPatiently(department.file(), mine);
        const SignedIn who = must(SignIn(*office).enter("st-o2", operatorPin));
        to.say(must(Recorder(*office).record(who, {.act = ChemicalRead{Seen::endColourPartly},
                                                   .subjects = {external, load}}))
                   .head);
    }));
    const std::vector<Acknowledged> said = other.end();
    ASSERT_EQ(other.status(), 0);
    ASSERT_EQ(said.size(), 1U);
    department.open();
    const auto answer =
        Dispositions(department.office())
            .sign(department.operating(), department.signature(department.operating(), operatorPin),
                  sight, Verdict::quarantine);
    ASSERT_EQ(whyOf(answer), RefusalWhy::stale);
    const std::vector<CameSince>& since = std::get<Refusal>(answer).since;
    ASSERT_EQ(since.size(), 1U);
    EXPECT_EQ(since.front().seq, said.front().seq);
    EXPECT_EQ(since.front().thing, external);
    EXPECT_EQ(since.front().by, "Name of st-o2");
}

} // namespace
} // namespace loadwarden::testing
