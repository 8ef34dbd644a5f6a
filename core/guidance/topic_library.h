#pragma once

#include "core/exchange/toml_error.h"
#include "core/guidance/guidance_files.h"
#include "core/guidance/house_words.h"
#include "core/guidance/topic.h"

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// English: what is not there in another language is given in it.
inline constexpr std::string_view fallbackLanguage = "en";

/// The topics of the program and what a facility added in a folder of its own. Nothing of the
/// program is ever overwritten: a facility's topic that bears the id of one of these is refused,
/// and what the house has to say to it stands in a note beside it.
class TopicLibrary {
public:
    /// What resources/guidance holds.
    static TopicLibrary builtIn();

    /// Adds the files of a facility's folder: LANGUAGE/ID.toml, LANGUAGE/ID.note.toml,
    /// words/LANGUAGE.toml, evidence/NAME.json. All that is wrong in any of them comes back, by
    /// file and line, and then nothing was added.
    std::vector<TomlError> addFolder(const std::filesystem::path& folder);

    /// The same of files that have been read; `areOfFacility` false: as the program's own.
    std::vector<TomlError> add(const std::vector<GuidanceFile>& files, bool areOfFacility);

    /// Adds a facility's files that are right; one in which something is wrong keeps none of the
    /// others away, but is left out with all that stands in it. What is wrong comes back. Topics
    /// may then name related ones that are not there.
    std::vector<TomlError> addWhatIsRight(const std::vector<GuidanceFile>& files);

    /// In that language, else in English, else in any; nullptr when there is no such topic. Valid
    /// until the library changes.
    [[nodiscard]] const Topic* find(std::string_view id, std::string_view language) const;

    /// Every topic once, in that language where it is there, by id.
    [[nodiscard]] std::vector<const Topic*> topics(std::string_view language) const;

    /// In that language, else in English; nullptr: none.
    [[nodiscard]] const TopicNote* note(std::string_view id, std::string_view language) const;

    /// Of that language, of the program and of the house.
    [[nodiscard]] HouseWords words(std::string_view language) const;

    /// The text of a file of evidence; nullptr: there is none.
    [[nodiscard]] const std::string* evidence(std::string_view name) const;

    /// All languages in which there is a topic, by the alphabet.
    [[nodiscard]] std::vector<std::string> languages() const;

private:
    friend class LibraryBuilder;
    template <class Value>
    using ByLanguage = std::map<std::string, Value, std::less<>>;

    std::map<std::string, ByLanguage<Topic>, std::less<>> m_topics;
    std::map<std::string, ByLanguage<TopicNote>, std::less<>> m_notes;
    ByLanguage<HouseWords> m_words;
    std::map<std::string, std::string, std::less<>> m_evidence;
};

} // namespace loadwarden
