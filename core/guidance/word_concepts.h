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

    /// A place of a question: how it may be read. Of a word that is known there is one reading, of
    /// a mistyped one as many as there are words nearest to it; of one that nobody knows, itself.
    struct Place {
        std::vector<std::string> readings; ///< never empty
        double weight = 1;                 ///< less where the word may as well be an ordinary one
    };

    /// What a question is about.
    [[nodiscard]] std::vector<Place> read(std::string_view question) const;

private:
    struct Phrase {
        std::vector<std::string> words;
        std::string sign;
    };

    /// The words that somebody may have meant at one place.
    using Meant = std::vector<std::string>;

    [[nodiscard]] Meant meantBy(const std::string& word) const;
    [[nodiscard]] const Phrase* phraseAt(const std::vector<Meant>& words, std::size_t at) const;
    [[nodiscard]] std::vector<Place> placesOf(const std::vector<Meant>& words) const;

    Stemmer m_stemmer;
    std::map<std::string, std::vector<Phrase>, std::less<>>
        m_phrases; ///< by first word, longest first
    std::unordered_set<std::string> m_ordinary;
    Spelling m_spelling;
};

} // namespace loadwarden
