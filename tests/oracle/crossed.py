"""Small full products: for each few things that interact, every combination of their levels around their limits.

A product is a base of tests/data/worked_cases and lists of changes, of which each list's first leaves the record as
it is or sets what the others vary. The load of the bases ran from 07:00 to 07:50 (ethylene oxide 10:30).
"""

import copy
import itertools

from pieces import act, all_of, base, drop, keep, limit_of, lot, product, put, readings, settings

DAY = "2031-03-04T%s-06:00"


def at(clock, **more):
    """An act of that morning by a supervisor."""
    return act(DAY % clock, "p4", "supervisor", **more)


def edge(clock, after):
    """A minute, the last moment before it, and the last of it."""
    before = "%02d:%02d" % divmod(int(clock[:2]) * 60 + int(clock[3:]) - 1, 60)
    return [clock, before + ":59.999", clock + ":59.999", after]


# From the end on -----------------------------------------------------------------------------------
ENDS = [put(("load", "end"), DAY % clock) for clock in ("07:50", "07:50:00.001", "07:50:59.999", "07:51")]
LATE_ENOUGH = ("07:50", "07:49:59.999", "07:51")


def every_act_at(clock):
    """Everything that counts from the end on happened then, recorded later."""
    def change(record):
        load, late = record["load"], {"happenedAt": DAY % clock, "recordedAt": DAY % "08:00"}
        load["printout"].update(late)
        for reading in load["readings"]:
            reading.update(late)
        for item in load["items"]:
            item["checks"][0].update(late)
            item["external"]["readings"][0].update(late)
        load["pcds"][0]["indicators"][0]["readings"][0].update(late)
    return change


FROM_THE_END = ("steam-prevacuum", [
    ENDS, [every_act_at(clock) for clock in LATE_ENOUGH],
    [keep, drop(("load", "end")), put(("load", "readings"), [])],
    [keep] + [put(("load", "verifications"), [act(DAY % clock, by)]) for clock in LATE_ENOUGH for by in ("p2", "P 1")]])

# Aeration ------------------------------------------------------------------------------------------
RUN = ("load", "aerationRuns", 0)


def minutes_stated(minutes):
    def change(record):
        record["sterilizer"]["aeration"]["minutes"] = minutes
        for part in record["packagings"] + [d for item in record["load"]["items"] for d in item["devices"]]:
            part["aerationMinutes"] = 0
    return change


def warmth(stated, over):
    def change(record):
        record["sterilizer"]["aeration"]["celsius"] = stated
        record["load"]["aerationRuns"][0]["celsius"] = round(stated + over, 2)
    return change


def second_run(record):
    """Another run, as warm as stated, of four hours."""
    celsius = record["sterilizer"]["aeration"]["celsius"]
    record["load"]["aerationRuns"].append({"start": act(DAY % "12:00"), "end": act(DAY % "16:00"), "celsius": celsius})


RUN_ENDS = [put(RUN + ("end", "happenedAt"), DAY % clock) for clock in ("14:30", "14:29:59.999")] + [drop(RUN + ("end",))]
AERATION_WARMTH = ("ethylene-oxide", [
    [minutes_stated(239), minutes_stated(240)],
    [warmth(stated, over) for stated in (19.99, 20, 80, 80.01) for over in (-0.01, 0, 30, 30.01)],
    [put(RUN + ("start", "happenedAt"), DAY % "10:30")], RUN_ENDS, [keep, second_run],
    [keep, put(("decideAt",), DAY % "14:29")]])
AERATION_TIMES = ("ethylene-oxide", [
    [minutes_stated(240)], [put(("load", "end"), DAY % clock) for clock in ("10:30", "10:30:30")],
    [put(RUN + ("start", "happenedAt"), DAY % clock) for clock in ("10:30", "10:29:59.999", "10:31")], RUN_ENDS,
    [keep] + [put(("decideAt",), DAY % clock) for clock in ("14:29:59.999", "14:30", "14:30:59.999", "14:31")]])

# Limits and settings -------------------------------------------------------------------------------
def as_read(unit, value):
    """The readings of temperature say this, a little more than nothing above it."""
    def change(record):
        for reading in record["load"]["readings"]:
            if reading["parameter"] == "temperature":
                for other in ("celsius", "fahrenheit"):
                    reading.pop(other, None)
                reading[unit] = round(value + 0.1, 2)
    return change


