#pragma once

#include <compare>
#include <cstdint>
#include <stdexcept>

namespace loadwarden {

/// A difference of two temperatures, in units of 1/1800 K.
class TemperatureDifference {
public:
    static constexpr TemperatureDifference fromUnits(std::int64_t units) noexcept
    {
        return TemperatureDifference(units);
    }

    /// Throws std::out_of_range beyond 1e15 hundredths either way.
    static constexpr TemperatureDifference fromKelvinHundredths(std::int64_t hundredths)
    {
        if (hundredths > 1'000'000'000'000'000 || hundredths < -1'000'000'000'000'000) {
            throw std::out_of_range("temperature difference out of range");
        }
        return TemperatureDifference(hundredths * 18);
    }

    constexpr std::int64_t units() const noexcept { return units_; }

    constexpr TemperatureDifference magnitude() const noexcept
    {
        return TemperatureDifference(units_ < 0 ? -units_ : units_);
    }

    friend constexpr auto operator<=>(TemperatureDifference, TemperatureDifference) = default;

private:
    explicit constexpr TemperatureDifference(std::int64_t units) noexcept : units_(units) {}

    std::int64_t units_;
};

/// A temperature as an integer of 1/1800 K above absolute zero. In this unit 0.01 °C is 18 and
/// 0.01 °F is 10, so readings in either scale are held exactly and compare exactly. Both scales
/// appear only in the factories; what was typed is kept by the reading, not here.
class Temperature {
public:
    /// Throws std::out_of_range beyond 1e15 hundredths either way. Whether the temperature makes
    /// sense is not asked.
    static constexpr Temperature fromCelsiusHundredths(std::int64_t hundredths)
    {
        return Temperature(zeroCelsius + checked(hundredths) * 18);
    }

    /// As fromCelsiusHundredths().
    static constexpr Temperature fromFahrenheitHundredths(std::int64_t hundredths)
    {
        return Temperature(zeroFahrenheit + checked(hundredths) * 10);
    }

    constexpr std::int64_t units() const noexcept { return units_; }

    friend constexpr auto operator<=>(Temperature, Temperature) = default;

    friend constexpr TemperatureDifference operator-(Temperature a, Temperature b) noexcept
    {
        return TemperatureDifference::fromUnits(a.units_ - b.units_);
    }

    friend constexpr Temperature operator+(Temperature a, TemperatureDifference d) noexcept
    {
        return Temperature(a.units_ + d.units());
    }

    friend constexpr Temperature operator-(Temperature a, TemperatureDifference d) noexcept
    {
        return Temperature(a.units_ - d.units());
    }

private:
    static constexpr std::int64_t zeroCelsius = 491'670;    // 273.15 K
    static constexpr std::int64_t zeroFahrenheit = 459'670; // 459.67 °R

    explicit constexpr Temperature(std::int64_t units) noexcept : units_(units) {}

    static constexpr std::int64_t checked(std::int64_t hundredths)
    {
        if (hundredths > 1'000'000'000'000'000 || hundredths < -1'000'000'000'000'000) {
            throw std::out_of_range("temperature out of range");
        }
        return hundredths;
    }

    std::int64_t units_;
};

} // namespace loadwarden
