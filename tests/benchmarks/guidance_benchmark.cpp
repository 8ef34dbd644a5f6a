// What a question costs with 1,000 topics, made of the program's own. Figures of one run on one
// machine; nothing is judged here. The aim: a question answered, with what the rules decide, within
// 20 ms. Making the search anew, once a start, is shown beside it.

#include "core/exchange/policy_reader.h"
#include "core/guidance/answer.h"
#include "core/guidance/topic_search.h"

#include <benchmark/benchmark.h>

#include <array>
#include <iostream>
#include <random>
#include <stdexcept>

namespace loadwarden {
namespace {

constexpr std::size_t wanted = 1'000;

std::string quoted(const std::string& text)
{
    std::string out = "\"";
    for (const char c : text) {
        out += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
    }
    return out + "\"";
}

/// A topic's file without cases, each question of it said with two more words.
GuidanceFile copyOf(const Topic& topic, std::size_t number,
                    const std::vector<std::string>& moreWords, std::mt19937& random)
{
    const std::string id = topic.id + "-" + std::to_string(number);
    const auto asked = [&](const std::string& question) {
        return quoted(question + " " + moreWords[random() % moreWords.size()] + " "
                      + moreWords[random() % moreWords.size()] + " " + std::to_string(number));
    };
    std::string text = "topic_version = 1\nid = " + quoted(id) + "\nquestion = "
                       + asked(topic.question) + "\nalso_asked = [";
    for (const std::string& phrasing : topic.alsoAsked) {
        text += asked(phrasing) + ", ";
    }
    text += "]\nshort_answer = " + quoted(topic.shortAnswer) + "\ndo_now = [";
    for (const std::string& step : topic.doNow) {
        text += quoted(step) + ", ";
    }
    text += "]\nwhy = " + quoted(topic.why) + "\ncaution = " + quoted(topic.caution)
            + "\nowner = \"x\"\nreview_by = 2031-03-04\nrelated = [" + quoted(topic.id)
            + "]\n[[source]]\ntext = " + quoted(std::string(noSource))
            + "\nconfidence = \"common-practice\"\n";
    return {"en/" + id + ".toml", id, text};
}

const TopicLibrary& library()
{
    static const TopicLibrary made = [] {
        TopicLibrary all = TopicLibrary::builtIn();
        const auto own = all.topics("en");
        std::vector<std::string> words;
        for (const Topic* topic : own) {
            for (std::string& word : wordsOf(topic->why)) {
                words.push_back(std::move(word));
            }
        }
        std::mt19937 random(1);
        std::vector<GuidanceFile> files;
        for (std::size_t i = 0; own.size() + files.size() < wanted; ++i) {
            files.push_back(copyOf(*own[i % own.size()], i, words, random));
        }
        const auto errors = all.add(files, true);
        if (!errors.empty()) {
            throw std::logic_error(textOf(errors.front()));
        }
        return all;
    }();
    return made;
}

constexpr std::array questions = {
    "can a wet pack be used when it has dried",
    "the surgeon wants the implant before its biological indicator is read, who may release it",
    "bowi dick shet not unifrom wat do we do",
    "we forgot the bowie dick and three loads are out already, must all of them come back",
};

void search(benchmark::State& state)
{
    const TopicSearch made(library(), "en");
    const std::string_view question = questions[static_cast<std::size_t>(state.range(0))];
    for (auto each : state) {
        benchmark::DoNotOptimize(made.find(question, 3));
    }
    state.counters["topics"] = static_cast<double>(library().topics("en").size());
}
BENCHMARK(search)->DenseRange(0, questions.size() - 1)->Unit(benchmark::kMicrosecond);

/// Found, and answered with its cases decided.
void answer(benchmark::State& state)
{
    const TopicSearch made(library(), "en");
    const std::string_view question = questions[static_cast<std::size_t>(state.range(0))];
    const Date day = *parseDate("2027-01-01");
    for (auto each : state) {
        const FoundTopics found = made.find(question, 3);
        // The copies have no cases: their original is what costs.
        const std::string& id = found.topics.front().topic->related.front();
        const Topic* topic = found.topics.front().topic->isOfFacility
                                 ? library().find(id, "en")
                                 : found.topics.front().topic;
        benchmark::DoNotOptimize(answerTopic(library(), *topic, defaultPolicy(), day));
    }
}
BENCHMARK(answer)->DenseRange(0, questions.size() - 1)->Unit(benchmark::kMicrosecond);

void makeSearch(benchmark::State& state)
{
    for (auto each : state) {
        benchmark::DoNotOptimize(TopicSearch(library(), "en"));
    }
}
BENCHMARK(makeSearch)->Unit(benchmark::kMillisecond);

void readShippedTopics(benchmark::State& state)
{
    for (auto each : state) {
        benchmark::DoNotOptimize(TopicLibrary::builtIn());
    }
}
BENCHMARK(readShippedTopics)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace loadwarden

BENCHMARK_MAIN();
