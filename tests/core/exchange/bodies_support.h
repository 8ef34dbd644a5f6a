#pragma once

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

// Bodies of acts that the codec takes, made of the frozen ones by asking it what else it would
// take. Nothing here knows its limits, so that a body format that becomes wider is tried to its new
// limits by itself.

namespace loadwarden::tests {

/// A body as JSON; whether the codec takes it as one of that kind.
[[nodiscard]] bool isTaken(const std::string& kind, const nlohmann::json& body);

/// Every kind with a frozen body, in the order of their names.
[[nodiscard]] const std::vector<std::string>& frozenKinds();

/// The frozen bodies of a kind.
[[nodiscard]] const std::vector<nlohmann::json>& frozenBodies(const std::string& kind);

/// The places of all values in a body, also of lists and objects, but not of the body itself.
[[nodiscard]] std::vector<nlohmann::json::json_pointer> placesIn(const nlohmann::json& body);

/// The same body with another value at a place: every number, text and word that may matter there,
/// the least and the greatest, the shortest and the longest among them. The codec takes them all.
[[nodiscard]] std::vector<nlohmann::json> variantsAt(const std::string& kind,
                                                     const nlohmann::json& body,
                                                     const nlohmann::json::json_pointer& place);

/// The longest id with that prefix which the codec takes.
[[nodiscard]] std::string longestId(const std::string& prefix);

} // namespace loadwarden::tests
