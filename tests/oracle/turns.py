"""Small full products like those of crossed.py: of programs, printouts, incubators, confirmations, reviews and lost vials, one
step before, at and after the value at which each turns."""

from crossed import DAY, RUN, SECOND, VIAL, edge, every, minutes_stated, other_cycle, reviewed, vial_with
from moments import moment, written
from pieces import act, all_of, drop, keep, limit_of, lot, product, put, readings, settings

PRINTED = ("program", "sterilizer", "counter", "start", "end")
ITEM = ("load", "items", 0)

# Programs: warmth and length together ---------------------------------------------------------------
def as_warm(celsius):
    """Limit, reading and devices of a warmth, and devices of any length."""
    def change(record):
        limit_of("temperature", leastCelsius=celsius)(record)
        for reading in record["load"]["readings"]:
            if reading["parameter"] == "temperature":
                reading["celsius"] = celsius + 1
            elif reading["parameter"] == "exposure":
                reading["minutes"] = 60 if record["specification"]["method"] == "dry-heat" else 20
        for item in record["load"]["items"]:
            item["devices"][0]["allowedCycles"][0].update(celsius=celsius, leastMinutes=0)
    return change


def warmths(*celsius):
    """The program's temperature in either unit, in both of which the first counts, and not stated."""
    changes = [settings(celsius=None)]
    for each in celsius:
        degrees = round(each * 1.8 + 32, 2)
        changes += [all_of(as_warm(each), change) for change in (
            settings(celsius=each), settings(celsius=None, fahrenheit=degrees),
            settings(celsius=each, fahrenheit=round(degrees - 0.2, 2)))]
    return changes


def lengths(*minutes):
    """The least limit of exposure at each, and the setting at each."""
    return [[keep] + [limit_of("exposure", leastMinutes=each) for each in minutes],
            [keep] + [settings(exposureMinutes=each) for each in minutes]]


STEAM_WARMTH = ("steam-prevacuum", [warmths(129.9, 130, 130.1), *lengths(9, 10, 2)])
STEAM_WARMTH_ELSEWHERE = ("steam-prevacuum", [
    [settings(celsius=129.9), settings(celsius=130)], [limit_of("exposure", leastMinutes=each) for each in (9.999, 10, 0)],
    [put(("specification", "method"), method) for method in ("unknown", "dry-heat", "ethylene-oxide")]])
DRY_WARMTH = ("dry-heat", [warmths(164.9, 165, 184.9, 185), *lengths(5, 19.999, 20, 59.999, 60)])
PEROXIDE_LENGTH = ("hydrogen-peroxide", lengths(1, 0.999, 1.001, 0))
DRYING = ("steam-prevacuum", [
    [settings(dryingMinutes=each) for each in (None, 0, 0.9, 0.999, 1, 1.001)],
    [limit_of("drying", leastMinutes=each) for each in (0, 0.9, 1)] + [limit_of("drying"), keep],
    [keep, put(("specification", "purpose"), "immediate-use")],
    [keep, put(("specification", "method"), "unknown"), put(("specification", "method"), "dry-heat")]])
GAS_MILDER = ("ethylene-oxide", [
    [limit_of("temperature", leastCelsius=round(55 - apart, 2)) for apart in (0.5, 0.51, 4.9, 5, 5.1)]
    + [limit_of("temperature", leastFahrenheit=round(131 - apart, 2)) for apart in (0.9, 0.91, 8.9, 9, 9.1)],
    [keep, settings(celsius=None), settings(celsius=None, fahrenheit=131), settings(fahrenheit=130)],
    [keep] + [put(("specification", "method"), each) for each in ("unknown", "hydrogen-peroxide", "steam", "dry-heat")],
    [keep, settings(exposureMinutes=None)]])


def read(parameter, unit, value, by="p1"):
    return lambda record: record["load"]["readings"].append(
        act(record["load"]["readings"][0]["happenedAt"], by, parameter=parameter, **{unit: value}))


