#include "core/cycle/trace/mapping_proposal.h"

#include "core/cycle/trace/header_words.h"
#include "core/cycle/trace/proposal_sheet.h"
#include "core/quantities/utf8.h"

#include <algorithm>

namespace loadwarden {
namespace {

constexpr std::size_t mostBytes = std::size_t{64} << 10U;

bool isUtf8(std::string_view bytes)
{
    for (std::size_t i = 0; i < bytes.size();) {
        const std::size_t length = utf8::characterLength(bytes.substr(i));
        if (length == 0) {
            return bytes.size() - i < 4 && i + 4 > mostBytes; // cut by the limit
        }
        i += length;
    }
    return true;
}

void proposeEncoding(std::string_view bytes, MappingProposal& proposal)
{
    if (byteOrderMarkOf(bytes) != 0) {
        proposal.notes.push_back(
            {ProposedItem::encoding, 0, Sureness::stated, ProposalReason::byteOrderMark});
        return;
    }
    const bool isSo = isUtf8(bytes.substr(0, mostBytes));
    proposal.mapping.encoding = isSo ? TextEncoding::utf8 : TextEncoding::latin1;
    proposal.notes.push_back(
        {ProposedItem::encoding, 0, Sureness::likely, ProposalReason::bytesFit});
}

std::vector<std::string> textsOf(const CutLine& row, TextEncoding encoding)
{
    std::vector<std::string> texts;
    texts.reserve(row.fields.size());
    for (const TextField& field : row.fields) {
        texts.push_back(textOf(field, encoding));
    }
    while (!texts.empty() && texts.back().empty()) {
        texts.pop_back();
    }
    return texts;
}

/// Whether a line may be the header of the samples below it.
bool mayBeHeader(const CutLine& row, const CutText& sheet)
{
    return row.filled >= 2 && row.numbers * 2 <= row.filled && row.count <= mostTraceColumns
           && row.count + 1 >= sheet.columns;
}

bool areUnits(const std::vector<std::string>& texts)
{
    std::size_t units = 0;
    for (const std::string& text : texts) {
        units += isUnitAlone(text) ? 1U : 0U;
        if (!text.empty() && text.find_first_not_of("-[]() ") != std::string::npos
            && !isUnitAlone(text)) {
            return false;
        }
    }
    return units != 0;
}

struct HeaderTexts {
    std::vector<std::string> names;
    std::vector<std::string> units;
};

HeaderTexts proposeHeader(const CutText& sheet, MappingProposal& proposal)
{
    HeaderTexts texts;
    TraceMapping& mapping = proposal.mapping;
    const bool hasSamples = sheet.firstRow < sheet.rows.size();
    mapping.linesToSkip = hasSamples ? sheet.rows[sheet.firstRow].index : 0;
    std::size_t at = sheet.firstRow;
    if (!hasSamples || at == 0 || !mayBeHeader(sheet.rows[at - 1], sheet)) {
        proposal.notes.push_back(
            {ProposedItem::header, 0, Sureness::guessed, ProposalReason::noHint});
        return texts;
    }
    --at;
    texts.names = textsOf(sheet.rows[at], mapping.encoding);
    if (at != 0 && areUnits(texts.names) && mayBeHeader(sheet.rows[at - 1], sheet)) {
        texts.units = std::move(texts.names);
        --at;
        texts.names = textsOf(sheet.rows[at], mapping.encoding);
    }
    mapping.header = texts.names;
    mapping.headerLine = static_cast<std::size_t>(sheet.rows[at].line);
    mapping.linesToSkip = sheet.rows[sheet.firstRow].index - sheet.rows[at].index - 1;
    proposal.notes.push_back(
        {ProposedItem::header, 0, Sureness::likely, ProposalReason::wordsAboveNumbers});
    return texts;
}

/// A free line before the samples that begins with words for a cycle counter and goes on with it.
void proposeCounterLabel(const CutText& sheet, MappingProposal& proposal)
{
    for (std::size_t i = 0; i < sheet.firstRow && i < sheet.rows.size(); ++i) {
        const CutLine& row = sheet.rows[i];
        if (row.fields.empty()
            || static_cast<std::size_t>(row.line) == proposal.mapping.headerLine) {
            continue;
        }
        const std::string first = textOf(row.fields.front(), proposal.mapping.encoding);
        std::string label = first.substr(0, first.find_first_of(":=#"));
        label.resize(label.find_last_not_of(" .") + 1);
        const bool hasValue = first.find_first_of("0123456789", label.size()) != std::string::npos
                              || (row.fields.size() > 1 && !row.fields[1].text.empty());
        if (hasValue && wordsOf(label).saysCounter) {
            proposal.mapping.counterLabel = label;
            proposal.notes.push_back(
                {ProposedItem::counter, 0, Sureness::likely, ProposalReason::headerWords, label});
            return;
        }
    }
}

/// The fields of a sample without an empty one at the end of every line.
std::size_t columnsOf(const CutText& sheet, const std::vector<std::string>& header)
{
    std::size_t columns = std::min(sheet.columns, mostTraceColumns);
    while (columns > header.size() && columns != 0
           && std::ranges::all_of(sheet.column(columns - 1),
                                  [](std::string_view text) { return text.empty(); })) {
        --columns;
    }
    return columns;
}

} // namespace

MappingProposal proposeMapping(std::string_view bytes)
{
    MappingProposal proposal;
    proposeEncoding(bytes, proposal);
    const CutText sheet = bestCut(bytes);
    TraceMapping& mapping = proposal.mapping;
    mapping.separator = sheet.separator;
    mapping.decimal = sheet.decimal;
    const bool hasSamples = sheet.firstRow < sheet.rows.size();
    const ProposalReason why = hasSamples ? ProposalReason::linesAgree : ProposalReason::noHint;
    const Sureness sureness = hasSamples ? Sureness::likely : Sureness::guessed;
    proposal.notes.push_back({ProposedItem::separator, 0, sureness, why});
    proposal.notes.push_back({ProposedItem::decimal, 0, sheet.isTied ? Sureness::guessed : sureness,
                              sheet.isTied ? ProposalReason::noHint : why});
    const HeaderTexts texts = proposeHeader(sheet, proposal);
    mapping.columns = columnsOf(sheet, texts.names);
    if (hasSamples) {
        proposeCounterLabel(sheet, proposal);
        proposeTime(sheet, texts.names, texts.units, proposal);
        proposeChannels(sheet, texts.names, texts.units, proposal);
    }
    return proposal;
}

std::vector<ShownLine> shownLines(std::string_view bytes, const TraceMapping& mapping,
                                  std::int64_t first, std::size_t most)
{
    std::vector<ShownLine> lines;
    LineCutter line(bytes, mapping.separator, byteOrderMarkOf(bytes));
    while (lines.size() < most && line.next()) {
        if (line.line() < first) {
            continue;
        }
        ShownLine shown{.line = line.line()};
        for (const TextField& field : line.fields()) {
            constexpr std::size_t mostShown = 120;
            shown.fields.push_back(textOf(field, mapping.encoding, mostShown));
        }
        lines.push_back(std::move(shown));
    }
    return lines;
}

} // namespace loadwarden
