#pragma once

#include "core/quantities/act.h"
#include "core/quantities/word.h"

namespace loadwarden {

inline constexpr Word<Role> roleWords[] = {
    {"viewer", Role::viewer},
    {"operator", Role::operating},
    {"lead", Role::lead},
    {"supervisor", Role::supervisor},
};

} // namespace loadwarden
