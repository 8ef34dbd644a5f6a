#pragma once

#include "core/guidance/topic_library.h"

#include <map>
#include <set>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace loadwarden {

/// Reads files into a library and looks at what each has to say to the others. For TopicLibrary.
class LibraryBuilder {
public:
    LibraryBuilder(TopicLibrary& library, bool areOfFacility)
        : m_library(library), m_areOfFacility(areOfFacility)
    {
    }

    void read(const GuidanceFile& file);

    /// All that was wrong, in the order of the files and lines.
    std::vector<TomlError> finish() &&;
    /// The same; and what stands in a file in which something is wrong is taken out again.
    std::vector<TomlError> finishWithoutFaulty() &&;

private:
    void readTopicFile(const GuidanceFile& file);
    void readNoteFile(const GuidanceFile& file);
    void readWordsFile(const GuidanceFile& file);
    void readEvidenceFile(const GuidanceFile& file);

    void checkTopic(const GuidanceFile& file, const Topic& topic);
    void checkCases(const GuidanceFile& file, const Topic& topic);
    void checkNote(const GuidanceFile& file);
    void checkEvidenceIsUsed(const GuidanceFile& file);
    void checkAll();
    void takeOutFaulty();
    [[nodiscard]] bool isFaulty(const GuidanceFile& file) const;

    void wrong(const GuidanceFile& file, int line, std::string field, std::string message);

    /// Takes what was read, or the errors.
    template <class Value>
    Value* taken(std::variant<Value, std::vector<TomlError>>& read);

    TopicLibrary& m_library;
    bool m_areOfFacility;
    std::vector<std::pair<const GuidanceFile*, const Topic*>> m_topicFiles; ///< in the library
    std::vector<const GuidanceFile*> m_noteFiles;
    std::vector<const GuidanceFile*> m_evidenceFiles;
    // What another file may name although it is not there: its own file says why.
    std::set<std::string, std::less<>> m_topicsGiven;
    std::set<std::string, std::less<>> m_evidenceRefused;
    std::map<std::string, std::string, std::less<>> m_phrasings; ///< question, id of its topic
    std::vector<TomlError> m_errors;
};

} // namespace loadwarden
