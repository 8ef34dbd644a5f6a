#include "core/desk/load_view.h"

#include "core/acts/fold/imported.h"
#include "core/desk/journal_entries.h"
#include "core/exchange/policy_reader.h"
#include "core/journal/header.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"
#include "core/store/finder.h"
#include "core/store/imported_lot.h"
#include "core/store/store_error.h"

#include <algorithm>
#include <span>

namespace loadwarden {
namespace {

/// The policy of a digest; the default where none was ever recorded; nullopt where this program
/// cannot read what was recorded.
std::optional<Policy> policyOf(std::span<const Entry* const> entries,
                               const std::optional<std::string>& digest)
{
    if (!digest) {
        return defaultPolicy();
    }
    for (const Entry* const entry : entries) {
        const auto* const recorded = std::get_if<PolicyRecorded>(&entry->act);
        if (recorded == nullptr || recorded->digest != *digest
            || hexOf(hashOf(recorded->toml)) != *digest) {
            continue;
        }
        auto read = readPolicy(recorded->toml, "policy of entry " + std::to_string(entry->seq));
        if (auto* const policy = std::get_if<Policy>(&read)) {
            return std::move(*policy);
        }
    }
    return std::nullopt;
}

/// What was signed last of a cycle; null where nothing was.
const DispositionSigned* newestDisposition(std::span<const Entry* const> entries,
                                           std::string_view cycle)
{
    const DispositionSigned* newest = nullptr;
    for (const Entry* const entry : entries) {
        const auto* const act = std::get_if<DispositionSigned>(&entry->act);
        if (act != nullptr && entry->isAbout(cycle)) {
            newest = act;
        }
    }
    return newest;
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

bool mayHoldImplant(const CycleView& view)
{
    return !view.isTest()
           && std::ranges::any_of(view.folded.record.load.items,
                                  [](const Item& item) { return item.implant != Implant::no; });
}

bool isWorseThanSigned(const CycleView& view)
{
    if (!view.signedAs || view.isTest()) {
        return false;
    }
    if (*view.signedAs < view.decision.verdict) {
        return true;
    }
    const auto& ids = view.folded.itemIds;
    for (std::size_t i = 0; i < view.decision.items.size() && i < ids.size(); ++i) {
        const auto own = std::ranges::find(view.signedItems, ids[i], &SignedItem::item);
        const Verdict meaning = own == view.signedItems.end() ? *view.signedAs : own->meaning;
        if (meaning < view.decision.items[i].verdict) {
            return true;
        }
    }
    return false;
}

CycleViews::CycleViews(ReadSnapshot& snapshot, EntryCache& cache, Instant now, std::int64_t upTo)
    : m_reach(snapshot, cache, upTo),
      m_now(now),
      m_seen(std::min(JournalReader(snapshot).head().seq, upTo))
{
}

const std::optional<Policy>& CycleViews::policyOf(std::span<const Entry* const> entries,
                                                  const std::optional<std::string>& digest)
{
    // Every policy is in reach of every cycle.
    const auto [place, isNew] = m_policies.try_emplace(digest);
    if (isNew) {
        place->second = loadwarden::policyOf(entries, digest);
    }
    return place->second;
}

std::optional<CycleView> CycleViews::of(std::string_view cycle)
{
    const std::vector<const Entry*> entries = m_reach.entriesFor(cycle);
    const auto isOfIt = [cycle](const Entry* entry) { return entry->isAbout(cycle); };
    if (std::ranges::none_of(entries, isOfIt)) {
        return std::nullopt;
    }
    CycleView view;
    view.id = cycle;
    view.now = m_now;
    view.seen = m_seen;
    view.folded = foldEvidence(entries, cycle);
    if (const auto* const disposed = newestDisposition(entries, cycle)) {
        view.signedAs = disposed->meaning;
        view.signedItems = disposed->items;
    }
    if (const Entry* const old = importedLoad(FactBook(entries), cycle).entry) {
        view.imported = *old;
    }
    if (const auto& policy = policyOf(entries, view.folded.policy)) {
        view.policy = *policy;
    } else {
        // Shown by the default one, and nothing can be signed.
        view.policy = defaultPolicy();
        view.folded.isUnderstood = false;
    }
    const Evidence evidence = assemble(view.folded.record);
    if (view.isTest()) {
        view.judgement = judgeTest(evidence, view.policy, m_now);
    } else {
        view.decision = decide(evidence, view.policy, m_now);
    }
    return view;
}

std::optional<CycleView> viewCycle(ReadSnapshot& snapshot, EntryCache& cache,
                                   std::string_view cycle, Instant now, std::int64_t upTo)
{
    return CycleViews(snapshot, cache, now, upTo).of(cycle);
}

std::int64_t newestAt(ReadSnapshot& snapshot, Instant moment)
{
    JournalReader reader(snapshot);
    std::int64_t before = 0; // recorded by then, as far as is known
    std::int64_t after = reader.head().seq + 1;
    while (after - before > 1) {
        const std::int64_t middle = before + (after - before) / 2;
        const auto stored = reader.entry(middle);
        EntryHeader header;
        if (!stored || !readHeader(stored->bytes, header)) {
            throw engineError(StoreFault::damaged,
                              "entry " + std::to_string(middle) + " cannot be read");
        }
        (header.recordedAt.at <= moment ? before : after) = middle;
    }
    return before;
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

std::string sightDigest(const CycleView& view, std::int64_t seen)
{
    constexpr std::size_t digits = 16;
    const std::string sight = view.id + '\n' + std::to_string(seen) + '\n' + sightOf(view);
    return hexOf(hashOf(sight)).substr(0, digits);
}

std::vector<std::string> cyclesNamed(ReadSnapshot& snapshot, std::string_view name)
{
    if (hasPrefix(name, "ld") && isMentioned(snapshot, std::string(name))) {
        return {std::string(name)};
    }
    constexpr std::int64_t most = 100;
    const std::string lot = capitalLot(name);
    Finder finder(snapshot);
    std::vector<std::string> own;
    std::vector<std::string> imported;
    for (const FoundLot& found : finder.lotsFrom(lot, most)) {
        if (found.lot != lot) {
            break; // in the order of their bytes: the number itself comes before all longer ones
        }
        const auto cycle = finder.cycle(found.cycle);
        const bool isOld = cycle && cycle->purpose == importedPurpose;
        (isOld ? imported : own).push_back(found.cycle);
    }
    return own.empty() ? imported : own;
}

std::optional<std::string> findCycle(ReadSnapshot& snapshot, std::string_view name)
{
    std::vector<std::string> cycles = cyclesNamed(snapshot, name);
    // Where several bear it, which is meant is not for us to choose.
    return cycles.size() == 1 ? std::optional(std::move(cycles.front())) : std::nullopt;
}

} // namespace loadwarden
