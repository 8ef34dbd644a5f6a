#include "core/quantities/instant.h"

#include "core/quantities/date.h"
#include "core/quantities/digits.h"

namespace loadwarden {

namespace {

constexpr std::int64_t msPerDay = 86'400'000;

/// Takes text from the front, left to right; every step says whether what it wanted was there.
class Scanner {
public:
    explicit Scanner(std::string_view text) noexcept : rest_(text) {}

    bool take(char wanted) noexcept
    {
        if (rest_.empty() || rest_.front() != wanted) {
            return false;
        }
        rest_.remove_prefix(1);
        return true;
    }

    bool takeTwoDigits(int most, int& value) noexcept
    {
        value = digits::read(rest_, 0, 2);
        if (value < 0 || value > most) {
            return false;
        }
        rest_.remove_prefix(2);
        return true;
    }

    /// One to three digits after a decimal point, as thousandths.
    bool takeThousandths(int& value) noexcept
    {
        value = 0;
        std::size_t taken = 0;
        int weight = 100;
        while (taken < 3 && taken < rest_.size() && rest_[taken] >= '0' && rest_[taken] <= '9') {
            value += (rest_[taken] - '0') * weight;
            weight /= 10;
            ++taken;
        }
        rest_.remove_prefix(taken);
        return taken > 0;
    }

    bool atEnd() const noexcept { return rest_.empty(); }

private:
    std::string_view rest_;
};

/// "Z" (nullopt) or "+HH:MM" or "-HH:MM", in minutes east of Greenwich.
bool takeOffset(Scanner& scanner, std::optional<int>& minutes) noexcept
{
    if (scanner.take('Z')) {
        return true;
    }
    const bool west = scanner.take('-');
    if (!west && !scanner.take('+')) {
        return false;
    }
    int hour = 0;
    int minute = 0;
    if (!scanner.takeTwoDigits(14, hour) || !scanner.take(':')
        || !scanner.takeTwoDigits(59, minute)) {
        return false;
    }
    minutes = (west ? -1 : 1) * (hour * 60 + minute);
    return true;
}

/// "2031-03-04T07:14" of UTC; `ms` becomes the time of that day in milliseconds.
std::string dateAndMinute(Instant t, unsigned& ms)
{
    std::int64_t day = t.ms / msPerDay;
    std::int64_t rest = t.ms % msPerDay;
    if (rest < 0) {
        --day;
        rest += msPerDay;
    }
    ms = static_cast<unsigned>(rest);
    std::string out = formatDate(Date{static_cast<std::int32_t>(day)});
    out.reserve(29);
    out += 'T';
    digits::append(out, ms / 3'600'000, 2);
    out += ':';
    digits::append(out, ms / 60'000 % 60, 2);
    return out;
}

} // namespace

std::optional<WrittenInstant> parseWrittenInstant(std::string_view text) noexcept
{
    const std::optional<Date> date = parseDate(text.substr(0, 10));
    if (!date) {
        return std::nullopt;
    }
    Scanner scanner(text.substr(10));
    int hour = 0;
    int minute = 0;
    int second = 0;
    int thousandths = 0;
    std::optional<int> offset; // minutes
    if (!scanner.take('T') || !scanner.takeTwoDigits(23, hour) || !scanner.take(':')
        || !scanner.takeTwoDigits(59, minute)) {
        return std::nullopt;
    }
    if (scanner.take(':')) {
        if (!scanner.takeTwoDigits(59, second)) {
            return std::nullopt;
        }
        if (scanner.take('.') && !scanner.takeThousandths(thousandths)) {
            return std::nullopt;
        }
    }
    if (!takeOffset(scanner, offset) || !scanner.atEnd()) {
        return std::nullopt;
    }
    const Instant moment = Instant{date->days * msPerDay} + Duration::hours(hour)
                           + Duration::minutes(minute - offset.value_or(0))
                           + Duration::seconds(second) + Duration::milliseconds(thousandths);
    return WrittenInstant{moment,
                          offset ? std::optional(Duration::minutes(*offset)) : std::nullopt};
}

std::optional<Instant> parseInstant(std::string_view text) noexcept
{
    const std::optional<WrittenInstant> written = parseWrittenInstant(text);
    return written ? std::optional(written->moment) : std::nullopt;
}

std::string formatUtc(Instant t)
{
    unsigned ms = 0;
    std::string out = dateAndMinute(t, ms);
    out += ':';
    digits::append(out, ms / 1000 % 60, 2);
    out += '.';
    digits::append(out, ms % 1000, 3);
    out += 'Z';
    return out;
}

std::string formatAt(Instant t, Duration offset)
{
    const std::int64_t minutes = offset.ms / 60'000;
    unsigned ms = 0;
    std::string out = dateAndMinute(t + Duration::minutes(minutes), ms);
    if (ms % 60'000 != 0) {
        out += ':';
        digits::append(out, ms / 1000 % 60, 2);
    }
    if (ms % 1000 != 0) {
        out += '.';
        digits::append(out, ms % 1000, 3);
    }
    const auto size = static_cast<unsigned>(minutes < 0 ? -minutes : minutes);
    out += minutes < 0 ? '-' : '+';
    digits::append(out, size / 60, 2);
    out += ':';
    digits::append(out, size % 60, 2);
    return out;
}

} // namespace loadwarden
