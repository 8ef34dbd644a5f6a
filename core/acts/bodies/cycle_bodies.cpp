#include "core/acts/bodies/bodies.h"
#include "core/cycle/cycle_words.h"
#include "core/loads/load_words.h"
#include "core/quantities/method_words.h"

namespace loadwarden::body_format {

template <class Io>
void members(Io& io, Ref<Io, CycleReserved> act)
{
    io.must("lot", act.lot, aName);
    io.must("purpose", act.purpose, oneOf<purposeWords>);
    io.unless("method", Method::unknown, act.method, oneOf<methodWords>);
    io.may("cycleType", act.cycleType, aName);
}

template <class Io>
void members(Io& io, Ref<Io, CycleStarted> act)
{
    io.must("clock", act.clock, oneOf<clockWords>);
    io.must("shown", act.shown, aTime);
    io.may("counter", act.counter, aCounter);
}

template <class Io>
void members(Io& io, Ref<Io, CycleEnded> act)
{
    io.must("shown", act.shown, aTime);
    io.must("outcome", act.outcome, oneOf<outcomeWords>);
    io.may("abortPhase", act.abortPhase, oneOf<abortPhaseWords>);
    io.may("counter", act.counter, aCounter);
    io.require(act.outcome == CycleOutcome::aborted || !act.abortPhase,
               "must state the phase of an abort only where it was aborted");
}

template <class Io>
void members(Io&, Ref<Io, CycleUnloaded>)
{
}

template <class Io>
void members(Io& io, Ref<Io, PrintoutRecorded> act)
{
    io.may("program", act.program, aName);
    io.may("sterilizer", act.sterilizer, aName);
    io.may("counter", act.counter, aCounter);
    io.may("start", act.start, aTime);
    io.may("end", act.end, aTime);
}

template <class Io>
void members(Io& io, Ref<Io, PrintoutAnswered> act)
{
    io.must("answer", act.answer, oneOf<printoutAnswerWords>);
    io.may("field", act.field, oneOf<printoutFieldWords>);
    io.require((act.answer == PrintoutAnswer::recordRight) == act.field.has_value(),
               "must name the field that it confirms where the record is right, and only there");
}

template <class Io>
void members(Io&, Ref<Io, PrintoutLost>)
{
}

template <class Io>
void members(Io& io, Ref<Io, PhysicalRead> act)
{
    io.must("parameter", act.parameter, oneOf<parameterWords>);
    io.must("value", act.value, aTypedValue);
    io.require(fits(act.parameter, act.value.value.unit), "must be in a unit of its parameter");
}

template <class Io>
void members(Io& io, Ref<Io, PhysicalLost> act)
{
    io.must("parameter", act.parameter, oneOf<parameterWords>);
}

template <class Io>
void members(Io&, Ref<Io, PhysicalVerified>)
{
}

template <class Io>
void members(Io& io, Ref<Io, AlarmRecorded> act)
{
    io.must("code", act.code, aName);
}

template <class Io>
void members(Io& io, Ref<Io, AerationStarted> act)
{
    io.must("celsius", act.celsius, typedCelsius);
}

template <class Io>
void members(Io&, Ref<Io, AerationEnded>)
{
}

template <class Io>
void members(Io&, Ref<Io, AerationInterrupted>)
{
}

template <class Io>
void members(Io& io, Ref<Io, ImmediateUseStated> act)
{
    io.may("why", act.why, aText);
    io.may("caseReference", act.caseReference, aName);
    io.may("forStorage", act.forStorage, aFlag);
}

LW_BODY(CycleReserved)
LW_BODY(CycleStarted)
LW_BODY(CycleEnded)
LW_BODY(CycleUnloaded)
LW_BODY(PrintoutRecorded)
LW_BODY(PrintoutAnswered)
LW_BODY(PrintoutLost)
LW_BODY(PhysicalRead)
LW_BODY(PhysicalLost)
LW_BODY(PhysicalVerified)
LW_BODY(AlarmRecorded)
LW_BODY(AerationStarted)
LW_BODY(AerationEnded)
LW_BODY(AerationInterrupted)
LW_BODY(ImmediateUseStated)

} // namespace loadwarden::body_format
