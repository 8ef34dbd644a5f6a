#include "tests/core/acts/grid_support.h"
#include "tests/core/acts/journal_support.h"
#include "tests/core/acts/predicates_support.h"
#include "tests/core/acts/steps_support.h"

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <thread>

// Small scope: every short history that the acts below can make, after a load that may go and after
// the same load with one entry left out. What must hold is asked of the list of entries alone
// (predicates_support.h), and answered by acts, fold, assemble and decide together.

namespace loadwarden::tests {
namespace {

/// A number of the environment; else what is usual.
int numberFrom(const char* variable, int usual)
{
    const char* const text = std::getenv(variable);
    return text == nullptr ? usual : std::atoi(text);
}

/// How many acts follow each other, the gaps between them taking turns.
int scope()
{
    return numberFrom("LOADWARDEN_SCOPE", 2);
}

/// How many follow each other with every gap before each: of the first steps so many, of all of
/// them one less.
int gridScope()
{
    return numberFrom("LOADWARDEN_GRID", 2);
}

/// Tries every sequence of up to `depth` more steps; the gaps differ from node to node.
class Tree {
public:
    explicit Tree(std::vector<Step> of) : m_steps(std::move(of)) {}

    void grow(const Journal& journal, Instant when, int depth)
    {
        const Decision decision = decide(assemble(journal.fold().record), {}, when);
        for (const std::string& broken : brokenPredicates(journal.entries(), decision)) {
            ADD_FAILURE() << broken << "\nafter" << m_path << '\n' << describe(decision);
        }
        ++tried;
        released += decision.verdict == Verdict::release ? 1 : 0;
        if (depth == 0 || ::testing::Test::HasFailure()) {
            return;
        }
        for (std::size_t i = 0; i < m_steps.size(); ++i) {
            Journal next = journal;
            const Instant then =
                when
                + Duration::milliseconds(gaps[(i + static_cast<std::size_t>(tried)) % gaps.size()]);
            m_steps[i](next, then);
            const std::string path = m_path;
            m_path += ' ' + std::to_string(i);
            grow(next, then, depth - 1);
            m_path = path;
        }
    }

    std::int64_t tried = 0;
    std::int64_t released = 0;

private:
    std::vector<Step> m_steps;
    std::string m_path;
};

/// The same journal without one entry; entries that correct are not among them.
Journal without(const Journal& journal, std::int64_t left)
{
    Journal shorter;
    for (const Entry& entry : journal.entries()) {
        if (entry.seq != left) {
            shorter.write(entry);
        }
    }
    return shorter;
}

TEST(SmallScope, AfterALoadThatMayGo)
{
    Tree tree(steps());
    tree.grow(releasable(Implant::yes), at(9, 0), scope());
    EXPECT_GT(tree.tried, 1'000);
    EXPECT_GT(tree.released, 100);
    EXPECT_LT(tree.released, tree.tried / 2);
}

void tryEveryGap(const std::vector<Step>& of, int depth)
{
    const Tried tried = tryGrid(releasable(Implant::yes), at(9, 0), of, depth,
                                std::max(1U, std::thread::hardware_concurrency()));
    EXPECT_EQ(tried.broken, "");
    EXPECT_EQ(tried.histories, sequencesOnGrid(of.size(), depth));
    EXPECT_GT(tried.released, tried.histories / 40);
    std::cout << tried.histories << " histories of up to " << depth << " of " << of.size()
              << " acts, " << tried.released << " released\n";
}

TEST(SmallScope, AllStepsWithEveryGap)
{
    tryEveryGap(steps(), gridScope() - 1);
}

TEST(SmallScope, TheFirstStepsWithEveryGapAndOneMore)
{
    std::vector<Step> first = steps();
    first.resize(firstSteps);
    tryEveryGap(first, gridScope());
}

/// Releases among all that the steps make of a journal, each journal made anew.
std::int64_t releasesAfter(const Journal& journal, Instant when, const std::vector<Step>& of,
                           int depth)
{
    std::int64_t released = journal.decideAt(when).verdict == Verdict::release ? 1 : 0;
    for (std::size_t i = 0; depth > 0 && i < of.size() * gaps.size(); ++i) {
        const Instant then = when + Duration::milliseconds(gaps[i % gaps.size()]);
        Journal next = journal;
        of[i / gaps.size()](next, then);
        released += releasesAfter(next, then, of, depth - 1);
    }
    return released;
}

/// The grid makes entries once and uses them again; they must be what the steps would have made.
TEST(SmallScope, TheGridTriesWhatTheStepsDo)
{
    std::vector<Step> some;
    for (const Step& step : steps()) {
        // What is corrected by it differs from history to history.
        if (!step.corrects.empty() || std::holds_alternative<ChemicalRead>(step.act)) {
            some.push_back(step);
        }
    }
    const Journal base = releasable(Implant::yes);
    for (const unsigned workers : {1U, 3U}) {
        const Tried tried = tryGrid(base, at(9, 0), some, 2, workers);
        EXPECT_EQ(tried.released, releasesAfter(base, at(9, 0), some, 2));
        EXPECT_EQ(tried.histories, sequencesOnGrid(some.size(), 2));
        EXPECT_EQ(tried.broken, "");
    }
}

TEST(SmallScope, AfterALoadThatLacksAnEntry)
{
    const Journal whole = releasable(Implant::yes);
    std::int64_t released = 0;
    for (std::int64_t seq = whole.seqOf<CycleStarted>("ld-1"); seq <= whole.entries().back().seq;
         ++seq) {
        Tree tree(steps());
        tree.grow(without(whole, seq), at(9, 0), scope() - 1);
        released += tree.released;
    }
    EXPECT_GT(released, 5) << "what is lacking can be entered";
}

TEST(SmallScope, TwoEntriesThatHaveNothingInCommonMayChangePlaces)
{
    const std::vector<Step> all = steps();
    const Journal base = releasable(Implant::yes);
    int swapped = 0;
    for (const Step& first : all) {
        for (const Step& second : all) {
            Journal journal = base;
            first(journal, at(9, 0));
            second(journal, at(9, 0));
            if (journal.entries().size() != base.entries().size() + 2) {
                continue;
            }
            const Entry& last = journal.entries().back();
            const Entry& before = journal.entry(last.seq - 1);
            const bool aboutOne = std::ranges::any_of(
                before.subjects, [&last](const std::string& id) { return last.isAbout(id); });
            if (last.supersedes == before.seq
                || (last.supersedes != 0 && last.supersedes == before.supersedes)
                || (aboutOne && last.act.index() == before.act.index())) {
                continue;
            }
            Journal turned = base;
            turned.write(last);
            turned.write(before);
            EXPECT_EQ(describe(turned.decideAt(at(9, 0))), describe(journal.decideAt(at(9, 0))));
            ++swapped;
        }
    }
    EXPECT_GT(swapped, 20);
}

} // namespace
} // namespace loadwarden::tests
