#pragma once

#include "core/journal/envelope.h"

#include <optional>
#include <string>
#include <vector>

// Loads of the time before the journal (ACTS.md, 4).

namespace loadwarden {

/// A load as an older record has it: a paper register, another system. It happened when the load
/// started. History only: no evidence is made of it.
struct HistoryImported {
    std::string source;              ///< which record
    std::string lot;                 ///< lot control number in it
    bool dayOnly = false;            ///< of the start only the day is known
    std::optional<JournalTime> end;  ///< where it is known
    std::string sterilizer;          ///< as that record calls it; empty: not said
    std::string outcome;             ///< in the words of that record
    std::vector<std::string> labels; ///< of its items
    std::string record;              ///< its text; empty: none
};

} // namespace loadwarden
