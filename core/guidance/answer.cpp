#include "core/guidance/answer.h"

namespace loadwarden {

TopicAnswer answerTopic(const TopicLibrary& library, const Topic& topic, const Policy& policy,
                        Date today)
{
    TopicAnswer answer;
    answer.topic = &topic;
    answer.note = library.note(topic.id, topic.language);
    answer.isOverdue = (answer.note != nullptr ? answer.note->reviewBy : topic.reviewBy) < today;
    for (const TopicCase& topicCase : topic.cases) {
        // The library took no topic whose evidence is not there or cannot be read.
        const std::string* evidence = library.evidence(topicCase.evidence);
        auto decided =
            evidence == nullptr ? std::string() : answerCase(topicCase, *evidence, policy);
        if (auto* computed = std::get_if<CaseAnswer>(&decided)) {
            answer.policyDiffers |= !computed->differs.empty();
            answer.cases.push_back(std::move(*computed));
        }
    }
    for (const TopicCalculation& asked : topic.calculations) {
        auto computed = assure(asked.population, asked.dMinutes, asked.minutes);
        if (const auto* assurance = std::get_if<Assurance>(&computed)) {
            answer.calculations.push_back({asked.tells, *assurance});
        }
    }
    return answer;
}

} // namespace loadwarden
