#pragma once

#include "core/desk/sign_in.h"

#include <cstdint>
#include <span>
#include <string>

namespace loadwarden {

/// A sterilizer with which a department begins.
struct FirstSterilizer {
    std::string name; ///< as its printout calls it
    std::string model;
    std::int64_t testMinute = 0; ///< local minute of the day at which its test period begins
    std::string specification;   ///< of the built-in library, "name@revision"; empty: none
    std::string program;         ///< as the printout calls the program of that specification
    bool isInService = false;    ///< the supervisor states that it was qualified
};

/// Records them together, with a copy of each specification for each program that is named, or
/// nothing. A supervisor's, and signed. Throws StoreError.
[[nodiscard]] OrRefusal<Appended> equip(Office& office, const SignedIn& who, Signature signature,
                                        std::span<const FirstSterilizer> sterilizers);

} // namespace loadwarden
