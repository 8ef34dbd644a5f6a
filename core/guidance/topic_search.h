#pragma once

#include "core/guidance/topic_library.h"
#include "core/guidance/word_concepts.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace loadwarden {

struct FoundTopic {
    const Topic* topic = nullptr;
    double score = 0; ///< 0 to 2; comparable within one question only
};

struct FoundTopics {
    std::vector<FoundTopic> topics; ///< the best first
    /// Whether the best one says what the question says, as far as words can tell. Where it does
    /// not, nobody should be given its answer as the answer.
    bool isSure = false;
};

/// Finds topics by what people ask, in memory. Made once of a library and a language, then asked as
/// often as wanted, by one thread at a time; the library must outlive it and stay as it is.
class TopicSearch {
public:
    TopicSearch(const TopicLibrary& library, const std::string& language);

    /// At most `most` topics; none where no word of the question stands in any of them.
    [[nodiscard]] FoundTopics find(std::string_view question, std::size_t most) const;

private:
    using Concept = std::uint32_t;

    struct Posting {
        std::uint32_t where; ///< index of the phrasing or topic
        float weight;
    };

    struct Phrasing {
        std::uint32_t topic;
        std::vector<Concept> concepts; ///< each once
        double length = 0;             ///< Euclidean, of its concepts' weights
    };

    Concept conceptOf(const std::string& word);
    void addPhrasing(std::uint32_t topic, const std::vector<std::string>& words);
    void weigh();
    [[nodiscard]] double rarityOf(const WordConcepts::Place& place) const;

    std::vector<const Topic*> m_topics;
    WordConcepts m_words;
    std::unordered_map<std::string, Concept> m_concepts;
    std::vector<std::unordered_map<Concept, double>> m_said; ///< of each topic, how much of what
    std::vector<Phrasing> m_phrasings;
    std::vector<double> m_rarity;                    ///< of each concept
    std::vector<std::vector<Posting>> m_inPhrasings; ///< of each concept
    std::vector<std::vector<Posting>> m_inTopics;    ///< of each concept
};

} // namespace loadwarden
