#pragma once

#include "core/journal/envelope.h"
#include "core/journal/seal.h"
#include "core/store/connection.h"

#include <cstdint>
#include <string>
#include <vector>

namespace loadwarden::testing {

/// All that verification looks at, as somebody with the file in his hands may change it.
struct Contents {
    struct Entry {
        std::int64_t seq = 0;
        std::string hash;
        std::string kind;
        std::string bytes;
    };
    struct Subject {
        std::int64_t seq = 0;
        std::int64_t ordinal = 0;
        std::string subject;
    };

    std::vector<Entry> entries;
    std::vector<Subject> subjects;
    std::int64_t headSeq = 0;
    std::string headHash;
    std::vector<std::pair<std::int64_t, std::string>> seals; ///< number and line
    bool guarded = true;

    [[nodiscard]] static Contents of(Connection& connection);

    /// Puts this in place of what the database has.
    void putInto(Connection& connection) const;

    /// Puts an envelope with a hash of its own where entry `at` (from 0) stands.
    void forge(std::size_t at, const Envelope& envelope);

    /// Numbers and chains the entries from `at` on anew, and makes head and subjects fit them.
    void chainFrom(std::size_t at);

    /// Makes head and subjects fit the entries.
    void indexAnew();

    [[nodiscard]] Envelope envelope(std::size_t at) const;
};

} // namespace loadwarden::testing