JUDGED = [(name, [
    [keep] + [read(*each) for each in (("pressure", "kPaGauge", 200), ("concentration", "mgPerL", 500),
                                       ("humidity", "percent", 50), ("drying", "minutes", 20, ""),
                                       ("temperature", "celsius", 132))],
    [keep, limit_of("pressure", mostKPaAbsolute=400),
     limit_of("temperature"), limit_of("drying"), limit_of("concentration"), limit_of("concentration", mostMgPerL=900)],
    [keep, settings(dryingMinutes=0)]])
    for name in ("steam-prevacuum", "ethylene-oxide", "hydrogen-peroxide", "dry-heat")]


def implausibly(setting, above):
    """A reading so many K above the program's setting of celsius, in either unit; records without an upper limit."""
    def of_unit(unit):
        value = setting + above if unit == "celsius" else (setting + above) * 1.8 + 32
        def change(record):
            next(limit for limit in record["specification"]["limits"] if limit["parameter"] == "temperature").pop("mostCelsius", None)
            read("temperature", unit, round(value, 2))(record)  # the format has hundredths
        return change
    return [of_unit(unit) for unit in ("celsius", "fahrenheit")]


TOO_WARM = [(name, [
    [change for above in (9.99, 10, 10.01, 29.99, 30, 30.01) for change in implausibly(setting, above)],
    [keep, settings(celsius=None), all_of(settings(celsius=None), limit_of("temperature", leastCelsius=setting)),
     all_of(settings(celsius=None), limit_of("temperature", leastFahrenheit=round(setting * 1.8 + 32, 2))),
     all_of(settings(celsius=None), limit_of("temperature", mostCelsius=setting)),
     limit_of("temperature", leastCelsius=setting - 0.5)],
    [keep] + [put(("specification", "method"), each) for each in ("unknown", "steam", "dry-heat")],
    [keep, put(("load", "readings", -1, "by"), "")]])
    for name, setting in (("steam-prevacuum", 132), ("steam-gravity", 121), ("immediate-use", 132), ("dry-heat", 160),
                          ("ethylene-oxide", 55))]


# Aeration -------------------------------------------------------------------------------------------
def of_one(part, minutes):
    """The minutes that one of them states; None: it does not."""
    def change(record):
        holder, name = {"sterilizer": lambda: (record["sterilizer"]["aeration"], "minutes"),
                        "packaging": lambda: (record["packagings"][0], "aerationMinutes"),
                        "device": lambda: (record["load"]["items"][1]["devices"][0], "aerationMinutes")}[part]()
        holder[name] = minutes
        if minutes is None:
            del holder[name]
    return change


AERATION_OF_ONE = ("ethylene-oxide", [
    [minutes_stated(720)], [keep] + [of_one("sterilizer", each) for each in (0, 1, 59, 60, 239, 240)],
    *([of_one(part, each) for each in (0, 1, 59, 60, 239, 240, None)] for part in ("packaging", "device")),
    [keep, put(RUN + ("end", "happenedAt"), DAY % "15:00"), put(RUN + ("end", "happenedAt"), DAY % "14:59:59.999")]])

# Controls, incubators, readouts ---------------------------------------------------------------------
CONTROL, NEXT_DAY = ("controls", 0), "2031-03-05T%s-06:00"
AT_ONCE = ("steam-prevacuum-implant", [
    [put(CONTROL + ("incubationStart",), DAY % clock) for clock in ("08:00", "08:00:30", "08:00:59.999")],
    [put(CONTROL + ("readings",), [act(DAY % clock, seen="growth")]) for clock in edge("08:10", "08:11") + ["08:00:30", "08:10:30", "08:01"]],
    [keep] + [put(CONTROL + ("readings", 1), act(DAY % clock, "p2", seen=seen)) for seen, clock in (
        ("growth", "09:10"), ("no-growth", "09:00"), ("no-growth", "08:59:59.999"), ("unclear", "08:00"))],
    [keep, put(VIAL + ("readings",), [])]])
