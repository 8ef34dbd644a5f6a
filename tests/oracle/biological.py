"""Biological indicators and their controls (section 4)."""

from chemical import act_cause, in_turn, of_type, settle, voiders, without_date
from evidence import happened, is_empty, person, recorded
from moments import HOUR, MINUTE, day_of, from_end_on, minute, moment

SPECIES = {"steam": "geobacillus-stearothermophilus", "hydrogen-peroxide": "geobacillus-stearothermophilus",
           "ethylene-oxide": "bacillus-atrophaeus", "dry-heat": "bacillus-atrophaeus"}
# Minutes: less than any readout has, by the cycle's method.
SHORTEST_READOUT = {"ethylene-oxide": 120, "dry-heat": 120, "steam": 10, "hydrogen-peroxide": 10, "unknown": 10}
SHORTEST_GROWTH = 10            # minutes from a control's incubation start, whatever its product


def readout(case, product):
    """Milliseconds from incubation start to the readout that makes a negative final."""
    minutes = product["releaseMinutes"]
    if case.policy["bi.readout"] == "last":
        minutes = max(minutes, product.get("lastMinutes", minutes))
    return minutes * MINUTE


def control_state(case, control):
    """missing, grown, dead or pending."""
    state = case._control_states.get(control["id"])
    if state is None:
        state = case._control_states[control["id"]] = _control_state(case, control)
    return state


def _control_state(case, control):
    product = case.products.get(control.get("product"))
    lot = case.lots.get((control.get("product"), control.get("lot")))
    if product is None or lot is None or product["kind"] != "biological" or "incubationStart" not in control:
        return "missing"
    begun = incubation_start(control)
    day = case.zone.day(begun)
    if without_date(lot, day) or day > day_of(lot["expires"]):
        return "missing"
    if product.get("needsActivation") and not activated(case, control, begun):
        return "missing"
    if control.get("processIndicator") == "changed":
        return "missing"
    bad = bad_of_control(case, control)
    barred = voiders(control.get("readings", ()), bad)

    def classify(reading):
        if reading["seen"] == "unclear":
            return "unclear"
        if reading["seen"] == "growth":
            counts = (case.stands(reading) and "voided" not in reading and person(reading) not in barred
                      and minute(happened(reading)) >= minute(begun) + SHORTEST_GROWTH)
            return "good" if counts else None
        return "bad" if bad(reading) and not case.struck(reading) else None

    state = settle(control.get("readings", ()), classify, control.get("unsettled")).state
    return {"accepted": "grown", "rejected": "dead"}.get(state, "pending")


def bad_of_control(case, control):
    """Which readings of a control are bad answers: `no-growth`, unless it is shown to be early."""
    product, begun = case.products.get(control.get("product"), {}), incubation_start(control)
    final = begun + readout(case, product) if begun is not None and "releaseMinutes" in product else None
    return lambda reading: reading["seen"] == "no-growth" and (final is None or happened(reading) >= final)


def activated(case, thing, begun):
    """Whether a vial or control has a standing activation that did not happen after its incubation began at `begun`."""
    act = thing.get("activation")
    return case.stands(act) and minute(happened(act)) <= minute(begun)


def incubation_start(thing):
    """The incubation start of a vial or control, or None."""
    text = thing.get("incubationStart")
    return None if text is None else moment(text)


def group_state(case, vial, cycle, product):
    """(state, W): dead, grown, pending, awaited, missing or none (no incubation start, or product or lot not in the
    register); W for awaited."""
    begun = incubation_start(vial)
    if begun is None or not_registered(case, vial, cycle) not in (None, "incubator-unknown", "readout-implausible"):
        return "none", None
    window = case.policy["control.window_hours"] * HOUR
    reach = product.get("control", case.policy["control.per"])
    states = set()
    for control in case.controls:
        if control.get("product") != vial.get("product") or control.get("lot") != vial.get("lot"):
            continue
        if is_empty(vial.get("incubator")) or control.get("incubator") != vial["incubator"]:
            continue
        if reach == "day":
            other = incubation_start(control)
            if other is None:
                continue
            if case.zone.day(other) != case.zone.day(begun) and abs(other - begun) > window:
                continue
        elif reach == "load":
            if cycle.lot is None or control.get("forLoad") != cycle.lot:
                continue
        states.add(control_state(case, control))
    for state in ("dead", "grown", "pending"):
        if state in states:
            return state, None
    if cycle.place in ("history", "test"):
        return "missing", None
    w = max(case.zone.next_midnight(begun), begun + window)
    return ("awaited", w) if case.now < w else ("missing", None)


