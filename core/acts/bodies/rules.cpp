#include "core/acts/bodies/rules.h"

#include "core/acts/nfc.h"
#include "core/cycle/cycle_words.h"
#include "core/cycle/unit_range.h"
#include "core/journal/hash.h"
#include "core/quantities/decimal.h"
#include "core/quantities/thousandths.h"
#include "core/quantities/unseen.h"
#include "core/quantities/utf8.h"

#include <algorithm>

namespace loadwarden::body_format {
namespace {

/// Thousandths of a number as people type it: no exponent, no more decimals than that.
std::optional<std::int64_t> typedThousandths(std::string_view text, int decimals)
{
    constexpr std::size_t longest = 24;
    if (text.size() > longest || text.find_first_of("eE") != std::string_view::npos) {
        return std::nullopt;
    }
    const std::size_t point = text.find('.');
    if (point != std::string_view::npos
        && text.size() - point - 1 > static_cast<std::size_t>(decimals)) {
        return std::nullopt;
    }
    return parseDecimal(text, 3);
}

Wanted wantedNumber(int decimals, std::int64_t least, std::int64_t most)
{
    return "a text with a number from " + thousandthsText(least) + " to " + thousandthsText(most)
           + " and at most " + std::to_string(decimals) + " decimals";
}

Wanted readTyped(const Node& from, int decimals, std::int64_t least, std::int64_t most,
                 std::string& typed, std::int64_t& thousandths)
{
    if (const std::string_view* const read = from.text()) {
        const auto number = typedThousandths(*read, decimals);
        if (number && *number >= least && *number <= most) {
            typed = *read;
            thousandths = *number;
            return {};
        }
    }
    return wantedNumber(decimals, least, most);
}

/// Reads an object of a unit and a number in the member of that name.
Wanted readInUnit(const Node& from, const char* member, std::string& typed, Quantity& quantity)
{
    const auto wanted = [member] {
        return std::string("an object of the two members \"unit\" and \"") + member + '"';
    };
    const Node* const unit = from.member("unit");
    const Node* const number = from.member(member);
    if (from.size() != 2 || unit == nullptr || number == nullptr) {
        return wanted();
    }
    Wanted wrong = oneOf<unitWords>.read(*unit, quantity.unit);
    if (!wrong.empty()) {
        return wanted() + " with a \"unit\" that is " + wrong;
    }
    const UnitRange range = rangeOf(quantity.unit);
    wrong = readTyped(*number, range.decimals, range.least * 1'000, range.most * 1'000, typed,
                      quantity.thousandths);
    return wrong.empty() ? wrong : wanted() + " with a number that is " + wrong;
}

} // namespace

void Text::write(std::string& out, const std::string& value) const
{
    appendJsonString(out, isNfc(value) ? value : toNfc(value));
}

bool Text::holds(std::string_view text) const
{
    const std::size_t length = utf8::characterCount(text);
    return length >= least && length <= most && !(lines ? findControl(text) : findUnseen(text))
           && isNfc(text);
}

Wanted Text::read(const Node& from, std::string& value) const
{
    if (from.text() != nullptr && holds(*from.text())) {
        value = *from.text();
        return {};
    }
    return "a text of " + std::to_string(least) + " to " + std::to_string(most)
           + (lines ? " characters" : " characters on one line, each to be seen,")
           + " in normalization form C";
}

void IdOf::write(std::string& out, const std::string& value) const
{
    appendJsonString(out, value);
}

Wanted IdOf::read(const Node& from, std::string& value) const
{
    const std::string_view* const read = from.text();
    if (read != nullptr && isId(*read) && read->starts_with(prefix)) {
        value = *read;
        return {};
    }
    return prefix.empty() ? "an id" : "an id that begins with \"" + std::string(prefix) + "-\"";
}

void Digest::write(std::string& out, const std::string& value) const
{
    appendJsonString(out, value);
}

Wanted Digest::read(const Node& from, std::string& value) const
{
    const std::string_view* const read = from.text();
    if (read != nullptr && parseHash(*read)) {
        value = *read;
        return {};
    }
    return "a hash of 64 small hexadecimal digits";
}

Wanted Flag::read(const Node& from, bool& value) const
{
    if (const auto flag = from.flag()) {
        value = *flag;
        return {};
    }
    return "true or false";
}

Wanted Whole::read(const Node& from, std::int64_t& value) const
{
    if (const auto number = from.integer();
        number && *number >= least && *number <= most && *number % step == 0) {
        value = *number;
        return {};
    }
    return "a whole number from " + std::to_string(least) + " to " + std::to_string(most)
           + (step == 1 ? "" : " that is a multiple of " + std::to_string(step));
}

void Time::write(std::string& out, const JournalTime& value) const
{
    out += '[';
    out += std::to_string(value.at.ms);
    out += ',';
    out += std::to_string(value.offsetMinutes);
    out += ']';
}

Wanted Time::read(const Node& from, JournalTime& value) const
{
    // Offsets of at most 14:59.
    constexpr Whole moments{firstMoment.ms, lastMoment.ms};
    constexpr Whole offsets{-899, 899};
    if (from.isArray() && from.size() == 2 && moments.read(*from.first(), value.at.ms).empty()
        && offsets.read(*from.first()->next(), value.offsetMinutes).empty()) {
        return {};
    }
    return "a time of the years 2000 to 2099 as [milliseconds, offset in minutes]";
}

void Day::write(std::string& out, Date value) const
{
    appendJsonString(out, formatDate(value));
}

Wanted Day::read(const Node& from, Date& value) const
{
    if (const std::string_view* const read = from.text()) {
        if (const auto date = parseDate(*read)) {
            value = *date;
            return {};
        }
    }
    return "a date as 2031-03-04";
}

Wanted Typed::read(const Node& from, TypedNumber& value) const
{
    return readTyped(from, decimals, least, most, value.typed, value.thousandths);
}

void TypedValue::write(std::string& out, const TypedQuantity& value) const
{
    out += R"({"typed":)";
    appendJsonString(out, value.typed);
    out += R"(,"unit":)";
    appendJsonString(out, wordOf(unitWords, value.value.unit));
    out += '}';
}

Wanted TypedValue::read(const Node& from, TypedQuantity& value) const
{
    return readInUnit(from, "typed", value.typed, value.value);
}

void Value::write(std::string& out, const Quantity& value) const
{
    out += R"({"unit":)";
    appendJsonString(out, wordOf(unitWords, value.unit));
    out += R"(,"value":)";
    appendJsonString(out, thousandthsText(value.thousandths));
    out += '}';
}

Wanted Value::read(const Node& from, Quantity& value) const
{
    std::string typed;
    return readInUnit(from, "value", typed, value);
}

bool isId(std::string_view text)
{
    const auto isSmall = [](char c) { return c >= 'a' && c <= 'z'; };
    const auto isPlain = [&isSmall](char c) {
        return isSmall(c) || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-'
               || c == '.' || c == '_';
    };
    return text.size() >= 4 && text.size() <= mostOfId && isSmall(text[0]) && isSmall(text[1])
           && text[2] == '-' && std::ranges::all_of(text, isPlain);
}

} // namespace loadwarden::body_format
