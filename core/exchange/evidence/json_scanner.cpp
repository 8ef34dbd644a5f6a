#include "core/exchange/evidence/json_scanner.h"

#include "core/quantities/utf8.h"

#include <algorithm>
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

/// The first character from there on that does not stand for itself, or the end.
const char* skipPlain(const char* at, const char* end) noexcept
{
    while (at != end && plain[byteOf(*at)]) {
        ++at;
    }
    return at;
}

/// Bytes of the character that begins there; 0: it is none, or a control character.
std::size_t lengthOf(const char* at, const char* end) noexcept
{
    return byteOf(*at) < 0x20 ? 0 : utf8::characterLength({at, static_cast<std::size_t>(end - at)});
}

} // namespace

JsonScanner::JsonScanner(std::string_view json) noexcept
    : m_begin(json.data()), m_at(json.data()), m_end(json.data() + json.size()), m_mark(m_at)
{
}

void JsonScanner::skipSpace() noexcept
{
    while (m_at != m_end && isSpace(*m_at)) {
        ++m_at;
    }
}

JsonKind JsonScanner::peek() noexcept
{
    skipSpace();
    m_mark = m_at;
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

bool JsonScanner::text(std::string_view& value)
{
    if (!take('"')) {
        return fail("a text in quotation marks is missing", m_at);
    }
    const char* const begin = m_at;
    m_mark = begin - 1;
    m_at = skipPlain(m_at, m_end);
    if (next() != '"') {
        return textBeyondPlain(begin, value);
    }
    value = {begin, static_cast<std::size_t>(m_at - begin)};
    ++m_at;
    return true;
}

/// Goes on where the first character stands that is not plain.
bool JsonScanner::textBeyondPlain(const char* begin, std::string_view& value)
{
    while (true) {
        m_at = skipPlain(m_at, m_end);
        if (m_at == m_end) {
            return failInText(begin);
        }
        if (*m_at == '"') {
            value = {begin, static_cast<std::size_t>(m_at - begin)};
            ++m_at;
            return true;
        }
        if (*m_at == '\\') {
            return decodeFrom(begin, value);
        }
        const std::size_t length = lengthOf(m_at, m_end);
        if (length == 0) {
            return failInText(begin);
        }
        m_at += length;
    }
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
        const std::size_t length = lengthOf(m_at, m_end);
        if (length == 0) {
            return failInText(plainBegin);
        }
        m_decoded.append(m_at, length);
        m_at += length;
    }
    if (m_at == m_end) {
        return failInText(plainBegin);
    }
    ++m_at;
    value = m_decoded;
    return true;
}

/// Says why a text cannot go on at the present place.
bool JsonScanner::failInText(const char* textBegin)
{
    if (m_at == m_end || *m_at == '\n' || *m_at == '\r') {
        return fail("the text that begins here is not closed on its line; a quotation mark is "
                    "missing (a line break within a text is written \\n)",
                    textBegin - 1);
    }
    if (byteOf(*m_at) < 0x20) {
        return fail("a tab or another control character stands in a text; write a tab as \\t",
                    m_at);
    }
    return fail("the bytes are not UTF-8; save the file as UTF-8", m_at);
}

/// Decodes what stands after a backslash.
bool JsonScanner::decodeEscape()
{
    constexpr std::string_view written = "\"\\/bfnrt";
    constexpr std::string_view meant = "\"\\/\b\f\n\r\t";
    const char* const backslash = m_at - 1;
    if (m_at == m_end || *m_at != 'u') {
        const std::size_t which = m_at == m_end ? std::string_view::npos : written.find(*m_at);
        if (which == std::string_view::npos) {
            return fail("a backslash must be followed by one of \" \\ / b f n r t u; "
                        "write a backslash itself twice",
                        backslash);
        }
        m_decoded += meant[which];
        ++m_at;
        return true;
    }
    constexpr const char* half = "half a surrogate pair stands alone";
    unsigned unit = 0;
    if (!hexadecimal(unit)) {
        return false;
    }
    if (unit >= 0xD800 && unit <= 0xDBFF) {
        unsigned low = 0;
        if (m_end - m_at < 2 || m_at[0] != '\\' || m_at[1] != 'u') {
            return fail(half, backslash);
        }
        ++m_at;
        if (!hexadecimal(low)) {
            return false;
        }
        if (low < 0xDC00 || low > 0xDFFF) {
            return fail(half, backslash);
        }
        unit = 0x10000 + ((unit - 0xD800) << 10U) + (low - 0xDC00);
    } else if (unit >= 0xDC00 && unit <= 0xDFFF) {
        return fail(half, backslash);
    }
    appendUtf8(m_decoded, unit);
    return true;
}

