"""Reading an indicator: what was seen, settling, chemical indicators (section 3)."""

from evidence import happened, one_type, person, recorded
from moments import MINUTE, day_of, from_end_on

GOOD_CI = ("front-in-accept-zone", "end-colour-reached", "uniform-complete")
FITS = {"front-in-accept-zone": "moving-front", "end-colour-reached": "colour", "uniform-complete": "sheet",
        "no-growth": "growth", "growth": "growth"}
LONGEST_SHELF_LIFE = 3653       # days; a date that is farther ahead counts as not stated


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
        elif s.state == "accepted" and s.second:        # the first reader is still the one who was first
            if by and by != first:
                reject(s, reading)
            else:
                s.state = "unclear"
        else:
            s.state, first = "unclear", by
    if s.state == "unclear" and unsettled is not None:
        reject(s, unsettled)
    elif s.state == "unclear" and lost is not None:
        reject(s, lost)
    return s


def voiders(readings, is_bad):
    """The persons named in the `voided` of bad answers, whether or not that takes them out: they give no good one."""
    return {person(r["voided"]) for r in readings if "voided" in r and is_bad(r)} - {""}


def reject(s, act):
    s.state, s.since, s.cause = "rejected", recorded(act), act


class Indicator:
    """The state of one chemical indicator in a cycle."""

    def __init__(self, state, spoiled, settled, lost, because, mendable):
        self.state = state           # rejected, unclear, accepted, invalid, unread
        self.spoiled = spoiled       # what spoils it, or None
        self.mendable = mendable     # not spoiled, or only by what an entry in the register mends
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


def of_type(product, cycle):
    """Whether the product is for the cycle's type: any where it names none."""
    return "cycleTypes" not in product or cycle.type is not None and cycle.type in map(one_type, product["cycleTypes"])


def without_date(lot, day):
    """Whether a lot states no `expires` that can be one for a use on a facility day (None: not known)."""
    return "expires" not in lot or day is not None and day_of(lot["expires"]) > day + LONGEST_SHELF_LIFE


def what_spoils(case, ci, cycle, place, vials=()):
    """The causes for which only another indicator of the same cycle can count, in their order."""
    product = case.products.get(ci.get("product"))
    lot = case.lots.get((ci.get("product"), ci.get("lot")))
    method = "steam" if place == "sheet" else cycle.method
    if product is None:
        yield "product-unknown"
        return
    if product["kind"] != "chemical":
        yield "product-unfit"
        return
    day = cycle.start_day
    if lot is None:
        yield "lot-unknown"
    elif without_date(lot, day):
        yield "lot-without-date"
    elif day is not None and day > day_of(lot["expires"]):
        yield "lot-expired"
    if lot is not None and lot.get("recalled"):
        yield "lot-recalled"
    if method != "unknown" and method not in product["methods"]:
        yield "method"
    if place != "sheet" and not of_type(product, cycle):
        yield "cycle-type"
    if product["type"] not in allowed_types(case, method, place, vials):
        yield "type"
    if ci.get("alsoUsedIn"):
        yield "used-elsewhere"


def act_cause(case, act):
    """Why an act does not stand: unsigned or times-impossible; None where it stands."""
    if case.stands(act):
        return None
    return "unsigned" if not person(act) or act.get("role") == "viewer" else "times-impossible"


def entry_cause(case, entries, end):
    """Why none of some entries counts, of the last in turn (section 4a); None where there is none. end: of the cycle,
    None where they count at any time."""
    if not entries:
        return None
    last = in_turn(entries)[-1]
    return act_cause(case, last) or (None if end is None or from_end_on(happened(last), end) else "read-early")


def is_bad(reading):
    return reading["seen"] != "unclear" and reading["seen"] not in GOOD_CI


def read_indicator(case, ci, cycle, place, vials=()):
    """The state of a chemical indicator; vials: those of the same PCD."""
    product = case.products.get(ci.get("product"), {})
    within = product.get("readWithinMinutes")
    readings = ci.get("readings", ())
    barred = voiders(readings, is_bad)

    def not_counted(reading):
        """Why a good answer does not count; None where it does."""
        cause = act_cause(case, reading)
        if cause is not None:
            return cause
        if FITS[reading["seen"]] != product.get("response"):
            return "other-response"
        if "voided" in reading:
            return "voided"
        if person(reading) in barred:
            return "voider"
        if not from_end_on(happened(reading), cycle.end):
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
    causes = list(what_spoils(case, ci, cycle, place, vials))
    because = spoiled = causes[0] if causes else None
    if settled.state in ("rejected", "unclear"):
        state = settled.state
    elif settled.state == "accepted" and not spoiled:
        state = "accepted"
    else:
        good = [r for r in in_turn(readings) if r["seen"] in GOOD_CI]
        state = "invalid" if good else "unread"
        if good and not spoiled:
            because = not_counted(good[-1])
    mendable = all(cause in ("lot-unknown", "lot-without-date") for cause in causes)
    return Indicator(state, spoiled, settled, case.stands(ci.get("lost")), because, mendable)
