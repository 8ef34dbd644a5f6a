#include "core/release/finding.h"

#include <array>

namespace loadwarden {

std::string_view textOf(Key key)
{
    static constexpr std::array<std::string_view, keyCount> texts{
#define LW_KEY(enumerator, text, rule) text,
#include "core/release/finding_keys.def"
#undef LW_KEY
    };
    return texts[static_cast<std::size_t>(key)];
}

RuleId ruleOf(Key key)
{
    static constexpr std::array<RuleId, keyCount> rules{
#define LW_KEY(enumerator, text, rule) RuleId::rule,
#include "core/release/finding_keys.def"
#undef LW_KEY
    };
    return rules[static_cast<std::size_t>(key)];
}

std::string_view textOf(RuleId rule)
{
    switch (rule) {
#define LW_RULE(enumerator, text)                                                                  \
    case RuleId::enumerator: return text;
#include "core/release/rules.def"
#undef LW_RULE
    }
    return {};
}

std::string_view textOf(Outcome outcome)
{
    switch (outcome) {
    case Outcome::note: return "note";
    case Outcome::waits: return "waits";
    case Outcome::review: return "review";
    case Outcome::fails: return "fails";
    }
    return {};
}

std::string_view textOf(Reviewer reviewer)
{
    switch (reviewer) {
    case Reviewer::none: return "none";
    case Reviewer::lead: return "lead";
    case Reviewer::supervisor: return "supervisor";
    case Reviewer::secondSupervisor: return "second-supervisor";
    }
    return {};
}

} // namespace loadwarden
