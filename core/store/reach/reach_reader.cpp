#include "core/store/reach/reach_reader.h"

#include "core/acts/fold/facts.h"
#include "core/acts/fold/registers.h"
#include "core/store/act_entry.h"
#include "core/store/indexes/act_indexes.h"
#include "core/store/queries.h"
#include "core/store/reach/least_values.h"
#include "core/store/reach/some_binds.h"

#include <algorithm>
#include <charconv>
#include <iterator>
#include <set>
#include <unordered_set>

namespace loadwarden {
namespace {

/// Controls this far from a vial's incubation, in ms, are not of its day in any zone, nor within
/// the hours that a policy may allow.
constexpr std::int64_t controlsMs = 2 * dayMs;

std::vector<std::int64_t> seqsOf(Statement rows)
{
    std::vector<std::int64_t> seqs;
    while (rows.step()) {
        seqs.push_back(rows.integer(0));
    }
    return seqs;
}

/// Sorts values and leaves each once.
template <class Value>
void sortOut(std::vector<Value>& values)
{
    std::ranges::sort(values);
    const auto [first, last] = std::ranges::unique(values);
    values.erase(first, last);
}

std::vector<std::string> textsOf(Statement rows)
{
    std::vector<std::string> texts;
    while (rows.step()) {
        texts.push_back(rows.text(0));
    }
    return texts;
}

} // namespace

/// The entries for one cycle while they are found.
class ReachReader::Gathering {
public:
    Gathering(ReachReader& reader, std::string_view cycle) : m_reader(reader), m_cycle(cycle) {}

