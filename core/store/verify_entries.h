#pragma once

#include "core/journal/header.h"
#include "core/store/attachments.h"
#include "core/store/read_snapshot.h"
#include "core/store/verify.h"

#include <cstdint>
#include <future>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Adds to a report, of which no more than a part is kept.
void addFault(VerifyReport& report, JournalFault fault);

/// One pass over the entries and what stands beside each of them; a part of verifyJournal(). While
/// one block of entries is read, another thread checks the one before.
class EntryPass {
public:
    EntryPass(ReadSnapshot& snapshot, const Head& after, VerifyReport& report);
    EntryPass(const EntryPass&) = delete;
    EntryPass& operator=(const EntryPass&) = delete;
    ~EntryPass() = default;

    /// Reads the next entries, and reports what was read before; false when all is reported. Throws
    /// StoreError when they cannot be read.
    bool block();

    /// What named files among the entries that were reported.
    [[nodiscard]] const std::vector<NamesAttachment>& named() const { return m_named; }

private:
    /// A part of Block::text.
    struct Part {
        std::size_t from = 0;
        std::size_t length = 0;
    };

    struct StoredRow {
        std::int64_t seq = 0;
        Part hash;
        Part kind;
        Part bytes;
    };

    /// A row of p_subject.
    struct Subject {
        std::int64_t seq = 0;
        Part id;
    };

    /// One text for all rows, so that none needs memory of its own.
    struct Block {
        std::string text;
        std::vector<StoredRow> rows;
        std::vector<Subject> subjects; ///< in the order of seq, then of the entry

        [[nodiscard]] std::string_view of(Part part) const
        {
            return std::string_view(text).substr(part.from, part.length);
        }
        Part add(std::string_view bytes)
        {
            text += bytes;
            return {text.size() - bytes.size(), bytes.size()};
        }
    };

    struct Row {
        std::int64_t seq = 0;
        std::string_view hash;
        std::string_view kind;
        std::string_view bytes;
    };

    [[nodiscard]] Block read();
    void readSubjects(std::int64_t last, Block& into);
    void start(Block block);
    void reportChecked();
    void check(const Block& block);
    void take(const Row& row);
    void takeSubjects(const Row& row, const Block& block, std::size_t& at);
    [[nodiscard]] bool areSame(const Block& block, std::span<const Subject> found) const;
    void checkClock(const Row& row);
    void stray(std::int64_t seq);

    ReadSnapshot& m_snapshot;
    VerifyReport& m_report;
    std::int64_t m_readTo;       ///< seq
    std::int64_t m_subjectsFrom; ///< rows of p_subject before this have been read

    // What the other thread works with.
    VerifyReport m_checked; ///< of the block that is being checked
    ChainWalk m_walk;
    std::size_t m_faultsTaken = 0;
    EntryHeader m_header;
    std::vector<NamesAttachment> m_named;
    std::optional<Instant> m_lastRecorded;

    std::future<void> m_checking; ///< the last member: its end is waited for first
};

} // namespace loadwarden
