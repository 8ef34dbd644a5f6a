#include "core/cycle/trace/text_lines.h"

#include "core/quantities/utf8.h"

#include <algorithm>

namespace loadwarden {
namespace {

constexpr std::size_t mostQuotedBytes = 4096;

constexpr bool isLineEnd(char c) noexcept
{
    return c == '\n' || c == '\r';
}

constexpr bool isBlankBeside(char c, char separator) noexcept
{
    return c == ' ' || (c == '\t' && separator != '\t');
}

} // namespace

LineCutter::LineCutter(std::string_view bytes, FieldSeparator separator, std::size_t begin,
                       std::int64_t line)
    : m_bytes(bytes), m_separator(charOf(separator)), m_at(begin), m_nextLine(line)
{
    constexpr std::size_t usual = 32;
    m_fields.reserve(usual);
}

bool LineCutter::next()
{
    if (m_at >= m_bytes.size()) {
        return false;
    }
    m_line = m_nextLine;
    m_begin = m_at;
    m_fields.clear();
    m_fieldCount = 0;
    m_filledCount = 0;
    m_openQuote.reset();
    cutField();
    while (m_at < m_bytes.size() && m_bytes[m_at] == m_separator) {
        ++m_at;
        cutField();
    }
    m_end = m_at;
    if (m_at < m_bytes.size()) {
        const bool isPair = m_bytes.substr(m_at, 2) == "\r\n";
        m_at += isPair ? 2 : 1;
        ++m_nextLine;
    }
    return true;
}

void LineCutter::cutField()
{
    std::size_t begin = m_at;
    const std::size_t size = m_bytes.size();
    while (begin < size && isBlankBeside(m_bytes[begin], m_separator)) {
        ++begin;
    }
    if (begin < size && m_bytes[begin] == '"' && cutQuoted(begin)) {
        return;
    }
    std::size_t end = begin;
    while (end < size && m_bytes[end] != m_separator && !isLineEnd(m_bytes[end])) {
        ++end;
    }
    m_at = end;
    while (end > begin && isBlankBeside(m_bytes[end - 1], m_separator)) {
        --end;
    }
    keep({m_bytes.substr(begin, end - begin), begin});
}

bool LineCutter::cutQuoted(std::size_t quote)
{
    const std::size_t most = std::min(m_bytes.size(), quote + 1 + mostQuotedBytes);
    bool hasDoubled = false;
    std::int64_t breaks = 0;
    std::size_t close = quote + 1;
    for (; close < most; ++close) {
        const char c = m_bytes[close];
        if (c == '"') {
            if (close + 1 < m_bytes.size() && m_bytes[close + 1] == '"') {
                hasDoubled = true;
                ++close;
                continue;
            }
            break;
        }
        if (c == '\n' || (c == '\r' && m_bytes.substr(close + 1, 1) != "\n")) {
            ++breaks;
        }
    }
    if (close >= most) {
        if (!m_openQuote) {
            m_openQuote = quote;
        }
        return false;
    }
    std::size_t behind = close + 1;
    while (behind < m_bytes.size() && isBlankBeside(m_bytes[behind], m_separator)) {
        ++behind;
    }
    if (behind < m_bytes.size() && m_bytes[behind] != m_separator && !isLineEnd(m_bytes[behind])) {
        return false; // text behind the second mark: no quoted field
    }
    m_at = behind;
    m_nextLine += breaks;
    keep({m_bytes.substr(quote + 1, close - quote - 1), quote, hasDoubled});
    return true;
}

void LineCutter::keep(TextField field)
{
    ++m_fieldCount;
    if (!field.text.empty()) {
        m_filledCount = m_fieldCount;
    }
    if (m_fields.size() < mostTraceColumns) {
        m_fields.push_back(field);
    }
}

TextPlace LineCutter::placeOf(std::size_t at, TextEncoding encoding) const noexcept
{
    TextPlace place{m_line, 1};
    for (std::size_t i = m_begin; i < at && i < m_bytes.size(); ++i) {
        const char c = m_bytes[i];
        if (c == '\n' || (c == '\r' && m_bytes.substr(i + 1, 1) != "\n")) {
            ++place.line;
            place.column = 1;
        } else if (encoding == TextEncoding::latin1
                   || !utf8::isContinuation(static_cast<unsigned char>(c))) {
            ++place.column;
        }
    }
    return place;
}

std::size_t byteOrderMarkOf(std::string_view bytes) noexcept
{
    return bytes.starts_with("\xEF\xBB\xBF") ? 3 : 0;
}

std::string textOf(const TextField& field, TextEncoding encoding, std::size_t mostBytes)
{
    std::string text;
    for (std::size_t i = 0; i < field.text.size();) {
        if (text.size() >= mostBytes) {
            return text + "\xE2\x80\xA6"; // an ellipsis
        }
        const auto byte = static_cast<unsigned char>(field.text[i]);
        if (byte < 0x80) {
            text += field.text[i];
            i += field.hasDoubledQuotes && byte == '"' ? 2 : 1;
        } else if (encoding == TextEncoding::latin1) {
            text += static_cast<char>(0xC0U | byte >> 6U);
            text += static_cast<char>(0x80U | (byte & 0x3FU));
            ++i;
        } else if (const std::size_t length = utf8::characterLength(field.text.substr(i));
                   length != 0) {
            text += field.text.substr(i, length);
            i += length;
        } else {
            text += "\xEF\xBF\xBD"; // U+FFFD
            ++i;
        }
    }
    return text;
}

} // namespace loadwarden
