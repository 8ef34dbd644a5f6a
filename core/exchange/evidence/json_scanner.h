#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace loadwarden::evidence_format {

/// What a JSON value is, told by its first character.
enum class JsonKind : std::uint8_t { object, list, text, number, boolean, null, none, end };

/// Takes the tokens of a JSON text (RFC 8259) one after the other, strictly: no comments, no commas
/// too many, valid UTF-8, surrogates in pairs. Numbers are handed over as they were written, so
/// that nothing goes through floating point. Copies nothing but texts with escapes in them.
///
/// The caller asks for what it wants to stand there. A call that returns false leaves its reason in
/// problem(); nothing may be taken after it.
class JsonScanner {
public:
    explicit JsonScanner(std::string_view json) noexcept;

    /// What comes after the white space; `none`: no value begins like that.
    [[nodiscard]] JsonKind peek() noexcept;

    /// Takes a punctuation mark when it comes next; false (without a problem) when it does not.
    [[nodiscard]] bool take(char mark) noexcept;

    /// Takes a punctuation mark that must come next.
    [[nodiscard]] bool demand(char mark);

    /// The decoded text, valid until the next call of text().
    [[nodiscard]] bool text(std::string_view& value);

    /// The number as written; its grammar is checked.
    [[nodiscard]] bool number(std::string_view& written);

    [[nodiscard]] bool boolean(bool& value);

    /// Whether nothing but white space is left.
    [[nodiscard]] bool atEnd() noexcept;

    /// Notes what is wrong at the present place; always false.
    bool fail(std::string problem);

    [[nodiscard]] const std::string& problem() const noexcept { return m_problem; }

    /// Where the problem lies, for people: "line 3, character 14".
    [[nodiscard]] std::string place() const;

private:
    void skipSpace() noexcept;
    bool decodeFrom(const char* plainBegin, std::string_view& value);
    bool decodeEscape();
    bool hexadecimal(unsigned& unit);
    bool literal(std::string_view word);

    const char* m_begin;
    const char* m_at;
    const char* m_end;
    std::string m_decoded;
    std::string m_problem;
};

/// Length of the UTF-8 sequence that begins there (RFC 3629), 0 when it is none.
[[nodiscard]] std::size_t utf8Length(const char* at, const char* end) noexcept;

/// Number of characters (code points) of a valid UTF-8 text.
[[nodiscard]] std::size_t characters(std::string_view utf8) noexcept;

} // namespace loadwarden::evidence_format
