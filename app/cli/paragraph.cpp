#include "app/cli/paragraph.h"

#include <algorithm>

namespace loadwarden::cli {

namespace {

constexpr std::size_t lineWidth = 98;

/// Width in characters of a word of UTF-8.
std::size_t widthOf(std::string_view word)
{
    return static_cast<std::size_t>(std::count_if(word.begin(), word.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

} // namespace

std::string oneLine(std::string_view text)
{
    std::string line(text);
    for (char& c : line) {
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) {
            c = ' ';
        }
    }
    return line;
}

void appendParagraph(std::string& out, std::size_t indent, std::string_view lead,
                     std::string_view text, std::size_t hang)
{
    out.append(indent, ' ');
    out += lead;
    const std::string clean = oneLine(text);
    std::size_t column = indent + widthOf(lead);
    bool lineHasWord = false;
    for (std::size_t at = 0; at < clean.size();) {
        const std::size_t begin = clean.find_first_not_of(' ', at);
        if (begin == std::string::npos) {
            break;
        }
        const std::size_t end = std::min(clean.find(' ', begin), clean.size());
        const std::string_view word = std::string_view(clean).substr(begin, end - begin);
        const std::size_t width = widthOf(word);
        if (lineHasWord && column + 1 + width > lineWidth) {
            out += '\n';
            out.append(indent + hang, ' ');
            column = indent + hang;
        } else if (lineHasWord) {
            out += ' ';
            ++column;
        }
        out += word;
        column += width;
        lineHasWord = true;
        at = end;
    }
    out += '\n';
}

} // namespace loadwarden::cli
