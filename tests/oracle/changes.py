"""Random, targeted changes of a releasable record (see scenario.py); each aims at one rule's edges.

A change is a function of the Scenario; it returns False where it does not apply. `early` changes come
before counters and `now` are given, `late` ones after.
"""

import defects
from biological import SHORTEST_READOUT
from moments import HOUR, MINUTE
from chemical import LONGEST_SHELF_LIFE
from scenario import BAD, DAY, GOOD, PEOPLE, T, day_text, spelled, typed

EARLY, LATE = [], []
AROUND = (-MINUTE, -1, 0, 0, 1, MINUTE)
CLOSE = (-1, 0, 0, 1)
# Days from a use to an expiry at which something turns.
EXPIRY = (-1, -1, 0, 0, 1, LONGEST_SHELF_LIFE, LONGEST_SHELF_LIFE, LONGEST_SHELF_LIFE + 1, LONGEST_SHELF_LIFE + 1)
# Texts without a letter and a digit, which say nothing; and the least that says something.
BARE = ("", " ", "   ", "-", "?", "_ .", "0", "z", "\u2013")
PRINTED = ("program", "sterilizer", "counter", "start", "end")


def early(weight):
    return lambda f: EARLY.append((f, weight)) or f


def late(weight):
    return lambda f: LATE.append((f, weight)) or f


def near(g, end):
    """A moment just before, at and just after an end, and the minute in which it lies."""
    minute = end // MINUTE * MINUTE
    return g.pick((end - 1, end, end, end + 1, minute, minute, minute - 1, minute - 1, minute + MINUTE, end - MINUTE,
                   end + MINUTE))


def text(g, said):
    """A text that is asked for, sometimes empty or without a letter and a digit; or in other letters."""
    return said if g.chance(0.8) else g.pick(BARE)


def latest(acts):
    """The latest recording of some acts."""
    return max(act.get("recordedAt", act["happenedAt"]) for act in acts)


# indicators --------------------------------------------------------------------------------------
def cis(g):
    """[(indicator, kind, end of its cycle)] of every chemical indicator of the record."""
    out = []
    for item in g.load["items"]:
        if "external" in item:
            out.append((item["external"], "outside", g.end))
        out += [(ci, "inside", g.end) for ci in item.get("internals", ())]
    for pcd in g.load["pcds"]:
        out += [(ci, "pcd", g.end) for ci in pcd.get("indicators", ())]
    for cycle in g.cycles:
        end = cycle.get("end", cycle["start"])
        if "sheet" in cycle:
            out.append((cycle["sheet"], "sheet", end))
        out += [(ci, "pcd", end) for ci in cycle.get("indicators", ())]
    return out


def own_product(g, thing):
    """Give an indicator, vial or control a product and lot of its own; (product, lot) to change."""
    product = next((p for p in g.products if p["id"] == thing.get("product")), None)
    if product is None:
        return None, None
    lot = next((l for l in g.lots if l["product"] == product["id"] and l["number"] == thing.get("lot")), None)
    if lot is None:
        return None, None
    product = dict(product, id=g.name("prod"), methods=list(product["methods"]))
    lot = dict(lot, product=product["id"], number=g.name("pl"))
    g.products.append(product)
    g.lots.append(lot)
    thing["product"], thing["lot"] = product["id"], lot["number"]
    return product, lot


def void(g, reading, at):
    """Somebody voids a reading: another lead, its own reader under one or another spelling, who may not, nobody."""
    own = reading.get("by") or "op-1"
    noted = reading.get("recordedAt", reading["happenedAt"])
    how = g.pick(("lead", "lead", "lead", "supervisor", "own", "own", "spelled", "operator", "viewer", "unsigned",
                  "later", "before", "before"))
    role = how if how in PEOPLE else "lead"
    by = {"own": own, "spelled": spelled(own, g.pick)}.get(how)
    reading["voided"] = act = g.act(at, role, by=by)
    if how == "unsigned":
        act.pop("by") if g.chance(0.5) else act.update(by="  ")
    elif how == "later":
        act["recordedAt"] = T(at + DAY)
    elif how == "before":           # around the recording of what it takes out
        act["recordedAt"] = T(noted + g.pick(CLOSE))
        act["happenedAt"] = T(min(at, act["recordedAt"]))
    if g.chance(0.1):
        reading["by"] = g.pick(("", " ", "lead-1"))


def second_unclear(g, at, seen, other):
    """Readings: unclear, settled by another, unclear again by the same, by the second, by a third; and what follows."""
    first, second = g.rng.sample(("op-1", "op-2", "lead-1"), 2)
    by = g.pick((first, spelled(first, g.pick), second, "op-3", "", None))
    rows = [("unclear", first), (seen, second), ("unclear", by)]
    rows += g.pick(([], [], [(seen, first)], [(seen, second)], [(seen, "op-3")], [("unclear", "op-3")], [(other, "op-3")]))
    out = [g.act(at + n * MINUTE, by=by or "op-1", seen=what) for n, (what, by) in enumerate(rows)]
    if by is None:
        out[2].pop("by")
    elif not by:
        out[2]["by"] = by
    return out


def voided_and_good(g, at, good, bad):
    """Readings: a bad answer that somebody takes out, and a good one by him, by another, by his other spelling."""
    void_by = g.pick(("lead-1", "lead-1", "sup-1", "op-2"))
    first = g.act(at, by="op-1", seen=g.pick((bad, bad, bad, "unclear")))
    first["voided"] = g.act(at + 3 * MINUTE, g.pick(("lead", "lead", "lead", "operator")), by=void_by)
    if g.chance(0.15):
        first["voided"]["recordedAt"] = T(first.get("recordedAt", at) + g.pick(CLOSE))
        first["voided"]["happenedAt"] = T(min(at, first["voided"]["recordedAt"]))
    again = g.act(at + 5 * MINUTE, by=g.pick((void_by, void_by, spelled(void_by, g.pick), "op-2", "op-1")), seen=good)
    rows = [first, again]
    if g.chance(0.2):
        rows.append(g.act(at + 6 * MINUTE, by="op-3", seen=good))
    return rows


def because_ci(g, ci, kind, end, count=1):
    """A good chemical indicator that does not count, for `count` causes of section 4a."""
    product, lot = own_product(g, ci)
    if product is None or product["kind"] != "chemical" or product["response"] not in GOOD:
        return False
    at = end + MINUTE * min(product.get("readWithinMinutes", 30), g.pick((1, 5, 30)))
    ci["readings"] = [g.act(at, by="op-1", recorded=at, seen=GOOD[product["response"]])]
    for name in ("alsoUsedIn", "unsettled", "lost"):
        ci.pop(name, None)
    target = defects.Target(kind, ci, product, lot, g.zone.day(g.start), end, at, T, lambda ms: g.act(ms, recorded=ms),
                            g.pick)
    defects.spoil(target, defects.CHEMICAL, g.rng.sample(sorted(defects.CHEMICAL), count))


def spoil_ci(g, ci, kind, end):
    """One random change of a chemical indicator."""
    product = next((p for p in g.products if p["id"] == ci.get("product")), {"response": "colour"})
    response = product["response"] if product["response"] in GOOD else "colour"
    good, bad = GOOD[response], g.pick(BAD[response])
    at = end + g.minutes(1, 30)

    def read(seen, by, minutes, **more):
        role = next(r for r, names in PEOPLE.items() if by in names)
        return g.act(at + minutes * MINUTE, role, by=by, seen=seen, **more)

    how = g.rng.choices(
        ("none", "bad", "unclear", "pattern", "voided", "edge", "product", "unsettled", "lost", "absent", "misfit",
         "turn", "again", "voider"), (11, 10, 9, 10, 8, 12, 18, 6, 12, 9, 4, 6, 8, 7))[0]
    if how == "none":
        ci["readings"] = []
        if g.chance(0.3):
            del ci["readings"]
    elif how == "bad":
        ci.setdefault("readings", []).append(read(bad, "op-1", g.pick((0, 50))))
    elif how == "unclear":
        ci["readings"] = [read("unclear", g.pick(("op-1", "view-1")), 0)]
    elif how == "pattern":          # second readers in all constellations
        ci["readings"] = []
        for n in range(g.pick((2, 2, 3, 3, 4))):
            seen = g.pick((good, good, "unclear", "unclear", "unclear", bad if g.chance(0.15) else good))
            reading = read(seen, g.pick(("op-1", "op-2", "op-3", "lead-1")), n * g.pick((0, 1, 2)))
            if g.chance(0.12):
                reading.pop("by", None)
            elif g.chance(0.2):
                reading["by"] = spelled(reading["by"], g.pick)
            if g.chance(0.12):
                void(g, reading, at + 10 * MINUTE)
            ci["readings"].append(reading)
    elif how == "voided":
        seen = g.pick((bad, bad, good, "unclear", "absent"))
        reading = read(seen, "op-1", 0)
        void(g, reading, at + 10 * MINUTE)
        ci["readings"] = [reading]
        if g.chance(0.5):
            ci["readings"].append(read(good, "op-2", 5))
    elif how == "edge":             # one millisecond or minute before, at, after
        limit = end
        product, _ = own_product(g, ci)
        if product and product["kind"] == "chemical" and g.chance(0.6):
            product["readWithinMinutes"] = g.pick((1, 30, 240))
            limit = end + product["readWithinMinutes"] * MINUTE
        ci["readings"] = [g.act(limit + g.pick(AROUND) if limit != end else near(g, end), seen=good)]
    elif how == "product":
        product, lot = own_product(g, ci)
        what = g.pick(("expires", "expires", "no-expires", "recalled", "methods", "type", "cycle-types", "lot", "product", "kind",
                       "used", "used", "all-types"))
        if product is None or what == "used":
            ci["alsoUsedIn"] = ["lot-3"]
        elif what == "expires":
            lot["expires"] = day_text(g.zone.day(g.start) + g.pick(EXPIRY))
        elif what == "no-expires":
            lot.pop("expires", None)
        elif what == "recalled":
            lot["recalled"] = g.pick((True, True, False))
        elif what == "methods":
            product["methods"] = g.pick(([], ["dry-heat"], ["ethylene-oxide"], ["steam"]))
        elif what == "type":
            product["type"] = g.rng.randint(1, 6)
        elif what == "all-types":
            product["type"] = g.pick((3, 4, 5, 6))
        elif what == "cycle-types":
            product["cycleTypes"] = g.pick((["type-c"], ["type-a"], ["type-b", "type-c"], [typed(g.type, g.pick)]))
        elif what == "lot":
            ci["lot"] = "pl-none"
        elif what == "product":
            ci.pop("product", None) if g.chance(0.5) else ci.update(product="prod-none")
        else:
            own, number = g.biological()
            ci["product"], ci["lot"] = own["id"], number
        if g.chance(0.15):
            ci["readings"] = []
    elif how == "unsettled":
        if g.chance(0.8):
            ci["readings"] = [read("unclear", "op-1", 0)]
        ci["unsettled"] = g.act(at + 20 * MINUTE, g.pick(("operator", "viewer")))
    elif how == "lost":
        ci["lost"] = g.act(at, g.pick(("operator", "lead", "viewer")) if g.chance(0.3) else "operator")
        ci["readings"] = [] if g.chance(0.6) else [read(g.pick(("unclear", "unclear", good, bad)), "op-1", 0)]
        if g.chance(0.3):
            ci["alsoUsedIn"] = ["lot-3"]
    elif how == "absent":
        ci["readings"] = [read("absent", "op-1", 0)]
        if g.chance(0.3):
            ci["readings"].append(read(g.pick(("absent", bad, good)), "op-2", g.pick((-5, 5))))
            if g.chance(0.3):
                void(g, ci["readings"][-1], at + 10 * MINUTE)
    elif how == "again":
        ci["readings"] = second_unclear(g, at, good, bad)
    elif how == "voider":
        ci["readings"] = voided_and_good(g, at, good, bad)
    elif how == "misfit":
        ci["readings"] = [read(g.pick([s for r, s in GOOD.items() if r != response]), "op-1", 0)]
        if g.chance(0.3):
            ci["readings"].append(read("unclear", "op-2", 1))
    else:                           # the order is that of recording
        ci["readings"] = [read("unclear", "op-1", 0, recordedAt=T(at + 30 * MINUTE)),
                          read(good, "op-2", 5, recordedAt=T(at + g.pick((29, 30, 31)) * MINUTE))]
    if "lost" in ci and g.chance(0.5):
        ci["readings"] = []


@early(9)
def any_ci(g):
    found = cis(g)
    if not found:
        return False
    spoil_ci(g, *g.pick(found))


@early(8)
def external_ci(g):
    item = g.pick(g.load["items"])
    if "external" not in item or g.chance(0.1):
        item["external"] = g.ci("outside", g.end)
    if g.chance(0.9):
        spoil_ci(g, item["external"], "outside", g.end)
    if g.chance(0.07):
        item["internalVisible"] = True
    if g.chance(0.1):
        item["external"]["lost"] = g.act(g.end + 5 * MINUTE)
    if g.chance(0.05):
        del item["external"]


@early(9)
def internal_ci(g):
    item = g.pick(g.load["items"])
    if not item.get("internals"):
        item["internals"] = [dict(g.ci("inside", g.end), place="place-1")]
    if g.chance(0.35):
        item["internalVisible"] = True
        if g.chance(0.5):
            item.pop("external", None)
    spoil_ci(g, item["internals"][0], "inside", g.end)
    if g.chance(0.1):
        item["internals"][0]["lost"] = g.act(g.end + 5 * MINUTE)
    if g.chance(0.1):
        item["internals"][0].pop("place", None)
    if g.chance(0.1):
        item["internals"].append(dict(item["internals"][0]))
    if g.chance(0.08):
        item["internals"] = []


@early(8)
def pcd_ci(g):
    if not g.load["pcds"]:
        g.load["pcds"].append({"id": "pcd-1", "indicators": [g.ci("pcd", g.end)]})
    pcd = g.pick(g.load["pcds"])
    if not pcd.get("indicators"):
        pcd["indicators"] = [g.ci("pcd", g.end)]
    spoil_ci(g, g.pick(pcd["indicators"]), "pcd", g.end)
    if g.chance(0.25):
        pcd["indicators"].append(g.ci("pcd", g.end))


@early(9)
def uncounted_ci(g):
    """A good reading that does not count, of every indicator that gives its cause; also lost, also beside a good one."""
    count = g.pick((1, 1, 1, 1, 2))
    where = g.pick(("pcd", "pcd-noted", "external", "external-lost", "external-lost", "internal"))
    if where.startswith("pcd"):
        if not g.load["pcds"]:
            g.load["pcds"].append({"id": "pcd-1"})
        pcd = g.pick(g.load["pcds"])
        pcd.setdefault("indicators", [])
        if not pcd["indicators"] or where == "pcd-noted":
            pcd["indicators"].append(g.ci("pcd", g.end))
        return because_ci(g, pcd["indicators"][0], "pcd", g.end, count)
    item = g.pick(g.load["items"])
    if where == "internal":
        item["internals"] = [dict(g.ci("inside", g.end), place="place-1")]
        if g.chance(0.15):          # the same place twice
            item["internals"].append(dict(g.ci("inside", g.end), place="place-1"))
            because_ci(g, item["internals"][1], "inside", g.end)
        return because_ci(g, item["internals"][0], "inside", g.end, count)
    item["external"] = g.ci("outside", g.end)
    done = because_ci(g, item["external"], "outside", g.end, count)
    if where == "external-lost":
        item["external"]["lost"] = g.act(g.end + 5 * MINUTE)
    return done


