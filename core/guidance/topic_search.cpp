#include "core/guidance/topic_search.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace loadwarden {

namespace {

// The numbers below were chosen by leaving out each phrasing of each topic in turn and asking for
// it (tests/data/guidance/README.md). None is fine enough to matter much by itself.

// How much a word says of a topic by where it stands there.
constexpr double inPhrasing = 1.0;
constexpr double inShortAnswer = 1.2;
constexpr double inSteps = 0.5;
constexpr double inReasons = 0.4;
// A word that stands in a topic ten times says little more than one that stands there five times.
constexpr double saturation = 1.5;
// Rare words say more, but not as much more as their number alone would make them.
constexpr double rarityPower = 0.75;
// The score: how near the nearest phrasings are, and how much of the question the topic speaks of
// at all. One phrasing may be near by chance; so the second and third count beside it.
constexpr double byPhrasing = 0.4;
constexpr double byTopic = 0.6;
constexpr double bySecondAndThird = 0.6; // of byPhrasing
// Below this the best topic shares too little with the question to be given as its answer.
constexpr double sureFrom = 0.36;
constexpr double almostOne = 0.999;

/// How near the three nearest phrasings of a topic are, the nearest first.
struct Nearest {
    double first = 0;
    double second = 0;
    double third = 0;

    void take(double cosine)
    {
        if (cosine > first) {
            third = std::exchange(second, std::exchange(first, cosine));
        } else if (cosine > second) {
            third = std::exchange(second, cosine);
        } else {
            third = std::max(third, cosine);
        }
    }

    [[nodiscard]] double score() const
    {
        return (1 - bySecondAndThird) * first + bySecondAndThird * (second + third) / 2;
    }
};

/// What a word says that stands in so many of all topics.
double rarityAmong(double topics, double with)
{
    return std::pow(std::log(1 + topics / (0.5 + with)), rarityPower);
}

} // namespace

TopicSearch::TopicSearch(const TopicLibrary& library, const std::string& language)
    : m_topics(library.topics(language)), m_words(library.words(language), language)
{
    m_said.resize(m_topics.size());
    const auto add = [&](std::uint32_t topic, std::string_view text, double weight) {
        for (const std::string& word : m_words.learn(text)) {
            m_said[topic][conceptOf(word)] += weight;
        }
    };
    for (std::uint32_t i = 0; i < m_topics.size(); ++i) {
        const Topic& topic = *m_topics[i];
        addPhrasing(i, m_words.learn(topic.question));
        for (const std::string& phrasing : topic.alsoAsked) {
            addPhrasing(i, m_words.learn(phrasing));
        }
        add(i, topic.shortAnswer, inShortAnswer);
        for (const std::string& step : topic.doNow) {
            add(i, step, inSteps);
        }
        add(i, topic.why, inReasons);
    }
    weigh();
}

TopicSearch::Concept TopicSearch::conceptOf(const std::string& word)
{
    return m_concepts.try_emplace(word, static_cast<Concept>(m_concepts.size())).first->second;
}

void TopicSearch::addPhrasing(std::uint32_t topic, const std::vector<std::string>& words)
{
    std::set<Concept> concepts;
    for (const std::string& word : words) {
        const Concept found = conceptOf(word);
        concepts.insert(found);
        m_said[topic][found] += inPhrasing;
    }
    if (!concepts.empty()) {
        m_phrasings.push_back({topic, {concepts.begin(), concepts.end()}, 0});
    }
}

