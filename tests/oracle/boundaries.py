#!/usr/bin/env python3
"""Boundary values by system instead of chance: the program against the oracle.

Seven sets of records. One is the full product of what interacts around a biological indicator: its
readings, its control and when that began, activation, lot, implant, policy and the moment of the decision,
each at absent, one step before, at, and one step after its limit. One covers every three
levels of any three factors across all groups of rules together at least once. One voids a reading of an
indicator, a vial and a control in every way that the rules tell apart. One gives an indicator or a vial
every one and every two of the defects for which it does not count, so that the first cause must be named. Three are
the small full products of crossed.py, turns.py and traced.py; the last is decided under more policies.
Base records are those of tests/data/worked_cases/bases, which are releasable as they stand.

    boundaries.py --cli PATH [--jobs 2] [--keep DIR]
"""
import argparse
import copy
import itertools
import json
import multiprocessing
import os
import pathlib
import random
import re
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))
import compare  # noqa: E402
import crossed  # noqa: E402
import defects  # noqa: E402
import oracle  # noqa: E402
import traced  # noqa: E402
import turns  # noqa: E402
from moments import MINUTE, day_of, moment, written  # noqa: E402
from pieces import act, all_of, base, drop, keep, limit_of, put, readings, settings  # noqa: E402
from policy import load_policy  # noqa: E402
from changes import PRINTED  # noqa: E402
from scenario import GOOD  # noqa: E402

ROOT = HERE.parents[1]
CHUNK = 2000


# Around a biological indicator. Incubation begins half an hour after midnight, so that a control of the
# evening before is of another facility day; the readout is 60 minutes later, at 01:30.
BEGUN = "2031-03-05T00:30-06:00"
EARLY, EXACT, LATER = "2031-03-05T01:29:59.999-06:00", "2031-03-05T01:30-06:00", "2031-03-05T01:31-06:00"


def night_base():
    record = base("steam-prevacuum-implant")
    for product in record["products"]:
        if product["kind"] == "biological":
            product["startWithinMinutes"] = 1200
    vial = record["load"]["pcds"][0]["vials"][0]
    vial["incubationStart"] = BEGUN
    vial["activation"]["happenedAt"] = "2031-03-05T00:29-06:00"
    return record


READINGS = {
    "none": [],
    "negative-early": readings(("no-growth", EARLY, "p1")),
    "negative-exact": readings(("no-growth", EXACT, "p1")),
    "negative-early-and-later": readings(("no-growth", EARLY, "p1"), ("no-growth", LATER, "p1")),
    "growth-early": readings(("growth", EARLY, "p1")),
    "negative-then-growth": readings(("no-growth", EXACT, "p1"), ("growth", LATER, "p2")),
    "unclear": readings(("unclear", EXACT, "p1")),
    "unclear-settled": readings(("unclear", EXACT, "p1"), ("no-growth", LATER, "p2")),
    "unclear-same-reader": readings(("unclear", EXACT, "p1"), ("no-growth", LATER, "p1")),
    "unclear-twice": readings(("unclear", EXACT, "p1"), ("unclear", LATER, "p2")),
}
# The cycle ended at 07:50 of the day before.
ACTIVATED = {"none": None, "before-end": "2031-03-04T07:49:59.999-06:00", "good": "2031-03-05T00:29-06:00",
             "after-start": "2031-03-05T00:31-06:00"}
CONTROL_START = {
    "same": BEGUN,
    "window-edge": "2031-03-04T22:30-06:00",
    "window-past": "2031-03-04T22:29:59.999-06:00",
    "same-day-later": "2031-03-05T03:00-06:00",
}
CONTROL_SEEN = {
    "grown": [("growth", 60)], "dead": [("no-growth", 60)], "early-none": [("no-growth", 59)],
    "unread": [], "unclear": [("unclear", 60)], "dead-then-grown": [("no-growth", 60), ("growth", 61)],
}


