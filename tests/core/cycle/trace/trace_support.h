#pragma once

#include "core/cycle/trace/band.h"

#include <string>
#include <utility>
#include <vector>

namespace loadwarden::support {

/// Seconds and kPa absolute, joined by straight lines.
using Course = std::vector<std::pair<double, double>>;

/// The value of a course at a moment.
double at(const Course& course, double second);

/// When a rising (or falling) course first passes a value behind a moment.
double passes(const Course& course, double value, double from);

/// A trace of one temperature channel and, where given, a pressure.
Trace traceOf(std::vector<double> seconds, std::vector<double> celsius,
              std::vector<double> kPa = {});

/// A chamber that follows a course of pressure, sampled each `step` seconds from `offset` on:
/// channels "chamber" and "drain" at its saturation temperature (the drain `drainLag` seconds
/// later, both at 40 °C at least) and "pressure".
Trace chamberOf(const Course& course, double step, double drainLag = 0, double offset = 0);

/// A band over channels 0 and 1.
Band bandOf(double least, double most);

/// A course with three vacuum pulses, exposure at 134.8 °C from 720 to 960 s, drying in a vacuum
/// and air let in from 2340 to 2400 s.
Course prevacuumCourse();

/// Four pulses above the atmosphere, exposure at 134.8 °C from 600 to 840 s.
Course steamFlushCourse();

/// Steam that displaces air until 240 s, exposure at 122 °C from 420 to 2220 s, drying at the
/// atmosphere from 2340 s to 3600 s.
Course gravityCourse();

inline constexpr double atmosphere = 101.325;

/// Rows of a file of tests/data/reference/ without comments and heading, split at commas.
std::vector<std::vector<std::string>> referenceRows(const std::string& file);

} // namespace loadwarden::support
