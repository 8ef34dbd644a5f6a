#include "core/store/lot_numbers.h"

#include <algorithm>

namespace loadwarden {
namespace {

constexpr std::int64_t margin = 100;
/// A backup older than this is not a working day's loss; no label of before is still in use.
constexpr std::int32_t mostDays = 3660;

bool canStandOnALabel(const std::string& name)
{
    return !name.empty() && name.size() <= 8 && std::ranges::all_of(name, [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
    });
}

std::string padded(std::int64_t number, std::size_t digits)
{
    std::string text = std::to_string(number);
    return text.size() < digits ? std::string(digits - text.size(), '0') + text : text;
}

/// The single number of a query that binds :day and perhaps :sterilizer; 0 when it has none.
std::int64_t numberOf(Statement& row)
{
    return row.step() && !row.isNull(0) ? row.integer(0) : 0;
}

} // namespace

std::string lotNumberText(const LotReservation& lot)
{
    const std::string year = formatDate(lot.day).substr(0, 4);
    const Date first = parseDate(year + "-01-01").value_or(lot.day);
    return lot.sterilizer + '-' + year + '-' + padded(lot.day.days - first.days + 1, 3) + '-'
           + padded(lot.sequence, 2);
}

LotReservation reserveLot(WriteTransaction& transaction, const std::string& sterilizer, Date day)
{
    if (!canStandOnALabel(sterilizer)) {
        throw engineError(StoreFault::misuse,
                          "\"" + sterilizer
                              + "\" is no short name of a sterilizer: one to eight "
                                "letters and digits");
    }
    Statement given = transaction.statement(
        "SELECT MAX(sequence) FROM j_lot WHERE sterilizer = :sterilizer AND day = :day");
    given.bind(":sterilizer", sterilizer).bind(":day", day.days);
    Statement floor = transaction.statement("SELECT floor FROM s_lot_floor WHERE day = :day");
    floor.bind(":day", day.days);
    const std::int64_t before = numberOf(given);
    const std::int64_t least = numberOf(floor);
    LotReservation lot{sterilizer, day, std::max(before, least) + 1};
    transaction
        .statement("INSERT INTO j_lot (sterilizer, day, sequence) "
                   "VALUES (:sterilizer, :day, :sequence)")
        .bind(":sterilizer", sterilizer)
        .bind(":day", day.days)
        .bind(":sequence", lot.sequence)
        .run();
    return lot;
}

void skipLots(WriteTransaction& transaction, Instant backup, Instant now, const Zone& zone)
{
    const Date today = zone.dateOf(now);
    const Date first = std::max(zone.dateOf(backup) - 1, today - mostDays);
    for (Date day = first; day <= today; day = day + 1) {
        const std::int64_t minutes = minuteOf(now) - minuteOf(zone.resolve(day, 0));
        transaction
            .statement("INSERT INTO s_lot_floor (day, floor) VALUES (:day, :floor) "
                       "ON CONFLICT (day) DO UPDATE SET floor = excluded.floor")
            .bind(":day", day.days)
            .bind(":floor", minutes + margin)
            .run();
    }
}

} // namespace loadwarden
