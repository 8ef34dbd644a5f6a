#include "core/release/cycle_contexts.h"

namespace loadwarden {

CycleContext contextOf(const HistoryCycle& cycle, const CycleTimes& times)
{
    return {.day = times.day,
            .end = times.end,
            .method = cycle.method,
            .cycleType = cycle.cycleType,
            .lot = cycle.lot};
}

CycleContext sheetContextOf(const HistoryCycle& cycle, const CycleTimes& times)
{
    CycleContext context = contextOf(cycle, times);
    context.method = Method::steam;
    context.asksCycleType = false;
    return context;
}

CycleContext loadContextOf(const EvidenceRecord& record, const CycleTimes& times)
{
    CycleContext context{.day = times.day, .end = times.end, .lot = record.load.lot};
    if (record.specification) {
        context.method = record.specification->method;
        context.cycleType = record.specification->cycleType;
    }
    return context;
}

} // namespace loadwarden