LAST = ("steam-prevacuum-implant", [
    [product("BIO-ST", lastMinutes=each) for each in (None, 59, 60, 61, 1)],
    [put(VIAL + ("readings", 0, "happenedAt"), DAY % clock) for clock in ("09:09", "09:09:59.999", "09:10", "09:11")]
    + [put(VIAL + ("readings",), [])],
    [keep] + [put(CONTROL + ("readings",), [act(DAY % clock, seen="no-growth")]) for clock in ("08:59", "08:59:59.999", "09:00", "09:01")],
    [keep] + [put(("decideAt",), DAY % clock) for clock in ("09:08:59.999", "09:09:59.999", "09:10", "09:11")]])


def stands_in(vial, control):
    """The incubators in which a vial and its control stand; None: not stated."""
    def change(record):
        pcd = record["load"]["pcds"][0] if "load" in record else record["test"]
        for thing, name in ((pcd["vials"][0], vial), (record["controls"][0], control)):
            thing["incubator"] = name
            if name is None:
                del thing["incubator"]
    return change


STANDS = [stands_in(*each) for each in (("INC-1", "INC-1"), ("INC-2", "INC-2"), ("INC-2", "INC-1"), ("inc-1", "inc-1"),
                                       ("-", "-"), (None, None), ("0", "0"))]
LISTED = [keep, drop(("incubators",)), put(("incubators",), [{"id": "INC-2"}]),
          put(("incubators",), [{"id": "INC-1"}, {"id": "INC-2", "outOfRange": [{"from": DAY % "09:00", "to": DAY % "09:20"}]}])]
INCUBATORS = ("steam-prevacuum-implant", [
    STANDS, LISTED,
    [keep, put(VIAL + ("readings",), []), put(VIAL + ("readings", 0, "seen"), "growth"),
     put(VIAL + ("readings", 0, "seen"), "unclear"), put(VIAL + ("lost",), act(DAY % "09:30")), drop(VIAL + ("incubationStart",)),
     put(VIAL + ("alsoUsedIn",), ["L-3"]), put(VIAL + ("lot",), "NONE")],
    [keep, put(("load", "items", 1, "implant"), "no")], [keep, put(("decideAt",), NEXT_DAY % "01:00")]])
ANSWERS = [keep, put(CONTROL + ("readings", 0, "seen"), "no-growth"), put(CONTROL + ("readings",), []), put(("controls",), [])]
UNLISTED = ("steam-prevacuum-implant", [
    [stands_in("INC-2", "INC-2")], ANSWERS,
    [keep, drop(VIAL + ("incubationStart",)), put(VIAL + ("lot",), "NONE"), lot("BIO-ST", None),
     put(VIAL + ("alsoUsedIn",), ["L-3"]), put(VIAL + ("readings",), []), put(VIAL + ("readings", 0, "seen"), "unclear"), put(VIAL + ("lost",), act(DAY % "09:30"))],
    [keep, put(("load", "items", 1, "implant"), "no")],
    [put(("decideAt",), each) for each in (DAY % "11:00", DAY % "23:59:59.999", NEXT_DAY % "00:00")]])
INCUBATORS_TEST = ("test-qualification", [STANDS, LISTED, [keep, put(("test", "vials", 0, "readings"), [])], ANSWERS[:3]])
EARLIER = {"activation": act(DAY % "06:01"), "incubationStart": DAY % "06:02"}
INCUBATORS_EARLIER = ("steam-prevacuum", [
    [other_cycle("05:50", "06:00", 1003, vials=[vial_with("V1", readings((seen, DAY % "07:10", "p1")), **EARLIER)],
                 cycleType="pv-132-wrapped") for seen in ("no-growth", "growth")],
    [put(("sterilizer", "cycles", 2, "vials", 0, "incubator"), each) for each in ("INC-1", "INC-2", "-")], LISTED,
    [keep, put(CONTROL + ("incubator",), "INC-2")]])

# Readouts that none has ------------------------------------------------------------------------------
def readout_of(minutes, **more):
    """The readout of every biological product; and the vial and control of a load that has them, read as late as before."""
    def change(record):
        for entry in record["products"]:
            if entry["kind"] == "biological":
                product(entry["id"], releaseMinutes=minutes, lastMinutes=None, latestMinutes=None, **more)(record)
    return change


