#pragma once

#include "core/desk/dispositions.h"

#include <optional>

namespace loadwarden {

/// What would be decided of a load if that person verified its physical record now: for showing
/// beforehand that one PIN may sign both. nullopt of a test, and of what has not ended.
[[nodiscard]] std::optional<Decision> decisionOnceVerified(const CycleView& view,
                                                           const std::string& person, Role role);

/// Signs that the physical record was looked at, refused where anything about the load was recorded
/// that the signer has not seen.
[[nodiscard]] OrRefusal<Appended> verifyOnSight(Office& office, const SignedIn& who,
                                                Signature signature, const Sight& sight);

/// Signs the verification of a load's readings and then its release, both on one sight. Where the
/// verification does not lead to a release, it stands and the release is refused.
[[nodiscard]] OrRefusal<Appended> verifyAndRelease(Office& office, const SignedIn& who,
                                                   Signature verification, Signature release,
                                                   const Sight& sight);

} // namespace loadwarden