/// "u" and four hexadecimal digits.
bool JsonScanner::hexadecimal(unsigned& unit)
{
    constexpr const char* wrong = "\\u must be followed by four hexadecimal digits";
    const char* const backslash = m_at - 1;
    if (m_end - m_at < 5) {
        return fail(wrong, backslash);
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
            return fail(wrong, backslash);
        }
    }
    return true;
}

bool JsonScanner::number(std::string_view& written)
{
    skipSpace();
    const char* const begin = m_at;
    m_mark = begin;
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
        return fail("a number must have a digit before anything else", begin);
    }
    if (zeroFirst && m_at - begin > (*begin == '-' ? 2 : 1)) {
        return fail("a number must not begin with a zero that says nothing", begin);
    }
    if (m_at != m_end && *m_at == '.') {
        ++m_at;
        if (!digits()) {
            return fail("a decimal point must be followed by a digit", begin);
        }
    }
    if (m_at != m_end && (*m_at == 'e' || *m_at == 'E')) {
        ++m_at;
        if (m_at != m_end && (*m_at == '+' || *m_at == '-')) {
            ++m_at;
        }
        if (!digits()) {
            return fail("the exponent of a number is missing", begin);
        }
    }
    written = {begin, static_cast<std::size_t>(m_at - begin)};
    return true;
}

std::string JsonScanner::takeDecimalComma()
{
    const char* const comma = m_at++;
    while (m_at != m_end && isDigit(*m_at)) {
        ++m_at;
    }
    std::string meant(m_mark, comma);
    meant += '.';
    meant.append(comma + 1, m_at);
    return meant;
}

bool JsonScanner::literal(std::string_view word)
{
    if (static_cast<std::size_t>(m_end - m_at) < word.size()
        || std::string_view(m_at, word.size()) != word) {
        return fail("here should stand " + std::string(word)
                        + " in small letters; a text stands in quotation marks",
                    m_at);
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

bool JsonScanner::skipName()
{
    std::string_view name;
    if (!text(name)) {
        return false;
    }
    return take(':') || fail("a colon is missing after the name of a field", m_at);
}

bool JsonScanner::skipValue()
{
    std::string open; // the closing brackets that are to come, the innermost last
    do {
        std::string_view ignored;
        bool flag = false;
        const JsonKind kind = peek();
        if (kind == JsonKind::object || kind == JsonKind::list) {
            const char close = kind == JsonKind::object ? '}' : ']';
            ++m_at;
            if (!take(close)) {
                open += close;
                if (open.size() > mostNesting) {
                    return fail("more than " + std::to_string(mostNesting)
                                    + " objects and lists stand one in the other",
                                m_mark);
                }
                if (close == '}' && !skipName()) {
                    return false;
                }
                continue;
            }
        } else if (!(kind == JsonKind::text      ? text(ignored)
                     : kind == JsonKind::number  ? number(ignored)
                     : kind == JsonKind::boolean ? boolean(flag)
                     : kind == JsonKind::null    ? literal("null")
                                                 : fail("a value is missing here", m_at))) {
            return false;
        }
        while (!open.empty() && take(open.back())) {
            open.pop_back();
        }
        if (!open.empty()) {
            if (!take(',')) {
                return fail("a comma is missing, or a closing bracket", m_begin + endOfLast());
            }
            if (open.back() == '}' && !skipName()) {
                return false;
            }
        }
    } while (!open.empty());
    return true;
}

std::size_t JsonScanner::endOfLast() const noexcept
{
    const char* at = m_at;
    while (at != m_begin && isSpace(at[-1])) {
        --at;
    }
    return placeOf(at);
}

bool JsonScanner::fail(std::string_view problem, const char* at)
{
    m_problem = problem;
    m_problemAt = placeOf(at);
    return false;
}

std::vector<TextPlace> placesOf(std::string_view text, std::span<const std::size_t> bytes,
                                TextPlace begin)
{
    std::vector<TextPlace> places;
    TextPlace place = begin;
    std::size_t at = 0;
    for (const std::size_t byte : bytes) {
        for (; at < std::min(byte, text.size()); ++at) {
            if (text[at] == '\n') {
                ++place.line;
                place.column = 1;
            } else if (!utf8::isContinuation(static_cast<unsigned char>(text[at]))) {
                ++place.column;
            }
        }
        places.push_back(place);
    }
    return places;
}

} // namespace loadwarden::evidence_format
