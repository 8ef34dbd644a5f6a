#include "core/cycle/trace/text_cursor.h"
#include "core/cycle/trace/text_values.h"

#include <array>
#include <chrono>
#include <cstddef>

namespace loadwarden {
namespace {

constexpr double secondsADay = 86'400;

std::optional<int> readMonth(TextCursor& cursor) noexcept
{
    if (cursor.peek() >= '0' && cursor.peek() <= '9') {
        return cursor.number(2);
    }
    constexpr std::array<std::string_view, 12> names{"jan", "feb", "mar", "apr", "may", "jun",
                                                     "jul", "aug", "sep", "oct", "nov", "dec"};
    std::array<char, 3> first{};
    const std::string_view name = cursor.letters(first);
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] == name) {
            return static_cast<int>(i) + 1;
        }
    }
    return std::nullopt;
}

std::optional<int> readYear(TextCursor& cursor) noexcept
{
    const std::optional<int> year = cursor.number(4);
    if (!year || (cursor.figures() != 4 && cursor.figures() != 2)) {
        return std::nullopt;
    }
    return cursor.figures() == 2 ? *year + 2000 : *year;
}

bool takeDateMark(TextCursor& cursor, char& mark) noexcept
{
    const char next = cursor.peek();
    if (mark == '\0' && (next == '-' || next == '/' || next == '.' || next == ' ')) {
        mark = next;
    }
    return mark != '\0' && cursor.take(mark);
}

std::optional<std::int64_t> takeDay(TextCursor& cursor, DateOrder order) noexcept
{
    std::optional<int> year;
    std::optional<int> month;
    std::optional<int> day;
    char mark = '\0';
    for (int part = 0; part < 3; ++part) {
        if (part != 0 && !takeDateMark(cursor, mark)) {
            return std::nullopt;
        }
        const bool isYear = part == (order == DateOrder::yearMonthDay ? 0 : 2);
        const bool isMonth = part == (order == DateOrder::monthDayYear ? 0 : 1);
        std::optional<int>& into = isYear ? year : isMonth ? month : day;
        into = isYear ? readYear(cursor) : isMonth ? readMonth(cursor) : cursor.number(2);
        if (!into) {
            return std::nullopt;
        }
    }
    const std::chrono::year_month_day date{std::chrono::year{*year},
                                           std::chrono::month{static_cast<unsigned>(*month)},
                                           std::chrono::day{static_cast<unsigned>(*day)}};
    if (!date.ok() || *year < 2000 || *year > 2099) {
        return std::nullopt;
    }
    return std::chrono::sys_days{date}.time_since_epoch().count();
}

/// The figures of an hour of twelve and its AM or PM made one of 24, where there is such a mark.
bool takeHalfOfDay(TextCursor& cursor, int& hours) noexcept
{
    cursor.skipBlanks();
    const char first = static_cast<char>(cursor.peek() | 0x20);
    if (first != 'a' && first != 'p') {
        return true;
    }
    (void)cursor.take(cursor.peek());
    (void)cursor.take('.');
    if (static_cast<char>(cursor.peek() | 0x20) != 'm' || hours < 1 || hours > 12) {
        return false;
    }
    (void)cursor.take(cursor.peek());
    (void)cursor.take('.');
    hours = hours % 12 + (first == 'p' ? 12 : 0);
    return true;
}

/// Two or three numbers with colons between them, the last with decimals; what comes first has most
/// figures, what follows is below 60.
struct Clock {
    int first = 0;
    int second = 0;
    std::optional<int> third;
    double decimals = 0;
};

std::optional<Clock> takeClock(TextCursor& cursor, std::size_t mostFigures) noexcept
{
    Clock clock;
    const std::optional<int> first = cursor.number(mostFigures);
    if (!first || !cursor.take(':')) {
        return std::nullopt;
    }
    clock.first = *first;
    const std::optional<int> second = cursor.number(2);
    if (!second || *second > 59) {
        return std::nullopt;
    }
    clock.second = *second;
    if (cursor.take(':')) {
        clock.third = cursor.number(2);
        if (!clock.third || *clock.third > 59) {
            return std::nullopt;
        }
    }
    const std::optional<double> decimals = cursor.decimals();
    if (!decimals) {
        return std::nullopt;
    }
    clock.decimals = *decimals;
    return clock;
}