VIAL_SEEN = [keep, put(VIAL + ("readings",), []), put(VIAL + ("readings", 0, "seen"), "growth"),
             put(VIAL + ("readings", 0, "seen"), "unclear"), put(VIAL + ("lost",), act(DAY % "16:00")),
             drop(VIAL + ("incubationStart",)), put(VIAL + ("incubator",), "INC-2"), put(VIAL + ("lot",), "NONE"),
             put(VIAL + ("alsoUsedIn",), ["L-3"])]
READOUTS = [(name, [
    [readout_of(each) for each in (1, 9, 10, 11, 119, 120, 121)], VIAL_SEEN, ANSWERS,
    [keep] + [put(("specification", "method"), each) for each in ("unknown", "steam", "ethylene-oxide", "dry-heat")]
    + [product(biological, kind="chemical", response="colour", type=5, **dict.fromkeys((
        "species", "releaseMinutes", "lastMinutes", "latestMinutes", "startWithinMinutes", "needsActivation",
        "hasProcessIndicator", "control", "implantIndicatorTypes")))]])
    for name, biological in (("steam-prevacuum-implant", "BIO-ST"), ("ethylene-oxide", "BIO-EO"))]
READOUT_AWAITED = ("steam-prevacuum-implant", [
    [readout_of(each) for each in (9, 10)], ANSWERS, VIAL_SEEN, [keep, put(("load", "items", 1, "implant"), "no")],
    [keep] + [put(("decideAt",), each) for each in (DAY % "08:19:59.999", DAY % "23:59:59.999", NEXT_DAY % "00:00")]])
# The vial began at 08:10, its control at 08:00.
READ_AT_ONCE = ("steam-prevacuum-implant", [
    [readout_of(each) for each in (9, 10, 11)],
    [put(VIAL + ("readings", 0, "happenedAt"), DAY % clock) for clock in ("08:19", "08:19:59.999", "08:20", "08:21")],
    [put(CONTROL + ("readings", 0), act(DAY % clock, seen=seen)) for clock in ("08:09", "08:09:59.999", "08:10", "08:11")
     for seen in ("growth", "no-growth")],
    [keep, put(CONTROL + ("incubationStart",), DAY % "08:00:59.999"), put(CONTROL + ("incubationStart",), DAY % "07:59:59.999")]])
READOUT_TEST = ("test-qualification", [
    [readout_of(each) for each in (1, 9, 10, 119)], ANSWERS,
    [keep, put(("test", "vials", 0, "readings"), []), put(("test", "vials", 0, "lost"), act(DAY % "16:00"))],
    [keep, drop(("test", "method")), put(("test", "method"), "dry-heat"), put(("test", "method"), "hydrogen-peroxide")]])
READOUT_EARLIER = ("steam-prevacuum", [
    [readout_of(each) for each in (9, 10, 119, 120)],
    [other_cycle("05:50", "06:00", 1003, vials=[vial_with("V1", readings((seen, DAY % "07:10", "p1")), **EARLIER)],
                 cycleType="pv-132-wrapped", method=method) for seen in ("no-growth", "growth")
     for method in ("steam", "unknown", "ethylene-oxide", "hydrogen-peroxide")],
    [keep, product("BIO-ST", methods=["steam", "ethylene-oxide", "hydrogen-peroxide"])]])

# The signature, to the minute -----------------------------------------------------------------------
SIGNED = ("steam-prevacuum", [
    [put(("load", "verifications"), [act(DAY % clock, by)]) for clock in edge("08:00", "08:01") for by in ("p1", "p2")],
    [put(("load", "readings", 1, "recordedAt"), DAY % clock) for clock in edge("08:00", "08:01")],
    [put(("load", "printout", "recordedAt"), DAY % clock) for clock in edge("08:00", "08:01")],
    [keep, put(("load", "readings", 1, "by"), "")]])

