#include "core/store/reach/cycles_in_reach.h"

#include "core/store/indexes/cycle_marks.h"
#include "core/store/queries.h"

#include <algorithm>
#include <charconv>
#include <limits>
#include <map>

namespace loadwarden {
namespace {

constexpr std::int64_t always = std::numeric_limits<std::int64_t>::max() / 4;

/// When a cycle ran, by everything that was said.
struct Span {
    std::int64_t first = 0;
    std::int64_t last = 0;
};

/// The times in groups, so that one that was typed a year off does not take in the year between.
std::vector<Span> spansOf(const std::set<std::int64_t>& times)
{
    std::vector<Span> spans;
    for (const std::int64_t at : times) {
        if (spans.empty() || at - spans.back().last > nearMs) {
            spans.push_back({at, at});
        } else {
            spans.back().last = at;
        }
    }
    return spans;
}

/// How a cycle stands that is near: its times as said.
struct Nearby {
    std::set<std::int64_t> starts;
    std::set<std::int64_t> ends;

    [[nodiscard]] bool isDoubtful() const
    {
        return starts.size() != 1 || ends.size() != 1 || *ends.begin() < *starts.begin()
               || *ends.begin() - *starts.begin() > 2 * besideMs;
    }
    [[nodiscard]] bool isWithin(std::int64_t from, std::int64_t to) const
    {
        const auto in = [from, to](std::int64_t at) { return at >= from && at <= to; };
        return std::ranges::any_of(starts, in) || std::ranges::any_of(ends, in);
    }
};

/// What was said of the failures of a cycle.
struct Troubles {
    std::int64_t newest = 0; ///< seq of the newest
    std::int64_t newestRight = 0;
    bool isFree = true; ///< every resolution frees
};

} // namespace

/// The search among the cycles of one sterilizer.
class CyclesInReach::OfSterilizer {
public:
    OfSterilizer(CyclesInReach& reach, const std::string& sterilizer, std::string_view cycle,
                 const Span& span, std::set<std::string>& into)
        : m_reach(reach),
          m_sterilizer(sterilizer),
          m_cycle(cycle),
          m_own(reach.m_ask.own(sterilizer)),
          m_span(span),
          m_into(into)
    {
        // A time of the sterilizer's clock may be off by as much.
        m_span.first -= m_own.clockWidth;
        m_span.last += m_own.clockWidth;
    }

    void all(const std::set<std::int64_t>& counters)
    {
        m_into.insert(m_own.inIncidents.begin(), m_own.inIncidents.end());
        addNear();
        addTests();
        addVialsAround(m_span.first, m_span.last);
        addTroubles();
        addGrave();
        for (const std::int64_t counter : counters) {
            addCounter(counter);
        }
        addLabels();
    }

private:
    [[nodiscard]] Statement select(Query query)
    {
        Statement rows = m_reach.m_snapshot.statement(sqlOf(query, m_reach.m_snapshot.dialect()));
        rows.bind(":sterilizer", m_sterilizer).bind(":seq", m_reach.m_upTo);
        return rows;
    }

    template <class Visit>
    void between(std::string_view mark, std::int64_t from, std::int64_t to, Visit visit)
    {
        for (const MarkRow& row : m_reach.m_marks.between(m_sterilizer, mark, from, to)) {
            visit(row);
        }
    }

    /// The nearest cycles with a mark from a time on, or back from it; at most so many, and none
    /// further away than `end`.
    void addNext(std::string_view mark, std::string_view detail, bool forward, std::int64_t at,
                 std::int64_t end, std::size_t most)
    {
        // A cycle has a row for each time at which it was said to begin.
        constexpr std::int64_t rowsOfCycle = 4;
        Next next{m_cycle, end,  forward, most, (static_cast<std::int64_t>(most) + 1) * rowsOfCycle,
                  {},      false};
        addNextAtHand(mark, detail, at, next);
        if (!next.isDone) {
            next.found.clear();
            Statement rows = select(forward ? Query::marksFrom : Query::marksUpTo);
            rows.bind(":mark", mark)
                .bind(forward ? ":from" : ":to", at)
                .bind(":detail", detail)
                .bind(":limit", next.rows);
            while (!next.isDone && rows.step()) {
                next.take(rows.integer(0), rows.text(1));
            }
        }
        m_into.merge(next.found);
    }

    /// What is found of the nearest cycles with a mark.
    struct Next {
        std::string_view cycle; ///< which is none of them
        std::int64_t end;       ///< none is further away
        bool forward;
        std::size_t most;
        std::int64_t rows; ///< more are not looked at
        std::set<std::string> found;
        bool isDone; ///< no further row matters