/// A word that stands in few topics says more than one that stands in many.
void TopicSearch::weigh()
{
    const auto count = static_cast<double>(m_topics.size());
    std::vector<double> topicsWith(m_concepts.size());
    m_inTopics.resize(m_concepts.size());
    m_inPhrasings.resize(m_concepts.size());
    for (std::uint32_t topic = 0; topic < m_said.size(); ++topic) {
        for (const auto& [word, said] : m_said[topic]) {
            topicsWith[word] += said >= inPhrasing ? 1 : said;
            m_inTopics[word].push_back({topic, static_cast<float>(said / (said + saturation))});
        }
    }
    for (const double with : topicsWith) {
        m_rarity.push_back(rarityAmong(count, with));
    }
    for (std::uint32_t i = 0; i < m_phrasings.size(); ++i) {
        double square = 0;
        for (const Concept word : m_phrasings[i].concepts) {
            square += m_rarity[word] * m_rarity[word];
            m_inPhrasings[word].push_back({i, static_cast<float>(m_rarity[word])});
        }
        m_phrasings[i].length = std::sqrt(square);
    }
    m_said.clear();
}

/// That of its commonest reading, which is the likeliest; what nobody knows counts as rare: it says
/// that the question is about something else.
double TopicSearch::rarityOf(const WordConcepts::Place& place) const
{
    double least = rarityAmong(static_cast<double>(m_topics.size()), 0.5);
    for (const std::string& reading : place.readings) {
        if (const auto found = m_concepts.find(reading); found != m_concepts.end()) {
            least = std::min(least, m_rarity[found->second]);
        }
    }
    return least;
}

FoundTopics TopicSearch::find(std::string_view question, std::size_t most) const
{
    std::vector<double> phrasingScores(m_phrasings.size());
    std::vector<double> topicScores(m_topics.size());
    std::vector<double> bestOfPlace(std::max(m_phrasings.size(), m_topics.size()));
    double square = 0;
    double sum = 0;
    // Of the readings of one place the one counts that says most, wherever it stands.
    const auto gather = [&](const WordConcepts::Place& place, double rarity, double mostWeight,
                            const std::vector<std::vector<Posting>>& postings,
                            std::vector<double>& scores) {
        std::vector<std::uint32_t> touched;
        for (const std::string& reading : place.readings) {
            const auto found = m_concepts.find(reading);
            if (found == m_concepts.end()) {
                continue;
            }
            for (const Posting& posting : postings[found->second]) {
                double& best = bestOfPlace[posting.where];
                if (best == 0) {
                    touched.push_back(posting.where);
                }
                const auto weight = static_cast<double>(posting.weight);
                best = std::max(best, rarity * std::min(weight, mostWeight));
            }
        }
        for (const std::uint32_t where : touched) {
            scores[where] += place.weight * bestOfPlace[where];
            bestOfPlace[where] = 0;
        }
    };
    for (const WordConcepts::Place& place : m_words.read(question)) {
        const double rarity = rarityOf(place);
        square += place.weight * rarity * rarity;
        sum += place.weight * rarity;
        gather(place, rarity, rarity, m_inPhrasings, phrasingScores);
        gather(place, rarity, 1, m_inTopics, topicScores);
    }
    FoundTopics result;
    if (sum <= 0) {
        return result;
    }
    // The cosine between the question and each phrasing.
    std::vector<Nearest> nearest(m_topics.size());
    for (std::size_t i = 0; i < m_phrasings.size(); ++i) {
        if (phrasingScores[i] > 0) {
            nearest[m_phrasings[i].topic].take(phrasingScores[i]
                                               / (m_phrasings[i].length * std::sqrt(square)));
        }
    }
    for (std::uint32_t i = 0; i < m_topics.size(); ++i) {
        if (topicScores[i] > 0) {
            double score = byPhrasing * nearest[i].score() + byTopic * topicScores[i] / sum;
            score += nearest[i].first >= almostOne ? 1 : 0; // asked in a topic's own words
            result.topics.push_back({m_topics[i], score});
        }
    }
    const std::size_t kept = std::min(most, result.topics.size());
    std::partial_sort(result.topics.begin(),
                      result.topics.begin() + static_cast<std::ptrdiff_t>(kept),
                      result.topics.end(), [](const FoundTopic& a, const FoundTopic& b) {
                          return a.score != b.score ? a.score > b.score : a.topic->id < b.topic->id;
                      });
    result.topics.resize(kept);
    result.isSure = !result.topics.empty() && result.topics.front().score >= sureFrom;
    return result;
}

} // namespace loadwarden
