"""Traces of the sterilizer: the one that a releasable load has, and random changes that aim at rule `trace`.

A change is a function of the Scenario, as in changes.py, and comes after counters and `now` are given.
"""

from math import ceil, floor

from changes import BARE, near, text
from moments import MINUTE
from scenario import DAY, T

TRACE_LATE = []
ANSWERS = ("exposure", "uninterrupted", "notBelow", "notAbove", "saturated", "drying")
DEFECTS = ("free-line", "midnight", "last-line-open")
# What makes a trace unusable, and what is nearly a defect by which it can be judged.
SPOILT = ("gap", "clock-back", "Midnight", "free-line ", "midnight-2", "last-line")
EXTREMES = {"temperature": ("leastCelsius", "greatestCelsius"),
            "exposure": ("exposureLeastSeconds", "exposureMostSeconds"),
            "drying": ("dryingLeastSeconds", "dryingMostSeconds")}


def late(weight):
    return lambda f: TRACE_LATE.append((f, weight)) or f


# a trace that agrees with its load ------------------------------------------------------------------
def read_values(g, parameter):
    """The load's readings of a parameter, in degrees Celsius or seconds."""
    out = []
    for reading in g.load.get("readings", ()):
        if reading["parameter"] != parameter:
            continue
        if parameter == "temperature":
            out.append(reading["celsius"] if "celsius" in reading else (reading["fahrenheit"] - 32) / 1.8)
        else:
            out.append(reading["minutes"] * 60 if "minutes" in reading else reading["seconds"])
    return out


def extremes(g, parameter, digits):
    """The least and greatest of a parameter in a trace, which hold all its readings; None: there are none."""
    values = read_values(g, parameter)
    if not values:
        return None
    scale, room = 10 ** digits, g.pick((0, 0, 0.3, 5))
    least, most = floor(min(values) * scale) / scale, ceil(max(values) * scale) / scale
    return max(0, round(least - room, digits)), round(most + room, digits)


def make_trace(g, name="trace-1"):
    """A trace that counts, is of the load's cycle, which its counter or start shows, and fit, and met everything."""
    at = g.end + g.minutes(0, 5)
    out = g.act(at, recorded=at + g.pick((0, 0, MINUTE)), id=name, specification=g.specification["id"],
                revision=g.specification["revision"])
    if "counter" in g.load and g.chance(0.8):
        out["counter"] = g.load["counter"]
    if "counter" not in out or g.chance(0.75):
        tolerance = g.policy["printout.clock_tolerance_minutes"]
        out["start"] = T(g.shown(g.start) + g.pick((0, 0, tolerance * MINUTE, -tolerance * MINUTE)))
    passable = g.policy["trace.passable_defects"]
    if passable and g.chance(0.4):
        out["defects"] = [g.pick(passable) for _ in range(g.pick((1, 1, 2)))]
    elif g.chance(0.3):
        out["defects"] = []
    for answer in ANSWERS:
        if answer == "exposure" or g.chance(0.9) and (answer != "drying" or g.drying):
            out[answer] = "met"
    for parameter, names in EXTREMES.items():
        found = extremes(g, parameter, 2 if parameter == "temperature" else 3)
        for name_of, value in zip(names, found or ()):
            if g.chance(0.9):
                out[name_of] = value
    return out


def free_name(traces):
    """A name that none of them has."""
    names = {each["id"] for each in traces}
    return next(name for name in map("trace-%d".__mod__, range(1, len(names) + 2)) if name not in names)


def give_traces(g):
    """The traces of a releasable load: asked for always one; of other methods, which the rule skips, seldom."""
    asked = g.policy["trace.asked"] == "yes"
    if g.chance(0.1 if g.method != "steam" else 1 if asked else 0.4):
        g.load["traces"] = [make_trace(g)]
        if g.chance(0.12):
            g.load["traces"].append(make_trace(g, "trace-2"))


def of_load(g):
    """A trace of the load, which may have been given it; None: not of steam, mostly."""
    if g.method != "steam" and not g.chance(0.1):
        return None
    traces = g.load.setdefault("traces", [])
    if not traces:
        traces.append(make_trace(g))
    return g.pick(traces)


def left_out_or(g, trace, name, value):
    """A field left out, else the value."""
    if g.chance(0.35):
        trace.pop(name, None)
    else:
        trace[name] = value


# what a change spoils: each of them may come twice, and with others ---------------------------------
def spoil_answers(g, trace):
    """One or several answers, of which exposure is often met beside what was not."""
    for answer in g.rng.sample(ANSWERS + ("notAbove", "notAbove", "saturated", "drying"), g.pick((1, 1, 1, 2, 3))):
        trace[answer] = g.pick(("not-met", "not-met", "not-met", "open", "met"))
    if g.chance(0.4):
        trace["exposure"] = "met"
    if g.chance(0.15):
        trace.pop(g.pick(ANSWERS + ("exposure", "exposure")), None)


