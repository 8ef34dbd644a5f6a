#pragma once

#include <string>
#include <string_view>
#include <vector>

struct sb_stemmer;

namespace loadwarden {

/// The words of a text in lower case and without accents: runs of letters and digits, an apostrophe
/// inside a word left out ("doesn't" is "doesnt"). A bare "s" after an apostrophe is no word of its
/// own.
[[nodiscard]] std::vector<std::string> wordsOf(std::string_view text);

/// Without the s of a plural. Short words keep theirs, and "ss", "us" and "is".
[[nodiscard]] std::string singularOf(const std::string& word);

/// The words of a text without the s of plurals, so that lists of words need not hold both.
[[nodiscard]] std::vector<std::string> singularWordsOf(std::string_view text);

/// The stems of words by the Snowball algorithms (https://snowballstem.org); for a language that
/// these do not know a word is its own stem. Not for several threads at once.
class Stemmer {
public:
    explicit Stemmer(const std::string& language);
    ~Stemmer();
    Stemmer(const Stemmer&) = delete;
    Stemmer& operator=(const Stemmer&) = delete;

    [[nodiscard]] std::string stemOf(const std::string& word) const;

private:
    sb_stemmer* m_stemmer;
};

} // namespace loadwarden
