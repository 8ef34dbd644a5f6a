#pragma once

#include <cstdint>
#include <string_view>

namespace loadwarden {

/// Why a reading or an indicator does not count (RULES.md, 4a).
enum class Cause : std::uint8_t {
#define LW_CAUSE(enumerator, text) enumerator,
#include "core/indicators/causes.def"
#undef LW_CAUSE
};

/// Number of causes, `none` with them; they run from 0.
constexpr int causeCount = 0
#define LW_CAUSE(enumerator, text) +1
#include "core/indicators/causes.def"
#undef LW_CAUSE
    ;

/// The cause as the published schema writes it; empty for none.
[[nodiscard]] std::string_view textOf(Cause cause);

} // namespace loadwarden
