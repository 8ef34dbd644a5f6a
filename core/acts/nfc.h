#pragma once

#include <string>
#include <string_view>

namespace loadwarden {

/// The text in Unicode normalization form C. Must be UTF-8.
[[nodiscard]] std::string toNfc(std::string_view text);

[[nodiscard]] bool isNfc(std::string_view text);

} // namespace loadwarden