        void take(std::int64_t at, const std::string& id)
        {
            if (forward ? at > end : at < end) {
                isDone = true;
                return;
            }
            if (id != cycle) {
                found.insert(id);
            }
            isDone = found.size() >= most;
        }
    };

    /// Looks among the rows of the days around it, or of the counters, which are kept.
    void addNextAtHand(std::string_view mark, std::string_view detail, std::int64_t at, Next& next)
    {
        constexpr std::int64_t counters = 8;
        const std::int64_t around = mark == mark::counter ? counters : vialsMs;
        std::int64_t left = next.rows;
        const auto take = [&](const MarkRow& row) {
            if (!next.isDone && row.detail == detail) {
                next.take(row.at, row.cycle);
                next.isDone = next.isDone || --left == 0;
            }
        };
        if (next.forward) {
            const auto rows = m_reach.m_marks.between(m_sterilizer, mark, at, at + around);
            std::ranges::for_each(rows, take);
            next.isDone = next.isDone || at + around >= next.end;
        } else {
            const auto rows = m_reach.m_marks.between(m_sterilizer, mark, at - around, at);
            std::for_each(rows.rbegin(), rows.rend(), take);
            next.isDone = next.isDone || at - around <= next.end;
        }
    }

    void addNear()
    {
        std::map<std::string, Nearby> near;
        between(mark::start, m_span.first - nearMs, m_span.last + nearMs,
                [&](const MarkRow& row) { near[row.cycle].starts.insert(row.at); });
        between(mark::end, m_span.first - nearMs, m_span.last + nearMs,
                [&](const MarkRow& row) { near[row.cycle].ends.insert(row.at); });
        for (const auto& [id, nearby] : near) {
            if (nearby.isDoubtful()
                || nearby.isWithin(m_span.first - besideMs, m_span.last + besideMs)) {
                m_into.insert(id);
            }
        }
    }

    void addTests()
    {
        between(mark::test, m_span.first - nearMs, m_span.last + nearMs,
                [&](const MarkRow& row) { m_into.insert(row.cycle); });
        addNext(mark::test, "bowie-dick", true, m_span.first, always, nextTests);
        addNext(mark::test, "bowie-dick", false, m_span.last, -always, nextTests);
    }

    void addVialsAround(std::int64_t first, std::int64_t last)
    {
        addNext(mark::vials, "", true, first, last + vialsMs, vialCycles);
        addNext(mark::vials, "", false, last, first - vialsMs, vialCycles);
    }

    void addTroubles()
    {
        const std::int64_t from = m_span.first - troubleMs;
        const std::int64_t to = m_span.last + besideMs;
        std::map<std::string, Troubles> troubles;
        between(mark::trouble, from, to, [&](const MarkRow& row) {
            if (!isHarmless(row.detail)) {
                std::int64_t& newest = troubles[row.cycle].newest;
                newest = std::max(newest, row.said);
            }
        });
        for (const LeastValue& least : m_reach.m_ask.leastValues(m_sterilizer)) {
            for (const LowReading& low : m_reach.m_marks.lowReadings(
                     m_sterilizer, least.bound, least.parameter, least.unit, least.thousandths)) {
                if (low.at >= from && low.at <= to) {
                    std::int64_t& newest = troubles[low.cycle].newest;
                    newest = std::max(newest, low.seq);
                }
            }
        }
        if (troubles.empty()) {
            return;
        }
        between(mark::right, from, to, [&](const MarkRow& row) {
            if (const auto found = troubles.find(row.cycle); found != troubles.end()) {
                found->second.isFree = found->second.isFree && frees(row);
                found->second.newestRight = std::max(found->second.newestRight, row.said);
            }
        });
        between(mark::unfree, from, to, [&](const MarkRow& row) {
            if (const auto found = troubles.find(row.cycle); found != troubles.end()) {
                found->second.isFree = false;
            }
        });
        for (const auto& [id, each] : troubles) {
            if (!each.isFree || each.newestRight < each.newest) {
                m_into.insert(id);
            }
        }
    }

    [[nodiscard]] bool isHarmless(std::string_view detail) const
    {
        if (!detail.starts_with(mark::alarm)) {
            return false;
        }
        const auto found = m_own.harmlessCode.find(std::string(detail.substr(mark::alarm.size())));
        return found != m_own.harmlessCode.end() && found->second;
    }

