#include "core/desk/competence.h"

#include "core/acts/fold/facts.h"
#include "core/desk/journal_entries.h"
#include "core/desk/names.h"

#include <algorithm>
#include <functional>
#include <map>
#include <utility>

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
    // The same number draws otherwise once other products are registered: another check then. Who
    // takes one again has been told the right answers: the first time counts.
    struct Check {
        std::int64_t number = 0;
        std::vector<std::pair<std::string, Seen>> drawn;
        std::map<std::string, CheckResult> readers;
        Instant newest{};
    };
    std::vector<Check> checks;
    eachCheck(snapshot, [&](const Entry& entry, const ReadingCheckTaken& taken) {
        std::vector<std::pair<std::string, Seen>> drawn;
        for (const CheckedDrawing& each : taken.drawings) {
            drawn.emplace_back(each.product, each.drawn);
        }
        auto check = std::ranges::find_if(checks, [&](const Check& each) {
            return each.number == taken.number && each.drawn == drawn;
        });
        if (check == checks.end()) {
            checks.push_back({.number = taken.number, .drawn = drawn, .readers = {}});
            check = checks.end() - 1;
        }
        check->readers.try_emplace(entry.actor, resultOf(taken));
        check->newest = entry.happenedAt.at;
    });
    std::ranges::stable_sort(checks, std::greater(), [](const Check& each) {
        return std::pair(each.readers.size(), each.newest);
    });
    for (const Check& check : checks) {
        std::vector<CheckResult> readers;
        for (const auto& [reader, result] : check.readers) {
            readers.push_back(result);
        }
        if (const auto agreement = agreementOf(readers)) {
            return ReadersAgree{check.number, *agreement};
        }
    }
    return std::nullopt;
}

} // namespace loadwarden
