#pragma once

#include "core/cycle/trace/trace.h"

#include <cstdint>
#include <optional>
#include <vector>

// Cycles of no sterilizer: a small physical model whose truth is known, to test the evaluation of
// traces against and to fill the demonstration. Whatever is made from it is labelled as simulated.

namespace loadwarden::simulation {

enum class Program : std::uint8_t {
    gravity,    ///< steam displaces the air through the drain
    prevacuum,  ///< pulses between vacuum and steam above atmospheric pressure
    steamFlush, ///< pulses that stay above atmospheric pressure
    leakTest    ///< vacuum, settling, and a time in which the pressure may rise
};

enum class FaultKind : std::uint8_t {
    shortExposure,       ///< size: seconds that the timer stops too early
    interruptedExposure, ///< size: seconds below the band; see Fault::kelvin
    lowTemperature,      ///< size: kelvin that the plateau lies below the band
    highTemperature,     ///< size: kelvin that the plateau lies above the band
    residualAir,         ///< size: kelvin by which the steam is cooler than its pressure says
    superheat,           ///< size: kelvin by which it is hotter
    slowHeating,         ///< size: how many times longer the last heating takes
    sensorDropout,       ///< size: seconds without a value of the drain sensor within exposure
    leak,                ///< size: kPa a minute, wherever the chamber is under vacuum
    shortDrying          ///< size: seconds that drying ends too early
};

struct Fault {
    FaultKind kind = FaultKind::shortExposure;
    double size = 0;
    double kelvin = 1; ///< of an interruption: how far below the band the steam falls
};

/// What a simulated sterilizer is set to, and how it is recorded.
struct Settings {
    Program program = Program::prevacuum;
    double setCelsius = 134;
    double bandKelvin = 3; ///< the band is setCelsius to setCelsius + bandKelvin
    double exposureSeconds = 240;
    double dryingSeconds = 1200;
    int pulses = 4;
    double lowKPa = 10;   ///< absolute, at the bottom of a pulse of prevacuum
    double highKPa = 170; ///< absolute, at its top
    double atmosphereKPa = 101.325;
    double settleSeconds = 300; ///< leak test
    double leakSeconds = 600;   ///< leak test
    double samplingSeconds = 1;
    double noiseKelvin = 0.05; ///< standard deviation of a temperature sensor
    double noiseKPa = 0.2;     ///< standard deviation of the pressure sensor
    std::uint64_t seed = 1;    ///< the same seed makes the same cycle
    std::vector<Fault> faults;
};

struct Span {
    double from = 0; ///< seconds since the first sample
    double to = 0;

    [[nodiscard]] double length() const { return to - from; }
};

struct PulseTruth {
    double lowSeconds = 0;
    double lowKPa = 0;
    double highSeconds = 0;
    double highKPa = 0;
};

/// What happened in the chamber, by its sensors without noise, in steps of `step`.
struct Truth {
    static constexpr double step = 0.25; ///< seconds
    /// Before and after which the extremes of saturation are taken: equilibration takes as long
    /// (EN 285: at most 15 s up to 800 L; from memory).
    static constexpr double edgeSeconds = 15;

    /// With prevacuum the last vacuum, from which the chamber is heated, is none of them.
    std::vector<PulseTruth> pulses;
    Span heating;              ///< from the last pulse, or the start, to the set temperature
    std::vector<Span> inBand;  ///< every channel within the band, in turn
    std::optional<Span> timed; ///< what the sterilizer's own timer counted
    Span exhaust;
    Span drying;
    double airAdmission = 0; ///< when air is let in at last
    double end = 0;
    double wholeF = 0;         ///< minutes at 121.1 °C, z 10 K, of the chamber sensor
    double exposureF = 0;      ///< of the longest span in band
    double saturationMean = 0; ///< kelvin: chamber sensor less saturation, over that span
    double coldest = 0; ///< kelvin: of any sensor less saturation, within the edges of that span
    double hottest = 0;
    double leakKPaAMinute = 0; ///< over the leak test's time

    /// The longest span in band; none: of no length.
    [[nodiscard]] Span exposure() const;
};

struct Cycle {
    Trace trace; ///< chamber, drain, load, chamber pressure
    Truth truth;
};

/// Simulates one cycle. Total: settings of no sense give a cycle of no sense, of at most a day.
[[nodiscard]] Cycle simulate(const Settings& settings);

} // namespace loadwarden::simulation
