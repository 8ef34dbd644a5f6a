#include "core/acts/codec.h"
#include "core/store/attachments.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

// Files that entries name: kept as they came, and missed where they are gone or changed.

namespace loadwarden {
namespace {

using loadwarden::testing::dropGuards;
using loadwarden::testing::tamper;
using loadwarden::testing::TestJournal;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

/// Bytes that no text could hold.
const std::string file("a\0b\r\n\xff\xfe\xc3", 8);

EntryDraft reading(std::string_view bytes)
{
    TraceRead read;
    read.content = hexOf(hashOf(bytes));
    read.fileName = "cycle.csv";
    read.bytes = static_cast<std::int64_t>(bytes.size());
    read.mapping = "{}";
    EntryDraft draft = loadwarden::testing::noteAbout({"tr-1", "ld-1"});
    draft.role = "operator";
    draft.kind = "trace.read";
    draft.body = encodeBody({read, {}});
    return draft;
}

class Attachments : public loadwarden::testing::OnBothEngines {
protected:
    void SetUp() override
    {
        OnBothEngines::SetUp();
        if (!IsSkipped()) {
            m_journal = std::make_unique<TestJournal>(TestJournal::make(place()));
        }
    }

    Connection& connection() { return *m_journal->connection; }

    void keep(std::string_view bytes)
    {
        WriteTransaction transaction(connection());
        keepAttachment(transaction, hashOf(bytes), bytes);
        transaction.commit();
    }

    std::optional<std::string> read(std::string_view content)
    {
        ReadSnapshot snapshot(connection());
        return readAttachment(snapshot, content);
    }

    std::vector<JournalFault> faults(std::optional<Head> after = {})
    {
        NoProgress progress;
        return verifyJournal(connection(), {.after = after}, progress).faults;
    }

    std::unique_ptr<TestJournal> m_journal;
};

TEST_P(Attachments, AreKeptByteForByteAndOnce)
{
    keep(file);
    keep(file);
    keep("");
    EXPECT_EQ(read(hexOf(hashOf(file))), file);
    EXPECT_EQ(read(hexOf(hashOf(""))), "");
    EXPECT_EQ(read(hexOf(hashOf("other"))), std::nullopt);
    ReadSnapshot snapshot(connection());
    EXPECT_TRUE(hasAttachment(snapshot, hexOf(hashOf(file))));
    EXPECT_FALSE(hasAttachment(snapshot, hexOf(hashOf("other"))));
    Statement count = snapshot.statement("SELECT COUNT(*) FROM j_attachment");
    ASSERT_TRUE(count.step());
    EXPECT_EQ(count.integer(0), 2);
}

TEST_P(Attachments, ThatAnEntryNamesAreVerified)
{
    keep(file);
    m_journal->append(reading(file));
    EXPECT_THAT(faults(), IsEmpty());

    m_journal->append(reading("never kept"));
    const std::string lost = hexOf(hashOf("never kept"));
    EXPECT_THAT(faults(), ElementsAre(JournalFault{JournalFaultKind::attachmentMissing, 3, lost}));
    EXPECT_EQ(sentenceOf(faults().front()),
              "The file that entry 3 names is not there (" + lost + ").");

    const Head second = [this] {
        ReadSnapshot snapshot(connection());
        return Head{2, JournalReader(snapshot).entry(2)->hash};
    }();
    EXPECT_THAT(faults(second),
                ElementsAre(JournalFault{JournalFaultKind::attachmentMissing, 3, lost}));
}

TEST_P(Attachments, ThatWereChangedAreFound)
{
    keep(file);
    m_journal->append(reading(file));
    dropGuards(connection(), "j_attachment");
    const std::string other = connection().dialect().bytesOf("'other'");
    tamper(connection(), {"UPDATE j_attachment SET size = 5, bytes = " + other});
    const std::string content = hexOf(hashOf(file));
    EXPECT_THAT(faults(), ElementsAre(JournalFault{JournalFaultKind::attachmentChanged, 2, content},
                                      JournalFault{JournalFaultKind::guards, 0, "j_attachment"}));
    EXPECT_EQ(loadwarden::testing::faultOf([&] { (void)read(content); }), StoreFault::damaged);

    tamper(connection(), {"DROP TABLE j_attachment"});
    EXPECT_THAT(faults(), ElementsAre(JournalFault{JournalFaultKind::attachmentMissing, 2, content},
                                      JournalFault{JournalFaultKind::guards, 0, "j_attachment"}));
}

TEST_P(Attachments, OfAnEntryThatCannotBeReadAreNotAskedFor)
{
    m_journal->append(reading("never kept"));
    dropGuards(connection(), "j_entry");
    tamper(
        connection(),
        {"UPDATE j_entry SET bytes = REPLACE(bytes, '\"mapping\"', '\"Mapping\"') WHERE seq = 2"});
    EXPECT_THAT(faults(), ElementsAre(JournalFault{JournalFaultKind::edited, 2, ""},
                                      JournalFault{JournalFaultKind::guards, 0, "j_entry"}));
    tamper(connection(),
           {"UPDATE j_entry SET bytes = SUBSTR(bytes, 1, LENGTH(bytes) - 1) WHERE seq = 2"});
    EXPECT_THAT(faults(), ElementsAre(JournalFault{JournalFaultKind::edited, 2, ""},
                                      JournalFault{JournalFaultKind::guards, 0, "j_entry"}));
}

INSTANTIATE_TEST_SUITE_P(Store, Attachments, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

} // namespace
} // namespace loadwarden
