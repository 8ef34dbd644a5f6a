#pragma once

#include "core/desk/load_sheet.h"

#include <string>
#include <vector>

namespace loadwarden {

/// What can be recorded of a cycle besides its ordinary course.
enum class Further : std::uint8_t {
    moveItem,        ///< into another load, before the cycle starts
    confirmItem,     ///< that it was inside, though it was recorded late or is in two loads
    loseCheck,       ///< nobody looked at a package, and nobody can any more
    losePrintout,    ///< it cannot be found
    loseParameter,   ///< a value that the sterilizer's record no longer shows
    rereadIndicator, ///< somebody else looks at a chemical indicator that was read
    unsettle,        ///< nobody can settle an unclear answer: it counts as a bad one
    classAlarm,      ///< what an alarm of the sterilizer means
    recordFailure,   ///< a process failure
    resolveFailure,  ///< its cause and what was done about it
    openIncident,    ///< a vial grew
    findIncident,    ///< what a growth turned out to be
    closeIncident,   ///< another cycle has shown that the sterilizer works
    distribute,      ///< an item leaves the department
    use,             ///< an item was used on somebody
    takeBack         ///< an item came back unused
};

/// One of them, as far as the cycle asks for it now.
struct FurtherChoice {
    Further what{};
    /// Of what it can be said, the first suggested: items and indicators by id, a parameter by its
    /// number, an alarm by its code, incidents by id. Empty: of the cycle.
    std::vector<Choice> of;
};

/// What makes sense to record besides, in the order in which it comes up; for an imported load
/// nothing. Whether somebody may, the recorder says.
[[nodiscard]] std::vector<FurtherChoice> furtherActs(const LoadSheet& sheet);

} // namespace loadwarden
