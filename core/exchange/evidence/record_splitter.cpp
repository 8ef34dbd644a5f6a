#include "core/exchange/evidence/record_splitter.h"

#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/json_scanner.h"

#include <algorithm>
#include <array>
#include <istream>

namespace loadwarden::evidence_format {

namespace {

constexpr std::size_t blockBytes = std::size_t{64} << 10U;

enum class Mark : unsigned char { none, quote, backslash, open, close, line };

constexpr std::array<Mark, 256> marks = [] {
    std::array<Mark, 256> table{};
    table['"'] = Mark::quote;
    table['\\'] = Mark::backslash;
    table['{'] = table['['] = Mark::open;
    table['}'] = table[']'] = Mark::close;
    table['\n'] = Mark::line;
    return table;
}();

Mark markOf(char c)
{
    return marks[static_cast<unsigned char>(c)];
}

} // namespace

RecordSplitter::RecordSplitter(std::istream& in) : m_in(in), m_block(blockBytes) {}

/// Reads on; false at the end of the stream. The block is used up before.
bool RecordSplitter::fill()
{
    m_base += static_cast<std::int64_t>(m_end);
    m_at = 0;
    m_end = 0;
    return !lookAhead(1).empty();
}

/// That many bytes from the present place on, or fewer where the stream ends.
std::string_view RecordSplitter::lookAhead(std::size_t bytes)
{
    while (m_end - m_at < bytes && m_in.peek() != std::istream::traits_type::eof()) {
        if (m_at > 0) {
            std::copy(m_block.begin() + static_cast<std::ptrdiff_t>(m_at),
                      m_block.begin() + static_cast<std::ptrdiff_t>(m_end), m_block.begin());
            m_base += static_cast<std::int64_t>(m_at);
            m_end -= m_at;
            m_at = 0;
        }
        const auto room = static_cast<std::streamsize>(blockBytes - m_end);
        m_in.read(m_block.data() + m_end,
                  std::clamp<std::streamsize>(m_in.rdbuf()->in_avail(), 1, room));
        m_end += static_cast<std::size_t>(m_in.gcount());
    }
    return {m_block.data() + m_at, std::min(bytes, m_end - m_at)};
}

std::optional<RecordText> RecordSplitter::next()
{
    if (m_ended) {
        return std::nullopt;
    }
    RecordText record{.record = m_records + 1, .place = {}, .text = {}, .problem = {}};
    if (m_base == 0 && m_end == 0 && !toFirstRecord(record)) {
        m_ended = true;
        return record;
    }
    if (toRecord(record)) {
        takeRecord(record);
        ++m_records;
        return record;
    }
    if (record.problem.empty()) {
        m_ended = true;
        record.place = place();
        if (m_in.bad()) {
            record.problem = "the file could not be read to its end";
        } else if (m_records == 0) {
            record.problem = "there is no record: the file is empty";
        } else {
            return std::nullopt;
        }
    }
    return record;
}

/// Refuses what is not UTF-8 by its first bytes.
bool RecordSplitter::toFirstRecord(RecordText& record)
{
    record.problem = wrongEncoding(lookAhead(4));
    return record.problem.empty();
}

/// Skips white space; false at the end of the stream.
bool RecordSplitter::skipSpace()
{
    for (;;) {
        for (; m_at != m_end && isSpace(m_block[m_at]); ++m_at) {
            if (m_block[m_at] == '\n') {
                endLine(m_block.data() + m_at + 1);
            }
        }
        if (m_at != m_end) {
            return true;
        }
        if (!fill()) {
            return false;
        }
    }
}

/// The line ends before `next`, which stands in the block.
void RecordSplitter::endLine(const char* next)
{
    ++m_line;
    m_lineBase = m_base + (next - m_block.data());
}

TextPlace RecordSplitter::place() const
{
    return {m_line, m_base + static_cast<std::int64_t>(m_at) - m_lineBase + 1};
}

/// Goes to the next record; true when it begins here. Otherwise the problem says what stands here,
/// or is empty at the end of the stream.
bool RecordSplitter::toRecord(RecordText& record)
{
    for (; skipSpace(); ++m_at) {
        const char c = m_block[m_at];
        record.place = place();
        if (c == '{') {
            return true;
        }
        if (m_inList && (c == ',' || c == ']')) {
            continue;
        }
        if (c == '[' && m_records == 0 && !m_inList) {
            m_inList = true;
            record.problem = "a list [ ... ] stands where a record { ... } should begin; write the "
                             "records one after the other, without a list around them";
        } else if (c == ',') {
            record.problem =
                "a comma stands between two records; part them by a line break instead";
        } else {
            passOver(record);
            return false;
        }
        ++m_at;
        return false;
    }
    return false;
}

/// Passes over what is no record, up to the next line that begins with {; it counts as one.
void RecordSplitter::passOver(RecordText& record)
{
    const char c = m_block[m_at];
    record.problem = "a record must begin with {, not with " + quoted({&c, 1});
    ++m_records;
    for (bool lineBegins = false;;) {
        if (m_at == m_end && !fill()) {
            return;
        }
        if (lineBegins && m_block[m_at] == '{') {
            return;
        }
        lineBegins = m_block[m_at++] == '\n';
        if (lineBegins) {
            endLine(m_block.data() + m_at);
        }
    }
}

void RecordSplitter::takeRecord(RecordText& record)
{
    m_depth = 0;
    m_lists = 0;
    m_inText = m_escaped = m_tooDeep = m_mismatch = m_textBroke = false;
    m_passBrace = true; // its own
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
        if (m_depth == 0 && !m_mismatch) {
            break;
        }
        if (m_atBrace) {
            if (beginsRecord(record.text)) {
                break;
            }
            m_passBrace = true;
        } else if (!fill()) {
            break;
        }
    }
    if (m_in.bad()) {
        m_ended = true;
        record.problem = "the file could not be read to its end";
    } else if (tooLong) {
        record.problem = tooLongProblem();
    }
    if (!record.problem.empty()) {
        record.text = {};
    }
}

