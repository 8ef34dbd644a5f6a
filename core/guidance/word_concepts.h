#pragma once

#include "core/guidance/house_words.h"
#include "core/guidance/spelling.h"
#include "core/guidance/text_words.h"

#include <map>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

namespace loadwarden {

/// What a text is about: of each word its stem; in the place of the words of a group that mean the
/// same, one sign for the group. Ordinary words are left out. A question is looked up as the topics
/// were written down, so both come here.
class WordConcepts {
public:
    WordConcepts(const HouseWords& words, const std::string& language);

    /// Learns the words of a topic's text, for spelling, and answers what it is about.
    std::vector<std::string> learn(std::string_view text);

    /// What a question is about; a word that nobody knows is taken for those nearest to it. Each
    /// element holds the readings of one place of the question: one, or several for a mistyped
    /// word. A place that could not be read at all holds the word itself.
    [[nodiscard]] std::vector<std::vector<std::string>> read(std::string_view question) const;

private:
    struct Phrase {
        std::vector<std::string> words;
        std::string sign;
    };

    /// The ways in which a place may be read, the likeliest first; mostly one.
    using Place = std::vector<std::string>;

    [[nodiscard]] const Phrase* phraseAt(const std::vector<Place>& words, std::size_t at) const;
    [[nodiscard]] std::vector<std::vector<std::string>>
    conceptsOf(const std::vector<Place>& words) const;

    Stemmer m_stemmer;
    std::map<std::string, std::vector<Phrase>, std::less<>>
        m_phrases; ///< by first word, longest first
    std::unordered_set<std::string> m_ordinary;
    Spelling m_spelling;
};

} // namespace loadwarden
