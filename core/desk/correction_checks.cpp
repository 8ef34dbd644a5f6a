#include "core/desk/correction_checks.h"

#include "core/acts/fold/facts.h"
#include "core/desk/journal_entries.h"
#include "core/store/act_entry.h"
#include "core/store/journal_reader.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// The entry that a correction of that one has to name: its newest version, or what struck it.
std::int64_t newestVersion(const FactBook& book, std::int64_t seq)
{
    for (const Fact& fact : book.facts()) {
        const bool isIn =
            std::ranges::any_of(fact.chain, [&](const Entry* each) { return each->seq == seq; });
        if (isIn) {
            return fact.stands() ? fact.chain.back()->seq : fact.struckBy->seq;
        }
    }
    return seq;
}

std::optional<Refusal> refusalOf(MisfitWhy why, std::int64_t corrected, std::int64_t newest)
{
    switch (why) {
    case MisfitWhy::overtaken:
    case MisfitWhy::alreadyStruck: return Refusal{.why = RefusalWhy::notCurrent, .seq = newest};
    case MisfitWhy::finalAct: return Refusal{.why = RefusalWhy::notCorrectable, .seq = corrected};
    case MisfitWhy::noRight: return Refusal{.why = RefusalWhy::secondPerson};
    case MisfitWhy::positiveStays: return Refusal{.why = RefusalWhy::positiveStays};
    case MisfitWhy::nothingThere:
    case MisfitWhy::otherFact: return Refusal{.why = RefusalWhy::otherFact, .seq = corrected};
    default: return std::nullopt; // of what an act says, not of what it corrects
    }
}

/// What the fold would make of it.
std::optional<Refusal> checkEffect(ReadSnapshot& snapshot, const ToRecord& act,
                                   const Author& author, const Entry& entry)
{
    std::vector<Entry> entries = entriesAbout(snapshot, entry.subjects.front());
    const std::int64_t newest = newestVersion(FactBook(entries), entry.seq);
    const std::int64_t seq = JournalReader(snapshot).head().seq + 1;
    entries.push_back(asEntry(act, author, seq, {}));
    const FactBook book(entries);
    for (const Misfit& misfit : book.misfits()) {
        if (misfit.seq != seq) {
            continue;
        }
        if (auto refusal = refusalOf(misfit.why, entry.seq, newest)) {
            return refusal;
        }
    }
    return std::nullopt;
}

/// Whether it changes a lot control number: that stands on labels, and no other cycle may have it.
bool changesLot(const AnyAct& act, const AnyAct& before)
{
    const auto* const to = std::get_if<CycleReserved>(&act);
    const auto* const from = std::get_if<CycleReserved>(&before);
    return to != nullptr && from != nullptr && to->lot != from->lot;
}

} // namespace

std::optional<Refusal> checkCorrection(ReadSnapshot& snapshot, const ToRecord& act,
                                       const Author& author)
{
    const auto stored = JournalReader(snapshot).entry(act.supersedes);
    if (!stored) {
        return Refusal{.why = RefusalWhy::noSuchEntry, .seq = act.supersedes};
    }
    const Entry entry = understand(stored->bytes, stored->hash);
    if (act.subjects != entry.subjects) {
        return Refusal{.why = RefusalWhy::otherFact, .seq = act.supersedes};
    }
    if (std::holds_alternative<EntryAnnotated>(act.act)) {
        return std::nullopt;
    }
    if (entry.subjects.empty() || changesLot(act.act, entry.act)) {
        return Refusal{.why = RefusalWhy::notCorrectable, .seq = act.supersedes};
    }
    return checkEffect(snapshot, act, author, entry);
}

} // namespace loadwarden
