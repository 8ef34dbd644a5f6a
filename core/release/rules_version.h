#pragma once

#include <string_view>

namespace loadwarden {

/// Which rules this program was built with: the first 16 hexadecimal digits of the SHA-256 digest
/// of core/release/RULES.md.
extern const std::string_view rulesVersion;

} // namespace loadwarden
