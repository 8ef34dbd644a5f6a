#include "core/store/verify.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/survival/child.h"

#include <gtest/gtest.h>

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

// Killing alone says nothing about syncing: what was written survives in the operating system. See
// power_cut_test.cpp.
TEST(AKilledProcess, LosesNothingThatItWasToldIsRecorded)
{
    const TempFolder folder;
    const SqliteFile file{folder / "a.lw"};
    Head trusted = TestJournal::make(file).store->lastKnown();
    std::mt19937_64 random(20310304);
    std::int64_t acknowledged = 0;
    std::int64_t unacknowledged = 0;
    int beforeTheFirst = 0;
    for (int i = 0; i < kills(); ++i) {
        Child child([&](const Acknowledger& to) {
            appendForEver(file, Syncing::full, static_cast<std::uint64_t>(i), to);
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
        acknowledged += static_cast<std::int64_t>(said.size());
        unacknowledged += head.seq == last ? 0 : 1;
        beforeTheFirst += said.empty() ? 1 : 0;
        trusted = head;
        if (HasFailure()) {
            return;
        }
    }
    NoProgress progress;
    Connection connection(file, {.access = Access::read});
    EXPECT_TRUE(verifyJournal(connection, {}, progress).sound());
    std::cout << kills() << " kills: " << acknowledged << " acknowledged batches, all there; "
              << unacknowledged << " were recorded but not yet acknowledged; " << beforeTheFirst
              << " processes were killed before their first\n";
    EXPECT_GT(acknowledged, kills() / 2);
}

} // namespace
} // namespace loadwarden
