#pragma once

#include "core/store/read_snapshot.h"

#include <cstdint>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace loadwarden {

/// A row of p_mark.
struct MarkRow {
    std::int64_t at = 0;
    std::string cycle; ///< ld-
    std::string detail;
    std::int64_t said = 0;
    std::int64_t time = 0;
};

/// A reading below a least value.
struct LowReading {
    std::string cycle; ///< ld-
    std::int64_t at = 0;
    std::int64_t seq = 0;
};

/// What is read of p_mark and p_reading for the search of one cycle is kept for the next, which is
/// mostly of the same days. Of one snapshot, as of one entry.
class MarkWindows {
public:
    /// The snapshot outlives this.
    MarkWindows(ReadSnapshot& snapshot, std::int64_t upTo) : m_snapshot(snapshot), m_upTo(upTo) {}

    /// In the order of `at`, then of the cycles' ids. To be used before the next call.
    [[nodiscard]] std::span<const MarkRow>
    between(std::string_view sterilizer, std::string_view mark, std::int64_t from, std::int64_t to);

    /// Of all times. `bound` and the others as in p_reading.
    [[nodiscard]] std::span<const LowReading>
    lowReadings(std::string_view sterilizer, std::string_view bound, std::string_view parameter,
                std::string_view unit, std::int64_t least);

private:
    struct Window {
        std::int64_t from = 0;
        std::int64_t to = 0;
        std::vector<MarkRow> rows;
    };

    void read(std::string_view sterilizer, std::string_view mark, Window& window);

    ReadSnapshot& m_snapshot;
    std::int64_t m_upTo;
    std::map<std::pair<std::string, std::string>, Window> m_windows; ///< by sterilizer and mark
    std::map<std::string, std::vector<LowReading>, std::less<>> m_lowReadings;
};

} // namespace loadwarden
