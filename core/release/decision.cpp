#include "core/release/decision.h"

#include <algorithm>

namespace loadwarden {

std::string_view textOf(Verdict verdict)
{
    switch (verdict) {
    case Verdict::release: return "release";
    case Verdict::quarantine: return "quarantine";
    case Verdict::reprocess: return "reprocess";
    }
    return {};
}

std::string_view textOf(TestResult result)
{
    switch (result) {
    case TestResult::failed: return "failed";
    case TestResult::voided: return "void";
    case TestResult::pending: return "pending";
    case TestResult::passed: return "passed";
    }
    return {};
}

bool allMayGo(const Decision& decision)
{
    return decision.verdict == Verdict::release
           && std::all_of(
               decision.items.begin(), decision.items.end(),
               [](const ItemDecision& item) { return item.verdict == Verdict::release; });
}

} // namespace loadwarden
