#include "trace_support.h"

#include "core/cycle/trace/saturation.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <unistd.h>

namespace loadwarden::support {

double at(const Course& course, double second)
{
    for (std::size_t i = 1; i < course.size(); ++i) {
        if (second <= course[i].first) {
            const auto [t0, p0] = course[i - 1];
            const auto [t1, p1] = course[i];
            return p0 + (p1 - p0) * (second - t0) / (t1 - t0);
        }
    }
    return course.back().second;
}

double passes(const Course& course, double value, double from)
{
    for (std::size_t i = 1; i < course.size(); ++i) {
        const auto [t0, p0] = course[i - 1];
        const auto [t1, p1] = course[i];
        if (t0 >= from && (p0 - value) * (p1 - value) < 0) {
            return t0 + (value - p0) / (p1 - p0) * (t1 - t0);
        }
    }
    throw std::logic_error("the course does not pass that value");
}

Trace traceOf(std::vector<double> seconds, std::vector<double> celsius, std::vector<double> kPa)
{
    Trace trace;
    trace.seconds = std::move(seconds);
    trace.channels.push_back({"chamber", ChannelRole::chamberTemperature, std::move(celsius)});
    if (!kPa.empty()) {
        trace.channels.push_back({"pressure", ChannelRole::chamberPressure, std::move(kPa)});
    }
    return trace;
}

Trace chamberOf(const Course& course, double step, double drainLag, double offset)
{
    Trace trace;
    trace.channels = {{"chamber", ChannelRole::chamberTemperature, {}},
                      {"drain", ChannelRole::drainTemperature, {}},
                      {"pressure", ChannelRole::chamberPressure, {}}};
    const auto celsius = [&](double second) {
        return std::max(saturationTemperature(at(course, second)), 40.0);
    };
    for (double second = offset; second <= course.back().first; second += step) {
        trace.seconds.push_back(second);
        trace.channels[0].values.push_back(celsius(second));
        trace.channels[1].values.push_back(celsius(std::max(second - drainLag, 0.0)));
        trace.channels[2].values.push_back(at(course, second));
    }
    return trace;
}

Band bandOf(double least, double most)
{
    Band band;
    band.leastCelsius = least;
    band.mostCelsius = most;
    band.required = {0, 1};
    return band;
}

Course prevacuumCourse()
{
    const double held = saturationPressure(134.8);
    return {{0, atmosphere},    {60, atmosphere},   {180, 8},  {240, 180},
            {360, 8},           {420, 180},         {540, 8},  {720, held},
            {960, held},        {1020, atmosphere}, {1140, 5}, {2340, 5},
            {2400, atmosphere}, {2460, atmosphere}};
}

Course steamFlushCourse()
{
    const double held = saturationPressure(134.8);
    return {{0, atmosphere},    {30, atmosphere},  {90, 220},         {130, 130}, {190, 220},
            {230, 130},         {290, 220},        {330, 130},        {390, 220}, {430, 130},
            {600, held},        {840, held},       {900, atmosphere}, {1020, 5},  {2220, 5},
            {2280, atmosphere}, {2300, atmosphere}};
}

Course gravityCourse()
{
    const double held = saturationPressure(122);
    return {{0, atmosphere}, {240, 106},         {420, held},
            {2220, held},    {2340, atmosphere}, {3600, atmosphere}};
}

std::vector<std::vector<std::string>> referenceRows(const std::string& file)
{
    std::ifstream in(LOADWARDEN_SOURCE_DIR "/tests/data/reference/" + file);
    std::vector<std::vector<std::string>> rows;
    bool isHeading = true;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line.front() == '#') {
            continue;
        }
        if (!std::exchange(isHeading, false)) {
            std::vector<std::string>& row = rows.emplace_back();
            std::istringstream cells(line);
            for (std::string cell; std::getline(cells, cell, ',');) {
                row.push_back(cell);
            }
        }
    }
    if (rows.empty()) {
        throw std::runtime_error("no rows in " + file);
    }
    return rows;
}

} // namespace loadwarden::support
