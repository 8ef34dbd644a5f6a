#pragma once

#include <compare>
#include <cstdint>

namespace loadwarden {

/// Why an entry does not fit what stands before it, or has not the effect that it asks for
/// (ACTS.md, 4 and 5).
enum class MisfitWhy : std::uint8_t {
    notUnderstood,   ///< its kind or version is not known
    nothingThere,    ///< it corrects an entry that is not there, or that is no fact
    otherFact,       ///< it corrects an entry of another kind or about something else
    finalAct,        ///< what it corrects is not corrected
    alreadyStruck,   ///< it corrects what has been struck
    overtaken,       ///< it names a version that was not current any more
    noRight,         ///< it softens, and its author may not do that alone
    positiveStays,   ///< it would take away what makes a vial positive
    unsignedFact,    ///< nobody who records has signed it
    saidTwice,       ///< it contradicts what was said before
    afterStart,      ///< taken out of a load that had started
    notInLoad,       ///< about an item that is not in the load
    notPlaced,       ///< about an indicator that nobody placed, or a control that nobody prepared
    notOpen,         ///< ends what had not begun
    sameLabel,       ///< another item of the load has its label
    otherPurpose,    ///< its specification is for another purpose than the cycle
    unknownReference ///< names something that is in no register
};

struct Misfit {
    std::int64_t seq = 0;
    MisfitWhy why = MisfitWhy::notUnderstood;

    friend auto operator<=>(const Misfit&, const Misfit&) = default;
};

} // namespace loadwarden
