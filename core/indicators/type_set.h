#pragma once

#include <initializer_list>

namespace loadwarden {

/// ISO 11140-1 types of chemical indicators, as one bit each.
class TypeSet {
public:
    constexpr TypeSet() = default;
    constexpr TypeSet(std::initializer_list<int> types)
    {
        for (int type : types) {
            add(type);
        }
    }
    constexpr void add(int type) { m_bits |= 1U << static_cast<unsigned>(type); }
    [[nodiscard]] constexpr bool contains(int type) const
    {
        return type >= 0 && type < 32 && (m_bits & (1U << static_cast<unsigned>(type))) != 0;
    }
    [[nodiscard]] constexpr bool empty() const { return m_bits == 0; }
    [[nodiscard]] constexpr TypeSet with(TypeSet other) const
    {
        TypeSet both;
        both.m_bits = m_bits | other.m_bits;
        return both;
    }
    friend constexpr bool operator==(TypeSet, TypeSet) = default;

private:
    unsigned m_bits = 0;
};

} // namespace loadwarden
