#include "core/store/indexes/mark_index.h"

#include "core/store/act_entry.h"
#include "core/store/queries.h"

#include <algorithm>
#include <array>
#include <set>
#include <tuple>
#include <utility>

namespace loadwarden {
namespace {

/// A row of p_mark but for its cycle and seq.
struct Row {
    std::string sterilizer;
    std::string mark;
    std::int64_t at = 0;
    std::string detail;
    std::int64_t said = 0;
    std::int64_t time = 0;

    /// By what there is one of; the time goes with `said`.
    [[nodiscard]] auto key() const { return std::tie(sterilizer, mark, at, detail, said); }
    friend bool operator<(const Row& a, const Row& b) { return a.key() < b.key(); }
};

bool isTime(std::string_view mark)
{
    return mark == mark::reserved || mark == mark::start || mark == mark::end
           || mark == mark::counter || mark == mark::specification || mark == mark::bound;
}

/// Marks of which it matters which entry says them.
bool isCounted(std::string_view mark)
{
    return mark != mark::vials && mark != mark::test && !isTime(mark);
}

/// A mark but for the times at which it stands.
struct Mark {
    std::string mark;
    std::string detail;
    std::int64_t said = 0;
    std::int64_t time = 0;

    friend bool operator<(const Mark& a, const Mark& b)
    {
        return std::tie(a.mark, a.detail, a.said) < std::tie(b.mark, b.detail, b.said);
    }
};

/// All that is known of one cycle, and what becomes of it by one entry more.
class Known {
public:
    Known(WriteTransaction& transaction, std::string_view cycle)
        : m_transaction(transaction), m_cycle(cycle)
    {
        Statement rows = transaction.statement(sqlOf(Query::marksOfCycle, transaction.dialect()));
        rows.bind(":cycle", cycle);
        while (rows.step()) {
            Row row{rows.text(0), rows.text(1),    rows.integer(2),
                    rows.text(3), rows.integer(4), rows.integer(5)};
            note(row);
            m_rows.insert(std::move(row));
        }
        m_pairsBefore = pairs();
        m_startsBefore = starts();
    }

    void add(const IndexedEntry& entry, const SaidOfCycle& said)
    {
        if (!said.sterilizer.empty()) {
            m_sterilizers.insert(said.sterilizer);
        }
        if (!said.specification.empty()) {
            m_specifications.insert(said.specification);
        }
        const bool wasRight = has(mark::right);
        bool isNew = said.strikes;
        for (const SaidTime& each : said.times) {
            m_times.emplace(std::string(each.mark), each.at);
            isNew = true;
            if (each.mark == mark::start) {
                bind(entry.seq());
            }
        }
        for (const SaidMark& each : said.marks) {
            if (each.mark == mark::right) {
                addRight(entry, each);
                continue;
            }
            const bool counted = isCounted(each.mark);
            m_marks.insert({std::string(each.mark), each.detail, counted ? entry.seq() : 0,
                            counted ? each.time : 0});
        }
        if (wasRight && (isNew || entry.act<PhysicalRead>() != nullptr)) {
            m_marks.insert({std::string(mark::unfree), {}, entry.seq(), entry.recordedMs()});
        }
        addGrave();
        m_unanchored = entry.recordedMs();
    }

    /// Inserts the rows that were not there.
    void write(std::int64_t seq)
    {
        std::set<Row> now;
        const std::set<std::string> nowhere{{}};
        std::set<std::int64_t> anchors;
        for (const auto& [mark, at] : m_times) {
            if (mark == mark::reserved || mark == mark::start) {
                anchors.insert(at);
            }
        }
        if (anchors.empty()) {
            anchors.insert(m_unanchored);
        }
        for (const std::string& sterilizer : m_sterilizers.empty() ? nowhere : m_sterilizers) {
            for (const auto& [mark, at] : m_times) {
                now.insert({sterilizer, mark, at, {}, 0, 0});
            }
            for (const std::string& id : m_specifications) {
                now.insert({sterilizer, std::string(mark::specification), 0, id, 0, 0});
            }
            for (const std::string& id : m_bound) {
                now.insert({sterilizer, std::string(mark::bound), 0, id, 0, 0});
            }
            for (const Mark& each : m_marks) {
                for (const std::int64_t at : anchors) {
                    now.insert({sterilizer, each.mark, at, each.detail, each.said, each.time});
                }
            }
        }
        for (const Row& row : now) {
            if (!m_rows.contains(row)) {
                insert(row, seq);
            }
        }
    }