    /// Whether a resolution frees, and, where it reaches the sterilizer, was recorded before the
    /// cycle began.
    [[nodiscard]] bool frees(const MarkRow& right) const
    {
        if (right.time < m_own.clockWidth) {
            return false;
        }
        std::int64_t recorded = INT64_MIN;
        std::from_chars(right.detail.data(), right.detail.data() + right.detail.size(), recorded);
        return recorded <= m_span.first;
    }

    void addGrave()
    {
        std::map<std::string, std::int64_t> grave; // with its latest time
        between(mark::grave, -always, always, [&](const MarkRow& row) {
            const auto [place, isNew] = grave.emplace(row.cycle, row.at);
            place->second = std::max(place->second, row.at);
        });
        for (const auto& [id, at] : grave) {
            m_into.insert(id);
            if (at >= m_span.first) {
                // What clears the cycle ran between the two.
                addNext(mark::vials, "", false, at + m_own.clockWidth,
                        std::max(at - vialsMs, m_span.first), vialCycles);
            }
            for (const std::int64_t resolved : resolutionsOf(id)) {
                addNext(mark::test, "bowie-dick", true, resolved - m_own.clockWidth, always,
                        testsAfterFailure);
            }
        }
    }

    [[nodiscard]] const std::set<std::int64_t>& resolutionsOf(const std::string& id)
    {
        const auto [place, isNew] = m_reach.m_resolutions.try_emplace(id);
        if (isNew) {
            Statement rows = m_reach.m_snapshot.statement(
                sqlOf(Query::saidOfCycle, m_reach.m_snapshot.dialect()));
            rows.bind(":cycle", id).bind(":seq", m_reach.m_upTo);
            while (rows.step()) {
                if (rows.text(1) == mark::resolved) {
                    place->second.insert(rows.integer(4));
                }
            }
        }
        return place->second;
    }

    void addCounter(std::int64_t counter)
    {
        between(mark::counter, counter, counter,
                [&](const MarkRow& row) { m_into.insert(row.cycle); });
        addNext(mark::counter, "", true, counter + 1, always, nextCounters);
        addNext(mark::counter, "", false, counter - 1, -always, nextCounters);
    }

    void addLabels()
    {
        std::vector<std::string> near{std::string(m_cycle)};
        between(mark::start, m_span.first - nearMs, m_span.last + nearMs,
                [&](const MarkRow& row) { near.push_back(row.cycle); });
        m_reach.m_labels.find(near);
        for (const std::string& id : near) {
            if (m_reach.m_labels.share(id, near.front())) {
                m_into.insert(id);
            }
        }
    }

    CyclesInReach& m_reach;
    const std::string& m_sterilizer;
    std::string_view m_cycle;
    const SterilizerOwn& m_own;
    Span m_span;
    std::set<std::string>& m_into;
};

CyclesInReach::CyclesInReach(ReadSnapshot& snapshot, std::int64_t upTo, Ask ask)
    : m_snapshot(snapshot),
      m_upTo(upTo),
      m_ask(std::move(ask)),
      m_marks(snapshot, upTo),
      m_labels(snapshot, upTo)
{
}

CyclesInReach::Found CyclesInReach::of(std::string_view cycle,
                                       const std::set<std::int64_t>& counters)
{
    Found found;
    std::set<std::int64_t> times;
    std::set<std::int64_t> reserved;
    std::set<std::int64_t> all = counters;
    {
        Statement rows = m_snapshot.statement(sqlOf(Query::saidOfCycle, m_snapshot.dialect()));
        rows.bind(":cycle", cycle).bind(":seq", m_upTo);
        while (rows.step()) {
            const std::string mark = rows.text(1);
            const std::int64_t at = rows.integer(2);
            if (std::string sterilizer = rows.text(0); !sterilizer.empty()) {
                found.sterilizers.insert(std::move(sterilizer));
            }
            if (mark == mark::start || mark == mark::end) {
                times.insert(at);
            } else if (mark == mark::reserved) {
                reserved.insert(at);
            } else if (mark == mark::counter) {
                all.insert(at);
            }
        }
    }
    times = times.empty() ? reserved : times;
    if (times.empty()) {
        return found;
    }
    for (const std::string& sterilizer : found.sterilizers) {
        for (const Span& span : spansOf(times)) {
            OfSterilizer(*this, sterilizer, cycle, span, found.cycles).all(all);
        }
    }
    found.cycles.erase(std::string(cycle));
    return found;
}

} // namespace loadwarden
