#include "core/exchange/policy_reader.h"
#include "core/exchange/toml_table.h"
#include "core/guidance/case_answer.h"
#include "core/guidance/library_builder.h"
#include "core/guidance/topic_place.h"

#include <algorithm>

// What the files of a library have to say to each other.

namespace loadwarden {

namespace {

/// The line on which a text stands, for what is wrong with a file that reads well.
int lineOfText(std::string_view file, std::string_view text)
{
    const std::string quoted = '"' + std::string(text) + '"';
    const std::size_t at = file.find(quoted);
    if (at == std::string_view::npos) {
        return 1;
    }
    return 1
           + static_cast<int>(std::count(file.begin(), file.begin() + static_cast<long>(at), '\n'));
}

} // namespace

void LibraryBuilder::checkTopic(const GuidanceFile& file, const Topic& topic)
{
    for (const std::string& other : topic.related) {
        if (!m_library.m_topics.contains(other) && !m_topicsGiven.contains(other)) {
            wrong(file, lineOfText(file.text, other), "related",
                  "there is no topic \"" + other + "\"");
        }
    }
    std::vector<std::string> phrasings = topic.alsoAsked;
    phrasings.push_back(topic.question);
    for (const std::string& phrasing : phrasings) {
        const auto [place, fresh] =
            m_phrasings.try_emplace(topic.language + ' ' + phrasing, topic.id);
        if (!fresh) {
            wrong(file, lineOfText(file.text, phrasing), "also_asked",
                  "\"" + phrasing + "\" is asked of the topic " + place->second
                      + " too; a question has one answer");
        }
    }
    checkCases(file, topic);
}

void LibraryBuilder::checkCases(const GuidanceFile& file, const Topic& topic)
{
    for (const TopicCase& topicCase : topic.cases) {
        if (m_evidenceRefused.contains(topicCase.evidence)) {
            wrong(file, topicCase.line, "case.evidence",
                  "the facility's evidence/" + topicCase.evidence + " is not used");
            continue;
        }
        const std::string* evidence = m_library.evidence(topicCase.evidence);
        if (evidence == nullptr) {
            wrong(file, topicCase.line, "case.evidence",
                  "there is no file evidence/" + topicCase.evidence);
            continue;
        }
        const auto answer = answerCase(topicCase, *evidence, defaultPolicy());
        const auto* computed = std::get_if<CaseAnswer>(&answer);
        const std::string problem =
            computed == nullptr ? std::get<std::string>(answer) : computed->differs;
        if (!problem.empty()) {
            wrong(file, topicCase.line, "case",
                  "by evidence/" + topicCase.evidence + " " + problem);
        }
    }
}

void LibraryBuilder::checkNote(const GuidanceFile& file)
{
    const std::string id = topicIdOf(file.place);
    if (!m_library.m_topics.contains(id) && !m_topicsGiven.contains(id)) {
        wrong(file, lineOf(file.text, "topic"), "topic", "there is no topic \"" + id + "\"");
    }
}

void LibraryBuilder::checkEvidenceIsUsed(const GuidanceFile& file)
{
    const std::string name = file.place.substr(file.place.find('/') + 1);
    for (const auto& [id, byLanguage] : m_library.m_topics) {
        for (const auto& [language, topic] : byLanguage) {
            if (std::ranges::find(topic.cases, name, &TopicCase::evidence) != topic.cases.end()) {
                return;
            }
        }
    }
    wrong(file, 1, "", "is used by no topic");
}

void LibraryBuilder::checkAll()
{
    for (const auto& [id, byLanguage] : m_library.m_topics) {
        for (const auto& [language, topic] : byLanguage) {
            if (topic.isOfFacility == m_areOfFacility) {
                continue; // its own file is looked at below
            }
            m_phrasings.try_emplace(language + ' ' + topic.question, id);
            for (const std::string& phrasing : topic.alsoAsked) {
                m_phrasings.try_emplace(language + ' ' + phrasing, id);
            }
        }
    }
    for (const auto& [file, topic] : m_topicFiles) {
        checkTopic(*file, *topic);
    }
    for (const GuidanceFile* file : m_noteFiles) {
        checkNote(*file);
    }
    for (const GuidanceFile* file : m_evidenceFiles) {
        if (m_errors.empty()) { // else its topic may be one that could not be read
            checkEvidenceIsUsed(*file);
        }
    }
    std::stable_sort(m_errors.begin(), m_errors.end(), [](const TomlError& a, const TomlError& b) {
        return a.file != b.file ? a.file < b.file : a.line < b.line;
    });
}

bool LibraryBuilder::isFaulty(const GuidanceFile& file) const
{
    return std::ranges::find(m_errors, file.name, &TomlError::file) != m_errors.end();
}

void LibraryBuilder::takeOutFaulty()
{
    const auto takeOut = [](auto& things, const std::string& id, const std::string& language) {
        const auto found = things.find(id);
        if (found != things.end()) {
            found->second.erase(language);
            if (found->second.empty()) {
                things.erase(found);
            }
        }
    };
    for (const auto& [file, topic] : m_topicFiles) {
        if (isFaulty(*file)) {
            takeOut(m_library.m_topics, topicIdOf(file->place), languageOf(file->place));
        }
    }
    for (const GuidanceFile* file : m_noteFiles) {
        if (isFaulty(*file)) {
            takeOut(m_library.m_notes, topicIdOf(file->place), languageOf(file->place));
        }
    }
}

std::vector<TomlError> LibraryBuilder::finish() &&
{
    checkAll();
    return std::move(m_errors);
}

std::vector<TomlError> LibraryBuilder::finishWithoutFaulty() &&
{
    checkAll();
    takeOutFaulty();
    return std::move(m_errors);
}

} // namespace loadwarden
