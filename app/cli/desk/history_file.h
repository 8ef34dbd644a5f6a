#pragma once

#include "core/desk/history_import.h"
#include "core/quantities/zone.h"

#include <iosfwd>
#include <string>
#include <vector>

namespace loadwarden::cli {

/// What is wrong with a line of a file of old loads, in words without a full stop.
struct LineProblem {
    std::int64_t line = 0;
    std::string field; ///< empty: the line as a whole
    std::string says;
};

struct HistoryFile {
    std::vector<OldLoad> loads;        ///< of the lines without a problem
    std::vector<LineProblem> problems; ///< in the order of the lines, all of each
    std::int64_t lines = 0;            ///< lines that are not blank
};

/// Reads loads of the time before the journal: a JSON object on each line, with source, lot, start,
/// end, sterilizer, outcome, labels and record (README.md). `source` stands in for lines without
/// one. Times without an offset are the zone's. Throws std::runtime_error when the file cannot be
/// read to its end.
[[nodiscard]] HistoryFile readHistory(std::istream& in, const std::string& name,
                                      const std::string& source, const Zone& zone);

} // namespace loadwarden::cli
