#include "core/exchange/evidence/json_scanner.h"

#include <array>

namespace loadwarden::evidence_format {

namespace {

constexpr unsigned byteOf(char c) noexcept
{
    return static_cast<unsigned char>(c);
}

/// Characters of a text that stand for themselves: ASCII without controls, quotation mark,
/// backslash.
constexpr std::array<bool, 256> plain = [] {
    std::array<bool, 256> table{};
    for (unsigned c = 0x20; c < 0x80; ++c) {
        table[c] = c != '"' && c != '\\';
    }
    return table;
}();

constexpr bool isDigit(char c) noexcept
{
    return c >= '0' && c <= '9';
}

constexpr bool isContinuation(char c) noexcept
{
    return (byteOf(c) & 0xC0U) == 0x80U;
}

void appendUtf8(std::string& out, unsigned codePoint)
{
    const auto push = [&out](unsigned byte) { out += static_cast<char>(byte); };
    if (codePoint < 0x80) {
        push(codePoint);
    } else if (codePoint < 0x800) {
        push(0xC0U | codePoint >> 6U);
        push(0x80U | (codePoint & 0x3FU));
    } else if (codePoint < 0x10000) {
        push(0xE0U | codePoint >> 12U);
        push(0x80U | (codePoint >> 6U & 0x3FU));
        push(0x80U | (codePoint & 0x3FU));
    } else {
        push(0xF0U | codePoint >> 18U);
        push(0x80U | (codePoint >> 12U & 0x3FU));
        push(0x80U | (codePoint >> 6U & 0x3FU));
        push(0x80U | (codePoint & 0x3FU));
    }
}

} // namespace

std::size_t utf8Length(const char* at, const char* end) noexcept
{
    const unsigned first = byteOf(*at);
    std::size_t length = 0;
    unsigned secondLeast = 0x80;
    unsigned secondMost = 0xBF;
    if (first < 0x80) {
        return 1;
    }
    if (first >= 0xC2 && first <= 0xDF) {
        length = 2;
    } else if (first >= 0xE0 && first <= 0xEF) {
        length = 3;
        secondLeast = first == 0xE0 ? 0xA0 : 0x80; // not longer than needed
        secondMost = first == 0xED ? 0x9F : 0xBF;  // no surrogates
    } else if (first >= 0xF0 && first <= 0xF4) {
        length = 4;
        secondLeast = first == 0xF0 ? 0x90 : 0x80;
        secondMost = first == 0xF4 ? 0x8F : 0xBF; // nothing beyond U+10FFFF
    } else {
        return 0;
    }
    if (static_cast<std::size_t>(end - at) < length || byteOf(at[1]) < secondLeast
        || byteOf(at[1]) > secondMost) {
        return 0;
    }
    for (std::size_t i = 2; i < length; ++i) {
        if (!isContinuation(at[i])) {
            return 0;
        }
    }
    return length;
}

std::size_t characters(std::string_view utf8) noexcept
{
    std::size_t count = 0;
    for (const char c : utf8) {
        count += isContinuation(c) ? 0U : 1U;
    }
    return count;
}

JsonScanner::JsonScanner(std::string_view json) noexcept
    : m_begin(json.data()), m_at(json.data()), m_end(json.data() + json.size())
{
}

void JsonScanner::skipSpace() noexcept
{
    while (m_at != m_end && (*m_at == ' ' || *m_at == '\n' || *m_at == '\r' || *m_at == '\t')) {
        ++m_at;
    }
}

JsonKind JsonScanner::peek() noexcept
{
    skipSpace();
    if (m_at == m_end) {
        return JsonKind::end;
    }
    switch (*m_at) {
    case '{': return JsonKind::object;
    case '[': return JsonKind::list;
    case '"': return JsonKind::text;
    case 't':
    case 'f': return JsonKind::boolean;
    case 'n': return JsonKind::null;
    default: return *m_at == '-' || isDigit(*m_at) ? JsonKind::number : JsonKind::none;
    }
}

bool JsonScanner::take(char mark) noexcept
{
    skipSpace();
    if (m_at == m_end || *m_at != mark) {
        return false;
    }
    ++m_at;
    return true;
}

bool JsonScanner::demand(char mark)
{
    if (take(mark)) {
        return true;
    }
    return fail(m_at == m_end ? std::string("the text ends where \"") + mark + "\" is missing"
                              : std::string("\"") + mark + "\" is missing");
}

bool JsonScanner::text(std::string_view& value)
{
    if (!take('"')) {
        return fail("a text in quotation marks is missing");
    }
    const char* const begin = m_at;
    while (m_at != m_end) {
        if (plain[byteOf(*m_at)]) {
            ++m_at;
            continue;
        }
        if (*m_at == '"') {
            value = {begin, static_cast<std::size_t>(m_at - begin)};
            ++m_at;
            return true;
        }
        if (*m_at == '\\') {
            return decodeFrom(begin, value);
        }
        if (byteOf(*m_at) < 0x20) {
            return fail("a line break, tab or other control character stands in a text; "
                        "close the quotation marks before it or write it as \\n, \\t or \\u00XX");
        }
        const std::size_t length = utf8Length(m_at, m_end);
        if (length == 0) {
            return fail("the bytes are not UTF-8; save the file as UTF-8");
        }
        m_at += length;
    }
    return fail("the closing quotation mark of a text is missing");
}

/// Goes on where the first backslash stands.
bool JsonScanner::decodeFrom(const char* plainBegin, std::string_view& value)
{
    m_decoded.assign(plainBegin, m_at);
    while (m_at != m_end && *m_at != '"') {
        if (*m_at == '\\') {
            ++m_at;
            if (!decodeEscape()) {
                return false;
            }
            continue;
        }
        if (byteOf(*m_at) < 0x20) {
            return fail("a line break, tab or other control character stands in a text");
        }
        const std::size_t length = utf8Length(m_at, m_end);
        if (length == 0) {
            return fail("the bytes are not UTF-8; save the file as UTF-8");
        }
        m_decoded.append(m_at, length);
        m_at += length;
    }
    if (m_at == m_end) {
        return fail("the closing quotation mark of a text is missing");
    }
    ++m_at;
    value = m_decoded;
    return true;
}

/// Decodes what stands after a backslash.
bool JsonScanner::decodeEscape()
{
    constexpr std::string_view written = "\"\\/bfnrt";
    constexpr std::string_view meant = "\"\\/\b\f\n\r\t";
    if (m_at != m_end && *m_at != 'u') {
        const std::size_t which = written.find(*m_at);
        if (which == std::string_view::npos) {
            return fail("a backslash must be followed by one of \" \\ / b f n r t u; "
                        "write a backslash itself twice");
        }
        m_decoded += meant[which];
        ++m_at;
        return true;
    }
    unsigned unit = 0;
    if (!hexadecimal(unit)) {
        return false;
    }
    if (unit >= 0xD800 && unit <= 0xDBFF) {
        unsigned low = 0;
        if (m_end - m_at < 2 || m_at[0] != '\\' || m_at[1] != 'u') {
            return fail("half a surrogate pair stands alone");
        }
        ++m_at;
        if (!hexadecimal(low)) {
            return false;
        }
        if (low < 0xDC00 || low > 0xDFFF) {
            return fail("half a surrogate pair stands alone");
        }
        unit = 0x10000 + ((unit - 0xD800) << 10U) + (low - 0xDC00);
    } else if (unit >= 0xDC00 && unit <= 0xDFFF) {
        return fail("half a surrogate pair stands alone");
    }
    appendUtf8(m_decoded, unit);
    return true;
}

/// "u" and four hexadecimal digits.
bool JsonScanner::hexadecimal(unsigned& unit)
{
    if (m_end - m_at < 5) {
        m_at = m_end;
        return fail("the closing quotation mark of a text is missing");
    }
    ++m_at;
    unit = 0;
    for (int i = 0; i < 4; ++i, ++m_at) {
        const char c = *m_at;
        const unsigned lower = byteOf(c) | 0x20U;
        if (isDigit(c)) {
            unit = unit * 16 + (byteOf(c) - '0');
        } else if (lower >= 'a' && lower <= 'f') {
            unit = unit * 16 + (lower - 'a' + 10);
        } else {
            return fail("\\u must be followed by four hexadecimal digits");
        }
    }
    return true;
}

bool JsonScanner::number(std::string_view& written)
{
    skipSpace();
    const char* const begin = m_at;
    const auto digits = [this] {
        const char* const first = m_at;
        while (m_at != m_end && isDigit(*m_at)) {
            ++m_at;
        }
        return m_at != first;
    };
    if (m_at != m_end && *m_at == '-') {
        ++m_at;
    }
    const bool zeroFirst = m_at != m_end && *m_at == '0';
    if (!digits()) {
        return fail("a number must have a digit before anything else");
    }
    if (zeroFirst && m_at - begin > (*begin == '-' ? 2 : 1)) {
        return fail("a number must not begin with a zero that says nothing");
    }
    if (m_at != m_end && *m_at == '.') {
        ++m_at;
        if (!digits()) {
            return fail("a decimal point must be followed by a digit");
        }
    }
    if (m_at != m_end && (*m_at == 'e' || *m_at == 'E')) {
        ++m_at;
        if (m_at != m_end && (*m_at == '+' || *m_at == '-')) {
            ++m_at;
        }
        if (!digits()) {
            return fail("the exponent of a number is missing");
        }
    }
    written = {begin, static_cast<std::size_t>(m_at - begin)};
    return true;
}

bool JsonScanner::literal(std::string_view word)
{
    if (static_cast<std::size_t>(m_end - m_at) < word.size()
        || std::string_view(m_at, word.size()) != word) {
        return fail("true or false is misspelt; they are written in small letters");
    }
    m_at += word.size();
    return true;
}

bool JsonScanner::boolean(bool& value)
{
    skipSpace();
    value = m_at != m_end && *m_at == 't';
    return literal(value ? "true" : "false");
}

bool JsonScanner::atEnd() noexcept
{
    skipSpace();
    return m_at == m_end;
}

bool JsonScanner::fail(std::string problem)
{
    m_problem = std::move(problem);
    return false;
}

std::string JsonScanner::place() const
{
    std::size_t line = 1;
    const char* lineBegin = m_begin;
    for (const char* c = m_begin; c != m_at; ++c) {
        if (*c == '\n') {
            ++line;
            lineBegin = c + 1;
        }
    }
    const std::size_t column =
        characters({lineBegin, static_cast<std::size_t>(m_at - lineBegin)}) + 1;
    return "line " + std::to_string(line) + ", character " + std::to_string(column);
}

} // namespace loadwarden::evidence_format
