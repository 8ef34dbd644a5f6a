#include "core/store/reach/reach_reader.h"

#include "core/acts/fold/facts.h"
#include "core/acts/fold/registers.h"
#include "core/store/act_entry.h"
#include "core/store/indexes/act_indexes.h"
#include "core/store/queries.h"
#include "core/store/reach/least_values.h"
#include "core/store/reach/named_ids.h"

#include <algorithm>
#include <charconv>
#include <deque>
#include <unordered_set>

namespace loadwarden {
namespace {

/// Controls this far from a vial's incubation, in ms, are not of its day in any zone, nor within
/// the hours that a policy may allow.
constexpr std::int64_t controlsMs = 2 * dayMs;

bool isThing(std::string_view id)
{
    return hasPrefix(id, "it") || hasPrefix(id, "ci") || hasPrefix(id, "bv");
}

std::vector<std::int64_t> seqsOf(Statement rows)
{
    std::vector<std::int64_t> seqs;
    while (rows.step()) {
        seqs.push_back(rows.integer(0));
    }
    return seqs;
}

std::vector<std::string> textsOf(Statement rows)
{
    std::vector<std::string> texts;
    while (rows.step()) {
        texts.push_back(rows.text(0));
    }
    return texts;
}

bool isReread(const AnyAct& act)
{
    return std::holds_alternative<ChemicalReread>(act)
           || std::holds_alternative<BiologicalReread>(act);
}

/// Whether an entry may be another version of the one that it names, so that it says nothing true
/// without that.
bool isAmendment(const Entry& entry)
{
    return entry.supersedes != 0 && !isReread(entry.act)
           && !std::holds_alternative<EntryVoided>(entry.act)
           && !std::holds_alternative<EntryAnnotated>(entry.act);
}

} // namespace

/// The entries for one cycle while they are found.
class ReachReader::Gathering {
public:
    Gathering(ReachReader& reader, std::string_view cycle) : m_reader(reader), m_cycle(cycle) {}

    std::vector<Entry> all()
    {
        add(m_reader.ownOfAll("fa-"));
        add(m_reader.ownOfAll("po-"));
        add(m_reader.ofCycle(m_cycle));
        CyclesInReach::Found found = m_reader.m_reach.of(m_cycle, printedCounters());
        found.cycles.merge(sharing());
        for (const std::string& sterilizer : found.sterilizers) {
            add(m_reader.own(sterilizer));
        }
        for (const std::string& id : found.cycles) {
            add(m_reader.ofCycle(id));
        }
        close();
        addControls(found.cycles);
        close();
        return sorted();
    }

private:
    void add(const std::vector<std::int64_t>& seqs)
    {
        for (const std::int64_t seq : seqs) {
            if (m_seqs.insert(seq).second) {
                m_entries.push_back(m_reader.entry(seq));
            }
        }
    }

    [[nodiscard]] std::set<std::int64_t> printedCounters() const
    {
        std::set<std::int64_t> counters;
        for (const auto& entry : m_entries) {
            const auto* const printout = std::get_if<PrintoutRecorded>(&entry->act);
            if (printout != nullptr && printout->counter && entry->isAbout(m_cycle)) {
                counters.insert(*printout->counter);
            }
        }
        return counters;
    }

    /// Other cycles in which its items and indicators were said to be.
    [[nodiscard]] std::set<std::string> sharing() const
    {
        std::set<std::string> cycles;
        for (const auto& entry : m_entries) {
            if (!std::ranges::any_of(entry->subjects, isThing)) {
                continue;
            }
            for (const std::string& id : entry->subjects) {
                if (hasPrefix(id, "ld") && id != m_cycle) {
                    cycles.insert(id);
                }
            }
        }
        return cycles;
    }

    /// Adds what the entries name in registers, what that names, and what amendments amend.
    void close()
    {
        for (; m_closed < m_entries.size(); ++m_closed) {
            const std::shared_ptr<const Entry> entry = m_entries[m_closed];
            if (isAmendment(*entry)) {
                add({entry->supersedes});
            }
            forEachNamed(*entry, [this](const std::string& id) { addRegister(id); });
        }
    }

    void addRegister(const std::string& id)
    {
        if (!m_named.insert(id).second) {
            return;
        }
        add(m_reader.own(id));
        if (hasPrefix(id, "pl")) {
            for (const std::string& lot : m_reader.lotsLike(id)) {
                addRegister(lot);
            }
        }
    }

    void addControl(const std::string& id)
    {
        if (m_controls.insert(id).second) {
            add(m_reader.about(id));
        }
    }

