#include "core/desk/reservations.h"

#include "core/desk/act_checks.h"
#include "core/desk/recorder.h"
#include "core/store/lot_numbers.h"

namespace loadwarden {

OrRefusal<ReservedCycle> reserveCycle(Office& office, const SignedIn& who,
                                      const CycleWanted& wanted)
{
    std::optional<Author> author;
    {
        ReadSnapshot snapshot(office.connection());
        auto asked = authorFor(snapshot, who, Task::CycleReserved, nullptr, office.now());
        if (auto* const refusal = std::get_if<Refusal>(&asked)) {
            return std::move(*refusal);
        }
        author = std::get<Author>(std::move(asked));
    }
    ReservedCycle reserved{.cycle = office.place().ids.next("ld"), .lot = {}, .appended = {}};
    ToRecord act{.act = CycleReserved{.lot = "-",
                                      .purpose = wanted.purpose,
                                      .method = wanted.method,
                                      .cycleType = wanted.cycleType},
                 .subjects = {reserved.cycle, wanted.sterilizer}};
    if (!wanted.specification.empty()) {
        act.subjects.push_back(wanted.specification);
    }
    auto recorded = office.record(*author, [&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
        auto asked = authorFor(snapshot, who, Task::CycleReserved, nullptr, office.now());
        if (auto* const refusal = std::get_if<Refusal>(&asked)) {
            return std::move(*refusal);
        }
        if (auto refusal = checkActs(snapshot, std::span(&act, 1), office.now())) {
            return *std::move(refusal);
        }
        return Plan{.acts = {act},
                    .inside = [&](WriteTransaction& transaction, std::vector<ToRecord>& acts) {
                        const Date today = office.zone().dateOf(office.now());
                        reserved.lot = lotNumberText(
                            reserveLot(transaction, wanted.sterilizer.substr(3), today));
                        std::get<CycleReserved>(acts.front().act).lot = reserved.lot;
                    }};
    });
    if (auto* const refusal = std::get_if<Refusal>(&recorded)) {
        return std::move(*refusal);
    }
    reserved.appended = std::get<Appended>(recorded);
    return reserved;
}

} // namespace loadwarden
