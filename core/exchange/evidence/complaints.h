#pragma once

#include "core/exchange/evidence/field.h"
#include "core/exchange/evidence/json_scanner.h"
#include "core/quantities/unseen.h"
#include "core/quantities/zone.h"

#include <string>
#include <string_view>

namespace loadwarden::evidence_format {

// The sentences of ReadProblem::message.

/// A text of a file in quotation marks, made safe to print: shortened, what cannot be seen
/// escaped.
[[nodiscard]] std::string quoted(std::string_view text);

/// `"a", "b" or "c"`.
[[nodiscard]] std::string listed(std::span<const std::string_view> words);

[[nodiscard]] std::string wrongKind(JsonKind found, std::string_view wanted);
[[nodiscard]] std::string wrongLength(const TextRule& rule, std::size_t found);
[[nodiscard]] std::string wrongCharacter(const TextRule& rule, Unseen found);
[[nodiscard]] std::string wrongWord(const WordRule& rule, std::string_view found);
[[nodiscard]] std::string wrongNumber(const NumberRule& rule, std::string_view written);
[[nodiscard]] std::string wrongTime(std::string_view found);
/// For a time whose offset the facility's zone has not at that moment.
[[nodiscard]] std::string wrongOffset(std::string_view found, Instant time, const Zone& zone);
[[nodiscard]] std::string wrongDate(std::string_view found);
[[nodiscard]] std::string unknownField(const ObjectType& type, std::string_view found);
[[nodiscard]] std::string missingFields(const ObjectType& type, FieldSet present);

/// What stands where a value should, by its first bytes; 0 at the end of the text.
[[nodiscard]] std::string noValue(char first);
/// The same where the name of a field should stand.
[[nodiscard]] std::string noName(char first);

/// What the first bytes of a text say against it; empty: nothing.
[[nodiscard]] std::string wrongEncoding(std::string_view firstBytes);
[[nodiscard]] std::string nulProblem();
[[nodiscard]] std::string tooLongProblem();

} // namespace loadwarden::evidence_format
