#pragma once

#include "core/cycle/trace/text_lines.h"
#include "core/cycle/trace/trace_defect.h"

#include <optional>
#include <string_view>

namespace loadwarden {

/// Whether a line is the mapping's header.
[[nodiscard]] bool isHeader(const LineCutter& line, const TraceMapping& mapping);

/// Where the samples of a file begin.
struct HeaderFound {
    std::size_t begin = 0; ///< in bytes
    std::int64_t line = 1;
    std::optional<TraceDefect> differs{}; ///< there is no such header: where it stood, what it has
};

/// Looks for the mapping's header in the first lines of a file and passes over it and the lines
/// behind it that are no samples. The mapping must be sound.
[[nodiscard]] HeaderFound findHeader(std::string_view bytes, const TraceMapping& mapping);

} // namespace loadwarden
