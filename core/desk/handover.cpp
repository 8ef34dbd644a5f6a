#include "core/desk/handover.h"

#include "core/acts/fold/registers.h"
#include "core/cycle/cycle_words.h"
#include "core/desk/cycle_record.h"
#include "core/desk/journal_entries.h"
#include "core/store/act_entry.h"
#include "core/store/finder.h"

#include <algorithm>
#include <iterator>
#include <limits>

namespace loadwarden {
namespace {

constexpr std::int64_t mostCycles = 20'000;

bool isUnread(const Vial& vial)
{
    return !vial.voided && !vial.lost && !vial.unsettled
           && std::ranges::none_of(vial.readings, [](const IndicatorReading& reading) {
                  return !reading.voided && reading.seen != Seen::unclear;
              });
}

/// Whether the one who comes has to look after a load that has ended.
bool isLeft(const CycleView& view)
{
    if (view.isTest()) {
        return false;
    }
    const Phase phase = view.folded.phase;
    if (phase == Phase::awaitingDecision) {
        return true;
    }
    if (!view.signedAs) {
        return false;
    }
    const bool itemStays = *view.signedAs == Verdict::release
                           && std::ranges::any_of(view.decision.items, [](const auto& item) {
                                  return item.verdict == Verdict::quarantine;
                              });
    return *view.signedAs == Verdict::quarantine || isWorseThanSigned(view) || itemStays;
}

class Making {
public:
    Making(ReadSnapshot& snapshot, EntryCache& cache, const Zone& zone, Instant now,
           std::int64_t upTo)
        : m_snapshot(snapshot), m_views(snapshot, cache, now, upTo), m_zone(zone), m_upTo(upTo)
    {
        m_handover.now = now;
        m_handover.names = Names(snapshot);
        m_handover.head = headAt(snapshot, std::min(upTo, JournalReader(snapshot).head().seq));
    }

    Handover make() &&
    {
        Finder finder(m_snapshot);
        const Instant now = m_handover.now;
        for (const FoundCycle& found :
             finder.cyclesBetween("", (now - handoverReach).ms, now.ms, mostCycles)) {
            if (!wasSettledBefore(found)) {
                cycle(found);
            }
        }
        static constexpr Instant never{std::numeric_limits<std::int64_t>::max()};
        std::ranges::stable_sort(m_handover.vials, {}, [](const AwaitedVial& vial) {
            return vial.dueAt.value_or(never);
        });
        sterilizers();
        return std::move(m_handover);
    }

private:
    /// Signed so that nothing stays behind, nothing said since, nothing of it ever in doubt and no
    /// vial in it: not looked at anew.
    [[nodiscard]] bool wasSettledBefore(const FoundCycle& found)
    {
        if (found.disposed == 0 || found.disposed > m_upTo || found.newest > found.disposed
            || found.hasTrouble || found.hasVials) {
            return false;
        }
        const auto stored = JournalReader(m_snapshot).entry(found.disposed);
        if (!stored) {
            return false;
        }
        const Entry entry = understand(stored->bytes, stored->hash);
        const auto* const act = std::get_if<DispositionSigned>(&entry.act);
        return act != nullptr && act->meaning != Verdict::quarantine
               && std::ranges::count(act->items, Verdict::quarantine, &SignedItem::meaning) == 0;
    }

    void cycle(const FoundCycle& found)
    {
        auto view = m_views.of(found.id);
        if (!view) {
            return;
        }
        m_handover.names.set(found.id, found.lot);
        vialsOf(*view);
        const Phase phase = view->folded.phase;
        if (phase == Phase::beingLoaded || phase == Phase::running) {
            m_handover.running.push_back(*std::move(view));
        } else if (isLeft(*view)) {
            owedOf(*view);
            m_handover.held.push_back(*std::move(view));
        } else if (phase == Phase::evidenceChanged
                   && Instant{found.at} >= m_handover.now - changedReach) {
            m_handover.changed.push_back(view->lot());
        }
    }

