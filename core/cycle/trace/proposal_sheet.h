#pragma once

#include "core/cycle/trace/mapping_proposal.h"
#include "core/cycle/trace/text_lines.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// A line of the file's beginning that is not blank.
struct CutLine {
    std::size_t index = 0; ///< of all lines, blank ones too, from 0
    std::int64_t line = 1;
    std::size_t count = 0; ///< fields
    std::vector<TextField> fields;
    std::size_t numbers = 0; ///< fields that are numbers, times or dates
    std::size_t filled = 0;  ///< fields that are not empty
};

/// The beginning of a file as one separator and decimal mark cut it.
struct CutText {
    FieldSeparator separator = FieldSeparator::comma;
    DecimalMark decimal = DecimalMark::point;
    std::vector<CutLine> rows;
    std::size_t columns = 0;  ///< of most lines that hold numbers
    std::size_t firstRow = 0; ///< index in rows of the first sample; rows.size(): there is none
    long score = 0;           ///< fields that are numbers less those that are not
    bool isTied = false;      ///< another mark cuts it as well

    [[nodiscard]] bool isSample(const CutLine& row) const noexcept;
    /// A column's fields in the lines of samples.
    [[nodiscard]] std::vector<std::string_view> column(std::size_t which) const;
};

/// Whether a field reads as a time with colons or as a date.
[[nodiscard]] bool isTimeOrDate(std::string_view text, DecimalMark decimal) noexcept;

/// The way of cutting by which most fields of the file's beginning are numbers.
[[nodiscard]] CutText bestCut(std::string_view bytes);

/// A column's words in the header and, where there is one, in the line of units.
[[nodiscard]] std::string headWords(const std::vector<std::string>& header,
                                    const std::vector<std::string>& units, std::size_t column);

/// Finds time column and form, with notes.
void proposeTime(const CutText& sheet, const std::vector<std::string>& header,
                 const std::vector<std::string>& units, MappingProposal& proposal);

/// Finds counter and channels with role and unit in the columns that are left, with notes.
void proposeChannels(const CutText& sheet, const std::vector<std::string>& header,
                     const std::vector<std::string>& units, MappingProposal& proposal);

} // namespace loadwarden
