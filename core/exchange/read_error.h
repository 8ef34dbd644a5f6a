#pragma once

#include <cstdint>
#include <string>

namespace loadwarden {

/// Why a record of a file could not be read. Nothing of a record with an error is used.
struct ReadError {
    std::string source;      ///< the file, as the caller named it
    std::int64_t record = 0; ///< counted from 1
    std::string
        pointer; ///< where in the record, a JSON Pointer (RFC 6901); empty: the whole record
    std::string message; ///< what is wrong and what would be right, in plain English
};

} // namespace loadwarden
