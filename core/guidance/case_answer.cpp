#include "core/guidance/case_answer.h"

#include "core/exchange/evidence_reader.h"
#include "core/exchange/specification_library.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"

#include <algorithm>

namespace loadwarden {

namespace {

const SpecificationLibrary& specifications()
{
    static const SpecificationLibrary stored = SpecificationLibrary::builtIn();
    return stored;
}

/// The verdict of the item that the case asks about, or of the load; empty: there is no such item.
std::string resultOf(const Decision& decision, const std::string& item)
{
    if (item.empty()) {
        return std::string(textOf(decision.verdict));
    }
    const auto found = std::ranges::find(decision.items, item, &ItemDecision::label);
    return found == decision.items.end() ? "" : std::string(textOf(found->verdict));
}

/// Whether a finding is of what the case asks about: of its item, or of the load.
bool isAskedAbout(const Finding& finding, const Decision* decision, const std::string& item)
{
    if (item.empty() || decision == nullptr || finding.item < 0) {
        return true;
    }
    return decision->items[static_cast<std::size_t>(finding.item)].label == item;
}

std::string differenceOf(const CaseAnswer& answer)
{
    const TopicCase& asked = *answer.topicCase;
    if (answer.result.empty()) {
        return "there is no item " + asked.item;
    }
    std::string text;
    if (answer.result != asked.expected) {
        text = "the rules say " + answer.result + ", not " + asked.expected;
    }
    for (const Key key : asked.keys) {
        if (std::ranges::find(answer.findings, key, &Finding::key) == answer.findings.end()) {
            text += (text.empty() ? "the rules do not say " : "; they do not say ")
                    + std::string(textOf(key));
        }
    }
    return text;
}

} // namespace

std::variant<Verdict, TestResult> decidedOn(const CaseAnswer& answer)
{
    if (const auto* const judged = std::get_if<TestJudgement>(&answer.decision)) {
        return judged->result;
    }
    const auto& decision = std::get<Decision>(answer.decision);
    const auto own =
        std::ranges::find(decision.items, answer.topicCase->item, &ItemDecision::label);
    const bool isOfItem = !answer.topicCase->item.empty() && own != decision.items.end();
    return isOfItem ? own->verdict : decision.verdict;
}

std::variant<CaseAnswer, std::string> answerCase(const TopicCase& topicCase,
                                                 std::string_view evidence, const Policy& policy)
{
    auto read = readEvidence(evidence, topicCase.evidence, 1, &specifications());
    if (const auto* error = std::get_if<ReadError>(&read)) {
        const ReadProblem& first = error->problems.front();
        return "nothing can be decided: line " + std::to_string(first.place.line) + ", "
               + first.pointer + ": " + first.message;
    }
    auto& record = std::get<EvidenceRecord>(read);
    if (!record.decideAt) {
        return "nothing can be decided: it states no decideAt";
    }
    CaseAnswer answer;
    answer.topicCase = &topicCase;
    answer.asOf = *record.decideAt;
    answer.zone = record.zone;
    const Evidence assembled = assemble(std::move(record));
    const std::vector<Finding>* findings = nullptr;
    const Decision* decision = nullptr;
    if (assembled.record.test) {
        answer.decision = judgeTest(assembled, policy, answer.asOf);
        const auto& judgement = std::get<TestJudgement>(answer.decision);
        answer.result = textOf(judgement.result);
        findings = &judgement.findings;
    } else {
        answer.decision = decide(assembled, policy, answer.asOf);
        decision = &std::get<Decision>(answer.decision);
        answer.result = resultOf(*decision, topicCase.item);
        findings = &decision->findings;
    }
    for (const Finding& finding : *findings) {
        if (std::ranges::find(topicCase.keys, finding.key) != topicCase.keys.end()
            && isAskedAbout(finding, decision, topicCase.item)) {
            answer.findings.push_back(finding);
        }
    }
    answer.differs = differenceOf(answer);
    return answer;
}

} // namespace loadwarden