/// h:m or h:m:s, with AM or PM or without, in seconds.
std::optional<double> takeHours(TextCursor& cursor, std::size_t mostFigures,
                                bool& hasSeconds) noexcept
{
    std::optional<Clock> clock = takeClock(cursor, mostFigures);
    if (!clock || (!clock->third && clock->decimals > 0) || !takeHalfOfDay(cursor, clock->first)) {
        return std::nullopt;
    }
    hasSeconds = clock->third.has_value();
    return clock->first * 3600.0 + clock->second * 60.0 + clock->third.value_or(0)
           + clock->decimals;
}

/// "Z", "+02:00", "-0600": seconds east of Greenwich; 0 where there is none.
std::optional<double> takeOffset(TextCursor& cursor) noexcept
{
    cursor.skipBlanks();
    if (cursor.take('Z') || cursor.isAtEnd()) {
        return 0.0;
    }
    const bool isWest = cursor.peek() == '-';
    if (!cursor.take('+') && !cursor.take('-')) {
        return std::nullopt;
    }
    const std::optional<int> first = cursor.number(4);
    if (!first) {
        return std::nullopt;
    }
    int hours = *first;
    int minutes = 0;
    if (cursor.figures() == 4) {
        hours = *first / 100;
        minutes = *first % 100;
    } else if (cursor.figures() == 2 && cursor.take(':')) {
        const std::optional<int> behind = cursor.number(2);
        if (!behind) {
            return std::nullopt;
        }
        minutes = *behind;
    }
    if (hours > 14 || minutes > 59) {
        return std::nullopt;
    }
    return (isWest ? -1 : 1) * (hours * 3600.0 + minutes * 60.0);
}

std::optional<WrittenTime> readDateTime(std::string_view text, std::string_view date,
                                        const TimeColumn& form) noexcept
{
    WrittenTime time;
    TextCursor cursor(text);
    std::optional<std::int64_t> day;
    if (form.dateColumn) {
        day = readDay(date, form.order);
    } else {
        day = takeDay(cursor, form.order);
        (void)cursor.take(',');
        if (!cursor.take('T') && cursor.peek() != ' ') {
            return std::nullopt;
        }
        cursor.skipBlanks();
    }
    bool hasSeconds = false;
    const std::optional<double> seconds = day ? takeHours(cursor, 2, hasSeconds) : std::nullopt;
    const std::optional<double> offset = seconds ? takeOffset(cursor) : std::nullopt;
    if (!offset || !cursor.isAtEnd() || *seconds >= secondsADay) {
        return std::nullopt;
    }
    time.day = *day;
    time.seconds = *seconds - *offset;
    return time;
}

} // namespace

std::optional<std::int64_t> readDay(std::string_view text, DateOrder order) noexcept
{
    TextCursor cursor(text);
    const std::optional<std::int64_t> day = takeDay(cursor, order);
    return cursor.isAtEnd() ? day : std::nullopt;
}

std::optional<WrittenTime> readTime(std::string_view text, std::string_view date,
                                    const TimeColumn& form, DecimalMark mark) noexcept
{
    switch (form.form) {
    case TimeForm::seconds:
    case TimeForm::minutes: {
        const std::optional<double> number = readNumber(text, mark);
        if (!number || *number < -1e12 || *number > 1e12) {
            return std::nullopt;
        }
        return WrittenTime{0, form.form == TimeForm::minutes ? *number * 60 : *number};
    }
    case TimeForm::minutesSeconds: {
        TextCursor cursor(text);
        const std::optional<Clock> clock = takeClock(cursor, 4);
        if (!clock || clock->third || !cursor.isAtEnd()) {
            return std::nullopt;
        }
        return WrittenTime{0, clock->first * 60.0 + clock->second + clock->decimals};
    }
    case TimeForm::hoursMinutes:
    case TimeForm::hoursMinutesSeconds: {
        TextCursor cursor(text);
        bool hasSeconds = false;
        const std::optional<double> seconds = takeHours(cursor, 3, hasSeconds);
        if (!seconds || hasSeconds != (form.form == TimeForm::hoursMinutesSeconds)
            || !cursor.isAtEnd()) {
            return std::nullopt;
        }
        return WrittenTime{0, *seconds};
    }
    case TimeForm::dateTime: return readDateTime(text, date, form);
    }
    return std::nullopt;
}

} // namespace loadwarden
