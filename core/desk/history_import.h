#pragma once

#include "core/desk/sign_in.h"
#include "core/store/progress.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

// Bulk import of loads of the time before the journal (ACTS.md, 4: history.imported).

namespace loadwarden {

/// A load as a line of an older record says it.
struct OldLoad {
    HistoryImported said;
    JournalTime start;
    std::string sterilizer; ///< sz-; empty: it is not registered here, or not known
    std::int64_t line = 0;  ///< where it stands
};

/// What is wrong with a line.
struct OldLoadProblem {
    std::int64_t line = 0;
    std::string field; ///< as ACTS.md names it, and `start`
    Refusal why;
};

/// What could be imported of some lines.
struct SortedHistory {
    std::vector<OldLoad> good;
    std::vector<OldLoadProblem> problems;
    std::int64_t already = 0; ///< lines that stand in the journal word for word
    bool cancelled = false;
};

/// Looks at every line, and changes nothing.
[[nodiscard]] OrRefusal<SortedHistory> sortHistory(Office& office, const SignedIn& who,
                                                   std::span<const OldLoad> lines,
                                                   Progress& progress);

struct ImportedHistory {
    std::int64_t imported = 0;
    std::int64_t firstSeq = 0; ///< 0: none
    Head head;                 ///< the newest entry, where any was recorded
    bool cancelled = false;    ///< what was not imported yet is as if it had never been asked
};

/// Records loads that sortHistory() found good, many together, each group whole on the disk before
/// the next is begun. A supervisor's, signed once for all of them. Sealing is the caller's.
[[nodiscard]] OrRefusal<ImportedHistory> importHistory(Office& office, const SignedIn& who,
                                                       Signature signature,
                                                       std::span<const OldLoad> good,
                                                       Progress& progress);

} // namespace loadwarden
