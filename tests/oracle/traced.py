"""Small full products like those of crossed.py around rule `trace`: answers and what makes a trace fit, the acts, the cycle's
counter and clocks, what says whose it is, and readings one step before, at and after the value from which they differ.

The load of the bases ran from 07:00 to 07:50; the sterilizer's clock is a minute ahead.
"""

import copy

from crossed import DAY, edge, every, reviewed
from pieces import act, all_of, drop, keep, limit_of, put

LOAD_TRACES = ("load", "traces")
FIRST = LOAD_TRACES + (0,)
ANSWERS = ("exposure", "uninterrupted", "notBelow", "notAbove", "saturated", "drying")
TRACE = {"id": "T1", "specification": "sp-p1", "revision": 1, "counter": 1010, "start": DAY % "07:01", "defects": [],
         "leastCelsius": 132, "greatestCelsius": 134, "exposureLeastSeconds": 240, "exposureMostSeconds": 300,
         "dryingLeastSeconds": 1200, "dryingMostSeconds": 1260, **dict.fromkeys(ANSWERS, "met"), **act(DAY % "08:00")}


def of(**changes):
    """A trace with changes; None: left out."""
    trace = copy.deepcopy(TRACE)
    for name, value in changes.items():
        if value is None:
            trace.pop(name, None)
        else:
            trace[name] = value
    return trace


def traces(*each):
    return put(LOAD_TRACES, list(each))


GIVEN = [traces(TRACE)]


def shows(answer):
    """The four things that a trace says of one answer."""
    return [put(FIRST + (answer,), said) for said in ("met", "open", "not-met")] + [drop(FIRST + (answer,))]


def also(**changes):
    """Changes of the first trace."""
    def change(record):
        record["load"]["traces"][0].update(copy.deepcopy(changes))
    return change


NOBODYS = all_of(drop(FIRST + ("counter",)), drop(FIRST + ("start",)))      # of this cycle, and nothing says so
# Fit or not, by each of the things that make it so; the last is fit.
FITNESS = [keep, also(defects=["midnight"]), also(defects=["gap"]), also(revision=2), drop(FIRST + ("specification",)),
           also(counter=1011), also(role="viewer"), also(happenedAt=DAY % "07:49:59.999"), drop(("load", "end")), NOBODYS]
NOT_MET = also(uninterrupted="not-met")                 # review of a fit trace, else fails

HELD = ("steam-prevacuum", [GIVEN, shows("exposure"), shows("uninterrupted"), shows("notBelow"), FITNESS])
BESIDES = ("steam-prevacuum", [GIVEN, shows("notAbove"), shows("saturated"), shows("drying"), FITNESS])
SPECIFICATION = ("steam-prevacuum", [
    GIVEN, [keep, drop(FIRST + ("specification",)), also(specification="SP-P1"), also(specification="sp-p1 ")],
    [keep, drop(FIRST + ("revision",)), also(revision=2)], [keep, put(("specification", "revision"), 2)],
    [keep, NOT_MET, also(saturated="open")]])
DEFECTS = ("steam-prevacuum", [
    GIVEN, [drop(FIRST + ("defects",))] + [also(defects=list(each)) for each in (
        (), ("free-line",), ("midnight",), ("last-line-open",), ("midnight", "free-line", "last-line-open"), ("gap",),
        ("midnight", "gap"), ("gap", "midnight"), ("Midnight",), ("midnight ",), ("midnight", "midnight"))],
    [keep, NOT_MET, also(saturated="open"), also(exposure="open", uninterrupted="not-met"), also(exposure="not-met")]])

# Another cycle's ---------------------------------------------------------------------------------
STARTS = [keep, drop(FIRST + ("start",))] + [also(start=DAY % clock) for clock in (
    "07:06", "07:06:00.001", "06:56", "06:55:59.999", "07:03", "07:03:00.001", "07:01:00.001")]
OTHER_CYCLE = ("steam-prevacuum", [
    GIVEN, [keep, drop(FIRST + ("counter",)), also(counter=1011), also(counter=0)],
    [keep, drop(("load", "counter")), put(("load", "counter"), 1011)], STARTS, [keep, NOT_MET]])
CLOCKS = ("steam-prevacuum", [
    GIVEN, [keep, drop(FIRST + ("counter",))], STARTS,
    [keep, drop(("load", "start")), put(("load", "clock"), "facility"), put(("load", "clock"), "sterilizer"),
     all_of(put(("load", "clock"), "sterilizer"), put(("load", "start"), DAY % "07:01"))],
    [keep, put(("sterilizer", "clockOffsets"), []), drop(("sterilizer",))]
    + [put(("sterilizer", "clockOffsets"), [{"from": DAY % clock, "seconds": seconds}])
       for clock in ("07:00:00.001", "07:01", "07:06") for seconds in (0, 60)]
    + [put(("sterilizer", "clockOffsets", 1), {"from": DAY % clock, "seconds": 600}) for clock in edge("07:06", "07:07")],
    [NOT_MET]])
