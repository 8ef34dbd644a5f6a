#pragma once

#include "core/quantities/text_place.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace loadwarden {

/// One thing that is wrong in a record.
struct ReadProblem {
    TextPlace place;     ///< in the file; of what is missing: where it should have stood
    std::string pointer; ///< field, a JSON Pointer (RFC 6901); empty: the whole record
    std::string message; ///< what is wrong and what would be right, in plain English
};

/// Problems of one record that are told at most.
inline constexpr std::size_t mostProblems = 20;

/// Why a record of a file could not be read. Nothing of a record with an error is used.
struct ReadError {
    std::string source;                ///< the file, as the caller named it
    std::int64_t record = 0;           ///< counted from 1
    std::vector<ReadProblem> problems; ///< never empty; in the order of their places
    bool more = false;                 ///< there are more than mostProblems
};

} // namespace loadwarden
