#pragma once

#include <cctype>
#include <cstddef>
#include <string>

/// What a text must be to stand on a screen.
namespace loadwarden::test_words {

/// Whether a place marker was left over; a lone "%" behind a number is none.
inline bool hasMarker(const std::string& text)
{
    for (std::size_t at = text.find('%'); at != std::string::npos; at = text.find('%', at + 1)) {
        const char next = at + 1 < text.size() ? text[at + 1] : ' ';
        if (std::isalnum(static_cast<unsigned char>(next)) != 0) {
            return true;
        }
    }
    return false;
}

inline bool isSentence(const std::string& text)
{
    return text.size() > 10 && text.ends_with('.') && !text.ends_with("..")
           && std::isupper(static_cast<unsigned char>(text.front())) != 0
           && text.find("  ") == std::string::npos && text.find(" .") == std::string::npos
           && !hasMarker(text);
}

} // namespace loadwarden::test_words