OFF_BY_THE_END = ("steam-prevacuum", [      # the offset of the load's end does not matter here
    GIVEN, [put(("sterilizer", "clockOffsets"), [{"from": DAY % "07:20", "seconds": 60}])],
    [put(("load", "clock"), "sterilizer"), keep], [drop(FIRST + ("counter",))], STARTS, [NOT_MET]])

# What says whose a trace is, on either side, of one that is fit or not.
WHOSE = ("steam-prevacuum", [
    GIVEN, [keep, drop(FIRST + ("counter",)), drop(("load", "counter")), also(counter=1011)],
    [keep, drop(FIRST + ("start",)), drop(("load", "start")), put(("sterilizer", "clockOffsets"), []), also(start=DAY % "07:07"),
     put(("sterilizer", "clockOffsets"), [{"from": DAY % "07:00:30", "seconds": 60}])],      # the trace's offset alone
    [put(("load", "clock"), each) for each in ("facility", "sterilizer")], shows("exposure"), [keep, also(saturated="open")],
    [keep, also(revision=2), also(role="viewer"), also(defects=["gap"])]])

# Acts ------------------------------------------------------------------------------------------------
COUNTS = ("steam-prevacuum", [
    GIVEN, [also(happenedAt=DAY % clock, recordedAt=DAY % "08:00") for clock in edge("07:50", "07:51")],
    [put(("load", "end"), DAY % clock) for clock in ("07:50", "07:50:00.001", "07:50:59.999", "07:51")] + [drop(("load", "end"))],
    [keep, also(role="viewer"), also(role="lead"), drop(FIRST + ("by",)), also(by="-"), also(recordedAt=DAY % "11:00"),
     also(recordedAt=DAY % "11:00:00.001"), also(recordedAt=DAY % "07:49:59.999")],
    [keep, NOT_MET, also(saturated="open"), also(exposure="not-met")]])
LATE = ("steam-prevacuum", [
    GIVEN, [put(("decideAt",), DAY % "13:00")],
    [also(recordedAt=DAY % clock) for clock in ("12:00", "12:00:00.001", "08:00")], [keep, NOT_MET]])
SEVERAL = ("steam-prevacuum", [
    [keep, traces(), traces(TRACE)]
    + [traces(*pair) for bad in (of(id="T2", role="viewer"), of(id="T2", happenedAt=DAY % "07:49"), of(id="T2", counter=1),
                                 of(id="T2", revision=None), of(id="T2", defects=["gap"]), of(id="T2", exposure="not-met"),
                                 of(id="T2", saturated="open"), of(id="T2", drying="not-met"))
       for pair in ((bad,), (TRACE, bad), (bad, TRACE), (bad, dict(bad, id="T3")))],
    [keep, NOT_MET],
    [keep, drop(("specification", "method")), put(("specification", "purpose"), "immediate-use"), drop(("specification",))]
    + [put(("specification", "method"), each) for each in ("unknown", "dry-heat", "ethylene-oxide", "hydrogen-peroxide")]])
ELSEWHERE = [(name, [GIVEN + [keep], [keep, NOT_MET, also(exposure="not-met"), also(counter=0)],
                     [keep, put(("specification", "method"), "steam"), put(("specification", "method"), "unknown")]])
             for name in ("dry-heat", "ethylene-oxide", "hydrogen-peroxide", "immediate-use", "steam-gravity", "steam-flush")]

# What was typed against what was recorded ------------------------------------------------------------
TYPED = act(DAY % "08:00")


def typed(parameter, unit, *values, of_nobody=False):
    """One reading of a parameter at each of the values; of a viewer, too, which helps nothing."""
    def change(value):
        def to(record):
            kept = [r for r in record["load"]["readings"] if r["parameter"] != parameter]
            own = dict(TYPED, role="viewer") if of_nobody else TYPED
            record["load"]["readings"] = kept + [dict(own, parameter=parameter, **{unit: value})]
        return to
    return [change(value) for value in values]


def around(*values, step):
    """Each value with one step below and one above it."""
    return [round(value + apart, 3) for value in values for apart in (-step, 0, step)]


# A trace of this cycle, whatever else it is; then another cycle's, by either sign, and none.
WHATEVER = [keep, also(revision=2), also(defects=["gap"]), also(role="viewer"), also(happenedAt=DAY % "07:49"), NOBODYS,
            also(counter=1011), also(start=DAY % "07:07"), drop(LOAD_TRACES)]