def spoil_specification(g, trace):
    """Computed by another specification or revision, by none that is stated, or the load's was revised since."""
    how = g.pick(("specification", "revision", "revision", "load"))
    if how == "specification":
        left_out_or(g, trace, "specification", g.pick(("spec-2", "SPEC-1", "spec-1 ")))
    elif how == "revision":
        left_out_or(g, trace, "revision", g.specification["revision"] + 1)
    else:
        g.specification["revision"] = 2


def spoil_defects(g, trace):
    """Defects: some by which a trace can be judged, some by which it cannot."""
    trace["defects"] = [g.pick(DEFECTS + SPOILT) for _ in range(g.pick((0, 1, 1, 1, 2, 3)))]


def spoil_act(g, trace):
    """Unsigned, a viewer's, of impossible times, or around the end."""
    how = g.pick(("unsigned", "viewer", "future", "before", "early", "early", "early"))
    if how == "unsigned":
        left_out_or(g, trace, "by", g.pick(BARE))
    elif how == "viewer":
        trace["role"] = "viewer"
    elif how == "future":
        trace["recordedAt"] = T(g.now + g.pick((0, 1, DAY)))
    elif how == "before":
        trace["recordedAt"] = T(trace["happenedAt"] - g.pick((0, 1)))
    else:
        trace["happenedAt"] = T(near(g, g.end))
        if g.chance(0.5):
            trace["recordedAt"] = T(trace["happenedAt"])
        if g.chance(0.15):
            g.load.pop("end", None)


def spoil_counter(g, trace):
    """Another counter, or one that is not on both sides."""
    own = g.load.get("counter", 500)
    how = g.pick(("other", "other", "own", "left-out", "load"))
    if how == "load":
        g.load.pop("counter", None)
        trace["counter"] = own
    elif how == "left-out":
        trace.pop("counter", None)
    else:
        trace["counter"] = own + (g.pick((-1, 1, 100)) if how == "other" else 0)


def spoil_start(g, trace):
    """A start around the printout's tolerance, by clocks whose offset is known or not."""
    tolerance = g.policy["printout.clock_tolerance_minutes"] * MINUTE
    apart = g.pick((-1, 1)) * (tolerance + g.pick((-MINUTE, -1, 0, 0, 1, 1, MINUTE, DAY)))
    trace["start"] = T(g.shown(g.start) + apart)
    if g.chance(0.6):               # nothing else tells whether it is this cycle's
        trace.pop("counter", None)
    how = g.pick(("", "", "", "none", "edge", "load-clock", "load-unknown", "load-unknown", "load-start"))
    offsets = g.sterilizer.setdefault("clockOffsets", [])
    if how == "none":
        offsets.clear()
        g.load["clock"] = g.pick(("facility", "sterilizer"))
    elif how == "edge":             # another offset from its own start on, or from just after it
        offsets.append({"from": T(trace["start"] + g.pick((-1, 0, 0, 1))), "seconds": g.offset + g.pick((0, 1, 600, -600))})
        if g.chance(0.3):
            del offsets[:-1]
    elif how == "load-clock":
        g.load["clock"] = "facility" if g.load.get("clock") == "sterilizer" else "sterilizer"
    elif how == "load-unknown":     # the offset of the one of them that is later is known, of the other not
        g.load["clock"], g.load["start"] = "sterilizer", g.shown(g.start)
        offsets[:] = [{"from": T(max(trace["start"], g.load["start"])), "seconds": g.offset}]
    elif how == "load-start":
        g.load.pop("start", None)


def spoil_whose(g, trace):
    """Neither counter nor start on both sides with offsets that are known; or one of them after all."""
    if g.chance(0.9):
        (trace if g.chance(0.7) else g.load).pop("counter", None)
    how = g.pick(("trace", "trace", "trace", "load", "none", "after", "keep"))
    if how == "trace":
        trace.pop("start", None)
    elif how == "load":
        g.load.pop("start", None)
    elif how == "none":
        g.sterilizer["clockOffsets"] = []
    elif how == "after" and "start" in trace:       # an offset from just after its start, or from it
        g.sterilizer["clockOffsets"] = [{"from": T(trace["start"] + g.pick((0, 1, 1))), "seconds": g.offset}]


SPOILS = (spoil_answers, spoil_answers, spoil_specification, spoil_defects, spoil_act, spoil_counter, spoil_start, spoil_whose)


@late(28)
def answers(g):
    """What a trace shows, of one that is fit or, by one thing more, may not be."""
    trace = of_load(g)
    if trace is None:
        return False
    g.want_review = True
    spoil_answers(g, trace)
    if g.chance(0.3):
        g.pick(SPOILS)(g, trace)


