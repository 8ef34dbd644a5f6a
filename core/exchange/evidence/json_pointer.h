#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace loadwarden::evidence_format {

// JSON Pointers (RFC 6901).

/// One step of a pointer: "/" and the name, with "~" and "/" escaped.
[[nodiscard]] std::string pointerStep(std::string_view name);

/// Where in a valid JSON text the value begins that a pointer names, in bytes; if there is none,
/// the object or list in which it is not found.
[[nodiscard]] std::size_t findPointer(std::string_view json, std::string_view pointer);

} // namespace loadwarden::evidence_format
