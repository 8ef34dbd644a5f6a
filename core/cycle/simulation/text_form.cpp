#include "core/cycle/simulation/text_form.h"

#include "core/cycle/trace/trace_units.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace loadwarden::simulation {
namespace {

constexpr double day = 86'400;

const char* wordsOf(RecorderUnit unit)
{
    switch (unit) {
    case RecorderUnit::celsius: return "°C";
    case RecorderUnit::fahrenheit: return "°F";
    case RecorderUnit::kelvin: return "K";
    case RecorderUnit::kPa: return "kPa";
    case RecorderUnit::bar: return "bar";
    case RecorderUnit::mbar: return "mbar";
    case RecorderUnit::psi: return "psi";
    case RecorderUnit::inHg: return "inHg";
    case RecorderUnit::mmHg: return "mmHg";
    }
    return "";
}

/// Some hundredths of a kelvin, some thousandths of a bar.
int decimalsOf(RecorderUnit unit)
{
    switch (unit) {
    case RecorderUnit::bar: return 4;
    case RecorderUnit::psi:
    case RecorderUnit::inHg: return 3;
    case RecorderUnit::mbar:
    case RecorderUnit::mmHg: return 1;
    default: return 2;
    }
}

const char* wordsOf(ChannelRole role)
{
    switch (role) {
    case ChannelRole::chamberTemperature: return "Chamber temperature";
    case ChannelRole::drainTemperature: return "Drain temperature";
    case ChannelRole::loadTemperature: return "Load temperature";
    case ChannelRole::chamberPressure: return "Chamber pressure";
    case ChannelRole::notUsed: return "Other";
    }
    return "";
}

const char* timeWords(TimeForm form)
{
    switch (form) {
    case TimeForm::seconds: return "Time (s)";
    case TimeForm::minutes: return "Time (min)";
    case TimeForm::minutesSeconds: return "Time (m:s)";
    case TimeForm::hoursMinutes: return "Clock (h:m)";
    case TimeForm::hoursMinutesSeconds: return "Clock (h:m:s)";
    case TimeForm::dateTime: return "Date and time";
    }
    return "";
}

std::string padded(long long number)
{
    return (number < 10 ? "0" : "") + std::to_string(number);
}

} // namespace

RecorderUnit TextForm::unitOf(ChannelRole role) const
{
    if (isTemperature(role)) {
        return isTemperature(m_settings.temperature) ? m_settings.temperature
                                                     : RecorderUnit::celsius;
    }
    return isTemperature(m_settings.pressure) ? RecorderUnit::kPa : m_settings.pressure;
}

std::string TextForm::number(double value, int decimals) const
{
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", decimals, value);
    std::string written(text);
    std::ranges::replace(written, '.', charOf(m_settings.decimal));
    return written;
}

std::string TextForm::value(const TraceChannel& channel, double value) const
{
    if (std::isnan(value)) {
        return {};
    }
    const RecorderUnit unit = unitOf(channel.role);
    if (isTemperature(channel.role)) {
        const double shown = unit == RecorderUnit::fahrenheit ? value * 1.8 + 32
                             : unit == RecorderUnit::kelvin   ? value + 273.15
                                                              : value;
        return number(shown, decimalsOf(unit));
    }
    const double above = m_settings.zero == PressureZero::gauge ? m_settings.atmosphereKPa : 0;
    return number((value - above) / kPaIn(unit), decimalsOf(unit));
}

/// h:m or h:m:s of a day, m:s of any length: seconds with hundredths where they have some.
std::string TextForm::clock(double seconds, bool hasSeconds) const
{
    const auto hundredths = std::llround(seconds * 100);
    const long long whole = hundredths / 100;
    std::string text = padded(whole / 3600) + ':' + padded(whole / 60 % 60);
    if (hasSeconds) {
        text += ':' + padded(whole % 60);
        if (hundredths % 100 != 0) {
            text += charOf(m_settings.decimal) + padded(hundredths % 100);
        }
    }
    return text;
}

std::string TextForm::time(double seconds) const
{
    const bool isWhole = std::abs(seconds - std::round(seconds)) < 0.005;
    const double shown = m_settings.secondsOfDay + seconds;
    const double ofDay = shown - day * std::floor(shown / day);
    switch (m_settings.time) {
    case TimeForm::seconds: return number(seconds, isWhole ? 0 : 2);
    case TimeForm::minutes: return number(seconds / 60, 4);
    case TimeForm::minutesSeconds: {
        const double minutes = std::floor(seconds / 60);
        const double left = seconds - 60 * minutes;
        return std::to_string(std::llround(minutes)) + ':' + (left < 9.995 ? "0" : "")
               + number(left, isWhole ? 0 : 2);
    }
    case TimeForm::hoursMinutes: return clock(ofDay, false);
    case TimeForm::hoursMinutesSeconds: return clock(ofDay, true);
    case TimeForm::dateTime: break;
    }
    const std::string date =
        formatDate(m_settings.date + static_cast<std::int32_t>(std::floor(shown / day)));
    const std::string year = date.substr(0, 4);
    const std::string month = date.substr(5, 2);
    const std::string ofMonth = date.substr(8, 2);
    const std::string ordered = m_settings.order == DateOrder::yearMonthDay ? date
                                : m_settings.order == DateOrder::dayMonthYear
                                    ? ofMonth + '/' + month + '/' + year
                                    : month + '/' + ofMonth + '/' + year;
    return ordered + ' ' + clock(ofDay, true);
}

std::vector<std::string> TextForm::header(const Trace& trace) const
{
    std::vector<std::string> header{timeWords(m_settings.time)};
    for (const TraceChannel& channel : trace.channels) {
        const std::string zero = isTemperature(channel.role)              ? ""
                                 : m_settings.zero == PressureZero::gauge ? " gauge"
                                                                          : " abs";
        header.push_back(std::string(wordsOf(channel.role)) + " (" + wordsOf(unitOf(channel.role))
                         + zero + ')');
    }
    return header;
}

} // namespace loadwarden::simulation
