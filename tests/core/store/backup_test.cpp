#include "core/store/attachments.h"
#include "core/store/backup.h"
#include "core/store/lot_numbers.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <thread>

namespace loadwarden {
namespace {

using loadwarden::testing::all;
using loadwarden::testing::dropGuards;
using loadwarden::testing::faultOf;
using loadwarden::testing::noteAbout;
using loadwarden::testing::tamper;
using loadwarden::testing::TempFolder;
using loadwarden::testing::TestJournal;
using loadwarden::testing::testTime;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

namespace fs = std::filesystem;

class ABackup : public ::testing::Test {
protected:
    ABackup()
    {
        for (int i = 0; i < 20; ++i) {
            m_journal.append(noteAbout({"a"}));
        }
    }

    Backup backUp(const fs::path& target)
    {
        return loadwarden::backUp(*m_journal.connection, m_book, target, m_progress);
    }

    Restored restore(const fs::path& backup, const fs::path& target)
    {
        return restoreBackup({.backup = backup, .target = target, .workstation = "ws-1"},
                             *m_journal.clock, m_zone, m_progress);
    }

    VerifyReport verify(const fs::path& file)
    {
        Connection connection(SqliteFile{file}, {.access = Access::read});
        return verifyJournal(connection, {.keys = {m_key.publicKey()}}, m_progress);
    }

