#include "core/cycle/limits.h"
#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

/// The greatest reading of a time, standing or not; 0 where there is none.
Duration longest(const LoadRecord& load, Parameter time)
{
    Duration longest{};
    for (const ParameterReading& reading : load.readings) {
        if (reading.parameter == time) {
            longest = std::max(longest, Duration::milliseconds(milliseconds(reading.value)));
        }
    }
    return longest;
}

/// Whether a cycle ended before its exposure and drying could have run. A minute is allowed for
/// times that were written without their seconds.
bool isTooShort(const LoadRecord& load, Duration ran)
{
    return ran + Duration::minutes(1)
           < longest(load, Parameter::exposure) + longest(load, Parameter::drying);
}

} // namespace

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
    missing(!isNamed(load.lot), "lot");
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
    if (times.start && times.end && !backwards && isTooShort(load, *times.end - *times.start)) {
        sink.add(Key::recordTooShort, Outcome::waits);
    }
    if (view.specification != nullptr && view.method == Method::unknown) {
        sink.add(Key::recordMethodUnknown, Outcome::waits);
    }
}

} // namespace loadwarden::rules
