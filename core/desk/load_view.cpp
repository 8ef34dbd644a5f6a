#include "core/desk/load_view.h"

#include "core/desk/journal_entries.h"
#include "core/exchange/policy_reader.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"
#include "core/store/finder.h"
#include "core/store/reach/reach_reader.h"
#include "core/store/store_error.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// The policy of a digest; the default where none was ever recorded.
Policy policyOf(const std::vector<Entry>& entries, const std::optional<std::string>& digest)
{
    if (!digest) {
        return defaultPolicy();
    }
    for (const Entry& entry : entries) {
        const auto* const recorded = std::get_if<PolicyRecorded>(&entry.act);
        if (recorded == nullptr || recorded->digest != *digest) {
            continue;
        }
        auto read = readPolicy(recorded->toml, "policy of entry " + std::to_string(entry.seq));
        if (auto* const policy = std::get_if<Policy>(&read)) {
            return std::move(*policy);
        }
        throw engineError(StoreFault::damaged, "the policy of entry " + std::to_string(entry.seq)
                                                   + " is none that this program can read");
    }
    throw engineError(StoreFault::damaged, "the policy of a load is not in the journal");
}

void appendFindings(std::string& out, const std::vector<Finding>& findings)
{
    for (const Finding& finding : findings) {
        out += textOf(finding.key);
        out += '\t';
        out += textOf(finding.outcome);
        out += '\t';
        out += finding.reviewed ? "reviewed" : "";
        out += '\t' + std::to_string(finding.item) + '\t' + finding.subject + '\t'
               + std::to_string(static_cast<int>(finding.cause)) + '\t'
               + std::to_string(finding.count);
        for (const auto& quantity : {finding.value, finding.limit}) {
            out += '\t';
            if (quantity) {
                out += std::to_string(quantity->thousandths) + ' '
                       + std::to_string(static_cast<int>(quantity->unit));
            }
        }
        out += '\n';
    }
}

} // namespace

std::optional<CycleView> viewCycle(ReadSnapshot& snapshot, EntryCache& cache,
                                   std::string_view cycle, Instant now, std::int64_t upTo)
{
    ReachReader reach(snapshot, cache, upTo);
    const std::vector<Entry> entries = reach.entriesFor(cycle);
    const auto isOfIt = [cycle](const Entry& entry) { return entry.isAbout(cycle); };
    if (std::ranges::none_of(entries, isOfIt)) {
        return std::nullopt;
    }
    CycleView view;
    view.id = cycle;
    view.now = now;
    JournalReader reader(snapshot);
    view.seen = std::min(reader.head().seq, upTo);
    view.folded = foldEvidence(entries, cycle);
    view.policy = policyOf(entries, view.folded.policy);
    const Evidence evidence = assemble(view.folded.record);
    if (view.isTest()) {
        view.judgement = judgeTest(evidence, view.policy, now);
    } else {
        view.decision = decide(evidence, view.policy, now);
    }
    return view;
}

std::string sightOf(const CycleView& view)
{
    std::string text;
    if (view.isTest()) {
        text = std::string(textOf(view.judgement.result)) + '\n';
        appendFindings(text, view.judgement.findings);
        return text;
    }
    text = std::string(textOf(view.decision.verdict)) + '\n';
    for (const ItemDecision& item : view.decision.items) {
        text += item.label + '\t' + std::string(textOf(item.verdict)) + '\n';
    }
    appendFindings(text, view.decision.findings);
    return text;
}

std::string sightDigest(const CycleView& view)
{
    constexpr std::size_t digits = 16;
    return hexOf(hashOf(sightOf(view))).substr(0, digits);
}

std::optional<std::string> findCycle(ReadSnapshot& snapshot, std::string_view name)
{
    if (hasPrefix(name, "ld") && isMentioned(snapshot, std::string(name))) {
        return std::string(name);
    }
    std::string lot(name);
    for (char& c : lot) {
        c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    for (const FoundLot& found : Finder(snapshot).lotsFrom(lot, 1)) {
        if (found.lot == lot) {
            return found.cycle;
        }
    }
    return std::nullopt;
}

} // namespace loadwarden
