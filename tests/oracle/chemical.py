"""Reading an indicator: what was seen, settling, chemical indicators (section 3)."""

from evidence import happened, recorded
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
        by = reading.get("by", "")
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

    def __init__(self, state, spoiled, settled, lost):
        self.state = state           # rejected, unclear, accepted, invalid, unread
        self.spoiled = spoiled
        self.settled = settled
        self.since = settled.since
        self.author = settled.cause.get("by", "") if settled.cause else ""
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


def is_spoiled(case, ci, cycle, place, vials=()):
    """Whether only another indicator of the same cycle can count."""
    product = case.products.get(ci.get("product"))
    lot = case.lots.get((ci.get("product"), ci.get("lot")))
    method = "steam" if place == "sheet" else cycle.method
    if product is None or lot is None or product["kind"] != "chemical":
        return True
    if "expires" not in lot:
        return True
    if cycle.start is not None and case.zone.day(cycle.start) > day_of(lot["expires"]):
        return True
    if method != "unknown" and method not in product["methods"]:
        return True
    if place != "sheet" and "cycleTypes" in product and cycle.type not in product["cycleTypes"]:
        return True
    if product["type"] not in allowed_types(case, method, place, vials):
        return True
    return bool(ci.get("alsoUsedIn"))


def read_indicator(case, ci, cycle, place, vials=()):
    """The state of a chemical indicator; vials: those of the same PCD."""
    product = case.products.get(ci.get("product"), {})
    within = product.get("readWithinMinutes")
    readings = ci.get("readings", ())

    def timely(reading):
        if cycle.end is None or happened(reading) < cycle.end:
            return False
        return within is None or happened(reading) <= cycle.end + within * MINUTE

    def classify(reading):
        seen = reading["seen"]
        if seen == "unclear":
            return "unclear"
        voided = case.stands_by_lead(reading.get("voided"))
        if seen in GOOD_CI:
            fits = FITS[seen] == product.get("response")
            return "good" if case.stands(reading) and fits and not voided and timely(reading) else None
        return None if voided else "bad"

    settled = settle(readings, classify, ci.get("unsettled"), ci.get("lost"))
    spoiled = is_spoiled(case, ci, cycle, place, vials)
    if settled.state in ("rejected", "unclear"):
        state = settled.state
    elif settled.state == "accepted" and not spoiled:
        state = "accepted"
    elif any(r["seen"] in GOOD_CI for r in readings):
        state = "invalid"
    else:
        state = "unread"
    return Indicator(state, spoiled, settled, case.stands(ci.get("lost")))
