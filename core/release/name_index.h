#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Finds entries of a list by one or more names, in logarithmic time. The names must outlive it.
template <std::size_t Parts>
class NameIndex {
public:
    using Name = std::array<std::string_view, Parts>;

    struct Entry {
        Name name;
        std::int32_t index = -1;
    };

    /// `nameOf` gives the name of each entry of the list.
    template <class List, class NameOf>
    NameIndex(const List& list, NameOf nameOf)
    {
        m_entries.reserve(list.size());
        for (const auto& each : list) {
            m_entries.push_back({nameOf(each), static_cast<std::int32_t>(m_entries.size())});
        }
        std::stable_sort(m_entries.begin(), m_entries.end(),
                         [](const Entry& a, const Entry& b) { return a.name < b.name; });
    }

    /// All entries of a name, in the order of the list.
    [[nodiscard]] std::span<const Entry> all(const Name& name) const
    {
        const auto [first, last] =
            std::equal_range(m_entries.begin(), m_entries.end(), Entry{name, -1},
                             [](const Entry& a, const Entry& b) { return a.name < b.name; });
        return {first, last};
    }

    /// Where the entries of a name stand among all, sorted by name, and how many they are.
    struct Run {
        std::int32_t first = 0;
        std::int32_t count = 0;
    };
    [[nodiscard]] Run run(const Name& name) const
    {
        const std::span<const Entry> found = all(name);
        return {static_cast<std::int32_t>(found.data() - m_entries.data()),
                static_cast<std::int32_t>(found.size())};
    }

    /// The list's indices in the order of the names.
    [[nodiscard]] std::vector<std::int32_t> order() const
    {
        std::vector<std::int32_t> indices;
        indices.reserve(m_entries.size());
        for (const Entry& entry : m_entries) {
            indices.push_back(entry.index);
        }
        return indices;
    }

    /// The first entry of a name, -1 where there is none or a part of the name is empty.
    [[nodiscard]] std::int32_t first(const Name& name) const
    {
        for (const std::string_view part : name) {
            if (part.empty()) {
                return -1;
            }
        }
        const std::span<const Entry> found = all(name);
        return found.empty() ? -1 : found.front().index;
    }

private:
    std::vector<Entry> m_entries;
};

} // namespace loadwarden
