#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void record(const View& view, FindingSink& sink)
{
    const LoadRecord& load = view.load;
    const auto missing = [&sink](bool isMissing, std::string_view what) {
        if (isMissing) {
            sink.add(Key::recordMissing, Outcome::waits, what);
        }
    };
    missing(view.sterilizer == nullptr, "sterilizer");
    missing(view.specification == nullptr, "specification");
    missing(load.lot.empty(), "lot");
    missing(!load.start, "start");
    missing(!load.end, "end");
    missing(!isNamed(load.operatedBy), "operator");
    missing(load.items.empty(), "items");

    const CycleTimes& times = view.evidence.load;
    const bool backwards = times.start && times.end && *times.start > *times.end;
    const auto last = times.end ? times.end : times.start;
    if (backwards || (last && *last > view.now)) {
        Finding& finding = sink.add(Key::recordTimes, Outcome::waits);
        if (!backwards) {
            finding.changesAt = last;
        }
    }
    if (view.specification != nullptr && view.method == Method::unknown) {
        sink.add(Key::recordMethodUnknown, Outcome::waits);
    }
}

} // namespace loadwarden::rules
