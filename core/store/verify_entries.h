#pragma once

#include "core/journal/header.h"
#include "core/store/read_snapshot.h"
#include "core/store/verify.h"

#include <cstdint>
#include <future>
#include <optional>
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

private:
    struct Row {
        std::int64_t seq = 0;
        std::string stored; ///< hash, kind and bytes
        std::size_t hashLength = 0;
        std::size_t kindLength = 0;

        [[nodiscard]] std::string_view hash() const
        {
            return std::string_view(stored).substr(0, hashLength);
        }
        [[nodiscard]] std::string_view kind() const
        {
            return std::string_view(stored).substr(hashLength, kindLength);
        }
        [[nodiscard]] std::string_view bytes() const
        {
            return std::string_view(stored).substr(hashLength + kindLength);
        }
    };

    /// The words of an entry in p_subject.
    struct Subjects {
        std::int64_t seq = 0;
        std::int64_t count = 0;
        std::string joined; ///< with a quotation mark between, which no word has
    };

    struct Block {
        std::vector<Row> rows;
        std::vector<Subjects> subjects;
    };

    [[nodiscard]] Block read();
    void readSubjects(std::int64_t last, std::vector<Subjects>& into);
    void start(Block block);
    void reportChecked();
    void check(const Block& block);
    void take(const Row& row);
    void takeSubjects(const Row& row, const std::vector<Subjects>& all, std::size_t& at);
    [[nodiscard]] bool areSame(const Subjects& found) const;
    void checkClock(const Row& row);
    void stray(const Subjects& found);

    ReadSnapshot& m_snapshot;
    VerifyReport& m_report;
    std::int64_t m_readTo;       ///< seq
    std::int64_t m_subjectsFrom; ///< rows of p_subject before this have been read

    // What the other thread works with.
    VerifyReport m_checked; ///< of the block that is being checked
    ChainWalk m_walk;
    std::size_t m_faultsTaken = 0;
    EntryHeader m_header;
    std::optional<Instant> m_lastRecorded;

    std::future<void> m_checking; ///< the last member: its end is waited for first
};

} // namespace loadwarden