    /// The controls that may be of a vial's group (core/release/RULES.md, 4).
    void addControls(const std::set<std::string>& cycles)
    {
        std::map<std::string, std::set<std::int64_t>> incubated; // by vial, ms
        std::map<std::string, std::set<std::string>> lots;       // by vial
        std::set<std::string> wholeLots;
        for (const auto& entry : m_entries) {
            if (std::holds_alternative<BiologicalIncubated>(entry->act)) {
                incubated[std::string(entry->subject("bv"))].insert(entry->happenedAt.at.ms);
            }
            forEachVial(*entry, [&](const PlacedIndicator& vial) {
                if (vial.lot.empty()) {
                    return;
                }
                for (const std::string& lot : m_reader.lotsLike(vial.lot)) {
                    lots[vial.id].insert(lot);
                    if (reachesLot(vial)) {
                        wholeLots.insert(lot);
                    }
                }
            });
        }
        for (const std::string& lot : wholeLots) {
            addControls(lot, INT64_MIN, INT64_MAX);
        }
        std::set<std::pair<std::string, std::int64_t>> asked; // lot and day
        for (const auto& [vial, named] : lots) {
            for (const std::string& lot : named) {
                for (const std::int64_t at : incubated[vial]) {
                    if (!wholeLots.contains(lot) && asked.emplace(lot, at / dayMs).second) {
                        const std::int64_t day = at / dayMs * dayMs;
                        addControls(lot, day - controlsMs, day + dayMs + controlsMs);
                    }
                }
            }
        }
        addControls(m_cycle, INT64_MIN, INT64_MAX);
        for (const std::string& id : cycles) {
            addControls(id, INT64_MIN, INT64_MAX);
        }
    }

    void addControls(const std::string& reason, std::int64_t from, std::int64_t to)
    {
        for (const std::string& id : m_reader.controls(reason, from, to)) {
            addControl(id);
        }
    }

    /// Whether a control may reach every vial of its lot: its product says so, or does not say, and
    /// a policy may.
    [[nodiscard]] bool reachesLot(const PlacedIndicator& vial)
    {
        std::set<std::string> products{vial.product};
        for (const std::int64_t seq : m_reader.own(vial.lot)) {
            products.emplace(m_reader.entry(seq)->subject("pr"));
        }
        bool any = false;
        for (const std::string& product : products) {
            for (const std::int64_t seq : m_reader.own(product)) {
                const auto entry = m_reader.entry(seq);
                if (const auto* const recorded = std::get_if<ProductRecorded>(&entry->act)) {
                    const auto& control = recorded->product.control;
                    any = any
                          || (control ? *control == ControlReach::lot : m_reader.mayPolicySayLot());
                }
            }
        }
        return any;
    }

    [[nodiscard]] std::vector<Entry> sorted()
    {
        std::ranges::sort(m_entries, {}, &Entry::seq);
        std::vector<Entry> all;
        all.reserve(m_entries.size());
        for (const auto& entry : m_entries) {
            all.push_back(*entry);
        }
        return all;
    }