def least_and_setting(base_name, parameter, unit, values):
    """Limit, setting, or both at each of the values."""
    names = {"celsius": ("leastCelsius", "celsius"), "fahrenheit": ("leastFahrenheit", "fahrenheit"),
             "minutes": ("leastMinutes", "exposureMinutes")}[unit]
    only = {"celsius": None} if unit == "fahrenheit" else {}
    changes = [keep]
    for value in values:
        limit, setting = limit_of(parameter, **{names[0]: value}), settings(**only, **{names[1]: value})
        if parameter == "temperature":      # else the reading of the program's own warmth is implausible
            setting = all_of(setting, as_read(unit, value))
        changes += [limit, setting, all_of(limit, setting)]
    return base_name, [changes]


PLAUSIBLE = [
    least_and_setting("steam-prevacuum", "temperature", "celsius", (110, 109.99, 110.01)),
    least_and_setting("steam-prevacuum", "temperature", "fahrenheit", (230, 229.99, 230.01)),
    least_and_setting("steam-prevacuum", "exposure", "minutes", (2, 1.999, 2.001, 0, 0.001)),
    least_and_setting("dry-heat", "temperature", "celsius", (110, 109.99, 110.01)),
    least_and_setting("dry-heat", "exposure", "minutes", (5, 4.999, 5.001, 0)),
    least_and_setting("ethylene-oxide", "temperature", "celsius", (25, 24.99, 25.01)),
    least_and_setting("ethylene-oxide", "exposure", "minutes", (30, 29.999, 30.001, 0)),
    least_and_setting("hydrogen-peroxide", "temperature", "celsius", (0, 20)),
    least_and_setting("hydrogen-peroxide", "exposure", "minutes", (0, 0.001, 0.999, 1, 1.001)),
]
STATED = [(name, [[keep, settings(celsius=None, fahrenheit=None), settings(celsius=None, fahrenheit=270)],
                  [keep, settings(exposureMinutes=None), settings(exposureMinutes=0)],
                  [keep, settings(dryingMinutes=None), settings(dryingMinutes=0)],
                  [keep, put(("specification", "purpose"), "immediate-use"), put(("specification", "purpose"), "routine")],
                  [keep, put(("specification", "method"), "unknown"), drop(("specification", "settings"))]])
          for name in ("steam-prevacuum", "immediate-use", "dry-heat", "ethylene-oxide", "hydrogen-peroxide")]
TEMPERATURE_TWICE = ("steam-prevacuum", [
    [keep] + [limit_of("temperature", **{side + "Celsius": 132, side + "Fahrenheit": round(269.6 + apart, 2)})
              for side in ("least", "most") for apart in (0, 0.9, 0.91, -0.9, -0.91)],
    [keep] + [settings(fahrenheit=round(269.6 + apart, 2)) for apart in (0, 0.9, 0.91, -0.9, -0.91)]])
PRESSURE_TWICE = ("steam-prevacuum", [
    [keep] + [limit_of("pressure", **pair) for pair in (
        {"leastKPaGauge": 200, "leastBarGauge": 2.01}, {"leastKPaGauge": 200, "leastBarGauge": 2.011},
        {"leastKPaAbsolute": 301.325, "leastKPaGauge": 199}, {"leastKPaAbsolute": 301.325, "leastKPaGauge": 198.999},
        {"mostBarAbsolute": 3, "mostKPaAbsolute": 301}, {"mostBarAbsolute": 3, "mostKPaAbsolute": 301.001},
        {"leastPsiGauge": 100, "leastKPaGauge": 690.475}, {"leastPsiGauge": 100, "leastKPaGauge": 690.476})],
    [put(("facility", "atmosphereKPa"), 101.325), keep],
    [put(("load", "readings", 9), act(DAY % "08:00", parameter="pressure", kPaGauge=value)) for value in (150, 250)]])
