#pragma once

#include "core/cycle/trace/trace_mapping.h"
#include "core/quantities/text_place.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// One field of a line of delimited text.
struct TextField {
    std::string_view text;         ///< without its quotation marks and the blanks around it
    std::size_t at = 0;            ///< where it begins, in bytes of the file
    bool hasDoubledQuotes = false; ///< quotation marks within stand twice, as in the file
};

/// Cuts delimited text into lines and fields, of any bytes: a line ends with LF, CRLF, CR or the
/// file; a field in quotation marks may hold separators, doubled quotation marks (RFC 4180) and
/// line ends. A quotation mark without a second one within 4 KiB is taken as it stands, and said by
/// openQuote(). Allocates nothing after its making but for the longest line.
class LineCutter {
public:
    LineCutter(std::string_view bytes, FieldSeparator separator, std::size_t begin = 0,
               std::int64_t line = 1);

    /// Goes to the next line; false: there is none.
    bool next();

    /// At most mostTraceColumns of them.
    [[nodiscard]] std::span<const TextField> fields() const noexcept { return m_fields; }
    /// All of them.
    [[nodiscard]] std::size_t fieldCount() const noexcept { return m_fieldCount; }
    /// Those up to the last that is not empty.
    [[nodiscard]] std::size_t filledCount() const noexcept { return m_filledCount; }
    [[nodiscard]] bool isBlank() const noexcept { return m_filledCount == 0; }

    [[nodiscard]] std::int64_t line() const noexcept { return m_line; }  ///< from 1
    [[nodiscard]] std::size_t begin() const noexcept { return m_begin; } ///< in bytes of the file
    [[nodiscard]] std::size_t end() const noexcept { return m_end; }     ///< behind its last byte
    [[nodiscard]] bool hasLineEnd() const noexcept { return m_end < m_bytes.size(); }
    [[nodiscard]] std::optional<std::size_t> openQuote() const noexcept { return m_openQuote; }

    /// The place of a byte of this line.
    [[nodiscard]] TextPlace placeOf(std::size_t at, TextEncoding encoding) const noexcept;

private:
    void cutField();
    bool cutQuoted(std::size_t quote);
    void keep(TextField field);

    std::string_view m_bytes;
    char m_separator;
    std::size_t m_at;
    std::int64_t m_nextLine;
    std::int64_t m_line = 0;
    std::size_t m_begin = 0;
    std::size_t m_end = 0;
    std::size_t m_fieldCount = 0;
    std::size_t m_filledCount = 0;
    std::optional<std::size_t> m_openQuote;
    std::vector<TextField> m_fields;
};

/// How many bytes of a mark of UTF-8 a file begins with: 3 or 0.
[[nodiscard]] std::size_t byteOrderMarkOf(std::string_view bytes) noexcept;

/// A field as UTF-8 in Unicode's replacement of what is no character, with single quotation marks,
/// cut to that many bytes at most, "…" behind it.
[[nodiscard]] std::string textOf(const TextField& field, TextEncoding encoding,
                                 std::size_t mostBytes = 1000);

} // namespace loadwarden