    ReachReader& m_reader;
    std::string m_cycle;
    std::unordered_set<std::int64_t> m_seqs;
    Entries m_entries;
    std::size_t m_closed = 0; ///< of m_entries, how many have been asked what they name
    std::set<std::string> m_named;
    std::set<std::string> m_controls;
};

ReachReader::ReachReader(ReadSnapshot& snapshot, EntryCache& cache, std::int64_t upTo)
    : m_snapshot(snapshot),
      m_cache(cache),
      m_upTo(upTo),
      m_reach(snapshot, upTo,
              {[this](const std::string& id) -> const SterilizerOwn& { return sterilizer(id); },
               [this](const std::string& id) { return leastValuesOf(id); }})
{
    Statement row = snapshot.statement(sqlOf(Query::indexRulesOf, snapshot.dialect()));
    if (!row.step() || row.integer(0) != indexRules) {
        throw engineError(StoreFault::older, "its index tables must be filled anew");
    }
}

std::vector<Entry> ReachReader::entriesFor(std::string_view cycle)
{
    return Gathering(*this, cycle).all();
}

std::shared_ptr<const Entry> ReachReader::entry(std::int64_t seq)
{
    if (auto kept = m_cache.find(seq)) {
        return kept;
    }
    Statement row = m_snapshot.statement(sqlOf(Query::oneEntry, m_snapshot.dialect()));
    row.bind(":seq", seq);
    const auto hash = row.step() ? parseHash(row.text(0)) : std::nullopt;
    if (!hash) {
        throw engineError(StoreFault::damaged, "an index names entry " + std::to_string(seq)
                                                   + ", which is not there or has no hash");
    }
    auto read = std::make_shared<const Entry>(understand(row.bytes(1), *hash));
    m_cache.keep(read);
    return read;
}

ReachReader::Entries ReachReader::entries(const std::vector<std::int64_t>& seqs)
{
    Entries all;
    for (const std::int64_t seq : seqs) {
        all.push_back(entry(seq));
    }
    return all;
}

const std::vector<std::int64_t>& ReachReader::ofCycle(const std::string& cycle)
{
    if (const auto known = m_ofCycle.find(cycle); known != m_ofCycle.end()) {
        return known->second;
    }
    Statement rows = m_snapshot.statement(sqlOf(Query::entriesOfThings, m_snapshot.dialect()));
    rows.bind(":cycle", cycle).bind(":same", cycle).bind(":seq", m_upTo).bind(":last", m_upTo);
    return m_ofCycle[cycle] = seqsOf(std::move(rows));
}

const std::vector<std::int64_t>& ReachReader::about(const std::string& id)
{
    if (const auto known = m_about.find(id); known != m_about.end()) {
        return known->second;
    }
    Statement rows = m_snapshot.statement(sqlOf(Query::seqsAbout, m_snapshot.dialect()));
    rows.bind(":subject", id).bind(":seq", m_upTo);
    return m_about[id] = seqsOf(std::move(rows));
}

const std::vector<std::int64_t>& ReachReader::own(const std::string& id)
{
    if (const auto known = m_own.find(id); known != m_own.end()) {
        return known->second;
    }
    Statement rows = m_snapshot.statement(sqlOf(Query::ownEntries, m_snapshot.dialect()));
    rows.bind(":subject", id).bind(":seq", m_upTo);
    return m_own[id] = seqsOf(std::move(rows));
}

std::vector<std::int64_t> ReachReader::ownOfAll(std::string_view prefix)
{
    std::string end(prefix);
    ++end.back();
    Statement rows = m_snapshot.statement(sqlOf(Query::ownEntriesOfAll, m_snapshot.dialect()));
    rows.bind(":from", prefix).bind(":end", end).bind(":seq", m_upTo);
    return seqsOf(std::move(rows));
}

const std::vector<std::string>& ReachReader::lotsLike(const std::string& lot)
{
    if (const auto known = m_lotsLike.find(lot); known != m_lotsLike.end()) {
        return known->second;
    }
    Statement rows = m_snapshot.statement(sqlOf(Query::lotsOfSameNumber, m_snapshot.dialect()));
    rows.bind(":lot", lot).bind(":seq", m_upTo).bind(":last", m_upTo);
    std::vector<std::string> lots = textsOf(std::move(rows));
    if (std::ranges::find(lots, lot) == lots.end()) {
        lots.push_back(lot);
    }
    return m_lotsLike[lot] = std::move(lots);
}

std::vector<std::string> ReachReader::controls(const std::string& reason, std::int64_t from,
                                               std::int64_t to)
{
    Statement rows = m_snapshot.statement(sqlOf(Query::controlsBetween, m_snapshot.dialect()));
    rows.bind(":reason", reason).bind(":from", from).bind(":to", to).bind(":seq", m_upTo);
    return textsOf(std::move(rows));
}

const SterilizerOwn& ReachReader::sterilizer(const std::string& id)
{
    const auto known = m_sterilizers.find(id);
    return known != m_sterilizers.end() ? known->second
                                        : m_sterilizers[id] = sterilizerOwn(entries(own(id)));
}

std::span<const LeastValue> ReachReader::leastValuesOf(const std::string& sterilizer)
{
    if (const auto known = m_leastValues.find(sterilizer); known != m_leastValues.end()) {
        return known->second;
    }
    std::vector<LeastValue>& all = m_leastValues[sterilizer];
    Statement rows = m_snapshot.statement(sqlOf(Query::specificationsUsed, m_snapshot.dialect()));
    rows.bind(":sterilizer", sterilizer).bind(":seq", m_upTo);
    const std::vector<AbsolutePressure> pressures = atmospheres();
    for (const std::string& bound : textsOf(std::move(rows))) {
        const std::size_t at = bound.find('@');
        const std::string id = bound.substr(0, at);
        std::int64_t revision = 0;
        std::from_chars(bound.data() + at + 1, bound.data() + bound.size(), revision);
        std::vector<Entry> said;
        for (const auto& each : entries(own(id))) {
            said.push_back(*each);
        }
        const FactBook book(said);
        const Fact* const fact = peekRevision<SpecificationRecorded>(book, id, revision + 1);
        if (fact != nullptr) {
            const auto& recorded = std::get<SpecificationRecorded>(fact->current().act);
            const auto least = leastValues(bound, recorded.specification, pressures);
            all.insert(all.end(), least.begin(), least.end());
        }
    }
    return all;
}

std::vector<AbsolutePressure> ReachReader::atmospheres()
{
    std::vector<AbsolutePressure> all;
    for (const auto& each : entries(ownOfAll("fa-"))) {
        const auto* const recorded = std::get_if<FacilityRecorded>(&each->act);
        if (recorded != nullptr && recorded->atmosphereKPa) {
            all.push_back(
                AbsolutePressure::fromKPaThousandths(recorded->atmosphereKPa->thousandths));
        }
    }
    return all;
}

bool ReachReader::mayPolicySayLot()
{
    if (!m_policySaysLot) {
        m_policySaysLot = false;
        for (const auto& each : entries(ownOfAll("po-"))) {
            // The file is not read here. A text in it may say "lot" or hide it behind an escape.
            const auto* const policy = std::get_if<PolicyRecorded>(&each->act);
            const std::string_view toml = policy == nullptr ? "" : std::string_view(policy->toml);
            m_policySaysLot = *m_policySaysLot || toml.find("\"lot\"") != toml.npos
                              || toml.find("'lot'") != toml.npos || toml.find('\\') != toml.npos;
        }
    }
    return *m_policySaysLot;
}

} // namespace loadwarden
