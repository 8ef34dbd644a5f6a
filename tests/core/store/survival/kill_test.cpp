#include "core/store/verify.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/survival/child.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <random>
#include <thread>

namespace loadwarden {
namespace {

using loadwarden::testing::Acknowledger;
using loadwarden::testing::appendForEver;
using loadwarden::testing::Child;
using loadwarden::testing::expectWhole;
using loadwarden::testing::TempFolder;
using loadwarden::testing::TestJournal;

/// LOADWARDEN_KILLS, or what is quick enough for every run.
int kills()
{
    const char* const text = std::getenv("LOADWARDEN_KILLS");
    return text == nullptr ? 300 : std::atoi(text);
}

/// What came of killing.
struct Tally {
    std::int64_t acknowledged = 0;
    std::int64_t unacknowledged = 0;
    int beforeTheFirst = 0;
};

/// Kills so often on one journal, which is looked at after each and verified whole at the end.
void killOnOneJournal(int times, std::mt19937_64& random, Tally& tally)
{
    const TempFolder folder;
    const SqliteFile file{folder / "a.lw"};
    Head trusted = TestJournal::make(file).store->lastKnown();
    for (int i = 0; i < times; ++i) {
        const std::uint64_t seed = random();
        Child child([&file, seed](const Acknowledger& to) {
            appendForEver(file, Syncing::full, seed, to);
        });
        // One in four may be killed while it opens the journal and takes in what the one before
        // left in the write-ahead log.
        if (random() % 4 != 0) {
            child.waitForTheFirst();
        }
        std::this_thread::sleep_for(std::chrono::microseconds(random() % 10'000));
        child.kill();
        const auto said = child.end();
        const Head head = expectWhole(file, trusted, said);
        const std::int64_t last = said.empty() ? trusted.seq : said.back().seq;
        ASSERT_LE(last, head.seq);
        ASSERT_LE(head.seq, last + loadwarden::testing::batch) << "what nobody had asked for";
        tally.acknowledged += static_cast<std::int64_t>(said.size());
        tally.unacknowledged += head.seq == last ? 0 : 1;
        tally.beforeTheFirst += said.empty() ? 1 : 0;
        trusted = head;
        ASSERT_FALSE(::testing::Test::HasFailure()) << "after " << i << " kills";
    }
    NoProgress progress;
    Connection connection(file, {.access = Access::read});
    EXPECT_TRUE(verifyJournal(connection, {}, progress).sound());
}

// Killing alone says nothing about syncing: what was written survives in the operating system. See
// power_cut_test.cpp.
TEST(AKilledProcess, LosesNothingThatItWasToldIsRecorded)
{
    // Looking at a journal takes longer the longer it has grown.
    constexpr int onOneJournal = 300;
    std::mt19937_64 random(20310304);
    Tally tally;
    for (int done = 0; done < kills(); done += onOneJournal) {
        killOnOneJournal(std::min(onOneJournal, kills() - done), random, tally);
        ASSERT_FALSE(HasFailure());
    }
    std::cout << kills() << " kills: " << tally.acknowledged << " acknowledged batches, all there; "
              << tally.unacknowledged << " were recorded but not yet acknowledged; "
              << tally.beforeTheFirst << " processes were killed before their first\n";
    EXPECT_GT(tally.acknowledged, kills() / 2);
}

} // namespace
} // namespace loadwarden
