#pragma once

#include "core/loads/load_record.h"
#include "core/release/decision.h"

#include <cstdint>
#include <string>
#include <vector>

// Reviews, dispositions and corrections (ACTS.md, 4 and 5).

namespace loadwarden {

struct ReviewRecorded {
    std::string finding;
    std::string subject; ///< empty: none
    ReviewAnswer answer = ReviewAnswer::isolated;
    std::string why;
    std::int64_t seen = 1; ///< seq of the newest entry that its author had seen, of whatever
};

/// A finding as it stood for the signer.
struct SignedFinding {
    std::string key;
    std::string subject; ///< empty: none
    std::string item;    ///< it-; empty: of the load
    Outcome outcome = Outcome::note;
};

struct SignedItem {
    std::string item; ///< it-
    Verdict meaning = Verdict::quarantine;
};

/// By what was decided when somebody signed.
struct SignedGrounds {
    std::vector<SignedFinding> findings;
    std::string evidence; ///< digest
    std::string policy;   ///< digest
    std::string rules;    ///< version
};

struct DispositionSigned {
    Verdict meaning = Verdict::quarantine;
    Verdict verdict = Verdict::quarantine; ///< as computed
    std::vector<SignedItem> items;
    SignedGrounds grounds;
};

struct EmergencyReleased {
    std::string caseReference;
    std::string demandedBy; ///< a role, not a name
    std::string why;
    std::string wouldHavePrevented;
    SignedGrounds grounds;
};

struct EntryVoided {};

struct EntryAnnotated {
    std::string note;
};

} // namespace loadwarden
