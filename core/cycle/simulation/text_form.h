#pragma once

#include "core/cycle/simulation/trace_text.h"

#include <string>
#include <vector>

namespace loadwarden::simulation {

/// The fields of a simulated recorder's text.
class TextForm {
public:
    explicit TextForm(const TextSettings& settings) : m_settings(settings) {}

    [[nodiscard]] RecorderUnit unitOf(ChannelRole role) const;
    /// A value in °C or kPa absolute; empty for NaN.
    [[nodiscard]] std::string value(const TraceChannel& channel, double value) const;
    [[nodiscard]] std::string time(double seconds) const;
    [[nodiscard]] std::vector<std::string> header(const Trace& trace) const;

private:
    [[nodiscard]] std::string number(double value, int decimals) const;
    [[nodiscard]] std::string clock(double seconds, bool hasSeconds) const;

    const TextSettings& m_settings;
};

} // namespace loadwarden::simulation