GAS_RECORD = ("ethylene-oxide", [
    [put(("sterilizer", "recordsConcentration"), value) for value in (True, False)]
    + [drop(("sterilizer", "recordsConcentration"))],
    [put(("sterilizer", "recordsHumidity"), value) for value in (True, False)] + [drop(("sterilizer", "recordsHumidity"))],
    [keep, limit_of("concentration"), limit_of("concentration", mostMgPerL=900)],
    [keep, limit_of("humidity"), limit_of("humidity", mostPercent=80)],
    [keep, limit_of("temperature"), limit_of("temperature", mostCelsius=60)],
    [keep, put(("specification", "method"), "hydrogen-peroxide")]])

# The register, dates, activation -------------------------------------------------------------------
EXPIRIES = (None, 0, "2031-03-03", "2031-03-04", "2041-03-04", "2041-03-05")
VIAL, INDICATOR = ("load", "pcds", 0, "vials", 0), ("load", "pcds", 0, "indicators", 0)
REGISTER = ("steam-prevacuum-implant", [
    [lot("BIO-ST", each) for each in EXPIRIES] + [put(VIAL + ("product",), "NONE")],
    [lot("INT5-ST", each) for each in EXPIRIES],
    [keep, put(VIAL + ("readings",), []), put(VIAL + ("lost",), act(DAY % "09:30")), put(VIAL + ("alsoUsedIn",), ["L-3"]),
     drop(VIAL + ("incubationStart",)), put(VIAL + ("readings", 0, "seen"), "unclear")],
    [keep, put(INDICATOR + ("alsoUsedIn",), ["L-3"]), put(INDICATOR + ("readings",), []),
     put(INDICATOR + ("lost",), act(DAY % "09:30"))]])
ACTIVATION = ("steam-prevacuum-implant", [
    [put(VIAL + ("activation", "happenedAt"), DAY % clock) for clock in edge("08:10", "08:11") + edge("07:50", "07:51")]
    + [drop(VIAL + ("activation",))],
    [put(VIAL + ("incubationStart",), DAY % clock) for clock in ("08:10", "08:10:30", "07:50", "07:49:59.999")]
    + [drop(VIAL + ("incubationStart",))],
    [put(("load", "end"), DAY % clock) for clock in ("07:50", "07:50:30")] + [drop(("load", "end"))],
    [put(("controls", 0, "activation", "happenedAt"), DAY % clock) for clock in edge("08:00", "08:01")],
    [put(("controls", 0, "incubationStart"), DAY % clock) for clock in ("08:00", "08:00:30")]])
NEEDED_OR_NOT = [product("BIO-ST", needsActivation=each) for each in (True, False)]
ACTIVATIONS = [None, act(DAY % "07:49:59.999"), act(DAY % "08:08"), act(DAY % "08:11"), act(DAY % "08:08", "p1", "viewer")]


def beginnings(*path, acts=ACTIVATIONS):
    """Every activation of a vial, put to incubate or not."""
    return [all_of(change, start) for change in
            [drop(path + ("activation",)) if each is None else put(path + ("activation",), each) for each in acts]
            for start in (keep, drop(path + ("incubationStart",)))]


# What takes a vial out whether or not it was put to incubate, and how it was read.
BESIDE_BEGINNING = [("processIndicator", "unchanged"), ("lost", act(DAY % "09:30")), ("voided", act(DAY % "09:30", "p3", "lead")),
                    ("alsoUsedIn", ["L-3"]), ("lot", "NONE"), ("incubator", "NONE"), ("readings", []),
                    ("readings", readings(("unclear", DAY % "09:15", "p1"))),
                    ("readings", readings(("growth", DAY % "09:15", "p1")))]
BEGINNING = ("steam-prevacuum-implant", [
    beginnings(*VIAL), NEEDED_OR_NOT, [keep] + [put(VIAL + (field,), value) for field, value in BESIDE_BEGINNING],
    [keep, put(("controls",), []), put(("controls", 0, "readings", 0, "seen"), "no-growth")],
    [keep, put(("load", "items", 1, "implant"), "no")], [keep, put(("decideAt",), "2031-03-06T12:00-06:00")]])
BEGINNING_TEST = ("test-qualification", [
    beginnings("test", "vials", 0), NEEDED_OR_NOT,
    [keep] + [put(("test", "vials", 0, field), value) for field, value in BESIDE_BEGINNING], [keep, drop(("test", "end"))]])

