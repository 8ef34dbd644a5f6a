#include "core/desk/pin_book.h"

#include "core/store/read_snapshot.h"

#include <algorithm>

namespace loadwarden {
namespace {

constexpr std::size_t leastDigits = 6;
constexpr std::size_t mostDigits = 12;
constexpr std::int64_t freeTries = 2;
constexpr Duration firstWait = Duration::seconds(5);
constexpr Duration longestWait = Duration::minutes(15);

struct PinRow {
    std::string hash;
    std::int64_t wrongTries = 0;
    Instant waitUntil{};
};

std::optional<PinRow> rowOf(Connection& connection, const std::string& person)
{
    ReadSnapshot snapshot(connection);
    Statement row =
        snapshot.statement("SELECT hash, wrong_tries, wait_until FROM s_pin WHERE staff = :staff");
    row.bind(":staff", person);
    if (!row.step()) {
        return std::nullopt;
    }
    return PinRow{row.text(0), row.integer(1), Instant{row.integer(2)}};
}

/// Whether each digit differs from the one before by the same step of -1, 0 or 1.
bool isInARow(std::string_view pin)
{
    const int step = pin[1] - pin[0];
    if (step < -1 || step > 1) {
        return false;
    }
    for (std::size_t i = 1; i < pin.size(); ++i) {
        if (pin[i] - pin[i - 1] != step) {
            return false;
        }
    }
    return true;
}

} // namespace

std::optional<Refusal> whyNoPin(std::string_view pin)
{
    const bool digits = std::ranges::all_of(pin, [](char c) { return c >= '0' && c <= '9'; });
    if (!digits || pin.size() < leastDigits || pin.size() > mostDigits) {
        return Refusal{.why = RefusalWhy::pinTooShort};
    }
    if (isInARow(pin)) {
        return Refusal{.why = RefusalWhy::pinTooEasy};
    }
    return std::nullopt;
}

Duration waitAfter(std::int64_t wrongTries)
{
    if (wrongTries <= freeTries) {
        return {};
    }
    Duration wait = firstWait;
    for (std::int64_t i = freeTries + 1; i < wrongTries && wait < longestWait; ++i) {
        wait = wait + wait;
    }
    return std::min(wait, longestWait);
}

std::optional<Refusal> PinBook::check(const std::string& person, std::string_view pin)
{
    const auto row = rowOf(m_connection, person);
    if (!row) {
        return Refusal{.why = RefusalWhy::pinNotSet, .subject = person};
    }
    const Instant now = m_clock.now();
    if (row->wrongTries > freeTries && now < row->waitUntil) {
        Instant until = row->waitUntil;
        if (until > now + longestWait) {
            // The clock was set back: the longest wait from now on, not until the old time comes.
            until = now + longestWait;
            note(person, row->wrongTries, until);
        }
        return Refusal{.why = RefusalWhy::pinWait, .subject = person, .until = until};
    }
    if (isPinOf(pin, row->hash)) {
        if (row->wrongTries != 0) {
            note(person, 0, Instant{});
        }
        return std::nullopt;
    }
    const std::int64_t wrongTries = row->wrongTries + 1;
    const Duration wait = waitAfter(wrongTries);
    note(person, wrongTries, now + wait);
    Refusal refusal{.why = RefusalWhy::pinWrong, .subject = person};
    if (wait > Duration{}) {
        refusal.until = now + wait;
    }
    return refusal;
}

void PinBook::note(const std::string& person, std::int64_t wrongTries, Instant waitUntil)
{
    WriteTransaction transaction(m_connection);
    transaction
        .statement("UPDATE s_pin SET wrong_tries = :wrong, wait_until = :wait WHERE staff = :staff")
        .bind(":wrong", wrongTries)
        .bind(":wait", waitUntil.ms)
        .bind(":staff", person)
        .run();
    transaction.commit();
}

void PinBook::set(WriteTransaction& transaction, const std::string& person, const std::string& hash)
{
    transaction
        .statement("INSERT INTO s_pin (staff, hash, wrong_tries, wait_until) "
                   "VALUES (:staff, :hash, 0, 0) ON CONFLICT (staff) DO UPDATE SET "
                   "hash = excluded.hash, wrong_tries = 0, wait_until = 0")
        .bind(":staff", person)
        .bind(":hash", hash)
        .run();
}

} // namespace loadwarden