    TempFolder m_folder;
    Zone m_zone = Zone::find("Europe/Oslo").value();
    NoProgress m_progress;
    SealKey m_key = SealKey::create();
    TestJournal m_journal = TestJournal::make(SqliteFile{m_folder / "a.lw"});
    SealBook m_book{*m_journal.connection,   *m_journal.store, *m_journal.clock, m_zone, m_key,
                    m_folder / "seals.jsonl"};
};

TEST_F(ABackup, IsWholeSealedAndVerified)
{
    const Backup backup = backUp(m_folder / "b.lw");
    EXPECT_TRUE(backup.report.sound());
    EXPECT_EQ(backup.report.entries, 21);
    EXPECT_EQ(backup.seal.head, m_journal.store->lastKnown());
    EXPECT_EQ(backup.bytes, fs::file_size(m_folder / "b.lw"));
    const VerifyReport report = verify(m_folder / "b.lw");
    EXPECT_TRUE(report.sound());
    EXPECT_EQ(report.sealedTo, 21) << "the backup knows its own seal";
    EXPECT_FALSE(fs::exists(m_folder / "b.lw.part"));
    EXPECT_FALSE(fs::exists(m_folder / "b.lw-wal"));
}

TEST_F(ABackup, HasTheFilesThatEntriesName)
{
    const std::string file("a\0b\xff", 4);
    {
        WriteTransaction transaction(*m_journal.connection);
        keepAttachment(transaction, hashOf(file), file);
        transaction.commit();
    }
    (void)backUp(m_folder / "b.lw");
    (void)restore(m_folder / "b.lw", m_folder / "c.lw");
    for (const char* name : {"b.lw", "c.lw"}) {
        Connection connection(SqliteFile{m_folder / name}, {.access = Access::read});
        ReadSnapshot snapshot(connection);
        EXPECT_EQ(readAttachment(snapshot, hexOf(hashOf(file))), file) << name;
    }
}

TEST_F(ABackup, IsNeverWrittenOverAFile)
{
    std::ofstream(m_folder / "b.lw") << "mine";
    EXPECT_EQ(faultOf([&] { (void)backUp(m_folder / "b.lw"); }), StoreFault::exists);
    EXPECT_EQ(fs::file_size(m_folder / "b.lw"), 4);
}

TEST_F(ABackup, OfADamagedJournalIsNone)
{
    dropGuards(*m_journal.connection, "j_entry");
    tamper(*m_journal.connection, {"UPDATE j_entry SET kind = 'other' WHERE seq = 3"});
    try {
        (void)backUp(m_folder / "b.lw");
        FAIL();
    } catch (const StoreError& error) {
        EXPECT_EQ(error.fault(), StoreFault::damaged);
        EXPECT_THAT(error.says(), HasSubstr("entry 3"));
    }
    EXPECT_FALSE(fs::exists(m_folder / "b.lw"));
    EXPECT_FALSE(fs::exists(m_folder / "b.lw.part"));
}

TEST_F(ABackup, IsConsistentWhileOthersWrite)
{
    std::atomic<bool> stop = false;
    std::thread writer([&] {
        TestJournal other(SqliteFile{m_folder / "a.lw"});
        while (!stop) {
            other.append(noteAbout({"b"}));
        }
    });
    for (int i = 0; i < 5; ++i) {
        const Backup backup = backUp(m_folder.path() / ("b" + std::to_string(i)));
        EXPECT_TRUE(backup.report.sound());
        EXPECT_GE(backup.report.head.seq, backup.seal.head.seq);
    }
    stop = true;
    writer.join();
    EXPECT_TRUE(verify(m_folder / "a.lw").sound());
    EXPECT_EQ(verify(m_folder / "a.lw").sealsHeld, 5);
}

TEST_F(ABackup, IsRestoredToANewFileThatSaysSo)
{
    (void)backUp(m_folder / "b.lw");
    m_journal.append(noteAbout({"lost"}));
    m_journal.clock->set(testTime + Duration::hours(5));
    const Restored restored = restore(m_folder / "b.lw", m_folder / "c.lw");
    EXPECT_EQ(restored.backupHead.seq, 21);
    EXPECT_EQ(restored.backupTime, testTime);
    EXPECT_EQ(restored.head.seq, 22);
    EXPECT_TRUE(verify(m_folder / "c.lw").sound());
    EXPECT_FALSE(fs::exists(m_folder / "c.lw.part"));

    TestJournal again(SqliteFile{m_folder / "c.lw"});
    {
        ReadSnapshot snapshot(*again.connection);
        JournalReader reader(snapshot);
        EXPECT_EQ(reader.head(), restored.head);
        EXPECT_THAT(reader.entry(22).value().bytes,
                    HasSubstr(R"("kind":"journal.restored","v":1,"subjects":[],"reason":"",)"
                              R"("supersedes":0,"basedOn":0,"body":{"through":21}})"));
        EXPECT_THAT(all(reader.about("lost")), IsEmpty());
    }
    EXPECT_EQ(again.append(noteAbout({"a"})).head.seq, 23);
    EXPECT_EQ(faultOf([&] { restore(m_folder / "b.lw", m_folder / "c.lw"); }), StoreFault::exists);
}

TEST_F(ABackup, SkipsTheLotNumbersThatItDoesNotKnow)
{
    const Date today = m_zone.dateOf(testTime);
    const auto reserve = [&today](Connection& connection) {
        WriteTransaction transaction(connection);
        const auto lot = reserveLot(transaction, "3", today);
        transaction.commit();
        return lot.sequence;
    };
    EXPECT_EQ(reserve(*m_journal.connection), 1);
    (void)backUp(m_folder / "b.lw");
    EXPECT_EQ(reserve(*m_journal.connection), 2) << "on a label, unknown to the backup";
    restore(m_folder / "b.lw", m_folder / "c.lw");
    Connection restored(SqliteFile{m_folder / "c.lw"});
    EXPECT_GT(reserve(restored), 100);
}

TEST_F(ABackup, ThatWasChangedIsNotRestored)
{
    (void)backUp(m_folder / "b.lw");
    {
        Connection connection(SqliteFile{m_folder / "b.lw"});
        dropGuards(connection, "j_entry");
        tamper(connection, {"UPDATE j_entry SET bytes = replace(bytes, 'st-1', 'st-2') "
                            "WHERE seq = 7"});
    }
    EXPECT_EQ(faultOf([&] { restore(m_folder / "b.lw", m_folder / "c.lw"); }), StoreFault::damaged);
    EXPECT_FALSE(fs::exists(m_folder / "c.lw"));
    EXPECT_FALSE(fs::exists(m_folder / "c.lw.part"));
}

TEST_F(ABackup, IsComparedWithSealsFromElsewhereWhenRestored)
{
    (void)backUp(m_folder / "b.lw");
    m_journal.append(noteAbout({"a"}));
    const Seal later = m_book.seal();
    const auto restoring = [&](const std::vector<Seal>& seals) {
        return faultOf([&] {
            restoreBackup({.backup = m_folder / "b.lw",
                           .target = m_folder / "c.lw",
                           .workstation = "ws-1",
                           .seals = seals},
                          *m_journal.clock, m_zone, m_progress);
        });
    };
    EXPECT_EQ(restoring({later}), StoreFault::damaged) << "a newer entry was sealed";
    EXPECT_EQ(restoring(sealsOutside(m_folder / "seals.jsonl", "jn-1")), StoreFault::damaged);
    EXPECT_EQ(restoring({}), std::nullopt);
}

TEST(AServersJournal, IsBackedUpByTheServersTools)
{
    const TempFolder folder;
    const auto place = loadwarden::testing::newPlace(Dialect::Engine::postgres, folder);
    if (!place) {
        GTEST_SKIP() << loadwarden::testing::whyNoServer();
    }
    TestJournal journal = TestJournal::make(*place);
    const Zone zone = Zone::find("UTC").value();
    SealBook book(*journal.connection, *journal.store, *journal.clock, zone, SealKey::create(),
                  folder / "seals.jsonl");
    NoProgress progress;
    EXPECT_EQ(faultOf([&] { (void)backUp(*journal.connection, book, folder / "b.lw", progress); }),
              StoreFault::misuse);
}

} // namespace
} // namespace loadwarden
