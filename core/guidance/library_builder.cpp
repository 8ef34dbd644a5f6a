#include "core/guidance/library_builder.h"

#include "core/exchange/toml_table.h"
#include "core/guidance/topic_place.h"
#include "core/guidance/topic_reader.h"

#include <algorithm>
#include <iterator>

namespace loadwarden {

namespace {

bool isLanguage(std::string_view word)
{
    return (word.size() == 2 || word.size() == 3)
           && std::ranges::all_of(word, [](char c) { return c >= 'a' && c <= 'z'; });
}

} // namespace

void LibraryBuilder::wrong(const GuidanceFile& file, int line, std::string field,
                           std::string message)
{
    m_errors.push_back({file.name, line, std::move(field), std::move(message)});
}

template <class Value>
Value* LibraryBuilder::taken(std::variant<Value, std::vector<TomlError>>& read)
{
    if (auto* errors = std::get_if<std::vector<TomlError>>(&read)) {
        std::move(errors->begin(), errors->end(), std::back_inserter(m_errors));
        return nullptr;
    }
    return &std::get<Value>(read);
}

void LibraryBuilder::read(const GuidanceFile& file)
{
    const std::string_view place = file.place;
    const std::size_t slash = place.find('/');
    const std::string_view folder = place.substr(0, std::min(slash, place.size()));
    const bool isDeeper =
        slash != std::string_view::npos && place.find('/', slash + 1) != std::string_view::npos;
    if (slash == std::string_view::npos || isDeeper) {
        wrong(file, 1, "",
              "stands where no guidance is looked for; topics stand in a folder by their language, "
              "as en/ID.toml, evidence in evidence/, words in words/");
    } else if (folder == "evidence" && place.ends_with(".json")) {
        readEvidenceFile(file);
    } else if (folder == "words" && place.ends_with(".toml")) {
        readWordsFile(file);
    } else if (!isLanguage(folder) || !place.ends_with(".toml")) {
        wrong(
            file, 1, "",
            "is neither a topic in a folder by its language, as en/ID.toml, nor evidence/NAME.json "
            "nor words/en.toml");
    } else if (place.ends_with(".note.toml")) {
        readNoteFile(file);
    } else {
        readTopicFile(file);
    }
}

void LibraryBuilder::readTopicFile(const GuidanceFile& file)
{
    m_topicsGiven.insert(topicIdOf(file.place));
    auto read = readTopic(file);
    Topic* topic = taken(read);
    if (topic == nullptr) {
        return;
    }
    const auto there = m_library.m_topics.find(topic->id);
    if (m_areOfFacility && there != m_library.m_topics.end()
        && !there->second.begin()->second.isOfFacility) {
        wrong(
            file, lineOf(file.text, "id"), "id",
            topic->id
                + " is a topic of the program, which a facility's does not replace; give this one "
                  "another id, or say what your house adds in "
                + topic->language + "/" + topic->id + ".note.toml");
        return;
    }
    topic->isOfFacility = m_areOfFacility;
    const std::string language = topic->language;
    const std::string id = topic->id;
    const auto [place, fresh] = m_library.m_topics[id].try_emplace(language, std::move(*topic));
    if (!fresh) {
        wrong(file, lineOf(file.text, "id"), "id",
              id + " is there already in this language; give it an id of its own");
        return;
    }
    m_topicFiles.emplace_back(&file, &place->second);
}

void LibraryBuilder::readNoteFile(const GuidanceFile& file)
{
    if (!m_areOfFacility) {
        wrong(file, 1, "", "is a note; only a facility writes notes, in a folder of its own");
        return;
    }
    auto read = readTopicNote(file);
    if (TopicNote* note = taken(read)) {
        const std::string language = note->language;
        const std::string id = note->topic;
        if (m_library.m_notes[id].try_emplace(language, std::move(*note)).second) {
            m_noteFiles.push_back(&file);
        } else {
            wrong(file, 1, "topic", "there is a note to " + id + " already");
        }
    }
}

void LibraryBuilder::readWordsFile(const GuidanceFile& file)
{
    if (!isLanguage(topicIdOf(file.place))) {
        wrong(file, 1, "", "must be called by its language, as words/en.toml");
        return;
    }
    auto read = readHouseWords(file.text, file.name);
    if (const HouseWords* words = taken(read)) {
        HouseWords& all = m_library.m_words[topicIdOf(file.place)];
        all.same.insert(all.same.end(), words->same.begin(), words->same.end());
        all.ordinary.insert(all.ordinary.end(), words->ordinary.begin(), words->ordinary.end());
    }
}

void LibraryBuilder::readEvidenceFile(const GuidanceFile& file)
{
    const std::string name = file.place.substr(file.place.find('/') + 1);
    if (!m_library.m_evidence.try_emplace(name, file.text).second) {
        m_evidenceRefused.insert(name);
        wrong(file, 1, "", "the program has evidence of this name; call yours otherwise");
        return;
    }
    m_evidenceFiles.push_back(&file);
}

} // namespace loadwarden
