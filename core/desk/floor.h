#pragma once

#include "core/desk/to_record.h"
#include "core/quantities/date.h"
#include "core/quantities/id_source.h"
#include "core/quantities/zone.h"
#include "core/store/read_snapshot.h"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

// What reaches the department from the floor: questions, and what was found when an item was
// opened.

namespace loadwarden {

/// A new id of a question or a report. Its day stands in front, so that those since a day are
/// found without the older ones.
[[nodiscard]] std::string floorId(IdSource& ids, Date day);

/// A report about an item of a load, and a question, as they are to be recorded on that day.
[[nodiscard]] ToRecord reported(IdSource& ids, Date day, const ItemReported& report,
                                const std::string& item, const std::string& cycle);
[[nodiscard]] ToRecord asked(IdSource& ids, Date day, const QuestionLogged& question);

/// Questions and reports since a day, in the order in which they were recorded. Throws StoreError.
[[nodiscard]] std::vector<Entry> fromFloorSince(ReadSnapshot& snapshot, Date day);

/// How often a topic was asked from a place in a month.
struct AskedOften {
    Date month;        ///< its first day, at the facility
    std::string place; ///< as first written
    std::string topic; ///< empty: none was shown
    std::int64_t asked = 0;
    std::int64_t misread = 0; ///< of these: something had been misread

    friend bool operator==(const AskedOften&, const AskedOften&) = default;
};

/// The questions among entries, counted: the newest month first, in it the most misread, then the
/// most asked. Places are the same where blanks and the case of A to Z alone differ. What was
/// struck does not count.
[[nodiscard]] std::vector<AskedOften> countQuestions(std::span<const Entry> entries,
                                                     const Zone& zone);

} // namespace loadwarden