def add_minutes(text, minutes):
    return written(moment(text) + minutes * MINUTE)


def controls(kind):
    if kind == "none":
        return []
    start_name, seen_name = kind.split("/")
    start = CONTROL_START[start_name]
    control = {"id": "C1", "product": "BIO-ST", "lot": "LOT-B", "incubator": "INC-1", "forLoad": "L-10",
               "activation": act("2031-03-04T22:00-06:00"), "incubationStart": start,
               "readings": [act(add_minutes(start, m), seen=s) for s, m in CONTROL_SEEN[seen_name]]}
    if seen_name == "dead-then-grown":      # two controls, of which one is dead
        other = copy.deepcopy(control)
        other["id"], other["readings"] = "C2", [act(add_minutes(start, 60), seen="growth")]
        control["readings"] = control["readings"][:1]
        return [control, other]
    return [control]


CONTROLS = ["none"] + ["%s/%s" % pair for pair in itertools.product(CONTROL_START, CONTROL_SEEN)]
LOTS = {"in-date": "2032-12-31", "that-day": "2031-03-04", "day-before": "2031-03-03", "no-expiry": None, "unknown": 0}
MOMENTS = [EARLY, EXACT, "2031-03-05T23:59:59.999-06:00", "2031-03-06T00:00-06:00"]
# Activation, incubation start stated or not, activation needed or not; the first two meet every control and lot.
BEGINNINGS = [("good", True, True), ("none", True, True)]
BEGINNINGS += [each for each in itertools.product(ACTIVATED, (True, False), (True, False)) if each not in BEGINNINGS]
FEW_CONTROLS = ("none", "same/grown", "same/dead")


def biological_product():
    """Every combination of what interacts around a biological indicator."""
    for reading, control, beginning, lot, implant, now in itertools.product(
            READINGS, CONTROLS, BEGINNINGS, LOTS, ("yes", "unknown", "no"), MOMENTS):
        if lot in ("no-expiry", "unknown") and control not in FEW_CONTROLS:
            continue                        # a lot that cannot be used voids vial and control alike
        if beginning not in BEGINNINGS[:2] and (control not in FEW_CONTROLS or lot in ("that-day", "no-expiry")):
            continue
        record = night_base()
        vial = record["load"]["pcds"][0]["vials"][0]
        vial["readings"] = READINGS[reading]
        activated, started, needed = beginning
        if ACTIVATED[activated] is None:
            del vial["activation"]
        else:
            vial["activation"]["happenedAt"] = ACTIVATED[activated]
        if not started:
            del vial["incubationStart"]
        next(entry for entry in record["products"] if entry["id"] == "BIO-ST")["needsActivation"] = needed
        record["controls"] = controls(control)
        stored = next(entry for entry in record["lots"] if entry["product"] == "BIO-ST")
        if LOTS[lot] == 0:
            record["lots"].remove(stored)
        elif LOTS[lot] is None:
            del stored["expires"]
        else:
            stored["expires"] = LOTS[lot]
        for item in record["load"]["items"]:
            item["implant"] = implant if item["implant"] != "no" else "no"
        record["decideAt"] = now
        yield record


# Voided readings. Who read, who voided, who read again; p3 is a lead.
VOIDED_AT = "2031-03-04T09:40-06:00"
VOIDS = (None, act(VOIDED_AT, "p3", "lead"), act(VOIDED_AT, "p1", "lead"), act(VOIDED_AT, " P 1", "lead"),
         act(VOIDED_AT, "p3", "operator"), act(VOIDED_AT, "p3", "viewer"), act(VOIDED_AT, "", "lead"),
         act(VOIDED_AT, " ", "lead"), act(VOIDED_AT, "p3", "lead", recordedAt="2031-03-04T11:00:00.001-06:00"))


