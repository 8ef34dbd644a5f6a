#pragma once

#include "core/desk/registers.h"
#include "core/desk/to_record.h"
#include "core/exchange/milder_values.h"
#include "core/exchange/policy_reader.h"
#include "core/exchange/policy_rows.h"
#include "core/quantities/id_source.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loadwarden {

/// A policy's file as a revision that may be recorded.
struct PolicyExam {
    std::string toml;
    Policy policy;
    std::vector<PolicyRow> rows;
    std::vector<PolicyDifference> differences; ///< against the policy that decides now
    std::vector<MilderValue> milder;
    bool decidesNow = false; ///< it is the policy that decides now, byte by byte
    /// The journal has this id and revision with another text: nobody could tell the two apart.
    bool isTaken = false;
};

/// What a file would change, or what is wrong with it by line and field; `fileName` only names it.
[[nodiscard]] std::variant<PolicyExam, std::vector<PolicyError>>
examinePolicy(std::string_view toml, std::string fileName,
              const std::vector<RegisteredPolicy>& policies);

/// The act that records it, as a revision of the policy of that name where there is one.
[[nodiscard]] ToRecord revisionOf(const PolicyExam& exam,
                                  const std::vector<RegisteredPolicy>& policies, IdSource& ids);

} // namespace loadwarden
