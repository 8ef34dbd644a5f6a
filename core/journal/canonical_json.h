#pragma once

#include <nlohmann/json_fwd.hpp>

#include <cstdint>
#include <string>

namespace loadwarden {

/// The greatest integer of the canonical form; the least is its negative.
inline constexpr std::int64_t greatestInteger = std::int64_t{1} << 53U;

/// How deep a value may be nested: no body of an act is deeper; what is, was not written by this
/// program.
inline constexpr int deepestValue = 32;

/// A JSON value in the journal's canonical form (FORMAT.md): no blanks, members sorted by the bytes
/// of their names, strings escaped only where they must be. Throws nlohmann::json::other_error for
/// fractions, for integers beyond ±2^53 and for what is nested more than 32 deep.
[[nodiscard]] std::string canonicalJson(const nlohmann::json& value);

/// A JSON value that is an integer; a fraction is not made one. Throws nlohmann::json::other_error
/// for what is none, or is beyond ±2^53.
[[nodiscard]] std::int64_t integerOf(const nlohmann::json& value);

} // namespace loadwarden