def not_registered(case, raw, cycle):
    """Why a vial is not in the register: product-unknown, lot-unknown, lot-without-date, incubator-unknown,
    readout-implausible; None where it is."""
    product = case.products.get(raw.get("product"))
    if product is None:
        return "product-unknown"
    lot = case.lots.get((raw["product"], raw.get("lot")))
    if lot is None:
        return "lot-unknown"
    if without_date(lot, cycle.start_day):
        return "lot-without-date"
    if not is_empty(raw.get("incubator")) and raw["incubator"] not in case.out_of_range:
        return "incubator-unknown"
    shortest = SHORTEST_READOUT[cycle.method]
    if product["kind"] == "biological" and product.get("releaseMinutes", shortest) < shortest:
        return "readout-implausible"
    return None


class Vial:
    """The state of one vial: positive, positive-elsewhere, void, lost, pending, negative; unclear: besides being void,
    lost or pending; because: the cause (section 4a) where it is void, lost, not-registered or not-counted."""

    def __init__(self, raw, state, why=None, changes=None, since=None, authors=(), because=None, unclear=False):
        self.raw, self.state, self.why, self.changes, self.because = raw, state, why, changes, because
        self.unclear = unclear
        self.since, self.authors = since, set(authors)


def read_vial(case, raw, cycle):
    """Follow the seven steps of section 4."""
    product = case.products.get(raw.get("product"))
    readings = raw.get("readings", ())
    # 1
    growths = [r for r in readings if r["seen"] == "growth"]
    if growths:
        since = min(recorded(r) for r in growths)
        authors = [person(r) for r in growths if recorded(r) == since]
        finding = raw.get("incidentFinding")        # not before any growth was known
        elsewhere = case.stands_by_supervisor(finding) and recorded(finding) >= max(recorded(r) for r in growths)
        return Vial(raw, "positive-elsewhere" if elsewhere else "positive", since=since, authors=authors)
    # 2
    biological = product is not None and product["kind"] == "biological"
    begun = incubation_start(raw)
    final = begun + readout(case, product) if biological and begun is not None else None
    latest = None
    if biological and begun is not None and "latestMinutes" in product:
        latest = begun + product["latestMinutes"] * MINUTE
    spans = case.out_of_range.get(raw.get("incubator"), ())

    def not_counted(reading):
        """Why a no-growth does not count; None where it does."""
        cause = act_cause(case, reading)
        if cause is not None:
            return cause
        if "voided" in reading:
            return "voided"
        at = happened(reading)
        if final is None or at < final or cycle.end is None:
            return "read-early"
        for a, b in spans:          # out of range; or a span that touched the incubation begins the readout anew
            if a <= at and (b is None or at <= b or (b >= begun and at < b + readout(case, product))):
                return "incubator"
        return "read-late" if latest is not None and at > latest else None

    def classify(reading):
        if reading["seen"] == "unclear":
            return "unclear"
        return "good" if biological and not_counted(reading) is None else None

    settled = settle(readings, classify, raw.get("unsettled"))
    if settled.state == "rejected":
        return Vial(raw, "positive", since=settled.since, authors=[person(settled.cause)])
    unclear = settled.state == "unclear"    # besides what follows, which never makes it negative
    # 3
    because = "voided" if case.stands_by_lead(raw.get("voided")) else what_voids(case, raw, cycle, product, begun)
    if because is not None:
        return Vial(raw, "void", because=because, unclear=unclear)
    # 4
    group, w = group_state(case, raw, cycle, product or {})
    if case.stands(raw.get("lost")) and not (settled.state == "accepted" and group == "grown"):
        return Vial(raw, "lost", because="lost", unclear=unclear)
    # 5
    if group in ("dead", "missing"):
        return Vial(raw, "void", because="control-" + group, unclear=unclear)
    if (settled.state == "none" and latest is not None
            and any(r["seen"] == "no-growth" and case.stands(r) and happened(r) > latest for r in readings)):
        return Vial(raw, "void", because="read-late", unclear=unclear)
    # 6
    if unclear:
        return Vial(raw, "pending", "unclear", w, unclear=True)
    unregistered = not_registered(case, raw, cycle)
    if unregistered is not None:
        return Vial(raw, "pending", "not-registered", w, because=unregistered)
    no_process = product.get("hasProcessIndicator") and "processIndicator" not in raw
    if begun is None:
        why = "not-started"
    elif settled.state == "none":
        negatives = [r for r in in_turn(readings) if r["seen"] == "no-growth"]
        if case.now < final:
            why = "incubating"
        elif negatives:
            why, because = "not-counted", not_counted(negatives[-1])
        else:
            why = "due"
    elif no_process:
        why = "process-indicator"
    elif group in ("pending", "awaited"):
        why = "control"
    else:
        return Vial(raw, "negative")        # 7
    moments = [m for m in (final if why == "incubating" else None, w) if m is not None]
    return Vial(raw, "pending", why, min(moments) if moments else None, because=because)