def voided_readings():
    """Every reading of an indicator, a vial and a control, voided or not, read again or not."""
    answers = {"pcd": ("front-in-accept-zone", "front-on-boundary", "unclear"),
               "vial": ("no-growth", "growth", "unclear"), "control": ("growth", "no-growth", "unclear")}
    for place, reader, void, again in itertools.product(answers, ("p1", "P1 ", "", " ", "p3"), VOIDS,
                                                        (None, "p2", "P 1")):
        for seen in answers[place]:
            record = base("steam-prevacuum-implant")
            pcd = record["load"]["pcds"][0]
            thing = {"pcd": pcd["indicators"][0], "vial": pcd["vials"][0], "control": record["controls"][0]}[place]
            thing["readings"] = readings((seen, "2031-03-04T09:10-06:00", reader))
            if void is not None:
                thing["readings"][0]["voided"] = void
            if again is not None:
                thing["readings"] += readings((answers[place][0], "2031-03-04T09:50-06:00", again))
            yield record


# Causes.
def own_target(record, place, thing, cycle, choose):
    """A target of defects: the thing with a product and lot that nothing else in the record uses, read once."""
    def of_thing(entry, product, number):
        return entry[product] == thing["product"] and (number is None or entry[number] == thing["lot"])

    product = next(p for p in record["products"] if of_thing(p, "id", None))
    lot = next(l for l in record["lots"] if of_thing(l, "product", "number"))
    product, lot = dict(product, id="OWN"), dict(lot, product="OWN", number="OWN-1")
    record["products"].append(product)
    record["lots"].append(lot)
    end, more = moment(cycle["end"]), {}
    read = end + 40 * MINUTE
    if place == "vial":
        product.pop("lastMinutes", None)        # one readout under every policy, and a control for every reach
        control = record["controls"][0]
        control.update(product="OWN", lot="OWN-1", forLoad=cycle["lot"])
        begun = moment(thing["incubationStart"])
        read = begun + product["releaseMinutes"] * MINUTE
        more = {"begun": begun, "final": read, "control": control,
                "incubators": record["incubators"]}
    seen = "no-growth" if place == "vial" else GOOD[product["response"]]
    thing.update(product="OWN", lot="OWN-1", readings=[act(written(read), seen=seen)])
    return defects.Target(place, thing, product, lot, day_of(cycle["start"]), end, read, written,
                          lambda ms: act(written(ms)), choose, **more)


def load_part(name, *path, **more):
    """A record of a base, the part of it at a path with more fields, and its cycle."""
    record = base(name)
    part = cycle = record.get("load") or record["test"]
    for step in path:
        part = part[step]
    part.update(more)
    return record, part, cycle


def beside_a_good_one(record, thing, cycle):
    """The same with another indicator in the same PCD that is accepted."""
    cycle["pcds"][0]["indicators"].append(copy.deepcopy(thing))
    return record, thing, cycle


LOST = act("2031-03-04T09:00-06:00")
IMPLANT_LOAD, GOOD_QUALIFICATION = "steam-prevacuum-implant", "test-qualification"
SPOILED = (
    ("pcd", defects.CHEMICAL, lambda: load_part("steam-prevacuum", "pcds", 0, "indicators", 0)),
    ("pcd", defects.CHEMICAL, lambda: beside_a_good_one(*load_part("steam-prevacuum", "pcds", 0, "indicators", 0))),
    ("outside", defects.CHEMICAL, lambda: load_part("steam-prevacuum", "items", 0, "external")),
    ("outside", defects.CHEMICAL, lambda: load_part("steam-prevacuum", "items", 0, "external", lost=LOST)),
    ("inside", defects.CHEMICAL, lambda: load_part("steam-prevacuum", "items", 0, "internals", 0)),
    ("sheet", defects.CHEMICAL, lambda: load_part("test-bowie-dick", "sheet")),
    ("vial", defects.VIAL, lambda: load_part(IMPLANT_LOAD, "pcds", 0, "vials", 0)),
    ("vial", defects.VIAL, lambda: load_part(GOOD_QUALIFICATION, "vials", 0)),
    ("vial", defects.NEGATIVE, lambda: load_part(IMPLANT_LOAD, "pcds", 0, "vials", 0)),
)


