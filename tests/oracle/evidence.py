"""The evidence of one record, made ready: acts, the load and the history as cycles, order (sections 1, 2)."""

from functools import lru_cache

from moments import minute, moment, zone

LEADS = ("lead", "supervisor")
WORKERS = ("operator", "lead", "supervisor")
# blanks away, A to Z as a to z; every other letter stays as it is
_ONE_SPELLING = {ord(blank): None for blank in " \t\n\v\f\r"} | {capital: capital + 32 for capital in range(65, 91)}


@lru_cache(maxsize=1 << 12)
def one_spelling(name):
    """A person's name in the spelling in which persons are compared; empty: nobody."""
    return name.translate(_ONE_SPELLING)


def is_empty(text):
    """Whether a text is left out, or nothing but blanks."""
    return text is None or not one_spelling(text)


@lru_cache(maxsize=1 << 12)
def one_type(name):
    """A cycle type in the spelling in which cycle types are compared: also without hyphens and low lines. None where
    it is left out or nothing is left of it: unknown."""
    return None if name is None else one_spelling(name).replace("-", "").replace("_", "") or None


def person(act):
    """Who did it, in the spelling in which persons are compared; empty: unsigned."""
    return one_spelling(act.get("by", ""))


def happened(act):
    """When it happened."""
    return moment(act["happenedAt"])


def recorded(act):
    """When it was recorded; left out: when it happened."""
    return moment(act.get("recordedAt") or act["happenedAt"])


def role(act):
    """The role held; left out: operator."""
    return act.get("role", "operator")


class Cycle:
    """The load, a test, or a cycle of the history, with corrected times."""

    def __init__(self, case, raw, place):
        self.raw = raw
        self.place = place                      # "load", "history" or "test"
        self.lot = raw.get("lot")
        self.counter = raw.get("counter")
        self.outcome = raw.get("outcome")
        self.kind = raw.get("kind", "load")
        self.offset_unknown = False
        self.start = self._time(case, "start")
        self.end = self._time(case, "end")
        self.order_end = self.start if self.end is None else self.end
        self.start_day = None if self.start is None else case.zone.day(self.start)      # facility day
        if place == "load":
            self.method, self.type = case.method, one_type(case.spec.get("cycleType"))
            self.vials = [vial for pcd in case.pcds for vial in pcd.get("vials", ())]
        else:
            self.method = raw.get("method", "unknown")
            self.type = one_type(raw.get("cycleType"))
            self.vials = raw.get("vials", [])
        self.bi = None                          # filled by biological.cycle_bi
        self.result = None                      # filled by testcycles.judge

    def _time(self, case, name):
        text = self.raw.get(name)
        if text is None:
            return None
        shown = moment(text)
        if self.raw.get("clock", "facility") == "facility":
            return shown
        offset = case.clock_offset(shown)
        if offset is None:
            self.offset_unknown = True
            return shown
        return shown - offset


class Case:
    """One record, one policy, one now: everything the rules look things up in."""

    def __init__(self, record, policy, now):
        self.record, self.policy, self.now = record, policy, now
        self.zone = zone(record["facility"]["timeZone"])
        self.atmosphere = record["facility"].get("atmosphereKPa")
        self.has_sterilizer = "sterilizer" in record
        self.sterilizer = record.get("sterilizer", {})
        self.test_hour = self.sterilizer.get("testHour", "00:00")
        self.has_spec = "specification" in record
        self.spec = record.get("specification", {})
        if isinstance(self.spec, str):
            raise ValueError("stored specifications are not known to the oracle: " + self.spec)
        self.method = self.spec.get("method", "unknown")
        self.air_removal = self.spec.get("airRemoval", "unknown")
        self.immediate = self.spec.get("purpose") == "immediate-use"
        self.products = {p["id"]: p for p in record.get("products", ())}
        self.lots = {(l["product"], l["number"]): l for l in record.get("lots", ())}
        self.packagings = {p["id"]: p for p in record.get("packagings", ())}
        self.controls = record.get("controls", ())
        self.out_of_range = {i["id"]: [(moment(s["from"]), moment(s["to"]) if "to" in s else None)
                                       for s in i.get("outOfRange", ())]
                             for i in record.get("incubators", ())}
        self.offsets = [(moment(o["from"]), o["seconds"] * 1000)
                        for o in self.sterilizer.get("clockOffsets", ())]
        self.raw = record.get("load", {})
        self.pcds = self.raw.get("pcds", [])
        self.items = self.raw.get("items", [])
        self.load = Cycle(self, self.raw, "load")
        self.history = [Cycle(self, raw, "history") for raw in self.sterilizer.get("cycles", ())]
        self.has_implant = any(item.get("implant", "unknown") != "no" for item in self.items)
        self._control_states = {}

    def clock_offset(self, shown):
        """Milliseconds to subtract from a time of the sterilizer's clock, or None: unknown."""
        found = None
        for begins, offset in self.offsets:
            if begins <= shown and (found is None or begins >= found[0]):
                found = (begins, offset)
        return None if found is None else found[1]

    # acts ---------------------------------------------------------------------------------------
    def stands(self, act):
        """Whether an act is there and stands."""
        if act is None or act.get("role", "operator") not in WORKERS or not one_spelling(act.get("by", "")):
            return False
        noted = moment(act.get("recordedAt") or act["happenedAt"])
        return moment(act["happenedAt"]) <= noted <= self.now

    def stands_by_lead(self, act):
        return self.stands(act) and role(act) in LEADS

    def struck(self, reading):
        """Whether a bad answer is voided: by a standing lead, another named person than the named reader, recorded not
        before the reading was."""
        void = reading.get("voided")
        return (void is not None and self.stands_by_lead(void) and person(reading) not in ("", person(void))
                and recorded(void) >= recorded(reading))

    def stands_by_supervisor(self, act):
        return self.stands(act) and role(act) == "supervisor"

    # order --------------------------------------------------------------------------------------
    def before(self, a, b):
        """A's cycle ended before B's began."""
        if a is b:
            return False
        if a.counter is not None and b.counter is not None:
            return a.counter < b.counter
        if a.start is None or b.start is None:      # only the load can lack a start
            return False
        return minute(a.order_end) <= minute(b.start)

    def before_load(self):
        """The cycles of the history before the load, in file order."""
        return [c for c in self.history if self.before(c, self.load)]

    def same_period(self, a, b):
        return (self.zone.period(a.start, self.test_hour)[0]
                == self.zone.period(b.start, self.test_hour)[0])
