#include "core/cycle/simulation/simulation.h"

#include "core/cycle/simulation/course.h"
#include "core/cycle/simulation/saturation_line.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace loadwarden::simulation {
namespace {

constexpr double referenceCelsius = 121.1;
constexpr double zKelvin = 10;

double rate(double celsius)
{
    return std::pow(10, (celsius - referenceCelsius) / zKelvin);
}

std::size_t indexAt(double seconds)
{
    return static_cast<std::size_t>(std::lround(seconds / Truth::step));
}

/// Minutes at the reference temperature, of the chamber sensor, by trapezoids.
double lethality(const Course& course, std::size_t from, std::size_t to)
{
    double minutes = 0;
    for (std::size_t i = from + 1; i <= to && i < course.chamber.size(); ++i) {
        minutes += (rate(course.chamber[i - 1]) + rate(course.chamber[i])) / 2 * Truth::step / 60;
    }
    return minutes;
}

std::vector<Span> spansInBand(const Course& course, const Settings& settings)
{
    const auto isIn = [&](double celsius) {
        return celsius >= settings.setCelsius
               && celsius <= settings.setCelsius + settings.bandKelvin;
    };
    std::vector<Span> spans;
    bool was = false;
    for (std::size_t i = 0; i < course.chamber.size(); ++i) {
        const double now = Truth::step * static_cast<double>(i);
        const bool is = isIn(course.chamber[i]) && isIn(course.drain[i]) && isIn(course.load[i]);
        if (is && !was) {
            spans.push_back({now, now});
        } else if (is) {
            spans.back().to = now;
        }
        was = is;
    }
    return spans;
}

Truth truthOf(Course& course, const Settings& settings)
{
    Truth truth;
    truth.pulses = std::move(course.pulses);
    truth.heating = course.heating;
    truth.inBand = spansInBand(course, settings);
    truth.timed = course.timed;
    truth.exhaust = course.exhaust;
    truth.drying = course.drying;
    truth.airAdmission = course.airAdmission;
    truth.end = course.end();
    truth.wholeF = lethality(course, 0, course.chamber.size());
    const Span exposure = truth.exposure();
    const std::size_t from = indexAt(exposure.from);
    const std::size_t to = indexAt(exposure.to);
    if (to > from) {
        truth.exposureF = lethality(course, from, to);
        double sum = 0;
        const std::size_t edge = indexAt(Truth::edgeSeconds);
        for (std::size_t i = from; i <= to; ++i) {
            const double saturation = saturationCelsius(course.kPa[i]);
            sum += course.chamber[i] - saturation;
            if (i < from + edge || i + edge > to) {
                continue; // the load still warms, or the steam is already let out
            }
            const auto [least, most] =
                std::minmax({course.chamber[i], course.drain[i], course.load[i]});
            truth.coldest = std::min(truth.coldest, least - saturation);
            truth.hottest = std::max(truth.hottest, most - saturation);
        }
        truth.saturationMean = sum / static_cast<double>(to - from + 1);
    }
    if (course.leak.length() > 0) {
        truth.leakKPaAMinute =
            (course.kPa[indexAt(course.leak.to)] - course.kPa[indexAt(course.leak.from)])
            / course.leak.length() * 60;
    }
    return truth;
}

/// The channels as a recorder with noisy sensors has them.
Trace sampled(const Course& course, const Settings& settings)
{
    std::mt19937_64 random(settings.seed ^ 0x5eed'7ace'0000'0001U);
    std::normal_distribution<double> normal;
    const std::size_t stride = std::max<std::size_t>(indexAt(settings.samplingSeconds), 1);
    Trace trace;
    trace.channels = {{"Chamber", ChannelRole::chamberTemperature, {}},
                      {"Drain", ChannelRole::drainTemperature, {}},
                      {"Load", ChannelRole::loadTemperature, {}},
                      {"Pressure", ChannelRole::chamberPressure, {}}};
    Span dropout{-1, -1};
    for (const Fault& fault : settings.faults) {
        if (fault.kind == FaultKind::sensorDropout && course.timed) {
            const double room = std::max(course.timed->length() - fault.size, 0.0);
            const double from =
                course.timed->from + room * std::uniform_real_distribution<double>(0, 1)(random);
            dropout = {from, from + fault.size};
        }
    }
    for (std::size_t i = 0; i < course.chamber.size(); i += stride) {
        const double seconds = Truth::step * static_cast<double>(i);
        const bool isOut = seconds >= dropout.from && seconds <= dropout.to;
        trace.seconds.push_back(seconds);
        trace.channels[0].values.push_back(course.chamber[i]
                                           + settings.noiseKelvin * normal(random));
        const double drain = course.drain[i] + settings.noiseKelvin * normal(random);
        trace.channels[1].values.push_back(isOut ? std::numeric_limits<double>::quiet_NaN()
                                                 : drain);
        trace.channels[2].values.push_back(course.load[i] + settings.noiseKelvin * normal(random));
        trace.channels[3].values.push_back(
            std::max(course.kPa[i] + settings.noiseKPa * normal(random), 0.0));
    }
    return trace;
}

} // namespace

Span Truth::exposure() const
{
    const auto longest = std::ranges::max_element(inBand, {}, &Span::length);
    return longest == inBand.end() ? Span{} : *longest;
}

Cycle simulate(const Settings& settings)
{
    Course course = run(settings);
    Cycle cycle;
    cycle.trace = sampled(course, settings);
    cycle.truth = truthOf(course, settings);
    return cycle;
}

} // namespace loadwarden::simulation
