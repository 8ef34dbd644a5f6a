#include "app/cli/paragraph.h"

#include "core/quantities/unseen.h"
#include "core/quantities/utf8.h"

#include <algorithm>

namespace loadwarden::cli {

namespace {

constexpr std::size_t lineWidth = 98;

} // namespace

std::string oneLine(std::string_view text)
{
    std::string line;
    line.reserve(text.size());
    while (!text.empty()) {
        const utf8::Character character = utf8::characterAt(text);
        if (isControl(character.code) || movesText(character.code)) {
            line += ' ';
        } else {
            line += text.substr(0, character.bytes);
        }
        text.remove_prefix(character.bytes);
    }
    return line;
}

void appendParagraph(std::string& out, std::size_t indent, std::string_view lead,
                     std::string_view text, std::size_t hang)
{
    out.append(indent, ' ');
    out += lead;
    const std::string clean = oneLine(text);
    std::size_t column = indent + utf8::characterCount(lead);
    bool lineHasWord = false;
    for (std::size_t at = 0; at < clean.size();) {
        const std::size_t begin = clean.find_first_not_of(' ', at);
        if (begin == std::string::npos) {
            break;
        }
        const std::size_t end = std::min(clean.find(' ', begin), clean.size());
        const std::string_view word = std::string_view(clean).substr(begin, end - begin);
        const std::size_t width = utf8::characterCount(word);
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
