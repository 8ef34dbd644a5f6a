"""Defects that make a good indicator or vial not count, each named by the cause that a finding then gives (section 4a).

A defect changes dictionaries of a record that is being built. How a moment is written there is the target's
own, so that the random records (changes.py) and the systematic ones (boundaries.py) share them.
"""

from chemical import LONGEST_SHELF_LIFE, without_date
from moments import MINUTE
from scenario import day_text

METHODS = ("steam", "ethylene-oxide", "hydrogen-peroxide", "dry-heat")


class Target:
    """A chemical indicator or vial with one good reading, and a product and lot that nothing else uses.

    place: outside, inside, pcd, sheet, or vial; start_day: the facility day of its cycle's start; end: of its cycle;
    read: when it was read. Moments are milliseconds; write makes a time of one, act(ms) a standing act, choose
    picks one of several. Of a vial also: begun and final (incubation start and readout), its control, and the
    incubators of the record, of which its own is the first.
    """

    def __init__(self, place, thing, product, lot, start_day, end, read, write, act, choose,
                 begun=None, final=None, control=None, incubators=None):
        self.place, self.thing, self.product, self.lot = place, thing, product, lot
        self.start_day, self.end, self.read = start_day, end, read
        self.write, self.act, self.choose = write, act, choose
        self.begun, self.final, self.control, self.incubators = begun, final, control, incubators
        self.unactivated = False

    @property
    def reading(self):
        return self.thing["readings"][-1]

    def read_at(self, ms):
        self.read = ms
        self.reading["happenedAt"] = self.write(ms)
        self.reading.pop("recordedAt", None)


def spoil(target, defects, names):
    """Give a target the named defects of one of the tables below, in the table's order."""
    for name, defect in defects.items():
        if name in names:
            defect(target)


def product_unknown(t):
    t.thing["product"] = "prod-none"


def chemical_unfit(t):
    for field in ("type", "readWithinMinutes", "leastMinutes", "mostMinutes", "leastCelsius", "mostCelsius",
                  "dryingForbidden"):
        t.product.pop(field, None)
    t.product.update(kind="biological", response="growth", species="other", releaseMinutes=60)


def biological_unfit(t):
    for field in ("species", "releaseMinutes", "lastMinutes", "latestMinutes", "startWithinMinutes",
                  "needsActivation", "hasProcessIndicator", "control", "implantIndicatorTypes"):
        t.product.pop(field, None)
    t.product.update(kind="chemical", response="colour", type=1)


def lot_unknown(t):
    t.thing["lot"] = "pl-none"


def lot_without_date(t):
    if t.choose((True, False)):
        t.lot.pop("expires", None)
    else:                           # farther ahead than a shelf life can be: as not stated
        t.lot["expires"] = day_text(t.start_day + LONGEST_SHELF_LIFE + 1)


def lot_expired(t):
    if not without_date(t.lot, t.start_day):        # a lot that has lost its date has none to pass
        t.lot["expires"] = day_text(t.start_day - 1)


def lot_recalled(t):
    t.lot["recalled"] = True


def method(t):
    t.product["methods"] = [each for each in METHODS if each not in t.product["methods"]][:1]


def cycle_type(t):
    t.product["cycleTypes"] = ["type-none"]


def type_(t):
    if t.product["kind"] == "chemical":
        t.product["type"] = 1 if t.place == "sheet" else 2


def used_elsewhere(t):
    t.thing["alsoUsedIn"] = ["lot-3"]


def unsigned(t):
    how = t.choose(("left-out", "empty", "blanks", "viewer"))
    if how == "left-out":
        t.reading.pop("by", None)
    elif how == "viewer":
        t.reading["role"] = "viewer"
    else:
        t.reading["by"] = "" if how == "empty" else "  "


def times_impossible(t):
    t.reading["recordedAt"] = t.write(t.read - 1)


def other_response(t):
    if t.product["kind"] == "chemical":
        t.product["response"] = "moving-front" if t.product["response"] != "moving-front" else "colour"


def voided(t):
    t.reading["voided"] = t.act(t.read + MINUTE)


def voider(t):
    """Its reader also took the bad answer of another out."""
    if t.product["kind"] == "chemical":
        at = t.read - MINUTE
        void = dict(t.act(at), by=t.reading["by"], role="lead")
        t.thing["readings"].insert(0, dict(t.act(at), by="other-reader", seen="unchanged", voided=void))


