#include "core/store/reach/entry_cache.h"

namespace loadwarden {

std::shared_ptr<const Entry> EntryCache::find(std::int64_t seq)
{
    const auto found = m_places.find(seq);
    if (found == m_places.end()) {
        return nullptr;
    }
    m_order.splice(m_order.begin(), m_order, found->second);
    return *found->second;
}

void EntryCache::keep(std::shared_ptr<const Entry> entry)
{
    const std::int64_t seq = entry->seq;
    if (m_most == 0 || m_places.contains(seq)) {
        return;
    }
    m_order.push_front(std::move(entry));
    m_places.emplace(seq, m_order.begin());
    if (m_order.size() > m_most) {
        m_places.erase(m_order.back()->seq);
        m_order.pop_back();
    }
}

} // namespace loadwarden
