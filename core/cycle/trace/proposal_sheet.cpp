#include "core/cycle/trace/proposal_sheet.h"

#include "core/cycle/trace/text_values.h"

#include <algorithm>
#include <map>

namespace loadwarden {
namespace {

constexpr std::size_t mostBytes = std::size_t{64} << 10U;
constexpr std::size_t mostRows = 200;

void countNumbers(CutLine& row, DecimalMark decimal)
{
    for (const TextField& field : row.fields) {
        if (field.text.empty()) {
            continue;
        }
        ++row.filled;
        const bool isValue = readNumber(field.text, decimal) || isTimeOrDate(field.text, decimal);
        row.numbers += isValue ? 1U : 0U;
    }
}

bool holdsNumbers(const CutLine& row)
{
    return row.numbers >= 2 && row.numbers * 2 >= row.filled;
}

CutText cut(std::string_view bytes, FieldSeparator separator, DecimalMark decimal)
{
    CutText sheet{.separator = separator, .decimal = decimal};
    LineCutter line(bytes, separator, byteOrderMarkOf(bytes));
    for (std::size_t index = 0;
         sheet.rows.size() < mostRows && line.begin() < mostBytes && line.next(); ++index) {
        if (line.isBlank()) {
            continue;
        }
        CutLine row{.index = index, .line = line.line(), .count = line.fieldCount()};
        row.fields.assign(line.fields().begin(), line.fields().end());
        countNumbers(row, decimal);
        sheet.rows.push_back(std::move(row));
    }
    std::map<std::size_t, std::size_t> counts;
    for (const CutLine& row : sheet.rows) {
        counts[row.count] += holdsNumbers(row) ? 1U : 0U;
    }
    std::size_t most = 0;
    for (const auto& [columns, lines] : counts) {
        if (lines > most) {
            most = lines;
            sheet.columns = columns;
        }
    }
    sheet.firstRow = sheet.rows.size();
    for (std::size_t i = 0; i < sheet.rows.size(); ++i) {
        const CutLine& row = sheet.rows[i];
        if (!sheet.isSample(row)) {
            continue;
        }
        // A free line may look like a sample; a second one below it hardly does.
        if (sheet.firstRow == sheet.rows.size()
            && (i + 1 == sheet.rows.size() || sheet.isSample(sheet.rows[i + 1]))) {
            sheet.firstRow = i;
        }
        sheet.score += static_cast<long>(2 * row.numbers) - static_cast<long>(row.filled);
    }
    return sheet;
}

} // namespace

bool CutText::isSample(const CutLine& row) const noexcept
{
    return row.count == columns && holdsNumbers(row);
}

std::vector<std::string_view> CutText::column(std::size_t which) const
{
    std::vector<std::string_view> texts;
    for (std::size_t i = firstRow; i < rows.size(); ++i) {
        if (isSample(rows[i]) && which < rows[i].fields.size()) {
            texts.push_back(rows[i].fields[which].text);
        }
    }
    return texts;
}

bool isTimeOrDate(std::string_view text, DecimalMark decimal) noexcept
{
    const bool hasMark = text.find_first_of(":-/. ") != std::string_view::npos;
    if (!hasMark || text.front() < '0' || text.front() > '9') {
        return false;
    }
    for (const TimeForm form :
         {TimeForm::minutesSeconds, TimeForm::hoursMinutes, TimeForm::hoursMinutesSeconds}) {
        if (readTime(text, {}, {.form = form}, decimal)) {
            return true;
        }
    }
    for (const DateOrder order :
         {DateOrder::yearMonthDay, DateOrder::dayMonthYear, DateOrder::monthDayYear}) {
        if (readTime(text, {}, {.form = TimeForm::dateTime, .order = order}, decimal)
            || readDay(text, order)) {
            return true;
        }
    }
    return false;
}

std::string headWords(const std::vector<std::string>& header, const std::vector<std::string>& units,
                      std::size_t column)
{
    std::string words = column < header.size() ? header[column] : std::string();
    if (column < units.size() && !units[column].empty()) {
        words += (words.empty() ? "" : " ") + units[column];
    }
    return words;
}

CutText bestCut(std::string_view bytes)
{
    CutText best;
    bool hasOne = false;
    for (const FieldSeparator separator :
         {FieldSeparator::tab, FieldSeparator::semicolon, FieldSeparator::comma}) {
        for (const DecimalMark decimal : {DecimalMark::point, DecimalMark::comma}) {
            CutText sheet = cut(bytes, separator, decimal);
            if (!hasOne || sheet.score > best.score) {
                best = std::move(sheet);
                hasOne = true;
            } else if (sheet.separator == best.separator && sheet.score == best.score) {
                best.isTied = true;
            }
        }
    }
    return best;
}

} // namespace loadwarden
