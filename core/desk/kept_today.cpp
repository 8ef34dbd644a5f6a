#include "core/desk/kept_today.h"

#include "core/store/journal_reader.h"

namespace loadwarden {

const Today& KeptToday::of(Office& office)
{
    ReadSnapshot snapshot(office.connection());
    const Head head = JournalReader(snapshot).head();
    const Instant now = office.now();
    if (!stands(head, now)) {
        m_today.reset();
        m_today = todayOf(snapshot, office.entries(), office.zone(), now);
        m_head = head;
    }
    return *m_today;
}

bool KeptToday::stands(const Head& head, Instant now) const
{
    return m_today && head == m_head && now >= m_today->now && now - m_today->now < longest
           && (!m_today->nextChangeAt || now < *m_today->nextChangeAt);
}

} // namespace loadwarden
