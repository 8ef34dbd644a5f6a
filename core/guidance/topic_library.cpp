#include "core/guidance/topic_library.h"

#include "core/guidance/library_builder.h"

#include <stdexcept>

namespace loadwarden {

namespace {

/// Of what there is in several languages the one that is asked for, else English, else the first.
template <class Map>
auto* inLanguage(const Map& byLanguage, std::string_view language)
{
    auto found = byLanguage.find(language);
    if (found == byLanguage.end()) {
        found = byLanguage.find(fallbackLanguage);
    }
    if (found == byLanguage.end()) {
        found = byLanguage.begin();
    }
    return &found->second; // never empty
}

} // namespace

TopicLibrary TopicLibrary::builtIn()
{
    TopicLibrary library;
    const auto errors = library.add(shippedGuidance(), false);
    if (!errors.empty()) {
        throw std::logic_error("a stored topic is not valid: " + textOf(errors.front()));
    }
    return library;
}

std::vector<TomlError> TopicLibrary::addFolder(const std::filesystem::path& folder)
{
    std::vector<TomlError> errors;
    const std::vector<GuidanceFile> files = guidanceIn(folder, errors);
    if (!errors.empty()) {
        return errors;
    }
    return add(files, true);
}

std::vector<TomlError> TopicLibrary::add(const std::vector<GuidanceFile>& files, bool areOfFacility)
{
    TopicLibrary extended = *this;
    LibraryBuilder builder(extended, areOfFacility);
    for (const GuidanceFile& file : files) {
        builder.read(file);
    }
    std::vector<TomlError> errors = std::move(builder).finish();
    if (errors.empty()) {
        *this = std::move(extended);
    }
    return errors;
}

std::vector<TomlError> TopicLibrary::addWhatIsRight(const std::vector<GuidanceFile>& files)
{
    LibraryBuilder builder(*this, true);
    for (const GuidanceFile& file : files) {
        builder.read(file);
    }
    return std::move(builder).finishWithoutFaulty();
}

const Topic* TopicLibrary::find(std::string_view id, std::string_view language) const
{
    const auto found = m_topics.find(id);
    return found == m_topics.end() ? nullptr : inLanguage(found->second, language);
}

std::vector<const Topic*> TopicLibrary::topics(std::string_view language) const
{
    std::vector<const Topic*> topics;
    topics.reserve(m_topics.size());
    for (const auto& [id, byLanguage] : m_topics) {
        topics.push_back(inLanguage(byLanguage, language));
    }
    return topics;
}

const TopicNote* TopicLibrary::note(std::string_view id, std::string_view language) const
{
    const auto found = m_notes.find(id);
    return found == m_notes.end() ? nullptr : inLanguage(found->second, language);
}

HouseWords TopicLibrary::words(std::string_view language) const
{
    const auto found = m_words.find(language);
    return found == m_words.end() ? HouseWords{} : found->second;
}

const std::string* TopicLibrary::evidence(std::string_view name) const
{
    const auto found = m_evidence.find(name);
    return found == m_evidence.end() ? nullptr : &found->second;
}

std::vector<std::string> TopicLibrary::languages() const
{
    std::map<std::string, bool, std::less<>> languages;
    for (const auto& [id, byLanguage] : m_topics) {
        for (const auto& [language, topic] : byLanguage) {
            languages[language] = true;
        }
    }
    std::vector<std::string> names;
    for (const auto& [language, there] : languages) {
        names.push_back(language);
    }
    return names;
}

} // namespace loadwarden
