#include "core/desk/recalled_loads.h"

#include "core/desk/records.h"

namespace loadwarden {

std::vector<LoadWithLot> loadsWithLots(ReadSnapshot& snapshot, EntryCache& cache, const Zone& zone,
                                       const std::vector<std::string>& lots, Instant now,
                                       const std::function<bool()>& goesOn)
{
    std::vector<LoadWithLot> loads;
    if (lots.empty()) {
        return loads;
    }
    RecordQuestion question;
    question.productLots = lots;
    CycleViews views(snapshot, cache, now);
    CyclePlace behind;
    for (bool isEnd = false; !isEnd && (!goesOn || goesOn());) {
        const RecordPage page = findRecords(snapshot, zone, question, behind);
        for (const RecordRow& row : page.rows) {
            LoadWithLot load{.cycle = row.cycle,
                             .lot = row.lot,
                             .at = row.at,
                             .signedAs = row.signedAs,
                             .decided = {}};
            if (const auto view = views.of(row.cycle); view && !view->isImported()) {
                if (!view->isTest()) {
                    load.decided = view->decision.verdict;
                }
                load.isWorse = isWorseThanSigned(*view);
            }
            loads.push_back(std::move(load));
        }
        behind = page.last;
        isEnd = page.isEnd;
    }
    return loads;
}

} // namespace loadwarden
