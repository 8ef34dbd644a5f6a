#include "core/store/verify_entries.h"

#include "core/store/journal_store.h"

#include <algorithm>
#include <optional>

namespace loadwarden {
namespace {

constexpr std::int64_t blockSize = 1000;
constexpr std::size_t mostKept = 1000;

JournalFaultKind kindOf(ChainFaultKind kind)
{
    switch (kind) {
    case ChainFaultKind::unreadable: return JournalFaultKind::unreadable;
    case ChainFaultKind::number: return JournalFaultKind::number;
    case ChainFaultKind::edited: return JournalFaultKind::edited;
    case ChainFaultKind::unlinked: return JournalFaultKind::unlinked;
    }
    return JournalFaultKind::unreadable;
}

} // namespace

void addFault(VerifyReport& report, JournalFault fault)
{
    ++report.faultCount;
    if (report.faults.size() < mostKept) {
        report.faults.push_back(std::move(fault));
    }
}

EntryPass::EntryPass(ReadSnapshot& snapshot, const Head& after, VerifyReport& report)
    : m_snapshot(snapshot),
      m_report(report),
      m_walk(after),
      m_subjectsFrom(after.seq == 0 ? INT64_MIN : after.seq + 1)
{
}

std::vector<EntryPass::Row> EntryPass::entryRows()
{
    Statement rows =
        m_snapshot.statement("SELECT seq, hash, kind, " + m_snapshot.dialect().bytesOf("bytes")
                             + " FROM j_entry WHERE seq > :after ORDER BY seq LIMIT :limit");
    // What stands before entry 1 was never written by this program, but is to be seen.
    const std::int64_t after = m_walk.head().seq == 0 ? INT64_MIN : m_walk.head().seq;
    rows.bind(":after", after).bind(":limit", blockSize);
    std::vector<Row> block;
    block.reserve(blockSize);
    while (rows.step()) {
        block.push_back({rows.integer(0), rows.text(1), rows.text(2), rows.bytes(3)});
    }
    return block;
}

EntryPass::SubjectRows EntryPass::subjectRows(std::int64_t last)
{
    Statement rows = m_snapshot.statement(
        "SELECT seq, subject FROM p_subject WHERE seq >= :first AND seq <= :last "
        "ORDER BY seq, ordinal");
    rows.bind(":first", m_subjectsFrom).bind(":last", last);
    SubjectRows found;
    found.reserve(3 * blockSize);
    while (rows.step()) {
        found.emplace_back(rows.integer(0), rows.text(1));
    }
    return found;
}

bool EntryPass::block()
{
    const std::vector<Row> rows = entryRows();
    const std::int64_t last = rows.empty() ? INT64_MAX : rows.back().seq;
    const SubjectRows subjects = subjectRows(last);
    std::size_t at = 0;
    for (const Row& row : rows) {
        take(row);
        takeSubjects(row, readHeader(row.bytes, m_header), subjects, at);
    }
    while (at < subjects.size()) {
        stray(subjects[at].first);
        ++at;
    }
    m_subjectsFrom = rows.empty() ? INT64_MAX : last + 1;
    return !rows.empty();
}

void EntryPass::take(const Row& row)
{
    const Head& before = m_walk.head();
    if (row.seq <= before.seq) { // of numbers below 1
        addFault(m_report, {JournalFaultKind::number, row.seq, "no journal has this number"});
        return;
    }
    if (row.seq != before.seq + 1) {
        addFault(m_report, {JournalFaultKind::missing, before.seq + 1,
                            "the next one there is " + std::to_string(row.seq)});
        const auto place = placeOf(row.bytes);
        m_walk = ChainWalk({row.seq - 1, place ? place->prev : Hash{}});
        m_faultsTaken = 0;
    }
    m_walk.take(row.bytes, parseHash(row.hash).value_or(Hash{}));
    for (; m_faultsTaken < m_walk.faults().size(); ++m_faultsTaken) {
        const ChainFault& fault = m_walk.faults()[m_faultsTaken];
        addFault(m_report, {kindOf(fault.kind), fault.seq, ""});
    }
    ++m_report.entries;
}

void EntryPass::takeSubjects(const Row& row, bool readable, const SubjectRows& rows,
                             std::size_t& at)
{
    while (at < rows.size() && rows[at].first < row.seq) {
        stray(rows[at].first);
        ++at;
    }
    const std::size_t begin = at;
    while (at < rows.size() && rows[at].first == row.seq) {
        ++at;
    }
    if (!readable) {
        return; // which is said already, and what it is about is not known
    }
    if (row.kind != m_header.kind) {
        addFault(m_report, {JournalFaultKind::kindColumn, row.seq, ""});
    }
    const auto same = [](const std::string_view subject, const auto& found) {
        return subject == found.second;
    };
    if (!std::equal(m_header.subjects.begin(), m_header.subjects.end(),
                    rows.begin() + static_cast<std::ptrdiff_t>(begin),
                    rows.begin() + static_cast<std::ptrdiff_t>(at), same)) {
        addFault(m_report, {JournalFaultKind::subjectRows, row.seq, ""});
    }
    checkClock(row);
}

void EntryPass::checkClock(const Row& row)
{
    const Instant recorded = m_header.recordedAt.at;
    if (m_lastRecorded && *m_lastRecorded - recorded > clockTolerance
        && m_report.clockSteps.size() < mostKept) {
        m_report.clockSteps.push_back({row.seq, *m_lastRecorded - recorded});
    }
    m_lastRecorded = recorded;
}

void EntryPass::stray(std::int64_t seq)
{
    addFault(m_report, {JournalFaultKind::subjectRows, seq, "there is no such entry"});
}

} // namespace loadwarden
