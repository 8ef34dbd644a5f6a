#include "core/desk/desk_thread.h"
#include "core/store/verify.h"
#include "tests/core/desk/desk_support.h"

#include <QThread>

#include <chrono>
#include <semaphore>
#include <thread>

namespace loadwarden::testing {
namespace {

TEST(DeskThread, WorksOnAThreadOfItsOwnInOrder)
{
    Department department;
    department.close();
    DeskThread desk(department.file(), Access::write, department.place());
    desk.opened().waitForFinished();
    QThread* const here = QThread::currentThread();
    std::vector<int> order;
    auto first = desk.ask([&](Office&) {
        order.push_back(1);
        return QThread::currentThread();
    });
    auto second = desk.ask([&](Office& office) {
        order.push_back(2);
        return office.identity().facility;
    });
    EXPECT_EQ(second.result(), "Facility");
    EXPECT_NE(first.result(), here);
    EXPECT_EQ(order, (std::vector{1, 2}));
}

TEST(DeskThread, ThrowsWhatTheWorkThrows)
{
    Department department;
    department.close();
    DeskThread desk(department.file(), Access::write, department.place());
    auto future =
        desk.ask([](Office&) -> int { throw engineError(StoreFault::full, "for the test"); });
    EXPECT_EQ(faultOf([&] { (void)future.result(); }), StoreFault::full);
    EXPECT_EQ(desk.ask([](Office&) { return 7; }).result(), 7) << "and goes on";
}

TEST(DeskThread, SaysWhyAJournalCannotBeOpened)
{
    Department department;
    DeskThread desk(department.file(), Access::write, department.place());
    EXPECT_EQ(faultOf([&] { desk.opened().waitForFinished(); }), StoreFault::inUse);
    EXPECT_EQ(faultOf([&] { (void)desk.ask([](Office&) { return 1; }).result(); }),
              StoreFault::inUse);
}

TEST(DeskThread, AReaderBesideAWriterSeesWhatWasRecorded)
{
    Department department;
    department.close();
    DeskThread writer(department.file(), Access::write, department.place());
    writer.opened().waitForFinished();
    DeskThread reader(department.file(), Access::read, department.place());
    const auto head = [](Office& office) {
        ReadSnapshot snapshot(office.connection());
        return JournalReader(snapshot).head().seq;
    };
    const std::int64_t before = reader.ask(head).result();
    const auto recorded =
        writer
            .ask([](Office& office) {
                return office.record([](ReadSnapshot&) -> OrRefusal<Plan> {
                    return Plan{.author = {"st-sup", Role::supervisor},
                                .acts = {{.act = IncubatorRecorded{"I"}, .subjects = {"in-1"}}},
                                .inside = {}};
                });
            })
            .result();
    EXPECT_EQ(std::get<Appended>(recorded).head.seq, before + 1);
    EXPECT_EQ(reader.ask(head).result(), before + 1);
}

TEST(DeskThread, LongWorkShowsItsProgressAndIsCancelled)
{
    Department department;
    department.close();
    DeskThread desk(department.file(), Access::write, department.place());
    std::binary_semaphore begun(0);
    auto future = desk.askLong([&](Office&, Progress& progress) {
        std::int64_t steps = 0;
        while (progress.goOn(steps, 1'000'000'000)) {
            if (++steps == 100) {
                begun.release();
            }
        }
        return steps;
    });
    begun.acquire();
    EXPECT_EQ(future.progressMaximum(), 1'000);
    future.cancel();
    future.waitForFinished();
    EXPECT_TRUE(future.isCanceled());
    const auto report = desk.askLong([](Office& office, Progress& progress) {
        return verifyJournal(office.connection(), {}, progress);
    });
    EXPECT_TRUE(report.result().sound());
}

TEST(DeskThread, EndsWhenWhatWasAskedForIsDone)
{
    Department department;
    department.close();
    QFuture<int> last;
    {
        DeskThread desk(department.file(), Access::write, department.place());
        (void)desk.ask([](Office&) {
            std::this_thread::sleep_for(std::chrono::milliseconds(50));
            return 0;
        });
        last = desk.ask([](Office&) { return 5; });
    }
    EXPECT_EQ(last.result(), 5);
    // The file is free again.
    department.open();
}

} // namespace
} // namespace loadwarden::testing
