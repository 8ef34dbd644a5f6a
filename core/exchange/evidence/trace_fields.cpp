#include "core/cycle/trace/trace_findings.h"
#include "core/exchange/evidence/object_types.h"

// What was computed of a recording of the cycle.

namespace loadwarden::evidence_format {

namespace {

/// Seconds with at most 3 decimals, stored as milliseconds.
template <auto... Path>
consteval Field secondsAsMs(std::string_view name)
{
    return {name, NumberRule{3, 0, 1'000'000'000,
                             [](void* owner, std::int64_t value, std::string_view) {
                                 memberAt<Path...>(owner) = value;
                             },
                             [](const void* owner) {
                                 return fetched<Path...>(owner, [](std::int64_t value) {
                                     return Number{.scaled = value};
                                 });
                             }}};
}

using Trace = TraceFindings;

constexpr auto trace =
    join(fields(id<&Trace::id>("id").must(), id<&Trace::specification>("specification"),
                whole<&Trace::revision>("revision", 1, 100'000),
                whole<&Trace::counter>("counter", 0, 1'000'000'000), time<&Trace::start>("start"),
                ids<&Trace::defects>("defects"), word<shownWords, &Trace::exposure>("exposure"),
                word<shownWords, &Trace::uninterrupted>("uninterrupted"),
                word<shownWords, &Trace::notBelow>("notBelow"),
                word<shownWords, &Trace::notAbove>("notAbove"),
                word<shownWords, &Trace::saturated>("saturated"),
                word<shownWords, &Trace::drying>("drying"),
                celsiusHundredths<&Trace::leastCelsiusHundredths>("leastCelsius"),
                celsiusHundredths<&Trace::greatestCelsiusHundredths>("greatestCelsius"),
                secondsAsMs<&Trace::exposureLeastMs>("exposureLeastSeconds"),
                secondsAsMs<&Trace::exposureMostMs>("exposureMostSeconds"),
                secondsAsMs<&Trace::dryingLeastMs>("dryingLeastSeconds"),
                secondsAsMs<&Trace::dryingMostMs>("dryingMostSeconds")),
         actFields<&Trace::act>());

} // namespace

constinit const ObjectType traceType = signedType<&Trace::act>("a trace", trace);

} // namespace loadwarden::evidence_format