    std::vector<const Entry*> all()
    {
        const ReachPart& own = m_reader.ofCycle(m_cycle);
        add(m_reader.ownOfAll("fa-"));
        add(m_reader.ownOfAll("po-"));
        add(own);
        CyclesInReach::Found found = m_reader.m_reach.of(m_cycle, printedCounters(own));
        for (const ReachPart* const part : m_parts) {
            found.cycles.insert(part->cycles.begin(), part->cycles.end());
        }
        found.cycles.erase(m_cycle);
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
    void add(const ReachPart& part) { m_parts.push_back(&part); }

    [[nodiscard]] std::set<std::int64_t> printedCounters(const ReachPart& own) const
    {
        std::set<std::int64_t> counters;
        for (const auto& entry : own.entries) {
            const auto* const printout = std::get_if<PrintoutRecorded>(&entry->act);
            if (printout != nullptr && printout->counter && entry->isAbout(m_cycle)) {
                counters.insert(*printout->counter);
            }
        }
        return counters;
    }

    /// Adds what the entries name in registers, what that names, and what amendments amend.
    void close()
    {
        for (; m_closed < m_parts.size(); ++m_closed) {
            const ReachPart& part = *m_parts[m_closed];
            for (const std::int64_t seq : part.amends) {
                if (m_amended.insert(seq).second) {
                    add(m_reader.amended(seq));
                }
            }
            for (const std::string& id : part.named) {
                addRegister(id);
            }
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

    /// The controls that may be of a vial's group (core/release/RULES.md, 4).
    void addControls(const std::set<std::string>& cycles)
    {
        std::map<std::string, std::set<std::int64_t>> incubated; // by vial, ms
        std::map<std::string, std::set<std::string>> lots;       // by vial
        std::set<std::string> wholeLots;
        for (const ReachPart* const part : m_parts) {
            for (const auto& [vial, at] : part->incubated) {
                incubated[vial].insert(at);
            }
            for (const PlacedIndicator& vial : part->vials) {
                for (const std::string& lot : m_reader.lotsLike(vial.lot)) {
                    lots[vial.id].insert(lot);
                    if (m_reader.reachesLot(vial)) {
                        wholeLots.insert(lot);
                    }
                }
            }
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
            if (m_controls.insert(id).second) {
                add(m_reader.about(id));
            }
        }
    }

    [[nodiscard]] std::vector<const Entry*> sorted() const
    {
        std::vector<const Entry*> all;
        for (const ReachPart* const part : m_parts) {
            for (const auto& entry : part->entries) {
                all.push_back(entry.get());
            }
        }
        std::ranges::sort(all, {}, &Entry::seq);
        const auto [first, last] = std::ranges::unique(all, {}, &Entry::seq);
        all.erase(first, last);
        return all;
    }

    ReachReader& m_reader;
    std::string m_cycle;
    std::vector<const ReachPart*> m_parts;
    std::size_t m_closed = 0; ///< of m_parts, how many have been asked what they lead to
    std::unordered_set<std::string> m_named;
    std::unordered_set<std::int64_t> m_amended;
    std::unordered_set<std::string> m_controls;
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

std::vector<const Entry*> ReachReader::entriesFor(std::string_view cycle)
{
    return Gathering(*this, cycle).all();
}

SharedEntries ReachReader::entries(const std::vector<std::int64_t>& seqs)
{
    SharedEntries all;
    all.reserve(seqs.size());
    std::vector<std::int64_t> missing;
    for (const std::int64_t seq : seqs) {
        if (auto kept = m_cache.find(seq)) {
            all.push_back(std::move(kept));
        } else {
            missing.push_back(seq);
        }
    }
    forSome(std::span<const std::int64_t>(missing), [&](auto some) { read(some, all); });
    return all;
}

void ReachReader::read(std::span<const std::int64_t> seqs, SharedEntries& into)
{
    constexpr std::size_t hexDigits = 64;
    const bool isOne = seqs.size() == 1;
    Statement rows = m_snapshot.statement(
        sqlOf(isOne ? Query::storedEntry : Query::someEntries, m_snapshot.dialect()));
    if (isOne) {
        rows.bind(":seq", seqs.front());
    } else {
        bindEach(rows, seqs);
    }
    const std::size_t before = into.size();
    while (rows.step()) {
        const std::string_view text = rows.bytesNow(0);
        const auto hash = parseHash(text.substr(0, hexDigits));
        if (!hash) {
            throw engineError(StoreFault::damaged, "an entry has no hash");
        }
        auto entry = std::make_shared<const Entry>(understand(text.substr(hexDigits), *hash));
        m_cache.keep(entry);
        into.push_back(std::move(entry));
    }
    for (const std::int64_t seq : seqs) {
        const auto isIt = [seq](const auto& entry) { return entry->seq == seq; };
        if (std::none_of(into.begin() + static_cast<std::ptrdiff_t>(before), into.end(), isIt)) {
            throw engineError(StoreFault::damaged, "an index names entry " + std::to_string(seq)
                                                       + ", which is not there");
        }
    }
}

const ReachPart& ReachReader::ofCycle(const std::string& cycle)
{
    if (const auto known = m_ofCycle.find(cycle); known != m_ofCycle.end()) {
        return known->second;
    }
    const std::vector<std::int64_t> itself = seqsAbout(cycle);
    SharedEntries all = entries(itself);
    std::vector<std::string_view> things;
    for (const auto& entry : all) {
        std::ranges::copy_if(entry->subjects, std::back_inserter(things), isThing);
    }
    sortOut(things);
    std::vector<std::int64_t> further;
    forSome(std::span<const std::string_view>(things), [&](auto some) {
        Statement rows = m_snapshot.statement(sqlOf(Query::seqsAboutSome, m_snapshot.dialect()));
        bindEach(rows, some);
        while (rows.step()) {
            if (const std::int64_t seq = rows.integer(0);
                seq <= m_upTo && !std::ranges::binary_search(itself, seq)) {
                further.push_back(seq);
            }
        }
    });
    sortOut(further);
    std::ranges::move(entries(further), std::back_inserter(all));
    return m_ofCycle[cycle] = reachPart(std::move(all));
}

const ReachPart& ReachReader::about(const std::string& id)
{
    if (const auto known = m_about.find(id); known != m_about.end()) {
        return known->second;
    }
    return m_about[id] = reachPart(entries(seqsAbout(id)));
}

std::vector<std::int64_t> ReachReader::seqsAbout(const std::string& id)
{
    Statement rows = m_snapshot.statement(sqlOf(Query::seqsAbout, m_snapshot.dialect()));
    rows.bind(":subject", id).bind(":seq", m_upTo);
    std::vector<std::int64_t> seqs = seqsOf(std::move(rows));
    std::ranges::sort(seqs);
    return seqs;
}

const ReachPart& ReachReader::own(const std::string& id)
{
    if (const auto known = m_own.find(id); known != m_own.end()) {
        return known->second;
    }
    Statement rows = m_snapshot.statement(sqlOf(Query::ownEntries, m_snapshot.dialect()));
    rows.bind(":subject", id).bind(":seq", m_upTo);
    return m_own[id] = reachPart(entries(seqsOf(std::move(rows))));
}

const ReachPart& ReachReader::ownOfAll(std::string_view prefix)
{
    const std::string from(prefix);
    if (const auto known = m_ownOfAll.find(from); known != m_ownOfAll.end()) {
        return known->second;
    }
    std::string end = from;
    ++end.back();
    Statement rows = m_snapshot.statement(sqlOf(Query::ownEntriesOfAll, m_snapshot.dialect()));
    rows.bind(":from", from).bind(":end", end).bind(":seq", m_upTo);
    return m_ownOfAll[from] = reachPart(entries(seqsOf(std::move(rows))));
}

const ReachPart& ReachReader::amended(std::int64_t seq)
{
    const auto known = m_amended.find(seq);
    return known != m_amended.end() ? known->second : m_amended[seq] = reachPart(entries({seq}));
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

/// Whether a control may reach every vial of its lot: its product says so, or does not say, and a
/// policy may.
bool ReachReader::reachesLot(const PlacedIndicator& vial)
{
    const auto [known, isNew] = m_reachesLot.try_emplace({vial.product, vial.lot}, false);
    if (!isNew) {
        return known->second;
    }
    std::set<std::string> products{vial.product};
    for (const auto& entry : own(vial.lot).entries) {
        products.emplace(entry->subject("pr"));
    }
    for (const std::string& product : products) {
        for (const auto& entry : own(product).entries) {
            if (const auto* const recorded = std::get_if<ProductRecorded>(&entry->act)) {
                const auto& control = recorded->product.control;
                known->second =
                    known->second || (control ? *control == ControlReach::lot : mayPolicySayLot());
            }
        }
    }
    return known->second;
}

const std::vector<std::string>& ReachReader::controls(const std::string& reason, std::int64_t from,
                                                      std::int64_t to)
{
    const auto [place, isNew] = m_controls.try_emplace({reason, from, to});
    if (isNew) {
        Statement rows = m_snapshot.statement(sqlOf(Query::controlsBetween, m_snapshot.dialect()));
        rows.bind(":reason", reason).bind(":from", from).bind(":to", to).bind(":seq", m_upTo);
        place->second = textsOf(std::move(rows));
    }
    return place->second;
}

const SterilizerOwn& ReachReader::sterilizer(const std::string& id)
{
    const auto known = m_sterilizers.find(id);
    return known != m_sterilizers.end() ? known->second
                                        : m_sterilizers[id] = sterilizerOwn(own(id).entries);
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
        std::vector<const Entry*> said;
        for (const auto& each : own(id).entries) {
            said.push_back(each.get());
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
    for (const auto& each : ownOfAll("fa-").entries) {
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
        for (const auto& each : ownOfAll("po-").entries) {
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
