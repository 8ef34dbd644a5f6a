#pragma once

#include "core/cycle/trace/trace_mapping.h"

#include <string>
#include <string_view>
#include <variant>

namespace loadwarden {

/// A mapping as one JSON object (RFC 8259), in lines, to be kept with its sterilizer. Columns are
/// counted from 1, as people do. Text that is no UTF-8 becomes U+FFFD.
[[nodiscard]] std::string writeTraceMapping(const TraceMapping& mapping);

/// Why a text is no mapping, in a plain sentence that names the field.
struct TraceMappingError {
    std::string message;
};

/// Reads what writeTraceMapping() wrote. Refused is what is unknown, missing, stands twice, has
/// another type, or does not go together (faultOf()). Answers for any bytes.
[[nodiscard]] std::variant<TraceMapping, TraceMappingError> readTraceMapping(std::string_view json);

} // namespace loadwarden