# What an unclear vial is besides -------------------------------------------------------------------
SEEN = [readings(("unclear", DAY % "09:15", "p1")),
        readings(("unclear", DAY % "09:15", "p1"), ("no-growth", DAY % "09:16", "p2")),
        readings(("no-growth", DAY % "09:15", "p1")), readings()]


def vial_with(identifier, seen, **more):
    return dict({"id": identifier, "product": "BIO-ST", "lot": "LOT-B", "incubator": "INC-1",
                 "activation": act(DAY % "08:08"), "incubationStart": DAY % "08:10", "processIndicator": "changed",
                 "readings": seen}, **more)


BESIDES = [{}, {"voided": act(DAY % "09:30", "p3", "lead")}, {"voided": act(DAY % "09:30", "p3")},
           {"lost": act(DAY % "09:30", "p2")}, {"lost": act(DAY % "09:30", "p2", "viewer")}, {"alsoUsedIn": ["L-3"]},
           {"processIndicator": "unchanged"}, {"lot": "NONE"}, {"lot": "NONE", "lost": act(DAY % "09:30", "p2")}]
SECOND = [vial_with("V2", SEEN[2]), vial_with("V2", []), vial_with("V2", [], voided=act(DAY % "09:30", "p3", "lead")),
          vial_with("V2", readings(("growth", DAY % "09:15", "p1")),
                    incidentFinding=act(DAY % "09:30", "p4", "supervisor", was="control"))]
GROUPS = [keep, put(("controls",), []), put(("controls", 0, "readings", 0, "seen"), "no-growth")]
UNCLEAR = ("steam-prevacuum-implant", [
    [put(("load", "pcds", 0, "vials"), [vial_with("V1", seen, **besides)]) for seen in SEEN for besides in BESIDES]
    + [put(("load", "pcds", 0, "vials"), [{name: value for name, value in vial_with("V1", seen).items() if name != gone}])
       for seen in SEEN for gone in ("incubationStart", "processIndicator")],
    [keep] + [put(("load", "pcds", 0, "vials", 1), second) for second in SECOND], GROUPS,
    [keep, put(("load", "items", 1, "implant"), "no")],
    [put(("decideAt",), moment) for moment in (DAY % "11:00", "2031-03-04T23:59:59.999-06:00", "2031-03-05T00:00-06:00")]])


def cleared(positive):
    """Another cycle of the type is said to clear a positive before it."""
    def change(record):
        record["sterilizer"]["cycles"][2]["cycleType"] = record["specification"]["cycleType"]
        record["sterilizer"]["service"].append(at("06:50", state="in-service"))
        if positive:
            grown = {"id": "V9", "readings": readings(("growth", DAY % "03:00", "p1"))}
            other_cycle("02:00", "02:30", 999, vials=[grown], cycleType=record["specification"]["cycleType"])(record)
            record["sterilizer"]["cycles"][-1]["lot"] = "P1"
            record["sterilizer"]["incidents"] = [
                {"positiveLot": "P1", "closings": [at("06:55", negativeLot="OTHER")]}]
    return change


def earlier_vials(kind):
    """A cycle of the morning with each vial, alone and with a second."""
    early = {"activation": act(DAY % "06:01"), "incubationStart": DAY % "06:02"}
    return [other_cycle("05:50", "06:00", 1003, kind, vials=[vial_with("V1", seen, **early, **besides)] + more)
            for seen in SEEN for besides in BESIDES
            for more in ([], [dict(SECOND[0], **early)], [dict(SECOND[2], **early)])]


def other_cycle(start, end, counter, kind="load", **more):
    def change(record):
        cycle = {"kind": kind, "lot": "OTHER", "method": "steam", "start": DAY % start, "outcome": "ended", **more}
        if end:
            cycle["end"] = DAY % end
        if counter:
            cycle["counter"] = counter
        record["sterilizer"]["cycles"].append(copy.deepcopy(cycle))
    return change


UNCLEAR_EARLIER = ("steam-prevacuum", [
    earlier_vials("load") + earlier_vials("qualification"), [cleared(False), cleared(True)], GROUPS])
