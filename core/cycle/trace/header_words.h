#pragma once

#include "core/cycle/trace/trace_mapping.h"

#include <optional>
#include <string_view>

namespace loadwarden {

/// What the words of a column's header say, in plain words of the trade; what they do not say is
/// left out.
struct HeaderWords {
    bool saysTime = false;
    bool saysDate = false;
    bool saysCounter = false;
    bool saysOther = false; ///< of something else: a set point, the jacket, lethality
    bool saysPlace = false; ///< where a temperature is measured
    std::optional<ChannelRole> role;
    std::optional<RecorderUnit> unit;
    bool unitIsLetter = false; ///< by a single letter, which may stand for something else
    std::optional<PressureZero> zero;
    std::optional<TimeForm> form;
};

/// Reads a header's field and what stands below it in a line of units, both UTF-8.
[[nodiscard]] HeaderWords wordsOf(std::string_view header, std::string_view unit = {});

/// Whether a text is nothing but a unit, in brackets or not: "°C", "[kPa abs]", "s".
[[nodiscard]] bool isUnitAlone(std::string_view text);

} // namespace loadwarden
