#include "ui/questions/guide.h"

#include "core/desk/registers.h"
#include "core/exchange/policy_reader.h"

#include <utility>

namespace loadwarden::ui {
namespace {

constexpr std::size_t mostTopics = 4;

} // namespace

Guide::Guide(std::string language)
    : m_language(std::move(language)),
      m_library(TopicLibrary::builtIn()),
      m_search(m_library, m_language)
{
}

FloorAnswer Guide::ask(Office& office, const std::string& asked) const
{
    FloorAnswer answer;
    answer.asked = asked;
    answer.mayBeLabel = asked.find_first_of(" \t") == std::string::npos
                        && asked.find_first_of("0123456789") != std::string::npos;
    {
        ReadSnapshot snapshot(office.connection());
        answer.tray = trayOf(snapshot, office.entries(), asked, office.now());
    }
    const FoundTopics found = m_search.find(asked, mostTopics);
    for (const FoundTopic& each : found.topics) {
        answer.topics.push_back(each.topic);
    }
    answer.isSure = found.isSure;
    return answer;
}

TopicAnswer Guide::answer(Office& office, const Topic& topic) const
{
    Policy policy = defaultPolicy();
    ReadSnapshot snapshot(office.connection());
    const Registers registers = registersOf(snapshot, office.zone(), office.now());
    if (!registers.policies.empty()) {
        auto read = readPolicy(registers.policies.front().recorded.toml, "policy");
        if (auto* const known = std::get_if<Policy>(&read)) {
            policy = std::move(*known);
        }
    }
    return answerTopic(m_library, topic, policy, registers.day);
}

} // namespace loadwarden::ui
