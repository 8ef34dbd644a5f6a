#pragma once

#include "core/desk/pin_hash.h"
#include "core/desk/refusal.h"
#include "core/quantities/clock.h"
#include "core/store/connection.h"
#include "core/store/write_transaction.h"

#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

/// Why a text is not a good PIN; nullopt where it is one: 6 to 12 digits that are neither all the
/// same nor in a row.
[[nodiscard]] std::optional<Refusal> whyNoPin(std::string_view pin);

/// How long to wait after that many wrong tries in a row: nothing after the first two, then 5
/// seconds, doubled each time, at most a quarter of an hour.
[[nodiscard]] Duration waitAfter(std::int64_t wrongTries);

/// The hashes of the staff's PINs, beside the journal and never in it.
class PinBook {
public:
    PinBook(Connection& connection, const Clock& clock) : m_connection(connection), m_clock(clock)
    {
    }

    /// nullopt: it is the person's PIN. A wrong one is counted, on the disk, before this returns.
    [[nodiscard]] std::optional<Refusal> check(const std::string& person, std::string_view pin);

    /// Sets a person's PIN by its hash within a transaction that its owner commits; wrong tries are
    /// forgotten.
    static void set(WriteTransaction& transaction, const std::string& person,
                    const std::string& hash);

private:
    void note(const std::string& person, std::int64_t wrongTries, Instant waitUntil);

    Connection& m_connection;
    const Clock& m_clock;
};

} // namespace loadwarden
