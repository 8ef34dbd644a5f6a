#pragma once

#include "core/desk/load_view.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// What somebody is told who stands before a tray and wants to open it.
enum class TrayAnswer : std::uint8_t { mayBeUsed, askLead, mayNot };

/// Why, in the order in which it is looked at.
enum class TrayStand : std::uint8_t {
    imported,      ///< only an old record tells of it: nothing was decided here
    inTest,        ///< it went along in a test cycle
    leftLoad,      ///< it was taken out before the cycle
    notSterilized, ///< its cycle has not ended
    used,
    fails,         ///< it is to be reprocessed
    emergency,     ///< released before its vial answered, for one case
    waits,         ///< something is still missing, and nobody has released it
    notSigned,     ///< every rule holds, and nobody has signed
    signedHeld,    ///< it stayed behind when the load was signed, or the load was not released
    worseSince,    ///< signed as released, and decided worse now
    changedSince,  ///< signed as released, and no worse, but something was recorded since
    notUnderstood, ///< the journal holds what this version does not know
    released
};

[[nodiscard]] constexpr TrayAnswer answerOf(TrayStand stand)
{
    switch (stand) {
    case TrayStand::released: return TrayAnswer::mayBeUsed;
    case TrayStand::imported:
    case TrayStand::emergency:
    case TrayStand::changedSince:
    case TrayStand::notUnderstood: return TrayAnswer::askLead;
    case TrayStand::inTest:
    case TrayStand::leftLoad:
    case TrayStand::notSterilized:
    case TrayStand::used:
    case TrayStand::fails:
    case TrayStand::waits:
    case TrayStand::notSigned:
    case TrayStand::signedHeld:
    case TrayStand::worseSince: return TrayAnswer::mayNot;
    }
    return TrayAnswer::mayNot;
}

/// Who signed last what becomes of it.
struct TraySignature {
    std::string name;
    Role role = Role::viewer;
    Instant at{};
    Verdict meaning = Verdict::quarantine; ///< of this item
};

/// A tray by its label, as it stands now.
struct TraySheet {
    std::string item; ///< it-
    std::string label;
    std::string cycle; ///< ld-, the newest load in which it is, or was said to be
    std::string lot;
    std::string sterilizer; ///< its name
    std::optional<Instant> ended;
    TrayStand stand = TrayStand::waits;
    std::optional<TraySignature> signature;
    std::string caseReference;     ///< of the use or of the emergency release; may be empty
    std::vector<Finding> findings; ///< of the load and of this item, without notes

    [[nodiscard]] TrayAnswer answer() const { return answerOf(stand); }
};

/// nullopt where no item bears that label. Throws StoreError.
[[nodiscard]] std::optional<TraySheet> trayOf(ReadSnapshot& snapshot, EntryCache& cache,
                                              std::string_view label, Instant now);

} // namespace loadwarden
