#pragma once

#include "core/desk/rights.h"
#include "core/quantities/instant.h"
#include "core/release/decision.h"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace loadwarden {

/// Why the desk does not do what it was asked: something that a person can mend.
enum class RefusalWhy : std::uint8_t {
    // who
    personUnknown, ///< subject: the badge or id
    personInactive,
    pinNotSet,
    pinWrong, ///< until: when the next try counts, if there is a wait
    pinWait,  ///< until
    pinTooShort,
    pinTooEasy,
    pinNeeded,
    roleTooLow, ///< task, and subject: the role that is needed
    badgeTaken, ///< subject: the badge
    paperRole,  ///< subject: whose role is another than was typed
    lastSupervisor,
    // what it is about
    unknown,      ///< subject: an id that is not in the journal
    severalBear,  ///< subject: a lot control number; detail: the ids of the loads that bear it
    alreadyThere, ///< subject: an id that is
    badId,        ///< subject: what cannot be an id of that kind
    malformed,    ///< detail: what is wrong with what was typed
    notPlaced,    ///< subject: an indicator, item or run that is not of this cycle
    otherDoor,    ///< subject: a kind of act that has a command of its own
    notReleased,  ///< subject: an item that nobody released
    wrongProduct, ///< subject: a product that does not belong where it was to be placed; place
    notALoad,
    notATest,
    // when
    inFuture,
    timeNeeded, ///< of what was done before and is typed from paper
    beforeStart,
    beforeEnd,
    notStarted,
    alreadyStarted,
    notEnded,
    alreadyEnded,
    // corrections and reviews
    noSuchEntry, ///< seq
    notCurrent,  ///< seq: the entry that is current
    notCorrectable,
    reasonNeeded,
    secondPerson,  ///< it would soften what was said, which nobody may alone
    positiveStays, ///< it would take away what makes a vial positive
    otherFact,     ///< an amendment of another kind or about something else
    noSuchFinding, ///< subject: the key
    notReviewable,
    reviewerTooLow, ///< subject: the role that is needed
    // signing
    stale,         ///< subject: the cycle; since: what has come in
    changed,       ///< what is decided now differs from what the signer saw
    notUnderstood, ///< the journal holds what this program does not know
    notReleasable, ///< verdict: what is decided
    nothingToSign,
    notAnImplant,
    notOnlyTheVial, ///< subject: the lot; findings: what speaks against an emergency release
    imported, ///< subject: the lot of a load of the time before, about which nothing is decided
    keyKnown, ///< the journal is sealed by this user's key already
    // importing
    importedOtherwise, ///< subject: the lot; seq: the entry that says otherwise
    rowTwice,          ///< subject: the lot; seq: the line that has it already
    lotOfOwnLoad       ///< subject: the lot, which a load of this journal bears
};

/// Whether it is the time of what was done that is wrong.
[[nodiscard]] constexpr bool isOfTime(RefusalWhy why)
{
    return why == RefusalWhy::inFuture || why == RefusalWhy::timeNeeded
           || why == RefusalWhy::beforeStart || why == RefusalWhy::beforeEnd;
}

/// What was recorded since somebody looked.
struct CameSince {
    std::int64_t seq = 0;
    std::string kind;  ///< of the act
    std::string thing; ///< the id of what it is about beside the load; empty: the load itself
    std::string value; ///< what was read, in the words of ACTS.md; empty: nothing was
    std::string by;    ///< name of who did it; empty: the program
    Instant at;        ///< when it was recorded
};

/// Of what an indicator's product is not, where it was to be placed.
enum class ProductPlace : std::uint8_t {
    chemical, ///< a chemical indicator in a PCD or an item
    vial,     ///< a biological indicator in a PCD, or its control
    sheet     ///< the sheet of a Bowie-Dick test
};

/// A refusal with what its sentences need; which of it is set depends on `why`.
struct Refusal {
    RefusalWhy why{};
    std::string subject;
    std::string detail;
    std::optional<Task> task;
    std::optional<Instant> until;
    std::optional<Verdict> verdict;
    std::int64_t seq = 0;
    std::vector<CameSince> since;
    std::optional<ProductPlace> place;
    std::vector<Finding> findings; ///< what forbids it
};

/// A value, or why there is none.
template <class Value>
using OrRefusal = std::variant<Value, Refusal>;

} // namespace loadwarden