EARLIER = ("sterilizer", "cycles", -1, "vials", 0)
BEGINNING_EARLIER = ("steam-prevacuum", [
    [other_cycle("05:50", "06:00", 1003, kind, vials=[vial_with("V1", SEEN[2], incubationStart=DAY % "06:10")],
                 cycleType="pv-132-wrapped") for kind in ("load", "qualification")],
    beginnings(*EARLIER, acts=[None] + [act(DAY % clock) for clock in ("05:59:59.999", "06:05", "06:11")]), NEEDED_OR_NOT,
    [keep] + [put(EARLIER + (field,), value) for field, value in BESIDE_BEGINNING], [keep, cleared(True)]])
UNCLEAR_TEST = ("test-qualification", [
    [put(("test", "vials"), [dict(vial_with("V1", seen, **besides))] + more) for seen in SEEN for besides in BESIDES
     for more in ([], [SECOND[0]], [SECOND[2]])], GROUPS])

# Settling ------------------------------------------------------------------------------------------
ANSWERS = {"pcd": ("front-in-accept-zone", "front-on-boundary"), "vial": ("no-growth", None), "control": ("growth", "no-growth")}


def settled_again():
    """Unclear, settled by another, then a third and a fourth answer by each of the persons; records."""
    for place, (good, bad) in ANSWERS.items():
        for second, third, by, fourth, last in itertools.product(
                ("p2", "P 1"), ("unclear", good), ("p1", "P 1", "p2", "p3", "", "p4"), (None, "unclear", good, bad),
                ("p1", "p2", "p3")):
            if fourth is None and last != "p1":
                continue
            rows = [("unclear", DAY % "09:15", "p1"), (good, DAY % "09:16", second), (third, DAY % "09:17", by)]
            if fourth is not None:
                rows.append((fourth, DAY % "09:18", last))
            record = base("steam-prevacuum-implant")
            thing_of(record, place)["readings"] = readings(*rows)
            yield record


def thing_of(record, place):
    pcd = record["load"]["pcds"][0]
    return {"pcd": pcd["indicators"][0], "vial": pcd["vials"][0], "control": record["controls"][0]}[place]


def given_by_the_voider():
    """A bad or unclear answer taken out by each, and a good one by each, in either order; records."""
    for place in ("pcd", "control"):
        good, bad = ANSWERS[place]
        for seen, reader, voider, role, noted, by, first in itertools.product(
                (bad, "unclear", "absent" if place == "pcd" else bad), ("p1", ""), ("p3", " P 3", ""), ("lead", "operator"),
                ("09:14:59.999", "09:15", "09:40"), ("p3", "P3 ", "p2"), (True, False)):
            void = act(DAY % "09:10", voider, role, recordedAt=DAY % noted)
            taken = dict(act(DAY % "09:15", reader, seen=seen), voided=void)
            given = act(DAY % ("09:20" if first else "09:12"), by, seen=good)
            record = base("steam-prevacuum-implant")
            thing_of(record, place)["readings"] = [taken, given]
            yield record


# Order ---------------------------------------------------------------------------------------------
ORDER = ("steam-prevacuum", [
    [other_cycle(start, end, counter) for counter in (None, 1009, 1010, 1011) for start, end in (
        ("06:30", "07:00"), ("06:30", "07:00:59.999"), ("06:30", "07:01"), ("06:30", None), ("07:50", "08:20"),
        ("07:49:59.999", "08:20"), ("07:50", "07:49:59.999"), ("07:10", "07:20"), ("06:00", "08:30"))],
    [keep, put(("load", "start"), DAY % "07:00:30"), drop(("load", "start"))],
    [keep, put(("load", "end"), DAY % "07:50:30"), drop(("load", "end"))],
    [keep, drop(("load", "counter"))]])
HISTORY = ("steam-prevacuum", [
    [other_cycle(start, None, counter) for start in ("05:00", "05:00:00.001", "05:30", "05:29:59.999", "06:00", "08:30")
     for counter in (None, 1000, 1001, 1002, 1003)],
    [keep, put(("sterilizer", "cycles", 0, "counter"), 1002), put(("sterilizer", "cycles", 0, "counter"), 1003),
     drop(("sterilizer", "cycles", 0, "counter"))]])