@early(5)
def several_packages(g):
    """Rejected or wet packages, two and more."""
    g.want_review = True
    items = g.load["items"]
    while len(items) < 3:
        items.append(g.item(len(items) + 1))
    kind = g.pick(("external", "internal", "wet", "all", "mixed"))
    for item in items[:g.pick((1, 2, 2, 3))] if kind != "all" else items:
        what = g.pick(("external", "internal", "wet")) if kind == "mixed" else kind
        at = g.end + g.minutes(1, 20)
        if what == "wet":
            item.setdefault("checks", []).append(g.act(at, dry=False))
        elif what == "internal":
            item["internals"] = [dict(g.ci("inside", g.end), place="place-1")]
            item["internals"][0]["readings"] = [g.act(at, seen=g.pick(("unchanged", "absent", "not-uniform")))]
        else:
            item["external"] = g.ci("outside", g.end)
            item["external"]["readings"] = [g.act(at, seen=g.pick(("unchanged", "unchanged", "absent")))]


# vials and controls ------------------------------------------------------------------------------
def vials(g):
    """[(vial, cycle's lot, cycle's end)] of the record."""
    out = [(v, "lot-7", g.end) for p in g.load["pcds"] for v in p.get("vials", ())]
    for cycle in g.cycles:
        out += [(v, cycle["lot"], cycle.get("end", cycle["start"])) for v in cycle.get("vials", ())]
    return out


def ensure_vial(g):
    found = vials(g)
    if found and g.chance(0.9):
        return g.pick(found)
    if not g.load["pcds"]:
        g.load["pcds"].append({"id": "pcd-1"})
    vial = g.vial(g.end)
    g.load["pcds"][0].setdefault("vials", []).append(vial)
    g.control(vial, "lot-7")
    return vial, "lot-7", g.end


def because_vial(g, vial, lot, end, table, count=1):
    """A negative vial of its own product with its own control that does not count, for `count` causes of a table."""
    product, number = own_product(g, vial)
    if product is None or product["kind"] != "biological":
        return False
    fresh = dict(g.vial(end, (product, number["number"])), id=vial["id"])
    vial.clear()
    vial.update(fresh)
    control = g.control(vial, lot, (product, number["number"]))
    begun = vial["incubationStart"]
    final = begun + g.readout(product)
    vial["readings"] = [g.act(final, recorded=final, seen="no-growth")]
    target = defects.Target("vial", vial, product, number, g.zone.day(g.start), end, final, T,
                            lambda ms: g.act(ms, recorded=ms), g.pick, begun, final, control, g.incubators)
    defects.spoil(target, table, g.rng.sample(sorted(table), count))


@early(3)
def short_readout(g):
    """A vial of a product with a readout around the shortest that any has, and its control read from then on."""
    vial, lot, end = ensure_vial(g)
    product, number = own_product(g, vial)
    if product is None or product["kind"] != "biological" or "incubationStart" not in vial:
        return False
    shortest = SHORTEST_READOUT[g.method]
    product["releaseMinutes"] = g.pick((shortest, shortest, shortest - 1, shortest - 1, shortest + 1, 10, 9, 1))
    if g.chance(0.8):
        product.pop("lastMinutes", None)
    final = vial["incubationStart"] + g.readout(product)
    vial["readings"] = [g.act(final + g.pick((0, 0, MINUTE, -1)), seen="no-growth")] if g.chance(0.8) else []
    if g.chance(0.9):
        control = g.control(vial, lot, (product, number["number"]))
        if g.chance(0.5):
            control["readings"] = [g.act(near(g, control["incubationStart"] + g.pick((10, 10, shortest)) * MINUTE),
                                         seen=g.pick(("growth", "growth", "growth", "no-growth")))]
    if g.chance(0.2):
        g.pick((lambda: vial.update(alsoUsedIn=["lot-3"]), lambda: vial.update(lost=g.act(final + HOUR)),
                lambda: vial.update(incubator="inc-none"), lambda: vial.pop("incubationStart", None)))()
    return None


@early(11)
def uncounted_vial(g):
    """A vial of the load that is void, or whose negative does not count, for a cause of section 4a."""
    if not g.load["pcds"]:
        g.load["pcds"].append({"id": "pcd-1"})
    pcd = g.load["pcds"][0]
    if not pcd.get("vials"):
        pcd["vials"] = [g.vial(g.end)]
    return because_vial(g, pcd["vials"][0], "lot-7", g.end, g.pick((defects.VIAL, defects.VIAL, defects.NEGATIVE)),
                        g.pick((1, 1, 1, 1, 2)))