    /// The sterilizers with the revisions by which the cycle was said to have begun.
    [[nodiscard]] std::set<std::pair<std::string, std::string>> pairs() const
    {
        std::set<std::pair<std::string, std::string>> all;
        for (const std::string& sterilizer : m_sterilizers) {
            for (const std::string& specification : m_bound) {
                all.emplace(sterilizer, specification);
            }
        }
        return all;
    }
    [[nodiscard]] bool hasNewPair() const { return pairs() != m_pairsBefore; }

    /// When it was said to have begun, ms.
    [[nodiscard]] std::set<std::int64_t> starts() const
    {
        std::set<std::int64_t> all;
        for (const auto& [mark, at] : m_times) {
            if (mark == mark::start) {
                all.insert(at);
            }
        }
        return all;
    }
    [[nodiscard]] bool hasNewStart() const { return starts() != m_startsBefore; }

private:
    void note(const Row& row)
    {
        if (!row.sterilizer.empty()) {
            m_sterilizers.insert(row.sterilizer);
        }
        if (row.mark == mark::specification) {
            m_specifications.insert(row.detail);
        } else if (row.mark == mark::bound) {
            m_bound.insert(row.detail);
        } else if (isTime(row.mark)) {
            m_times.emplace(row.mark, row.at);
        } else {
            m_marks.insert({row.mark, row.detail, row.said, row.time});
        }
    }

    [[nodiscard]] bool has(std::string_view mark) const
    {
        return std::ranges::any_of(m_marks, [mark](const Mark& each) { return each.mark == mark; });
    }

    void bind(std::int64_t start)
    {
        for (const std::string& id : m_specifications) {
            Statement row =
                m_transaction.statement(sqlOf(Query::newestOwnBefore, m_transaction.dialect()));
            row.bind(":subject", id).bind(":seq", start);
            const bool any = row.step() && !row.isNull(0);
            m_bound.insert(id + '@' + std::to_string(any ? row.integer(0) : 0));
        }
    }

    /// A resolution frees only when it came after all that there was to resolve.
    void addRight(const IndexedEntry& entry, const SaidMark& said)
    {
        std::int64_t latest = INT64_MIN;
        for (const auto& [mark, at] : m_times) {
            if (mark == mark::start || mark == mark::end) {
                latest = std::max(latest, at);
            }
        }
        const bool afterTrouble = std::ranges::none_of(m_marks, [&](const Mark& each) {
            return each.mark == mark::trouble && each.time > said.time;
        });
        if (afterTrouble && latest != INT64_MIN && said.time >= latest) {
            m_marks.insert(
                {std::string(mark::right), said.detail, entry.seq(), said.time - latest});
        } else {
            m_marks.insert({std::string(mark::unfree), {}, entry.seq(), said.time});
        }
    }

    /// What of a test that holds a sterilizer may have failed is grave.
    void addGrave()
    {
        const bool holds = std::ranges::any_of(m_marks, [](const Mark& each) {
            return each.mark == mark::test
                   && (each.detail == "bowie-dick" || each.detail == "qualification");
        });
        std::vector<Mark> grave;
        for (const Mark& each : m_marks) {
            if (holds && (each.mark == mark::trouble || each.mark == mark::doubt)) {
                grave.push_back({std::string(mark::grave), {}, each.said, each.time});
            }
        }
        m_marks.insert(grave.begin(), grave.end());
    }

    void insert(const Row& row, std::int64_t seq)
    {
        m_transaction
            .statement("INSERT INTO p_mark (sterilizer, mark, at, cycle, detail, said, time, seq) "
                       "VALUES (:sterilizer, :mark, :at, :cycle, :detail, :said, :time, :seq)")
            .bind(":sterilizer", row.sterilizer)
            .bind(":mark", row.mark)
            .bind(":at", row.at)
            .bind(":cycle", m_cycle)
            .bind(":detail", row.detail)
            .bind(":said", row.said)
            .bind(":time", row.time)
            .bind(":seq", seq)
            .run();
    }

