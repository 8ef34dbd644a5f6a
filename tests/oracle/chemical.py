"""Reading an indicator: what was seen, settling, chemical indicators (section 3)."""

from evidence import happened, person, recorded
from moments import MINUTE, day_of

GOOD_CI = ("front-in-accept-zone", "end-colour-reached", "uniform-complete")
FITS = {"front-in-accept-zone": "moving-front", "end-colour-reached": "colour", "uniform-complete": "sheet",
        "no-growth": "growth", "growth": "growth"}


class Settled:
    """The end of settling: state none, accepted, unclear or rejected."""

    def __init__(self):
        self.state = "none"
        self.second = False          # a second reader had settled it
        self.since = None            # moment of rejection
        self.cause = None            # the reading or `unsettled` that rejected
        self.counted = []            # (class, reading) that counted, in turn


def in_turn(readings):
    """Readings by recordedAt, ties by their order in the file."""
    return sorted(readings, key=recorded) if len(readings) > 1 else readings


def settle(readings, classify, unsettled, lost=None):
    """Settle readings; classify gives good, bad, unclear or None (does not count)."""
    s = Settled()
    first = None
    for reading in in_turn(readings):
        answer = classify(reading)
        if answer is None:
            continue
        s.counted.append((answer, reading))
        by = person(reading)
        if s.state == "rejected":
            continue
        if answer == "bad":
            reject(s, reading)
        elif s.state == "unclear":
            other = bool(by) and bool(first) and by != first
            if answer == "good" and other:
                s.state, s.second = "accepted", True
            elif answer == "unclear" and other:
                reject(s, reading)
        elif answer == "good":
            s.state = "accepted"
        elif s.state == "accepted" and s.second:
            reject(s, reading)
        else:
            s.state, first = "unclear", by
    if s.state == "unclear" and unsettled is not None:
        reject(s, unsettled)
    elif s.state == "unclear" and lost is not None:
        reject(s, lost)
    return s


def reject(s, act):
    s.state, s.since, s.cause = "rejected", recorded(act), act


class Indicator:
    """The state of one chemical indicator in a cycle."""

    def __init__(self, state, spoiled, settled, lost, because):
        self.state = state           # rejected, unclear, accepted, invalid, unread
        self.spoiled = spoiled       # what spoils it, or None
        self.because = because       # its cause (section 4a): what spoils it or, of an invalid one, its reading
        self.settled = settled
        self.since = settled.since
        self.author = person(settled.cause) if settled.cause else ""
        self.lost = lost and state in ("unread", "invalid")
        self.absent = (state == "rejected" and settled.cause.get("seen") == "absent"
                       and all(r["seen"] == "absent" for a, r in settled.counted if a == "bad"))


def allowed_types(case, method, place, vials):
    """ISO types allowed at a place: pcd, inside, outside, sheet."""
    if place == "outside":
        return {1}
    if place == "sheet":
        return {2}
    suffix = "steam" if method == "steam" else "other"
    if place == "inside":
        return set(case.policy["internal.types_" + suffix])
    types = set(case.policy["pcd.types_" + suffix])
    for vial in vials:
        types.update(case.products.get(vial.get("product"), {}).get("implantIndicatorTypes", ()))
    return types


def what_spoils(case, ci, cycle, place, vials=()):
    """The cause for which only another indicator of the same cycle can count, or None."""
    product = case.products.get(ci.get("product"))
    lot = case.lots.get((ci.get("product"), ci.get("lot")))
    method = "steam" if place == "sheet" else cycle.method
    if product is None:
        return "product-unknown"
    if product["kind"] != "chemical":
        return "product-unfit"
    if lot is None:
        return "lot-unknown"
    if "expires" not in lot:
        return "lot-without-date"
    if cycle.start is not None and case.zone.day(cycle.start) > day_of(lot["expires"]):
        return "lot-expired"
    if method != "unknown" and method not in product["methods"]:
        return "method"
    if place != "sheet" and "cycleTypes" in product and cycle.type not in product["cycleTypes"]:
        return "cycle-type"
    if product["type"] not in allowed_types(case, method, place, vials):
        return "type"
    return "used-elsewhere" if ci.get("alsoUsedIn") else None


def act_cause(case, act):
    """Why an act does not stand: unsigned or times-impossible; None where it stands."""
    if case.stands(act):
        return None
    return "unsigned" if not person(act) or act.get("role") == "viewer" else "times-impossible"


def read_indicator(case, ci, cycle, place, vials=()):
    """The state of a chemical indicator; vials: those of the same PCD."""
    product = case.products.get(ci.get("product"), {})
    within = product.get("readWithinMinutes")
    readings = ci.get("readings", ())

    def not_counted(reading):
        """Why a good answer does not count; None where it does."""
        cause = act_cause(case, reading)
        if cause is not None:
            return cause
        if FITS[reading["seen"]] != product.get("response"):
            return "other-response"
        if "voided" in reading:
            return "voided"
        if cycle.end is None or happened(reading) < cycle.end:
            return "read-early"
        return "read-late" if within is not None and happened(reading) > cycle.end + within * MINUTE else None

    def classify(reading):
        seen = reading["seen"]
        if seen == "unclear":
            return "unclear"
        if seen in GOOD_CI:
            return "good" if not_counted(reading) is None else None
        return None if case.struck(reading) else "bad"

    settled = settle(readings, classify, ci.get("unsettled"), ci.get("lost"))
    because = spoiled = what_spoils(case, ci, cycle, place, vials)
    if settled.state in ("rejected", "unclear"):
        state = settled.state
    elif settled.state == "accepted" and not spoiled:
        state = "accepted"
    else:
        good = [r for r in in_turn(readings) if r["seen"] in GOOD_CI]
        state = "invalid" if good else "unread"
        if good and not spoiled:
            because = not_counted(good[-1])
    return Indicator(state, spoiled, settled, case.stands(ci.get("lost")), because)