# What was inside ------------------------------------------------------------------------------------
CONFIRMED = [keep] + [put(ITEM + ("confirmed",), act(DAY % clock, by, role)) for by, role, clock in (
    ("p3", "lead", "07:00"), ("p3", "lead", "06:59:59.999"), ("p3", "lead", "07:00:30"), ("p3", "supervisor", "08:00"),
    ("p3", "operator", "08:00"), ("p1", "lead", "08:00"), (" P 1", "lead", "08:00"), ("p2", "lead", "08:00"), ("", "lead", "08:00"))]
INSIDE = ("steam-prevacuum", [
    [put(ITEM + ("recorded",), act(DAY % "06:40", "p1", recordedAt=DAY % clock)) for clock in edge("07:00", "07:01")]
    + [drop(ITEM + ("recorded",))],
    [keep, put(("load", "start"), DAY % "07:00:30")], CONFIRMED,
    [keep, put(ITEM + ("alsoInLots",), ["L-3"]), other_cycle("02:00", "03:00", 1000, items=["it-1 "])],
    [keep, put(("load", "operator"), "p2")]])


CALLED_INSIDE = [all_of(put(ITEM + ("recorded",), act(DAY % "05:50", "p1")), change) for change in [keep] + [
    put(ITEM + ("confirmed",), act(DAY % "05:55", by, role, recordedAt=DAY % clock))
    for by, role, clocks in (("p3", "lead", edge("07:00", "07:01") + edge("08:30", "08:31")), ("p1", "lead", ["09:00"]),
                             ("p3", "operator", ["09:00"])) for clock in clocks]]
IN_TWO_LOADS = ("steam-prevacuum", [
    CALLED_INSIDE,
    [keep, put(ITEM + ("alsoInLots",), ["L-3"]), put(ITEM + ("alsoInLots",), ["OTHER"])],
    [other_cycle("08:30", "09:20", 1011, items=["it-1 "]), other_cycle("08:30", "09:20", 1011, items=["IT-9"]),
     other_cycle("08:30", "09:20", 1011, "qualification", items=["IT-1"]), other_cycle("02:00", "03:00", 1000, items=["IT-1"]),
     other_cycle("08:31", "09:21", 1011, items=["IT-1"], clock="sterilizer"),
     all_of(other_cycle("02:00", "03:00", 1000, items=["IT-1"]),
            put(("sterilizer", "cycles", 3), {"kind": "load", "lot": "LATER", "start": DAY % "08:30", "end": DAY % "09:20",
                                              "outcome": "ended", "counter": 1011, "items": ["IT-1"]}))],
    [keep, drop(("load", "start")), put(ITEM + ("recorded", "recordedAt"), DAY % "07:01")]])


# What a printout proves by itself -------------------------------------------------------------------
def calls_right(*but):
    """A lead calls the record right in every field but these."""
    return put(("load", "printoutAnswers"), [act(DAY % "08:00", "p3", "lead", answer="record-right", field=field)
                                             for field in PRINTED if field not in but])


BY_ITSELF = ("steam-prevacuum", [
    [keep, drop(("load", "printout", "counter")), put(("load", "printout", "counter"), 1011), drop(("load", "counter")),
     all_of(put(("load", "printout", "counter"), 1002), put(("load", "counter"), 1002))],
    *([keep, drop(("load", "printout", name)), put(("load", "printout", name), DAY % before),
       put(("load", "printout", name), DAY % after), drop(("load", name))]
      for name, before, after in (("start", "07:06", "07:06:00.001"), ("end", "07:46", "07:45:59.999"))),
    [keep, put(("sterilizer", "clockOffsets"), []), put(("sterilizer", "clockOffsets", 0, "from"), DAY % "07:30"),
     put(("load", "printout", "program"), "P9"), drop(("load", "printout", "sterilizer"))],
    [calls_right(), calls_right("counter"), calls_right("start", "end")]])
