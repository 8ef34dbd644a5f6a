"""The item rules, in the order of the table in RULES.md (section 6)."""

from chemical import act_cause, entry_cause, in_turn, read_indicator
from evidence import happened, one_spelling, person, recorded
from findings import Finding
from moments import day_of, from_end_on, minute
from physical import NINE_FIFTHS, fahrenheit


class Item:
    """An item with its indicators read."""

    def __init__(self, case, raw):
        self.raw = raw
        self.packaging = case.packagings.get(raw.get("packaging"))
        self.form = self.packaging["form"] if self.packaging else None
        self.open_tray = case.immediate and self.form == "open-tray"
        self.visible = raw.get("internalVisible", False)
        self.asked = not self.open_tray and not (self.visible and self.form == "pouch")
        self.internals = [read_indicator(case, ci, case.load, "inside") for ci in raw.get("internals", ())]
        self.external = None
        if "external" in raw:
            self.external = read_indicator(case, raw["external"], case.load, "outside")
        p = raw.get("peroxide", {})
        self.peroxide_unsuitable = case.method == "hydrogen-peroxide" and (
            True in (p.get("cellulose"), p.get("liquidOrPowder"), p.get("moist")) or p.get("lumen") == "unlisted")


def is_in(cycle, item):
    """Whether the label of an item stands among those of a cycle of the history, in whatever spelling."""
    own = one_spelling(item.raw["label"])
    return any(one_spelling(label) == own for label in cycle.raw.get("items", ()))


def item_was_inside(case, item):
    start, raw = case.load.start, item.raw
    if start is None:
        return
    answered = confirmed(case, raw)
    others = [c for c in case.history if c.kind == "load" and is_in(c, item)]
    if raw.get("alsoInLots") or others:
        after_all = answered and all(recorded(raw["confirmed"]) >= other.start for other in others)
        yield Finding("was-inside", "item.in-two-loads", "note" if after_all else "waits")
    act = raw.get("recorded")
    if not answered and (not case.stands(act) or minute(recorded(act)) > minute(start)):
        yield Finding("was-inside", "item.recorded-late", "waits")


def confirmed(case, raw):
    """Whether a lead confirmed an item, not before the load's start, who is another person than recorded it."""
    act = raw.get("confirmed")
    return (case.stands_by_lead(act) and recorded(act) >= case.load.start
            and person(act) != person(raw.get("recorded", {})))


def item_external(case, item):
    ci = item.external
    if ci is not None and ci.state == "rejected":
        if not ci.absent:
            yield Finding("external", "item.external-rejected", "fails")
        elif item.asked:
            yield Finding("external", "item.external-absent", "fails")
    elif not item.asked:
        return
    elif ci is None:
        yield Finding("external", "item.external-not-read", "waits")
    elif ci.lost:
        yield Finding("external", "item.external-lost", "fails",
                      because=ci.because if ci.state == "invalid" else None)
    elif ci.state != "accepted":
        key = {"unread": "not-read", "unclear": "unclear", "invalid": "invalid"}[ci.state]
        yield Finding("external", "item.external-" + key, "waits",
                      because=ci.because if ci.state == "invalid" else None)


def check_cause(case, checks):
    """Why none of the checks counts; without an end of the load none does, and all are early."""
    if checks and case.load.end is None:
        return act_cause(case, in_turn(checks)[-1]) or "read-early"
    return entry_cause(case, checks, case.load.end)


def item_package(case, item):
    if item.open_tray:
        return
    rule, raw, end = "package", item.raw, case.load.end
    checks = raw.get("checks", ())
    for field, key in (("dry", "item.wet"), ("intact", "item.torn"), ("sealed", "item.unsealed")):
        if any(c.get(field) is False for c in checks):
            yield Finding(rule, key, "fails")
    newest = None
    for check in checks:
        if from_end_on(happened(check), end) and case.stands(check):
            when = happened(check), recorded(check)
            if newest is None or when >= (happened(newest), recorded(newest)):
                newest = check
    if newest is None:
        if case.stands(raw.get("checkLost")):
            yield Finding(rule, "item.check-lost", "fails")
        else:
            yield Finding(rule, "item.not-checked", "waits", because=check_cause(case, checks))
    else:
        if any(f not in newest for f in ("dry", "intact", "sealed", "cooled", "labelAgrees")):
            yield Finding(rule, "item.not-checked", "waits")
        if newest.get("cooled") is False:
            yield Finding(rule, "item.not-cooled", "waits")
        if newest.get("labelAgrees") is False:
            yield Finding(rule, "item.label-differs", "waits")
    if item.packaging is None or item.form == "open-tray" or (case.method != "unknown"
                                  and case.method not in item.packaging.get("methods", ())):
        yield Finding(rule, "item.packaging-not-stated", "waits")
    if "packagingExpires" in raw and case.load.start is not None:
        if day_of(raw["packagingExpires"]) < case.load.start_day:
            yield Finding(rule, "item.packaging-expired", "waits")


