#include "core/desk/tray.h"

#include "core/desk/cycle_state.h"
#include "core/desk/journal_entries.h"
#include "core/desk/look_up.h"
#include "core/desk/names.h"
#include "core/quantities/person.h"

#include <algorithm>
#include <utility>

namespace loadwarden {
namespace {

/// What was said of an item after its cycle.
struct Afterwards {
    bool isUsed = false;
    bool isEmergency = false; ///< the newest release is one
    std::string caseReference;
    std::optional<TraySignature> signature;
};

Afterwards afterwards(const FactBook& book, const std::string& cycle, const std::string& item,
                      const Names& names)
{
    Afterwards after;
    const auto sign = [&](const Entry& entry, Verdict meaning) {
        after.signature = {names.of(entry.actor), entry.role, entry.recordedAt.at, meaning};
    };
    for (const std::uint32_t index : book.about(cycle)) {
        const Fact& fact = book.facts()[index];
        const Entry& entry = fact.current();
        if (!fact.stands()) {
            continue;
        }
        if (const auto* const disposed = std::get_if<DispositionSigned>(&entry.act)) {
            const auto own = std::ranges::find(disposed->items, item, &SignedItem::item);
            sign(entry, own == disposed->items.end() ? disposed->meaning : own->meaning);
            after.isEmergency = false;
        } else if (entry.subject("it") != item) {
            continue;
        } else if (const auto* const urgent = std::get_if<EmergencyReleased>(&entry.act)) {
            sign(entry, Verdict::release);
            after.isEmergency = true;
            after.caseReference = urgent->caseReference;
        } else if (const auto* const used = std::get_if<ItemUsed>(&entry.act)) {
            after.isUsed = true;
            after.caseReference = used->caseReference;
        }
    }
    return after;
}

struct Found {
    LookedUp item;
    CycleView view;
};

/// Under the label that it bears now: what it was called before it was amended is another set.
bool isIn(const CycleView& view, const LookedUp& item)
{
    const auto& ids = view.folded.itemIds;
    const auto& items = view.folded.record.load.items;
    const auto place = static_cast<std::size_t>(std::ranges::find(ids, item.id) - ids.begin());
    return place < items.size() && isSamePerson(items[place].label, item.name);
}

/// The newest load, or that into which this very item was moved out of it. Never an older load of
/// the same label: that is what the set was before it was packed anew.
std::optional<Found> find(ReadSnapshot& snapshot, EntryCache& cache, std::string_view label,
                          Instant now)
{
    std::optional<Found> newest;
    for (const LookedUp& each : lookUpItems(snapshot, label)) {
        if (newest && each.id != newest->item.id) {
            continue;
        }
        auto view = viewCycle(snapshot, cache, each.cycle, now);
        if (!view) {
            return newest;
        }
        const bool isThere = isIn(*view, each);
        if (isThere || !newest) {
            newest = Found{each, std::move(*view)};
        }
        if (isThere || newest->view.isImported()) { // items of imported loads have no id
            break;
        }
    }
    return newest;
}

/// The verdict of an item now; where it is not among those decided, the worst that can be.
Verdict verdictOf(const CycleView& view, const std::string& item)
{
    const auto& ids = view.folded.itemIds;
    const auto place = static_cast<std::size_t>(std::ranges::find(ids, item) - ids.begin());
    return place < view.decision.items.size() ? view.decision.items[place].verdict
                                              : Verdict::reprocess;
}

TrayStand standOf(const CycleView& view, const CycleState& state, const LookedUp& found,
                  const Afterwards& after)
{
    const std::string& item = found.id;
    if (view.isImported()) {
        return TrayStand::imported;
    }
    if (view.isTest()) {
        return TrayStand::inTest;
    }
    if (!isIn(view, found)) {
        return TrayStand::leftLoad;
    }
    if (!state.ended) {
        return TrayStand::notSterilized;
    }
    if (after.isUsed) {
        return TrayStand::used;
    }
    const Verdict verdict = verdictOf(view, item);
    if (verdict == Verdict::reprocess) {
        return TrayStand::fails;
    }
    const auto released = state.released.find(item);
    const bool isReleased = released != state.released.end() && released->second;
    if (isReleased && after.isEmergency) {
        return TrayStand::emergency;
    }
    if (!after.signature) {
        return verdict == Verdict::release ? TrayStand::notSigned : TrayStand::waits;
    }
    if (!isReleased) {
        return TrayStand::signedHeld;
    }
    if (verdict != Verdict::release) {
        return TrayStand::worseSince;
    }
    if (view.folded.phase == Phase::evidenceChanged) {
        return TrayStand::changedSince;
    }
    return view.folded.isUnderstood ? TrayStand::released : TrayStand::notUnderstood;
}

} // namespace

std::optional<TraySheet> trayOf(ReadSnapshot& snapshot, EntryCache& cache, std::string_view label,
                                Instant now)
{
    const auto found = find(snapshot, cache, label, now);
    if (!found) {
        return std::nullopt;
    }
    const auto& [item, view] = *found;
    const std::vector<Entry> entries = entriesAbout(snapshot, item.cycle);
    const CycleState state = stateOfCycle(entries, item.cycle);
    const Names names(snapshot);
    const Afterwards after = afterwards(FactBook(entries), item.cycle, item.id, names);
    TraySheet sheet{.item = item.id,
                    .label = item.name,
                    .cycle = item.cycle,
                    .lot = view.lot(),
                    .sterilizer = names.of(view.folded.sterilizer),
                    .ended = state.end,
                    .stand = standOf(view, state, item, after),
                    .signature = after.signature,
                    .caseReference = after.caseReference,
                    .findings = {}};
    const auto& ids = view.folded.itemIds;
    const auto place = static_cast<std::int32_t>(std::ranges::find(ids, item.id) - ids.begin());
    std::ranges::copy_if(view.decision.findings, std::back_inserter(sheet.findings),
                         [place](const Finding& finding) {
                             return finding.outcome != Outcome::note
                                    && (finding.item < 0 || finding.item == place);
                         });
    std::ranges::stable_sort(sheet.findings, std::greater(), &Finding::outcome);
    return sheet;
}

} // namespace loadwarden