def caused(seed=20310304):
    """(place, defects, record): every one and every two of the defects of whatever a finding names the cause of; those of
    a vial once more where it was not put to incubate (place not-begun)."""
    rng = random.Random(seed)
    for place, table, made in SPOILED:
        for count, begun in itertools.product((1, 2), (True, False)):
            if not begun and table is not defects.VIAL:
                continue
            for names in itertools.combinations(table, count):
                record, thing, cycle = made()
                record["decideAt"] = "2031-03-06T12:00-06:00"   # a control that is missing is no longer awaited
                target = own_target(record, place, thing, cycle, rng.choice)
                defects.spoil(target, table, names)
                if not begun:
                    defects.not_begun(target)
                yield place if begun else "not-begun", names, record


# Across all groups. A factor is a list of changes of a record; the first leaves it as it is.
def reading(parameter, **value):
    def change(record):
        kept = [r for r in record["load"]["readings"] if r["parameter"] != parameter]
        record["load"]["readings"] = kept + [act("2031-03-04T08:00-06:00", parameter=parameter, **value)]
    return change


def no_reading(parameter):
    def change(record):
        record["load"]["readings"] = [r for r in record["load"]["readings"] if r["parameter"] != parameter]
    return change


def limits_in_fahrenheit(record):
    record["specification"]["limits"][0].update(leastFahrenheit=270, mostFahrenheit=275)


def fahrenheit(value):
    def change(record):
        limits_in_fahrenheit(record)
        reading("temperature", fahrenheit=value)(record)
    return change


def right(by, at, role="lead"):
    """Somebody calls every field of the record right, whatever the printout says."""
    return put(("load", "printoutAnswers"), [act(at, by, role, answer="record-right", field=field) for field in PRINTED])


def phase(abort_phase, outcome):
    """A phase of abortion beside an outcome or none."""
    def change(record):
        record["load"]["abortPhase"] = abort_phase
        if outcome is None:
            del record["load"]["outcome"]
        else:
            record["load"]["outcome"] = outcome
    return change


ITEM, PCD = ("load", "items", 0), ("load", "pcds", 0)


def indicator(path, *seen_at_by):
    def change(record):
        node = record
        for step in path:
            node = node[step]
        node["readings"] = readings(*seen_at_by)
    return change


END, BEFORE_END, AFTER = "2031-03-04T07:50-06:00", "2031-03-04T07:49:59.999-06:00", "2031-03-04T08:20-06:00"


def constellations(path, good, bad):
    at = [AFTER, "2031-03-04T08:25-06:00", "2031-03-04T08:30-06:00"]
    sets = [((good, END, "p1"),), ((good, BEFORE_END, "p1"),), (), ((bad, BEFORE_END, "p1"),),
            (("unclear", at[0], "p1"),), (("unclear", at[0], "p1"), (good, at[1], "p2")),
            (("unclear", at[0], "p1"), (good, at[1], "p1")), (("unclear", at[0], "p1"), ("unclear", at[1], "p2")),
            (("unclear", at[0], "p1"), (good, at[1], "p2"), (bad, at[2], "p3")),
            (("unclear", at[0], "p1"), (good, at[1], "p2"), ("unclear", at[2], "p3")),
            ((good, at[0], "p1"), ("unclear", at[1], "p2")), ((good, at[0], ""),), (("absent", at[0], "p1"),)]
    return [keep] + [indicator(path, *each) for each in sets]


def air_test(**changes):
    def change(record):
        for cycle in record["sterilizer"]["cycles"]:
            if cycle["kind"] == "bowie-dick":
                for name, value in changes.items():
                    if name == "seen":
                        cycle["sheet"]["readings"] = [act("2031-03-04T05:55-06:00", seen=s) for s in value]
                    elif value is None:
                        cycle.pop(name, None)
                    else:
                        cycle[name] = value
    return change