@early(7)
def activation_awaited(g):
    """A good vial of the load or the history that needs activation or not: activated not at all, too early, in time or too
    late; put to incubate or not; sometimes with what voids or loses it whether or not it was put to incubate."""
    vial, lot, end = ensure_vial(g)
    product, _ = own_product(g, vial)
    if product is None or product["kind"] != "biological":
        return False
    product["needsActivation"] = g.chance(0.75)
    if because_vial(g, vial, lot, end, {}, 0) is False:
        return False
    begun = vial["incubationStart"]
    vial.pop("activation", None)
    at = g.pick((None, None, end // MINUTE * MINUTE - 1, begun - MINUTE, begun // MINUTE * MINUTE + MINUTE))
    if at is not None:
        vial["activation"] = g.act(at, g.pick(("operator",) * 6 + ("viewer",)))
    if g.chance(0.6):
        not_begun(g, vial)
    if g.chance(0.25):
        g.pick((lambda: vial.update(processIndicator="unchanged"), lambda: vial.update(lost=g.act(begun + HOUR)),
                lambda: vial.update(voided=g.act(begun + HOUR, "lead")), lambda: vial.update(lot="pl-none"),
                lambda: vial.update(incubator="inc-none"), lambda: vial.update(alsoUsedIn=["lot-3"])))()
    return None


def beside_unclear(g, vial, final, product):
    """What an unclear vial is besides: void, lost, or waiting for a control."""
    how = g.pick(("voided", "lost", "used", "unregistered", "process", "no-control", "no-control", "no-control"))
    if how == "voided":
        vial["voided"] = g.act(final + HOUR, g.pick(("lead", "lead", "operator")))
    elif how == "lost":
        vial["lost"] = g.act(final + HOUR, g.pick(("operator", "operator", "viewer")))
    elif how == "used":
        vial["alsoUsedIn"] = ["lot-3"]
    elif how == "unregistered":
        vial["lot"] = "pl-none"
    elif how == "process" and product and product["kind"] == "biological":
        product["hasProcessIndicator"] = True
        vial["processIndicator"] = "unchanged"
    elif how == "no-control":
        g.controls[:] = [control for control in g.controls if control.get("incubator") != vial.get("incubator")]


def not_begun(g, vial):
    """A vial that was not put to incubate, mostly not read either."""
    vial.pop("incubationStart", None)
    if g.chance(0.7):
        vial["readings"] = []


def spoil_vial(g, vial, end):
    product, lot = own_product(g, vial) if g.chance(0.5) else (None, None)
    if product:                     # its controls follow
        for control in g.controls:
            if control.get("incubator") == vial.get("incubator") and g.chance(0.9):
                control["product"], control["lot"] = vial["product"], vial["lot"]
    known = product or next((p for p in g.products if p["id"] == vial.get("product")), None)
    begun = vial.get("incubationStart", end)
    final = begun + (g.readout(known) if known and known["kind"] == "biological" else HOUR)

    def read(seen, at, who="operator", **more):
        return g.act(at, who, seen=seen, **more)

    how = g.rng.choices(
        ("growth", "growth-elsewhere", "none", "unclear", "pattern", "edge", "latest", "span", "voided", "lost",
         "product", "incubation", "process", "activation", "used", "unsettled", "reading-voided", "late", "again"),
        (6, 8, 10, 11, 7, 8, 6, 7, 8, 10, 13, 12, 8, 8, 4, 4, 5, 4, 5))[0]
    if how == "growth":
        vial["readings"].append(read("growth", begun + g.minutes(0, 3000), g.pick(("operator", "operator", "viewer"))))
        if g.chance(0.2):
            void(g, vial["readings"][-1], final + DAY)
    elif how == "growth-elsewhere":
        g.want_review = True
        vial["readings"] = [read("growth", begun + g.minutes(0, 3000))]
        vial["incidentFinding"] = found_elsewhere(g, vial, final + DAY, g.pick(("supervisor",) * 5 + ("lead",)))
    elif how == "none":
        vial["readings"] = []
        if g.chance(0.4):
            vial.pop("readings")
            vial.setdefault("readings", [])
    elif how == "unclear":
        vial["readings"] = [read("unclear", begun + g.minutes(0, 300))]
        if g.chance(0.6):
            beside_unclear(g, vial, final, known)
    elif how == "pattern":
        vial["readings"] = []
        for n in range(g.pick((2, 2, 3, 4))):
            reading = read(g.pick(("no-growth", "unclear", "unclear")), final + n * g.pick((0, 0, MINUTE)))
            if g.chance(0.12):
                reading.pop("by", None)
            elif g.chance(0.2):
                reading["by"] = spelled(reading["by"], g.pick)
            vial["readings"].append(reading)
    elif how == "edge":
        vial["readings"] = [read("no-growth", final + g.pick(AROUND))]
    elif how == "latest" or how == "late":
        if product is None:
            product, lot = own_product(g, vial)
        if product and product["kind"] == "biological":
            product["latestMinutes"] = (final - begun) // MINUTE + g.pick((1, 60))
            limit = begun + product["latestMinutes"] * MINUTE
            vial["readings"] = [read("no-growth", limit + g.pick(AROUND + (0, 60 * MINUTE)),
                                     g.pick(("operator",) * 5 + ("viewer",)))]
            if g.chance(0.15):
                vial["lost"] = g.act(limit + DAY)
            if g.chance(0.2):
                void(g, vial["readings"][0], limit + DAY)
            if g.chance(0.2):
                vial["readings"].insert(0, read("unclear", limit - MINUTE))
        for control in g.controls:
            if control.get("incubator") == vial.get("incubator"):
                control["product"], control["lot"] = vial.get("product", "prod-x"), vial.get("lot", "pl-x")
    elif how == "span":
        at = vial["readings"][0]["happenedAt"] if vial.get("readings") else final
        span = {"from": T(at + g.pick((-HOUR, -1, 0, 0, 1)))}
        if g.chance(0.8):
            span["to"] = T(max(span["from"], at + g.pick((-1, 0, 0, 1, HOUR))))
        g.incubators[0].setdefault("outOfRange", []).append(span)
    elif how == "voided":
        vial["voided"] = g.act(final + HOUR, g.pick(("lead", "lead", "supervisor", "operator")))
    elif how == "lost":
        vial["lost"] = g.act(final + HOUR)
        if g.chance(0.6):
            vial["readings"] = []
        elif g.chance(0.5):         # read, but its control is not
            for control in g.controls:
                if control["product"] == vial.get("product"):
                    control["readings"] = []
    elif how == "product":
        if product is None:
            product, lot = own_product(g, vial)
        what = g.pick(("expires", "expires", "no-expires", "recalled", "methods", "species", "cycle-types", "lot", "product", "kind"))
        if product is None or what == "lot":
            vial["lot"] = "pl-none"
        elif what == "expires":
            lot["expires"] = day_text(g.zone.day(g.start) + g.pick(EXPIRY))
        elif what == "no-expires":
            lot.pop("expires", None)
        elif what == "recalled":
            lot["recalled"] = g.pick((True, True, False))
        elif what == "methods":
            product["methods"] = g.pick(([], ["dry-heat"], ["steam", "dry-heat"]))
        elif what == "species":
            product["species"] = g.pick(("geobacillus-stearothermophilus", "bacillus-atrophaeus", "other"))
        elif what == "cycle-types":
            product["cycleTypes"] = g.pick((["type-c"], ["type-a"], ["type-b"], [typed(g.type, g.pick)]))
        elif what == "product":
            vial["product"] = "prod-none"
        else:
            own, number = g.chemical("pcd")
            vial["product"], vial["lot"] = own["id"], number
        if g.chance(0.2):           # an unregistered vial beside what else may be said of it
            g.pick((lambda: vial.update(alsoUsedIn=["lot-3"]), lambda: vial.update(lost=g.act(final + HOUR)),
                    lambda: vial.pop("incubationStart", None), lambda: vial.update(readings=[])))()
    elif how == "incubation":
        what = g.pick(("none", "none", "end", "within", "early"))
        if what == "none":
            not_begun(g, vial)
        elif what == "end":
            vial["incubationStart"] = T(near(g, end))
        elif what == "within":
            if product is None:
                product, lot = own_product(g, vial)
            if product and product["kind"] == "biological":
                product["startWithinMinutes"] = g.pick((60, 120))
                vial["incubationStart"] = T(end + product["startWithinMinutes"] * MINUTE + g.pick(AROUND))
                for control in g.controls:
                    if control.get("incubator") == vial.get("incubator"):
                        control["product"], control["lot"] = vial["product"], vial["lot"]
        else:
            vial["incubationStart"] = T(end - g.minutes(1, 30))
    elif how == "process":
        if product is None:
            product, lot = own_product(g, vial)
        if product and product["kind"] == "biological":
            product["hasProcessIndicator"] = g.chance(0.8)
            for control in g.controls:
                if control.get("incubator") == vial.get("incubator"):
                    control["product"], control["lot"] = vial["product"], vial["lot"]
        vial.pop("processIndicator", None)
        if product and product["kind"] == "biological" and g.chance(0.3):
            product.pop("hasProcessIndicator")
        if g.chance(0.45):
            vial["processIndicator"] = g.pick(("unchanged", "changed"))
    elif how == "activation":
        if product is None:
            product, lot = own_product(g, vial)
            for control in g.controls:
                if control.get("incubator") == vial.get("incubator"):
                    control["product"], control["lot"] = vial.get("product", "prod-x"), vial.get("lot", "pl-x")
                    control["activation"] = g.act(begun - 5 * MINUTE)
        if product and product["kind"] == "biological":
            product["needsActivation"] = True
        vial.pop("activation", None)
        if g.chance(0.8):
            vial["activation"] = g.act(near(g, g.pick((begun, begun, end))), g.pick(("operator",) * 4 + ("viewer",)))
        if g.chance(0.3):           # not put to incubate: then it waits, activated or not
            not_begun(g, vial)
    elif how == "used":
        vial["alsoUsedIn"] = ["lot-3"] if g.chance(0.8) else []
    elif how == "unsettled":
        if g.chance(0.8):
            vial["readings"] = [read("unclear", final)]
        vial["unsettled"] = g.act(final + HOUR, g.pick(("operator", "viewer")))
    else:
        if how == "again":
            vial["readings"] = second_unclear(g, final, "no-growth", "growth")
            return
        reading = read("no-growth", final)
        void(g, reading, final + HOUR)
        vial["readings"] = [reading] + ([read("no-growth", final + HOUR)] if g.chance(0.3) else [])


@early(16)
def any_vial(g):
    vial, _, end = ensure_vial(g)
    spoil_vial(g, vial, end)


@early(6)
def load_vial(g):
    found = [(v, end) for v, lot, end in vials(g) if lot == "lot-7"]
    if not found:
        return False
    spoil_vial(g, *g.pick(found))


@early(10)
def any_control(g):
    """Controls by day, lot, load; dead beside grown; window and midnight edges."""
    vial, lot, _ = ensure_vial(g)
    if "incubationStart" not in vial:
        return False
    mine = [c for c in g.controls if c["product"] == vial.get("product") and c["lot"] == vial.get("lot")]
    product = next((p for p in g.products if p["id"] == vial.get("product")), None)
    if product is None or product["kind"] != "biological" or not mine:
        return False
    control = g.pick(mine)
    begun = control.get("incubationStart", vial["incubationStart"])
    final = begun + g.readout(product)
    how = g.pick(("none", "none", "dead", "pending", "second", "second", "edge", "edge", "incubator", "for-load",
                  "bad", "bad", "pattern", "early", "reach", "missing", "unread", "again", "voider"))
    if how == "none":
        for old in mine:
            g.controls.remove(old)
    elif how == "dead":
        control["readings"] = [g.act(final + g.pick(AROUND), seen="no-growth")]
        if g.chance(0.2):
            void(g, control["readings"][0], final + HOUR)
            if g.chance(0.5):
                control["readings"].append(g.act(final + 2 * HOUR, seen="growth"))
    elif how in ("pending", "unread"):
        control["readings"] = [] if g.chance(0.7) else [g.act(final, seen="unclear")]
        if g.chance(0.3):
            control["readings"].append(g.act(final, seen="growth"))
            void(g, control["readings"][-1], final + HOUR)
    elif how == "second":
        other = dict(control, id=g.name("ctl"))
        if g.chance(0.35):          # of another lot, or of another product
            product, lot = own_product(g, other)
            if g.chance(0.5):
                lot["product"], other["product"] = control["product"], control["product"]
            elif g.chance(0.7):
                lot["number"] = other["lot"] = control["lot"]
            if g.chance(0.5):
                control["incubator"] = "inc-2"
        other["readings"] = g.pick(([], [g.act(final, seen="no-growth")], [g.act(final, seen="growth")],
                                    [g.act(final, seen="unclear")]))
        g.controls.append(other)
    elif how in ("edge", "reach"):
        product["control"] = "day" if how == "edge" else g.pick(("day", "lot", "load"))
        window = g.policy["control.window_hours"] * HOUR
        begun = vial["incubationStart"]
        midnight = g.zone.next_midnight(begun)
        moved = g.pick((begun + window, begun - window, midnight, midnight, g.zone.absolute(g.zone.day(begun)))) \
            + g.pick(AROUND)
        control["incubationStart"] = T(moved)
        control["readings"] = [g.act(moved + g.readout(product), seen="growth")]
    elif how == "incubator":
        if g.chance(0.4):
            control["incubator"] = "inc-2"
        else:
            vial.pop("incubator", None)
            if g.chance(0.5):           # neither named: they do not match
                control.pop("incubator", None)
    elif how == "for-load":
        product["control"] = "load"
        control["forLoad"] = g.pick((lot, "lot-8", "lot-7"))
        if g.chance(0.2):
            del control["forLoad"]
    elif how == "bad":
        what = g.pick(("changed", "expires", "no-start", "activation"))
        if what == "changed":
            control["processIndicator"] = "changed"
        elif what == "expires":
            number = next(l for l in g.lots if l["product"] == product["id"] and l["number"] == control["lot"])
            number["expires"] = day_text(g.zone.day(begun) + g.pick(EXPIRY))
        elif what == "no-start":
            control.pop("incubationStart", None)
        else:
            product["needsActivation"] = True
            control.pop("activation", None)
            if g.chance(0.7):
                control["activation"] = g.act(near(g, begun))
            vial.setdefault("activation", g.act(vial["incubationStart"] - MINUTE))
    elif how == "again":
        control["readings"] = second_unclear(g, final, "growth", "no-growth")
    elif how == "voider":
        control["readings"] = voided_and_good(g, final - g.pick((0, 0, 0, MINUTE)), "growth", "no-growth")
    elif how == "pattern":
        control["readings"] = [g.act(final + n * g.pick((0, MINUTE)), seen=g.pick(("growth", "unclear", "unclear")))
                               for n in range(g.pick((1, 2, 3)))]
        if g.chance(0.3):
            control["unsettled"] = g.act(final + HOUR)
    elif how == "early":
        at = begun + g.pick((0, 10, 10, 10)) * MINUTE       # nothing is read out sooner
        control["readings"] = [g.act(near(g, at), seen=g.pick(("growth", "growth", "growth", "no-growth")))]
        if g.chance(0.3):
            control["readings"].append(g.act(final, seen="no-growth"))
    else:
        control.pop("lot", None) if g.chance(0.5) else control.update(product="prod-none")


@early(5)
def more_pcds(g):
    """PCDs added, emptied, removed."""
    pcds = g.load["pcds"]
    how = g.pick(("clear", "clear", "clear", "empty", "empty-besides", "second", "no-ci", "no-vials"))
    if how == "clear":
        g.load["pcds"] = []
    elif how == "empty":
        pcds[:] = [{"id": "pcd-1"}]
    elif how == "empty-besides":
        pcds.append({"id": g.name("pcd"), **g.pick(({}, {"vials": []}, {"indicators": []}))})
    elif how == "second":
        pcds.append({"id": g.name("pcd"), "vials": [g.vial(g.end)], "indicators": [g.ci("pcd", g.end)]})
    elif not pcds:
        return False
    elif how == "no-ci":
        pcds[0].pop("indicators", None)
    elif how == "no-vials":
        pcds[0].pop("vials", None)


@early(6)
def lost_pcds(g):
    """Indicators of PCDs that are lost, one or two of each; by whom and when matters for their review."""
    pcds = g.load["pcds"]
    if not pcds:
        return False
    looked = g.chance(0.6)          # by one who may have said it lost himself, or have seen only the first
    if not looked:
        g.want_review = True
    for pcd in pcds:
        if g.chance(0.4):
            pcd.setdefault("indicators", []).append(g.ci("pcd", g.end))
        for ci in pcd.get("indicators", ()):
            if g.chance(0.85):
                ci["readings"] = []
                at = g.end + 9 * MINUTE + g.pick((0, 0, 1, MINUTE))
                ci["lost"] = g.act(at, g.pick(("operator", "lead", "lead", "supervisor")), recorded=at)
        lost = [ci["lost"] for ci in pcd.get("indicators", ()) if "lost" in ci]
        if looked and lost:
            by = g.pick(("lead-1", "lead-1", "lead-2", "sup-1"))
            g.load.setdefault("reviews", []).append(g.act(
                g.end + HOUR, "supervisor" if by == "sup-1" else "lead", by=by, finding="pcd.lost-noted", subject=pcd["id"],
                answer="isolated", why="fell behind the rack", newestSeen=T(g.pick((latest(lost), latest(lost[:1]), latest(lost) - 1)))))


@early(3)
def process_indicator_open(g):
    """A vial with a process indicator at which nobody has looked."""
    vial, _, _ = ensure_vial(g)
    product, _ = own_product(g, vial)
    if not product or product["kind"] != "biological":
        return False
    product["hasProcessIndicator"] = True
    vial.pop("processIndicator", None)
    for control in g.controls:
        if control.get("incubator") == vial.get("incubator"):
            control["product"], control["lot"] = vial["product"], vial["lot"]


@early(2)
def bare_incubator(g):
    """A vial and its controls stand in an incubator whose name may say nothing."""
    vial, lot, _ = ensure_vial(g)
    name = g.pick(BARE) or "-"
    mates = [c for c in g.controls if c.get("incubator") == vial.get("incubator")] or [g.control(vial, lot)]
    for thing in [vial] + mates:
        thing["incubator"] = name
    if name.isalnum() and g.chance(0.6):
        g.incubators.append({"id": name})


def answer(g, control, state):
    """What a grown control says instead; a control that is gone says nothing."""
    if state == "gone":
        g.controls[:] = [each for each in g.controls if each is not control]
    elif state == "pending":
        control["readings"] = []
    elif state == "dead":
        at = control["readings"][-1]["happenedAt"]
        control["readings"] = [g.act(at, recorded=at, seen="no-growth")]


@early(4)
def incubators(g):
    """An incubator that nobody listed, or that is listed under another name; other vials may stand in a listed one."""
    vial, lot, _ = ensure_vial(g)
    mates = [c for c in g.controls if c.get("incubator") == vial.get("incubator")] or [g.control(vial, lot)]
    how = g.pick(("none", "other", "other", "other", "listed", "out"))
    if how == "none":
        g.incubators.clear()
    else:
        for thing in [vial] + (mates if g.chance(0.8) else []):
            thing["incubator"] = "inc-3"
        if how == "listed":
            g.incubators.append({"id": g.pick(("inc-3", "inc-3", "INC-3"))})
        elif how == "out":          # listed, and out of range from the readout on
            g.incubators.append({"id": "inc-3", "outOfRange": [{"from": vial["readings"][0]["happenedAt"]}]})
        if g.chance(0.5):
            for control in mates:
                answer(g, control, g.pick(("dead", "dead", "pending", "gone")))
    if g.chance(0.2):
        g.pick((lambda: vial.update(readings=[]), lambda: vial.pop("incubationStart"),
                lambda: vial.update(lost=g.act(g.end + DAY)), lambda: vial.update(alsoUsedIn=["lot-3"])))()


@early(6)
def not_needed_ci(g):
    """A PCD of an implant load without an indicator of a needed type; with or without a vial that is read."""
    if not g.implant or not g.load["pcds"]:
        return False
    for pcd in g.load["pcds"]:
        how = g.pick(("none", "none", "type", "type", "mended"))
        if how == "none":
            pcd.pop("indicators", None)
        elif how == "mended":       # one that the register does not know, or whose type it does not
            for ci in pcd.get("indicators", ()):
                ci[g.pick(("lot", "product"))] = "none"
        else:
            types = g.policy["pcd.types_" + ("steam" if g.method == "steam" else "other")]
            own = g.product("chemical", type=g.pick(types), response="moving-front")
            pcd["indicators"] = [g.ci("pcd", g.end, own)]
        for vial in pcd.get("vials", ()):
            if g.chance(0.3):
                vial["readings"] = []
        if g.chance(0.1):
            pcd.pop("vials", None)
            pcd.setdefault("indicators", [])


@early(4)
def lost_vials(g):
    """A vial of the load that is lost or void beside a good one, whatever its control says, before and after that is no
    longer awaited; and who looked at that."""
    found = [pcd for pcd in g.load["pcds"] if pcd.get("vials")]
    if not found:
        return False
    pcd = found[0]
    other = g.vial(g.end)
    begun = other["incubationStart"]
    if g.chance(0.5):
        other["readings"] = []
    at = begun + g.pick((HOUR, HOUR, MINUTE, -MINUTE, 30 * HOUR))
    if g.chance(0.7):
        other["lost"] = g.act(at, g.pick(("operator", "operator", "lead")))
    else:
        other["voided"] = g.act(at, "lead")
    pcd["vials"].insert(g.pick((0, 1)), other)
    if g.chance(0.6):               # its own control, or none
        other["incubator"] = "inc-4"
        if g.chance(0.85):
            g.incubators.append({"id": "inc-4"})
        control = g.control(other, "lot-7", next(((p, other["lot"]) for p in g.products if p["id"] == other["product"]), None))
        answer(g, control, g.pick(("gone", "gone", "gone", "dead", "dead", "pending", "grown", "grown")))
    if g.chance(0.5):
        product = next(p for p in g.products if p["id"] == other["product"])
        if product.get("control", g.policy["control.per"]) != "load":
            w = max(g.zone.next_midnight(begun), begun + g.policy["control.window_hours"] * HOUR)
            g.now_at = w + g.pick((-1, -1, 0, 0, 1, -HOUR))
    act = other.get("lost") or other["voided"]
    if g.chance(0.6):
        newest = max([latest([act]), begun] + [latest([r]) for r in other["readings"]])
        seen = g.pick((newest, newest, latest([act]), newest - 1, begun))
        by = g.pick(("lead-1", "lead-2", "sup-1", g.load["operator"]))
        g.load.setdefault("reviews", []).append(g.act(
            newest + HOUR, "supervisor" if by == "sup-1" else "lead", by=by, subject=other["id"], answer="isolated",
            finding="bi.lost" if "lost" in other else "bi.void", why="the vial broke", newestSeen=T(seen)))
    else:
        g.want_review = True


@early(2)
def void_all(g):
    """No vial of the load is left."""
    found = [v for v, lot, _ in vials(g) if lot == "lot-7"]
    if not found:
        return False
    for vial in found:
        if g.chance(0.5):
            vial["voided"] = g.act(g.end + DAY, "lead")
        else:
            vial["lost"], vial["readings"] = g.act(g.end + DAY), []


# the cycle ---------------------------------------------------------------------------------------
@late(5)
def record_parts(g):
    what = g.pick(("sterilizer", "specification", "lot", "start", "end", "operator", "items", "items", "method"))
    if what in ("sterilizer", "specification"):
        g.record.pop(what, None)
    elif what == "method":
        if g.chance(0.5):
            g.specification.pop("method", None)
        else:
            g.specification["method"] = "unknown"
    elif what == "items" and g.chance(0.5):
        g.load["items"] = []
    elif what == "lot" and g.chance(0.4):
        g.load["lot"] = g.pick(BARE[1:])
    else:
        g.load.pop(what, None)


@late(3)
def record_times(g):
    load = g.load
    how = g.pick(("backwards", "now", "no-end", "same"))
    if "start" not in load or "end" not in load:
        return False
    if how == "backwards":
        load["end"] = T(load["start"] + g.pick((-MINUTE, -1, 0)))
        if g.chance(0.6) and "printout" in load:
            load["printout"]["end"] = g.shown(g.start)
    elif how == "now":
        g.now = g.end + g.pick(AROUND)
    elif how == "same":
        load["end"] = T(load["start"] + g.pick((0, 1, MINUTE)))
    else:
        load.pop("end")
        if g.chance(0.6):
            g.now = g.start + g.pick(AROUND)


@late(12)
def printout(g):
    load = g.load
    p = load.get("printout")
    tolerance = g.policy["printout.clock_tolerance_minutes"] * MINUTE
    how = g.pick(("gone", "gone", "lost", "lost", "answer", "answer", "drop", "drop", "differs", "differs", "time", "time", "time",
                  "used", "offset", "unsigned", "early", "nothing"))
    fields = [g.pick(PRINTED)]
    if how == "gone":
        load.pop("printout", None)
    elif how == "lost":
        if g.chance(0.9):
            load.pop("printout", None)
        load["printoutLost"] = g.act(g.end + 5 * MINUTE, g.pick(("operator", "operator", "viewer")))
    elif how == "answer":
        load["printoutAnswers"] = [g.act(g.end + HOUR, g.pick(("operator", "viewer", "lead")), field=g.pick(PRINTED),
                                         answer=g.pick(("wrong-cycle", "wrong-sterilizer", "record-right")))]
    elif p is None:
        return False
    elif how == "drop":
        p.pop(fields[0], None)
        if g.chance(0.2):
            load.pop("counter", None)
    elif how == "differs":
        what = g.pick(("program", "sterilizer", "counter"))
        if what == "counter":
            p["counter"] = load.get("counter", 50) + g.pick((-1, 1))
        else:
            p[what] = g.pick(("prog-2", "ster-2"))
        fields = [what]
    elif how == "time":
        what = g.pick(("start", "end"))
        own = g.start if what == "start" else g.end
        p[what] = T(g.shown(own) + g.pick((-1, 1)) * tolerance + g.pick(AROUND))
        fields = [what]
    elif how == "used":
        if not g.cycles:
            return False
        g.pick(g.cycles)["counter"] = load.get("counter", 12) if g.chance(0.5) else p.get("counter", 12)
        fields = ["counter"]
    elif how == "offset":
        offsets = g.sterilizer["clockOffsets"]
        fields = g.pick((["start", "end"], ["start", "end"], ["start"], ["end"]))
        if g.chance(0.3):
            p.pop(g.pick(("start", "end")), None)
        if g.chance(0.4):
            offsets.clear()
        elif g.chance(0.5):
            offsets[:] = [{"from": T(g.shown(g.pick((g.start, g.end))) + g.pick(CLOSE)), "seconds": g.offset}]
        else:
            offsets.append({"from": T(g.shown(g.pick((g.start, g.end))) + g.pick(CLOSE)),
                            "seconds": g.offset + g.pick((0, 1, -1, 300, 301))})
            if g.chance(0.3):
                offsets.append(dict(offsets[-1], seconds=g.offset))
    elif how == "early":
        p["happenedAt"] = T(near(g, g.end))
        p["recordedAt"] = T(max(p["happenedAt"], p["recordedAt"]))
    elif how == "nothing":
        for field in PRINTED:
            if g.chance(0.97):
                p.pop(field, None)
    else:
        p.pop("by", None) if g.chance(0.5) else p.update(role="viewer")
    if "printout" not in load or g.chance(0.4):
        return
    recorded = p.get("recordedAt", p["happenedAt"])
    role, by = g.pick(("lead", "lead", "lead", "supervisor", "operator")), g.pick(("lead-1", "lead-2", "sup-1"))
    if g.chance(0.3):
        by = g.pick((load.get("operator", "op-1"), p.get("by", "op-1"), p.get("by", "op-1")))
    if g.chance(0.15):
        by = spelled(by, g.pick)
    for field in fields if g.chance(0.85) else [g.pick(PRINTED)]:
        answer = g.act(recorded + g.pick((-1, 0, 0, 1, HOUR)), role, by=by, answer="record-right", field=field)
        answer.pop("recordedAt", None)
        if g.chance(0.08):
            del answer["field"]
        load.setdefault("printoutAnswers", []).append(answer)


@late(8)
def cycle_end(g):
    load = g.load
    how = g.pick(("none", "aborted", "drying", "alarm", "alarm", "alarm"))
    if how == "none":
        load.pop("outcome", None)
    elif how == "aborted":
        if g.chance(0.6):           # else a phase beside another outcome, or beside none
            load["outcome"] = "aborted"
        elif g.chance(0.4):
            load.pop("outcome", None)
        load["abortPhase"] = g.pick(("heating", "air-removal", "exposure", "exhaust", "aeration", "unknown"))
        if g.chance(0.2):
            load.pop("abortPhase")
    elif how == "drying":
        load["abortPhase"] = "drying"
        if g.chance(0.8):
            load["outcome"] = "aborted"
    else:
        listed = g.sterilizer.setdefault("alarms", [])
        for _ in range(g.pick((1, 1, 2))):
            code = g.pick(("al-1", "al-2"))
            if g.chance(0.5):
                listed.append({"code": code, "effect": g.pick(("harmless", "exposure-affecting"))})
            load.setdefault("alarms", []).append(g.act(g.start + g.minutes(0, 30), code=code))
        g.want_review = True


@late(5)
def printout_by_itself(g):
    """A printout of which one of counter, start and end agrees, or none; a lead calls the record right in the rest. A
    counter that agrees may stand on a cycle of the history too: then in the counter also."""
    p, load = g.load.get("printout"), g.load
    if p is None or "start" not in load or "end" not in load:
        return False
    kept = g.pick((None, None, "counter", "counter", "counter", "start", "end"))
    tolerance = g.policy["printout.clock_tolerance_minutes"] * MINUTE
    for field in ("counter", "start", "end"):
        if field == kept:
            continue
        if g.chance(0.35):
            p.pop(field, None)
        elif field == "counter":
            if g.chance(0.5):
                p["counter"] = load.get("counter", 50) + g.pick((-1, 1))
            else:
                load.pop("counter", None)
        else:
            own = g.start if field == "start" else g.end
            p[field] = T(g.shown(own) + g.pick((-1, 1)) * (tolerance + g.pick((0, 1, 1, MINUTE, HOUR))))
    if g.chance(0.2):
        g.sterilizer["clockOffsets"].clear()
    used = g.cycles and "counter" in load and g.chance(0.6 if kept == "counter" else 0.15)
    if used:
        g.pick(g.cycles)["counter"] = load["counter"]
    noted = p.get("recordedAt", p["happenedAt"]) + g.pick((0, MINUTE))
    fields = [field for field in PRINTED if field != kept or used]
    load["printoutAnswers"] = [g.act(noted, "lead", recorded=noted, by="lead-1", answer="record-right", field=field)
                               for field in fields]


# the sterilizer ----------------------------------------------------------------------------------
@late(15)
def service(g):
    g.want_review = True
    how = g.pick(("no-return", "return-edge", "other", "other", "other", "lifted", "lifted", "lifted",
                  "during", "during", "during", "during"))
    if how == "no-return":
        g.service.clear() if g.chance(0.5) else g.service[0].update(role=g.pick(("lead", "viewer")))
    elif how == "return-edge":
        at = g.start + g.pick(AROUND)
        g.service[:] = [g.act(at - MINUTE, "supervisor", recorded=at, state="in-service")]
    elif how == "during":
        edge = g.pick((g.start, g.end))
        at = edge + g.pick(AROUND)
        g.service.append(g.act(at, g.pick(("operator", "supervisor")), state=g.pick(
            ("held", "out-of-service", "qualification"))))
        if g.chance(0.15):
            g.load.pop("end", None)
    else:
        at = g.start - g.minutes(1, 600)
        known = g.pick((at, at + 5 * MINUTE, g.start + g.pick(AROUND), g.start + DAY))
        entry = g.act(min(at, known), recorded=known, state=g.pick(("held", "held", "held", "out-of-service",
                                                                    "qualification")))
        g.service.append(entry)
        if how == "lifted":
            back = g.pick((known, entry["happenedAt"], g.start)) + g.pick(AROUND)
            # often it happened before the hold was known and is only recorded afterwards
            g.service.append(g.act(min(back, g.pick((known, back)) + g.pick(AROUND)),
                                   g.pick(("supervisor", "supervisor", "supervisor", "lead")),
                                   recorded=back, state="in-service"))


def earlier(g, low=5, high=600, length=None):
    """(start, length) of a cycle that ends before the load, sometimes in the same minute."""
    length = length or g.minutes(10, 40)
    if g.chance(0.12):
        return g.start - length + g.pick((-MINUTE, -1, 0, 1, 30_000, MINUTE)), length
    return g.start - length - g.minutes(low, high), length


@early(7)
def process_failure(g):
    g.want_review = True
    start, length = earlier(g, 5, 4000)
    how = g.pick(("aborted", "failures", "packages", "leak", "leak-ok"))
    cycle = g.hist("leak" if how.startswith("leak") else g.pick(("load", "load", "warm-up")), start, length)
    end = start + length
    if how == "aborted":
        cycle["outcome"] = "aborted"
    elif how == "failures":
        cycle["failures"] = [g.act(end + g.minutes(0, 300), kind=g.pick(("physical", "pcd-rejected")))
                             for _ in range(g.pick((1, 2)))]
    elif how == "packages":
        cycle["packagesRejectedOrWet"] = g.pick((0, 1, 1, 2, 2, 3))
    else:
        give_leak(g, cycle)
    resolve(g, cycle, end)


def found_elsewhere(g, vial, at, role="supervisor"):
    """A finding of growth that is another's: after it was recorded, seldom around that."""
    newest = latest(vial["readings"])
    noted = newest + g.pick(CLOSE) if g.chance(0.25) else max(at, newest + g.pick((0, MINUTE)))
    return g.act(min(at, noted), role, recorded=noted, was=g.pick(("control", "other-load")))


def resolve(g, cycle, end):
    """Zero to two resolutions, good and less good."""
    count = g.pick((0, 0, 1, 1, 1, 2))
    known = latest(cycle.get("failures", []) + ([cycle["leak"]] if "leak" in cycle else []) or [{"happenedAt": end}])
    if count:
        cycle["resolutions"] = []
    for _ in range(count):
        recorded = g.pick((end + g.minutes(0, 200), g.start + g.pick(AROUND), g.start + DAY, end + g.pick(AROUND)))
        happened = max(end, g.pick((recorded, recorded - g.minutes(0, 60), end))) + g.pick((0, 0, 0, 0, 0, -1))
        recorded = max(recorded, happened) if g.chance(0.8) else recorded
        if g.chance(0.7):           # not before the failure was known; or just around that
            recorded = max(recorded, known) if g.chance(0.7) else known + g.pick(CLOSE)
        cycle["resolutions"].append(
            g.act(min(happened, recorded), g.pick(("lead", "lead", "lead", "supervisor", "operator")),
                  recorded=recorded, cause=g.pick(("known", "known", "known", "unknown")),
                  reach=g.pick(("that-load", "sterilizer")), what=text(g, "what was done")))
        if g.chance(0.08):
            del cycle["resolutions"][-1]["what"]


def give_leak(g, cycle):
    end = cycle.get("end", cycle["start"])
    most = g.policy["leak.most_mbar_per_minute"]
    minutes = g.pick((g.policy["leak.test_minutes"], g.policy["leak.test_minutes"] + 5, 9.999, 10, 20))
    rise = float(most) * float(minutes) + g.pick((-0.001, 0, 0, 0.001, 1, -1, -1))
    leak = g.act(end + g.minutes(0, 20), settledMinutes=g.policy["leak.settle_minutes"] + g.pick((0, 0, -0.001, 1)),
                 minutes=minutes, riseMbar=round(rise, 3))
    if g.chance(0.25):
        leak.pop(g.pick(("settledMinutes", "minutes", "riseMbar", "by")), None)
    if g.chance(0.05):
        leak["minutes"] = g.pick((0, 0.001))
    if g.chance(0.15):
        leak["riseMbar"] = g.pick((-0.001, -0.001, 0, -1))
    cycle["leak"] = leak
    if g.chance(0.15):
        cycle.pop("leak")


@early(9)
def positive(g):
    """A positive of the history, with what may clear or close it."""
    g.want_review = True
    product, _ = g.biological()
    if g.chance(0.7):
        start, length = earlier(g, 5, 4000)
    else:
        start, length = g.end + g.minutes(0, 3000), g.minutes(10, 40)
    kind = "load" if g.chance(0.85) else "qualification"
    cycle = g.hist(kind, start, length, method=g.method)
    if g.chance(0.9):
        cycle["cycleType"] = g.pick((g.type, g.type, g.type, "type-a", "type-b", typed(g.type, g.pick)))
    vial = g.vial(cycle["end"])
    cycle["vials"] = [vial]
    known = g.pick((start + length + g.minutes(10, 2000), g.start + g.pick(AROUND), g.start + g.minutes(1, 2000)))
    if g.chance(0.75):
        vial["readings"] = [g.act(known, recorded=known, seen="growth")]
        if g.chance(0.3):
            vial["readings"].append(g.act(known + g.minutes(0, 200), seen=g.pick(("growth", "no-growth", "unclear"))))
    elif g.chance(0.5):
        vial["readings"] = [g.act(known - 5 * MINUTE, by="op-1", seen="unclear"),
                            g.act(known, by="op-2", recorded=known, seen="unclear")]
    else:
        vial["readings"] = [g.act(known - 5 * MINUTE, seen="unclear")]
        vial["unsettled"] = g.act(known, recorded=known)
    if kind == "qualification" and g.chance(0.6):       # its physical record is bad too, known earlier or later
        noted = g.pick((known + g.pick(CLOSE), g.start + g.pick(CLOSE), g.minutes(1, 60) + max(known, cycle["end"])))
        cycle["physical"] = g.act(min(noted, cycle["end"]), recorded=noted, good=False)
    if g.chance(0.1):
        vial["incidentFinding"] = found_elsewhere(g, vial, known + HOUR)
    if g.chance(0.5 if kind == "qualification" else 0.3):               # a return lifts the hold, or not quite
        back = g.pick((known, start + length, g.start)) + g.pick(AROUND)
        g.service.append(g.act(back, "supervisor", recorded=back, state="in-service"))
        if g.chance(0.4):           # a second vial grows, before or after that return
            second = g.vial(cycle["end"])
            grown = g.pick((back + g.pick(CLOSE), back + HOUR, g.start + g.pick(CLOSE)))
            second["readings"] = [g.act(grown, recorded=grown, seen="growth")]
            cycle["vials"].append(second)
        elif g.chance(0.2):         # recorded later than it happened
            g.service[-1]["happenedAt"] = T(g.pick((known, start + length)) + g.pick(AROUND))
            g.service[-1]["recordedAt"] = T(max(back, g.service[-1]["happenedAt"]))
    if g.chance(0.35):              # cleared before: a negative between the load and P
        other_start = g.pick((start - g.minutes(20, 300), g.start - g.minutes(0, 200), g.end + g.minutes(0, 60)))
        other = g.hist("load", other_start, 15 * MINUTE, cycleType=g.pick((g.type, cycle.get("cycleType", "type-a"))))
        g.give_vial(other)
    if g.chance(0.4):               # closed by a negative of its type
        end = start + length
        if g.chance(0.4):
            lot = "lot-7"
        else:
            other = g.hist("load", g.pick((end + g.minutes(0, 300), end, g.start - 20 * MINUTE)), 15 * MINUTE,
                           cycleType=g.pick((cycle.get("cycleType", g.type), g.type)))
            g.give_vial(other)
            lot = other["lot"]
        if g.chance(0.15):
            lot = "h-none"
        g.incidents.append({"positiveLot": cycle["lot"], "closings": [
            closing(g, cycle, known + g.minutes(60, 3000), negativeLot=lot)]})


def closing(g, cycle, at, **more):
    """A closing after the newest that makes a cycle positive was recorded, seldom around that."""
    acts = [r for v in cycle["vials"] for r in v["readings"]] + [v["unsettled"] for v in cycle["vials"] if "unsettled" in v]
    newest = latest([r for r in acts if r.get("seen") == "growth"] or acts)
    noted = newest + g.pick(CLOSE) if g.chance(0.4) else max(at, newest)
    return g.act(min(at, noted), g.pick(("supervisor",) * 5 + ("lead",)), recorded=noted, **more)


# air removal -------------------------------------------------------------------------------------
def spoil_bowie_dick(g, bd):
    how = g.pick(("sheet", "sheet", "sheet", "fail", "fail", "unread", "unread", "unclear", "void", "void", "void-said",
                  "exposure", "exposure", "drying", "drying", "items", "outcome", "late", "unknown", "lost", "lost", "method",
                  "method", "method", "because", "because", "directions", "directions", "directions", "aborted"))
    end = bd.get("end", bd["start"])
    at = end + g.minutes(1, 40)
    sheet = bd.get("sheet")
    if sheet is None:
        return
    if how == "sheet":
        spoil_ci(g, sheet, "sheet", end)
    elif how == "fail":
        sheet["readings"] = [g.act(at, seen=g.pick(("uniform-incomplete", "not-uniform", "unchanged")))]
    elif how == "lost":
        sheet["readings"], sheet["lost"] = [], g.act(at)
    elif how == "unclear":
        sheet["readings"] = [g.act(at, seen="unclear")]
    elif how == "aborted":
        bd["outcome"] = "aborted"
    elif how == "directions":       # a product that states no bound of minutes, of celsius, or one of each
        product, _ = own_product(g, sheet)
        if product:
            for bound in g.pick((("leastMinutes", "mostMinutes"), ("leastCelsius", "mostCelsius"),
                                 ("leastMinutes", "leastCelsius"))):
                product.pop(bound, None)
    elif how == "unread":
        sheet["readings"] = []
        if g.chance(0.2):
            bd.pop("sheet", None)
    elif how in ("void", "void-said"):
        g.pick((lambda: bd.update(chamberEmpty=False), lambda: bd.update(chamberEmpty=False),
                lambda: bd.update(outcome="aborted"), lambda: bd.update(items=["thing-1"]),
                lambda: sheet.update(alsoUsedIn=["lot-3"])))()
        if how == "void-said" or g.chance(0.4):
            noted = at if g.chance(0.7) else end + g.pick(CLOSE)
            bd["voidReason"] = g.act(min(at, noted), g.pick(("lead", "lead", "supervisor", "operator")), recorded=noted,
                                     why=text(g, "chamber was not empty"))
    elif how == "exposure":
        product, _ = own_product(g, sheet)
        if product:
            product.update(leastMinutes=3.5, mostMinutes=4, leastCelsius=134, mostCelsius=137)
        bd["exposure"] = {"minutes": g.pick((3.499, 3.5, 4, 4.001)), "celsius": g.pick((133.99, 134, 137, 137.01))}
        if g.chance(0.3):
            bd["exposure"].pop(g.pick(("minutes", "celsius")))
    elif how == "drying":
        product, _ = own_product(g, sheet)
        if product:
            product["dryingForbidden"] = True
        bd["dryingRun"] = g.chance(0.8)
        if g.chance(0.3):
            bd.pop("dryingRun", None)
    elif how == "items":
        bd["items"] = ["item-1"] if g.chance(0.6) else []
    elif how == "outcome":
        bd.pop("outcome", None)
    elif how == "method":
        bd["method"] = g.pick(("dry-heat", "ethylene-oxide", "hydrogen-peroxide", "unknown", "steam"))
        if g.chance(0.15):
            del bd["method"]
    elif how == "because":
        because_ci(g, sheet, "sheet", end)
    elif how == "late":
        limit = end + g.policy["bowie_dick.read_within_minutes"] * MINUTE
        sheet["readings"] = [g.act(limit + g.pick(AROUND), seen="uniform-complete")]
    else:
        bd.pop(g.pick(("chamberEmpty", "exposure")), None)


@early(4)
def void_reasons(g):
    """The test before the load is void; a lead says why, or nearly, around its end; it is repeated or not."""
    if not g.needs_bowie_dick() or g.bd not in g.cycles:
        return False
    g.bd["chamberEmpty"] = False
    end = g.bd["end"]
    noted = end + g.pick(CLOSE + (5 * MINUTE, 5 * MINUTE))
    role = g.pick(("lead", "lead", "lead", "supervisor", "operator"))
    g.bd["voidReason"] = g.act(min(end, noted), role, recorded=noted, why=text(g, "a tray was inside"))
    if g.chance(0.4):
        g.bowie_dick(end)


@early(14)
def bowie_dicks(g):
    """Failed, put right, late put right, void, lost, unread; before and after the load."""
    if g.method != "steam" or not (g.needs_bowie_dick() or g.chance(0.1)):
        return False
    g.want_review = True
    how = g.pick(("own", "own", "own", "remove", "remove", "after", "after", "after-first", "after-first", "failed-before",
                  "failed-before", "failed-before", "failed-before", "edge", "void-before"))
    if how == "own" and g.bd:
        spoil_bowie_dick(g, g.bd)
    elif how == "void-before":
        spoil_bowie_dick(g, g.bowie_dick(g.start - g.minutes(60, 600)))
    elif how == "remove" and g.bd in g.cycles:
        g.cycles.remove(g.bd)
        if g.chance(0.7):
            g.now_at = g.period_end + g.pick(AROUND + (DAY, -HOUR))
    elif how in ("after", "after-first"):
        if how == "after-first" and g.bd in g.cycles:
            g.cycles.remove(g.bd)
        start = g.pick((g.end, g.end + g.minutes(1, 120), g.period_end)) + g.pick(AROUND)
        test = g.bowie_dick(start)
        if g.chance(0.6):
            spoil_bowie_dick(g, test)
    elif how == "edge" and g.bd in g.cycles:       # edges of the period, same-minute ends
        if g.chance(0.5):
            g.bd["start"] = T(g.period_begin + g.pick(AROUND))
            g.bd["end"] = T(max(g.bd["start"], g.bd["end"]))
        else:
            minute = g.start // MINUTE * MINUTE
            g.bd["end"] = T(max(g.bd["start"], minute + g.pick((-1, 0, 30_000, 59_999, 60_000))))
    elif how == "failed-before":
        test = g.bowie_dick(g.pick((g.start - g.minutes(200, 700), g.period_begin + g.minutes(0, 30))))
        end = test["end"]
        at = end + g.minutes(1, 15)
        if g.chance(0.85):
            test["sheet"]["readings"] = [g.act(at, seen="not-uniform")]
        else:
            test["sheet"]["readings"], test["sheet"]["lost"] = [], g.act(at)
        if g.chance(0.85):
            done = g.pick((end, end + g.minutes(0, 60))) + g.pick(AROUND)
            recorded = done + g.pick((0, 0, MINUTE, 20 * MINUTE, 200 * MINUTE))
            if g.chance(0.7):       # not before the failure was known; or just around that
                known = latest(test["sheet"]["readings"] or [test["sheet"]["lost"]])
                recorded = max(recorded, known) if g.chance(0.7) else known + g.pick(CLOSE)
            test["resolutions"] = [g.act(min(done, recorded), g.pick(("lead", "lead", "supervisor", "operator")), recorded=recorded,
                                         cause=g.pick(("known", "known", "known", "unknown")), reach="sterilizer",
                                         what=text(g, "what was done"))]
            if g.chance(0.05):
                del test["resolutions"][0]["what"]
            if g.chance(0.2):
                resolve(g, test, end)
            if g.chance(0.85):
                again = g.bowie_dick(g.pick((recorded, done, recorded + 5 * MINUTE)) + g.pick(AROUND))
                if g.chance(0.3):
                    spoil_bowie_dick(g, again)
            if g.chance(0.5):
                back = max(recorded, at)
                g.service.append(g.act(back, "supervisor", recorded=max(back, at + DAY if g.chance(0.3) else back),
                                       state="in-service"))
        if g.chance(0.6):           # a return after everything lifts the hold that a failed test is
            g.service.append(g.act(g.start - MINUTE, "supervisor", recorded=g.start - g.pick((0, 1)),
                                   state="in-service"))
    else:
        return False


@late(2)
def air_removal_unknown(g):
    if g.method != "steam":
        return False
    if g.chance(0.5):
        g.specification["airRemoval"] = g.pick(("unknown", "prevacuum", "gravity", "steam-flush-pressure-pulse"))
    else:
        g.specification.pop("airRemoval", None)


# other tests -------------------------------------------------------------------------------------
def qualification_cycle(g, start, length):
    cycle = g.hist("qualification", start, length, method=g.method)
    end = start + length
    cycle["physical"] = g.act(end + g.minutes(0, 30), good=True)
    cycle["indicators"] = [g.ci("pcd", end)]
    g.give_vial(cycle)
    return cycle


def spoil_qualification(g, cycle):
    how = g.pick(("aborted", "physical", "physical", "indicator", "indicator", "indicator", "vial", "vial", "growth",
                  "growth", "gone", "outcome", "bad", "because", "because", "because", "because", "because", "because", "because",
                  "physical"))
    end = cycle.get("end", cycle["start"])
    if how == "aborted":
        cycle["outcome"] = "aborted"
    elif how == "physical":
        cycle["physical"]["good"] = g.chance(0.3)
        if g.chance(0.3):
            cycle["physical"].pop("by", None)
    elif how == "indicator":
        spoil_ci(g, cycle["indicators"][0], "pcd", end)
    elif how == "vial":
        spoil_vial(g, cycle["vials"][0], end)
    elif how == "because":
        because_vial(g, cycle["vials"][0], cycle["lot"], end, defects.VIAL)
    elif how == "bad":
        cycle["indicators"][0]["readings"] = [g.act(end + 5 * MINUTE, seen=g.pick(("unchanged", "absent")))]
    elif how == "growth":
        cycle["vials"][0]["readings"].append(g.act(end + g.minutes(10, 3000), seen="growth"))
    elif how == "gone":
        cycle.pop(g.pick(("physical", "indicators", "vials")), None)
    else:
        cycle.pop("outcome", None)


@early(4)
def qualification(g):
    g.want_review = True
    cycle = qualification_cycle(g, *earlier(g, 5, 2000))
    if g.chance(0.85):
        spoil_qualification(g, cycle)
    if g.chance(0.4):
        back = g.start - g.pick((0, 1, MINUTE, HOUR))
        g.service.append(g.act(back, "supervisor", recorded=back, state="in-service"))


@early(5)
def routine_cycles(g):
    """Routine BI of the day and of the seven days, at their edges."""
    if g.chance(0.7):
        g.load["pcds"] = [p for p in g.load["pcds"] if "vials" not in p]
    first = g.zone.absolute(g.zone.day(g.start) - g.pick((0, 0, 6, 6, 7)))
    start = g.pick((first, first, g.zone.next_midnight(g.start), g.start - g.minutes(10, 5000))) + g.pick(AROUND)
    cycle = g.hist("load", start, 20 * MINUTE)
    if g.chance(0.9):
        cycle["cycleType"] = g.type if g.chance(0.85) else "type-c"
    vial = g.give_vial(cycle)
    if g.chance(0.4):
        vial["readings"] = []


# physical ----------------------------------------------------------------------------------------
SAME = {"celsius": "Celsius", "fahrenheit": "Fahrenheit", "minutes": "Minutes", "mgPerL": "MgPerL",
        "percent": "Percent", "kPaAbsolute": "KPaAbsolute", "barAbsolute": "BarAbsolute", "kPaGauge": "KPaGauge",
        "barGauge": "BarGauge", "psiGauge": "PsiGauge"}
PRESSURES = ("kPaAbsolute", "barAbsolute", "kPaGauge", "barGauge", "psiGauge")


def limit_of(g, parameter):
    for limit in g.specification["limits"]:
        if limit["parameter"] == parameter:
            return limit
    return None


@late(19)
def physical(g):
    g.want_review = True
    limits, readings = g.specification["limits"], g.load["readings"]
    how = g.pick(("edge", "edge", "edge", "convert", "convert", "convert", "pressure", "pressure", "pressure", "no-limit",
                  "missing", "missing", "lost", "lost", "drying", "drying", "drying", "above", "above", "above", "above",
                  "not-recorded"))
    at = near(g, g.end) if g.chance(0.25) else g.end + g.minutes(0, 4)

    def add(parameter, unit, value):
        if g.chance(0.7):
            readings[:] = [r for r in readings if r["parameter"] != parameter]
        if unit in ("minutes", "seconds", "mgPerL", "percent"):
            value = max(0, value)       # what the evidence can state
        readings.append(g.act(at, g.pick(("operator",) * 9 + ("viewer",)), parameter=parameter,
                              **{unit: round(value, 3)}))

    if how in ("edge", "above"):
        limit = g.pick(limits)
        side = "most" if how == "above" else g.pick(("least", "most"))
        named = [(u, side + s) for u, s in SAME.items() if side + s in limit]
        if not named and limit["parameter"] in ("exposure", "temperature"):
            unit = "minutes" if limit["parameter"] == "exposure" else "celsius"
            if any(k in limit for k in ("leastFahrenheit", "mostFahrenheit")):
                return False
            limit[side + SAME[unit]] = (g.exposure if unit == "minutes" else g.celsius) + 5
            named = [(unit, side + SAME[unit])]
        if not named:
            return False
        unit, field = g.pick(named)
        step = 0.01 if unit in ("celsius", "fahrenheit") else 0.001
        add(limit["parameter"], unit, limit[field] + g.pick((-step, 0, 0, step, step)))
    elif how == "convert":
        limit = g.pick(limits)
        parameter = limit["parameter"]
        if parameter == "temperature":
            side = g.pick(("least", "most"))
            if g.chance(0.5):
                limit.pop(side + "Fahrenheit", None)
                limit[side + "Celsius"] = value = g.celsius + (3 if side == "most" else 0) + g.pick((0, 0.05, 0.01, 0.5))
                limit[side + "Celsius"] = value = round(value, 2)
                add(parameter, "fahrenheit", round(value * 1.8 + 32, 2) + g.pick((-0.01, 0, 0, 0.01)))
            else:
                limit.pop(side + "Celsius", None)
                limit[side + "Fahrenheit"] = value = round(g.celsius * 1.8 + 32 + (5.4 if side == "most" else 0), 2)
                add(parameter, "celsius", round(round((value - 32) / 1.8, 2) + g.pick((-0.01, 0, 0, 0.01)), 2))
            fix_limit(limit)
        elif parameter in ("exposure", "drying"):
            side = g.pick(("least", "most"))
            value = limit.setdefault(side + "Minutes", (g.exposure if parameter == "exposure" else g.drying) + 5)
            add(parameter, "seconds", max(0, value * 60 + g.pick((-0.001, 0, 0, 0.001))))
        else:
            return False
    elif how == "pressure":
        limits[:] = [l for l in limits if l["parameter"] != "pressure"]
        limit = {"parameter": "pressure"}
        base = g.pick((186.158, 200, 689.476, 6894.757))        # kPa gauge
        air = g.record["facility"].get("atmosphereKPa")
        worth = {"kPaAbsolute": base + (air or 101.325), "kPaGauge": base, "barGauge": base / 100,
                 "barAbsolute": (base + (air or 101.325)) / 100, "psiGauge": base / 6.894757}
        for side in g.pick((("least",), ("most",), ("least", "most"))):
            for unit in g.rng.sample(PRESSURES, g.pick((1, 1, 1, 2))):
                limit[side + SAME[unit]] = round(worth[unit] + (0 if side == "least" else 0.001 if g.chance(0.5) else 0), 3)
        fix_limit(limit)
        limits.append(limit)
        unit = g.pick(PRESSURES)
        add("pressure", unit, worth[unit] + g.pick((-0.002, -0.001, 0, 0, 0, 0.001, 0.002)))
        if g.chance(0.3):
            g.record["facility"].pop("atmosphereKPa", None)
    elif how == "no-limit":
        parameter = g.pick(("exposure", "exposure", "temperature", "drying"))
        if g.chance(0.6):
            limits[:] = [l for l in limits if l["parameter"] != parameter]
        else:
            for limit in limits:
                if limit["parameter"] == parameter:
                    most = {k.replace("least", "most"): v for k, v in limit.items() if k.startswith("least")}
                    limit.clear()
                    limit.update(parameter=parameter, **most)
            # One that had no least either is no limit at all.
            limits[:] = [l for l in limits if len(l) > 1]
    elif how == "drying":
        limit = limit_of(g, "drying")
        if limit is None:
            limit = {"parameter": "drying", "leastMinutes": 20}
            limits.append(limit)
        least = limit.get("leastMinutes", 20)
        add("drying", "minutes", max(0, least + g.pick((-5, -0.001, -0.001, 0))))
    elif how == "not-recorded":
        parameter = g.pick(("concentration", "humidity"))
        if limit_of(g, parameter) is None:
            limits.append({"parameter": parameter, "leastMgPerL" if parameter == "concentration" else "leastPercent": 45})
        readings[:] = [r for r in readings if r["parameter"] != parameter]
        if g.chance(0.85):
            g.sterilizer["recordsConcentration" if parameter == "concentration" else "recordsHumidity"] = g.chance(0.25)
    else:
        parameter = g.pick(limits)["parameter"]
        readings[:] = [r for r in readings if r["parameter"] != parameter or g.chance(0.1)]
        for reading in readings:
            if reading["parameter"] == parameter:
                reading["role"] = "viewer"
        if how == "lost":
            g.load.setdefault("lostReadings", []).append(
                g.act(at, g.pick(("operator", "operator", "viewer")), parameter=parameter))


def fahrenheit(celsius):
    return round(celsius * 1.8 + 32, 2)


@late(7)
def limit_and_setting(g):
    """Least limits milder than the program's setting by a little less, as much, a little more than allowed."""
    settings = g.specification.get("settings")
    if settings is None:
        return False
    how = g.pick(("temperature", "temperature", "temperature", "exposure", "exposure", "drying", "drying", "no-drying"))
    if how == "temperature":
        limit = limit_of(g, "temperature")
        if limit is None:
            return False
        limit.pop("leastCelsius", None)
        limit.pop("leastFahrenheit", None)
        apart = g.pick((0.4, 0.49, 0.5, 0.5, 0.51, 0.6, -0.5))
        if g.method == "ethylene-oxide":
            apart = g.pick((4.9, 4.99, 5, 5, 5.01, 5.01, 5.1, 0.51))
        least = g.celsius - apart
        unit = g.pick(("celsius", "fahrenheit", "both"))
        if unit != "fahrenheit":
            limit["leastCelsius"] = round(least if unit == "celsius" or g.chance(0.5) else g.celsius, 2)
        if unit != "celsius":
            limit["leastFahrenheit"] = round(fahrenheit(least) + g.pick((0, 0, 0.01, -0.01)), 2)
        if g.chance(0.3):           # the setting in both units, not quite the same, or in one
            settings.update(celsius=g.celsius, fahrenheit=fahrenheit(g.celsius + g.pick((-1, 0, 1))))
        if g.chance(0.2):
            settings.pop(g.pick(("celsius", "fahrenheit")), None)
        fix_limit(limit)
    elif how == "no-drying":
        g.specification["limits"][:] = [l for l in g.specification["limits"] if l["parameter"] != "drying"]
        settings["dryingMinutes"] = g.pick((0, 0.001, g.drying))
    else:
        limit = limit_of(g, how)
        own = g.exposure if how == "exposure" else g.drying
        if limit is None:
            limit = {"parameter": how}
            g.specification["limits"].append(limit)
        limit["leastMinutes"] = max(0, round(own - g.pick((0.001, 0.001, 0, 1, own)), 3))
        settings[how + "Minutes"] = own
        fix_limit(limit)


@late(6)
def settings_out(g):
    """A setting that the program does not state, or states as 0."""
    settings = g.specification.get("settings")
    if settings is None:
        return False
    what = g.pick(("celsius", "exposureMinutes", "dryingMinutes", "dryingMinutes"))
    if what == "celsius":
        settings.pop("celsius", None)
        if g.chance(0.8):
            settings.pop("fahrenheit", None)
    elif g.chance(0.7):
        settings.pop(what, None)
    else:
        settings[what] = 0


SHORTEST = {"steam": (110, 2), "dry-heat": (110, 5), "ethylene-oxide": (25, 30), "hydrogen-peroxide": (25, 1)}
# Degrees at which exposure has another least, and all the leasts of exposure.
TURNS = {"steam": ((130,), (2, 10, 10)), "dry-heat": ((185, 165), (5, 20, 20, 60, 60))}


@late(5)
def warm_and_long(g):
    """Temperature and exposure together, around the warmth at which exposure has another least; drying around its own."""
    settings = g.specification.get("settings")
    limit = limit_of(g, "exposure")
    if settings is None or limit is None or g.method not in TURNS:
        return False
    if g.method == "steam" and g.chance(0.35):
        drying = limit_of(g, "drying")
        settings["dryingMinutes"] = g.pick((0, 0.9, 0.999, 1, 1.001))
        if drying is not None:
            drying["leastMinutes"] = g.pick((settings["dryingMinutes"], settings["dryingMinutes"], 1, 2))
            fix_limit(drying)
        return None
    turns, leasts = TURNS[g.method]
    warm = round(g.pick(turns) + g.pick((0, 0, -0.01, -0.01, 0.01, 0.1, -0.1)), 2)
    for unit in ("celsius", "fahrenheit"):
        settings.pop(unit, None)
    settings[g.pick(("celsius", "celsius", "fahrenheit"))] = warm
    if "fahrenheit" in settings:
        settings["fahrenheit"] = fahrenheit(warm)
        if g.chance(0.3):           # celsius counts, which says a little else
            settings["celsius"] = round(warm + g.pick((-0.2, 0.2)), 2)
    least = g.pick(leasts)
    long = round(least + g.pick((0, 0, -0.001, -0.001, 0.001)), 3)
    how = g.pick(("both", "both", "setting", "limit"))
    if how != "limit":
        settings["exposureMinutes"] = long
    if how != "setting":
        limit["leastMinutes"] = long
        fix_limit(limit)
    hot = limit_of(g, "temperature")
    if hot is not None:
        hot.clear()
        hot.update(parameter="temperature", leastCelsius=warm)
    room = g.load["readings"]
    for reading in room:
        if reading["parameter"] == "temperature":
            reading.pop("fahrenheit", None)
            reading["celsius"] = round(warm + 1, 2)
    return None


@late(3)
def not_judged(g):
    """A reading of which no limit is stated, or whose limit is taken away."""
    limits, readings = g.specification["limits"], g.load["readings"]
    parameter, unit, value = g.pick((("temperature", "celsius", g.celsius), ("pressure", "barAbsolute", 2.9),
                                     ("drying", "minutes", g.drying), ("concentration", "mgPerL", 600),
                                     ("humidity", "percent", 60), ("pressure", "kPaGauge", 190)))
    how = g.pick(("none", "none", "most", "bare"))
    limits[:] = [limit for limit in limits if limit["parameter"] != parameter]
    if how == "most":
        limits.append({"parameter": parameter, "most" + SAME[unit]: round(value + 1, 2)})
    if g.chance(0.9):
        readings.append(g.act(g.end, g.pick(("operator",) * 9 + ("viewer",)), recorded=g.end, parameter=parameter,
                              **{unit: value}))


@late(6)
def shortest(g):
    """Setting and limit at what the mildest published cycle has, a step below it, a step above."""
    settings = g.specification.get("settings")
    parameter = g.pick(("temperature", "exposure"))
    limit = limit_of(g, parameter)
    if settings is None or limit is None:
        return False
    parts = g.pick((("setting", "limit"), ("setting", "limit"), ("setting",), ("limit",)))
    warm, long = SHORTEST[g.method]
    if parameter == "exposure":
        value = g.pick((long, round(long - 0.001, 3), round(long + 0.001, 3), 0))
        if "setting" in parts:
            settings["exposureMinutes"] = value
        if "limit" in parts:
            limit["leastMinutes"] = value
        return
    value = round(warm + g.pick((0, -0.01, 0.01)), 2)
    if "setting" in parts:
        settings.pop("fahrenheit", None)
        settings["celsius"] = value
        if g.chance(0.3):
            settings["fahrenheit"] = fahrenheit(value)
            del settings["celsius"]
    if "limit" in parts:
        for field in list(limit):
            if field != "parameter":
                del limit[field]
        limit["leastCelsius"] = value
        if g.chance(0.4):
            limit["leastFahrenheit"] = round(fahrenheit(value) + g.pick((0, 0, 0.01, -0.01)), 2)
            if g.chance(0.5):
                del limit["leastCelsius"]
    if "setting" in parts and g.chance(0.7):        # else a reading of the old warmth is implausible, or nothing is left of it
        g.load["readings"][:] = [r for r in g.load["readings"] if r["parameter"] != "temperature"]
        g.load["readings"].append(g.act(g.end, recorded=g.end, parameter="temperature", celsius=round(value + 1, 2)))


@late(6)
def two_units(g):
    """One limit, or the setting, in two units that agree, just still agree, no longer agree."""
    apart = g.pick((0, 0.49, 0.5, 0.5, 0.51, 0.51, -0.5, -0.51))
    what = g.pick(("setting", "least", "least", "most", "pressure", "pressure", "pressure"))
    if what == "setting":
        g.specification.setdefault("settings", {}).update(celsius=g.celsius, fahrenheit=fahrenheit(g.celsius + apart))
        return
    limits = g.specification["limits"]
    if what != "pressure":
        limit = limit_of(g, "temperature")
        if limit is None:
            limit = {"parameter": "temperature"}
            limits.append(limit)
        own = g.celsius + (3 if what == "most" else 0)
        limit.update({what + "Celsius": own, what + "Fahrenheit": fahrenheit(own + apart)})
        fix_limit(limit)
        return
    limits[:] = [l for l in limits if l["parameter"] != "pressure"]
    air = g.record["facility"].get("atmosphereKPa") or 101.325
    gauge = g.pick((186.158, 200, 689.476))
    first, second = g.rng.sample(PRESSURES, 2)
    apart = g.pick((0, 0.999, 1, 1, 1.001, 1.001, -1, -1.001))
    out = {"parameter": "pressure"}
    side = g.pick(("least", "most"))
    for unit, kpa in ((first, gauge), (second, gauge + apart)):
        worth = {"kPaAbsolute": kpa + air, "kPaGauge": kpa, "barGauge": kpa / 100, "barAbsolute": (kpa + air) / 100,
                 "psiGauge": kpa / 6.894757}[unit]
        out[side + SAME[unit]] = round(worth, 3)
    limits.append(out)
    value = gauge + (2 if side == "least" else -2)
    g.load["readings"].append(g.act(g.end, recorded=g.end, parameter="pressure", kPaGauge=round(value, 3)))
    if g.chance(0.3):
        g.record["facility"].pop("atmosphereKPa", None)


@late(4)
def implausible(g):
    """Temperatures around 10 K and 30 K above setting or limit, and Fahrenheit typed as Celsius."""
    above = g.pick((10, 10, 30) if g.method == "steam" else (10, 30, 30))
    limit = limit_of(g, "temperature") or {}
    settings = g.specification.get("settings", {})
    if g.chance(0.7):
        for field in ("mostCelsius", "mostFahrenheit"):
            limit.pop(field, None)
        if not any(field.startswith("least") for field in limit):
            g.specification["limits"][:] = [l for l in g.specification["limits"] if l is not limit]
    if g.chance(0.3):
        settings.pop("celsius", None)
        settings.pop("fahrenheit", None)
    if g.chance(0.4):
        value = {"celsius": fahrenheit(g.celsius)}
    elif g.chance(0.5):
        value = {"celsius": round(g.celsius + above + g.pick((-0.01, 0, 0.01, 0.01)), 2)}
    else:
        value = {"fahrenheit": round(fahrenheit(g.celsius + above) + g.pick((-0.01, 0, 0.01, 0.01)), 2)}
    readings = g.load["readings"]
    if g.chance(0.6):
        readings[:] = [r for r in readings if r["parameter"] != "temperature"]
    readings.append(g.act(g.end, g.pick(("operator",) * 9 + ("viewer",)), recorded=g.end, parameter="temperature", **value))


@late(5)
def length(g):
    """Exposure and drying that just fit between start and end, or do not by a millisecond."""
    readings = g.load["readings"]
    parameter = g.pick(("exposure", "drying"))
    if g.chance(0.5):
        readings[:] = [r for r in readings if r["parameter"] != parameter]
    other = max([round(r.get("minutes", 0) * MINUTE) + round(r.get("seconds", 0) * 1000) for r in readings
                 if r["parameter"] in ("exposure", "drying") and r["parameter"] != parameter], default=0)
    room = g.end - g.start + MINUTE - other + g.pick((-MINUTE, -1, 0, 0, 1, 1, MINUTE))
    if room < 0:
        return False
    readings.append(g.act(g.end, g.pick(("operator",) * 9 + ("viewer",)), recorded=g.end, parameter=parameter,
                          seconds=round(room / 1000, 3)))


def fix_limit(limit):
    """Drop an upper limit that lies below its lower one."""
    for suffix in SAME.values():
        if "least" + suffix in limit and "most" + suffix in limit:
            if limit["most" + suffix] < limit["least" + suffix]:
                del limit["most" + suffix]


@late(5)
def verification(g):
    load = g.load
    if not load.get("verifications"):
        return False
    how = g.pick(("none", "edge", "edge", "edge", "viewer"))
    if how == "none":
        load["verifications"] = []
    elif how == "viewer":
        load["verifications"][0]["role"] = "viewer"
    else:
        acts = load["readings"] + ([load["printout"]] if "printout" in load else [])
        times = [a.get("recordedAt", a["happenedAt"]) for a in acts] + [g.end]
        at = g.pick((max(times), max(times), g.end)) + g.pick(AROUND)
        if g.chance(0.4):           # what it verifies is recorded to the second, itself to the minute, or the other way round
            acts and g.pick(acts).update(recordedAt=T(max(times) + g.pick((1, 30_000, 59_999))))
            at = near(g, max(times))
        if g.chance(0.25):          # nothing recorded after the end but the signature itself
            load["readings"].clear()
            load.pop("printout", None)
            at = near(g, g.end)
        load["verifications"] = [g.act(at)]
        if g.chance(0.3):           # a second one, often by the operator, in whatever spelling
            by = g.pick((load["operator"], spelled(load["operator"], g.pick), "op-1"))
            load["verifications"].append(g.act(at + g.pick(AROUND), by=by))


# items -------------------------------------------------------------------------------------------
@late(5)
def confirmations(g):
    """An item recorded late and confirmed by a lead, around the start, who is another than recorded it or not."""
    if not g.load["items"]:
        return False
    item = g.pick(g.load["items"])
    who = g.pick(("op-1", "lead-1", "lead-1", "lead-2"))
    item["recorded"] = act = g.act(g.start, by=who, recorded=g.start + g.pick((0, 1, MINUTE, HOUR)))
    if g.chance(0.1):
        act.pop("by")
    noted = g.pick((g.end + HOUR, g.end + HOUR, g.end, g.start + g.pick(CLOSE)))
    by = g.pick(("lead-1", "lead-1", "lead-2", spelled(who, g.pick)))
    item["confirmed"] = g.act(noted - g.pick((0, MINUTE)), "lead", by=by, recorded=noted)


@early(3)
def second_loads(g):
    """An item whose label stands in one or two other loads, of which one may come later, and who confirmed it when."""
    if not g.load["items"]:
        return False
    item = g.pick(g.load["items"])
    found = [cycle for cycle in g.cycles if cycle["kind"] == "load" and g.start - cycle["start"] < 2 * DAY]
    starts = [g.start]
    for _ in range(g.pick((0, 1, 1, 1, 1, 2))):
        if found and g.chance(0.3):
            other = g.pick(found)
        else:
            other = g.hist("load", g.pick((g.start - g.minutes(60, 600), g.end + g.minutes(1, 60))), 20 * MINUTE)
        starts.append(other["start"])
        other.setdefault("items", []).append(g.pick((item["label"], item["label"], spelled(item["label"], g.pick))))
    if len(starts) == 1 or g.chance(0.2):
        item["alsoInLots"] = ["lot-3"]
    if g.chance(0.85):
        noted = g.pick((max(starts) + HOUR, max(starts) + HOUR, max(starts) + g.pick(CLOSE), g.pick(starts) + g.pick(CLOSE),
                        g.end))
        by = g.pick(("lead-1", "lead-2", "sup-1", "sup-1", item.get("recorded", {}).get("by", "op-1")))
        item["confirmed"] = g.act(noted - g.pick((0, MINUTE)), g.pick(("lead", "lead", "lead", "lead", "supervisor", "operator")),
                                  recorded=noted, by=by)
    if g.chance(0.2):
        item["recorded"] = g.act(g.start, recorded=g.start + g.pick((0, MINUTE, HOUR)))


@late(12)
def item_facts(g):
    if not g.load["items"]:
        return False
    item = g.pick(g.load["items"])
    how = g.pick(("lots", "late", "late", "check", "check", "check", "check", "check-lost", "check-lost", "package", "package",
                  "package", "expires", "expires", "test", "test", "test", "implant", "visible"))
    if how == "lots":
        if g.chance(0.4) and g.cycles:      # its label stands in another load
            g.pick(g.cycles).setdefault("items", []).append(g.pick((item["label"], spelled(item["label"], g.pick))))
        else:
            item["alsoInLots"] = ["lot-3"] if g.chance(0.8) else []
        if g.chance(0.6):           # a lead says that it was in this one
            noted = g.pick((g.end + HOUR, g.end + HOUR, g.start, g.start + g.pick(CLOSE)))
            by = g.pick(("lead-1", "sup-1", item.get("recorded", {}).get("by", "op-1"), g.load.get("operator", "op-1")))
            item["confirmed"] = g.act(min(noted, g.start), g.pick(("lead", "lead", "supervisor", "operator")), recorded=noted,
                                      by=by)
    elif how == "late":
        at = g.start + g.pick(AROUND + (HOUR,)) if g.chance(0.6) else near(g, g.start)
        item["recorded"] = g.act(at - g.pick((0, HOUR)), g.pick(("operator", "operator", "viewer")), recorded=at)
        if g.chance(0.2):
            del item["recorded"]
        if g.chance(0.4):
            noted = g.pick((g.end + HOUR, g.end + HOUR, g.start + g.pick(CLOSE)))
            item["confirmed"] = act = g.act(noted, g.pick(("lead", "lead", "lead", "supervisor", "operator")), recorded=noted)
            by = item.get("recorded", {}).get("by")
            if by and g.chance(0.3):        # by who recorded it, under one or another spelling
                act["by"] = g.pick((by, spelled(by, g.pick)))
    elif how == "check":
        check = g.act(g.end + HOUR if g.chance(0.2) else near(g, g.end), g.pick(("operator",) * 6 + ("viewer",)), cooled=True,
                      dry=True, intact=True, sealed=True, labelAgrees=True)
        for _ in range(g.pick((1, 1, 2))):
            field = g.pick(("cooled", "dry", "intact", "sealed", "labelAgrees"))
            if g.chance(0.6):
                check[field] = False
            else:
                check.pop(field, None)
        checks = item.setdefault("checks", [])
        if g.chance(0.5):
            checks.append(check)
        else:
            checks.insert(0, check)
        if g.chance(0.3):
            checks[:] = [check]
        if len(checks) > 1 and g.chance(0.3):
            checks[0]["recordedAt"] = T(checks[-1].get("recordedAt", checks[-1]["happenedAt"]))
        if len(checks) > 1 and g.chance(0.4):      # the older one is typed later, or both happened at once
            older = min(checks, key=lambda c: c["happenedAt"])
            older["recordedAt"] = T(max(c.get("recordedAt", c["happenedAt"]) for c in checks) + g.pick((0, MINUTE)))
            if g.chance(0.3):
                for each in checks:
                    each["happenedAt"] = T(older["happenedAt"])
    elif how == "check-lost":
        item["checks"] = [c for c in item.get("checks", ()) if g.chance(0.15)]
        if g.chance(0.8):
            item["checkLost"] = g.act(g.end + HOUR, g.pick(("operator", "operator", "viewer")))
    elif how == "package":
        what = g.pick(("none", "unknown", "methods", "no-methods", "form", "form"))
        if what == "none":
            item.pop("packaging", None)
        elif what == "unknown":
            item["packaging"] = "pack-none"
        else:
            packaging = dict(g.pick(g.packagings), id=g.name("pack"))
            if what == "methods":
                packaging["methods"] = g.pick(([], ["dry-heat"], ["steam", "ethylene-oxide"]))
            elif what == "no-methods":
                packaging.pop("methods", None)
            else:
                packaging["form"] = g.pick(("wrap", "pouch", "rigid-container", "open-tray"))
            g.packagings.append(packaging)
            item["packaging"] = packaging["id"]
    elif how == "expires":
        item["packagingExpires"] = day_text(g.zone.day(g.start) + g.pick((-1, -1, 0, 1)))
    elif how == "implant":
        item["implant"] = g.pick(("yes", "unknown", "no"))
        if g.chance(0.2):
            del item["implant"]
    elif how == "visible":          # through a pouch; or it is said of what nobody sees through
        item["internalVisible"] = g.chance(0.8)
        if g.chance(0.5):
            item["packaging"] = g.packaging(g.pick(("pouch", "wrap", "rigid-container")))["id"]
            if g.chance(0.5):
                item.pop("external", None)
    else:
        tests = [c for c in g.cycles if c["kind"] != "load"] or g.cycles
        if not tests:
            return False
        label = g.pick((item["label"], item["label"], item["label"], spelled(item["label"], g.pick),
                        spelled(item["label"], g.pick), item["label"].replace("-", ""), "item-99"))
        g.pick(tests if g.chance(0.85) else g.cycles).setdefault("items", []).append(label)


@late(9)
def device_cycles(g):
    items = g.load["items"]
    if not items:
        return False
    item = g.pick(items)
    how = g.pick(("none", "none", "no-devices", "temperature", "temperature", "minutes", "drop", "drop", "method", "air",
                  "program", "program", "settings", "settings", "extended", "extended", "drying", "empty"))
    if how == "none":
        device = g.pick(item["devices"]) if item.get("devices") else None
        if device is None:
            return False
        device["allowedCycles"] = []
        if g.chance(0.5):
            del device["allowedCycles"]
        return None
    if how in ("no-devices", "empty"):
        item["devices"] = []
        if how == "no-devices":
            del item["devices"]
        return None
    if how == "extended":
        g.specification["extended"] = g.chance(0.8)
        return None
    if how == "settings":
        settings = g.specification.get("settings", {})
        what = g.pick(("exposureMinutes", "celsius", "dryingMinutes", "all", "exposureMinutes"))
        if what == "all":
            g.specification.pop("settings", None)
        elif g.chance(0.5):
            settings.pop(what, None)
        elif what in settings:
            settings[what] = round(settings[what] + g.pick((-0.51, -0.5, 0.5, 0.51)), 2)
            if settings[what] < 0:
                settings[what] = 0
        return None
    if not item.get("devices"):
        return False
    device = g.pick(item["devices"])
    allowed = g.allowed()
    device["allowedCycles"] = [allowed] if g.chance(0.7) else [allowed] + device.get("allowedCycles", [])
    tolerance = float(g.policy["device.temperature_tolerance_kelvin"])
    if how == "temperature":
        delta = g.pick((1, -1)) * tolerance + g.pick((-0.01, 0, 0, 0.01))
        allowed.pop("fahrenheit", None)
        if g.chance(0.5):
            allowed["celsius"] = round(g.celsius + delta, 2)
        else:
            allowed.pop("celsius", None)
            allowed["fahrenheit"] = round((g.celsius + delta) * 1.8 + 32, 2)
        if g.chance(0.15):
            allowed["celsius"] = g.celsius
    elif how == "minutes":
        allowed["leastMinutes"] = round(g.exposure + g.pick((-0.001, 0, 0.001, 0.001, 1)), 3)
        if g.chance(0.5):
            allowed["mostMinutes"] = round(g.exposure + g.pick((-0.001, 0, 0.001, -1)), 3)
            if g.chance(0.5):
                allowed["leastMinutes"] = min(allowed["leastMinutes"], g.exposure)
                device["allowedCycles"] = [allowed]
    elif how == "drop":
        allowed.pop(g.pick(sorted(allowed)))
    elif how == "method":
        allowed["method"] = g.pick(("steam", "ethylene-oxide", "hydrogen-peroxide", "dry-heat", "unknown"))
    elif how == "air":
        allowed["airRemoval"] = g.pick(("gravity", "prevacuum", "steam-flush-pressure-pulse", "unknown"))
    elif how == "drying":
        allowed["dryingMinutes"] = round(g.drying + g.pick((-0.001, 0, 0.001, 0.001)), 3) if g.drying else 1
    else:
        if g.chance(0.6):
            if g.method in ("steam", "dry-heat"):
                return False
            allowed["program"], allowed["sterilizerModel"] = g.pick((
                ("prog-2", "model-a"), ("prog-2", "model-b"), ("prog-1", "model-b"), ("prog-1", "model-b"),
                ("prog-1", "model-a")))
            if g.chance(0.8):
                device["allowedCycles"] = [allowed]
        elif g.chance(0.5):
            g.sterilizer.pop("model", None)
        else:
            g.specification.pop("program", None)


# methods -----------------------------------------------------------------------------------------
@early(27)
def aeration(g):
    runs = g.load.get("aerationRuns")
    if g.method != "ethylene-oxide" or not runs:
        return False
    run = runs[0]
    need = g.aeration_minutes * MINUTE
    begin = run["start"]["happenedAt"]
    how = g.pick(("open", "open", "open", "none", "none", "short", "short", "cold", "interrupted", "early", "early",
                  "not-stated", "not-stated", "second", "end-act", "least", "least", "warmth", "warmth", "hot", "hot", "hot", "hot",
                  "hot", "hours", "hours"))
    if how == "open":
        run.pop("end", None)
        if g.chance(0.7):
            g.now_at = begin + need + g.pick(AROUND + (-HOUR, HOUR))
        if g.chance(0.3):
            runs.append(dict(run, start=g.act(begin + g.minutes(-5, 60))))
    elif how == "none":
        runs.clear()
    elif how == "short":
        run["end"] = g.act(begin + need + g.pick(AROUND))
    elif how == "cold":
        run["celsius"] = round(g.sterilizer["aeration"]["celsius"] - g.pick((0, 0.01, 0.01, 5)), 2)
        if g.chance(0.3):
            run.pop("end", None)
    elif how == "interrupted":
        run["interrupted"] = g.act(begin + g.minutes(1, 100), g.pick(("operator", "viewer")))
    elif how == "early":
        run["start"] = g.act(near(g, g.end))
        run["end"] = g.act(run["start"]["happenedAt"] + need)
        if g.chance(0.3):
            run.pop("end", None)
    elif how == "second":
        runs.append({"start": g.act(begin + HOUR), "celsius": run["celsius"]})
        run["end"] = g.act(begin + need - MINUTE)
    elif how == "least":            # everybody states that no aeration is needed, or less than four hours of it
        for part in (g.packagings, *(item.get("devices", ()) for item in g.load["items"])):
            for stated in part:
                stated["aerationMinutes"] = g.pick((0, 0, 0, 59, 239))
        g.sterilizer["aeration"]["minutes"] = g.pick((0, 59, 60, 239, 239, 240, 240))
    elif how == "hours":            # of one, hours typed for minutes, or just an hour
        stated = [g.sterilizer["aeration"], *g.packagings, *(d for item in g.load["items"] for d in item.get("devices", ()))]
        part = g.pick(stated)
        part["minutes" if part is stated[0] else "aerationMinutes"] = g.pick((0, 1, 8, 12, 59, 60))
    elif how == "warmth":
        g.sterilizer["aeration"]["celsius"] = run["celsius"] = g.pick((19.99, 20, 80, 80.01))
    elif how == "hot":
        run["celsius"] = round(g.sterilizer["aeration"]["celsius"] + g.pick((30, 30, 30.01, 30.01, 60)), 2)
        if g.chance(0.6):           # beside one that counts
            runs.append(dict(run, celsius=g.sterilizer["aeration"]["celsius"]))
        if g.chance(0.3):
            run.pop("end", None)
            if g.chance(0.5):
                g.now_at = begin + need + g.pick(AROUND)
    elif how == "end-act":
        run["end" if g.chance(0.5) else "start"]["role"] = "viewer"
    else:
        item = g.pick(g.load["items"])
        what = g.pick(("sterilizer", "packaging", "packaging-minutes", "device", "devices"))
        if what == "sterilizer":
            g.sterilizer.pop("aeration", None)
        elif what == "packaging":
            item.pop("packaging", None)
        elif what == "packaging-minutes":
            g.pick(g.packagings).pop("aerationMinutes", None)
        elif item.get("devices"):
            if what == "device":
                item["devices"][0].pop("aerationMinutes", None)
            else:
                item.pop("devices", None)
        if g.chance(0.3):
            runs.clear()


@late(5)
def peroxide(g):
    if g.method != "hydrogen-peroxide" or not g.load["items"]:
        return False
    g.want_review = True
    item = g.pick(g.load["items"])
    stated = item.setdefault("peroxide", {})
    field = g.pick(("cellulose", "liquidOrPowder", "moist", "lumen"))
    if g.chance(0.5):
        stated.pop(field, None)
    if g.chance(0.6):
        field = g.pick(("cellulose", "liquidOrPowder", "moist", "lumen"))
        stated[field] = True if field != "lumen" else "unlisted"
    if g.chance(0.1):
        item.pop("peroxide", None)


@late(5)
def immediate(g):
    if not g.immediate and g.chance(0.75):
        return False
    g.specification["purpose"] = "immediate-use"
    use = g.load.setdefault("immediateUse", {"reason": "why", "caseReference": "case-1", "forStorage": False})
    how = g.pick(("storage", "storage", "reason", "case", "gone", "unstated"))
    if how == "storage":
        use["forStorage"] = True
    elif how == "unstated":
        use.pop("forStorage", None)
    elif how == "reason":
        use["reason"] = g.pick(BARE)
        if g.chance(0.4):
            del use["reason"]
    elif how == "case":
        use["caseReference"] = g.pick(BARE[1:])      # the reader refuses one with nothing in it
        if g.chance(0.5):
            del use["caseReference"]
    elif g.chance(0.5):
        g.load.pop("immediateUse", None)


@late(4)
def purpose_differs(g):
    """A routine program, and what is said of immediate use; or the other way round."""
    g.specification["purpose"] = "routine" if g.chance(0.9) else "immediate-use"
    if g.chance(0.9):
        g.load["immediateUse"] = use = g.pick(({"reason": "why", "caseReference": "case-1", "forStorage": False},
                                               {"reason": "why", "forStorage": True}, {}, {}))
        if not use:                 # of which little is said, or nothing
            for name, values in (("reason", BARE), ("caseReference", BARE[1:]), ("forStorage", (True, False))):
                if g.chance(0.3):
                    use[name] = g.pick(values)


@late(2)
def other_method(g):
    """The specification names another method than the evidence was made for."""
    g.specification["method"] = g.pick(("steam", "ethylene-oxide", "hydrogen-peroxide", "dry-heat"))


@late(2)
def cycle_type(g):
    if g.chance(0.5):
        g.specification.pop("cycleType", None)
    else:
        g.specification["cycleType"] = g.pick(("type-a", "type-b", "type-c"))
    if g.cycles and g.chance(0.4):
        g.pick(g.cycles).pop("cycleType", None)


@late(4)
def cycle_type_spelled(g):
    """A cycle type in another spelling, somewhere."""
    named = [part for part in [g.specification] + g.cycles if "cycleType" in part]
    products = [product for product in g.products if "cycleTypes" in product]
    if products and g.chance(0.4):
        product = g.pick(products)
        product["cycleTypes"] = [typed(each, g.pick) for each in product["cycleTypes"]]
    else:
        part = g.pick(named)
        part["cycleType"] = typed(part["cycleType"], g.pick)


# clocks and order --------------------------------------------------------------------------------
@late(5)
def counters(g):
    if not g.cycles:
        return False
    cycle = g.pick(g.cycles)
    how = g.pick(("equal", "swap", "drop", "drop-load", "far"))
    own = g.load.get("counter", 500)
    if how == "equal":
        cycle["counter"] = own
        g.load.setdefault("counter", own)
    elif how == "swap":
        cycle["counter"] = own + g.pick((-1, 1, -30, 30))
        g.load.setdefault("counter", own)
    elif how == "drop":
        cycle.pop("counter", None)
    elif how == "drop-load":
        g.load.pop("counter", None)
    else:
        cycle["counter"] = g.pick((0, 100000))


@late(5)
def history_counters(g):
    """Two cycles of the history whose counters contradict their starts, or do not quite."""
    while len(g.cycles) < 2:
        g.hist("load", *earlier(g))
    a, b = g.rng.sample(g.cycles, 2)
    own = g.load.get("counter", 500)
    low, high = sorted((a, b), key=lambda c: c["start"])
    low["counter"], high["counter"] = g.pick(((own - 2, own - 1), (own - 1, own - 2), (own - 1, own - 1), (own - 1, own - 2)))
    if g.chance(0.3):
        high["start"] = T(low["start"] + g.pick((0, 0, 1, -1)))
        high["end"] = T(max(high.get("end", 0), high["start"]))
    if g.chance(0.1):
        g.pick((low, high)).pop("counter")


@late(5)
def at_the_same_time(g):
    """A cycle of the history that runs into the load, or begins before it has ended, whatever the counters say."""
    minute = g.pick((MINUTE, 1, 30_000))
    if g.chance(0.5):
        start = g.start - g.minutes(5, 40)
        end = g.start // MINUTE * MINUTE
        end = g.pick((g.start, end, end + MINUTE)) + g.pick((-minute, 0, 0, minute))
    else:
        start = g.pick((g.end, g.end // MINUTE * MINUTE, g.end // MINUTE * MINUTE + MINUTE)) + g.pick((-minute, 0, 0, minute))
        end = start + g.minutes(5, 30)
    cycle = g.hist("load", start, max(0, end - start))
    own = g.load.get("counter", 500)
    if g.chance(0.8):
        used = {c.get("counter") for c in g.cycles}
        side = range(own - 1, own - 40, -1) if start < g.start else range(own + 1, own + 40)
        cycle["counter"] = next(number for number in side if number not in used)
    if g.chance(0.1):
        del cycle["end"]


@late(3)
def without_end(g):
    """A cycle of the history without an end, before the load, beside it or after it."""
    cycle = g.hist("load", g.start - g.minutes(5, 40) if g.chance(0.6) else g.pick((g.start, g.end)) + g.pick(AROUND), MINUTE)
    if g.chance(0.85):
        del cycle["end"]
    if g.chance(0.3):
        used = {c.get("counter") for c in g.cycles}
        cycle["counter"] = next(number for number in range(g.load.get("counter", 500) - 1, 0, -1) if number not in used)


@late(4)
def clocks(g):
    """The sterilizer's clock, its offsets and their edges."""
    offsets = g.sterilizer["clockOffsets"]
    chosen = g.pick([g.load] + g.cycles)
    how = g.pick(("flip", "none", "edge", "edge", "same"))
    if how == "flip":
        chosen["clock"] = "facility" if chosen.get("clock") == "sterilizer" else "sterilizer"
    elif how == "none":
        offsets.clear()
        chosen["clock"] = "sterilizer"
    elif how == "edge":
        moment = chosen.get(g.pick(("start", "end")))
        if moment is None:
            return False
        chosen["clock"] = "sterilizer"
        offsets.append({"from": T(moment + g.pick(CLOSE)), "seconds": g.pick((g.offset, 0, 60, -60, 1))})
        if g.chance(0.4):
            offsets.pop(0)
    else:
        if not offsets:
            return False
        offsets.append(dict(g.pick(offsets), seconds=g.pick((0, 60, -3600))))


# anything, anywhere --------------------------------------------------------------------------------
def collect(value, out):
    """All (object, key) pairs of the record."""
    if type(value) is dict:
        for key, inner in value.items():
            out.append((value, key))
            if type(inner) in (dict, list):
                collect(inner, out)
    else:
        for inner in value:
            if type(inner) in (dict, list):
                collect(inner, out)
    return out


OPTIONAL = {"by", "role", "recordedAt", "lot", "operator", "end", "outcome", "counter", "incubator", "incubationStart",
            "activation", "processIndicator", "expires", "cycleType", "clock", "program", "place", "readings", "external",
            "internals", "devices", "packaging", "recorded", "implant", "vials", "indicators", "sheet", "checks",
            "forLoad", "settings", "resolutions", "model", "testHour", "aeration", "service", "clockOffsets", "incidents",
            "verifications", "printout", "pcds", "aerationRuns", "methods", "closings", "exposure", "start",
            "product", "method", "voidReason", "unsettled", "voided", "lost", "why", "to", "dryingRun", "chamberEmpty",
            "traces", "specification", "revision", "defects", "uninterrupted", "notBelow", "notAbove", "saturated", "drying",
            "greatestCelsius", "exposureLeastSeconds", "exposureMostSeconds", "dryingLeastSeconds", "dryingMostSeconds"}


def removable(thing, key):
    """Whether the schema allows a field to be left out."""
    if key not in OPTIONAL:
        return False
    if key in ("lot", "start") and "kind" in thing:         # cycles
        return False
    if key in ("product", "lot") and "number" in thing:     # lots
        return False
    if key == "start" and "celsius" in thing:               # aeration runs
        return False
    if key == "methods" and "response" in thing:            # products
        return False
    if key in ("specification", "revision") and "happenedAt" not in thing:      # but a trace's
        return False
    return key != "why" or "finding" in thing


@late(10)
def drop_any(g):
    found = [pair for pair in collect(g.record, []) if removable(*pair)]
    thing, key = g.pick(found)
    del thing[key]


@late(16)
def any_act(g):
    """Acts unsigned, by viewers, in the future, recorded before they happened."""
    found = [thing for thing, key in collect(g.record, []) if key == "happenedAt"]
    if not found:
        return False
    act = g.pick(found)
    how = g.pick(("unsigned", "empty", "viewer", "viewer", "role", "role", "by", "future", "future", "before", "late", "late"))
    done = act["happenedAt"]
    if how == "unsigned":
        act.pop("by", None)
    elif how == "empty":
        act["by"] = g.pick(BARE)
    elif how == "viewer":
        act["role"] = "viewer"
    elif how == "role":
        act["role"] = g.pick(("operator", "lead", "supervisor"))
    elif how == "by":
        act["by"] = g.pick(("op-1", "op-2", "lead-1", "sup-1", "sup-2"))
    elif how == "future":
        act["recordedAt"] = T(g.now + g.pick((-1, 0, 0, 1, 1, MINUTE, DAY)))
        if act["recordedAt"] < done and g.chance(0.5):
            act["happenedAt"] = act["recordedAt"]
    elif how == "before":
        act["recordedAt"] = T(done - g.pick((1, 1, MINUTE, 0)))
    else:
        act["recordedAt"] = T(done + g.policy["acts.late_hours"] * HOUR + g.pick((-1, 0, 1, 1, MINUTE)))


@late(7)
def spelling(g):
    """Names in other spellings: one act's, the operator's, or every second one of a person."""
    named = [thing for thing, key in collect(g.record, []) if key == "by" and thing["by"]]
    how = g.pick(("one", "one", "operator", "person", "person"))
    if how == "operator":
        own = g.load["operator"]
        g.load["operator"] = g.pick(BARE[1:]) if g.chance(0.1) else spelled(own, g.pick)
    elif how == "one":
        act = g.pick(named)
        act["by"] = spelled(act["by"], g.pick)
    else:
        own = g.pick(named)["by"]
        for act in named:
            if act["by"] == own and g.chance(0.5):
                act["by"] = spelled(own, g.pick)


@late(10)
def any_time(g):
    """One moment becomes another of the record, or one step beside it."""
    found = [(thing, key) for thing, key in collect(g.record, []) if type(thing[key]) is T]
    thing, key = g.pick(found)
    other, other_key = g.pick(found)
    thing[key] = T(other[other_key] + g.pick(AROUND))
    if "from" in thing and "to" in thing:       # no record says that a span ended before it began
        thing["to"] = T(max(thing["from"], thing["to"]))


@late(10)
def now_edge(g):
    """Now at, one step before, one step after a moment at which something may turn."""
    if g.chance(0.6) and g.edges:
        g.now = g.pick(g.edges) + g.pick(AROUND)
    else:
        found = [thing[key] for thing, key in collect(g.record, []) if type(thing[key]) is T]
        g.now = g.pick(found) + g.pick(AROUND)


def known_by(value, now):
    """A part of the record as it was known at a moment: what was recorded later is not yet there."""
    if type(value) is dict:
        out = {}
        for key, inner in value.items():
            if type(inner) is dict:
                if is_later(inner, now):
                    continue
                inner = known_by(inner, now)
            elif type(inner) is list:
                inner = [known_by(x, now) if type(x) in (dict, list) else x for x in inner if not is_later(x, now)]
            elif type(inner) is T and key in ("incubationStart", "to") and inner > now:
                continue
            out[key] = inner
        if type(out.get("end")) is T and out["end"] > now and "by" not in out:
            del out["end"]
            out.pop("outcome", None)
        return out
    return value


def is_later(value, now):
    if type(value) is not dict:
        return False
    if "happenedAt" in value:
        return value.get("recordedAt", value["happenedAt"]) > now
    if "seconds" not in value and type(value.get("from")) is T and value["from"] > now:
        return True
    if type(value.get("start")) is dict:                    # an aeration run
        return is_later(value["start"], now)
    return "kind" in value and type(value.get("start")) is T and value["start"] > now


@late(22)
def as_of(g):
    """The record as it was at an earlier moment, often one at which something turns."""
    if g.chance(0.55) and g.edges:
        now = g.pick(g.edges) + g.pick(AROUND)
    else:
        now = g.pick([thing[key] for thing, key in collect(g.record, []) if type(thing[key]) is T]) + g.pick(AROUND)
    if now < g.start:
        return False
    g.now = now
    for part in ("sterilizer", "load", "test", "controls"):
        if part == "controls":
            g.record["controls"][:] = [known_by(c, now) for c in g.record["controls"]]
        elif part in g.record:
            old = g.record[part]
            new = known_by(old, now)
            old.clear()
            old.update(new)
    g.cycles, g.service = g.sterilizer.get("cycles", []), g.sterilizer.get("service", [])


@early(17)
def put_right(g):
    """A failed Bowie-Dick, its repair recorded in time or late, the repeated test, the return."""
    if not g.needs_bowie_dick():
        return False
    g.want_review = True
    first = g.start - g.minutes(150, 400)
    test = g.bowie_dick(first)
    end = test["end"]
    known = end + g.pick((0, MINUTE, MINUTE))
    test["sheet"]["readings"] = [g.act(known, recorded=known, seen="not-uniform")]
    done = end + g.pick((0, 0, MINUTE, 30 * MINUTE)) + g.pick((0, 0, 0, -1))
    again = g.bowie_dick(done + g.pick((0, 0, MINUTE, 10 * MINUTE)) + g.pick((0, 0, 0, -1)))
    recorded = g.pick((done, again["start"] + g.pick(CLOSE), again["end"], g.start - MINUTE, g.end + HOUR))
    if g.chance(0.9):               # not before the failure was known; or just around that
        recorded = max(recorded, known) if g.chance(0.8) else known + g.pick(CLOSE)
    test["resolutions"] = [g.act(min(done, recorded), g.pick(("lead", "supervisor")), recorded=recorded, cause="known",
                                 reach=g.pick(("that-load", "sterilizer")), what=text(g, "what was done"))]
    back = max(end + MINUTE, g.start - g.pick((0, 1, MINUTE)))
    g.service.append(g.act(back, "supervisor", recorded=back, state="in-service"))


@early(32)
def failed_after(g):
    """A Bowie-Dick after the load that failed, or the first of the period after it."""
    if not g.needs_bowie_dick():
        return False
    g.want_review = True
    if g.bd in g.cycles and g.chance(0.5):
        g.cycles.remove(g.bd)
    test = g.bowie_dick(g.end + g.pick((0, MINUTE, HOUR, 20 * HOUR)))
    if g.chance(0.6):
        test["sheet"]["readings"] = [g.act(test["end"] + g.minutes(0, 30), seen=g.pick(("unchanged", "not-uniform")))]
        if g.chance(0.3):
            test["sheet"]["readings"].append(g.act(test["end"] + HOUR, seen=g.pick(("unchanged", "uniform-complete"))))
    if g.chance(0.2):
        g.bowie_dick(g.end + g.minutes(1, 100))


@early(22)
def made_after(g):
    """The first Bowie-Dick of the period came after the load, passed, was read."""
    if not g.needs_bowie_dick() or g.bd not in g.cycles or (g.implant and g.chance(0.7)):
        return False
    g.want_review = True
    g.cycles.remove(g.bd)
    room = max(0, (g.period_end - g.end) // MINUTE)
    g.bowie_dick(g.end + MINUTE + g.minutes(0, min(120, room)))


@early(3)
def wet_packages(g):
    g.want_review = True
    items = g.load["items"]
    while len(items) < g.policy["packages.wet_for_supervisor"] + g.pick((-1, 0, 0)):
        items.append(g.item(len(items) + 1))
    for item in items[:g.policy["packages.wet_for_supervisor"]]:
        at = g.end + g.minutes(1, 20)
        item.setdefault("checks", []).append(g.act(at, recorded=at + g.pick((0, MINUTE)), dry=False))


@early(4)
def incident(g):
    """Growth that a supervisor lays to the control or to another load's vial."""
    vial, _, end = ensure_vial(g)
    g.want_review = True
    at = vial.get("incubationStart", end) + g.minutes(1, 1000)
    vial["readings"] = [g.act(at, seen="growth")]
    if g.chance(0.2):
        vial["readings"].append(g.act(at + g.minutes(0, 200), seen="growth"))
    vial["incidentFinding"] = found_elsewhere(g, vial, at + HOUR)


@early(7)
def unsuitable(g):
    if g.method != "hydrogen-peroxide":
        return False
    g.want_review = True
    g.pick(g.load["items"])["peroxide"][g.pick(("cellulose", "liquidOrPowder", "moist"))] = True


@early(4)
def on_opening(g):
    """Immediate use in a rigid container: the inside is read on opening."""
    if not g.immediate:
        return False
    item = g.pick(g.load["items"])
    item["packaging"] = g.packaging(g.pick(("rigid-container", "rigid-container", "wrap")))["id"]
    ci = dict(g.ci("inside", g.end), place="place-1")
    item["internals"] = [ci]
    if g.chance(0.6):
        ci["readings"] = []
    else:                           # read before it could be: does not count
        because_ci(g, ci, "inside", g.end)
    if g.chance(0.15):
        ci["alsoUsedIn"] = ["lot-3"]
    item.setdefault("external", g.ci("outside", g.end))


@late(4)
def check_facts(g):
    """One fact of the check alone."""
    check = g.pick(g.pick(g.load["items"])["checks"])
    field = g.pick(("cooled", "labelAgrees", "cooled", "labelAgrees", "dry", "intact", "sealed"))
    if g.chance(0.75):
        check[field] = False
    else:
        check.pop(field, None)


@late(1)
def bare(g):
    """A load of which little is said."""
    for key in list(g.load):
        if g.chance(0.5):
            del g.load[key]
    g.load.setdefault("items", [])


def choose(g, changes, cumulative, count):
    """Apply `count` changes that apply."""
    tries = 0
    while count and tries < 40:
        tries += 1
        change = g.rng.choices(changes, cum_weights=cumulative)[0]
        try:
            count -= change(g) is not False
        except (KeyError, IndexError):      # an earlier change took away what this one needs
            pass


def prepared(table):
    total, functions, cumulative = 0, [], []
    for function, weight in table:
        total += weight
        functions.append(function)
        cumulative.append(total)
    return functions, cumulative


EARLY_TABLE = prepared(EARLY)
