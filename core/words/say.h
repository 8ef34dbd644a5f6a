#pragma once

#include "core/cycle/quantity.h"
#include "core/quantities/instant.h"
#include "core/quantities/zone.h"
#include "core/release/decision.h"
#include "core/release/finding.h"

#include <optional>
#include <string>

namespace loadwarden {

/// How the house says times and temperatures.
struct HouseStyle {
    std::optional<Zone> zone; ///< of the facility; none: times are said in UTC, with the offset
    bool fahrenheit = false;  ///< for temperatures that nobody typed; typed ones keep their unit
};

/// A finding in words, UTF-8, in the language that is installed. `says` and `source` are never
/// empty and `says` ends with a full stop; `next` is empty only for a note.
struct Said {
    std::string says;   ///< what was found, and who may review it
    std::string next;   ///< what to do about it now
    std::string source; ///< where the rule comes from, or that it has no source
};

[[nodiscard]] Said say(const Finding& finding, const HouseStyle& style);

/// A word for a heading or a label, without a full stop.
[[nodiscard]] std::string say(Verdict verdict);
[[nodiscard]] std::string say(TestResult result);
[[nodiscard]] std::string say(Outcome outcome);

/// "4 Mar 2031 07:14", seconds cut off. Without a zone, and for a local time that comes twice, with
/// the offset: "4 Mar 2031 13:14 (UTC+00:00)". Meant for the years 0 to 9999.
[[nodiscard]] std::string sayTime(Instant t, const HouseStyle& style);

/// The number as typed, without zeros at the end, and its unit: "131.9 °C", "206.8 kPa abs".
[[nodiscard]] std::string sayQuantity(const Quantity& quantity);

/// The document and topic of a finding's rule, "(restated)" or "(from memory)" where that is so.
[[nodiscard]] std::string sourceOf(Key key);

/// The caution that stands on every screen and paper with a verdict.
[[nodiscard]] std::string caution();

} // namespace loadwarden
