#include "core/desk/records.h"

#include "core/cycle/cycle_words.h"
#include "core/desk/journal_entries.h"
#include "core/desk/names.h"
#include "core/store/act_entry.h"
#include "core/store/imported_lot.h"
#include "core/store/reach/named_ids.h"
#include "core/store/store_error.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace loadwarden {
namespace {

constexpr std::int64_t earliest = INT64_MIN;

/// Newer ones come first.
bool comesBefore(const FoundCycle& a, const FoundCycle& b)
{
    return std::tie(a.at, a.id) > std::tie(b.at, b.id);
}

bool comesBehind(const FoundCycle& cycle, const CyclePlace& place)
{
    return std::tie(cycle.at, cycle.id) < std::tie(place.at, place.cycle);
}

class Looking {
public:
    Looking(ReadSnapshot& snapshot, const Zone& zone, const RecordQuestion& question,
            const RecordLimits& limits)
        : m_snapshot(snapshot),
          m_finder(snapshot),
          m_question(question),
          m_limits(limits),
          m_lot(capitalLot(question.lot)),
          m_from(question.from ? zone.resolve(*question.from, 0).ms : earliest),
          m_behindTo(question.to ? zone.resolve(*question.to + 1, 0).ms : INT64_MAX)
    {
    }

    RecordPage look(CyclePlace behind)
    {
        if (m_behindTo < behind.at) {
            behind = {.at = m_behindTo, .cycle = {}};
        }
        RecordPage page{.rows = {}, .last = behind};
        const auto few = fewCycles();
        page.isByTime = !few && (!m_lot.empty() || !m_question.label.empty());
        const std::vector<FoundCycle> cycles = few ? behindOf(*few, behind) : newest(behind);
        std::size_t looked = 0;
        m_entriesRead = 0;
        for (const FoundCycle& cycle : cycles) {
            ++looked;
            page.last = {cycle.at, cycle.id};
            if (auto row = rowOf(cycle)) {
                page.rows.push_back(*std::move(row));
            }
            if (page.rows.size() == m_limits.rows || m_entriesRead >= m_limits.entries
                || static_cast<std::int64_t>(looked) == m_limits.cycles) {
                break;
            }
        }
        page.isEnd = looked == cycles.size() && (few || isShort(cycles));
        return page;
    }

private:
    /// All cycles of the lot or the label, where few are; nullopt where neither was given, or many
    /// begin so.
    std::optional<std::set<std::string, std::less<>>> fewCycles()
    {
        const auto asked = m_limits.few + 1;
        std::set<std::string, std::less<>> cycles;
        if (!m_lot.empty()) {
            const auto lots = m_finder.lotsFrom(m_lot, asked);
            if (static_cast<std::int64_t>(lots.size()) < asked) {
                for (const FoundLot& lot : lots) {
                    cycles.insert(lot.cycle);
                }
                m_isLotKnown = true;
                return cycles;
            }
        }
        if (!m_question.label.empty()) {
            const auto labels = m_finder.labelsFrom(m_question.label, asked);
            if (static_cast<std::int64_t>(labels.size()) < asked) {
                for (const FoundLabel& label : labels) {
                    cycles.insert(label.cycle);
                }
                m_isLabelKnown = true;
                return cycles;
            }
        }
        return std::nullopt;
    }

    std::vector<FoundCycle> behindOf(const std::set<std::string, std::less<>>& ids,
                                     const CyclePlace& behind)
    {
        std::vector<FoundCycle> cycles;
        for (const std::string& id : ids) {
            const auto cycle = m_finder.cycle(id);
            if (cycle && cycle->at >= m_from && comesBehind(*cycle, behind)) {
                cycles.push_back(*cycle);
            }
        }
        std::ranges::sort(cycles, comesBefore);
        return cycles;
    }

    std::vector<FoundCycle> newest(const CyclePlace& behind)
    {
        return m_finder.newestBehind(m_question.sterilizer, behind, m_from, most());
    }

    /// Where every cycle fits, no more are read than there are rows.
    [[nodiscard]] std::int64_t most() const
    {
        const bool all = m_lot.empty() && m_question.label.empty()
                         && m_question.signedAs == SignedWanted::any && m_question.person.empty()
                         && m_question.productLots.empty();
        return all ? static_cast<std::int64_t>(m_limits.rows) : m_limits.cycles;
    }

    [[nodiscard]] bool isShort(const std::vector<FoundCycle>& cycles) const
    {
        return static_cast<std::int64_t>(cycles.size()) < most();
    }

