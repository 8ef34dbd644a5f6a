#pragma once

#include "core/acts/entry.h"

#include <cstddef>
#include <cstdint>
#include <list>
#include <memory>
#include <unordered_map>

namespace loadwarden {

/// Entries whose acts were read, as long as there is room: what was asked for longest ago goes
/// first. Entries never change, so that one cache serves any snapshot of one journal. To be used by
/// one thread.
class EntryCache {
public:
    explicit EntryCache(std::size_t most = 50'000) : m_most(most) {}

    /// The entry, or null.
    [[nodiscard]] std::shared_ptr<const Entry> find(std::int64_t seq);
    void keep(std::shared_ptr<const Entry> entry);

    [[nodiscard]] std::size_t size() const { return m_places.size(); }

private:
    using Order = std::list<std::shared_ptr<const Entry>>;

    std::size_t m_most;
    Order m_order; ///< the newest asking first
    std::unordered_map<std::int64_t, Order::iterator> m_places;
};

} // namespace loadwarden