# The printout and its answers ----------------------------------------------------------------------
DOUBTS = [keep] + [drop(("load", "printout", field)) for field in ("program", "sterilizer", "counter", "start", "end")] + [
    put(("load", "printout", "program"), "P9"), put(("load", "printout", "counter"), 1002), drop(("load", "counter")),
    put(("load", "printout", "start"), DAY % "07:30"), put(("sterilizer", "clockOffsets"), []),
    all_of(put(("sterilizer", "clockOffsets"), []), drop(("load", "printout", "start"))),
    all_of(*[drop(("load", "printout", field)) for field in ("program", "sterilizer", "counter", "start", "end")])]


def answered(*fields):
    def change(record):
        record["load"]["printoutAnswers"] = [dict(act(DAY % "08:00", "p3", "lead", answer="record-right"),
                                                  **({"field": field} if field else {})) for field in fields]
    return change


def answers_by(by):
    def change(record):
        for answer in record["load"]["printoutAnswers"]:
            answer["by"] = by
    return change


PRINTOUT = ("steam-prevacuum", [
    DOUBTS, [answered(field) for field in ("program", "sterilizer", "counter", "start", "end", None)]
    + [answered("start", "end"), answered("program", "sterilizer", "counter", "start", "end")],
    [keep, answers_by("P 2"), answers_by("p1")],
    [keep, put(("load", "operator"), "p9"), put(("load", "printout", "by"), "p2")]])

# Holds, resolutions --------------------------------------------------------------------------------
HOLD_AT = ("06:20", "06:40", "07:00", "07:00:00.001")


def positive_cycle(*known):
    """A cycle of the night with a vial that grew at each of the moments."""
    def change(record):
        vials = [{"id": "V%d" % n, "product": "BIO-ST", "lot": "LOT-B",
                  "readings": [act(DAY % clock, "p%d" % n, seen="growth")]} for n, clock in enumerate(known, 5)]
        other_cycle("02:00", "03:00", 1000, vials=vials)(record)
    return change


HOLDS = ("steam-prevacuum", [
    [positive_cycle("06:20"), positive_cycle("06:20", "06:40"), positive_cycle("06:20", "07:00"),
     positive_cycle("06:20", "07:00:00.001"), positive_cycle("07:00:00.001", "08:00"),
     put(("sterilizer", "service", 1), at("06:20", state="held")),
     put(("sterilizer", "service", 1), dict(at("06:20", state="held"), recordedAt=DAY % "06:40")),
     put(("sterilizer", "service", 1), dict(at("06:20", state="out-of-service"), recordedAt=DAY % "06:40"))],
    [keep] + [put(("sterilizer", "service", 9), dict(at(clock, state="in-service"), recordedAt=DAY % noted))
              for clock in ("06:20", "06:19:59.999", "06:40", "06:39:59.999", "07:00") for noted in HOLD_AT]])


def qualification(grown, bad, rejected):
    """A qualification of the night: when its vial grew, when its physical record was bad, when its indicator was rejected;
    None: not so."""
    vials = [{"id": "V5", "product": "BIO-ST", "lot": "LOT-B",
              "readings": [act(DAY % grown, "p5", seen="growth")] if grown else []}]
    physical = dict(act(DAY % "03:10", "p6"), good=not bad, recordedAt=DAY % (bad or "03:10"))
    indicator = {"product": "INT5-ST", "lot": "LOT-I",
                 "readings": [act(DAY % rejected, "p7", seen="front-on-boundary")] if rejected else []}
    return other_cycle("02:00", "03:00", 1000, "qualification", vials=vials, physical=physical, indicators=[indicator])


KNOWN = (None, "06:20", "06:40", "07:00:00.001")
QUALIFIED = ("steam-prevacuum", [
    [qualification(*known) for known in itertools.product(KNOWN, repeat=3)],
    [keep] + [put(("sterilizer", "service", 9), at(clock, state="in-service"))
              for clock in ("06:20", "06:30", "06:40", "06:50")]])


def reviewed(finding, by="p4", role="supervisor", seen="08:00", noted="09:00", why="the cause was found", subject=None):
    review = dict(act(DAY % noted, by, role), finding=finding, answer="isolated", newestSeen=DAY % seen, why=why)
    if subject:
        review["subject"] = subject
    return put(("load", "reviews"), [review])