    WriteTransaction& m_transaction;
    std::string_view m_cycle;
    std::set<Row> m_rows;
    std::set<std::string> m_sterilizers;
    std::set<std::string> m_specifications;
    std::set<std::string> m_bound;
    std::set<std::pair<std::string, std::int64_t>> m_times; ///< mark and ms
    std::set<Mark> m_marks;
    std::set<std::pair<std::string, std::string>> m_pairsBefore;
    std::set<std::int64_t> m_startsBefore;
    std::int64_t m_unanchored = 0;
};

void insertReading(WriteTransaction& transaction, std::string_view cycle,
                   const std::pair<std::string, std::string>& pair, const PhysicalRead& read,
                   std::int64_t at, std::int64_t seq)
{
    transaction
        .statement(
            "INSERT INTO p_reading (sterilizer, specification, parameter, unit, thousandths, "
            "cycle, at, seq) VALUES (:sterilizer, :specification, :parameter, :unit, "
            ":thousandths, :cycle, :at, :seq) ON CONFLICT DO NOTHING")
        .bind(":sterilizer", pair.first)
        .bind(":specification", pair.second)
        .bind(":parameter", textOf(read.parameter))
        .bind(":unit", textOf(read.value.value.unit))
        .bind(":thousandths", read.value.value.thousandths)
        .bind(":cycle", cycle)
        .bind(":at", at)
        .bind(":seq", seq)
        .run();
}

/// What was read before it was said by which specification.
std::vector<PhysicalRead> readBefore(WriteTransaction& transaction, std::string_view cycle,
                                     std::int64_t before)
{
    Statement rows = transaction.statement(sqlOf(Query::ofKindAbout, transaction.dialect()));
    rows.bind(":subject", cycle).bind(":kind", "physical.read");
    std::vector<PhysicalRead> all;
    while (rows.step()) {
        if (rows.integer(0) >= before) {
            break;
        }
        const std::string bytes = rows.bytes(1);
        EntryHeader header;
        if (!readHeader(bytes, header)) {
            continue;
        }
        const IndexedEntry entry(header, bytes);
        if (const auto* const read = entry.act<PhysicalRead>()) {
            all.push_back(*read);
        }
    }
    return all;
}

void takeOf(WriteTransaction& transaction, std::string_view cycle, const IndexedEntry& entry,
            const SaidOfCycle& said)
{
    const auto* const read = entry.act<PhysicalRead>();
    if (said.isNothing() && read == nullptr) {
        return;
    }
    Known known(transaction, cycle);
    known.add(entry, said);
    known.write(entry.seq());
    const auto insert = [&](const PhysicalRead& each) {
        for (const auto& pair : known.pairs()) {
            for (const std::int64_t at : known.starts()) {
                insertReading(transaction, cycle, pair, each, at, entry.seq());
            }
        }
    };
    if (read != nullptr) {
        insert(*read);
    } else if (known.hasNewPair() || known.hasNewStart()) {
        for (const auto& pair : known.pairs()) {
            transaction
                .statement("INSERT INTO p_specification_used (sterilizer, specification, seq) "
                           "VALUES (:sterilizer, :specification, :seq) ON CONFLICT DO NOTHING")
                .bind(":sterilizer", pair.first)
                .bind(":specification", pair.second)
                .bind(":seq", entry.seq())
                .run();
        }
        for (const PhysicalRead& each : readBefore(transaction, cycle, entry.seq())) {
            insert(each);
        }
    }
}

/// The cycles that an entry is about; where it is not understood also those of its items and
/// indicators.
std::set<std::string> cyclesOf(WriteTransaction& transaction, const IndexedEntry& entry)
{
    std::set<std::string> cycles;
    for (const std::string_view id : entry.header().subjects) {
        if (hasPrefix(id, "ld")) {
            cycles.emplace(id);
        } else if (!entry.isUnderstood()
                   && (hasPrefix(id, "it") || hasPrefix(id, "ci") || hasPrefix(id, "bv"))) {
            Statement rows =
                transaction.statement(sqlOf(Query::cyclesOfThing, transaction.dialect()));
            rows.bind(":thing", id).bind(":seq", entry.seq());
            while (rows.step()) {
                cycles.insert(rows.text(0));
            }
        }
    }
    return cycles;
}

void takeOne(WriteTransaction& transaction, const IndexedEntry& entry)
{
    const std::set<std::string> cycles = cyclesOf(transaction, entry);
    if (cycles.empty()) {
        return;
    }
    const SaidOfCycle said = saidOfCycle(entry);
    for (const std::string& id : cycles) {
        takeOf(transaction, id, entry, said);
    }
}

} // namespace

std::span<const IndexTable> MarkIndex::tables() const
{
    static constexpr std::array<IndexTable, 3> mine{
        {{"p_mark", "sterilizer, mark, at, cycle, detail, said, time, seq"},
         {"p_reading", "sterilizer, specification, parameter, unit, thousandths, cycle, at, seq"},
         {"p_specification_used", "sterilizer, specification, seq"}}};
    return mine;
}

void MarkIndex::take(WriteTransaction& transaction, std::span<const IndexedEntry> entries)
{
    for (const IndexedEntry& entry : entries) {
        takeOne(transaction, entry);
    }
}

} // namespace loadwarden
