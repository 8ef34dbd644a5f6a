#pragma once

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace loadwarden::cli {

/// Lines longer than this are refused.
inline constexpr std::size_t mostBytesOfLine = 1'000'000;

/// The object that a line of JSON is. Throws std::runtime_error with a plain sentence: where the
/// line is no JSON any more, or that a member stands there twice, of which one would be dropped
/// silently.
[[nodiscard]] nlohmann::json objectOf(const std::string& line);

} // namespace loadwarden::cli
