#include "core/guidance/word_concepts.h"

#include <algorithm>

namespace loadwarden {

namespace {

constexpr std::size_t mostReadings = 3; // of a mistyped word

} // namespace

WordConcepts::WordConcepts(const HouseWords& words, const std::string& language)
    : m_stemmer(language)
{
    for (std::size_t group = 0; group < words.same.size(); ++group) {
        const std::string sign = "=" + std::to_string(group); // no word begins so
        for (const std::string& text : words.same[group]) {
            Phrase phrase{singularWordsOf(text), sign};
            if (phrase.words.empty()) {
                continue;
            }
            for (const std::string& word : phrase.words) {
                m_spelling.learn(word);
            }
            m_phrases[phrase.words.front()].push_back(std::move(phrase));
        }
    }
    for (auto& [first, phrases] : m_phrases) {
        std::stable_sort(phrases.begin(), phrases.end(), [](const Phrase& a, const Phrase& b) {
            return a.words.size() > b.words.size();
        });
    }
    for (const std::string& text : words.ordinary) {
        for (const std::string& word : singularWordsOf(text)) {
            m_ordinary.insert(word);
            m_spelling.learn(word);
        }
    }
}

std::string WordConcepts::stemOf(const std::string& word) const
{
    return m_stemmer.stemOf(word);
}

const WordConcepts::Phrase* WordConcepts::phraseAt(const std::vector<std::string>& words,
                                                   std::size_t at) const
{
    const auto found = m_phrases.find(words[at]);
    if (found == m_phrases.end()) {
        return nullptr;
    }
    const auto stands = [&](const Phrase& phrase) {
        return at + phrase.words.size() <= words.size()
               && std::equal(phrase.words.begin(), phrase.words.end(),
                             words.begin() + static_cast<std::ptrdiff_t>(at));
    };
    const auto phrase = std::ranges::find_if(found->second, stands);
    return phrase == found->second.end() ? nullptr : &*phrase;
}

std::vector<std::string> WordConcepts::conceptsOf(const std::vector<std::string>& words) const
{
    std::vector<std::string> concepts;
    for (std::size_t at = 0; at < words.size();) {
        if (const Phrase* phrase = phraseAt(words, at)) {
            concepts.push_back(phrase->sign);
            at += phrase->words.size();
            continue;
        }
        if (!m_ordinary.contains(words[at])) {
            concepts.push_back(stemOf(words[at]));
        }
        ++at;
    }
    return concepts;
}

std::vector<std::string> WordConcepts::learn(std::string_view text)
{
    const std::vector<std::string> words = singularWordsOf(text);
    for (const std::string& word : words) {
        m_spelling.learn(word);
    }
    return conceptsOf(words);
}

std::vector<std::vector<std::string>> WordConcepts::read(std::string_view question) const
{
    // First every mistyped word by its nearest one, so that groups of several words are found; then
    // the further readings of single words beside it.
    std::vector<std::string> words = singularWordsOf(question);
    std::map<std::string, std::vector<std::string>> others; // by the word that was taken
    for (std::string& word : words) {
        if (m_spelling.knows(word)) {
            continue;
        }
        std::vector<std::string> nearest = m_spelling.nearest(word, mostReadings);
        if (!nearest.empty()) {
            word = nearest.front();
            others[word].insert(others[word].end(), nearest.begin() + 1, nearest.end());
        }
    }
    std::vector<std::vector<std::string>> places;
    for (std::size_t at = 0; at < words.size();) {
        std::vector<std::string> readings;
        std::size_t length = 1;
        if (const Phrase* phrase = phraseAt(words, at)) {
            readings.push_back(phrase->sign);
            length = phrase->words.size();
        } else if (!m_ordinary.contains(words[at])) {
            readings.push_back(stemOf(words[at]));
        }
        if (const auto found = others.find(words[at]); found != others.end() && length == 1) {
            for (const std::string& other : found->second) {
                for (std::string& reading : conceptsOf({other})) {
                    readings.push_back(std::move(reading));
                }
            }
        }
        if (!readings.empty() && std::ranges::find(places, readings) == places.end()) {
            places.push_back(std::move(readings));
        }
        at += length;
    }
    return places;
}

} // namespace loadwarden
