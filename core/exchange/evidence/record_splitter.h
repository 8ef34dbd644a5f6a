#pragma once

#include <cstddef>
#include <cstdint>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden::evidence_format {

/// Bytes that the text of one record may have at most.
inline constexpr std::size_t mostRecordBytes = std::size_t{16} << 20U;

/// Objects and lists that may stand one in the other.
inline constexpr std::size_t mostNesting = 64;

/// The text of one record, or why it cannot be had.
struct RecordText {
    std::int64_t record = 0; ///< counted from 1
    std::string text;        ///< from "{" to its "}"; whether it is JSON is not known
    std::string problem;     ///< empty: the text is there
};

/// Cuts a stream into the texts of its records: objects one after the other, white space between
/// them. Looks only at brackets and quotation marks. Holds one record at a time, none beyond
/// mostRecordBytes.
///
/// Reads no more than the stream has at hand, so that records can be answered while they come in.
/// For std::cin that is one character unless std::ios::sync_with_stdio(false) was called.
class RecordSplitter {
public:
    explicit RecordSplitter(std::istream& in);

    /// nullopt at the end. After a problem it goes on where the record's end is known.
    [[nodiscard]] std::optional<RecordText> next();

private:
    bool fill();
    bool toFirstRecord(RecordText& record);
    bool toRecord(RecordText& record);
    void takeRecord(RecordText& record);
    const char* scan(const char* at, const char* end);

    std::istream& m_in;
    std::vector<char> m_block;
    std::size_t m_at = 0;  ///< in the block
    std::size_t m_end = 0; ///< of what is read of it
    std::int64_t m_records = 0;
    bool m_ended = false;

    // Of the record that is being taken.
    std::size_t m_depth = 0;
    std::uint64_t m_lists = 0; ///< for each open bracket whether it is a list's, innermost lowest
    bool m_inText = false;
    bool m_escaped = false;
    bool m_hasNul = false;
    bool m_tooDeep = false;
    bool m_mismatch = false;
};

} // namespace loadwarden::evidence_format