def no_air_test(record):
    record["sterilizer"]["cycles"] = [c for c in record["sterilizer"]["cycles"] if c["kind"] != "bowie-dick"]


def air_test_after(record):
    for cycle in record["sterilizer"]["cycles"]:
        if cycle["kind"] == "bowie-dick":
            cycle.update(start="2031-03-04T08:00-06:00", end="2031-03-04T08:20-06:00", counter=1011)
            cycle["sheet"]["readings"][0]["happenedAt"] = "2031-03-04T08:25-06:00"


def put_right(remedy_at, recorded_at):
    def change(record):
        cycles = record["sterilizer"]["cycles"]
        failed = next(c for c in cycles if c["kind"] == "bowie-dick")
        again = copy.deepcopy(failed)
        again.update(lot="BD2", start="2031-03-04T06:20-06:00", end="2031-03-04T06:40-06:00", counter=1003)
        again["sheet"]["readings"][0]["happenedAt"] = "2031-03-04T06:45-06:00"
        failed["sheet"]["readings"][0]["seen"] = "not-uniform"
        failed["resolutions"] = [act(remedy_at, "p3", "lead", cause="known", reach="sterilizer",
                                     what="what was done", recordedAt=recorded_at)]
        cycles.append(again)
        record["sterilizer"]["service"].append(act("2031-03-04T06:50-06:00", "p4", "supervisor", state="in-service"))
    return change


def test_hour(text):
    return put(("sterilizer", "testHour"), text)


def device(**changes):
    def change(record):
        allowed = record["load"]["items"][0]["devices"][0]["allowedCycles"][0]
        for name, value in changes.items():
            if value is None:
                allowed.pop(name, None)
            else:
                allowed[name] = value
    return change


def check(**changes):
    def change(record):
        first = record["load"]["items"][0]["checks"][0]
        for name, value in changes.items():
            if value is None:
                first.pop(name, None)
            else:
                first[name] = value
    return change


def wet(count):
    def change(record):
        for item in record["load"]["items"][:count]:
            item["checks"][0]["dry"] = False
    return change


def service(*entries):
    def change(record):
        record["sterilizer"]["service"] += [act(at, by, role, state=state, **more) for state, at, by, role, more in entries]
    return change


START = "2031-03-04T07:00-06:00"
BEFORE_START, AFTER_START = "2031-03-04T06:59:59.999-06:00", "2031-03-04T07:00:00.001-06:00"
EXTERNAL, INTERNAL = ITEM + ("external",), ITEM + ("internals", 0)

