#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace loadwarden::cli {

/// Text from a record, on one line and without what would move a terminal's cursor or turn the
/// direction of its text.
std::string oneLine(std::string_view text);

/// Appends a paragraph of lines of at most 98 characters: `lead` behind `indent` spaces, then the
/// words of the text; lines after the first begin `hang` further in. Only a word that is longer
/// than a line makes a longer one.
void appendParagraph(std::string& out, std::size_t indent, std::string_view lead,
                     std::string_view text, std::size_t hang);

} // namespace loadwarden::cli