NO_LIMIT = limit_of("temperature", leastCelsius=125)
# Of the trace 132 to 134 degrees Celsius, as far apart as each policy allows.
TEMPERATURE = ("steam-prevacuum", [
    GIVEN, [NO_LIMIT],
    typed("temperature", "celsius", *around(131, 131.5, 132, 134, 134.5, 135, step=0.01))
    + typed("temperature", "fahrenheit", *around(267.8, 268.7, 269.6, 273.2, 274.1, 275, step=0.01))
    + typed("temperature", "celsius", 130.99, 135.01, of_nobody=True),
    [keep, drop(FIRST + ("leastCelsius",)), drop(FIRST + ("greatestCelsius",)), also(leastCelsius=132.05),
     also(greatestCelsius=133.95)], WHATEVER])
SECONDS = [("steam-prevacuum", [
    GIVEN, typed(parameter, "seconds", *around(least - 60, least - 30, least, most, most + 30, most + 60, step=0.001))
    + typed(parameter, "minutes", *around(*(each / 60 for each in (least - 60, least - 30, least, most, most + 30, most + 60)),
                                          step=0.001))
    + typed(parameter, "minutes", least / 60 - 1.001, of_nobody=True),
    [keep, drop(FIRST + (parameter + "LeastSeconds",)), drop(FIRST + (parameter + "MostSeconds",)),
     also(**{parameter + "LeastSeconds": least + 0.001}), also(**{parameter + "MostSeconds": most - 0.001})], WHATEVER])
    for parameter, least, most in (("exposure", 240, 300), ("drying", 1200, 1260))]
# Two readings and two traces, of which one differs from one.
BOTH = ("steam-prevacuum", [
    [traces(TRACE, of(id="T2", **more)) for more in ({}, {"leastCelsius": 134, "greatestCelsius": 136},
                                                     {"leastCelsius": 134, "counter": 1}, {"leastCelsius": 134, "revision": 2},
                                                     {"leastCelsius": 134, "defects": ["gap"]})],
    [keep] + [put(("load", "readings", 9), dict(TYPED, parameter="temperature", celsius=each)) for each in (130.99, 131, 135, 135.01)],
    [keep] + [put(("load", "readings", 10), dict(TYPED, parameter=parameter, seconds=each))
              for parameter in ("exposure", "drying") for each in (179.999, 1140, 1320.001)]])

# Reviews ---------------------------------------------------------------------------------------------
REVIEWED = [(key, changes) for key, changes in (
    ("interrupted", also(uninterrupted="not-met")), ("below", also(notBelow="not-met")), ("above", also(notAbove="not-met")),
    ("not-saturated", also(saturated="not-met")), ("drying-short", also(drying="not-met")),
    ("not-shown", also(notBelow="open")), ("not-shown", drop(FIRST + ("exposure",))), ("not-shown", NOBODYS),
    ("unusable", also(defects=["gap"])), ("unusable", also(happenedAt=DAY % "07:49")),
    ("exposure-short", also(exposure="not-met")))]
REVIEWS = [("steam-prevacuum", [
    [traces(of(by=by, recordedAt=DAY % "08:30")) for by in ("p3", "P 4")], [shown],
    [reviewed("trace." + key, by, role, seen, "10:00", subject=subject)
     for by, role in (("p3", "lead"), ("p4", "supervisor"), ("p5", "lead"), ("p1", "lead"), ("p3", "operator"))
     for seen in ("08:30", "08:29:59.999") for subject in ("T1", None, "T2")],
    [keep, drop(FIRST + ("by",)), also(revision=2)]]) for key, shown in REVIEWED]
TWO_ASK = ("steam-prevacuum", [
    [traces(of(saturated="not-met"), of(id=name, saturated="not-met", recordedAt=DAY % clock)) for name in ("T2",)
     for clock in ("08:00", "09:00")],
    [keep] + [reviewed("trace.not-saturated", "p4", "supervisor", "08:00", "10:00", subject=each) for each in ("T1", "T2")],
    [keep, put(("load", "reviews", 1), dict(act(DAY % "10:00", "p3", "lead"), finding="trace.not-saturated", subject="T2",
                                            answer="isolated", newestSeen=DAY % "09:00", why="the cause was found"))]])

PRODUCTS = [HELD, BESIDES, SPECIFICATION, DEFECTS, OTHER_CYCLE, CLOCKS, OFF_BY_THE_END, WHOSE, COUNTS, LATE, SEVERAL,
            TEMPERATURE, BOTH, TWO_ASK] + ELSEWHERE + SECONDS + REVIEWS

# Policies beyond those of boundaries.py under which these are decided.
ASKED = {
    "asked": {"trace.asked": '"yes"', "trace.passable_defects": '["midnight"]', "trace.differs_kelvin": "0.5",
              "trace.differs_seconds": "30", "printout.clock_tolerance_minutes": "2"},
    "asked-exactly": {"trace.asked": '"yes"', "trace.passable_defects": "[]", "trace.differs_kelvin": "0",
                      "trace.differs_seconds": "0", "printout.clock_tolerance_minutes": "0",
                      "physical.above_maximum": '"fails"'},
}


def records():
    """Every record of every product."""
    return every(PRODUCTS)
