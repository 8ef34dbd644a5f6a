"""Tests: warm-up, Bowie-Dick, leak, qualification (section 7)."""

from biological import cycle_bi, cycle_vials
from chemical import read_indicator
from evidence import happened, person, recorded
from findings import Finding
from moments import MINUTE


class Result:
    """Result of a test: its reasons, and since when (and by whom) its failures are known."""

    def __init__(self):
        self.failed, self.void, self.pending, self.notes = [], [], [], []
        self.because = {}            # the cause of a key (section 4a)
        self.own = []                # (since, authors) of each failure but a positive BI, whose vials are holds of their own
        self.sheet = None            # the Indicator of a Bowie-Dick's sheet

    def fail(self, key, since, authors=()):
        self.failed.append(key)
        self.own.append((since, {a for a in authors if a}))

    @property
    def state(self):
        for name in ("failed", "void", "pending"):
            if getattr(self, name):
                return name
        return "passed"

    def findings(self):
        for keys, outcome in ((self.failed, "fails"), (self.void, "waits"), (self.pending, "waits"),
                              (self.notes, "note")):
            for key in keys:
                yield Finding("test", key, outcome, because=self.because.get(key))


def judge(case, test):
    """The result of a test cycle, judged once."""
    if test.result is None:
        result = test.result = Result()
        if test.raw.get("items"):
            result.void.append("test.items-inside")
        if test.outcome is None:
            result.pending.append("test.not-ended")
        if None not in (test.start, test.end) and test.start > test.end:
            result.pending.append("test.times")
        {"warm-up": warm_up, "bowie-dick": bowie_dick, "leak": leak,
         "qualification": qualification}[test.kind](case, test, result)
    return test.result


def warm_up(case, test, result):
    if test.outcome == "aborted":
        result.fail("test.aborted", test.order_end)


def bowie_dick(case, test, result):
    raw = test.raw
    sheet = raw.get("sheet")
    read = read_indicator(case, sheet, test, "sheet") if sheet is not None else None
    result.sheet = read
    product = case.products.get(sheet.get("product"), {}) if sheet is not None else {}
    if read and read.state == "rejected":
        result.fail("test.sheet-failed", read.since, [read.author])
    if read and read.lost:
        result.fail("test.sheet-lost", recorded(sheet["lost"]), [person(sheet["lost"])])
    if test.outcome == "aborted":
        result.void.append("test.aborted")
    if test.method not in ("unknown", "steam"):
        result.void.append("test.not-steam")
    if read and read.spoiled:
        result.void.append("test.sheet-spoiled")
        result.because["test.sheet-spoiled"] = read.spoiled
    if raw.get("chamberEmpty") is False:
        result.void.append("test.chamber-not-empty")
    exposure = raw.get("exposure", {})
    outside = unknown = False
    for value, least, most in (("minutes", "leastMinutes", "mostMinutes"),
                               ("celsius", "leastCelsius", "mostCelsius")):
        if value in exposure:
            outside |= least in product and exposure[value] < product[least]
            outside |= most in product and exposure[value] > product[most]
        else:
            unknown |= least in product or most in product
    if outside:
        result.void.append("test.outside-directions")
    if product.get("dryingForbidden") and raw.get("dryingRun") is True:
        result.void.append("test.drying-run")
    if read is None or read.state in ("unread", "invalid"):
        result.pending.append("test.not-read")
    elif read.state == "unclear":
        result.pending.append("test.unclear")
    if product and not all(any(bound in product for bound in bounds)
                           for bounds in (("leastMinutes", "mostMinutes"), ("leastCelsius", "mostCelsius"))):
        result.pending.append("test.directions-missing")
    if unknown or "chamberEmpty" not in raw or (product.get("dryingForbidden") and "dryingRun" not in raw):
        result.pending.append("test.exposure-unknown")
    if read and test.end is not None:
        last = test.end + case.policy["bowie_dick.read_within_minutes"] * MINUTE
        if any(happened(reading) > last for _, reading in read.settled.counted):
            result.notes.append("test.read-late")
    if not any(c.kind == "warm-up" and c.outcome == "ended" and case.before(c, test)
               and case.same_period(c, test) for c in case.history):
        result.notes.append("test.no-warm-up")


def leak(case, test, result):
    reading = test.raw.get("leak", {})
    settled, minutes, rise = (reading.get(k) for k in ("settledMinutes", "minutes", "riseMbar"))
    if rise is not None and minutes is not None and minutes > 0:
        if rise > case.policy["leak.most_mbar_per_minute"] * minutes:
            result.fail("test.leak-too-high", recorded(reading), [person(reading)])
    if rise is not None and rise < 0:
        result.pending.append("test.leak-implausible")
    if test.outcome == "aborted":
        result.void.append("test.aborted")
    if ((settled is not None and settled < case.policy["leak.settle_minutes"])
            or (minutes is not None and minutes < case.policy["leak.test_minutes"])):
        result.void.append("test.leak-too-short")
    if (not reading or None in (settled, minutes, rise) or minutes <= 0 or not case.stands(reading)):
        result.pending.append("test.not-read")


def qualification(case, test, result):
    raw = test.raw
    physical = raw.get("physical")
    if test.outcome == "aborted":
        result.fail("test.aborted", test.order_end)
    if physical is not None and physical["good"] is False:
        result.fail("test.physical-failed", recorded(physical), [person(physical)])
    indicators = [read_indicator(case, ci, test, "pcd", test.vials) for ci in raw.get("indicators", ())]
    for ci in indicators:
        if ci.state == "rejected":
            result.fail("test.indicator-rejected", ci.since, [ci.author])
    bi = cycle_bi(case, test)
    if bi == "positive":
        result.failed.append("test.bi-positive")
    if bi == "void":
        result.void.append("test.bi-void")
        result.because["test.bi-void"] = cycle_vials(case, test)[0].because
    if not case.stands(physical):
        result.pending.append("test.physical-missing")
    if not indicators or any(ci.state != "accepted" for ci in indicators):
        result.pending.append("test.indicator-pending")
    if bi in ("none", "pending"):
        result.pending.append("test.bi-pending")