HELD = ("held", "2031-03-04T06:00-06:00", "p3", "lead", {})
FACTORS = {
    "temperature": [keep, no_reading("temperature"), reading("temperature", celsius=131.99),
                    reading("temperature", celsius=132), reading("temperature", celsius=135),
                    reading("temperature", celsius=135.01), fahrenheit(269.99), fahrenheit(270), fahrenheit(275.01),
                    reading("temperature", celsius=142), reading("temperature", celsius=142.01),
                    reading("temperature", fahrenheit=287.6), reading("temperature", fahrenheit=287.61)],
    "limits": [keep, limit_of("temperature", leastCelsius=131.5), limit_of("temperature", leastCelsius=131.49),
               limit_of("temperature", leastFahrenheit=268.7), limit_of("temperature", leastFahrenheit=268.69),
               limit_of("temperature", leastCelsius=132, leastFahrenheit=268.69), limit_of("temperature"),
               limit_of("temperature", leastCelsius=132, leastFahrenheit=270.5),
               limit_of("temperature", leastCelsius=132, leastFahrenheit=270.51), limit_of("exposure", leastMinutes=3.999),
               limit_of("drying", leastMinutes=19.999), limit_of("drying")],
    "settings": [keep, settings(celsius=None), settings(celsius=None, fahrenheit=269.6), settings(fahrenheit=272),
                 settings(exposureMinutes=4.001), settings(dryingMinutes=0), settings(dryingMinutes=None),
                 settings(exposureMinutes=None), settings(exposureMinutes=1.999), settings(dryingMinutes=0.999),
                 settings(celsius=129.9)],
    "exposure": [keep, no_reading("exposure"), reading("exposure", minutes=3.999), reading("exposure", seconds=240),
                 reading("exposure", seconds=239.999)],
    "drying": [keep, reading("drying", minutes=19.999), no_reading("drying"), reading("drying", seconds=2820),
               reading("drying", seconds=2820.001)],
    "printout": [keep, drop(("load", "printout")), put(("load", "printout", "start"), "2031-03-04T07:06-06:00"),
                 put(("load", "printout", "start"), "2031-03-04T07:06:00.001-06:00"),
                 drop(("load", "printout", "counter")), put(("load", "printout", "counter"), 1002),
                 put(("sterilizer", "clockOffsets"), []), put(("load", "printout", "program"), "P9"),
                 put(("load", "printout", "sterilizer"), "S9"), drop(("specification", "program"))],
    "answer": [keep, right("p3", "2031-03-04T08:00-06:00"), right("p3", "2031-03-04T07:59:59.999-06:00"),
               right("P 1", "2031-03-04T08:00-06:00"), right("p3", "2031-03-04T07:59:59.999-06:00", "supervisor")],
    "operator": [keep, drop(("load", "operator")), put(("load", "operator"), "P3 "), put(("load", "operator"), "P 2")],
    "end": [keep, put(("load", "end"), "2031-03-04T07:50:30-06:00")],
    "verification": [keep, put(("load", "verifications"), []),
                     put(("load", "verifications", 0, "happenedAt"), "2031-03-04T08:00-06:00"),
                     put(("load", "verifications", 0, "happenedAt"), "2031-03-04T07:59:59.999-06:00"),
                     put(("load", "verifications", 0, "by"), ""), put(("load", "verifications", 0, "by"), " ")],
    "pcd": constellations(PCD + ("indicators", 0), "front-in-accept-zone", "front-on-boundary"),
    "external": constellations(EXTERNAL, "end-colour-reached", "unchanged"),
    "internal": constellations(INTERNAL, "front-in-accept-zone", "front-short-of-boundary"),
    "visible": [keep, put(ITEM + ("internalVisible",), True),
                all_of(put(ITEM + ("internalVisible",), True), put(ITEM + ("packaging",), "PK-P"))],
    "air-test": [keep, no_air_test, air_test(seen=[]), air_test(seen=["not-uniform"]), air_test(seen=["uniform-incomplete"]),
                 air_test(chamberEmpty=False), air_test(exposure={"minutes": 4.001, "celsius": 134}),
                 air_test(exposure={"minutes": 4, "celsius": 134}), air_test(method="dry-heat"), air_test_after,
                 put_right("2031-03-04T06:00-06:00", "2031-03-04T06:20-06:00"),
                 put_right("2031-03-04T06:00-06:00", "2031-03-04T06:20:00.001-06:00"),
                 put_right("2031-03-04T06:20:00.001-06:00", "2031-03-04T06:30-06:00")],
    "trace": [keep] + [traced.traces(each) for each in (
        traced.TRACE, traced.of(uninterrupted="not-met"), traced.of(uninterrupted="not-met", revision=2),
        traced.of(exposure="not-met"), traced.of(counter=1011), traced.of(counter=None, start="2031-03-04T07:06:00.001-06:00"),
        traced.of(happenedAt=BEFORE_END, saturated="open"), traced.of(saturated="open"), traced.of(defects=["gap"]),
        traced.of(drying="not-met", exposureLeastSeconds=299.999))],
    "test-hour": [keep, test_hour("05:30"), test_hour("05:31"), test_hour("07:00"), test_hour("07:01")],
    "service": [keep, put(("sterilizer", "service"), []),
                service(("held", BEFORE_START, "p3", "lead", {})), service(("out-of-service", START, "p3", "lead", {})),
                service(("held", BEFORE_START, "p3", "lead", {"recordedAt": AFTER_START})),
                service(("held", AFTER_START, "p3", "lead", {})),
                service(HELD, ("in-service", START, "p4", "supervisor", {})),
                service(HELD, ("in-service", AFTER_START, "p4", "supervisor", {})),
                service(HELD, ("in-service", START, "p3", "lead", {}))],
    "recorded": [keep, put(ITEM + ("recorded", "happenedAt"), START), put(ITEM + ("recorded", "happenedAt"), AFTER_START),
                 put(ITEM + ("recorded", "happenedAt"), "2031-03-04T07:01-06:00"), drop(ITEM + ("recorded",)),
                 put(ITEM + ("recorded", "role"), "viewer")],
    "implant": [keep, put(ITEM + ("implant",), "unknown"), drop(ITEM + ("implant",))],
    "package": [keep, wet(1), wet(2), check(intact=False), check(cooled=False), check(labelAgrees=None),
                check(happenedAt=END), check(happenedAt=BEFORE_END), put(ITEM + ("packagingExpires",), "2031-03-04"),
                put(ITEM + ("packagingExpires",), "2031-03-03")],
    "device": [keep, device(celsius=132.5), device(celsius=132.51), device(celsius=131.49), device(leastMinutes=4.001),
               device(mostMinutes=3.999), device(mostMinutes=4), device(dryingMinutes=20.001), device(leastMinutes=None),
               device(airRemoval="gravity"), put(ITEM + ("devices",), [])],
    "outcome": [keep, drop(("load", "outcome")), put(("load", "outcome"), "aborted"),
                phase("exposure", "ended"), phase("drying", "ended"), phase("unknown", None),
                put(("load", "alarms"), [act(AFTER, code="A1")]), put(("load", "alarms"), [act(AFTER, code="A9")]),
                put(("load", "alarms"), [act(AFTER, code="A2")])],
    "now": [keep, put(("decideAt",), END), put(("decideAt",), BEFORE_END), put(("decideAt",), "2031-03-04T23:59:59.999-06:00"),
            put(("decideAt",), "2031-03-05T00:00-06:00")],
}


