#include "tests/core/acts/grid_support.h"

#include "tests/core/acts/predicates_support.h"

#include <atomic>
#include <map>
#include <thread>
#include <tuple>

namespace loadwarden::tests {
namespace {

/// One worker's histories: a list of entries that grows and shrinks at its end.
class Grid {
public:
    Grid(const Journal& journal, const std::vector<Step>& steps, std::atomic<bool>& stop)
        : m_entries(journal.entries()), m_steps(steps), m_stop(stop)
    {
        constexpr std::size_t mostSteps = 16;
        m_entries.reserve(m_entries.size() + mostSteps);
    }

    /// What the list says now.
    void ask(Instant when)
    {
        const Decision decision =
            decide(assemble(foldEvidence(m_entries, "ld-1").record), {}, when);
        const std::vector<std::string> broken = brokenPredicates(m_entries, decision);
        ++m_tried.histories;
        m_tried.released += decision.verdict == Verdict::release ? 1 : 0;
        if (!broken.empty() && m_tried.broken.empty()) {
            m_tried.broken = broken.front() + "\nafter" + m_path + '\n' + describe(decision);
            m_stop = true;
        }
    }

    /// All sequences of up to `depth` steps that begin with a step after a gap.
    void grow(std::size_t step, std::int64_t gap, Instant when, int depth)
    {
        const Instant then = when + Duration::milliseconds(gap);
        const std::size_t before = m_entries.size();
        const std::size_t pathBefore = m_path.size();
        m_path += ' ' + std::to_string(step) + '@' + std::to_string(gap);
        if (const auto target = m_steps[step].target(m_entries)) {
            m_entries.push_back(entryOf(step, *target, then));
        }
        ask(then);
        if (depth > 1) {
            growAll(then, depth - 1);
        }
        m_entries.resize(before);
        m_path.resize(pathBefore);
    }

    void growAll(Instant when, int depth)
    {
        for (std::size_t step = 0; step < m_steps.size(); ++step) {
            for (const std::int64_t gap : gaps) {
                if (m_stop) {
                    return;
                }
                grow(step, gap, when, depth);
            }
        }
    }

    [[nodiscard]] const Tried& tried() const { return m_tried; }

private:
    /// The entry of a step, as it went through bytes. It depends on its place, its moment and the
    /// entry that it corrects, which its hash names.
    const Entry& entryOf(std::size_t step, std::int64_t target, Instant when)
    {
        const Hash corrected =
            target == 0 ? Hash{} : m_entries[static_cast<std::size_t>(target - 1)].hash;
        const std::tuple key(step, m_entries.size(), when.ms, corrected.bytes);
        const auto found = m_made.find(key);
        if (found != m_made.end()) {
            return found->second;
        }
        Journal journal(m_entries);
        m_steps[step](journal, when);
        return m_made.emplace(key, journal.entries().back()).first->second;
    }

    std::vector<Entry> m_entries;
    const std::vector<Step>& m_steps;
    std::atomic<bool>& m_stop;
    std::string m_path;
    Tried m_tried;
    std::map<std::tuple<std::size_t, std::size_t, std::int64_t, decltype(Hash::bytes)>, Entry>
        m_made;
};

} // namespace

Tried tryGrid(const Journal& journal, Instant when, const std::vector<Step>& steps, int depth,
              unsigned workers)
{
    std::atomic<bool> stop = false;
    std::atomic<std::size_t> next = 0;
    std::vector<Tried> parts(workers);
    const auto work = [&](Tried& part, bool isFirst) {
        Grid grid(journal, steps, stop);
        if (isFirst) {
            grid.ask(when);
        }
        const std::size_t firsts = depth > 0 ? steps.size() * gaps.size() : 0;
        for (std::size_t i = next++; i < firsts && !stop; i = next++) {
            grid.grow(i / gaps.size(), gaps[i % gaps.size()], when, depth);
        }
        part = grid.tried();
    };
    {
        std::vector<std::jthread> threads;
        for (unsigned i = 1; i < workers; ++i) {
            threads.emplace_back(work, std::ref(parts[i]), false);
        }
        work(parts.front(), true);
    }
    Tried all;
    for (const Tried& part : parts) {
        all.histories += part.histories;
        all.released += part.released;
        all.broken += part.broken;
    }
    return all;
}

std::int64_t sequencesOnGrid(std::size_t steps, int depth)
{
    std::int64_t all = 1;
    std::int64_t longest = 1;
    for (int i = 0; i < depth; ++i) {
        longest *= static_cast<std::int64_t>(steps * gaps.size());
        all += longest;
    }
    return all;
}

} // namespace loadwarden::tests
