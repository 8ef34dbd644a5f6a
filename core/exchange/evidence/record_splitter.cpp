#include "core/exchange/evidence/record_splitter.h"

#include "core/exchange/evidence/complaints.h"

#include <algorithm>
#include <array>
#include <istream>

namespace loadwarden::evidence_format {

namespace {

constexpr std::size_t blockBytes = std::size_t{64} << 10U;

enum class Mark : unsigned char { none, quote, backslash, open, close, nul };

constexpr std::array<Mark, 256> marks = [] {
    std::array<Mark, 256> table{};
    table['"'] = Mark::quote;
    table['\\'] = Mark::backslash;
    table['{'] = table['['] = Mark::open;
    table['}'] = table[']'] = Mark::close;
    table[0] = Mark::nul;
    return table;
}();

Mark markOf(char c)
{
    return marks[static_cast<unsigned char>(c)];
}

bool isSpace(char c)
{
    return c == ' ' || c == '\n' || c == '\r' || c == '\t';
}

} // namespace

RecordSplitter::RecordSplitter(std::istream& in) : m_in(in), m_block(blockBytes) {}

/// Reads on; false at the end of the stream. The block is used up before.
bool RecordSplitter::fill()
{
    m_at = 0;
    m_end = 0;
    if (m_in.peek() == std::istream::traits_type::eof()) {
        return false;
    }
    const std::streamsize atHand =
        std::clamp<std::streamsize>(m_in.rdbuf()->in_avail(), 1, blockBytes);
    m_in.read(m_block.data(), atHand);
    m_end = static_cast<std::size_t>(m_in.gcount());
    return m_end > 0;
}

std::optional<RecordText> RecordSplitter::next()
{
    if (m_ended) {
        return std::nullopt;
    }
    RecordText record{.record = m_records + 1, .text = {}, .problem = {}};
    if (m_records == 0 && !toFirstRecord(record)) {
        m_ended = true;
        return record;
    }
    if (!toRecord(record)) {
        m_ended = true;
        if (m_in.bad()) {
            record.problem = "the file could not be read to its end";
        } else if (record.problem.empty() && m_records == 0) {
            record.problem = "there is no record: the file is empty";
        }
        if (record.problem.empty()) {
            return std::nullopt;
        }
        return record;
    }
    takeRecord(record);
    ++m_records;
    return record;
}

/// Refuses what is not UTF-8 by its first bytes.
bool RecordSplitter::toFirstRecord(RecordText& record)
{
    // The first read may have brought less than the marks need.
    std::size_t have = 0;
    while (have < 4 && m_in.peek() != std::istream::traits_type::eof()) {
        m_block[have++] = static_cast<char>(m_in.get());
    }
    m_end = have;
    record.problem = wrongEncoding({m_block.data(), have});
    return record.problem.empty();
}

/// Skips white space; true when a record begins. Otherwise the problem says what stands there, or
/// is empty at the end of the stream.
bool RecordSplitter::toRecord(RecordText& record)
{
    for (;;) {
        while (m_at != m_end && isSpace(m_block[m_at])) {
            ++m_at;
        }
        if (m_at != m_end) {
            break;
        }
        if (!fill()) {
            return false;
        }
    }
    const char c = m_block[m_at];
    if (c == '{') {
        return true;
    }
    if (c == '[') {
        record.problem =
            "a list [ ... ] stands where a record { ... } should begin; write the records "
            "one after the other, without a list around them";
    } else if (c == ',') {
        record.problem = "a comma stands between two records; part them by a line break instead";
    } else {
        record.problem = "a record must begin with {, not with " + quoted({&c, 1})
                         + "; the rest of the file was not read";
    }
    return false;
}

void RecordSplitter::takeRecord(RecordText& record)
{
    m_depth = 0;
    m_lists = 0;
    m_inText = m_escaped = m_hasNul = m_tooDeep = m_mismatch = false;
    bool tooLong = false;
    for (;;) {
        const char* const begin = m_block.data() + m_at;
        const char* const stop = scan(begin, m_block.data() + m_end);
        const auto bytes = static_cast<std::size_t>(stop - begin);
        m_at += bytes;
        if (tooLong || record.text.size() + bytes > mostRecordBytes) {
            tooLong = true;
            record.text = {};
        } else {
            record.text.append(begin, bytes);
        }
        if (m_mismatch || m_depth == 0) {
            break;
        }
        if (!fill()) {
            m_ended = true;
            record.problem = m_in.bad() ? "the file could not be read to its end"
                                        : "the file ends before the record's closing }";
            break;
        }
    }
    if (m_mismatch) {
        m_ended = true;
        record.problem =
            "a closing bracket does not fit its opening one ({ with }, [ with ]), so it is "
            "not known where the record ends; the rest of the file was not read";
    } else if (tooLong) {
        record.problem = tooLongProblem();
    } else if (record.problem.empty() && m_hasNul) {
        record.problem = nulProblem();
    } else if (record.problem.empty() && m_tooDeep) {
        record.problem = "more than " + std::to_string(mostNesting)
                         + " objects and lists stand one in the other";
    }
    if (!record.problem.empty()) {
        record.text = {};
    }
}

/// Follows brackets and texts up to the record's end (depth 0), a mismatch, or the end of the
/// block.
const char* RecordSplitter::scan(const char* at, const char* end)
{
    while (at != end) {
        if (m_escaped) {
            m_escaped = false;
            m_hasNul |= *at == '\0';
            ++at;
            continue;
        }
        while (at != end && markOf(*at) == Mark::none) {
            ++at;
        }
        if (at == end) {
            break;
        }
        const char c = *at++;
        switch (markOf(c)) {
        case Mark::none: break;
        case Mark::nul: m_hasNul = true; break;
        case Mark::quote: m_inText = !m_inText; break;
        case Mark::backslash: m_escaped = m_inText; break;
        case Mark::open:
            if (m_inText) {
                break;
            }
            ++m_depth;
            m_tooDeep |= m_depth > mostNesting;
            m_lists = m_lists << 1U | (c == '[' ? 1U : 0U);
            break;
        case Mark::close:
            if (m_inText) {
                break;
            }
            // Beyond the depth that is remembered, every bracket passes.
            m_mismatch = !m_tooDeep && (m_lists & 1U) != (c == ']' ? 1U : 0U);
            m_lists >>= 1U;
            --m_depth;
            if (m_mismatch || m_depth == 0) {
                return at;
            }
            break;
        }
    }
    return at;
}

} // namespace loadwarden::evidence_format
