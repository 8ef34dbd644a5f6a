// The journal verified and copied out while it is in use.
#include "core/desk/journal_copy.h"
#include "core/desk/sealing.h"
#include "core/store/store_error.h"
#include "core/store/write_transaction.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace loadwarden {
namespace {

using loadwarden::testing::faultOf;
using loadwarden::testing::WorkingDepartment;
using ::testing::IsEmpty;
using ::testing::SizeIs;

namespace fs = std::filesystem;

class Stopping final : public Progress {
public:
    bool goOn(std::int64_t, std::int64_t) override { return false; }
};

class ACopy : public ::testing::Test {
protected:
    static std::string read(const fs::path& file)
    {
        std::ifstream in(file, std::ios::binary);
        return {std::istreambuf_iterator<char>(in), {}};
    }

    [[nodiscard]] std::string entries()
    {
        std::string all;
        ReadSnapshot snapshot(department.office().connection());
        JournalReader reader(snapshot);
        EntryCursor cursor = reader.range(1);
        while (const auto entry = cursor.next()) {
            all += entry->bytes + '\n';
        }
        return all;
    }

    JournalCopy copy(const fs::path& target, IfThere ifThere = IfThere::refuse)
    {
        return copyLines(department.office(), target, ifThere, unseen);
    }

    WorkingDepartment department;
    NoProgress unseen;
};

TEST_F(ACopy, IsEveryEntryALine)
{
    const fs::path target = department.folder() / "a.jsonl";
    const JournalCopy made = copy(target);
    EXPECT_EQ(read(target), entries());
    EXPECT_EQ(made.bytes, static_cast<std::int64_t>(fs::file_size(target)));
    ReadSnapshot snapshot(department.office().connection());
    EXPECT_EQ(made.entries, JournalReader(snapshot).head().seq);
    EXPECT_FALSE(fs::exists(target.string() + ".part"));
}

TEST_F(ACopy, ReplacesAFileOnlyWhenItIsToldTo)
{
    const fs::path target = department.folder() / "a.jsonl";
    std::ofstream(target) << "mine";
    EXPECT_EQ(faultOf([&] { copy(target); }), StoreFault::exists);
    EXPECT_EQ(read(target), "mine");
    EXPECT_FALSE(copy(target, IfThere::replace).isCancelled);
    EXPECT_EQ(read(target), entries());
}

TEST_F(ACopy, LeavesNothingWhereItIsCancelled)
{
    const fs::path target = department.folder() / "a.jsonl";
    std::ofstream(target) << "mine";
    Stopping stopping;
    EXPECT_TRUE(copyLines(department.office(), target, IfThere::replace, stopping).isCancelled);
    EXPECT_EQ(read(target), "mine");
    EXPECT_FALSE(fs::exists(target.string() + ".part"));
}

TEST_F(ACopy, NeverGoesOverWhatIsTheJournals)
{
    const std::string journal = department.file().string();
    fs::create_symlink(journal, department.folder() / "link");
    const fs::path mine[] = {journal,
                             journal + "-wal",
                             journal + ".lock",
                             department.folder() / "link",
                             department.folder() / "keep" / ".." / "department.lwj",
                             department.place().keep / "heads" / "x"};
    for (const fs::path& target : mine) {
        EXPECT_EQ(faultOf([&] { copy(target, IfThere::replace); }), StoreFault::misuse) << target;
    }
    EXPECT_FALSE(
        isOfJournal(journal, department.place(), department.folder() / "department.jsonl"));
    EXPECT_TRUE(verifyHere(department.office(), {}, true, unseen).sound());
}

TEST_F(ACopy, IsNotMadeInAFolderThatIsNotThere)
{
    EXPECT_TRUE(faultOf([&] { copy(department.folder() / "none" / "a.jsonl"); }).has_value());
}

TEST(AVerification, SaysByWhoseKeysTheSealsAre)
{
    WorkingDepartment department;
    makeKeyIfNone(department.place());
    (void)sealNow(department.office());
    NoProgress unseen;
    const VerifyReport report = verifyHere(department.office(), {}, false, unseen);
    EXPECT_TRUE(report.sound());
    const std::vector<SealedBy> keys = sealedBy(department.office(), report);
    ASSERT_THAT(keys, SizeIs(1));
    EXPECT_THAT(keys[0].recordedBy, IsEmpty()) << "the first seal's";
    EXPECT_GE(keys[0].seals.held, 1);
}

TEST(AVerification, FindsAnEntryThatWasChanged)
{
    WorkingDepartment department;
    {
        WriteTransaction transaction(department.office().connection());
        transaction.statement("DROP TRIGGER j_entry_no_update").run();
        transaction
            .statement("UPDATE j_entry SET bytes = replace(bytes, 'Name of st-o', 'Name of st-x') "
                       "WHERE seq = 4")
            .run();
        transaction.commit();
    }
    NoProgress unseen;
    const VerifyReport report = verifyHere(department.office(), {}, false, unseen);
    EXPECT_FALSE(report.sound());
    EXPECT_GE(report.faultCount, 1);
}

} // namespace
} // namespace loadwarden
