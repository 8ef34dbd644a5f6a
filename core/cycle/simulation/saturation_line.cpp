#include "core/cycle/simulation/saturation_line.h"

#include <algorithm>
#include <cmath>

namespace loadwarden::simulation {
namespace {

constexpr double criticalKelvin = 647.096;
constexpr double criticalKPa = 22064;
constexpr double celsiusZero = 273.15;
constexpr double coldest = 0.01;
constexpr double hottest = 373;

} // namespace

double saturationKPa(double celsius)
{
    const double kelvin = std::clamp(celsius, coldest, hottest) + celsiusZero;
    const double t = 1 - kelvin / criticalKelvin;
    const double half = std::sqrt(t);
    const double sum = -7.85951783 * t + 1.84408259 * t * half - 11.7866497 * t * t * t
                       + 22.6807411 * t * t * t * half - 15.9618719 * t * t * t * t
                       + 1.80122502 * t * t * t * t * t * t * t * half;
    return criticalKPa * std::exp(criticalKelvin / kelvin * sum);
}

double saturationCelsius(double kPa)
{
    if (!(kPa > saturationKPa(coldest))) {
        return coldest;
    }
    // Newton's way with the slope of a vapour of constant heat, which is near enough to halve the
    // error many times in each turn.
    constexpr double heat = 5000; // kelvin
    double celsius = 100;
    for (int turn = 0; turn < 60; ++turn) {
        const double kelvin = celsius + celsiusZero;
        const double error = std::log(kPa / saturationKPa(celsius));
        const double change = error * kelvin * kelvin / heat;
        celsius = std::clamp(celsius + change, coldest, hottest);
        if (std::abs(change) < 1e-9) {
            break;
        }
    }
    return celsius;
}

} // namespace loadwarden::simulation
