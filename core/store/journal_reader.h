#pragma once

#include "core/store/read_snapshot.h"
#include "core/store/stored_entry.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// The greatest seq there can be, for "as far as it goes".
inline constexpr std::int64_t toTheEnd = INT64_MAX;

/// Entries one after the other, in the order of seq. Holds at most some hundred at a time, so that
/// a journal of any length can be read. Not to be kept longer than its snapshot.
class EntryCursor {
public:
    /// The next entry; nullopt behind the last.
    [[nodiscard]] std::optional<StoredEntry> next();

private:
    friend class JournalReader;

    EntryCursor(ReadSnapshot& snapshot, std::string subject, std::int64_t first, std::int64_t last);

    void fetch();

    ReadSnapshot* m_snapshot;
    std::string m_subject; ///< empty: entries about anything
    std::int64_t m_next;
    std::int64_t m_last;
    std::vector<StoredEntry> m_block;
    std::size_t m_taken = 0;
    bool m_end = false;
};

/// Reads the journal as of one moment.
class JournalReader {
public:
    explicit JournalReader(ReadSnapshot& snapshot) : m_snapshot(snapshot) {}

    /// The newest entry; {} of a journal without entries.
    [[nodiscard]] Head head();

    [[nodiscard]] std::optional<StoredEntry> entry(std::int64_t seq);
    /// The entries about anything itself in the register of a prefix ("st"), in order, by one
    /// query; only of ids whose rest is `from` or comes after it among the bytes. Throws
    /// StoreFault::damaged where one is not there.
    [[nodiscard]] std::vector<StoredEntry> ofRegister(std::string_view prefix,
                                                      std::string_view from = {});

    /// Entries from `first` to `last`, both included.
    [[nodiscard]] EntryCursor range(std::int64_t first, std::int64_t last = toTheEnd);

    /// The entries among those that name the subject.
    [[nodiscard]] EntryCursor about(std::string subject, std::int64_t first = 1,
                                    std::int64_t last = toTheEnd);

private:
    ReadSnapshot& m_snapshot;
};

} // namespace loadwarden
