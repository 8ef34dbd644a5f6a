#include "core/release/decide.h"

#include "core/release/finding_sink.h"
#include "core/release/view.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <memory_resource>

namespace loadwarden {
namespace {

/// Enough for the working memory of an ordinary load; a greater one goes on on the heap.
constexpr std::size_t workingBytes = 16 * 1024;

/// As many as most loads have.
constexpr std::size_t expectedFindings = 4;

Verdict forcedBy(Outcome outcome)
{
    switch (outcome) {
    case Outcome::note: return Verdict::release;
    case Outcome::waits:
    case Outcome::review: return Verdict::quarantine;
    case Outcome::fails: return Verdict::reprocess;
    }
    return Verdict::quarantine;
}

Verdict worst(const std::vector<Finding>& findings, std::size_t from)
{
    Verdict verdict = Verdict::release;
    for (std::size_t i = from; i < findings.size(); ++i) {
        verdict = std::max(verdict, forcedBy(findings[i].outcome));
    }
    return verdict;
}

std::optional<Instant> earliestChange(const std::vector<Finding>& findings)
{
    std::optional<Instant> earliest;
    for (const Finding& finding : findings) {
        if (finding.changesAt && (!earliest || *finding.changesAt < *earliest)) {
            earliest = finding.changesAt;
        }
    }
    return earliest;
}

} // namespace

Decision decide(const Evidence& evidence, const Policy& policy, Instant now)
{
    return decideWith(allRules(), evidence, policy, now);
}

Decision decideWith(const RuleTable& rules, const Evidence& evidence, const Policy& policy,
                    Instant now)
{
    std::array<std::byte, workingBytes> buffer;
    std::pmr::monotonic_buffer_resource memory(buffer.data(), buffer.size());
    const View view(evidence, policy, now, &memory);
    const LoadRecord& load = view.load;

    Decision decision;
    decision.lot = load.lot;
    decision.findings.reserve(expectedFindings);
    FindingSink sink(decision.findings, load.reviews, evidence.load.end, load.operatedBy, now,
                     &memory);
    for (const LoadRule& rule : rules.load) {
        rule.apply(view, sink);
    }
    decision.verdict = worst(decision.findings, 0);

    std::pmr::vector<const ItemRule*> itemRules(&memory);
    itemRules.reserve(rules.items.size());
    for (const ItemRule& rule : rules.items) {
        if (rule.concerns == nullptr || rule.concerns(view)) {
            itemRules.push_back(&rule);
        }
    }
    decision.items.reserve(load.items.size());
    for (std::size_t i = 0; i < load.items.size(); ++i) {
        const std::size_t before = decision.findings.size();
        sink.setItem(static_cast<std::int32_t>(i));
        for (const ItemRule* rule : itemRules) {
            rule->apply(view, i, sink);
        }
        const Verdict own = worst(decision.findings, before);
        decision.items.emplace_back(load.items[i].label, std::max(own, decision.verdict));
    }
    decision.nextChangeAt = earliestChange(decision.findings);
    return decision;
}

TestJudgement judgeTest(const Evidence& evidence, const Policy& policy, Instant now)
{
    TestJudgement judgement;
    const EvidenceRecord& record = evidence.record;
    judgement.lot = record.test->lot;
    FindingSink sink(judgement.findings, {}, {}, {}, now, std::pmr::get_default_resource());
    TestSurroundings around;
    if (record.sterilizer) {
        around.cycles = record.sterilizer->cycles;
        around.times = evidence.history;
    }
    judgement.result = judgeTestCycle(*record.test, *evidence.test, around, evidence.known, policy,
                                      now, &sink, nullptr)
                           .result;
    return judgement;
}

} // namespace loadwarden
