#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace loadwarden {

/// Reads a number as JSON writes it (RFC 8259, section 6: "132", "132.4", "1.324e2", "-0.5") into
/// an integer scaled by 10^decimals, exactly and without floating point. `decimals` is 0 to 15.
/// nullopt when the text is no such number, when it has more decimals than that (zeros at the end
/// do not count), or when the scaled integer lies beyond 1e15 either way.
std::optional<std::int64_t> parseDecimal(std::string_view text, int decimals) noexcept;

} // namespace loadwarden