AT_ONCE = 300


def threeway(seed=20310304):
    """Rows of levels in which every three levels of three factors meet."""
    rng = random.Random(seed)
    names = list(FACTORS)
    sizes = [len(FACTORS[name]) for name in names]
    triples = [(a, b, c) for a, b, c in itertools.combinations(range(len(names)), 3)]
    order = [(t, (la, lb, lc)) for t in triples
             for la in range(sizes[t[0]]) for lb in range(sizes[t[1]]) for lc in range(sizes[t[2]])]
    rng.shuffle(order)
    open_, rows = set(order), []
    while open_:
        if len(order) > 1.05 * len(open_):                      # covered ones away, now and then
            order = [each for each in order if each in open_]
        while order[-1] not in open_:
            order.pop()
        row = [None] * len(names)
        for factors, levels in reversed(order[-AT_ONCE:]):      # as many that are still open as go together
            if all(row[factor] in (None, level) for factor, level in zip(factors, levels)):
                for factor, level in zip(factors, levels):
                    row[factor] = level
        row = [rng.randrange(size) if level is None else level for level, size in zip(row, sizes)]
        rows.append(row)
        open_.difference_update([(t, (row[t[0]], row[t[1]], row[t[2]])) for t in triples])
    return names, rows


def covering_records():
    names, rows = threeway()
    for row in rows:
        record = base("steam-prevacuum")
        record["decideAt"] = "2031-03-04T20:00-06:00"
        for name, level in zip(names, row):
            try:
                FACTORS[name][level](record)
            except (KeyError, IndexError, StopIteration):
                pass                        # another factor took away what this one changes
        yield record


