#pragma once

#include "core/exchange/read_error.h"

#include <cstddef>
#include <cstdint>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden::evidence_format {

/// Bytes that the text of one record may have at most.
inline constexpr std::size_t mostRecordBytes = std::size_t{16} << 20U;

/// The text of one record, or why it cannot be had.
struct RecordText {
    std::int64_t record = 0; ///< counted from 1
    TextPlace place;     ///< of its begin, or of the problem; where another record stands before
                         ///< it on the line, the column is in bytes
    std::string text;    ///< from "{" on; whether it is JSON is not known
    std::string problem; ///< empty: the text is there
};

/// Cuts a stream into the texts of its records: objects one after the other, white space between
/// them. Looks only at brackets, quotation marks and line breaks. Holds one record at a time, none
/// beyond mostRecordBytes.
///
/// A bracket or quotation mark that is missing spoils its own record only: a text ends with its
/// line, and a line that begins with { begins a record where no value can stand, or where that { is
/// followed by "evidenceVersion". The text is then what stands before it. What is no record is
/// passed over up to the next line that begins with {.
///
/// Reads no more than the stream has at hand, so that records can be answered while they come in.
/// For std::cin that is one character unless std::ios::sync_with_stdio(false) was called.
class RecordSplitter {
public:
    explicit RecordSplitter(std::istream& in);

    /// nullopt at the end.
    [[nodiscard]] std::optional<RecordText> next();

private:
    bool fill();
    std::string_view lookAhead(std::size_t bytes);
    bool toFirstRecord(RecordText& record);
    bool toRecord(RecordText& record);
    bool skipSpace();
    void passOver(RecordText& record);
    void takeRecord(RecordText& record);
    bool beginsRecord(std::string_view before);
    const char* scan(const char* at, const char* end);
    void endLine(const char* next);
    [[nodiscard]] TextPlace place() const;

    std::istream& m_in;
    std::vector<char> m_block;
    std::size_t m_at = 0;    ///< in the block
    std::size_t m_end = 0;   ///< of what is read of it
    std::int64_t m_base = 0; ///< bytes of the stream before the block
    std::int64_t m_line = 1;
    std::int64_t m_lineBase = 0; ///< bytes of the stream before the line
    std::int64_t m_records = 0;
    bool m_ended = false;
    bool m_inList = false; ///< the records stand in a list, which has been said

    // Of the record that is being taken.
    std::size_t m_depth = 0;
    std::uint64_t m_lists = 0; ///< for each open bracket whether it is a list's, innermost lowest
    bool m_inText = false;
    bool m_escaped = false;
    bool m_tooDeep = false;
    bool m_mismatch = false;  ///< depth and lists are not known any more
    bool m_textBroke = false; ///< the line before ended within a text
    bool m_atBrace = false;   ///< scan() stopped before a { that begins a line
    bool m_passBrace = false; ///< that one is no record's
};

} // namespace loadwarden::evidence_format
