#pragma once

#include <iosfwd>

namespace loadwarden::cli {

/// Where a command reads and writes.
struct Streams {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
};

/// What a command ends with.
enum ExitCode : int {
    exitDone = 0,     ///< done; of a decision: everything may be released
    exitWithheld = 1, ///< decided, and not everything may be released
    exitBad = 2,      ///< bad input, bad usage, or a failure of the computer
    exitRefused = 3   ///< something that a person can mend; nothing was recorded
};

} // namespace loadwarden::cli
