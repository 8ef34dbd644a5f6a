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

/// The text of a JSON string; nullptr for anything else.
const std::string* textOfJson(const json& from)
{
    return from.is_string() ? from.get_ptr<const std::string*>() : nullptr;
}

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

Wanted readTyped(const json& from, int decimals, std::int64_t least, std::int64_t most,
                 std::string& typed, std::int64_t& thousandths)
{
    if (const std::string* const read = textOfJson(from)) {
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
Wanted readInUnit(const json& from, const char* member, std::string& typed, Quantity& quantity)
{
    const Wanted wanted =
        std::string("an object of the two members \"unit\" and \"") + member + '"';
    if (!from.is_object() || from.size() != 2 || !from.contains("unit") || !from.contains(member)) {
        return wanted;
    }
    Wanted wrong = oneOf<unitWords>.read(from.at("unit"), quantity.unit);
    if (!wrong.empty()) {
        return wanted + " with a \"unit\" that is " + wrong;
    }
    const UnitRange range = rangeOf(quantity.unit);
    wrong = readTyped(from.at(member), range.decimals, range.least * 1'000, range.most * 1'000,
                      typed, quantity.thousandths);
    return wrong.empty() ? wrong : wanted + " with a number that is " + wrong;
}

} // namespace

json Text::write(const std::string& value) const
{
    return toNfc(value);
}

Wanted Text::read(const json& from, std::string& value) const
{
    if (const std::string* const read = textOfJson(from)) {
        const std::size_t length = utf8::characterCount(*read);
        const std::optional<Unseen> strange = lines ? findControl(*read) : findUnseen(*read);
        if (length >= least && length <= most && !strange && isNfc(*read)) {
            value = *read;
            return {};
        }
    }
    return "a text of " + std::to_string(least) + " to " + std::to_string(most)
           + (lines ? " characters" : " characters on one line, each to be seen,")
           + " in normalization form C";
}

json IdOf::write(const std::string& value) const
{
    return value;
}

Wanted IdOf::read(const json& from, std::string& value) const
{
    const std::string* const read = textOfJson(from);
    if (read != nullptr && isId(*read) && read->starts_with(prefix)) {
        value = *read;
        return {};
    }
    return prefix.empty() ? "an id" : "an id that begins with \"" + std::string(prefix) + "-\"";
}

json Digest::write(const std::string& value) const
{
    return value;
}

Wanted Digest::read(const json& from, std::string& value) const
{
    const std::string* const read = textOfJson(from);
    if (read != nullptr && parseHash(*read)) {
        value = *read;
        return {};
    }
    return "a hash of 64 small hexadecimal digits";
}

Wanted Flag::read(const json& from, bool& value) const
{
    if (from.is_boolean()) {
        value = from.get<bool>();
        return {};
    }
    return "true or false";
}

Wanted Whole::read(const json& from, std::int64_t& value) const
{
    if (from.is_number_integer()) {
        const auto number = from.get<std::int64_t>();
        const bool tooGreat = from.is_number_unsigned() && number < 0;
        if (!tooGreat && number >= least && number <= most && number % step == 0) {
            value = number;
            return {};
        }
    }
    return "a whole number from " + std::to_string(least) + " to " + std::to_string(most)
           + (step == 1 ? "" : " that is a multiple of " + std::to_string(step));
}

json Time::write(const JournalTime& value) const
{
    return json::array({value.at.ms, value.offsetMinutes});
}

Wanted Time::read(const json& from, JournalTime& value) const
{
    // Offsets of at most 14:59.
    constexpr Whole moments{firstMoment.ms, lastMoment.ms};
    constexpr Whole offsets{-899, 899};
    if (from.is_array() && from.size() == 2 && moments.read(from[0], value.at.ms).empty()
        && offsets.read(from[1], value.offsetMinutes).empty()) {
        return {};
    }
    return "a time of the years 2000 to 2099 as [milliseconds, offset in minutes]";
}

json Day::write(Date value) const
{
    return formatDate(value);
}

Wanted Day::read(const json& from, Date& value) const
{
    if (const std::string* const read = textOfJson(from)) {
        if (const auto date = parseDate(*read)) {
            value = *date;
            return {};
        }
    }
    return "a date as 2031-03-04";
}

Wanted Typed::read(const json& from, TypedNumber& value) const
{
    return readTyped(from, decimals, least, most, value.typed, value.thousandths);
}

json TypedValue::write(const TypedQuantity& value) const
{
    return {{"typed", value.typed}, {"unit", std::string(wordOf(unitWords, value.value.unit))}};
}

Wanted TypedValue::read(const json& from, TypedQuantity& value) const
{
    return readInUnit(from, "typed", value.typed, value.value);
}

json Value::write(const Quantity& value) const
{
    return {{"unit", std::string(wordOf(unitWords, value.unit))},
            {"value", thousandthsText(value.thousandths)}};
}

Wanted Value::read(const json& from, Quantity& value) const
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
