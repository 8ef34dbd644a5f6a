#include "core/journal/canonical_scan.h"

#include "core/journal/canonical_json.h"
#include "core/quantities/utf8.h"

#include <array>
#include <charconv>
#include <limits>

namespace loadwarden {
namespace {

/// The letters that stand for a character behind a backslash, in the order of
/// charactersOfLetters.
constexpr std::string_view letters = R"("\nrt)";
constexpr std::string_view charactersOfLetters = "\"\\\n\r\t";

/// Of each byte whether it stands for itself in a string.
constexpr auto plainBytes = [] {
    std::array<bool, 256> all{};
    for (std::size_t byte = 0x20; byte < 0x80; ++byte) {
        all[byte] = byte != '"' && byte != '\\';
    }
    return all;
}();

constexpr bool isPlain(char c)
{
    return plainBytes[static_cast<unsigned char>(c)];
}

/// The character behind a backslash and how many bytes it takes; 0 bytes: nothing that the
/// canonical form has.
std::pair<char, std::size_t> escaped(std::string_view text)
{
    if (text.empty()) {
        return {};
    }
    if (const std::size_t at = letters.find(text.front()); at != std::string_view::npos) {
        return {charactersOfLetters[at], 1};
    }
    constexpr std::string_view opening = "u00";
    constexpr std::size_t length = 5;
    if (!text.starts_with(opening) || text.size() < length) {
        return {};
    }
    unsigned code = 0;
    for (const char digit : text.substr(opening.size(), 2)) {
        const bool isSmall = digit >= 'a' && digit <= 'f';
        if (!isSmall && !(digit >= '0' && digit <= '9')) {
            return {};
        }
        code = code * 16 + static_cast<unsigned>(isSmall ? digit - 'a' + 10 : digit - '0');
    }
    const auto character = static_cast<char>(code);
    const bool hasLetter = charactersOfLetters.find(character) != std::string_view::npos;
    return code < 0x20 && !hasLetter ? std::pair(character, length)
                                     : std::pair('\0', std::size_t{});
}

} // namespace

bool CanonicalScan::takeInteger(std::int64_t& value)
{
    const bool isNegative = m_rest.starts_with('-');
    const std::string_view digits = m_rest.substr(isNegative ? 1 : 0);
    const auto [end, error] = std::from_chars(m_rest.data(), m_rest.data() + m_rest.size(), value);
    if (error != std::errc{} || value > greatestInteger || value < -greatestInteger) {
        return false;
    }
    const auto length = static_cast<std::size_t>(end - digits.data());
    m_rest.remove_prefix(static_cast<std::size_t>(end - m_rest.data()));
    // No zeros in front, and no minus before zero.
    return !digits.starts_with('0') || (length == 1 && !isNegative);
}

bool CanonicalScan::takeInteger(std::int32_t& value)
{
    std::int64_t wide = 0;
    if (!takeInteger(wide) || wide < std::numeric_limits<std::int32_t>::min()
        || wide > std::numeric_limits<std::int32_t>::max()) {
        return false;
    }
    value = static_cast<std::int32_t>(wide);
    return true;
}

bool CanonicalScan::takeString(std::string& value)
{
    value.clear();
    return skipString(&value);
}

bool CanonicalScan::takeString(std::string_view& value, std::string& decoded)
{
    if (m_rest.starts_with('"')) {
        const std::string_view inside = m_rest.substr(1);
        CanonicalScan ahead(inside);
        const std::size_t plain = ahead.plainLength();
        if (plain < inside.size() && inside[plain] == '"') {
            value = inside.substr(0, plain);
            m_rest = inside.substr(plain + 1);
            return true;
        }
    }
    decoded.clear();
    const bool is = skipString(&decoded);
    value = decoded;
    return is;
}

bool CanonicalScan::takeValue(std::string_view& text)
{
    const std::string_view before = m_rest;
    if (!skipValue(0)) {
        return false;
    }
    text = before.substr(0, before.size() - m_rest.size());
    return true;
}

/// How many bytes in front stand for themselves in a string.
std::size_t CanonicalScan::plainLength() const
{
    const char* const from = m_rest.data();
    const char* const end = from + m_rest.size();
    const char* at = from;
    while (at != end && isPlain(*at)) {
        ++at;
    }
    return static_cast<std::size_t>(at - from);
}

bool CanonicalScan::skipString(std::string* value)
{
    if (!take("\"")) {
        return false;
    }
    while (true) {
        const std::size_t plain = plainLength();
        if (value != nullptr) {
            value->append(m_rest, 0, plain);
        }
        m_rest.remove_prefix(plain);
        if (m_rest.empty()) {
            return false;
        }
        if (take("\"")) {
            return true;
        }
        if (take("\\")) {
            const auto [character, length] = escaped(m_rest);
            if (length == 0) {
                return false;
            }
            if (value != nullptr) {
                *value += character;
            }
            m_rest.remove_prefix(length);
            continue;
        }
        const std::size_t length =
            static_cast<unsigned char>(m_rest.front()) < 0x80 ? 0 : utf8::characterLength(m_rest);
        if (length == 0) {
            return false;
        }
        if (value != nullptr) {
            value->append(m_rest, 0, length);
        }
        m_rest.remove_prefix(length);
    }
}

bool CanonicalScan::skipValue(int depth)
{
    if (m_rest.empty() || depth > deepestValue) {
        return false;
    }
    switch (m_rest.front()) {
    case '{': return skipObject(depth);
    case '[': return skipArray(depth);
    case '"': return skipString(nullptr);
    case 't': return take("true");
    case 'f': return take("false");
    case 'n': return take("null");
    default: {
        std::int64_t number = 0;
        return takeInteger(number);
    }
    }
}

bool CanonicalScan::skipArray(int depth)
{
    m_rest.remove_prefix(1);
    if (take("]")) {
        return true;
    }
    do {
        if (!skipValue(depth + 1)) {
            return false;
        }
    } while (take(","));
    return take("]");
}

bool CanonicalScan::skipObject(int depth)
{
    m_rest.remove_prefix(1);
    if (take("}")) {
        return true;
    }
    std::string decoded;
    std::string decodedBefore;
    std::string_view before;
    std::string_view name;
    bool isFirst = true;
    do {
        if (!takeString(name, decoded) || (!isFirst && name <= before) || !take(":")
            || !skipValue(depth + 1)) {
            return false;
        }
        if (name.data() == decoded.data()) {
            decodedBefore.swap(decoded);
            name = decodedBefore;
        }
        before = name;
        isFirst = false;
    } while (take(","));
    return take("}");
}

} // namespace loadwarden