/// Whether the { that begins this line begins a record, although the one before it is still open.
bool RecordSplitter::beginsRecord(std::string_view before)
{
    while (!before.empty() && isSpace(before.back())) {
        before.remove_suffix(1);
    }
    constexpr std::string_view beforeValues = ":,[";
    if (m_textBroke || before.empty() || beforeValues.find(before.back()) == std::string::npos) {
        return true;
    }
    constexpr std::string_view name = "\"evidenceVersion\"";
    constexpr std::size_t mostSpace = 40; // between the bracket and the name
    std::string_view from = lookAhead(1 + mostSpace + name.size()).substr(1);
    while (!from.empty() && isSpace(from.front())) {
        from.remove_prefix(1);
    }
    return from.starts_with(name);
}

/// Follows brackets and texts up to the record's end (depth 0), before a { that begins a line, or
/// to the end of the block.
const char* RecordSplitter::scan(const char* at, const char* end)
{
    m_atBrace = false;
    while (at != end) {
        if (m_escaped) {
            m_escaped = false;
            if (*at != '\n') {
                ++at;
                continue;
            }
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
        case Mark::quote: m_inText = !m_inText; break;
        case Mark::backslash: m_escaped = m_inText; break;
        case Mark::line:
            endLine(at);
            m_textBroke = m_inText;
            m_inText = false;
            break;
        case Mark::open:
            if (m_inText) {
                break;
            }
            if (c == '{' && !m_passBrace && m_base + (at - 1 - m_block.data()) == m_lineBase) {
                m_atBrace = true;
                return at - 1;
            }
            m_passBrace = false;
            ++m_depth;
            m_tooDeep |= m_depth > mostNesting;
            m_lists = m_lists << 1U | (c == '[' ? 1U : 0U);
            break;
        case Mark::close:
            if (m_inText || m_mismatch) {
                break;
            }
            // Beyond the depth that is remembered, every bracket passes.
            m_mismatch = !m_tooDeep && (m_lists & 1U) != (c == ']' ? 1U : 0U);
            m_lists >>= 1U;
            --m_depth;
            if (m_depth == 0 && !m_mismatch) {
                return at;
            }
            break;
        }
    }
    return at;
}

} // namespace loadwarden::evidence_format
