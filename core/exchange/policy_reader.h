#pragma once

#include "core/exchange/toml_error.h"
#include "core/release/policy.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loadwarden {

using PolicyError = TomlError;

/// The policy that a file states, with the digest of its bytes (SHA-256, FIPS 180-4, hexadecimal),
/// or everything that is wrong with it, by line. Refused is a file in which a setting is missing or
/// unknown, has no source or no confidence, contradicts itself, or is milder than the default where
/// that is not named as the milder value (resources/policies/README.md); also one that bears the
/// default policy's id with other settings or another revision. `fileName` only names the file in
/// errors.
std::variant<Policy, std::vector<PolicyError>> readPolicy(std::string_view toml,
                                                          std::string fileName);

/// The default policy's file, resources/policies/us-hospital.toml as built in.
std::string_view defaultPolicyText();

/// What readPolicy() makes of it.
const Policy& defaultPolicy();

} // namespace loadwarden
