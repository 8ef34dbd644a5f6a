#include "core/store/verify_entries.h"

#include "core/store/journal_store.h"

#include <algorithm>
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
    constexpr std::size_t usualBytes = 1'000;
    block.text.reserve(blockSize * usualBytes);
    block.rows.reserve(blockSize);
    {
        const Dialect& dialect = m_snapshot.dialect();
        Statement rows =
            m_snapshot.statement("SELECT seq, " + dialect.bytesOf("hash") + ", "
                                 + dialect.bytesOf("kind") + ", " + dialect.bytesOf("bytes")
                                 + " FROM j_entry WHERE seq > :after ORDER BY seq LIMIT :limit");
        rows.bind(":after", m_readTo).bind(":limit", blockSize);
        while (rows.step()) {
            block.rows.push_back({.seq = rows.integer(0),
                                  .hash = block.add(rows.bytesNow(1)),
                                  .kind = block.add(rows.bytesNow(2)),
                                  .bytes = block.add(rows.bytesNow(3))});
        }
    }
    m_readTo = block.rows.empty() ? INT64_MAX : block.rows.back().seq;
    readSubjects(m_readTo, block);
    return block;
}

void EntryPass::readSubjects(std::int64_t last, Block& into)
{
    Statement rows = m_snapshot.statement(
        "SELECT seq, " + m_snapshot.dialect().bytesOf("subject")
        + " FROM p_subject WHERE seq >= :first AND seq <= :last ORDER BY seq, ordinal");
    rows.bind(":first", m_subjectsFrom).bind(":last", last);
    constexpr std::size_t usual = 3;
    into.subjects.reserve(blockSize * usual);
    while (rows.step()) {
        into.subjects.push_back({rows.integer(0), into.add(rows.bytesNow(1))});
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
    for (const StoredRow& each : block.rows) {
        const Row row{each.seq, block.of(each.hash), block.of(each.kind), block.of(each.bytes)};
        take(row);
        takeSubjects(row, block, at);
    }
    for (; at < block.subjects.size(); ++at) {
        stray(block.subjects[at].seq);
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
        const auto place = placeOf(row.bytes);
        m_walk = ChainWalk({row.seq - 1, place ? place->prev : Hash{}});
        m_faultsTaken = 0;
    }
    m_walk.take(row.bytes, parseHash(row.hash).value_or(Hash{}));
    for (; m_faultsTaken < m_walk.faults().size(); ++m_faultsTaken) {
        const ChainFault& fault = m_walk.faults()[m_faultsTaken];
        addFault(m_checked, {kindOf(fault.kind), fault.seq, ""});
    }
    ++m_checked.entries;
}

void EntryPass::takeSubjects(const Row& row, const Block& block, std::size_t& at)
{
    const std::span<const Subject> all(block.subjects);
    for (; at < all.size() && all[at].seq < row.seq; ++at) {
        stray(all[at].seq);
    }
    const std::size_t from = at;
    while (at < all.size() && all[at].seq == row.seq) {
        ++at;
    }
    if (!readHeader(row.bytes, m_header)) {
        return; // which is said already, and what it is about is not known
    }
    if (row.kind != m_header.kind) {
        addFault(m_checked, {JournalFaultKind::kindColumn, row.seq, ""});
    }
    if (!areSame(block, all.subspan(from, at - from))) {
        addFault(m_checked, {JournalFaultKind::subjectRows, row.seq, ""});
    }
    if (m_header.kind == "trace.read") {
        if (std::string content = attachmentNamedIn(row.bytes); !content.empty()) {
            m_named.push_back({row.seq, std::move(content)});
        }
    }
    checkClock(row);
}

bool EntryPass::areSame(const Block& block, std::span<const Subject> found) const
{
    return std::ranges::equal(found, m_header.subjects, {},
                              [&block](const Subject& each) { return block.of(each.id); });
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

void EntryPass::stray(std::int64_t seq)
{
    addFault(m_checked, {JournalFaultKind::subjectRows, seq, "there is no such entry"});
}

} // namespace loadwarden
