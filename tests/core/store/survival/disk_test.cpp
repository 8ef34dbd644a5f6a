// Disks and files that are not as they should be: each is named, and nothing further is lost.
#include "core/store/head_witness.h"
#include "core/store/verify.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/survival/child.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <random>
#include <sched.h>
#include <sys/mount.h>
#include <unistd.h>

namespace loadwarden {
namespace {

using loadwarden::testing::Acknowledged;
using loadwarden::testing::Acknowledger;
using loadwarden::testing::Child;
using loadwarden::testing::faultOf;
using loadwarden::testing::noteAbout;
using loadwarden::testing::tamper;
using loadwarden::testing::TempFolder;
using loadwarden::testing::TestJournal;
using ::testing::HasSubstr;

namespace fs = std::filesystem;

/// Mounts of its own, which end with the process; false when this user may not have any.
bool ownMounts()
{
    return unshare(CLONE_NEWNS) == 0
           && mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0;
}

bool mayMount()
{
    Child child([](const Acknowledger& to) { to.say({}, ownMounts() ? 1 : 0); });
    return child.end().at(0).tag == 1;
}

/// Whether appending throws this, said by a child with the fault as its tag.
void sayFault(const Acknowledger& to, const std::optional<StoreFault>& fault)
{
    to.say({}, fault ? static_cast<std::int64_t>(*fault) : -1);
}

TEST(AFullDisk, IsNamedAndLosesNothing)
{
    if (!mayMount()) {
        GTEST_SKIP() << "only root may mount a small disk";
    }
    const TempFolder folder;
    Child child([&folder](const Acknowledger& to) {
        if (!ownMounts() || mount("small", folder.path().c_str(), "tmpfs", 0, "size=600k") != 0) {
            throw std::runtime_error("no small disk");
        }
        const SqliteFile file{folder / "a.lw"};
        TestJournal journal = TestJournal::make(file);
        std::vector<Head> told;
        const auto fault = faultOf([&] {
            for (;;) {
                told.push_back(journal.append(noteAbout({"a"}, std::string(3000, 'x'))).head);
            }
        });
        sayFault(to, fault);
        // It stays full and stays whole.
        sayFault(to, faultOf([&] { journal.append(noteAbout({"a"}, std::string(90'000, 'x'))); }));
        NoProgress progress;
        to.say({static_cast<std::int64_t>(told.size()), {}},
               verifyJournal(*journal.connection, {.expected = told}, progress).faultCount);
    });
    const auto said = child.end();
    ASSERT_EQ(child.status(), 0);
    ASSERT_EQ(said.size(), 3);
    EXPECT_EQ(said[0].tag, static_cast<std::int64_t>(StoreFault::full));
    EXPECT_EQ(said[1].tag, static_cast<std::int64_t>(StoreFault::full));
    EXPECT_GT(said[2].seq, 10) << "entries before it was full";
    EXPECT_EQ(said[2].tag, 0) << "faults";
}

TEST(AReadOnlyDisk, IsNamedAndStillRead)
{
    if (!mayMount()) {
        GTEST_SKIP() << "only root may mount a folder read-only";
    }
    const TempFolder folder;
    const SqliteFile file{folder / "a.lw"};
    {
        TestJournal::make(file).append(noteAbout({"a"}));
    }
    Child child([&](const Acknowledger& to) {
        const char* const path = folder.path().c_str();
        if (!ownMounts() || mount(path, path, nullptr, MS_BIND, nullptr) != 0
            || mount(path, path, nullptr, MS_REMOUNT | MS_BIND | MS_RDONLY, nullptr) != 0) {
            throw std::runtime_error("no read-only folder");
        }
        sayFault(to, faultOf([&] { TestJournal(file).append(noteAbout({"a"})); }));
        sayFault(to, faultOf([&] {
                     Connection reader(file, {.access = Access::read});
                     NoProgress progress;
                     (void)verifyJournal(reader, {}, progress);
                 }));
        sayFault(to, faultOf([&] { TestJournal::make(SqliteFile{folder / "new.lw"}); }));
    });
    const auto said = child.end();
    ASSERT_EQ(child.status(), 0);
    ASSERT_EQ(said.size(), 3);
    EXPECT_EQ(said[0].tag, static_cast<std::int64_t>(StoreFault::readOnly));
    // Reading a file with a write-ahead log needs files beside it, unless it can be told that
    // nobody writes it.
    EXPECT_EQ(said[1].tag, static_cast<std::int64_t>(StoreFault::readOnly));
    EXPECT_EQ(said[2].tag, static_cast<std::int64_t>(StoreFault::readOnly));
}

/// A closed journal of some hundred pages.
std::vector<Head> makeJournal(const SqliteFile& file)
{
    TestJournal journal = TestJournal::make(file);
    std::vector<Head> heads;
    for (int i = 0; i < 200; ++i) {
        heads.push_back(
            journal.append(noteAbout({"ld-" + std::to_string(i)}, std::string(700, 'x'))).head);
    }
    return heads;
}

/// What verification or the opening before it says of a file; empty when nothing.
std::string saidOf(const SqliteFile& file)
{
    try {
        Connection connection(file, {.access = Access::write});
        checkSchema(connection, migrations());
        NoProgress progress;
        const VerifyReport report = verifyJournal(connection, {}, progress);
        return report.faults.empty() ? "" : sentenceOf(report.faults.front());
    } catch (const StoreError& error) {
        EXPECT_TRUE(error.fault() == StoreFault::damaged || error.fault() == StoreFault::foreign)
            << error.what();
        return error.says();
    }
}

TEST(ADamagedPage, IsFound)
{
    const TempFolder folder;
    const SqliteFile whole{folder / "whole.lw"};
    makeJournal(whole);
    EXPECT_EQ(saidOf(whole), "");
    std::mt19937 random(7);
    const SqliteFile broken{folder / "broken.lw"};
    const std::uintmax_t pages = fs::file_size(whole.path) / 4096;
    ASSERT_GT(pages, 50);
    for (std::uintmax_t page = 0; page < pages; ++page) {
        fs::copy_file(whole.path, broken.path, fs::copy_options::overwrite_existing);
        std::string garbage(4096, '\0');
        std::ranges::generate(garbage, [&random] { return static_cast<char>(random()); });
        std::fstream bytes(broken.path, std::ios::in | std::ios::out | std::ios::binary);
        bytes.seekp(static_cast<std::streamoff>(page * 4096));
        bytes.write(garbage.data(), 4096);
        bytes.close();
        EXPECT_NE(saidOf(broken), "") << "page " << page;
        for (const char* suffix : {"-wal", "-shm"}) {
            fs::remove(broken.path.string() + suffix);
        }
    }
}

TEST(ACutFile, IsFound)
{
    const TempFolder folder;
    const SqliteFile whole{folder / "whole.lw"};
    makeJournal(whole);
    const SqliteFile broken{folder / "broken.lw"};
    const std::uintmax_t size = fs::file_size(whole.path);
    for (const std::uintmax_t left : {size - 1, size - 4096, size / 2, std::uintmax_t{4096},
                                      std::uintmax_t{100}, std::uintmax_t{0}}) {
        fs::copy_file(whole.path, broken.path, fs::copy_options::overwrite_existing);
        fs::resize_file(broken.path, left);
        EXPECT_NE(saidOf(broken), "") << left << " of " << size << " bytes";
    }
}

TEST(AFile, CopiedWithoutItsLogIsNoticedByTheComputerThatWroteIt)
{
    const TempFolder folder;
    const SqliteFile file{folder / "a.lw"};
    const SqliteFile copy{folder / "copy.lw"};
    HeadWitness witness(folder / "heads", "jn-1");
    {
        TestJournal::make(file);
    }
    {
        TestJournal journal(file);
        JournalStore store(*journal.connection, *journal.clock, Zone::find("UTC").value(), {},
                           &witness);
        const EntryDraft draft = noteAbout({"a"});
        std::ignore = store.append(std::span(&draft, 1));
        fs::copy_file(file.path, copy.path); // while the entry is in the log
    }
    Connection connection(copy);
    ReadSnapshot snapshot(connection);
    try {
        witness.check(snapshot);
        FAIL() << "the newest entry is missing";
    } catch (const StoreError& error) {
        EXPECT_EQ(error.fault(), StoreFault::headChanged);
        EXPECT_THAT(error.says(), HasSubstr("entry 2"));
        EXPECT_THAT(error.next(), HasSubstr("-wal"));
    }
    Connection original(file);
    ReadSnapshot whole(original);
    EXPECT_EQ(faultOf([&] { witness.check(whole); }), std::nullopt);
}

TEST(ANewerSchema, IsRefused)
{
    const TempFolder folder;
    const SqliteFile file{folder / "a.lw"};
    {
        TestJournal journal = TestJournal::make(file);
        tamper(*journal.connection, {"INSERT INTO s_schema (version, applied_at) VALUES (99, 0)"});
    }
    try {
        TestJournal journal(file);
        FAIL() << "a schema of the future was opened";
    } catch (const StoreError& error) {
        EXPECT_EQ(error.fault(), StoreFault::newer);
        EXPECT_THAT(error.says(), HasSubstr("schema 99"));
    }
}

} // namespace
} // namespace loadwarden
