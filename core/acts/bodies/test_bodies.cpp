#include "core/acts/bodies/bodies.h"
#include "core/sterilizers/sterilizer_words.h"

namespace loadwarden::body_format {
namespace {

constexpr Typed riseMbar{3, -1'000'000, 1'000'000};

} // namespace

template <class Io>
void members(Io& io, Ref<Io, TestConditionsRecorded> act)
{
    io.may("chamberEmpty", act.chamberEmpty, aFlag);
    io.may("dryingRun", act.dryingRun, aFlag);
    io.may("exposureMinutes", act.exposureMinutes, typedMinutes);
    io.may("exposureCelsius", act.exposureCelsius, typedCelsius);
}

template <class Io>
void members(Io& io, Ref<Io, LeakRead> act)
{
    io.may("settledMinutes", act.settledMinutes, typedMinutes);
    io.may("minutes", act.minutes, typedMinutes);
    io.may("riseMbar", act.riseMbar, riseMbar);
}

template <class Io>
void members(Io& io, Ref<Io, TestPhysicalJudged> act)
{
    io.must("good", act.good, aFlag);
}

template <class Io>
void members(Io& io, Ref<Io, TestVoidExplained> act)
{
    io.must("why", act.why, aText);
}

template <class Io>
void members(Io& io, Ref<Io, FailureRecorded> act)
{
    io.must("kind", act.kind, oneOf<failureKindWords>);
}

template <class Io>
void members(Io& io, Ref<Io, FailureResolved> act)
{
    io.must("cause", act.causeKnown, oneOf<causeWords>);
    io.must("reach", act.reach, oneOf<reachWords>);
    io.must("what", act.what, aText);
}

LW_BODY(TestConditionsRecorded)
LW_BODY(LeakRead)
LW_BODY(TestPhysicalJudged)
LW_BODY(TestVoidExplained)
LW_BODY(FailureRecorded)
LW_BODY(FailureResolved)

} // namespace loadwarden::body_format