POLICIES = {
    "default": {},
    "milder": {"air_removal.made_after": '"review"', "implant.hold": '"implants-only"', "bi.steam": '"weekly"'},
    "stricter": {"bi.readout": '"last"', "control.per": '"load"', "bi.routine_blocks": "true",
                 "physical.above_maximum": '"fails"', "packages.wet_for_supervisor": "1", "pcd.steam": '"required"'},
}


def write_policies(folder):
    """The policies of all sets, and those under which the traces alone are decided; {name: path}."""
    text = (ROOT / "resources" / "policies" / "us-hospital.toml").read_text(encoding="utf-8")
    paths = {}
    for name, changes in {**POLICIES, **traced.ASKED}.items():
        # Other settings under the default's id are refused.
        changed = text if not changes else re.sub(r'(?m)^id = "[^"]*"$', f'id = "{name}"', text, count=1)
        for setting, value in changes.items():
            changed, count = re.subn(r"(\[%s\]\nvalue = ).*" % re.escape(setting), lambda m: m.group(1) + value, changed)
            assert count == 1, setting
        paths[name] = os.path.join(folder, name + ".toml")
        pathlib.Path(paths[name]).write_text(changed, encoding="utf-8")
    return paths


def work(job):
    name, path, cli, texts = job
    policy = load_policy(path)
    ours = [oracle.decide(oracle.parse(text), policy) for text in texts]
    return compare.compared(name, path, cli, texts, ours)


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--cli", required=True)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--write", help="write the records there as JSON Lines with their policies, and stop")
    options = parser.parse_args()
    sets = {"biological": [json.dumps(r) for r in biological_product()],
            "three-way": [json.dumps(r) for r in covering_records()],
            "voided": [json.dumps(r) for r in voided_readings()],
            "causes": [json.dumps(r) for _, _, r in caused()],
            "crossed": [json.dumps(r) for r in crossed.records()],
            "turns": [json.dumps(r) for r in turns.records()],
            "traced": [json.dumps(r) for r in traced.records()]}
    with tempfile.TemporaryDirectory() as folder:
        paths = write_policies(options.write or folder)
        if options.write:
            for what, texts in sets.items():
                pathlib.Path(options.write, what + ".jsonl").write_text("\n".join(texts) + "\n", encoding="utf-8")
            return 0
        jobs = [(name, path, options.cli, texts[i:i + CHUNK]) for name, path in paths.items()
                for what, texts in sets.items() if name in POLICIES or what == "traced"
                for i in range(0, len(texts), CHUNK)]
        count = differing = 0
        verdicts = {}
        with multiprocessing.Pool(options.jobs) as pool:
            for out in pool.imap_unordered(work, jobs):
                count += out["count"]
                differing += out["differing"]
                for verdict, number in out["verdicts"].items():
                    verdicts[verdict] = verdicts.get(verdict, 0) + number
                for name, text, lines in out["bad"][:3]:
                    print("disagreement, policy %s: %s\n    %s" % (name, text, "\n    ".join(lines)))
    print("%d combinations around a biological indicator, %d rows for every three levels of %d factors, %d voided readings,"
          " %d combinations of defects, %d in small products, %d policies, %d more for those of traces"
          % (len(sets["biological"]), len(sets["three-way"]), len(FACTORS), len(sets["voided"]), len(sets["causes"]),
             sum(len(sets[name]) for name in ("crossed", "turns", "traced")), len(POLICIES), len(traced.ASKED)))
    print("; ".join("%s %d" % pair for pair in sorted(verdicts.items())))
    print("%d decisions, %d disagreements" % (count, differing))
    return 1 if differing or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