BY_A_COUNTER = ("steam-prevacuum", [
    [keep, put(("sterilizer", "cycles", 0, "counter"), 1010), put(("sterilizer", "cycles", 1, "counter"), 1010),
     other_cycle("06:00", "06:45", 1009), other_cycle("06:00", "06:45", 1010), other_cycle("06:00", "06:45", None),
     other_cycle("08:30", "09:20", 1010), other_cycle("08:30", "09:20", 1011),
     all_of(put(("load", "printout", "counter"), 0), put(("load", "counter"), 0), other_cycle("06:00", "06:45", 0))],
    [keep, drop(("load", "printout", "counter")), put(("load", "printout", "counter"), 1011), drop(("load", "counter"))],
    [keep, drop(("load", "printout", "start")), put(("load", "printout", "start"), DAY % "07:06:00.001"), drop(("load", "start"))],
    [keep, drop(("load", "printout", "end")), put(("load", "printout", "end"), DAY % "07:30"), drop(("load", "end"))],
    [keep, put(("sterilizer", "clockOffsets"), [])],
    [keep, calls_right(), calls_right("counter"), calls_right("start", "end")]])

# What is seen through a package ---------------------------------------------------------------------
FORMS = [put(ITEM + ("packaging",), name) for name in ("PK-P", "PK-W", "PK-R", "PK-T", "NONE")] + [drop(ITEM + ("packaging",))]
OUTSIDE = [keep, drop(ITEM + ("external",)), put(ITEM + ("external", "readings"), []),
           put(ITEM + ("external", "readings", 0, "seen"), "absent"), put(ITEM + ("external", "readings", 0, "seen"), "unchanged"),
           all_of(put(ITEM + ("external", "readings"), []), put(ITEM + ("external", "lost"), act(DAY % "08:40")))]


def more_forms(record):
    record["packagings"] += [{"id": "PK-R", "form": "rigid-container", "methods": ["steam"]},
                             {"id": "PK-T", "form": "open-tray", "methods": ["steam"]}]


SEEN_THROUGH = ("steam-prevacuum", [
    [more_forms], [put(ITEM + ("internalVisible",), each) for each in (True, False)] + [keep], FORMS, OUTSIDE,
    [keep, put(ITEM + ("internals", 0, "readings"), [act(DAY % "08:30", seen="front-in-accept-zone")])],
    [keep, put(("specification", "purpose"), "immediate-use")]])

# Reviews --------------------------------------------------------------------------------------------
ABOVE = put(("load", "readings", 0), act(DAY % "08:00", "p5", parameter="temperature", celsius=135.01))
OWN_LOAD = ("steam-prevacuum", [
    [ABOVE, put(("load", "readings", 0, "celsius"), 135.01)],
    [reviewed("physical.above", by, role, subject="temperature") for by in ("p1", " P1", "p5", "p3")
     for role in ("lead", "supervisor", "operator")],
    [keep, drop(("load", "operator")), put(("load", "operator"), "P 3"), put(("load", "operator"), "-")]])
GROWN = put(("load", "pcds", 0, "vials", 1), vial_with(
    "V2", readings(("growth", DAY % "09:15", "p1")), incidentFinding=act(DAY % "09:30", "p4", "supervisor", was="control")))
OWN_LOAD_SECOND = ("steam-prevacuum-implant", [
    [GROWN], [reviewed("bi.positive-elsewhere", by, role, "09:30", "10:00", subject="V2") for by in ("p1", "p4", "p6")
              for role in ("lead", "supervisor")],
    [keep, put(("load", "operator"), "p4"), put(("load", "operator"), "p6")]])

TAKEN_OUT = [vial_with("V2", seen, **more) for seen in ([], readings(("no-growth", DAY % "09:15", "p1")),
                                                        [act(DAY % "09:15", recordedAt=DAY % "09:40", seen="no-growth")])
             for more in ({"voided": act(DAY % "08:05", "p3", "lead")}, {"voided": act(DAY % "08:20", "p3", "lead")},
                          {"voided": act(DAY % "09:45", "p3", "lead")}, {"alsoUsedIn": ["L-3"]},
                          {"lost": act(DAY % "08:05", "p3", "lead")}, {"lost": act(DAY % "09:45", "p3", "lead")},
                          {"processIndicator": "unchanged"})]
