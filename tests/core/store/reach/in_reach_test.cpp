// The fold over what is in reach against the fold over the whole journal.
#include "core/release/decision.h"
#include "tests/core/store/reach/stored_weeks.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <random>

namespace loadwarden {
namespace {

using loadwarden::testing::BulkWriter;
using loadwarden::testing::entriesFor;
using loadwarden::testing::seqsOf;
using loadwarden::testing::TempFolder;
using loadwarden::testing::wholeJournal;
using loadwarden::tests::at;
using loadwarden::tests::cyclesIn;
using loadwarden::tests::Journal;
using loadwarden::tests::weeks;
using loadwarden::tests::WeeksOptions;

std::uint64_t journals()
{
    const char* const asked = std::getenv("LOADWARDEN_JOURNALS");
    return asked == nullptr ? 2 : static_cast<std::uint64_t>(std::atoll(asked));
}

Decision decisionOf(const FoldedEvidence& folded, Instant now)
{
    return decide(assemble(folded.record), {}, now);
}

std::string textOf(const Finding& finding)
{
    return std::string(loadwarden::textOf(finding.key)) + ' '
           + std::string(loadwarden::textOf(finding.outcome)) + ' ' + finding.subject + " item "
           + std::to_string(finding.item);
}

bool isThere(const Finding& finding, const Decision& decision)
{
    return std::ranges::any_of(decision.findings, [&](const Finding& each) {
        return each.key == finding.key && each.outcome == finding.outcome
               && each.subject == finding.subject && each.item == finding.item;
    });
}

/// What ACTS.md, 6, says of cycles out of reach: their order among themselves, who signed what of
/// them, and labels that come back are not this load's.
bool isOfOutOfReach(Key key)
{
    constexpr std::array keys{Key::orderDisagrees, Key::orderOffsetUnknown,
                              Key::orderOverlaps,  Key::orderHistoryDisagrees,
                              Key::actUnsigned,    Key::actTimesImpossible,
                              Key::itemInTwoLoads, Key::itemInTest};
    return std::ranges::find(keys, key) != keys.end();
}

/// Whether all that the fold over the journal calls not understood is in the part, or is about no
/// cycle of it.
bool isAsUnderstood(const FoldedEvidence& folded, const std::vector<Entry>& whole,
                    const std::vector<Entry>& part)
{
    const std::vector<std::string> cycles = cyclesIn(part);
    return std::ranges::all_of(folded.misfits, [&](const Misfit& misfit) {
        const Entry& entry = whole.at(static_cast<std::size_t>(misfit.seq - 1));
        return misfit.why != MisfitWhy::notUnderstood
               || std::ranges::find(part, misfit.seq, &Entry::seq) != part.end()
               || std::ranges::none_of(part, [&](const Entry& each) {
                      return !each.subject("ld").empty()
                             && std::ranges::find(cycles, each.subject("ld")) != cycles.end()
                             && std::ranges::any_of(entry.subjects, [&](const std::string& id) {
                                    return each.isAbout(id);
                                });
                  });
    });
}

struct Comparison {
    int same = 0;
    int stricter = 0;
    int loads = 0;
    std::size_t most = 0; ///< entries in reach of one
};

void compare(std::uint64_t seed, const WeeksOptions& options, bool mayDiffer, Comparison& all)
{
    const TempFolder folder;
    BulkWriter writer(SqliteFile{folder / "a.lw"}, at(4, 0), 1'000);
    const Journal journal = weeks(seed, options);
    write(writer, journal.entries());
    const std::vector<Entry> whole = wholeJournal(writer.connection());
    ASSERT_EQ(whole.size(), journal.entries().size());
    const Instant now = whole.back().recordedAt.at + Duration::minutes(60);

    ReadSnapshot snapshot(writer.connection());
    EntryCache cache;
    ReachReader reader(snapshot, cache);
    for (const std::string& cycle : cyclesIn(whole)) {
        const std::vector<Entry> part = entriesFor(reader, cycle);
        const FoldedEvidence fromWhole = foldEvidence(whole, cycle);
        const FoldedEvidence fromPart = foldEvidence(part, cycle);
        const std::string where = "journal " + std::to_string(seed) + ", " + cycle;
        EXPECT_EQ(fromPart.history, fromWhole.history) << where;
        EXPECT_TRUE(isAsUnderstood(fromWhole, whole, part)) << where;
        EXPECT_EQ(fromPart.policy, fromWhole.policy) << where;
        EXPECT_EQ(fromPart.itemIds, fromWhole.itemIds) << where;
        if (fromWhole.record.test) {
            continue;
        }
        ++all.loads;
        all.most = std::max(all.most, part.size());
        const Decision of = decisionOf(fromWhole, now);
        const Decision is = decisionOf(fromPart, now);
        bool differs = false;
        for (const Finding& finding : of.findings) {
            if (finding.outcome > Outcome::note && !isThere(finding, is)) {
                EXPECT_TRUE(mayDiffer && isOfOutOfReach(finding.key))
                    << where << " lost " << textOf(finding);
                differs = true;
            }
        }
        bool adds = false;
        for (const Finding& finding : is.findings) {
            if (finding.outcome > Outcome::note && !isThere(finding, of)) {
                adds = true;
                if (!mayDiffer) {
                    std::printf("%s: added %s\n", where.c_str(), textOf(finding).c_str());
                }
            }
        }
        all.stricter += adds ? 1 : 0;
        all.same += adds || differs ? 0 : 1;
        if (!differs) {
            EXPECT_GE(is.verdict, of.verdict) << where;
            for (std::size_t i = 0; i < of.items.size(); ++i) {
                EXPECT_GE(is.items[i].verdict, of.items[i].verdict) << where << " item " << i;
            }
        }
    }
}

void say(const Comparison& all)
{
    std::printf("%d loads: %d the same, %d stricter; at most %zu entries in reach\n", all.loads,
                all.same, all.stricter, all.most);
}

TEST(InReach, IsEverythingThatADecisionRestsOnInAnOrderlyDepartment)
{
    Comparison all;
    for (std::uint64_t seed = 1; seed <= journals(); ++seed) {
        compare(seed, {.days = 14, .oddities = false}, false, all);
    }
    say(all);
    EXPECT_GE(all.same * 100, all.loads * 95);
}

TEST(InReach, NeverBettersAVerdictExceptAsTheRulesOfReachSay)
{
    Comparison all;
    for (std::uint64_t seed = 1; seed <= journals(); ++seed) {
        compare(1'000 + seed, {.days = 14, .oddities = true}, true, all);
    }
    say(all);
}

TEST(InReach, IsTheSameEvidenceWhereEverythingIsInReach)
{
    for (std::uint64_t seed = 1; seed <= journals(); ++seed) {
        const TempFolder folder;
        BulkWriter writer(SqliteFile{folder / "a.lw"}, at(4, 0), 1'000);
        const Journal journal =
            weeks(2'000 + seed, {.days = 1, .sterilizers = 1, .loadsADay = 3, .oddities = true});
        write(writer, journal.entries());
        const std::vector<Entry> whole = wholeJournal(writer.connection());
        const Instant now = whole.back().recordedAt.at + Duration::minutes(60);
        for (const std::string& cycle : cyclesIn(whole)) {
            const FoldedEvidence part = foldEvidence(entriesFor(writer.connection(), cycle), cycle);
            const FoldedEvidence all = foldEvidence(whole, cycle);
            EXPECT_EQ(part.entries, all.entries) << seed << ' ' << cycle;
            EXPECT_EQ(part.digest, all.digest) << seed << ' ' << cycle;
            EXPECT_EQ(tests::describe(decisionOf(part, now)), tests::describe(decisionOf(all, now)))
                << seed << ' ' << cycle;
        }
    }
}

TEST(InReach, AsOfAnEarlierEntryIsWhatItWasThen)
{
    for (std::uint64_t seed = 1; seed <= journals(); ++seed) {
        const TempFolder folder;
        BulkWriter writer(SqliteFile{folder / "a.lw"}, at(4, 0), 1'000);
        const Journal journal = weeks(3'000 + seed, {.days = 8, .oddities = true});
        std::mt19937_64 random(seed);
        const auto middle =
            journal.entries().size() / 3 + random() % (journal.entries().size() / 2);
        const std::span<const Entry> entries(journal.entries());
        write(writer, entries.first(middle));
        const std::vector<std::string> cycles =
            cyclesIn({entries.begin(), entries.begin() + static_cast<std::ptrdiff_t>(middle)});
        std::vector<std::vector<std::int64_t>> seqs;
        std::vector<std::string> digests;
        for (const std::string& cycle : cycles) {
            const std::vector<Entry> part = entriesFor(writer.connection(), cycle);
            seqs.push_back(seqsOf(part));
            digests.push_back(foldEvidence(part, cycle).digest);
        }
        write(writer, entries.subspan(middle));
        for (std::size_t i = 0; i < cycles.size(); ++i) {
            const std::vector<Entry> part =
                entriesFor(writer.connection(), cycles[i], static_cast<std::int64_t>(middle));
            EXPECT_EQ(seqsOf(part), seqs[i]) << seed << ' ' << cycles[i];
            EXPECT_EQ(foldEvidence(part, cycles[i]).digest, digests[i]) << seed << ' ' << cycles[i];
        }
    }
}

TEST(InReach, ACacheThatIsTooSmallChangesNothing)
{
    const TempFolder folder;
    BulkWriter writer(SqliteFile{folder / "a.lw"}, at(4, 0), 1'000);
    write(writer, weeks(7, {.days = 3}).entries());
    ReadSnapshot snapshot(writer.connection());
    EntryCache small(10);
    EntryCache large;
    ReachReader few(snapshot, small);
    ReachReader many(snapshot, large);
    for (const std::string& cycle : cyclesIn(weeks(7, {.days = 3}).entries())) {
        EXPECT_EQ(seqsOf(entriesFor(few, cycle)), seqsOf(entriesFor(many, cycle)));
    }
    EXPECT_LE(small.size(), 10U);
}

TEST(InReach, OfACycleThatNobodyNamedIsNoCycle)
{
    const TempFolder folder;
    BulkWriter writer(SqliteFile{folder / "a.lw"}, at(4, 0), 1'000);
    write(writer, weeks(7, {.days = 1}).entries());
    const std::vector<Entry> part = entriesFor(writer.connection(), "ld-nobody");
    EXPECT_TRUE(
        std::ranges::none_of(part, [](const Entry& each) { return !each.subject("ld").empty(); }));
    EXPECT_EQ(foldEvidence(part, "ld-nobody").phase, Phase::beingLoaded);
}

} // namespace
} // namespace loadwarden
