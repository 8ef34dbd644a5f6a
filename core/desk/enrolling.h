#pragma once

#include "core/acts/kinds/register_acts.h"
#include "core/desk/sign_in.h"

#include <string>
#include <string_view>

namespace loadwarden {

/// Registers somebody new together with a first PIN, or nothing. A supervisor's, and signed; an id
/// that is there already is refused. Throws StoreError.
[[nodiscard]] OrRefusal<Appended> enrol(Office& office, const SignedIn& who,
                                        const Signature& signature, const std::string& id,
                                        const StaffRecorded& person, std::string_view pin);

} // namespace loadwarden