def resolved(**changes):
    """A resolution of the failure; changes of it."""
    resolution = {"cause": "known", "reach": "that-load", "what": "what was done", **at("06:00"), **changes}
    return lambda record: record["sterilizer"]["cycles"][-1].setdefault("resolutions", []).append(
        {name: value for name, value in resolution.items() if value is not None})


TEXTS = ("what was done", None, "", " \t")
RESOLUTIONS = ("steam-prevacuum", [
    [other_cycle("02:00", "03:00", 1000, outcome="aborted"), other_cycle("02:00", None, 1000, outcome="aborted")],
    [resolved(what=what, happenedAt=DAY % clock, reach=reach) for what in TEXTS
     for clock in ("03:00", "02:59:59.999", "02:00") for reach in ("that-load", "sterilizer")],
    [keep, resolved(what=None), resolved(happenedAt=DAY % "02:59:59.999"), resolved(cause="unknown"), resolved(role="operator")],
    [keep, reviewed("process.failure-open", subject="OTHER")]])


def put_right(what, done, noted):
    def change(record):
        cycles = record["sterilizer"]["cycles"]
        failed = cycles[1]
        again = {**failed, "lot": "BD2", "start": DAY % "06:20", "end": DAY % "06:40", "counter": 1003}
        again["sheet"] = {**failed["sheet"], "readings": [act(DAY % "06:45", seen="uniform-complete")]}
        failed["sheet"]["readings"][0]["seen"] = "not-uniform"
        failed["resolutions"] = [dict(at(done), cause="known", reach="sterilizer", recordedAt=DAY % noted)]
        if what is not None:
            failed["resolutions"][0]["what"] = what
        cycles.append(again)
        record["sterilizer"]["service"].append(at("06:50", state="in-service"))
    return change


PUT_RIGHT = ("steam-prevacuum", [
    [put_right(what, done, noted) for what in TEXTS for done in ("05:50", "05:49:59.999", "06:20", "06:20:00.001")
     for noted in ("06:20", "06:20:00.001", "06:50")],
    [keep, reviewed("air-removal.put-right-late", subject="BD1"),
     reviewed("air-removal.put-right-late", subject="BD1", by="p9")]])

# Types and labels ----------------------------------------------------------------------------------
SPELLED = ("pv-132-wrapped", "PV 132 Wrapped", "pv_132wrapped", "pv132wrapped", "pv-134-wrapped", "pv.132.wrapped", "-", " ")
TYPES = ("steam-prevacuum", [
    [positive_cycle("06:20")],
    [all_of(*[put(("sterilizer", "cycles", 2, "cycleType"), each)]) for each in SPELLED] + [keep],
    [keep, put(("specification", "cycleType"), "PV132 WRAPPED"), put(("specification", "cycleType"), "_"),
     drop(("specification", "cycleType"))],
    [keep, product("INT5-ST", cycleTypes=["pv132-WRAPPED"]), product("INT5-ST", cycleTypes=["-"]),
     product("INT5-ST", cycleTypes=["pv-134-wrapped", "pv 132 wrapped"])],
    [keep, put(("sterilizer", "service", 9), at("06:30", state="in-service"))]])
LABELS = ("steam-prevacuum", [
    [other_cycle("02:00", "03:00", 1000, kind, items=[label]) for kind in ("load", "warm-up", "leak", "qualification")
     for label in ("IT-1", "it-1", " I T-1", "IT1", "IT_1", "IT-9")],
    [keep, put(("load", "items", 0, "label"), "it-1 "), drop(("load", "start"))]])

# Reviews -------------------------------------------------------------------------------------------
ABOVE = put(("load", "readings", 0, "celsius"), 135.01)
REVIEWS = ("steam-prevacuum", [
    [ABOVE],
    [reviewed("physical.above", by, role, seen, noted, why, subject)
     for by, role in (("p3", "lead"), ("P 1", "lead"), ("p1", "supervisor"), ("p3", "operator"), ("p3", "viewer"), (" ", "lead"))
     for seen in ("08:00", "07:59:59.999") for noted in ("08:00", "07:50", "07:49:59.999", "11:00:00.001")
     for why in ("the cause was found", " ") for subject in ("temperature", None)],
    [keep, put(("load", "end"), DAY % "07:50:30"), drop(("load", "end"))]])
