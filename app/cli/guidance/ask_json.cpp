#include "app/cli/guidance/ask_output.h"
#include "core/exchange/decision_writer.h"
#include "core/words/say.h"

#include <nlohmann/json.hpp>

namespace loadwarden::cli {

namespace {

using Json = nlohmann::ordered_json;

std::string lineOf(const Json& json)
{
    return json.dump(-1, ' ', false, Json::error_handler_t::replace) + '\n';
}

Json titleOf(const Topic& topic)
{
    return {{"id", topic.id},
            {"language", topic.language},
            {"ofFacility", topic.isOfFacility},
            {"question", topic.question}};
}

Json caseOf(const CaseAnswer& answer, const Policy& policy)
{
    const FindingSay sentences = [&](const Finding& finding) {
        Said said = say(finding, HouseStyle{.zone = answer.zone});
        return FindingText{std::move(said.says), std::move(said.next), std::move(said.source)};
    };
    const DecisionBasis basis{answer.asOf, policy};
    std::string decided;
    if (const auto* judgement = std::get_if<TestJudgement>(&answer.decision)) {
        appendJudgement(decided, *judgement, basis, sentences);
    } else {
        appendDecision(decided, std::get<Decision>(answer.decision), basis, sentences);
    }
    Json keys = Json::array();
    for (const Finding& finding : answer.findings) {
        keys.push_back(textOf(finding.key));
    }
    Json json = {{"tells", answer.topicCase->tells},
                 {"rule", answer.topicCase->rule},
                 {"evidence", answer.topicCase->evidence},
                 {"result", answer.result},
                 {"keys", std::move(keys)},
                 {"asTheAnswerSays", answer.differs.empty()},
                 {"decision", Json::parse(decided)}};
    if (!answer.topicCase->item.empty()) {
        json["item"] = answer.topicCase->item;
    }
    return json;
}

Json assuranceOf(const Assurance& assurance)
{
    return {{"population", assurance.population},
            {"dMinutes", assurance.dMinutes},
            {"minutes", assurance.minutes},
            {"logReduction", assurance.logReduction},
            {"survivors", assurance.survivors},
            {"chanceOfAny", assurance.chanceOfAny},
            {"chanceOfNone", assurance.chanceOfNone},
            {"minutesForOneInAMillion", assurance.minutesAsked}};
}

Json topicOf(const TopicAnswer& answer, const Policy& policy)
{
    const Topic& topic = *answer.topic;
    Json json = titleOf(topic);
    json["shortAnswer"] = topic.shortAnswer;
    json["doNow"] = topic.doNow;
    json["why"] = topic.why;
    json["cases"] = Json::array();
    for (const CaseAnswer& each : answer.cases) {
        json["cases"].push_back(caseOf(each, policy));
    }
    json["policyDiffers"] = answer.policyDiffers;
    json["calculations"] = Json::array();
    for (const CalculationAnswer& each : answer.calculations) {
        Json row = assuranceOf(each.assurance);
        row["tells"] = each.tells;
        json["calculations"].push_back(std::move(row));
    }
    if (answer.note != nullptr) {
        json["note"] = answer.note->note;
    }
    json["caution"] = topic.caution;
    json["sources"] = Json::array();
    for (const TopicSource& source : topic.sources) {
        json["sources"].push_back({{"text", source.text}, {"confidence", textOf(source.trust)}});
    }
    json["owner"] = answer.note != nullptr ? answer.note->owner : topic.owner;
    json["reviewBy"] = formatDate(answer.note != nullptr ? answer.note->reviewBy : topic.reviewBy);
    json["overdue"] = answer.isOverdue;
    json["related"] = topic.related;
    return json;
}

Json listOf(const std::vector<const Topic*>& topics)
{
    Json list = Json::array();
    for (const Topic* topic : topics) {
        list.push_back(titleOf(*topic));
    }
    return list;
}

} // namespace

std::string jsonReply(const AskReply& reply, const Policy& policy)
{
    Json json = Json::object();
    if (!reply.question.empty()) {
        json["question"] = reply.question;
    }
    json["sure"] = reply.answer != nullptr;
    json["topic"] = reply.answer == nullptr ? Json() : topicOf(*reply.answer, policy);
    json["next"] = listOf(reply.next);
    json["caution"] = caution();
    return lineOf(json);
}

std::string jsonList(const std::vector<const Topic*>& topics)
{
    return lineOf({{"topics", listOf(topics)}});
}

std::string jsonAssurance(const Assurance& assurance)
{
    Json json = assuranceOf(assurance);
    json["caution"] = caution();
    return lineOf(json);
}

} // namespace loadwarden::cli
