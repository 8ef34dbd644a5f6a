#pragma once

#include "core/release/evidence.h"

#include <string>

namespace loadwarden {

/// The record as evidence, version 1, in one line of JSON with its line feed: what readEvidence()
/// reads as the same record. It must be the record as it was read or folded, not what assemble()
/// left of it.
///
/// The same record gives the same bytes. Fields stand in the order of the format's tables. What is
/// not stated is left out, and so is what reading assumes where nothing is stated. Times are exact
/// and in UTC, numbers exact decimals, readings as they were typed. A cycle specification is
/// written out, also one that the file only named, so no library is needed to read it again.
///
/// Throws std::out_of_range, and names the field, where a single field cannot be stated: a number
/// with more decimals than it may have, a text too long or with characters that it must not hold, a
/// time beyond those of the format, a test without a start. No record that was read has such a field; one that was put
/// together otherwise may, and may also be refused for what goes beyond single fields. A review
/// that saw nothing, its newestSeen before all times of the format, is written with the first of
/// them.
///
/// Throws std::length_error where the text would lie beyond the limits of readEvidence() (bytes,
/// objects). Times, acts and a named specification may come out longer than they were, so that this
/// can also happen to a record that was read at these very limits.
[[nodiscard]] std::string writeEvidence(const EvidenceRecord& record);

} // namespace loadwarden