def before(end):
    """The last moment that is not from the end on."""
    return end // MINUTE * MINUTE - 1


def read_early(t):
    t.read_at(before(t.end) if t.final is None else t.final - 1)


def chemical_late(t):
    if t.product["kind"] == "chemical":
        t.product["readWithinMinutes"] = 1
    t.read_at(t.end + MINUTE + 1)


def vial_voided(t):
    t.thing["voided"] = dict(t.act(t.final), role="lead")


def species(t):
    if t.product["kind"] == "biological":
        t.product["species"] = "other"


def not_activated(t):
    """Of a vial with an incubation start only: without one it waits (not_begun)."""
    if t.product["kind"] == "biological":
        t.product["needsActivation"] = True
    t.unactivated = True
    at = t.choose((None, None, before(t.end), t.begun // MINUTE * MINUTE + MINUTE))
    if at is None:
        t.thing.pop("activation", None)
    else:
        t.thing["activation"] = t.act(at)


def not_begun(t):
    """Not a defect but what takes some away: a vial that was not put to incubate waits for that."""
    t.thing.pop("incubationStart", None)


def process_indicator(t):
    if t.product["kind"] == "biological":
        t.product["hasProcessIndicator"] = True
    t.thing["processIndicator"] = "unchanged"


def incubated_early(t):
    if not t.unactivated and t.product["kind"] == "biological":     # else its activation would be too late
        t.product["needsActivation"] = False
    t.thing["incubationStart"] = t.write(before(t.end))


def incubated_late(t):
    if t.product["kind"] == "biological":
        t.product["startWithinMinutes"] = 1
        t.thing["incubationStart"] = t.write(max(t.begun, t.end + MINUTE + 1))


def control_dead(t):
    t.control["readings"][-1]["seen"] = "no-growth"


def control_missing(t):
    t.thing["incubator"] = "inc-empty"
    if all(each["id"] != "inc-empty" for each in t.incubators):
        t.incubators.append({"id": "inc-empty"})


def incubator_unknown(t):
    t.thing["incubator"] = t.control["incubator"] = "inc-none"


def readout_implausible(t):
    if t.product["kind"] == "biological":       # hours typed for minutes
        t.product["releaseMinutes"] = t.choose((1, 3, 9))


def vial_late(t):
    if t.product["kind"] == "biological":
        t.product["latestMinutes"] = -(-(t.final - t.begun) // MINUTE)
    t.read_at(t.begun + -(-(t.final - t.begun) // MINUTE) * MINUTE + 1)


def lost(t):
    t.thing["lost"] = t.act(t.final)
    t.thing["readings"] = []


def incubator(t):
    # the last: over before the reading, but the readout begun anew a millisecond after the first
    span = t.choose(((t.begun, t.final), (t.begun, None), (t.final, t.final), (t.begun - MINUTE, t.begun + 1)))
    spans = t.incubators[0].setdefault("outOfRange", [])
    spans.append({"from": t.write(span[0])})
    if span[1] is not None:
        spans[-1]["to"] = t.write(span[1])
    t.read_at(t.final)


# The causes that a vial has only where it was put to incubate.
OF_BEGUN = {"not-activated", "incubated-early", "incubated-late", "control-dead", "control-missing", "read-late"}
_COMMON = {"product-unknown": product_unknown, "lot-unknown": lot_unknown, "lot-without-date": lot_without_date,
           "lot-expired": lot_expired, "lot-recalled": lot_recalled, "method": method, "cycle-type": cycle_type, "used-elsewhere": used_elsewhere}
# A reading's own times come last: what moves the reading would take them away.
CHEMICAL = {**_COMMON, "product-unfit": chemical_unfit, "type": type_, "other-response": other_response,
            "voider": voider, "unsigned": unsigned, "voided": voided, "read-early": read_early, "read-late": chemical_late,
            "times-impossible": times_impossible}
VIAL = {**_COMMON, "voided": vial_voided, "product-unfit": biological_unfit, "species": species,
        "not-activated": not_activated, "process-indicator": process_indicator, "incubated-early": incubated_early,
        "incubated-late": incubated_late, "control-dead": control_dead, "control-missing": control_missing,
        "read-late": vial_late, "lost": lost, "incubator-unknown": incubator_unknown,
        "readout-implausible": readout_implausible}
NEGATIVE = {"unsigned": unsigned, "voided": voided, "incubator": incubator, "read-early": read_early,
            "times-impossible": times_impossible}
