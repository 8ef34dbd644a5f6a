#pragma once

#include "core/acts/entry.h"

#include <cstddef>
#include <vector>

namespace loadwarden {

/// Entries of one fact, in order. Nearly all facts have one, for which nothing is allocated.
class Versions {
public:
    using value_type = const Entry*;
    using const_iterator = const Entry* const*;

    Versions() = default;
    explicit Versions(const Entry* first) : m_first(first) {}

    [[nodiscard]] const_iterator begin() const { return m_more.empty() ? &m_first : m_more.data(); }
    [[nodiscard]] const_iterator end() const { return begin() + size(); }
    [[nodiscard]] std::size_t size() const
    {
        return m_more.empty() ? (m_first != nullptr ? 1 : 0) : m_more.size();
    }
    [[nodiscard]] const Entry* front() const { return *begin(); }
    [[nodiscard]] const Entry* back() const { return *(end() - 1); }

    void clear()
    {
        m_first = nullptr;
        m_more.clear();
    }
    void push_back(const Entry* entry)
    {
        if (size() == 0) {
            m_first = entry;
            return;
        }
        if (m_more.empty()) {
            m_more.push_back(m_first);
        }
        m_more.push_back(entry);
    }

private:
    const Entry* m_first = nullptr;
    std::vector<const Entry*> m_more; ///< all of them, where there are several
};

} // namespace loadwarden
