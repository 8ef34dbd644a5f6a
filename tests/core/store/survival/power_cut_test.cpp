#include "core/store/verify.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/survival/child.h"
#include "tests/core/store/survival/forgetful_disk.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <random>
#include <sys/wait.h>

namespace loadwarden {
namespace {

using loadwarden::testing::Acknowledged;
using loadwarden::testing::Acknowledger;
using loadwarden::testing::appendForEver;
using loadwarden::testing::Child;
using loadwarden::testing::expectWhole;
using loadwarden::testing::noteAbout;
using loadwarden::testing::TempFolder;
using loadwarden::testing::TestJournal;

namespace disk = loadwarden::testing::forgetful_disk;

/// What a process was told before the power failed.
std::vector<Acknowledged> untilThePowerFails(const SqliteFile& file, Syncing syncing,
                                             std::uint64_t seed)
{
    Child child([&](const Acknowledger& to) {
        std::mt19937_64 random(seed);
        disk::install();
        disk::cutAfterWrites(static_cast<std::int64_t>(1 + random() % 600), random());
        appendForEver(file, syncing, seed, to);
    });
    auto said = child.end();
    EXPECT_TRUE(WIFEXITED(child.status()));
    EXPECT_EQ(WEXITSTATUS(child.status()), disk::cutStatus);
    return said;
}

/// LOADWARDEN_KILLS / 3, or what is quick enough for every run.
int cuts()
{
    const char* const text = std::getenv("LOADWARDEN_KILLS");
    return (text == nullptr ? 120 : std::atoi(text)) / 3;
}

/// How many batches were acknowledged on one journal, all of which are there.
std::size_t cutOnOneJournal(int first, int times)
{
    const TempFolder folder;
    const SqliteFile file{folder / "a.lw"};
    Head trusted = TestJournal::make(file).store->lastKnown();
    std::size_t acknowledged = 0;
    for (int i = 0; i < times && !::testing::Test::HasFailure(); ++i) {
        const auto said =
            untilThePowerFails(file, Syncing::full, static_cast<std::uint64_t>(first + i) + 1);
        acknowledged += said.size();
        trusted = expectWhole(file, trusted, said);
    }
    NoProgress progress;
    Connection connection(file, {.access = Access::read});
    EXPECT_TRUE(verifyJournal(connection, {}, progress).sound());
    return acknowledged;
}

TEST(APowerCut, LosesNothingThatWasToldToBeRecorded)
{
    constexpr int onOneJournal = 100; // it takes longer to look at the longer it has grown
    std::size_t acknowledged = 0;
    for (int done = 0; done < cuts() && !HasFailure(); done += onOneJournal) {
        acknowledged += cutOnOneJournal(done, std::min(onOneJournal, cuts() - done));
    }
    std::cout << cuts() << " power cuts: " << acknowledged << " acknowledged batches, all there\n";
    EXPECT_GT(acknowledged, static_cast<std::size_t>(cuts()));
}

TEST(APowerCut, WithoutSyncingLosesWhatWasToldToBeRecorded)
{
    // Shows that the test above can fail.
    int lost = 0;
    constexpr int rounds = 12;
    for (int i = 0; i < rounds; ++i) {
        const TempFolder folder;
        const SqliteFile file{folder / "a.lw"};
        {
            TestJournal::make(file);
        }
        const auto said = untilThePowerFails(file, Syncing::off, static_cast<std::uint64_t>(i) + 1);
        try {
            Connection connection(file);
            NoProgress progress;
            VerifyRequest request{.pages = false};
            for (const Acknowledged& each : said) {
                request.expected.push_back({each.seq, each.hash});
            }
            lost += verifyJournal(connection, request, progress).sound() ? 0 : 1;
        } catch (const StoreError&) {
            ++lost;
        }
    }
    std::cout << "without syncing " << lost << " of " << rounds
              << " journals lost acknowledged entries or were damaged\n";
    EXPECT_GT(lost, rounds / 2);
}

TEST(AnAct, NeedsOneSync)
{
    const TempFolder folder;
    const SqliteFile file{folder / "a.lw"};
    {
        TestJournal::make(file);
    }
    constexpr int acts = 2000;
    Child child([&file](const Acknowledger& to) {
        disk::install();
        TestJournal journal(file);
        const std::int64_t before = disk::syncs();
        for (int i = 0; i < acts; ++i) {
            // An item is one packed instance: it is in one load.
            const std::string load = std::to_string(i / 20);
            journal.append(noteAbout({"ld-" + load, "it-" + load, "st-1"}));
        }
        to.say({}, disk::syncs() - before);
    });
    const auto said = child.end();
    ASSERT_EQ(child.status(), 0);
    ASSERT_EQ(said.size(), 1);
    std::cout << said[0].tag << " syncs for " << acts << " acts, checkpoints included\n";
    EXPECT_GE(said[0].tag, acts);
    EXPECT_LE(said[0].tag, acts * 105 / 100);
}

} // namespace
} // namespace loadwarden