def what_voids(case, raw, cycle, product, begun):
    """The first cause in the vial itself for which it is void, or None."""
    if product is not None:
        lot = case.lots.get((raw["product"], raw.get("lot")), {})
        if product["kind"] != "biological":
            return "product-unfit"
        if cycle.start_day is not None and "expires" in lot and cycle.start_day > day_of(lot["expires"]):
            return "lot-expired"
        if lot.get("recalled"):
            return "lot-recalled"
        if cycle.method != "unknown" and cycle.method not in product["methods"]:
            return "method"
        if not of_type(product, cycle):
            return "cycle-type"
        if cycle.method != "unknown" and product["species"] != SPECIES[cycle.method]:
            return "species"
    else:
        product = {}
    if raw.get("alsoUsedIn"):
        return "used-elsewhere"
    if product.get("needsActivation") and begun is not None and not (        # before it is put to incubate, it waits
            activated(case, raw, begun)
            and (cycle.end is None or from_end_on(happened(raw["activation"]), cycle.end))):
        return "not-activated"
    if raw.get("processIndicator") == "unchanged":
        return "process-indicator"
    if begun is not None and cycle.end is not None:
        if not from_end_on(begun, cycle.end):
            return "incubated-early"
        within = product.get("startWithinMinutes")
        if within is not None and begun > cycle.end + within * MINUTE:
            return "incubated-late"
    return None


def cycle_vials(case, cycle):
    """The vials of a cycle, read once."""
    if cycle.bi is None:
        cycle.bi = [read_vial(case, raw, cycle) for raw in cycle.vials]
    return cycle.bi


def cycle_bi(case, cycle):
    """State of a cycle's BI: positive, pending, negative, void, none."""
    vials = cycle_vials(case, cycle)
    states = {v.state for v in vials}
    if not states:
        return "none"
    if "positive" in states or "positive-elsewhere" in states:
        return "positive"
    if "pending" in states or any(v.unclear for v in vials):
        return "pending"
    return "negative" if "negative" in states else "void"


def telling(cycle):
    """The acts that make a positive cycle's newest: growth readings of its vials or, where there are none, their unclear
    readings and `unsettled`."""
    readings = [r for v in cycle.vials for r in v.get("readings", ())]
    growths = [r for r in readings if r["seen"] == "growth"]
    return growths or ([r for r in readings if r["seen"] == "unclear"]
                       + [v["unsettled"] for v in cycle.vials if "unsettled" in v])


def positive_since(case, cycle):
    """[(since, authors)] of the vials that make a cycle positive."""
    return [(v.since, v.authors) for v in cycle_vials(case, cycle)
            if v.state in ("positive", "positive-elsewhere")]
