#include "app/cli/guidance/ask_command.h"

#include "app/cli/arguments.h"
#include "app/cli/guidance/ask_output.h"
#include "app/cli/guidance/topic_files.h"
#include "app/cli/paragraph.h"
#include "core/quantities/clock.h"
#include "core/quantities/utf8.h"
#include "core/words/say.h"

#include <array>
#include <charconv>
#include <ostream>

namespace loadwarden::cli {

namespace {

constexpr std::size_t mostCharacters = 1000;
constexpr std::size_t mostNext = 2;

constexpr std::array options = {
    Option{"--json", false},      Option{"--list", false},     Option{"--topic", true},
    Option{"--topics", true},     Option{"--language", true},  Option{"--policy", true},
    Option{"--population", true}, Option{"--d-minutes", true}, Option{"--minutes", true}};

double numberFrom(const Arguments& given, std::string_view option)
{
    const std::string text = given.needed(option);
    double number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || end != text.data() + text.size()) {
        throw UsageError(std::string(option) + " needs a number, not " + oneLine(text));
    }
    return number;
}

int calculate(const Arguments& given, Streams streams)
{
    const auto result = assure(numberFrom(given, "--population"), numberFrom(given, "--d-minutes"),
                               numberFrom(given, "--minutes"));
    if (const auto* wrong = std::get_if<std::string>(&result)) {
        throw UsageError(*wrong);
    }
    const auto& assurance = std::get<Assurance>(result);
    if (given.has("--json")) {
        streams.out << jsonAssurance(assurance);
        return exitDone;
    }
    std::string out = plainAssurance(assurance);
    appendParagraph(
        out, 4, "",
        "By the log-linear model, which releases nothing; temperature in the chamber is "
        "not temperature inside the pack.",
        0);
    out += '\n';
    appendParagraph(out, 0, "", caution(), 0);
    streams.out << out;
    return exitDone;
}

std::string questionOf(const Arguments& given)
{
    std::string question;
    for (const std::string_view word : given.rest()) {
        question += (question.empty() ? "" : " ") + std::string(word);
    }
    if (question.find_first_not_of(" \t\r\n") == std::string::npos) {
        throw UsageError(
            "ask needs a question, as ask \"is a wet pack sterile\", or --topic ID, or "
            "--list");
    }
    if (utf8::characterCount(question) > mostCharacters) {
        throw UsageError("a question has at most " + std::to_string(mostCharacters)
                         + " characters; ask in fewer words");
    }
    return question;
}

int reply(const AskReply& said, const Arguments& given, const TopicLibrary& library,
          const Policy& policy, Streams streams)
{
    streams.out << (given.has("--json") ? jsonReply(said, policy) : plainReply(said, library));
    return said.answer == nullptr ? exitWithheld : exitDone;
}

} // namespace

int ask(std::span<const std::string_view> arguments, Streams streams)
{
    const Arguments given(arguments, options);
    if (given.has("--population") || given.has("--d-minutes") || given.has("--minutes")) {
        return calculate(given, streams);
    }
    const std::optional<Policy> policy = policyGiven(given, streams);
    if (!policy) {
        return exitBad;
    }
    const std::optional<TopicLibrary> library = topicsGiven(given, streams);
    if (!library) {
        return exitBad;
    }
    const std::string language = languageGiven(given);
    if (given.has("--list")) {
        const auto topics = library->topics(language);
        streams.out << (given.has("--json") ? jsonList(topics) : plainList(topics));
        return exitDone;
    }
    const Date today = Zone::find("UTC")->dateOf(SystemClock().now());
    AskReply said;
    const Topic* topic = nullptr;
    if (const auto id = given.value("--topic")) {
        topic = &topicNamed(*library, std::string(*id), language);
    } else {
        said.question = questionOf(given);
        const FoundTopics found = TopicSearch(*library, language).find(said.question, mostNext + 1);
        for (const FoundTopic& each : found.topics) {
            if (topic == nullptr && found.isSure) {
                topic = each.topic;
            } else {
                said.next.push_back(each.topic);
            }
        }
    }
    if (topic == nullptr) {
        return reply(said, given, *library, *policy, streams);
    }
    const TopicAnswer answer = answerTopic(*library, *topic, *policy, today);
    said.answer = &answer;
    return reply(said, given, *library, *policy, streams);
}

} // namespace loadwarden::cli
