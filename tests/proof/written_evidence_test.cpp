// Evidence that was read, written and read again: the same record, the same answer.

#include "core/exchange/evidence_writer.h"
#include "tests/support/evidence_files.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <set>

namespace loadwarden {
namespace {

/// The names below the repository's root of all the JSON files in a folder.
std::set<std::string> filesOf(const std::string& folder)
{
    std::set<std::string> files;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(LOADWARDEN_SOURCE_DIR) + "/" + folder)) {
        if (entry.path().extension() == ".json") {
            files.insert(folder + "/" + entry.path().filename().string());
        }
    }
    return files;
}

TEST(WrittenEvidence, OfEveryFileIsReadAsTheSameAndAnswersTheSame)
{
    const Policy policy = support::policyWith({});
    const Instant later = parseInstant("2099-01-01T00:00Z").value();
    int count = 0;
    for (const char* folder :
         {"resources/schema/examples", "demo/evidence", "tests/data/worked_cases/bases"}) {
        for (const std::string& file : filesOf(folder)) {
            SCOPED_TRACE(file);
            const EvidenceRecord record = support::parseEvidence(support::readFile(file));
            const std::string text = writeEvidence(record);
            const EvidenceRecord again = support::parseEvidence(text);
            EXPECT_TRUE(again == record) << text;
            EXPECT_EQ(writeEvidence(again), text);
            for (const Instant now : {record.decideAt.value_or(later), later}) {
                EXPECT_EQ(support::answerText(again, policy, now),
                          support::answerText(record, policy, now));
            }
            ++count;
        }
    }
    EXPECT_GT(count, 70);
}

} // namespace
} // namespace loadwarden
