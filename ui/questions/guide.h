#pragma once

#include "core/desk/office.h"
#include "core/desk/tray.h"
#include "core/guidance/answer.h"
#include "core/guidance/topic_search.h"

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

/// The topics in memory, with their search. Asked on one thread, that of the desk; what it answers
/// may be read elsewhere.
class Guide {
public:
    explicit Guide(std::string language);

    /// Throws StoreError.
    [[nodiscard]] FloorAnswer ask(Office& office, const std::string& asked) const;
    /// A topic as the policy that decides now answers it. Throws StoreError.
    [[nodiscard]] TopicAnswer answer(Office& office, const Topic& topic) const;

    [[nodiscard]] const TopicLibrary& library() const { return m_library; }
    [[nodiscard]] const std::string& language() const { return m_language; }

private:
    std::string m_language;
    TopicLibrary m_library;
    TopicSearch m_search;
};

} // namespace loadwarden::ui
