#include "core/desk/competence.h"

#include "core/acts/fold/facts.h"
#include "core/desk/journal_entries.h"
#include "core/desk/names.h"

#include <algorithm>
#include <map>

namespace loadwarden {
namespace {

/// As far as an entry keeps it: what each indicator looked like in detail is not recorded.
CheckResult resultOf(const ReadingCheckTaken& taken)
{
    std::vector<Drawn> drawn;
    std::vector<CheckAnswer> answers;
    for (const CheckedDrawing& each : taken.drawings) {
        Drawn one;
        one.product = each.product;
        one.truth = each.drawn;
        drawn.push_back(std::move(one));
        answers.push_back({.readAs = each.answer, .tookMs = each.ms});
    }
    return loadwarden::resultOf(static_cast<std::uint64_t>(taken.number), std::move(drawn),
                                std::move(answers))
        .value_or(CheckResult{});
}

/// Visits the checks that stand, in the order in which they were taken.
template <class Visit>
void eachCheck(ReadSnapshot& snapshot, Visit visit)
{
    const std::vector<Entry> entries = registerEntries(snapshot, "rc");
    const FactBook book(entries);
    for (const Fact& fact : book.facts()) {
        const auto* const taken = std::get_if<ReadingCheckTaken>(&fact.current().act);
        if (taken != nullptr && fact.stands()) {
            visit(*fact.origin, *taken);
        }
    }
}

} // namespace

std::vector<CheckTaken> newestChecks(ReadSnapshot& snapshot)
{
    std::map<std::string, CheckTaken> byReader;
    const Names names(snapshot);
    eachCheck(snapshot, [&](const Entry& entry, const ReadingCheckTaken& taken) {
        const CheckResult result = resultOf(taken);
        byReader[entry.actor] = {.reader = entry.actor,
                                 .name = names.of(entry.actor),
                                 .at = entry.happenedAt.at,
                                 .number = taken.number,
                                 .of = static_cast<std::int64_t>(taken.drawings.size()),
                                 .right = result.right,
                                 .acceptedWhatFails = result.acceptedWhatFails};
    });
    std::vector<CheckTaken> all;
    for (auto& [reader, check] : byReader) {
        all.push_back(std::move(check));
    }
    std::ranges::stable_sort(all, std::greater(), &CheckTaken::at);
    return all;
}

std::optional<ReadersAgree> agreementOfReaders(ReadSnapshot& snapshot)
{
    std::map<std::int64_t, std::map<std::string, CheckResult>> byNumber;
    std::map<std::int64_t, Instant> newest;
    eachCheck(snapshot, [&](const Entry& entry, const ReadingCheckTaken& taken) {
        byNumber[taken.number][entry.actor] = resultOf(taken);
        newest[taken.number] = entry.happenedAt.at;
    });
    std::optional<ReadersAgree> best;
    Instant bestAt{};
    for (const auto& [number, byReader] : byNumber) {
        std::vector<CheckResult> readers;
        for (const auto& [reader, result] : byReader) {
            readers.push_back(result);
        }
        const auto agreement = agreementOf(readers);
        if (!agreement) {
            continue;
        }
        const bool isMore = !best || agreement->readers > best->agreement.readers;
        const bool isNewer =
            best && agreement->readers == best->agreement.readers && newest[number] > bestAt;
        if (isMore || isNewer) {
            best = ReadersAgree{number, *agreement};
            bestAt = newest[number];
        }
    }
    return best;
}

} // namespace loadwarden