TAKEN_OUT += [{name: value for name, value in each.items() if name != "incubationStart"} for each in TAKEN_OUT[:6]]
LOOKED_AT = ("steam-prevacuum-implant", [
    [put(("load", "pcds", 0, "vials", 1), each) for each in TAKEN_OUT],
    [lambda record, each=each, seen=seen: reviewed(
        "bi.lost" if "lost" in record["load"]["pcds"][0]["vials"][1] else "bi.void", *each, seen, "10:00", subject="V2")(record)
     for each in (("p4", "supervisor"), ("p5", "lead"), ("p3", "lead"))
     for seen in ("08:04:59.999", "08:05", "08:09:59.999", "08:10", "09:14:59.999", "09:15", "09:39:59.999", "09:40", "09:45")],
    [keep, put(("load", "items", 1, "implant"), "no")]])

# Lost vials and the moment from which their control is missing -------------------------------------
LOST = act(DAY % "09:30")
LOST_VIALS = ("steam-prevacuum-implant", [
    [keep, put(("load", "items", 1, "implant"), "no")],
    [put(VIAL + ("lost",), LOST), all_of(put(VIAL + ("lost",), LOST), put(VIAL + ("readings",), [])),
     all_of(put(VIAL + ("lost",), LOST), put(VIAL + ("readings", 0, "seen"), "unclear")),
     all_of(put(VIAL + ("lost",), act(DAY % "09:30", role="viewer")), put(VIAL + ("readings",), [])),
     all_of(put(VIAL + ("lost",), LOST), drop(VIAL + ("incubationStart",))),
     all_of(put(VIAL + ("lost",), LOST), drop(VIAL + ("incubator",))),
     all_of(put(VIAL + ("lost",), LOST), put(VIAL + ("lot",), "NONE")),
     all_of(put(VIAL + ("lost",), LOST), product("BIO-ST", latestMinutes=64)),
     all_of(put(VIAL + ("lost",), LOST), put(VIAL + ("alsoUsedIn",), ["L-3"]))],
    ANSWERS,
    [keep, put(("load", "pcds", 0, "vials", 1), SECOND[0]), put(("load", "pcds", 0, "vials", 1), SECOND[1])],
    [put(("decideAt",), each) for each in (DAY % "11:00", DAY % "23:59:59.999", NEXT_DAY % "00:00")]])

# Implants: what no vial can mend --------------------------------------------------------------------
PCD = ("load", "pcds", 0)
NEEDED = ("steam-prevacuum-implant", [
    [keep, drop(PCD + ("indicators",)), product("INT5-ST", type=6), put(PCD + ("indicators", 0, "product"), "NONE"),
     put(PCD + ("indicators", 0, "lot"), "NONE"), put(PCD + ("indicators", 0, "readings"), []),
     put(PCD + ("indicators", 0, "readings", 0, "seen"), "front-on-boundary"), put(PCD + ("indicators", 0, "alsoUsedIn"), ["L-3"])],
    [keep, put(PCD + ("vials",), []), put(VIAL + ("readings",), []), put(VIAL + ("alsoUsedIn",), ["L-3"]),
     put(VIAL + ("incubator",), "INC-2")],
    [keep, put(("load", "pcds", 1), {"id": "PCD-2"}),
     put(("load", "pcds", 1), {"id": "PCD-2", "indicators": [{"product": "INT5-ST", "lot": "LOT-I", "readings": [
         act(DAY % "08:30", seen="front-in-accept-zone")]}]})]])

# Nothing inside ---------------------------------------------------------------------------------------
ONE_INSIDE = {"product": "INT5-ST", "lot": "LOT-I"}


def emptied(record):
    """No indicator in any PCD or item."""
    record["load"]["pcds"] = []
    for item in record["load"]["items"]:
        item.pop("internals", None)


