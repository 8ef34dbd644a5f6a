#pragma once

#include <cstdint>

namespace loadwarden {

/// Whether a trace shows that a limit is met.
enum class Shown : std::uint8_t {
    notAsked,
    met,
    open, ///< the samples are too far apart, or too few, to tell
    notMet
};

} // namespace loadwarden