    void vialsOf(const CycleView& view)
    {
        const EvidenceRecord& record = view.folded.record;
        const auto take = [&](const Vial& vial) {
            if (!isUnread(vial)) {
                return;
            }
            AwaitedVial awaited{.lot = view.lot(),
                                .vial = vial,
                                .dueAt = {},
                                .hasImplant =
                                    std::ranges::any_of(record.load.items, [](const Item& item) {
                                        return item.implant != Implant::no;
                                    })};
            const auto product =
                std::ranges::find(record.products, vial.product, &IndicatorProduct::id);
            if (product != record.products.end() && vial.incubationStart) {
                awaited.dueAt = *vial.incubationStart + Duration::minutes(product->releaseMinutes);
            }
            m_handover.vials.push_back(std::move(awaited));
        };
        if (view.isTest()) {
            std::ranges::for_each(record.test->vials, take);
            return;
        }
        for (const ProcessChallengeDevice& pcd : record.load.pcds) {
            std::ranges::for_each(pcd.vials, take);
        }
    }

    void owedOf(const CycleView& view)
    {
        for (Entry& entry : entriesAbout(m_snapshot, view.id)) {
            if (entry.seq > m_upTo || !std::holds_alternative<EmergencyReleased>(entry.act)) {
                continue;
            }
            const auto& ids = view.folded.itemIds;
            const auto at = std::ranges::find(ids, entry.subject("it"));
            const auto index = static_cast<std::size_t>(at - ids.begin());
            m_handover.owed.push_back(
                {view.lot(),
                 at == ids.end() ? std::string() : view.folded.record.load.items[index].label,
                 std::move(entry)});
        }
    }

    void sterilizers()
    {
        std::vector<Entry> entries = registerEntries(m_snapshot, "sz");
        std::erase_if(entries, [this](const Entry& entry) { return entry.seq > m_upTo; });
        const FactBook book(entries);
        for (const Fact& fact : book.facts()) {
            const std::string id(fact.origin->subject("sz"));
            const auto* const recorded = std::get_if<SterilizerRecorded>(&fact.current().act);
            if (recorded != nullptr
                && peekRevision<SterilizerRecorded>(book, id, newest) == &fact) {
                sterilizer(id, static_cast<int>(recorded->testMinute), entries);
            }
        }
    }

    void sterilizer(const std::string& id, int testMinute, const std::vector<Entry>& entries)
    {
        const Instant now = m_handover.now;
        std::vector<Entry> own;
        std::ranges::copy_if(entries, std::back_inserter(own),
                             [&](const Entry& entry) { return entry.isAbout(id); });
        LeftSterilizer left{.id = id,
                            .service = serviceAfter(own),
                            .periodBegin =
                                m_zone.periodBegin(m_zone.periodOf(now, testMinute), testMinute),
                            .test = {}};
        for (const FoundCycle& found :
             Finder(m_snapshot).cyclesBetween(id, (now - handoverReach).ms, now.ms, mostCycles)) {
            if (found.purpose != wordOf(purposeWords, Purpose::bowieDick)) {
                continue;
            }
            left.hasTests = true;
            if (Instant{found.at} >= left.periodBegin) {
                auto view = m_views.of(found.id);
                if (view && view->folded.phase != Phase::beingLoaded) {
                    left.test = std::move(view);
                }
            }
        }
        m_handover.sterilizers.push_back(std::move(left));
    }

    ReadSnapshot& m_snapshot;
    CycleViews m_views;
    const Zone& m_zone;
    std::int64_t m_upTo;
    Handover m_handover;
};

} // namespace

Handover handoverAt(ReadSnapshot& snapshot, EntryCache& cache, const Zone& zone, Instant now,
                    std::int64_t upTo)
{
    return Making(snapshot, cache, zone, now, upTo).make();
}

} // namespace loadwarden
