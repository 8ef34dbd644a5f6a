#pragma once

#include "core/quantities/word.h"
#include "core/sterilizers/sterilizer_record.h"

namespace loadwarden {

/// In the order of CycleKind.
inline constexpr Word<CycleKind> cycleKindWords[] = {
    {"load", CycleKind::load},
    {"warm-up", CycleKind::warmUp},
    {"bowie-dick", CycleKind::bowieDick},
    {"leak", CycleKind::leak},
    {"qualification", CycleKind::qualification},
};

inline constexpr Word<FailureKind> failureKindWords[] = {
    {"physical", FailureKind::physical},
    {"pcd-rejected", FailureKind::pcdRejected},
};

inline constexpr Word<bool> causeWords[] = {
    {"known", true},
    {"unknown", false},
};

inline constexpr Word<Reach> reachWords[] = {
    {"that-load", Reach::thatLoad},
    {"sterilizer", Reach::sterilizer},
};

inline constexpr Word<ServiceState> serviceStateWords[] = {
    {"in-service", ServiceState::inService},
    {"out-of-service", ServiceState::outOfService},
    {"qualification", ServiceState::qualification},
    {"held", ServiceState::held},
};

inline constexpr Word<AlarmEffect> alarmEffectWords[] = {
    {"harmless", AlarmEffect::harmless},
    {"exposure-affecting", AlarmEffect::exposureAffecting},
};

} // namespace loadwarden
