#include "core/store/verify_entries.h"

#include "core/store/journal_store.h"

#include <utility>

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
      // What stands before entry 1 was never written by this program, but is to be seen.
      m_readTo(after.seq == 0 ? INT64_MIN : after.seq),
      m_subjectsFrom(after.seq == 0 ? INT64_MIN : after.seq + 1),
      m_walk(after)
{
    m_checked.head = after;
}

EntryPass::Block EntryPass::read()
{
    Block block;
    if (m_readTo == INT64_MAX) {
        return block;
    }
    {
        const Dialect& dialect = m_snapshot.dialect();
        Statement rows = m_snapshot.statement(
            "SELECT seq, length(" + dialect.bytesOf("hash") + "), length(" + dialect.bytesOf("kind")
            + "), " + dialect.bytesOf("hash || kind || bytes")
            + " FROM j_entry WHERE seq > :after ORDER BY seq LIMIT :limit");
        rows.bind(":after", m_readTo).bind(":limit", blockSize);
        block.rows.reserve(blockSize);
        while (rows.step()) {
            block.rows.push_back({.seq = rows.integer(0),
                                  .stored = rows.bytes(3),
                                  .hashLength = static_cast<std::size_t>(rows.integer(1)),
                                  .kindLength = static_cast<std::size_t>(rows.integer(2))});
        }
    }
    m_readTo = block.rows.empty() ? INT64_MAX : block.rows.back().seq;
    readSubjects(m_readTo, block.subjects);
    return block;
}

void EntryPass::readSubjects(std::int64_t last, std::vector<Subjects>& into)
{
    const Dialect& dialect = m_snapshot.dialect();
    Statement rows = m_snapshot.statement(
        "SELECT seq, count(*), " + dialect.bytesOf(dialect.joined("subject", "\"", "ordinal"))
        + " FROM p_subject WHERE seq >= :first AND seq <= :last GROUP BY seq ORDER BY seq");
    rows.bind(":first", m_subjectsFrom).bind(":last", last);
    into.reserve(blockSize);
    while (rows.step()) {
        into.push_back({rows.integer(0), rows.integer(1), rows.bytes(2)});
    }
    m_subjectsFrom = last == INT64_MAX ? INT64_MAX : last + 1;
}

bool EntryPass::block()
{
    if (!m_checking.valid()) {
        start(read());
    }
    if (!m_checking.valid()) {
        return false;
    }
    Block next;
    try {
        next = read();
    } catch (...) {
        reportChecked();
        throw;
    }
    reportChecked();
    start(std::move(next));
    return true;
}

void EntryPass::start(Block block)
{
    if (!block.rows.empty() || !block.subjects.empty()) {
        m_checking =
            std::async(std::launch::async, [this, taken = std::move(block)] { check(taken); });
    }
}

void EntryPass::reportChecked()
{
    if (!m_checking.valid()) {
        return;
    }
    m_checking.get();
    for (JournalFault& fault : m_checked.faults) {
        addFault(m_report, std::move(fault));
    }
    m_report.faultCount +=
        m_checked.faultCount - static_cast<std::int64_t>(m_checked.faults.size());
    for (const ClockStep& step : m_checked.clockSteps) {
        if (m_report.clockSteps.size() < mostKept) {
            m_report.clockSteps.push_back(step);
        }
    }
    m_report.entries += m_checked.entries;
    m_report.head = m_walk.head();
    m_checked = {};
}

void EntryPass::check(const Block& block)
{
    std::size_t at = 0;
    for (const Row& row : block.rows) {
        take(row);
        takeSubjects(row, block.subjects, at);
    }
    for (; at < block.subjects.size(); ++at) {
        stray(block.subjects[at]);
    }
}

void EntryPass::take(const Row& row)
{
    const Head& before = m_walk.head();
    if (row.seq <= before.seq) { // of numbers below 1
        addFault(m_checked, {JournalFaultKind::number, row.seq, "no journal has this number"});
        return;
    }
    if (row.seq != before.seq + 1) {
        addFault(m_checked, {JournalFaultKind::missing, before.seq + 1,
                             "the next one there is " + std::to_string(row.seq)});
        const auto place = placeOf(row.bytes());
        m_walk = ChainWalk({row.seq - 1, place ? place->prev : Hash{}});
        m_faultsTaken = 0;
    }
    m_walk.take(row.bytes(), parseHash(row.hash()).value_or(Hash{}));
    for (; m_faultsTaken < m_walk.faults().size(); ++m_faultsTaken) {
        const ChainFault& fault = m_walk.faults()[m_faultsTaken];
        addFault(m_checked, {kindOf(fault.kind), fault.seq, ""});
    }
    ++m_checked.entries;
}

void EntryPass::takeSubjects(const Row& row, const std::vector<Subjects>& all, std::size_t& at)
{
    for (; at < all.size() && all[at].seq < row.seq; ++at) {
        stray(all[at]);
    }
    static const Subjects nothing;
    const bool any = at < all.size() && all[at].seq == row.seq;
    const Subjects& found = any ? all[at] : nothing;
    at += any ? 1 : 0;
    if (!readHeader(row.bytes(), m_header)) {
        return; // which is said already, and what it is about is not known
    }
    if (row.kind() != m_header.kind) {
        addFault(m_checked, {JournalFaultKind::kindColumn, row.seq, ""});
    }
    if (!areSame(found)) {
        addFault(m_checked, {JournalFaultKind::subjectRows, row.seq, ""});
    }
    checkClock(row);
}

bool EntryPass::areSame(const Subjects& found) const
{
    if (found.count != static_cast<std::int64_t>(m_header.subjects.size())) {
        return false;
    }
    std::string_view rest = found.joined;
    bool isFirst = true;
    for (const std::string_view subject : m_header.subjects) {
        if (!isFirst) {
            if (!rest.starts_with('"')) {
                return false;
            }
            rest.remove_prefix(1);
        }
        isFirst = false;
        if (!rest.starts_with(subject)) {
            return false;
        }
        rest.remove_prefix(subject.size());
    }
    return rest.empty();
}

void EntryPass::checkClock(const Row& row)
{
    const Instant recorded = m_header.recordedAt.at;
    if (m_lastRecorded && *m_lastRecorded - recorded > clockTolerance
        && m_checked.clockSteps.size() < mostKept) {
        m_checked.clockSteps.push_back({row.seq, *m_lastRecorded - recorded});
    }
    m_lastRecorded = recorded;
}

void EntryPass::stray(const Subjects& found)
{
    for (std::int64_t i = 0; i < found.count; ++i) {
        addFault(m_checked, {JournalFaultKind::subjectRows, found.seq, "there is no such entry"});
    }
}

} // namespace loadwarden
