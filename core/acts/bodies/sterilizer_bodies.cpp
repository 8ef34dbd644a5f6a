#include "core/acts/bodies/bodies.h"
#include "core/indicators/indicator_words.h"
#include "core/sterilizers/sterilizer_words.h"

namespace loadwarden::body_format {
namespace {

constexpr Whole offsetSeconds{-1'000'000, 1'000'000};

} // namespace

template <class Io>
void members(Io& io, Ref<Io, ClockCompared> act)
{
    io.must("from", act.from, aTime);
    io.must("seconds", act.seconds, offsetSeconds);
}

template <class Io>
void members(Io& io, Ref<Io, SterilizerTakenOut> act)
{
    io.must("state", act.state, oneOf<serviceStateWords>);
    io.must("why", act.why, aText);
    io.require(act.state != ServiceState::inService,
               "must be out of service, in qualification or held; a return has a kind of its own");
}

template <class Io>
void members(Io& io, Ref<Io, SterilizerReturned> act)
{
    io.must("why", act.why, aText);
}

template <class Io>
void members(Io& io, Ref<Io, AlarmClassed> act)
{
    io.must("code", act.alarm.code, aName);
    io.must("effect", act.alarm.effect, oneOf<alarmEffectWords>);
}

template <class Io>
void members(Io&, Ref<Io, IncubatorOutOfRange>)
{
}

template <class Io>
void members(Io&, Ref<Io, IncubatorInRange>)
{
}

template <class Io>
void members(Io&, Ref<Io, IncidentOpened>)
{
}

template <class Io>
void members(Io& io, Ref<Io, IncidentFound> act)
{
    io.must("was", act.was, oneOf<foundToBeWords>);
    io.must("why", act.why, aText);
}

template <class Io>
void members(Io& io, Ref<Io, IncidentClosed> act)
{
    io.must("why", act.why, aText);
}

LW_BODY(ClockCompared)
LW_BODY(SterilizerTakenOut)
LW_BODY(SterilizerReturned)
LW_BODY(AlarmClassed)
LW_BODY(IncubatorOutOfRange)
LW_BODY(IncubatorInRange)
LW_BODY(IncidentOpened)
LW_BODY(IncidentFound)
LW_BODY(IncidentClosed)

} // namespace loadwarden::body_format