NOTHING_INSIDE = [(name, [
    [emptied], [keep, drop(("load", "pcds")), put(("load", "pcds"), [{"id": "PCD-1"}]),
                put(("load", "pcds"), [{"id": "PCD-1", "indicators": []}]),
                put(("load", "pcds"), [{"id": "PCD-1", "vials": [vial_with("V1", [])]}]),
                put(("load", "pcds"), [{"id": "PCD-1"}, {"id": "PCD-2", "indicators": [ONE_INSIDE]}]),
                put(("load", "pcds"), [{"id": "PCD-1", "indicators": [{"product": "NONE", "lot": "NONE"}]}])],
    [keep, put(ITEM + ("internals",), []), put(ITEM + ("internals",), [ONE_INSIDE]),
     put(("load", "items", 1, "internals"), [dict(ONE_INSIDE, product="NONE")]), put(("load", "items"), []),
     drop(("load", "items")), drop(ITEM + ("external",))],
    [keep, put(ITEM + ("implant",), "yes"), put(ITEM + ("internalVisible",), True)],
    [keep] + [put(("specification", "method"), each) for each in ("unknown", "ethylene-oxide", "steam")]
    + [drop(("specification",)), put(("specification", "purpose"), "immediate-use")]])
    for name in ("steam-prevacuum", "dry-heat", "hydrogen-peroxide")]

# Purposes, histories, tests -------------------------------------------------------------------------
PURPOSES = [(name, [
    [keep] + [put(("specification", "purpose"), each) for each in (
        "routine", "immediate-use")] + [drop(("specification",))],
    [keep, drop(("load", "immediateUse"))] + [put(("load", "immediateUse"), use) for use in (
        {}, {"forStorage": True}, {"forStorage": False}, {"reason": "-"}, {"reason": "", "caseReference": "?"}, {"reason": "why"},
        {"caseReference": "0"}, {"reason": "\u2013"})]])
    for name in ("steam-gravity", "immediate-use")]
NO_HISTORY = [(name, [[keep, put(("sterilizer", "cycles"), []), drop(("sterilizer", "cycles")), drop(("sterilizer",))],
                      [keep, drop(("load", "start"))]]) for name in ("steam-prevacuum", "dry-heat")]


def ended_after(ms):
    """The test ended so many milliseconds after it began."""
    return lambda record: record["test"].update(end=written(moment(record["test"]["start"]) + ms))


TEST_TIMES = [(name, [
    [ended_after(ms) for ms in (-60_000, -1, 0, 1)] + [keep, drop(("test", "end"))],
    [keep, drop(("test", "outcome")), put(("test", "outcome"), "aborted"), put(("test", "items"), ["IT-1"])],
    [keep, put(("test", "clock"), "sterilizer"), all_of(put(("test", "clock"), "sterilizer"), put(
        ("sterilizer", "clockOffsets"), [{"from": DAY % "00:00", "seconds": 0}, {"from": DAY % "05:40", "seconds": 3600},
                                         {"from": DAY % "07:20", "seconds": 3600}]))]])
    for name in ("test-bowie-dick", "test-leak", "test-qualification", "test-warm-up")]
BACKWARDS = ("steam-prevacuum", [
    [put(("sterilizer", "cycles", 1, "end"), DAY % clock) for clock in ("05:30", "05:29:59.999", "05:30:00.001")],
    [keep, put(("sterilizer", "cycles", 1, "chamberEmpty"), False)],
    [keep, put(("sterilizer", "cycles", 1, "sheet", "readings", 0, "seen"), "not-uniform")]])

PRODUCTS = [STEAM_WARMTH, STEAM_WARMTH_ELSEWHERE, DRY_WARMTH, PEROXIDE_LENGTH, DRYING, GAS_MILDER, AERATION_OF_ONE, AT_ONCE,
            LAST, INCUBATORS, UNLISTED, INCUBATORS_TEST, INCUBATORS_EARLIER, SIGNED, INSIDE, IN_TWO_LOADS, BY_ITSELF, BY_A_COUNTER, SEEN_THROUGH,
            OWN_LOAD, OWN_LOAD_SECOND, LOOKED_AT, LOST_VIALS, NEEDED, BACKWARDS, READOUT_AWAITED, READ_AT_ONCE, READOUT_TEST,
            READOUT_EARLIER] + JUDGED + PURPOSES + NO_HISTORY + TEST_TIMES + READOUTS + TOO_WARM + NOTHING_INSIDE


def records():
    """Every record of every product."""
    return every(PRODUCTS)
