#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// A setting of a policy as its file states it.
struct PolicyRow {
    std::string section; ///< "bi"
    std::string name;    ///< "steam"
    std::string value;   ///< a number, a word, "true" or "false"; a list by ", ", empty: none
    std::string source;
    std::string confidence;
    bool isMilder = false; ///< than the default, and named as allowed

    friend bool operator==(const PolicyRow&, const PolicyRow&) = default;
};

/// Where two policies differ.
struct PolicyDifference {
    std::string section;
    std::string name;
    std::string before;
    std::string after;

    friend bool operator==(const PolicyDifference&, const PolicyDifference&) = default;
};

/// Every setting of a file that readPolicy() takes, in the order of the default policy's; none of
/// another text. What a file of an older version does not state stands as the default.
[[nodiscard]] std::vector<PolicyRow> policyRows(std::string_view toml);

/// The settings whose values differ, in that order; sources are not compared.
[[nodiscard]] std::vector<PolicyDifference> policyDifferences(std::string_view before,
                                                              std::string_view after);

} // namespace loadwarden
