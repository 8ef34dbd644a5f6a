#pragma once

#include "core/desk/load_view.h"
#include "core/desk/named_id.h"
#include "core/desk/sign_in.h"
#include "core/indicators/biological.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// What somebody does next with a vial or a control.
enum class BiStep : std::uint8_t {
    none,     ///< it is settled, or cannot be
    activate, ///< as its product asks, after the cycle
    incubate,
    processIndicator, ///< look at the mark on it
    read,             ///< also one that must be read again
    readSecond        ///< unclear: somebody else reads it
};

/// A vial of a cycle, or a control, as it stands.
struct BiTest {
    std::string id; ///< bv- or bc-
    bool isControl = false;
    std::string cycle;      ///< ld- in which a vial was; empty: a control
    std::string lot;        ///< lot control number of that cycle
    std::string sterilizer; ///< its name; empty: not known
    bool hasImplant = false;
    std::optional<Verdict> signedAs; ///< the load
    std::optional<Instant> started;  ///< incubation
    std::optional<Instant> dueAt;    ///< from when on an answer of no growth counts
    bool asksProcessIndicator = false;
    VialJudgement vial;                           ///< of a vial
    ControlState control = ControlState::pending; ///< of a control
    BiStep step = BiStep::none;

    /// Whether its answer may be read by a moment; false where that is not known.
    [[nodiscard]] bool isDue(Instant now) const
    {
        return step == BiStep::read && dueAt && *dueAt <= now;
    }
};

/// Vials and the controls that vouch for them: of one product, lot, incubator and, where a control
/// reaches no farther, one facility day.
struct BiGroup {
    std::string product; ///< pr-; empty: not known
    std::string productName;
    std::string lotNumber;  ///< of the product; empty: not known
    std::string productLot; ///< pl-; empty: not known
    std::string incubator;  ///< in-; empty: none yet
    std::string incubatorName;
    std::optional<Date> day; ///< on which they went in
    bool needsActivation = false;
    std::vector<BiTest> controls;
    std::vector<BiTest> vials;
    bool isControlDead = false;
    bool isWithoutControl = false; ///< vials are in, and no control is beside them

    /// The first moment at which anything of it is to be read.
    [[nodiscard]] std::optional<Instant> dueAt() const;
};

/// A cycle that a positive calls into question.
struct BiHeld {
    std::string cycle;
    std::string lot;
    std::optional<Verdict> signedAs; ///< nullopt: nobody has signed it
    bool hasImplant = false;
    bool isPositive = false; ///< its own vial
};

/// Growth in a vial that was in a cycle, or what counts as that (core/release/RULES.md, 4).
struct BiPositive {
    std::string vial;
    std::string cycle;
    std::string lot;
    std::string sterilizer; ///< sz-
    std::string sterilizerName;
    Instant since{}; ///< when that was recorded
    std::optional<std::string>
        lastNegativeLot;      ///< before it; nullopt: none within what is looked back
    std::vector<BiHeld> held; ///< what that sterilizer has run since, the oldest first
    bool isStopped = false;   ///< the sterilizer is not in service
};

/// Biological indicators under way and what they show.
struct Biologicals {
    Instant now{};
    std::vector<BiPositive> positives; ///< the newest first
    std::vector<BiGroup> groups;       ///< what is due first, first
    std::vector<NamedId> incubators;
    std::optional<Instant> nextChangeAt; ///< when time alone changes anything of this
};

/// What stands in the journal now: vials that wait, of loads and tests, with their controls, and
/// positives of the last 35 days (lookBack), whatever was signed since. Throws StoreError.
[[nodiscard]] Biologicals biologicalsOf(ReadSnapshot& snapshot, EntryCache& cache, Instant now);

/// An answer of a vial or a control that was recorded, and whether it counts.
struct BiAnswer {
    Appended appended;
    bool counts = true;
    std::optional<Instant> dueAt; ///< of one that came too early
    bool isPositive = false;      ///< a vial that was in a cycle
    bool isDeadControl = false;
};

/// Records what was seen (growth, no growth, unclear) and looks what the rules make of it. `cycle`
/// is empty for a control. One that comes too early is recorded and does not count.
[[nodiscard]] OrRefusal<BiAnswer> readBiological(Office& office, const SignedIn& who,
                                                 const std::string& id, const std::string& cycle,
                                                 Seen seen);

} // namespace loadwarden
