#pragma once

#include "core/acts/fold/folding.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// An item that was in a load when it started, or came later.
struct Member {
    std::string id; ///< it-
    std::optional<Act>
        recorded; ///< who put it in; nullopt: nobody, but something was said of it there
};

/// The entry by which a cycle started; 0: it has not.
[[nodiscard]] std::int64_t startOf(const FactBook& book, std::string_view cycle);

/// The lot control number of a cycle; its id where it has none.
[[nodiscard]] std::string lotOf(const FactBook& book, std::string_view cycle);

/// The items of a load, in the order in which they were put in. What was taken out before the start
/// is not among them; what was taken out after it was inside.
[[nodiscard]] std::vector<Member> membersOf(Folding& folding, std::string_view cycle, bool own);

/// Other loads that an item is in, by their lots.
[[nodiscard]] std::vector<std::string> otherLotsOf(Folding& folding, std::string_view item,
                                                   std::string_view cycle);

} // namespace loadwarden
