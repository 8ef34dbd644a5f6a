#include "core/desk/reservations.h"

#include "core/desk/act_checks.h"
#include "core/desk/recorder.h"
#include "core/store/lot_numbers.h"
#include "core/store/queries.h"

namespace loadwarden {
namespace {

/// Whether a cycle of the journal has that number, whatever the table of numbers says.
bool isTaken(WriteTransaction& transaction, const std::string& lot)
{
    Statement row = transaction.statement(sqlOf(Query::cyclesByLot, transaction.dialect()));
    row.bind(":from", lot).bind(":end", lot + '!').bind(":limit", 1);
    return row.step() && row.text(0) == lot;
}

} // namespace

OrRefusal<ReservedCycle> reserveCycle(Office& office, const SignedIn& who,
                                      const CycleWanted& wanted)
{
    ReservedCycle reserved{.cycle = office.place().ids.next("ld"), .lot = {}, .appended = {}};
    ToRecord act{.act = CycleReserved{.lot = "-",
                                      .purpose = wanted.purpose,
                                      .method = wanted.method,
                                      .cycleType = wanted.cycleType},
                 .subjects = {reserved.cycle, wanted.sterilizer}};
    if (!wanted.specification.empty()) {
        act.subjects.push_back(wanted.specification);
    }
    auto recorded = office.record([&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
        auto asked = authorFor(snapshot, who, Task::CycleReserved, nullptr, office.now());
        if (auto* const refusal = std::get_if<Refusal>(&asked)) {
            return std::move(*refusal);
        }
        auto& author = std::get<Author>(asked);
        if (auto refusal = office.whyNoEntries(std::span(&act, 1), author)) {
            return *std::move(refusal);
        }
        if (auto refusal = checkActs(snapshot, std::span(&act, 1), author, office.now())) {
            return *std::move(refusal);
        }
        return Plan{.author = std::move(author),
                    .acts = {act},
                    .inside = [&](WriteTransaction& transaction, std::vector<ToRecord>& acts) {
                        const Date today = office.zone().dateOf(office.now());
                        do {
                            reserved.lot = lotNumberText(
                                reserveLot(transaction, wanted.sterilizer.substr(3), today));
                        } while (isTaken(transaction, reserved.lot));
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
