#pragma once

#include "core/journal/header.h"
#include "core/store/read_snapshot.h"
#include "core/store/verify.h"

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace loadwarden {

/// Adds to a report, of which no more than a part is kept.
void addFault(VerifyReport& report, JournalFault fault);

/// One pass over the entries and what stands beside each of them; a part of verifyJournal().
class EntryPass {
public:
    EntryPass(ReadSnapshot& snapshot, const Head& after, VerifyReport& report);

    /// The next entries; false behind the last. Throws StoreError when they cannot be read.
    bool block();

    [[nodiscard]] const Head& head() const { return m_walk.head(); }

private:
    struct Row {
        std::int64_t seq = 0;
        std::string hash;
        std::string kind;
        std::string bytes;
    };

    /// Rows of p_subject: an entry, and one of the words that it should have.
    using SubjectRows = std::vector<std::pair<std::int64_t, std::string>>;

    [[nodiscard]] std::vector<Row> entryRows();
    [[nodiscard]] SubjectRows subjectRows(std::int64_t last);
    void take(const Row& row);
    void takeSubjects(const Row& row, bool readable, const SubjectRows& rows, std::size_t& at);
    void checkClock(const Row& row);
    void stray(std::int64_t seq);

    ReadSnapshot& m_snapshot;
    VerifyReport& m_report;
    ChainWalk m_walk;
    std::size_t m_faultsTaken = 0;
    EntryHeader m_header;
    std::int64_t m_subjectsFrom; ///< rows of p_subject before this have been seen
    std::optional<Instant> m_lastRecorded;
};

} // namespace loadwarden
