#pragma once

#include "core/desk/load_view.h"
#include "core/desk/sign_in.h"

#include <string>
#include <vector>

namespace loadwarden {

/// The sight on which somebody signs: what viewCycle() showed.
struct Sight {
    std::string cycle;
    std::int64_t seen = 0; ///< CycleView::seen
    std::string decided;   ///< digest of what was decided: sightDigest()
};

[[nodiscard]] Sight sightFrom(const CycleView& view);

/// What was recorded about the cycle that the signer has not seen. Throws StoreError.
[[nodiscard]] std::vector<CameSince> cameSince(ReadSnapshot& snapshot, const Sight& sight);

/// The words of a release that overrules what waits for an implant.
struct Emergency {
    std::string caseReference; ///< no patient's name
    std::string demandedBy;    ///< a role, not a name
    std::string why;
    std::string wouldHavePrevented;
};

/// An answer to a finding that waits for a review.
struct ReviewAsked {
    std::string finding; ///< key
    std::string subject; ///< empty: none
    ReviewAnswer answer = ReviewAnswer::isolated;
    std::string why;
};

/// What rests on a decision. Each looks at the journal anew, refuses where anything about the load
/// has been recorded, or is decided otherwise, since the signer saw it, and writes down what was
/// decided then.
class Dispositions {
public:
    explicit Dispositions(Office& office) : m_office(office) {}

    /// Signs what becomes of a load. It may be worse than the verdict, never better; items whose
    /// verdict is worse than the load's stay behind with that verdict.
    [[nodiscard]] OrRefusal<Appended> sign(const SignedIn& who, Signature signature,
                                           const Sight& sight, Verdict meaning);

    /// Releases one implant before its vial has answered. Nothing else may be missing: findings of
    /// the load or of this item that say more are refused by name.
    [[nodiscard]] OrRefusal<Appended> releaseInEmergency(const SignedIn& who, Signature signature,
                                                         const Sight& sight,
                                                         const std::string& item,
                                                         const Emergency& emergency);

    /// Answers a finding of a load.
    [[nodiscard]] OrRefusal<Appended> review(const SignedIn& who, Signature signature,
                                             const Sight& sight, const ReviewAsked& asked);

private:
    using Judge = std::function<OrRefusal<ToRecord>(const CycleView&, const Author&)>;

    [[nodiscard]] OrRefusal<Appended> rest(const SignedIn& who, const Signature& signature,
                                           const Sight& sight, Task task, const Judge& judge);

    Office& m_office;
};

} // namespace loadwarden
