#include "core/store/indexes/cycle_marks.h"

#include "core/acts/fold/facts.h"
#include "core/acts/fold/seen.h"
#include "core/cycle/cycle_words.h"
#include "core/quantities/person.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// Leak tests above this rise may have failed, in thousandths of mbar a minute. The usual limit is
/// higher (core/release/RULES.md, 7); policies that ask for less are for the tests near the load.
constexpr std::int64_t troublingLeak = 1'000;

class Sayings {
public:
    Sayings(const IndexedEntry& entry, SaidOfCycle& said) : m_entry(entry), m_said(said) {}

    void all()
    {
        if (!m_entry.isUnderstood()) {
            // It may say anything, and nothing of it is known to be put right.
            add(mark::trouble, "not-understood");
            add(mark::unfree);
        }
        if (m_entry.act<EntryVoided>() != nullptr) {
            m_said.strikes = true;
        }
        if (m_entry.has("bv")) {
            add(mark::vials);
        }
        course();
        failures();
        chemical();
        biological();
        tests();
    }

private:
    void add(std::string_view mark, std::string detail = {})
    {
        m_said.marks.push_back({mark, std::move(detail), m_entry.recordedMs()});
    }

    void time(std::string_view mark, std::int64_t at) { m_said.times.push_back({mark, at}); }

    void counter(const std::optional<std::int64_t>& counter)
    {
        if (counter) {
            time(mark::counter, *counter);
        }
    }

    void course()
    {
        if (const auto* const reserved = m_entry.act<CycleReserved>()) {
            m_said.sterilizer = m_entry.subject("sz");
            m_said.specification = m_entry.subject("sp");
            time(mark::reserved, m_entry.recordedMs());
            if (reserved->purpose > Purpose::immediateUse) {
                add(mark::test, std::string(wordOf(purposeWords, reserved->purpose)));
            }
        } else if (const auto* const started = m_entry.act<CycleStarted>()) {
            m_said.specification = m_entry.subject("sp");
            time(mark::start, started->shown.at.ms);
            counter(started->counter);
        } else if (const auto* const ended = m_entry.act<CycleEnded>()) {
            time(mark::end, ended->shown.at.ms);
            counter(ended->counter);
            if (ended->outcome == CycleOutcome::aborted || ended->abortPhase) {
                add(mark::trouble, "aborted");
            }
        }
    }

    void failures()
    {
        if (const auto* const alarm = m_entry.act<AlarmRecorded>()) {
            add(mark::trouble, std::string(mark::alarm) + alarm->code);
        } else if (m_entry.act<FailureRecorded>() != nullptr) {
            add(mark::trouble, "failure");
        } else if (const auto* const trace = m_entry.act<TraceRead>()) {
            if (showsFailure(trace->findings)) {
                add(mark::trouble, "trace");
            }
        } else if (const auto* const check = m_entry.act<PackageChecked>()) {
            if (check->dry && !*check->dry) {
                add(mark::trouble, "wet");
            }
        } else if (const auto* const report = m_entry.act<ItemReported>()) {
            reported(*report);
        } else if (const auto* const resolved = m_entry.act<FailureResolved>()) {
            add(mark::resolved);
            const Act act = actOf(*m_entry.entry());
            if (m_entry.entry()->supersedes == 0 && resolved->causeKnown && isSigned(act)
                && act.role >= Role::lead && isNamed(resolved->what)
                && act.happenedAt <= act.recordedAt) {
                m_said.marks.push_back({mark::right,
                                        resolved->reach == Reach::thatLoad
                                            ? std::string()
                                            : std::to_string(act.recordedAt.ms),
                                        act.happenedAt.ms});
            } else {
                add(mark::unfree);
            }
        }
    }

    void reported(const ItemReported& report)
    {
        if (report.indicator) {
            add(mark::trouble, "rejected");
        }
        if (std::ranges::find(report.faults, PackageFault::wet) != report.faults.end()) {
            add(mark::trouble, "wet");
        }
    }

    void chemical()
    {
        if (m_entry.act<ChemicalLost>() != nullptr || m_entry.act<ChemicalUnsettled>() != nullptr) {
            add(mark::doubt);
        } else if (m_entry.act<ChemicalRead>() != nullptr
                   || m_entry.act<ChemicalReread>() != nullptr) {
            const SeenRank rank = rankOf(*seenIn(m_entry.entry()->act), false);
            if (rank == SeenRank::bad) {
                add(mark::trouble, "rejected");
            } else if (rank == SeenRank::unclear) {
                add(mark::doubt);
            }
        }
    }

    void biological()
    {
        if (!m_entry.has("bv")) {
            return;
        }
        if (m_entry.act<BiologicalUnsettled>() != nullptr) {
            add(mark::grave);
        } else if ((m_entry.act<BiologicalRead>() != nullptr
                    || m_entry.act<BiologicalReread>() != nullptr)
                   && rankOf(*seenIn(m_entry.entry()->act), false) != SeenRank::good) {
            add(mark::grave);
        }
    }

    void tests()
    {
        if (const auto* const leak = m_entry.act<LeakRead>()) {
            const bool known = leak->riseMbar && leak->minutes && leak->minutes->thousandths > 0;
            if (!known
                || leak->riseMbar->thousandths * 1'000
                       > leak->minutes->thousandths * troublingLeak) {
                add(mark::trouble, "leak");
            }
        } else if (const auto* const judged = m_entry.act<TestPhysicalJudged>()) {
            if (!judged->good) {
                add(mark::trouble, "judged");
            }
        }
    }

    const IndexedEntry& m_entry;
    SaidOfCycle& m_said;
};

} // namespace

bool SaidOfCycle::isTrouble() const
{
    return std::ranges::any_of(marks, [](const SaidMark& each) {
        return each.mark == mark::trouble || each.mark == mark::doubt || each.mark == mark::grave;
    });
}

SaidOfCycle saidOfCycle(const IndexedEntry& entry)
{
    SaidOfCycle said;
    Sayings(entry, said).all();
    return said;
}

} // namespace loadwarden
