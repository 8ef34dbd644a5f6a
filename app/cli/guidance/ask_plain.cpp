#include "app/cli/guidance/ask_output.h"
#include "app/cli/paragraph.h"
#include "core/words/say.h"

#include <array>
#include <cmath>
#include <cstdio>

namespace loadwarden::cli {

namespace {

/// As few digits as tell it: 0.95, 1e-06.
std::string numberText(double value)
{
    std::array<char, 32> text{};
    const int length = std::snprintf(text.data(), text.size(), "%.3g", value);
    return {text.data(), static_cast<std::size_t>(length)};
}

std::string resultText(const CaseAnswer& answer)
{
    const std::string decided =
        std::visit([](auto result) { return say(result); }, decidedOn(answer));
    const std::string& item = answer.topicCase->item;
    return item.empty() ? decided : decided + " (item " + item + ")";
}

void appendCases(std::string& out, const TopicAnswer& answer)
{
    if (answer.cases.empty()) {
        return;
    }
    out += "\n  What the rules decide, on small examples:\n";
    for (const CaseAnswer& each : answer.cases) {
        appendParagraph(out, 2, "- ",
                        each.topicCase->tells + " " + resultText(each) + " [rule "
                            + each.topicCase->rule + "]",
                        2);
        for (const Finding& finding : each.findings) {
            const Said said = say(finding, HouseStyle{.zone = each.zone});
            appendParagraph(out, 4, "", said.says + " [" + std::string(textOf(finding.key)) + "]",
                            0);
            if (!said.next.empty()) {
                appendParagraph(out, 4, "Next: ", said.next, 6);
            }
        }
        if (each.findings.empty()) {
            appendParagraph(out, 4, "", "Nothing speaks against it.", 0);
        }
    }
    if (answer.policyDiffers) {
        appendParagraph(out, 2, "",
                        "The policy given here decides otherwise than this answer says. Follow the "
                        "decision, and ask your lead.",
                        0);
    }
}

void appendCalculations(std::string& out, const TopicAnswer& answer)
{
    if (answer.calculations.empty()) {
        return;
    }
    out += "\n  Computed:\n";
    for (const CalculationAnswer& row : answer.calculations) {
        appendParagraph(out, 2, "- ", row.tells + ".", 2);
        out += plainAssurance(row.assurance);
    }
}

void appendTopic(std::string& out, const TopicAnswer& answer, const TopicLibrary& library)
{
    const Topic& topic = *answer.topic;
    appendParagraph(
        out, 0, "",
        topic.question + " [" + topic.id + (topic.isOfFacility ? ", of the house" : "") + "]", 0);
    out += '\n';
    appendParagraph(out, 2, "", topic.shortAnswer, 0);
    out += "\n  What to do now:\n";
    for (std::size_t i = 0; i < topic.doNow.size(); ++i) {
        appendParagraph(out, 2, std::to_string(i + 1) + ". ", topic.doNow[i], 3);
    }
    out += '\n';
    appendParagraph(out, 2, "Why: ", topic.why, 2);
    appendCases(out, answer);
    appendCalculations(out, answer);
    if (answer.note != nullptr) {
        out += '\n';
        appendParagraph(out, 2, "This house adds: ", answer.note->note, 2);
    }
    out += '\n';
    appendParagraph(out, 2, "Caution: ", topic.caution, 2);
    out += "\n  Sources:\n";
    for (const TopicSource& source : topic.sources) {
        const bool isPractice = source.trust == SourceTrust::commonPractice;
        appendParagraph(
            out, 2, "- ",
            source.text + (isPractice ? "" : " (" + std::string(textOf(source.trust)) + ")"), 2);
    }
    const std::string& owner = answer.note != nullptr ? answer.note->owner : topic.owner;
    const Date review = answer.note != nullptr ? answer.note->reviewBy : topic.reviewBy;
    out += '\n';
    appendParagraph(out, 2, "Owner: ",
                    owner + ". Review by " + formatDate(review)
                        + (answer.isOverdue
                               ? ": that day is over; ask the owner whether this still "
                                 "holds."
                               : "."),
                    2);
    out += "\n  Related:\n";
    for (const std::string& id : topic.related) {
        if (const Topic* other = library.find(id, topic.language)) {
            appendParagraph(out, 2, "- ", other->question + " [" + id + "]", 2);
        }
    }
}

} // namespace

std::string plainReply(const AskReply& reply, const TopicLibrary& library)
{
    std::string out;
    if (reply.answer != nullptr) {
        appendTopic(out, *reply.answer, library);
    } else if (reply.next.empty()) {
        appendParagraph(out, 0, "",
                        "No topic has any of these words. Ask your lead, or try other words; ask "
                        "--list shows all topics.",
                        0);
    } else {
        appendParagraph(out, 0, "",
                        "No topic answers this well. Ask your lead, or say it in other words; the "
                        "nearest topics are below.",
                        0);
    }
    if (!reply.next.empty()) {
        out += reply.answer == nullptr ? "\n" : "\nOr did you mean:\n";
        out += plainList(reply.next);
    }
    out += '\n';
    appendParagraph(out, 0, "", caution(), 0);
    return out;
}

std::string plainList(const std::vector<const Topic*>& topics)
{
    std::string out;
    for (const Topic* topic : topics) {
        appendParagraph(out, 0, "- ",
                        topic->question + " [" + topic->id
                            + (topic->isOfFacility ? ", of the house" : "") + "]",
                        2);
    }
    return out;
}

std::string plainAssurance(const Assurance& assurance)
{
    std::string out;
    appendParagraph(out, 4, "",
                    numberText(assurance.population) + " organisms, D "
                        + numberText(assurance.dMinutes) + " min, " + numberText(assurance.minutes)
                        + " min at that temperature: log reduction "
                        + numberText(assurance.logReduction) + ", expected survivors "
                        + numberText(assurance.survivors) + ", chance of at least one "
                        + numberText(assurance.chanceOfAny) + ", chance of none "
                        + numberText(assurance.chanceOfNone) + ". One in a million would need "
                        + numberText(assurance.minutesAsked) + " min.",
                    0);
    return out;
}

} // namespace loadwarden::cli
