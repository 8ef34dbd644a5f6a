#pragma once

#include "core/exchange/read_error.h"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden::evidence_format {

/// Objects and lists that may stand one in the other.
inline constexpr std::size_t mostNesting = 64;

/// White space between the tokens of a JSON text.
[[nodiscard]] constexpr bool isSpace(char c) noexcept
{
    return c == ' ' || c == '\n' || c == '\r' || c == '\t';
}

/// What a JSON value is, told by its first character.
enum class JsonKind : std::uint8_t { object, list, text, number, boolean, null, none, end };

/// Takes the tokens of a JSON text (RFC 8259) one after the other, strictly: no comments, no commas
/// too many, valid UTF-8, surrogates in pairs. Numbers are handed over as they were written, so
/// that nothing goes through floating point. Copies nothing but texts with escapes in them.
///
/// The caller asks for what it wants to stand there. A call that returns false leaves its reason in
/// problem() and its place in problemAt(); nothing may be taken after it. Places are bytes from the
/// text's begin.
class JsonScanner {
public:
    explicit JsonScanner(std::string_view json) noexcept;

    /// What comes after the white space; `none`: no value begins like that.
    [[nodiscard]] JsonKind peek() noexcept;

    /// Takes a punctuation mark when it comes next; false (without a problem) when it does not.
    [[nodiscard]] bool take(char mark) noexcept
    {
        const bool found = isNext(mark);
        m_at += found ? 1 : 0;
        return found;
    }

    /// Whether a punctuation mark or a quotation mark comes next.
    [[nodiscard]] bool isNext(char mark) noexcept
    {
        if (next() == mark) {
            return true; // most files have no white space
        }
        skipSpace();
        return next() == mark;
    }

    /// The decoded text, valid until the next call of text().
    [[nodiscard]] bool text(std::string_view& value);

    /// The number as written; its grammar is checked.
    [[nodiscard]] bool number(std::string_view& written);

    [[nodiscard]] bool boolean(bool& value);

    /// Takes the value that comes next, whatever it is.
    [[nodiscard]] bool skipValue();

    /// Whether a number has just been taken that goes on with a comma and digits: "270,3".
    [[nodiscard]] bool atDecimalComma() const noexcept
    {
        return m_end - m_at > 1 && *m_at == ',' && m_at[1] >= '0' && m_at[1] <= '9'
               && m_at[-1] >= '0' && m_at[-1] <= '9';
    }
    /// Passes over that comma and its digits, and answers the number as it was meant.
    [[nodiscard]] std::string takeDecimalComma();

    /// The next character; 0 at the end.
    [[nodiscard]] char next() const noexcept { return m_at == m_end ? '\0' : *m_at; }

    /// Where the value, text or number begins that was last taken or looked at.
    [[nodiscard]] std::size_t mark() const noexcept { return placeOf(m_mark); }

    /// Where what was taken before ends: where something is missing that should have followed it.
    [[nodiscard]] std::size_t endOfLast() const noexcept;

    [[nodiscard]] const std::string& problem() const noexcept { return m_problem; }
    [[nodiscard]] std::size_t problemAt() const noexcept { return m_problemAt; }

private:
    [[nodiscard]] std::size_t placeOf(const char* at) const noexcept
    {
        return static_cast<std::size_t>(at - m_begin);
    }
    /// Notes what is wrong; always false.
    bool fail(std::string_view problem, const char* at);
    bool failInText(const char* textBegin);
    bool skipName();
    void skipSpace() noexcept;
    bool textBeyondPlain(const char* begin, std::string_view& value);
    bool decodeFrom(const char* plainBegin, std::string_view& value);
    bool decodeEscape();
    bool hexadecimal(unsigned& unit);
    bool literal(std::string_view word);

    const char* m_begin;
    const char* m_at;
    const char* m_end;
    const char* m_mark;
    std::string m_decoded;
    std::string m_problem;
    std::size_t m_problemAt = 0;
};

/// The places of some bytes of a text, which are in order; the text begins at `begin`.
[[nodiscard]] std::vector<TextPlace> placesOf(std::string_view text,
                                              std::span<const std::size_t> bytes, TextPlace begin);

} // namespace loadwarden::evidence_format
