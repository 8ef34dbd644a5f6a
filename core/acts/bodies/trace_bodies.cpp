#include "core/acts/bodies/bodies.h"

namespace loadwarden::body_format {
namespace {

constexpr Text aFileName{1, 255, false};
constexpr Text aMapping{1, 65'536, true};
constexpr Whole inBytes{0, 1'000'000'000};
constexpr Whole revisions{1, 100'000};
constexpr Whole inTraceMilliseconds{0, 1'000'000'000};
constexpr auto answers = oneOf<shownWords>;

} // namespace

template <class Io>
void members(Io& io, Ref<Io, TraceRead> act)
{
    auto& findings = act.findings;
    io.must("content", act.content, aDigest);
    io.must("fileName", act.fileName, aFileName);
    io.must("bytes", act.bytes, inBytes);
    io.must("mapping", act.mapping, aMapping);
    io.must("evaluation", act.evaluation, revisions);
    io.may("specification", findings.specification, aName);
    io.may("revision", findings.revision, revisions);
    io.may("counter", findings.counter, aCounter);
    io.may("start", act.start, aTime);
    io.may("defects", findings.defects, listOf(aName, 100));
    io.unless("exposure", Shown::notAsked, findings.exposure, answers);
    io.unless("uninterrupted", Shown::notAsked, findings.uninterrupted, answers);
    io.unless("notBelow", Shown::notAsked, findings.notBelow, answers);
    io.unless("notAbove", Shown::notAsked, findings.notAbove, answers);
    io.unless("saturated", Shown::notAsked, findings.saturated, answers);
    io.unless("drying", Shown::notAsked, findings.drying, answers);
    io.may("leastCelsiusHundredths", findings.leastCelsiusHundredths, inCelsiusHundredths);
    io.may("greatestCelsiusHundredths", findings.greatestCelsiusHundredths, inCelsiusHundredths);
    io.may("exposureLeastMs", findings.exposureLeastMs, inTraceMilliseconds);
    io.may("exposureMostMs", findings.exposureMostMs, inTraceMilliseconds);
    io.may("dryingLeastMs", findings.dryingLeastMs, inTraceMilliseconds);
    io.may("dryingMostMs", findings.dryingMostMs, inTraceMilliseconds);
}

LW_BODY(TraceRead)

} // namespace loadwarden::body_format
