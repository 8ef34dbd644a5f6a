#include "core/guidance/word_concepts.h"

#include <algorithm>

namespace loadwarden {

namespace {

constexpr std::size_t mostReadings = 4; // of a mistyped word
constexpr double mayBeOrdinary = 0.5;

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

const WordConcepts::Phrase* WordConcepts::phraseAt(const std::vector<Meant>& words,
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

std::vector<WordConcepts::Place> WordConcepts::placesOf(const std::vector<Meant>& words) const
{
    std::vector<Place> places;
    for (std::size_t at = 0; at < words.size();) {
        Place place;
        const Phrase* phrase = phraseAt(words, at);
        if (phrase != nullptr && phrase->words.size() > 1) {
            place.readings.push_back(phrase->sign);
        } else {
            phrase = nullptr;
            for (const std::string& word : words[at]) {
                if (const Phrase* alone = phraseAt({{word}}, 0)) {
                    place.readings.push_back(alone->sign);
                } else if (m_ordinary.contains(word)) {
                    place.weight = mayBeOrdinary;
                } else {
                    place.readings.push_back(m_stemmer.stemOf(word));
                }
            }
        }
        if (!place.readings.empty()) {
            places.push_back(std::move(place));
        }
        at += phrase == nullptr ? 1 : phrase->words.size();
    }
    return places;
}

std::vector<std::string> WordConcepts::learn(std::string_view text)
{
    std::vector<Meant> words;
    for (std::string& word : singularWordsOf(text)) {
        m_spelling.learn(word);
        words.push_back({std::move(word)});
    }
    std::vector<std::string> concepts;
    for (Place& place : placesOf(words)) {
        concepts.push_back(std::move(place.readings.front())); // what is right is read in one way
    }
    return concepts;
}

WordConcepts::Meant WordConcepts::meantBy(const std::string& word) const
{
    const std::string known = singularOf(word);
    if (m_spelling.knows(known)) {
        return {known};
    }
    Meant nearest = m_spelling.nearest(word, mostReadings); // its last s may be no plural
    if (nearest.empty()) {
        nearest = m_spelling.nearest(known, mostReadings);
    }
    return nearest.empty() ? Meant{known} : nearest;
}

std::vector<WordConcepts::Place> WordConcepts::read(std::string_view question) const
{
    std::vector<Meant> words;
    for (const std::string& word : wordsOf(question)) {
        words.push_back(meantBy(word));
    }
    std::vector<Place> places;
    for (Place& place : placesOf(words)) {
        if (std::ranges::find(places, place.readings, &Place::readings) == places.end()) {
            places.push_back(std::move(place)); // said twice is said once
        }
    }
    return places;
}

} // namespace loadwarden
