#include "core/cycle/trace/saturation.h"

#include <cmath>
#include <limits>

namespace loadwarden {
namespace {

// IAPWS R7-97(2012), table 34.
constexpr double n1 = 0.11670521452767e4;
constexpr double n2 = -0.72421316703206e6;
constexpr double n3 = -0.17073846940092e2;
constexpr double n4 = 0.12020824702470e5;
constexpr double n5 = -0.32325550322333e7;
constexpr double n6 = 0.14915108613530e2;
constexpr double n7 = -0.48232657361591e4;
constexpr double n8 = 0.40511340542057e6;
constexpr double n9 = -0.23855557567849;
constexpr double n10 = 0.65017534844798e3;

constexpr double zeroCelsius = 273.15;
constexpr double kPaInMPa = 1000;

constexpr double leastKelvin = 273.15;
constexpr double mostKelvin = 647.096;
constexpr double leastMPa = 611.2126e-6; // 611.213 Pa, of 0 °C, is rounded
constexpr double mostMPa = 22.064;

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

} // namespace

double saturationPressure(double celsius)
{
    const double kelvin = celsius + zeroCelsius;
    if (!(kelvin >= leastKelvin && kelvin <= mostKelvin)) {
        return nothing;
    }
    const double theta = kelvin + n9 / (kelvin - n10);
    const double a = theta * theta + n1 * theta + n2;
    const double b = n3 * theta * theta + n4 * theta + n5;
    const double c = n6 * theta * theta + n7 * theta + n8;
    const double root = 2 * c / (-b + std::sqrt(b * b - 4 * a * c));
    const double square = root * root;
    return square * square * kPaInMPa;
}

double saturationTemperature(double kPa)
{
    const double mPa = kPa / kPaInMPa;
    if (!(mPa >= leastMPa && mPa <= mostMPa)) {
        return nothing;
    }
    const double beta = std::sqrt(std::sqrt(mPa));
    const double e = beta * beta + n3 * beta + n6;
    const double f = n1 * beta * beta + n4 * beta + n7;
    const double g = n2 * beta * beta + n5 * beta + n8;
    const double d = 2 * g / (-f - std::sqrt(f * f - 4 * e * g));
    const double sum = n10 + d;
    return (sum - std::sqrt(sum * sum - 4 * (n9 + n10 * d))) / 2 - zeroCelsius;
}

} // namespace loadwarden