@late(8)
def held_besides(g):
    """Long enough without a break, though it was broken or below before; fit or not."""
    trace = of_load(g)
    if trace is None:
        return False
    g.want_review = True
    trace["exposure"] = g.pick(("met", "met", "met", "open"))
    if g.chance(0.08):
        del trace["exposure"]
    trace[g.pick(("uninterrupted", "notBelow"))] = "not-met"
    if g.chance(0.2):
        trace["uninterrupted"] = trace["notBelow"] = "not-met"
    if g.chance(0.35):
        g.pick(SPOILS[2:])(g, trace)


@late(4)
def from_the_end(g):
    """In the minute of the end or just before it, of a trace of which that makes a difference."""
    trace = of_load(g)
    if trace is None:
        return False
    g.want_review = True
    minute = g.end // MINUTE * MINUTE
    trace["happenedAt"] = T(g.pick((minute, minute, minute - 1, g.end - 1, g.end)))
    trace["recordedAt"] = T(g.end + g.pick((0, MINUTE)))
    trace[g.pick(("uninterrupted", "notBelow"))] = g.pick(("not-met", "open"))


@late(12)
def unfit(g):
    """A trace that cannot speak for the load, or of which nothing says whose it is, by one thing or two."""
    trace = of_load(g)
    if trace is None:
        return False
    for _ in range(g.pick((1, 1, 2))):
        g.pick(SPOILS[2:])(g, trace)


@late(4)
def of_any_cycle(g):
    """A fit trace of which nothing says whose it is, or that does not say how long it was held."""
    trace = of_load(g)
    if trace is None:
        return False
    g.want_review = True
    if g.chance(0.7):
        spoil_whose(g, trace)
    else:
        trace.pop("exposure", None)
    if g.chance(0.3):
        g.pick(SPOILS)(g, trace)


@late(5)
def several(g):
    """Several traces, of which each may be anything."""
    if of_load(g) is None:
        return False
    traces = g.load["traces"]
    while len(traces) < g.pick((2, 2, 3)):
        traces.append(make_trace(g, free_name(traces)))
        if g.chance(0.7):
            g.pick(SPOILS)(g, traces[-1])
    if g.chance(0.4):
        g.want_review = True
        g.pick(SPOILS)(g, traces[0])
    if g.chance(0.3):
        traces.reverse()


@late(4)
def no_traces(g):
    """None, or none that counts."""
    if g.method != "steam":
        return False
    if g.chance(0.6):
        g.load["traces"] = []
    else:
        for trace in g.load.get("traces", ()):
            spoil_act(g, trace)


@late(9)
def differs(g):
    """A reading as far outside a trace as still agrees, a step less, a step more; in either unit."""
    trace = of_load(g)
    if trace is None:
        return False
    parameter = g.pick(("temperature", "exposure", "drying"))
    least, most = EXTREMES[parameter]
    side, sign = g.pick(((least, -1), (most, 1)))
    if parameter == "temperature":
        bound = round(g.celsius + g.pick((0, 0.05, 1.37, 2)), 2)
        value = bound + sign * float(g.policy["trace.differs_kelvin"])
        if g.chance(0.5):
            read = {"celsius": round(value + g.pick((-0.01, 0, 0, 0.01)), 2)}
        else:
            read = {"fahrenheit": round(value * 1.8 + 32 + g.pick((-0.01, 0, 0, 0.01)), 2)}
    else:
        bound = round((g.exposure if parameter == "exposure" else g.drying) * 60 + g.pick((0, 0.001, 90, 61.5)), 3)
        value = bound + sign * float(g.policy["trace.differs_seconds"])
        if g.chance(0.5):
            read = {"seconds": max(0, round(value + g.pick((-0.001, 0, 0, 0.001)), 3))}
        else:
            read = {"minutes": max(0, round(value / 60 + g.pick((-0.001, 0, 0, 0.001)), 3))}
    trace[side] = bound
    other = most if side == least else least
    if g.chance(0.3):
        trace.pop(other, None)
    elif other in trace and (trace[other] - bound) * sign > 0:      # no trace's least is above its greatest
        trace[other] = bound
    readings = g.load.setdefault("readings", [])
    if g.chance(0.8):
        readings[:] = [reading for reading in readings if reading["parameter"] != parameter]
    readings.append(g.act(g.end, g.pick(("operator",) * 9 + ("viewer",)), recorded=g.end, parameter=parameter, **read))
    if g.chance(0.3):               # before it one that may hold the reading
        g.load["traces"].insert(0, make_trace(g, free_name(g.load["traces"])))
    if g.chance(0.25):
        g.pick(SPOILS[2:])(g, trace)
    elif g.chance(0.15):            # what spoils it takes nothing of the difference back
        spoil_defects(g, trace)
    if g.chance(0.05):
        trace["by"] = text(g, "op-1")
