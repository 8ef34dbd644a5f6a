#include "tests/core/acts/predicates_support.h"
#include "tests/core/acts/steps_support.h"

#include <rapidcheck/gtest.h>

// Longer histories than every one that can be tried, at random.

namespace loadwarden::tests {
namespace {

/// A load that may go with some entries left out, and up to 14 acts and corrections after it.
struct History {
    Journal journal;
    Instant now = at(9, 0);
};

History anyHistory()
{
    static const Journal whole = releasable(Implant::yes);
    static const std::vector<Step> all = steps();
    History history;
    const std::int64_t start = whole.seqOf<CycleStarted>("ld-1");
    const std::int64_t left =
        *rc::gen::inRange<std::int64_t>(start, whole.entries().back().seq * 2 - start);
    for (const Entry& entry : whole.entries()) {
        if (entry.seq != left) {
            history.journal.write(entry);
        }
    }
    const int length = *rc::gen::inRange(0, 15);
    for (int i = 0; i < length; ++i) {
        history.now = history.now + Duration::milliseconds(*rc::gen::elementOf(gaps));
        (*rc::gen::elementOf(all))(history.journal, history.now);
    }
    return history;
}

RC_GTEST_PROP(AnyHistory, KeepsWhatIsAskedOfItsEntriesAlone, ())
{
    const History history = anyHistory();
    const Decision decision = history.journal.decideAt(history.now);
    RC_CLASSIFY(decision.verdict == Verdict::release, "released");
    const std::vector<std::string> broken = brokenPredicates(history.journal.entries(), decision);
    RC_LOG() << describe(decision);
    RC_ASSERT(broken == std::vector<std::string>{});
}

RC_GTEST_PROP(AnyHistory, AsOfAnEntryIsTheShorterOne, ())
{
    const History history = anyHistory();
    const std::vector<Entry>& entries = history.journal.entries();
    const auto seq = *rc::gen::inRange<std::int64_t>(0, entries.back().seq + 1);
    const std::vector<Entry> shorter(entries.begin(), entries.begin() + seq);
    const FoldedEvidence asOf = foldEvidence(entriesUpTo(entries, seq), "ld-1");
    const FoldedEvidence alone = foldEvidence(shorter, "ld-1");
    RC_ASSERT(asOf.digest == alone.digest);
    RC_ASSERT(asOf.entries == alone.entries);
    RC_ASSERT(asOf.history == alone.history);
    RC_ASSERT(describe(decide(assemble(asOf.record), {}, history.now))
              == describe(decide(assemble(alone.record), {}, history.now)));
}

RC_GTEST_PROP(AnyHistory, StaysInOrderAndWithinTheJournal, ())
{
    const History history = anyHistory();
    const FoldedEvidence folded = history.journal.fold();
    RC_ASSERT(std::ranges::is_sorted(folded.entries));
    RC_ASSERT(std::ranges::is_sorted(folded.misfits));
    // Every entry about the load has its line, once.
    std::vector<std::int64_t> about;
    for (const Entry& entry : history.journal.entries()) {
        if (entry.isAbout("ld-1")) {
            about.push_back(entry.seq);
        }
    }
    std::vector<std::int64_t> lines;
    for (const HistoryLine& line : folded.history) {
        lines.push_back(line.seq);
        RC_ASSERT((line.by != 0)
                  == (line.state == LineState::struck || line.state == LineState::amended));
        RC_ASSERT(line.by == 0 || line.by > line.seq);
    }
    RC_ASSERT(lines == about);
}

} // namespace
} // namespace loadwarden::tests
