#pragma once

#include <string>
#include <string_view>

// A policy's settings in words, as a table says them: without a full stop, in the language that is
// installed. What has no words is said as the file writes it.

namespace loadwarden {

/// The heading of a section: "Biological indicators" of "bi".
[[nodiscard]] std::string sayPolicySection(std::string_view section);

/// What a setting settles.
[[nodiscard]] std::string sayPolicySetting(std::string_view section, std::string_view name);

/// A value of it with its unit, from the text that policyRows() gives.
[[nodiscard]] std::string sayPolicyValue(std::string_view section, std::string_view name,
                                         std::string_view value);

/// How sure the source of a value is.
[[nodiscard]] std::string sayConfidence(std::string_view confidence);

} // namespace loadwarden
