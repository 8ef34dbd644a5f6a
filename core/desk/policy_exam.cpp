#include "core/desk/policy_exam.h"

#include "core/journal/hash.h"

#include <algorithm>

namespace loadwarden {

std::variant<PolicyExam, std::vector<PolicyError>>
examinePolicy(std::string_view toml, std::string fileName,
              const std::vector<RegisteredPolicy>& policies)
{
    auto read = readPolicy(toml, std::move(fileName));
    if (auto* const errors = std::get_if<std::vector<PolicyError>>(&read)) {
        return std::move(*errors);
    }
    PolicyExam exam{.toml = std::string(toml),
                    .policy = std::get<Policy>(std::move(read)),
                    .rows = policyRows(toml),
                    .differences = {},
                    .milder = milderValues(toml)};
    exam.differences = policyDifferences(
        policies.empty() ? defaultPolicyText() : std::string_view(policies.front().recorded.toml),
        toml);
    exam.decidesNow = !policies.empty() && policies.front().recorded.toml == toml;
    exam.isTaken = std::ranges::any_of(policies, [&](const RegisteredPolicy& each) {
        return each.recorded.name == exam.policy.id
               && each.recorded.revision == exam.policy.revision && each.recorded.toml != toml;
    });
    return exam;
}

ToRecord revisionOf(const PolicyExam& exam, const std::vector<RegisteredPolicy>& policies,
                    IdSource& ids)
{
    const auto same = std::ranges::find_if(policies, [&](const RegisteredPolicy& each) {
        return each.recorded.name == exam.policy.id;
    });
    return {.act = PolicyRecorded{.name = exam.policy.id,
                                  .revision = exam.policy.revision,
                                  .digest = hexOf(hashOf(exam.toml)),
                                  .toml = exam.toml},
            .subjects = {same == policies.end() ? ids.next("po") : same->id}};
}

} // namespace loadwarden
