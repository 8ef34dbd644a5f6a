#include "core/guidance/word_concepts.h"

#include <algorithm>

namespace loadwarden {

namespace {

constexpr std::size_t mostReadings = 4; // of a mistyped word

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

const WordConcepts::Phrase* WordConcepts::phraseAt(const std::vector<Place>& words,
                                                   std::size_t at) const
{
    const auto stands = [&](const Phrase& phrase) {
        if (at + phrase.words.size() > words.size()) {
            return false;
        }
        for (std::size_t i = 0; i < phrase.words.size(); ++i) {
            if (std::ranges::find(words[at + i], phrase.words[i]) == words[at + i].end()) {
                return false;
            }
        }
        return true;
    };
    const Phrase* longest = nullptr;
    for (const std::string& word : words[at]) {
        const auto found = m_phrases.find(word);
        if (found == m_phrases.end()) {
            continue;
        }
        const auto phrase = std::ranges::find_if(found->second, stands);
        if (phrase != found->second.end()
            && (longest == nullptr || phrase->words.size() > longest->words.size())) {
            longest = &*phrase;
        }
    }
    return longest;
}

std::vector<std::vector<std::string>>
WordConcepts::conceptsOf(const std::vector<Place>& words) const
{
    std::vector<std::vector<std::string>> concepts;
    for (std::size_t at = 0; at < words.size();) {
        const Phrase* phrase = phraseAt(words, at);
        std::vector<std::string> readings;
        if (phrase != nullptr) {
            readings.push_back(phrase->sign);
        }
        if (phrase == nullptr || phrase->words.size() == 1) {
            for (const std::string& word : words[at]) {
                const bool isSaid = phrase != nullptr && word == phrase->words.front();
                if (!isSaid && !m_ordinary.contains(word)) {
                    readings.push_back(m_stemmer.stemOf(word));
                }
            }
        }
        if (!readings.empty()) {
            concepts.push_back(std::move(readings));
        }
        at += phrase == nullptr ? 1 : phrase->words.size();
    }
    return concepts;
}

std::vector<std::string> WordConcepts::learn(std::string_view text)
{
    std::vector<Place> places;
    for (std::string& word : singularWordsOf(text)) {
        m_spelling.learn(word);
        places.push_back({std::move(word)});
    }
    std::vector<std::string> concepts;
    for (std::vector<std::string>& readings : conceptsOf(places)) {
        concepts.push_back(std::move(readings.front())); // a word that is right has one reading
    }
    return concepts;
}

std::vector<std::vector<std::string>> WordConcepts::read(std::string_view question) const
{
    std::vector<Place> places;
    for (const std::string& word : singularWordsOf(question)) {
        Place place{word};
        if (!m_spelling.knows(word)) {
            Place nearest = m_spelling.nearest(word, mostReadings);
            if (!nearest.empty()) {
                place = std::move(nearest);
            }
        }
        places.push_back(std::move(place));
    }
    std::vector<std::vector<std::string>> concepts;
    for (std::vector<std::string>& readings : conceptsOf(places)) {
        if (std::ranges::find(concepts, readings) == concepts.end()) {
            concepts.push_back(std::move(readings)); // said twice is said once
        }
    }
    return concepts;
}

} // namespace loadwarden
