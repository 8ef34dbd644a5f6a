#include "core/store/posix_file.h"
#include "core/store/seal_book.h"
#include "core/store/seal_key_file.h"
#include "core/store/verify.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>

namespace loadwarden {
namespace {

using loadwarden::testing::dropGuards;
using loadwarden::testing::faultOf;
using loadwarden::testing::noteAbout;
using loadwarden::testing::tamper;
using loadwarden::testing::TempFolder;
using loadwarden::testing::TestJournal;
using loadwarden::testing::testTime;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

namespace fs = std::filesystem;

class Sealing : public loadwarden::testing::OnBothEngines {
protected:
    void SetUp() override
    {
        OnBothEngines::SetUp();
        if (IsSkipped()) {
            return;
        }
        m_journal = std::make_unique<TestJournal>(TestJournal::make(place()));
        m_book =
            std::make_unique<SealBook>(*m_journal->connection, *m_journal->store, *m_journal->clock,
                                       Zone::find("Europe/Oslo").value(), m_key, outside());
    }

    [[nodiscard]] fs::path outside() const { return folder() / "seals.jsonl"; }

    VerifyReport verify(const VerifyRequest& request)
    {
        NoProgress progress;
        return verifyJournal(*m_journal->connection, request, progress);
    }

    SealKey m_key = SealKey::create();
    std::unique_ptr<TestJournal> m_journal;
    std::unique_ptr<SealBook> m_book;
};

INSTANTIATE_TEST_SUITE_P(Store, Sealing, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

TEST_P(Sealing, VouchesForTheNewestEntry)
{
    const Head head = m_journal->append(noteAbout({"a"})).head;
    const Seal seal = m_book->seal();
    EXPECT_TRUE(isGenuine(seal));
    EXPECT_EQ(seal.journal, "jn-1");
    EXPECT_EQ(seal.head, head);
    EXPECT_EQ(seal.at, (JournalTime{testTime, 60}));
    EXPECT_THAT(sealsOutside(outside(), "jn-1"), ElementsAre(seal));
    EXPECT_THAT(sealsOutside(outside(), "jn-2"), IsEmpty());
    m_journal->append(noteAbout({"a"}));
    const VerifyReport report = verify({.keys = {m_key.publicKey()}});
    EXPECT_TRUE(report.sound());
    EXPECT_EQ(report.sealsHeld, 1);
    EXPECT_EQ(report.sealedTo, 2);
}

TEST_P(Sealing, IsDoneOnceADayWhenThereIsSomethingNew)
{
    EXPECT_TRUE(m_book->sealDaily());
    EXPECT_FALSE(m_book->sealDaily());
    m_journal->append(noteAbout({"a"}));
    EXPECT_FALSE(m_book->sealDaily()) << "the same day";
    m_journal->clock->set(testTime + Duration::hours(24));
    const auto next = m_book->sealDaily();
    ASSERT_TRUE(next);
    EXPECT_EQ(next->head.seq, 2);
    m_journal->clock->set(testTime + Duration::hours(48));
    EXPECT_FALSE(m_book->sealDaily()) << "nothing new";
    EXPECT_EQ(verify({}).sealsHeld, 2);
}

TEST_P(Sealing, RefusesWhatDoesNotHoldTogether)
{
    tamper(*m_journal->connection, {"UPDATE p_head SET hash = 'x'"});
    EXPECT_EQ(faultOf([&] { (void)m_book->seal(); }), StoreFault::headChanged);
    EXPECT_FALSE(fs::exists(outside()));
}

TEST_P(Sealing, ShowsByTheSealOutsideWhatTheDatabaseCannot)
{
    m_journal->append(noteAbout({"a"}));
    (void)m_book->seal();
    dropGuards(*m_journal->connection, "j_entry");
    dropGuards(*m_journal->connection, "j_seal");
    std::vector<std::string> cut{
        "DELETE FROM j_entry WHERE seq = 2", "DELETE FROM p_subject WHERE seq = 2",
        "DELETE FROM j_seal",
        "UPDATE p_head SET seq = 1, hash = (SELECT hash FROM j_entry WHERE seq = 1)"};
    for (const char* table : {"j_entry", "j_seal"}) {
        for (const std::string& sql : m_journal->connection->dialect().appendOnly(table)) {
            if (!sql.starts_with("CREATE FUNCTION") && sql.find("TRUNCATE") == sql.npos) {
                cut.push_back(sql);
            }
        }
    }
    tamper(*m_journal->connection, cut);
    EXPECT_TRUE(verify({}).sound());
    EXPECT_THAT(verify({.seals = sealsOutside(outside(), "jn-1")}).faults,
                ElementsAre(JournalFault{JournalFaultKind::sealedEntryGone, 2, ""}));
}

TEST_P(Sealing, IsNotBelievedOfAnUnknownKeyOrAnotherJournal)
{
    const Seal mine = m_book->seal();
    const SealKey other = SealKey::create();
    const auto faultsWith = [&](const Seal& seal, std::vector<SealPublicKey> keys) {
        return verify({.seals = {seal}, .keys = std::move(keys)}).faults;
    };
    EXPECT_THAT(faultsWith(makeSeal("jn-1", mine.head, mine.at, other), {m_key.publicKey()}),
                ElementsAre(JournalFault{JournalFaultKind::sealOfUnknownKey, 1, ""}));
    EXPECT_THAT(faultsWith(makeSeal("jn-2", mine.head, mine.at, m_key), {m_key.publicKey()}),
                ElementsAre(JournalFault{JournalFaultKind::sealOfOtherJournal, 1, "jn-2"}));
    EXPECT_THAT(faultsWith(makeSeal("jn-1", {1, hashOf("x")}, mine.at, m_key), {}),
                ElementsAre(JournalFault{JournalFaultKind::sealedEntryChanged, 1, ""}));
    Seal changed = mine;
    changed.at.at.ms += 1;
    EXPECT_THAT(faultsWith(changed, {}),
                ElementsAre(JournalFault{JournalFaultKind::sealNotGenuine, 1, ""}));
}

TEST(ASealKey, IsKeptForItsOwnerAlone)
{
    const TempFolder folder;
    const fs::path path = folder / "deep" / "er" / "seal.key";
    EXPECT_EQ(faultOf([&] { (void)readSealKey(path); }), StoreFault::missing);
    const SealKey made = createSealKey(path);
    EXPECT_EQ(readSealKey(path).publicKey(), made.publicKey());
    EXPECT_EQ(fs::status(path).permissions(), fs::perms::owner_read | fs::perms::owner_write);
    EXPECT_EQ(faultOf([&] { (void)createSealKey(path); }), StoreFault::exists);
    fs::permissions(path, fs::perms::group_read, fs::perm_options::add);
    EXPECT_EQ(faultOf([&] { (void)readSealKey(path); }), StoreFault::denied);
}

TEST(ASealKey, IsNotReadFromOtherText)
{
    const TempFolder folder;
    const fs::path path = folder / "seal.key";
    {
        PosixFile file(path, PosixFile::Mode::createNew);
        file.write("no key\n");
    }
    EXPECT_EQ(faultOf([&] { (void)readSealKey(path); }), StoreFault::damaged);
}

TEST(ASealKey, LiesInTheUsersDataFolder)
{
    // Source: XDG Base Directory Specification 0.8, "Environment variables".
    const char* const before = std::getenv("XDG_DATA_HOME");
    const std::string kept = before == nullptr ? "" : before;
    setenv("XDG_DATA_HOME", "/data", 1);
    EXPECT_EQ(usualSealKeyPath(), "/data/loadwarden/seal.key");
    setenv("XDG_DATA_HOME", "relative", 1);
    EXPECT_EQ(usualSealKeyPath(),
              fs::path(std::getenv("HOME")) / ".local/share/loadwarden/seal.key");
    if (before == nullptr) {
        unsetenv("XDG_DATA_HOME");
    } else {
        setenv("XDG_DATA_HOME", kept.c_str(), 1);
    }
}

} // namespace
} // namespace loadwarden
