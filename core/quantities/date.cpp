#include "core/quantities/date.h"

#include "core/quantities/digits.h"

#include <chrono>

namespace loadwarden {

std::optional<Date> parseDate(std::string_view text) noexcept
{
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
        return std::nullopt;
    }
    const int year = digits::read(text, 0, 4);
    const int month = digits::read(text, 5, 2);
    const int day = digits::read(text, 8, 2);
    if (year < 2000 || year > 2099 || month < 1 || day < 1) {
        return std::nullopt;
    }
    const std::chrono::year_month_day date{std::chrono::year{year},
                                           std::chrono::month{static_cast<unsigned>(month)},
                                           std::chrono::day{static_cast<unsigned>(day)}};
    if (!date.ok()) {
        return std::nullopt;
    }
    const auto days = std::chrono::sys_days{date}.time_since_epoch().count();
    return Date{static_cast<std::int32_t>(days)};
}

std::string formatDate(Date date)
{
    const std::chrono::year_month_day ymd{std::chrono::sys_days{std::chrono::days{date.days}}};
    std::string out;
    out.reserve(10);
    digits::append(out, static_cast<unsigned>(static_cast<int>(ymd.year())), 4);
    out += '-';
    digits::append(out, static_cast<unsigned>(ymd.month()), 2);
    out += '-';
    digits::append(out, static_cast<unsigned>(ymd.day()), 2);
    return out;
}

} // namespace loadwarden
