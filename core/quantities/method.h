#pragma once

#include <cstdint>

namespace loadwarden {

/// How a cycle sterilizes. `unknown` is a value: what depends on it waits.
enum class Method : std::uint8_t { steam, ethyleneOxide, hydrogenPeroxide, dryHeat, unknown };

/// How a steam cycle removes air.
enum class AirRemoval : std::uint8_t { gravity, prevacuum, steamFlushPressurePulse, unknown };

/// A set of methods, as one bit each.
class MethodSet {
public:
    constexpr void add(Method method) { m_bits |= bit(method); }

    [[nodiscard]] constexpr bool contains(Method method) const
    {
        return (m_bits & bit(method)) != 0;
    }

    [[nodiscard]] constexpr bool empty() const { return m_bits == 0; }
    friend constexpr bool operator==(MethodSet, MethodSet) = default;

private:
    static constexpr unsigned bit(Method method) { return 1U << static_cast<unsigned>(method); }

    unsigned m_bits = 0;
};

/// The methods that sterilize by a gas and therefore name program and sterilizer model.
constexpr bool isGas(Method method)
{
    return method == Method::ethyleneOxide || method == Method::hydrogenPeroxide;
}

} // namespace loadwarden
