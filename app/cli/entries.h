#pragma once

#include "core/release/decision.h"
#include "core/words/say.h"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace loadwarden::cli {

/// What is said, once, of the load or of the items of which it is true.
struct Entry {
    Key key{};
    Outcome outcome{};
    Said said;
    std::vector<std::string> alsoOf;  ///< further subjects of which the same is said
    std::vector<std::string> reviews; ///< fields of the reviews that would answer it
    std::vector<std::int32_t> items;  ///< none: the load
    bool forces = false;              ///< the verdict of its load or items
    std::string brief;                ///< stands for what it says, as that is said elsewhere
    bool isAbove = false;             ///< said whole at another record, with its source
};

/// The notes that a run has explained already, with the load or test where it did: of each key the
/// latest, so that a run of any length needs the same memory.
class ExplainedNotes {
public:
    /// Where this has been explained; empty: not yet, and now it is, at `here`.
    std::string explainAt(const std::string& here, Key key, const Said& said);

private:
    struct Explained {
        std::string text;
        std::string place;
    };
    std::array<Explained, static_cast<std::size_t>(keyCount)> m_explained;
};

/// Gathers the findings of one record in words.
class Entries {
public:
    Entries(const HouseStyle& style, std::string place, ExplainedNotes& explained)
        : m_style(style), m_place(std::move(place)), m_explained(explained)
    {
    }

    void add(const Finding& finding, bool forcesVerdict);

    /// The load's before the items', each from the worst outcome on. What differs in nothing but
    /// its subject is one entry; a finding that only follows from another is said briefly.
    [[nodiscard]] std::vector<Entry> take();

private:
    struct Gathered {
        Entry entry;
        std::string subject;
        std::string shape; ///< what it says with its subject left out; empty: cannot be told
    };

    [[nodiscard]] std::string shapeOf(const Finding& finding, const Said& said) const;
    [[nodiscard]] bool has(Key key) const;
    void mergeSubjects();
    void shorten(Entry& entry) const;

    HouseStyle m_style;
    std::string m_place;
    ExplainedNotes& m_explained;
    std::vector<Gathered> m_gathered;
};

} // namespace loadwarden::cli
