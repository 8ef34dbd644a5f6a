#include "core/guidance/topic_search.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace loadwarden {

namespace {

// How much a word says of a topic by where it stands. A question is mostly found by the ways in
// which it may be asked; the answer's own words help where somebody asks quite otherwise.
constexpr double inPhrasing = 1.0;
constexpr double inShortAnswer = 0.8;
constexpr double inSteps = 0.3;
constexpr double inReasons = 0.3;
// A word that stands in a topic often says little more than one that stands there twice.
constexpr double saturation = 1.5;
// The nearest phrasing and the whole topic, in the score.
constexpr double byPhrasing = 0.55;
constexpr double byTopic = 0.45;
// Further readings of a mistyped word count less than the nearest one.
constexpr double furtherReading = 0.7;
// Below this the best topic shares too little with the question: found on the questions of
// tests/data/guidance, of which some are about nothing that a topic answers.
constexpr double sureFrom = 0.38;
constexpr double almostOne = 0.999;

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
        m_rarity.push_back(std::log(1 + count / (0.5 + with)));
    }
    for (std::uint32_t i = 0; i < m_phrasings.size(); ++i) {
        double square = 0;
        for (const Concept word : m_phrasings[i].concepts) {
            square += m_rarity[word] * m_rarity[word];
            m_inPhrasings[word].push_back({i, 1});
        }
        m_phrasings[i].length = std::sqrt(square);
    }
    m_said.clear();
}

FoundTopics TopicSearch::find(std::string_view question, std::size_t most) const
{
    // What nobody knows counts as rare: it says that the question is about something else.
    const double unknownRarity = std::log(1 + static_cast<double>(m_topics.size()));
    std::vector<double> phrasingScores(m_phrasings.size());
    std::vector<double> topicScores(m_topics.size());
    std::vector<double> bestOfPlace(std::max(m_phrasings.size(), m_topics.size()));
    double square = 0;
    double sum = 0;
    // Of the readings of one place the one counts that says most, wherever it stands.
    const auto gather = [&](const std::vector<std::string>& readings,
                            const std::vector<std::vector<Posting>>& postings,
                            std::vector<double>& scores, auto worth) {
        std::vector<std::uint32_t> touched;
        for (std::size_t i = 0; i < readings.size(); ++i) {
            const auto found = m_concepts.find(readings[i]);
            if (found == m_concepts.end()) {
                continue;
            }
            const double sure = i == 0 ? 1 : furtherReading;
            for (const Posting& posting : postings[found->second]) {
                double& best = bestOfPlace[posting.where];
                if (best == 0) {
                    touched.push_back(posting.where);
                }
                best = std::max(best, sure * worth(m_rarity[found->second], posting));
            }
        }
        for (const std::uint32_t where : touched) {
            scores[where] += bestOfPlace[where];
            bestOfPlace[where] = 0;
        }
    };
    for (const auto& readings : m_words.read(question)) {
        double rarity = unknownRarity;
        if (const auto found = m_concepts.find(readings.front()); found != m_concepts.end()) {
            rarity = m_rarity[found->second];
        }
        square += rarity * rarity;
        sum += rarity;
        gather(readings, m_inPhrasings, phrasingScores,
               [](double rare, const Posting&) { return rare * rare; });
        gather(readings, m_inTopics, topicScores, [](double rare, const Posting& posting) {
            return rare * static_cast<double>(posting.weight);
        });
    }
    FoundTopics result;
    if (sum <= 0) {
        return result;
    }
    // The cosine between the question and the nearest phrasing of each topic.
    std::vector<double> nearest(m_topics.size());
    for (std::size_t i = 0; i < m_phrasings.size(); ++i) {
        const double cosine = phrasingScores[i] / (m_phrasings[i].length * std::sqrt(square));
        nearest[m_phrasings[i].topic] = std::max(nearest[m_phrasings[i].topic], cosine);
    }
    for (std::uint32_t i = 0; i < m_topics.size(); ++i) {
        if (topicScores[i] > 0) {
            double score = byPhrasing * nearest[i] + byTopic * topicScores[i] / sum;
            score += nearest[i] >= almostOne ? 1 : 0; // asked in a topic's own words
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
