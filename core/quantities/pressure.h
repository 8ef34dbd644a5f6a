#pragma once

#include <compare>
#include <cstdint>
#include <stdexcept>

namespace loadwarden {

namespace pressure_units {

/// Micropascals in a thousandth of each unit. The pound-force per square inch is
/// 6.894757 kPa (NIST Special Publication 811, appendix B.8).
inline constexpr std::int64_t thousandthKPa = 1'000'000;
inline constexpr std::int64_t thousandthBar = 100'000'000;
inline constexpr std::int64_t thousandthPsi = 6'894'757;

/// 10,000 bar, far beyond any reading and far from overflow.
inline constexpr std::int64_t most = 1'000'000'000'000'000;

constexpr std::int64_t toMicropascals(std::int64_t thousandths, std::int64_t unit)
{
    if (thousandths > most / unit || thousandths < -(most / unit)) {
        throw std::out_of_range("pressure out of range");
    }
    return thousandths * unit;
}

} // namespace pressure_units

/// A pressure above vacuum, in whole micropascals. Factories throw std::out_of_range beyond
/// 10,000 bar either way. Negative values are held (a wrong reading is still a reading).
class AbsolutePressure {
public:
    static constexpr AbsolutePressure fromMicropascals(std::int64_t micropascals)
    {
        return AbsolutePressure(pressure_units::toMicropascals(micropascals, 1));
    }

    static constexpr AbsolutePressure fromKPaThousandths(std::int64_t thousandths)
    {
        using namespace pressure_units;
        return AbsolutePressure(toMicropascals(thousandths, thousandthKPa));
    }

    static constexpr AbsolutePressure fromBarThousandths(std::int64_t thousandths)
    {
        using namespace pressure_units;
        return AbsolutePressure(toMicropascals(thousandths, thousandthBar));
    }

    static constexpr AbsolutePressure fromPsiThousandths(std::int64_t thousandths)
    {
        using namespace pressure_units;
        return AbsolutePressure(toMicropascals(thousandths, thousandthPsi));
    }

    constexpr std::int64_t micropascals() const noexcept { return micropascals_; }

    friend constexpr auto operator<=>(AbsolutePressure, AbsolutePressure) = default;

private:
    explicit constexpr AbsolutePressure(std::int64_t micropascals) noexcept
        : micropascals_(micropascals)
    {
    }

    std::int64_t micropascals_;
};

/// A pressure above the surrounding atmosphere, negative below it. It becomes absolute only
/// together with that atmosphere, so the two kinds do not compare and do not convert by themselves.
/// Factories as in AbsolutePressure.
class GaugePressure {
public:
    static constexpr GaugePressure fromMicropascals(std::int64_t micropascals)
    {
        return GaugePressure(pressure_units::toMicropascals(micropascals, 1));
    }

    static constexpr GaugePressure fromKPaThousandths(std::int64_t thousandths)
    {
        using namespace pressure_units;
        return GaugePressure(toMicropascals(thousandths, thousandthKPa));
    }

    static constexpr GaugePressure fromBarThousandths(std::int64_t thousandths)
    {
        using namespace pressure_units;
        return GaugePressure(toMicropascals(thousandths, thousandthBar));
    }

    static constexpr GaugePressure fromPsiThousandths(std::int64_t thousandths)
    {
        using namespace pressure_units;
        return GaugePressure(toMicropascals(thousandths, thousandthPsi));
    }

    constexpr std::int64_t micropascals() const noexcept { return micropascals_; }

    friend constexpr auto operator<=>(GaugePressure, GaugePressure) = default;

private:
    explicit constexpr GaugePressure(std::int64_t micropascals) noexcept
        : micropascals_(micropascals)
    {
    }

    std::int64_t micropascals_;
};

/// Throws std::out_of_range where the sum leaves 10,000 bar.
constexpr AbsolutePressure operator+(GaugePressure gauge, AbsolutePressure atmosphere)
{
    return AbsolutePressure::fromMicropascals(gauge.micropascals() + atmosphere.micropascals());
}

/// The gauge reading of an absolute pressure under that atmosphere: the inverse of the sum.
constexpr GaugePressure operator-(AbsolutePressure pressure, AbsolutePressure atmosphere)
{
    return GaugePressure::fromMicropascals(pressure.micropascals() - atmosphere.micropascals());
}

} // namespace loadwarden
