#pragma once

#include "core/desk/office.h"

#include <iosfwd>
#include <string>
#include <vector>

namespace loadwarden::cli {

/// Reads acts as they are typed by programs: one JSON object a line, with `kind`, `subjects`,
/// `body` (core/acts/ACTS.md says what stands in them) and, where wished, `happenedAt`, `reason`,
/// `supersedes`. Throws std::runtime_error with the line's number for the first that is wrong.
[[nodiscard]] std::vector<ToRecord> readActs(std::istream& in, const std::string& name);

} // namespace loadwarden::cli
