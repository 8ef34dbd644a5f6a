#pragma once

#include "app/cli/arguments.h"
#include "app/cli/streams.h"
#include "core/cycle/trace/trace_mapping.h"
#include "core/quantities/pressure.h"

#include <optional>
#include <string>
#include <string_view>

namespace loadwarden::cli {

/// The bytes of a recorder's file; of "-" standard input. Throws std::runtime_error.
[[nodiscard]] std::string readTraceFile(std::string_view name, Streams streams);

/// The mapping that --map names; nullopt: none is named. Throws std::runtime_error where it is
/// none.
[[nodiscard]] std::optional<TraceMapping> mappingGiven(const Arguments& given);

/// A number with at most 3 decimals, or a UsageError that names the option.
[[nodiscard]] double numberIn(std::string_view text, std::string_view option);

/// The same of an option; nullopt: it is not given.
[[nodiscard]] std::optional<double> numberGiven(const Arguments& given, std::string_view option);

/// What --atmosphere states in kPa absolute.
[[nodiscard]] std::optional<AbsolutePressure> atmosphereGiven(const Arguments& given);

} // namespace loadwarden::cli
