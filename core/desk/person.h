#pragma once

#include "core/quantities/act.h"

#include <string>

namespace loadwarden {

/// Somebody of the staff, as the journal has them now.
struct Person {
    std::string id; ///< st-
    std::string name;
    Role role = Role::viewer;
    std::string badge; ///< empty: none
    bool active = true;
    bool hasPin = false;

    friend bool operator==(const Person&, const Person&) = default;
};

} // namespace loadwarden
