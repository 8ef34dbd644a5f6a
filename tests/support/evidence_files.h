#pragma once

#include "core/quantities/instant.h"
#include "core/release/decide.h"
#include "core/release/evidence.h"
#include "core/release/policy.h"

#include <string>
#include <string_view>

/// Evidence for tests, read from the files of tests/data.
namespace loadwarden::support {

/// The text of a file below the repository's root; throws where it cannot be read.
[[nodiscard]] std::string readFile(const std::string& pathBelowRoot);

/// A record from its JSON text; throws with the reader's error.
[[nodiscard]] EvidenceRecord parseEvidence(std::string_view json);

/// A releasable record of tests/data/worked_cases/bases/NAME.json; throws where there is none.
[[nodiscard]] EvidenceRecord base(const std::string& name);

/// The default policy with some settings (section.name) given other TOML values; throws where the
/// result is no policy or a setting is unknown.
struct PolicyChange {
    std::string setting;
    std::string value;
};
[[nodiscard]] Policy policyWith(const std::vector<PolicyChange>& changes);

/// Assembles a record and decides at its decideAt, or at another moment.
[[nodiscard]] Decision decideRecord(EvidenceRecord record, const Policy& policy = {});
[[nodiscard]] Decision decideRecordAt(EvidenceRecord record, const Policy& policy, Instant now);

/// The decision on a record, or the judgement of a test, as a line of JSON.
[[nodiscard]] std::string answerText(EvidenceRecord record, const Policy& policy, Instant now);

/// Every finding's key and outcome, one a line, for messages of failed tests.
[[nodiscard]] std::string describe(const Decision& decision);

} // namespace loadwarden::support