    /// The row of a cycle that fits; what costs least is asked first.
    std::optional<RecordRow> rowOf(const FoundCycle& cycle)
    {
        const bool fits =
            (m_question.sterilizer.empty() || cycle.sterilizer == m_question.sterilizer)
            && (m_lot.empty() || m_isLotKnown || capitalLot(cycle.lot).starts_with(m_lot))
            && (m_question.label.empty() || m_isLabelKnown
                || m_finder.hasLabel(cycle.id, m_question.label));
        if (!fits) {
            return std::nullopt;
        }
        RecordRow row{.cycle = cycle.id,
                      .lot = cycle.lot,
                      .sterilizer = cycle.sterilizer,
                      .purpose = valueOf(purposeWords, cycle.purpose),
                      .isImported = cycle.purpose == importedPurpose,
                      .hasEnded = cycle.hasEnded,
                      .at = Instant{cycle.at}};
        if (cycle.disposed > 0) {
            takeDisposition(row, cycle);
        }
        if (!isSignedAsWanted(row)
            || (!m_question.person.empty() && row.signedBy != m_question.person)
            || (!m_question.productLots.empty() && !isLotIn(cycle.id))) {
            return std::nullopt;
        }
        return row;
    }

    void takeDisposition(RecordRow& row, const FoundCycle& cycle)
    {
        const auto stored = JournalReader(m_snapshot).entry(cycle.disposed);
        if (!stored) {
            throw engineError(StoreFault::damaged, "p_cycle names entry "
                                                       + std::to_string(cycle.disposed)
                                                       + ", which is not there");
        }
        const Entry entry = understand(stored->bytes, stored->hash);
        if (const auto* const signedBefore = std::get_if<DispositionSigned>(&entry.act)) {
            row.signedAs = signedBefore->meaning;
            row.signedBy = entry.actor;
            row.hasMoreSince = cycle.newest > cycle.disposed;
        } else if (const auto* const imported = std::get_if<HistoryImported>(&entry.act)) {
            row.sterilizer = row.sterilizer.empty() ? imported->sterilizer : row.sterilizer;
        }
    }

    [[nodiscard]] bool isSignedAsWanted(const RecordRow& row) const
    {
        switch (m_question.signedAs) {
        case SignedWanted::any: return true;
        case SignedWanted::release: return row.signedAs == Verdict::release;
        case SignedWanted::quarantine: return row.signedAs == Verdict::quarantine;
        case SignedWanted::reprocess: return row.signedAs == Verdict::reprocess;
        case SignedWanted::nothing: return !row.signedAs && !row.isTest() && !row.isImported;
        }
        return false;
    }

    /// Whether any of the lots is named in what was said of the cycle, or of an item that was moved
    /// into it.
    bool isLotIn(const std::string& cycle)
    {
        std::set<std::string> moved;
        bool isIn = isLotNamed(cycle, [&](const Entry& entry) {
            const auto* const move = std::get_if<ItemMoved>(&entry.act);
            if (move != nullptr && move->to == cycle) {
                moved.emplace(entry.subject("it"));
            }
        });
        for (const std::string& item : moved) {
            isIn = isIn || isLotNamed(item, [](const Entry&) {});
        }
        return isIn;
    }

    template <class Moved>
    bool isLotNamed(const std::string& subject, Moved moved)
    {
        EntryCursor cursor = JournalReader(m_snapshot).about(subject);
        while (const auto stored = cursor.next()) {
            ++m_entriesRead;
            // Most entries name none of them: their bytes are searched before they are understood.
            const bool mayName = std::ranges::any_of(m_question.productLots, [&](const auto& lot) {
                return stored->bytes.find('"' + lot + '"') != std::string::npos;
            });
            const bool mayMove = stored->bytes.find("item.moved") != std::string::npos;
            if (!mayName && !mayMove) {
                continue;
            }
            const Entry entry = understand(stored->bytes, stored->hash);
            moved(entry);
            bool isNamed = false;
            forEachNamed(entry, [&](const std::string& id) {
                isNamed = isNamed || std::ranges::count(m_question.productLots, id) > 0;
            });
            if (isNamed) {
                return true;
            }
        }
        return false;
    }

    ReadSnapshot& m_snapshot;
    Finder m_finder;
    const RecordQuestion& m_question;
    RecordLimits m_limits;
    std::string m_lot;
    std::int64_t m_from;
    std::int64_t m_behindTo;
    std::int64_t m_entriesRead = 0;
    bool m_isLotKnown = false;   ///< every cycle that is looked at bears the lot
    bool m_isLabelKnown = false; ///< or the label
};

/// Those of a register by name, each once.
std::vector<NamedId> namedOf(ReadSnapshot& snapshot, const Names& names, const char* prefix)
{
    std::set<std::string, std::less<>> ids;
    for (const Entry& entry : registerEntries(snapshot, prefix)) {
        ids.emplace(entry.subject(prefix));
    }
    std::vector<NamedId> named;
    for (const std::string& id : ids) {
        named.push_back({id, names.of(id)});
    }
    std::ranges::sort(named, {}, [](const NamedId& each) { return std::tie(each.name, each.id); });
    return named;
}

} // namespace

RecordPage findRecords(ReadSnapshot& snapshot, const Zone& zone, const RecordQuestion& question,
                       const CyclePlace& behind, const RecordLimits& limits)
{
    return Looking(snapshot, zone, question, limits).look(behind);
}

RecordChoices recordChoices(ReadSnapshot& snapshot)
{
    const Names names(snapshot);
    return {namedOf(snapshot, names, "sz"), namedOf(snapshot, names, "st")};
}

} // namespace loadwarden
