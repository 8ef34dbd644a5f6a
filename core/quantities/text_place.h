#pragma once

#include <cstdint>

namespace loadwarden {

/// A place in a text file, as editors count it.
struct TextPlace {
    std::int64_t line = 1;   ///< from 1
    std::int64_t column = 1; ///< in characters, from 1

    friend bool operator==(TextPlace, TextPlace) = default;
};

} // namespace loadwarden