def item_internal(case, item):
    rule = "internal"
    required = case.immediate or item.visible
    for raw, ci in zip(item.raw.get("internals", ()), item.internals):
        place = raw.get("place")
        if ci.state == "rejected":
            yield Finding(rule, "item.internal-absent" if ci.absent else "item.internal-rejected", "fails", place)
        elif ci.lost:
            if required:
                yield Finding(rule, "item.internal-lost", "fails", place)
            else:
                yield Finding(rule, "item.internal-lost-noted", "note", place)
        elif ci.state == "unclear":
            yield Finding(rule, "item.internal-unclear", "waits", place)
        elif ci.state == "accepted":
            continue
        elif case.immediate and item.form == "rigid-container" and not ci.spoiled:
            yield Finding(rule, "item.internal-on-opening", "note", place)
        elif ci.state == "invalid":
            yield Finding(rule, "item.internal-invalid", "waits" if required else "note", place,
                          because=ci.because)
        elif required:
            yield Finding(rule, "item.internal-not-read", "waits", place)
    if required and not item.internals:
        yield Finding(rule, "item.internal-missing", "waits")


def item_cycle_allowed(case, item):
    if not case.has_spec:
        return
    rule, raw = "cycle-allowed", item.raw
    extended = case.spec.get("extended", False)
    devices = raw.get("devices", ())
    if not devices or any(not d.get("allowedCycles") for d in devices):
        mild = (case.method == "steam" and case.spec["purpose"] == "routine" and not extended
                and raw.get("implant") == "no")
        yield Finding(rule, "item.cycle-none-recorded", "note" if mild else "waits")
    for device in devices:
        matches = [match(case, allowed) for allowed in device.get("allowedCycles", ())]
        if not matches or "yes" in matches:
            continue
        if "unknown" in matches:
            yield Finding(rule, "item.cycle-value-missing", "waits", device["name"])
        else:
            yield Finding(rule, "item.cycle-not-allowed", "fails", device["name"], because=matches[0])
    if extended:
        yield Finding(rule, "item.cycle-extended", "note")


def line(wanted, own, test):
    """yes, no, or unknown where a value is missing on either side."""
    if wanted is None or own is None or "unknown" in (wanted, own):
        return "unknown"
    return "yes" if test(wanted, own) else "no"


def named(wanted, own):
    """As line, for free names, where the word unknown is a name like any other."""
    return "unknown" if wanted is None or own is None else ("yes" if wanted == own else "no")


def temperature(values):
    """In degrees Fahrenheit, exact; celsius first."""
    if "celsius" in values:
        return fahrenheit(values["celsius"])
    return values.get("fahrenheit")


def match(case, allowed):
    """yes, unknown, or the first line that says no: an allowed cycle against the program's settings."""
    settings, method = case.spec.get("settings", {}), allowed.get("method", "unknown")
    tolerance = case.policy["device.temperature_tolerance_kelvin"] * NINE_FIFTHS
    heat, gas = method in ("steam", "dry-heat"), method in ("ethylene-oxide", "hydrogen-peroxide")
    exposure = settings.get("exposureMinutes")
    lines = {"method": line(method, case.method, lambda a, b: a == b)}
    if method == "steam":
        lines["air-removal"] = line(allowed.get("airRemoval"), case.air_removal, lambda a, b: a == b)
    hot = temperature(allowed)
    if heat or (gas and hot is not None):
        lines["temperature"] = line(hot, temperature(settings), lambda a, b: abs(a - b) <= tolerance)
    if heat or (gas and "leastMinutes" in allowed):
        lines["exposure-short"] = line(allowed.get("leastMinutes"), exposure, lambda a, b: b >= a)
    if "mostMinutes" in allowed:
        lines["exposure-long"] = line(allowed["mostMinutes"], exposure, lambda a, b: b <= a)
    if "dryingMinutes" in allowed:
        lines["drying"] = line(allowed["dryingMinutes"], settings.get("dryingMinutes"), lambda a, b: b >= a)
    if gas:
        lines["program"] = named(allowed.get("program"), case.spec.get("program"))
        lines["model"] = named(allowed.get("sterilizerModel"), case.sterilizer.get("model"))
    wrong = next((name for name, answer in lines.items() if answer == "no"), None)
    return wrong or ("unknown" if "unknown" in lines.values() else "yes")


def item_implant(case, item):
    if item.raw.get("implant") == "no":
        return
    if case.immediate:
        yield Finding("implant", "item.implant-immediate-use", "waits")
    elif case.implant_findings:
        yield Finding("implant", "item.implant-waits", "waits")


def item_peroxide(case, item):
    if case.method != "hydrogen-peroxide":
        return
    stated = item.raw.get("peroxide", {})
    if item.peroxide_unsuitable:
        yield Finding("peroxide", "item.peroxide-unsuitable", "fails")
    elif any(f not in stated for f in ("cellulose", "liquidOrPowder", "moist", "lumen")):
        yield Finding("peroxide", "item.peroxide-unknown", "waits")


def item_in_test(case, item):
    for cycle in case.history:
        if cycle.kind != "load" and is_in(cycle, item):
            yield Finding("in-test", "item.in-test", "fails", cycle.lot)


ITEM_RULES = (item_was_inside, item_external, item_package, item_internal, item_cycle_allowed, item_implant,
              item_peroxide, item_in_test)
