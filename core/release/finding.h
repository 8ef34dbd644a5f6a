#pragma once

#include "core/cycle/quantity.h"
#include "core/indicators/cause.h"
#include "core/quantities/instant.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

/// What a rule found, from best to worst; a rule that holds finds nothing.
enum class Outcome : std::uint8_t { note, waits, review, fails };

enum class RuleId : std::uint8_t {
#define LW_RULE(enumerator, text) enumerator,
#include "core/release/rules.def"
#undef LW_RULE
};

enum class Key : std::uint8_t {
#define LW_KEY(enumerator, text, rule) enumerator,
#include "core/release/finding_keys.def"
#undef LW_KEY
};

/// Number of keys; they run from 0.
constexpr int keyCount = 0
#define LW_KEY(enumerator, text, rule) +1
#include "core/release/finding_keys.def"
#undef LW_KEY
    ;

[[nodiscard]] std::string_view textOf(Key key);
[[nodiscard]] std::string_view textOf(RuleId rule);
[[nodiscard]] RuleId ruleOf(Key key);
[[nodiscard]] std::string_view textOf(Outcome outcome);

/// Who may answer a finding that waits for a review.
enum class Reviewer : std::uint8_t { none, lead, supervisor, secondSupervisor };

[[nodiscard]] std::string_view textOf(Reviewer reviewer);

/// One thing that a rule found. Which fields beyond `outcome` are set depends on the key.
struct Finding {
    Key key{};
    Outcome outcome = Outcome::waits;
    Reviewer reviewer = Reviewer::none; ///< who may review it; kept when a review made it a note
    bool reviewed = false;              ///< a review made it a note
    Cause cause = Cause::none;          ///< why an indicator or its reading does not count
    std::int32_t item = -1;             ///< index of the item, -1 for the load
    std::string subject;                ///< empty: none
    std::optional<Instant> changesAt;   ///< when time alone will change it; later than now
    std::optional<Instant> newest;      ///< newest entry behind it, for a review to name
    std::optional<Quantity> value;      ///< the reading that decided it, as typed
    std::optional<Quantity> limit;      ///< the limit that it was judged by
    std::int64_t count = 0;             ///< how many, where it counts something
};

} // namespace loadwarden
