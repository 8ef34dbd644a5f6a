"""Rule `trace`: what the sterilizer's trace of the cycle shows (section 5).

Temperatures are compared in degrees Fahrenheit, times in milliseconds; both are reached by multiplication alone, so
decimal arithmetic stays exact.
"""

from evidence import happened, person, recorded
from findings import Finding
from moments import MINUTE, from_end_on, moment
from physical import NINE_FIFTHS, fahrenheit, milliseconds

RULE = "trace"
SHOWN = ("exposure", "uninterrupted", "notBelow", "saturated")      # what a trace should tell, exposure in any case
# parameter: the trace's least and most of it
EXTREMES = {"temperature": ("leastCelsius", "greatestCelsius"),
            "exposure": ("exposureLeastSeconds", "exposureMostSeconds"),
            "drying": ("dryingLeastSeconds", "dryingMostSeconds")}


def counts(case, trace):
    """Whether a trace's act stands and happened from the load's end on; no end: at any time."""
    end = case.load.end
    return case.stands(trace) and (end is None or from_end_on(happened(trace), end))


def counter_agrees(case, trace):
    """Whether a trace's counter is the load's; None: one of them is not there."""
    own = case.load.counter
    return trace["counter"] == own if own is not None and "counter" in trace else None


def start_agrees(case, trace):
    """Whether a trace's start, by the sterilizer's clock, is the load's; None: one is not there, or an offset unknown."""
    if "start" not in trace or not start_is_known(case):
        return None
    shown = moment(trace["start"])
    offset = case.clock_offset(shown)
    if offset is None:
        return None
    return abs(shown - offset - case.load.start) <= case.policy["printout.clock_tolerance_minutes"] * MINUTE


def of_this_cycle(case, trace):
    """Whether nothing shows that a trace is another cycle's."""
    return counter_agrees(case, trace) is not False and start_agrees(case, trace) is not False


def says_whose(case, trace):
    """Whether something shows that a trace is this cycle's."""
    return counter_agrees(case, trace) is True or start_agrees(case, trace) is True


def start_is_known(case):
    """Whether the load has a start that is of the facility's clock or can be corrected."""
    if case.load.start is None:
        return False
    return case.raw.get("clock", "facility") == "facility" or case.clock_offset(moment(case.raw["start"])) is not None


def of_specification(case, trace):
    """Whether a trace was computed by the load's specification, in its revision."""
    return all(name in trace and trace[name] == case.spec.get(own)
               for name, own in (("specification", "id"), ("revision", "revision")))


def spoilt(case, trace):
    """Whether a trace has a defect by which it cannot be judged."""
    return any(defect not in case.policy["trace.passable_defects"] for defect in trace.get("defects", ()))


def is_fit(case, trace):
    """Whether a trace may speak for the load."""
    return (counts(case, trace) and of_this_cycle(case, trace) and of_specification(case, trace)
            and not spoilt(case, trace))


def shows_all(case, trace):
    """Whether a trace tells what it should, and whose it is."""
    return "exposure" in trace and all(trace.get(each) != "open" for each in SHOWN) and says_whose(case, trace)


def rule_trace(case):
    if not case.has_spec or case.method not in ("unknown", "steam"):
        return
    traces = case.raw.get("traces", ())
    asked = case.policy["trace.asked"] == "yes"
    if asked and not any(counts(case, trace) for trace in traces):
        yield Finding(RULE, "trace.missing", "waits")
    for trace in traces:
        yield from of_one(case, trace, asked)
    for parameter in differing(case, [trace for trace in traces if of_this_cycle(case, trace)]):
        yield Finding(RULE, "trace.differs", "waits", parameter)


def of_one(case, trace, asked):
    """What is said of one trace, whatever its act."""
    subject, fit = trace["id"], is_fit(case, trace)

    def say(key, outcome):
        if outcome != "review":
            return Finding(RULE, key, outcome, subject)
        return Finding(RULE, key, outcome, subject, None, "lead", recorded(trace), [person(trace)])

    if not of_this_cycle(case, trace):
        yield say("trace.other-cycle", "waits")
    if not of_specification(case, trace):
        yield say("trace.other-specification", "waits")
    if not counts(case, trace) or spoilt(case, trace):
        yield say("trace.unusable", "waits" if asked else "note")
    besides = "review" if fit and trace.get("exposure") == "met" else "fails"      # held long enough besides
    above = "fails" if case.policy["physical.above_maximum"] == "fails" else "review"
    for answer, key, outcome in (("exposure", "trace.exposure-short", "fails"),
                                 ("uninterrupted", "trace.interrupted", besides), ("notBelow", "trace.below", besides),
                                 ("notAbove", "trace.above", above), ("saturated", "trace.not-saturated", "review"),
                                 ("drying", "trace.drying-short", "review")):
        if trace.get(answer) == "not-met":
            yield say(key, outcome)
    if fit and not shows_all(case, trace):
        yield say("trace.not-shown", "review" if asked else "note")


def differing(case, traces):
    """The parameters of which a reading, standing or not, lies too far outside what a trace has of it."""
    for parameter, (least, most) in EXTREMES.items():
        readings = [r for r in case.raw.get("readings", ()) if r["parameter"] == parameter]
        if any(outside(case, parameter, reading, trace.get(least), trace.get(most))
               for reading in readings for trace in traces):
            yield parameter


def outside(case, parameter, reading, least, most):
    """Whether a reading is below the least or above the most by more than is allowed; None: that side is left out."""
    if parameter == "temperature":
        value = fahrenheit(reading["celsius"]) if "celsius" in reading else reading["fahrenheit"]
        allowed, in_base = case.policy["trace.differs_kelvin"] * NINE_FIFTHS, fahrenheit
    else:
        value, allowed = milliseconds(reading), case.policy["trace.differs_seconds"] * 1000
        in_base = lambda seconds: seconds * 1000  # noqa: E731
    return (least is not None and value < in_base(least) - allowed
            or most is not None and value > in_base(most) + allowed)
