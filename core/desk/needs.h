#pragma once

#include "core/desk/load_view.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// What asks for a person, from most to least urgent.
enum class NeedKind : std::uint8_t {
    growth,           ///< a vial of it grew
    evidenceWorse,    ///< what was signed is better than what is decided now
    lotRecalled,      ///< loads in which it was count it no more; `at`: when that was recorded
    failed,           ///< decided as reprocess, and nobody has signed that
    testFailed,       ///< the newest air-removal test of the period
    testNotRun,       ///< none in the period that counts
    testNotRead,      ///< it has run; `at`: when it ended
    controlDead,      ///< a control did not grow, so vials do not count
    biologicalDue,    ///< a vial and its control are to be read; `at`: since when, where known
    review,           ///< findings wait for a lead or a supervisor
    printout,         ///< the sterilizer's record, its readings or their verification are missing
    reading,          ///< a chemical indicator or a package is to be looked at
    otherEvidence,    ///< something else is missing
    signature,        ///< everything is there and good
    evidenceChanged,  ///< since it was signed, without being worse
    biologicalComing, ///< `at`: when to look at it next
    aerating,         ///< nothing else is missing; `at`: when it has lasted long enough
    lotExpires        ///< a product's lot; `at`: the first moment of the day after its date
};

/// Whether somebody can do something about it now.
[[nodiscard]] bool isForNow(NeedKind kind);

/// Where a vial, an indicator or a PCD of a load is, for people: ids say nothing to them.
struct NeedPart {
    std::string id;      ///< as a finding's subject
    std::string pcdMark; ///< empty: nothing is written on it
};

/// Something that asks for a person, and what its sentences need.
struct Need {
    NeedKind kind{};
    std::string cycle;             ///< ld-; empty: not of a cycle
    std::string lot;               ///< of the cycle; of a product's lot its number
    std::string sterilizer;        ///< sz-; empty: not known
    std::string subject;           ///< bv-, pl-; empty: none
    std::string name;              ///< of what `subject` is, where it has one
    std::optional<Instant> at;     ///< see kind
    std::vector<Finding> findings; ///< those behind it, of the load in the order of the decision
    std::vector<NeedPart> parts;   ///< that the findings name
    int behind = 0;                ///< items that are decided worse than their load
    bool hasImplant = false;       ///< of a load: an implant is in it, or may be
};

/// What a load asks for, as decided for the moment of its view: at most one need of its biological
/// indicators and one of everything else, each the most urgent of its kind. Nothing of a test, of
/// what has not ended, nor of what is signed and has not changed.
void appendNeeds(const CycleView& view, std::vector<Need>& needs);

/// The most urgent first; of one kind the longest due.
void sortNeeds(std::vector<Need>& needs);

} // namespace loadwarden
