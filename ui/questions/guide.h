#pragma once

#include "core/desk/office.h"
#include "core/desk/tray.h"
#include "core/guidance/answer.h"
#include "core/guidance/topic_search.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden::ui {

/// What somebody asked from the floor, answered: a tray by its label, topics by what words say.
/// What points into the guide's topics is good as long as the guide.
struct FloorAnswer {
    std::string asked;
    std::optional<TraySheet> tray;    ///< what was asked is a label
    bool mayBeLabel = false;          ///< it is one word with a digit in it
    std::vector<const Topic*> topics; ///< the nearest first
    bool isSure = false;              ///< the first one says what was asked
};

/// The files of the facility's own topics, as they stand in its folder.
struct HouseFiles {
    std::vector<GuidanceFile> files;
    std::vector<TomlError> unread;

    friend bool operator==(const HouseFiles&, const HouseFiles&) = default;
};

/// Of an empty path none.
[[nodiscard]] HouseFiles houseFilesIn(const std::filesystem::path& folder);

/// The topics in memory, with their search: those of the program, and the facility's own that are
/// right. Asked on one thread, that of the desk; what it answers may be read elsewhere.
class Guide {
public:
    Guide(std::string language, HouseFiles house);

    /// One that has what stands in the folder now: `known`, where nothing has changed there.
    static std::shared_ptr<const Guide> upToDate(std::shared_ptr<const Guide> known,
                                                 const std::string& language,
                                                 const std::filesystem::path& folder);

    /// Throws StoreError.
    [[nodiscard]] FloorAnswer ask(Office& office, const std::string& asked) const;
    /// A topic as the policy that decides now answers it. Throws StoreError.
    [[nodiscard]] TopicAnswer answer(Office& office, const Topic& topic) const;

    /// What is wrong with the facility's files, each of which is left out.
    [[nodiscard]] const std::vector<TomlError>& faults() const { return m_faults; }
    [[nodiscard]] bool hasHouse() const { return m_house != HouseFiles{}; }
    /// The facility's own.
    [[nodiscard]] std::vector<const Topic*> houseTopics() const;

    [[nodiscard]] const TopicLibrary& library() const { return m_library; }
    [[nodiscard]] const std::string& language() const { return m_language; }

private:
    std::string m_language;
    HouseFiles m_house;
    TopicLibrary m_library;
    std::vector<TomlError> m_faults;
    TopicSearch m_search;
};

} // namespace loadwarden::ui