NO_SUCH_FINDING = ("steam-prevacuum", [
    [keep, ABOVE, put(("load", "reviews"), [])],
    [reviewed(key, subject=subject, by=by) for key in ("physical.above", "physical.below")
     for subject in ("temperature", "exposure", None) for by in ("p4", "")]])

# Entries, checks, immediate use --------------------------------------------------------------------
CHECK = ("load", "items", 0, "checks")
GOOD_CHECK = {"cooled": True, "dry": True, "intact": True, "sealed": True, "labelAgrees": True}
CHECKS = ("steam-prevacuum", [
    [put(CHECK, [dict(act(DAY % first), recordedAt=DAY % noted, **GOOD_CHECK)])
     for first in ("07:50", "07:49:59.999", "08:30") for noted in ("08:30", "08:31", "07:49")],
    [keep] + [put(CHECK + (1,), dict(act(DAY % second, by), recordedAt=DAY % noted, **dict(GOOD_CHECK, cooled=False)))
              for second in ("08:30", "08:29:59.999", "07:49:59.999") for noted in ("08:30", "08:31") for by in ("p2", " ")],
    [keep, put(("load", "end"), DAY % "07:50:30"), drop(("load", "end"))]])
INSIDE = ("load", "items", 1, "internals", 0)
OPENING = ("immediate-use", [
    [keep, put(INSIDE + ("readings",), []), put(INSIDE + ("readings", 0, "happenedAt"), DAY % "07:09:59.999"),
     put(INSIDE + ("readings", 0, "by"), " "), put(INSIDE + ("readings", 0, "seen"), "unclear"),
     put(INSIDE + ("readings", 0, "seen"), "front-on-boundary")],
    [keep, lot("INT5-ST", None), lot("INT5-ST", "2041-03-05"), put(INSIDE + ("alsoUsedIn",), ["L-3"])],
    [keep, put(INSIDE + ("lost",), act(DAY % "07:20"))],
    [keep, put(("load", "items", 1, "packaging"), "PK-T")],
    [keep] + [put(("load", "immediateUse", field), value)
              for field, value in (("reason", ""), ("reason", " \t"), ("caseReference", " "))]])

# Tests ---------------------------------------------------------------------------------------------
BOUNDS = ("leastMinutes", "mostMinutes", "leastCelsius", "mostCelsius")
DIRECTIONS = ("test-bowie-dick", [[keep, product("BDSHEET", **{bound: None})] for bound in BOUNDS] + [
    [keep, drop(("test", "exposure")), put(("test", "sheet", "product"), "NONE"), drop(("test", "sheet"))],
    [keep, put(("test", "exposure"), {"minutes": 4.001, "celsius": 134})]])
LEAK = ("test-leak", [
    [put(("test", "leak", "riseMbar"), rise) for rise in (0, -0.001, -1000, 13, 13.001)],
    [keep, drop(("test", "leak", "minutes")), put(("test", "leak", "minutes"), 0), put(("test", "leak", "minutes"), 9.999)],
    [keep, put(("test", "leak", "by"), ""), put(("test", "outcome"), "aborted")]])

PRODUCTS = [FROM_THE_END, AERATION_WARMTH, AERATION_TIMES, TEMPERATURE_TWICE, PRESSURE_TWICE, GAS_RECORD, REGISTER,
            ACTIVATION, BEGINNING, BEGINNING_TEST, BEGINNING_EARLIER, UNCLEAR, UNCLEAR_EARLIER, UNCLEAR_TEST, ORDER, HISTORY,
            PRINTOUT, HOLDS, QUALIFIED, RESOLUTIONS, PUT_RIGHT, TYPES, LABELS, REVIEWS, NO_SUCH_FINDING, CHECKS, OPENING, DIRECTIONS, LEAK] + PLAUSIBLE + STATED


def every(products):
    """Every record of some products."""
    for name, lists in products:
        for changes in itertools.product(*lists):
            record = base(name)
            for change in changes:
                try:
                    change(record)
                except (KeyError, IndexError):
                    pass                # another change took away what this one changes
            yield record


def records():
    """Every record of every product, and those of readings in turn."""
    yield from every(PRODUCTS)
    yield from settled_again()
    yield from given_by_the_voider()
