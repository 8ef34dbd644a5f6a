// What keeps a journal's file to one desktop of one computer, and notices when it was put back.
#include "core/store/desktop_lock.h"
#include "core/store/file_system.h"
#include "core/store/head_witness.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <csignal>
#include <fstream>
#include <sys/wait.h>
#include <unistd.h>

namespace loadwarden {
namespace {

using loadwarden::testing::faultOf;
using loadwarden::testing::noteAbout;
using loadwarden::testing::TempFolder;
using loadwarden::testing::TestJournal;
using ::testing::HasSubstr;

namespace fs = std::filesystem;

std::string saidBy(const fs::path& journal)
{
    try {
        const DesktopLock lock(journal);
    } catch (const StoreError& error) {
        EXPECT_EQ(error.fault(), StoreFault::inUse);
        return error.what();
    }
    return {};
}

TEST(ADesktop, IsAloneWithAFile)
{
    const TempFolder folder;
    const fs::path journal = folder / "a.lw";
    {
        const DesktopLock one(journal);
        EXPECT_EQ(one.stale(), std::nullopt);
        EXPECT_THAT(saidBy(journal), HasSubstr("process " + std::to_string(getpid())));
        EXPECT_EQ(saidBy(folder / "b.lw"), "");
    }
    const DesktopLock again(journal);
    EXPECT_EQ(again.stale(), std::nullopt) << "it was given back";
}

TEST(ADesktop, ThatWasKilledLeavesALockThatIsKnownAsStale)
{
    const TempFolder folder;
    const fs::path journal = folder / "a.lw";
    int ready[2];
    ASSERT_EQ(pipe(ready), 0);
    const pid_t child = fork();
    if (child == 0) {
        const DesktopLock lock(journal);
        (void)!write(ready[1], "x", 1);
        pause();
    }
    char byte = 0;
    ASSERT_EQ(read(ready[0], &byte, 1), 1);
    EXPECT_THAT(saidBy(journal), HasSubstr("process " + std::to_string(child)));
    kill(child, SIGKILL);
    waitpid(child, nullptr, 0);
    close(ready[0]);
    close(ready[1]);
    const DesktopLock lock(journal);
    ASSERT_TRUE(lock.stale());
    EXPECT_THAT(*lock.stale(), HasSubstr("process " + std::to_string(child)));
}

TEST(ADesktop, OfAnotherComputerIsNotTakenForDead)
{
    const TempFolder folder;
    const fs::path journal = folder / "a.lw";
    std::ofstream(DesktopLock::fileOf(journal)) << "12 elsewhere\n";
    const std::string said = saidBy(journal);
    EXPECT_THAT(said, HasSubstr("process 12 on computer elsewhere"));
    EXPECT_THAT(said, HasSubstr("delete " + DesktopLock::fileOf(journal).string()));
}

// As proc(5) writes them.
constexpr std::string_view mounts =
    "22 1 254:1 / / rw,relatime shared:1 - ext4 /dev/vda1 rw\n"
    "30 22 0:26 / /home rw,nosuid shared:9 master:2 - nfs4 server:/home rw,vers=4.2\n"
    "31 22 8:1 / /home/local rw - xfs /dev/sda1 rw\n"
    "32 22 0:40 / /mnt/with\\040blank rw - cifs //server/share rw\n"
    "33 22 0:41 / /mnt/far rw - fuse.sshfs who@server: rw\n"
    "34 22 8:2 / /mnt/stick rw - fuseblk /dev/sdb1 rw\n"
    "35 22 8:3 / /mnt/twice rw - ext4 /dev/sdc1 rw\n"
    "36 35 0:50 / /mnt/twice rw - 9p host rw\n";

TEST(AFileSystem, IsTheOneMountedNearest)
{
    EXPECT_EQ(fileSystemOf("/var/a.lw", mounts), "ext4");
    EXPECT_EQ(fileSystemOf("/home/a.lw", mounts), "nfs4");
    EXPECT_EQ(fileSystemOf("/homes/a.lw", mounts), "ext4");
    EXPECT_EQ(fileSystemOf("/home/local/a.lw", mounts), "xfs");
    EXPECT_EQ(fileSystemOf("/mnt/with blank/a.lw", mounts), "cifs");
    EXPECT_EQ(fileSystemOf("/mnt/twice/a.lw", mounts), "9p") << "the later one hides the other";
    EXPECT_EQ(fileSystemOf("/a", ""), "");
    EXPECT_EQ(fileSystemOf("/a", "nonsense\n- \n"), "");
}

TEST(AFileSystem, IsSharedWhenAnotherComputerMayWriteIt)
{
    for (const char* type : {"nfs4", "cifs", "9p", "fuse.sshfs"}) {
        EXPECT_TRUE(isShared(type)) << type;
    }
    for (const char* type : {"ext4", "xfs", "btrfs", "tmpfs", "overlay", "fuseblk", ""}) {
        EXPECT_FALSE(isShared(type)) << type;
    }
}

TEST(AFileSystem, OfThisComputerIsTaken)
{
    const TempFolder folder;
    EXPECT_EQ(faultOf([&] { refuseSharedFileSystem(folder / "new.lw"); }), std::nullopt);
}

class AWitness : public ::testing::Test {
protected:
    std::optional<StoreFault> check(const SqliteFile& file)
    {
        Connection connection(file, {.access = Access::read});
        ReadSnapshot snapshot(connection);
        return faultOf([&] { m_witness.check(snapshot); });
    }

    TempFolder m_folder;
    SqliteFile m_file{m_folder / "a.lw"};
    HeadWitness m_witness{m_folder / "heads", "jn-1"};
};

TEST_F(AWitness, SeesWhatTheStoreRecords)
{
    TestJournal made = TestJournal::make(m_file);
    JournalStore store(*made.connection, *made.clock, Zone::find("UTC").value(), {}, &m_witness);
    EXPECT_EQ(m_witness.seen(), std::nullopt);
    const EntryDraft draft = noteAbout({"a"});
    const Head head = std::get<Appended>(store.append(std::span(&draft, 1))).head;
    EXPECT_EQ(m_witness.seen(), head);
    EXPECT_EQ(HeadWitness(m_folder / "heads", "jn-1").seen(), head);
    EXPECT_EQ(HeadWitness(m_folder / "heads", "jn-2").seen(), std::nullopt);
    made.append(draft);
    EXPECT_EQ(check(m_file), std::nullopt) << "behind the journal, as after a power failure";
}

TEST_F(AWitness, NoticesAnOlderAndAnotherCopy)
{
    TestJournal made = TestJournal::make(m_file);
    const Head first = made.store->lastKnown();
    m_witness.note({first.seq + 1, hashOf("x")});
    EXPECT_EQ(check(m_file), StoreFault::headChanged);
    m_witness.note({first.seq, hashOf("x")});
    EXPECT_EQ(check(m_file), StoreFault::headChanged);
    m_witness.note(first);
    EXPECT_EQ(check(m_file), std::nullopt);
}

TEST_F(AWitness, SaysNothingAfterItWasLost)
{
    TestJournal made = TestJournal::make(m_file);
    for (const auto& entry : fs::directory_iterator(m_folder / "heads")) {
        std::ofstream(entry.path()) << std::string(40, '\0');
    }
    EXPECT_EQ(m_witness.seen(), std::nullopt);
    EXPECT_EQ(check(m_file), std::nullopt);
}

} // namespace
} // namespace loadwarden
