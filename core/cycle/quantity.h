#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace loadwarden {

/// What a sterilizer's record states.
enum class Parameter : std::uint8_t {
    temperature,
    exposure,
    pressure,
    drying,
    concentration,
    humidity
};

/// Number of parameters; they run from 0.
inline constexpr std::size_t parameterCount = 6;

/// The parameters as evidence and decisions write them.
inline constexpr std::array<std::string_view, parameterCount> parameterTexts{
    "temperature", "exposure", "pressure", "drying", "concentration", "humidity"};

[[nodiscard]] constexpr std::string_view textOf(Parameter parameter)
{
    return parameterTexts[static_cast<std::size_t>(parameter)];
}

/// The units in which a value may be typed.
enum class Unit : std::uint8_t {
    celsius,
    fahrenheit,
    minutes,
    seconds,
    kPaAbsolute,
    barAbsolute,
    kPaGauge,
    barGauge,
    psiGauge,
    mgPerL,
    percent
};

/// Number of units; they run from 0.
inline constexpr std::size_t unitCount = 11;

/// The unit as evidence and decisions write it.
[[nodiscard]] constexpr std::string_view textOf(Unit unit)
{
    constexpr std::array<std::string_view, unitCount> texts{
        "celsius",  "fahrenheit", "minutes",  "seconds", "kPaAbsolute", "barAbsolute",
        "kPaGauge", "barGauge",   "psiGauge", "mgPerL",  "percent"};
    return texts[static_cast<std::size_t>(unit)];
}

/// A value exactly as typed: thousandths of its unit (temperatures carry at most two decimals).
struct Quantity {
    Unit unit = Unit::celsius;
    std::int64_t thousandths = 0;

    friend constexpr bool operator==(const Quantity&, const Quantity&) = default;
};

/// Whether a parameter can be stated in a unit.
constexpr bool fits(Parameter parameter, Unit unit)
{
    switch (parameter) {
    case Parameter::temperature: return unit == Unit::celsius || unit == Unit::fahrenheit;
    case Parameter::exposure:
    case Parameter::drying: return unit == Unit::minutes || unit == Unit::seconds;
    case Parameter::pressure: return unit >= Unit::kPaAbsolute && unit <= Unit::psiGauge;
    case Parameter::concentration: return unit == Unit::mgPerL;
    case Parameter::humidity: return unit == Unit::percent;
    }
    return false;
}

} // namespace loadwarden
