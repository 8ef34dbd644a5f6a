#pragma once

#include "core/exchange/evidence/field.h"
#include "core/exchange/evidence/json_scanner.h"

#include <string>
#include <string_view>

namespace loadwarden::evidence_format {

// The sentences of ReadError::message.

/// A text of a file in quotation marks, made safe to print: shortened, control characters escaped.
[[nodiscard]] std::string quoted(std::string_view text);

/// `"a", "b" or "c"`.
[[nodiscard]] std::string listed(std::span<const std::string_view> words);

[[nodiscard]] std::string wrongKind(JsonKind found, std::string_view wanted);
[[nodiscard]] std::string wrongLength(const TextRule& rule, std::size_t found);
[[nodiscard]] std::string wrongWord(const WordRule& rule, std::string_view found);
[[nodiscard]] std::string wrongNumber(const NumberRule& rule);
[[nodiscard]] std::string wrongTime(std::string_view found);
[[nodiscard]] std::string wrongDate(std::string_view found);
[[nodiscard]] std::string unknownField(const ObjectType& type, std::string_view found);
[[nodiscard]] std::string missingFields(const ObjectType& type, FieldSet present);

/// What the first bytes of a text say against it; empty: nothing.
[[nodiscard]] std::string wrongEncoding(std::string_view firstBytes);
[[nodiscard]] std::string nulProblem();
[[nodiscard]] std::string tooLongProblem();

/// One step of a JSON Pointer (RFC 6901): "/" and the name, with "~" and "/" escaped.
[[nodiscard]] std::string pointerStep(std::string_view name);

} // namespace loadwarden::evidence_format
