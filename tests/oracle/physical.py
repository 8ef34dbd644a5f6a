"""Rule `physical`: the readings of the sterilizer's record against the limits of the specification.

Everything is compared in one base unit per quantity that is reached by multiplication alone, so decimal
arithmetic stays exact: degrees Fahrenheit, seconds, kPa absolute.
"""

from decimal import Decimal

from chemical import entry_cause
from evidence import happened, person, recorded
from findings import Finding
from moments import from_end_on

PARAMETERS = ("temperature", "exposure", "pressure", "drying", "concentration", "humidity")
UNITS = {
    "temperature": (("celsius", "Celsius"), ("fahrenheit", "Fahrenheit")),
    "exposure": (("minutes", "Minutes"),),
    "drying": (("minutes", "Minutes"),),
    "pressure": (("kPaAbsolute", "KPaAbsolute"), ("barAbsolute", "BarAbsolute"), ("kPaGauge", "KPaGauge"),
                 ("barGauge", "BarGauge"), ("psiGauge", "PsiGauge")),
    "concentration": (("mgPerL", "MgPerL"),),
    "humidity": (("percent", "Percent"),),
}
SUFFIX = {unit: suffix for units in UNITS.values() for unit, suffix in units}
READING_UNITS = {p: [u for u, _ in units] for p, units in UNITS.items()}
READING_UNITS["exposure"] = READING_UNITS["drying"] = ["minutes", "seconds"]
NINE_FIFTHS, PSI = Decimal("1.8"), Decimal("6.894757")
HALF_KELVIN, FIVE_KELVIN, TEN_KELVIN, THIRTY_KELVIN = Decimal("0.9"), 9, 18, 54         # in degrees Fahrenheit
MOST_APART = {"temperature": HALF_KELVIN, "pressure": 1}        # of one value stated in two units; of pressure in kPa
# Less than any published cycle has: degrees Celsius of temperature, minutes of exposure.
SHORTEST = {"steam": {"temperature": 110, "exposure": 2}, "dry-heat": {"temperature": 110, "exposure": 5},
            "ethylene-oxide": {"temperature": 25, "exposure": 30}, "hydrogen-peroxide": {"exposure": 1}}
# The same of exposure where the program's own setting is below so many degrees Celsius.
SHORTEST_BELOW = {"steam": ((130, 10),), "dry-heat": ((185, 20), (165, 60))}
SHORTEST_DRYING = 1             # minutes, steam, not for immediate use


def fahrenheit(celsius):
    return celsius * NINE_FIFTHS + 32


def base(unit, value, atmosphere):
    """The value in the base unit of its quantity."""
    if unit == "celsius":
        return fahrenheit(value)
    if unit == "minutes":
        return value * 60
    if unit in ("kPaGauge", "barGauge", "psiGauge"):
        return value * {"kPaGauge": 1, "barGauge": 100, "psiGauge": PSI}[unit] + atmosphere
    if unit == "barAbsolute":
        return value * 100
    return value


def is_gauge(unit):
    return unit.endswith("Gauge")


def judged_by(parameter, unit, limit, side):
    """(unit, value) of the limit by which a reading in `unit` is judged: its own unit's, else the first stated."""
    bound = limit.get(side + SUFFIX.get(unit, ""))
    if bound is not None:
        return unit, bound
    for limit_unit, suffix in UNITS[parameter]:
        if side + suffix in limit:
            return limit_unit, limit[side + suffix]
    return None, None


def compare(case, parameter, unit, value, limit, side):
    """-1, 0, 1 (the reading against that limit), "atmosphere", or None where no such limit is stated."""
    limit_unit, bound = judged_by(parameter, unit, limit, side)
    if bound is None:
        return None
    atmosphere = case.atmosphere
    if is_gauge(limit_unit) == is_gauge(unit):
        atmosphere = 0                          # cancels out
    elif atmosphere is None:
        return "atmosphere"
    a, b = base(unit, value, atmosphere), base(limit_unit, bound, atmosphere)
    return (a > b) - (a < b)


def milliseconds(reading):
    """The value of a reading of exposure or drying, exact."""
    return reading["minutes"] * 60_000 if "minutes" in reading else reading["seconds"] * 1000


def settings_in_base(case):
    """The program's own settings of temperature, exposure and drying, where stated, in their base units."""
    settings, out = case.spec.get("settings", {}), {}
    for unit in ("fahrenheit", "celsius"):      # both: celsius counts
        if unit in settings:
            out["temperature"] = base(unit, settings[unit], None)
    for parameter in ("exposure", "drying"):
        if parameter + "Minutes" in settings:
            out[parameter] = base("minutes", settings[parameter + "Minutes"], None)
    return out


def stated_in_base(parameter, values, side, atmosphere=None):
    """[(gauge or not, value in the base unit)] of one limit or setting in every unit in which it is stated; gauge without
    the atmosphere's pressure: in kPa gauge."""
    return [(is_gauge(unit), base(unit, values[name], atmosphere or 0))
            for unit, suffix in UNITS[parameter] for name in (side + suffix if side else unit,) if name in values]


def disagrees(parameter, values, side, atmosphere):
    """Whether one limit or setting is stated in two units that differ by more than writing explains."""
    if len(values) < 2:
        return False
    stated = stated_in_base(parameter, values, side, atmosphere)
    return any(abs(a - b) > MOST_APART[parameter] for n, (gauge_a, a) in enumerate(stated) for gauge_b, b in stated[:n]
               if gauge_a == gauge_b or atmosphere is not None)


def settings_missing(case, settings):
    """The parameters of which the program states no setting, though it should."""
    if case.method != "hydrogen-peroxide":
        for parameter in ("temperature", "exposure"):
            if parameter not in settings:
                yield parameter
    if case.method in ("steam", "unknown") and not case.immediate and "drying" not in settings:
        yield "drying"


def shortest_for(case, parameter, shortest, settings):
    """The least that any published cycle has of a parameter, in its base unit; of exposure at the program's warmth."""
    if parameter == "temperature":
        return base("celsius", shortest, None)
    if "temperature" in settings:
        shortest = max([shortest] + [minutes for celsius, minutes in SHORTEST_BELOW.get(case.method, ())
                                     if settings["temperature"] < fahrenheit(celsius)])
    return base("minutes", shortest, None)


def limits_implausible(case, limits, settings):
    """The parameters of which a least limit or the setting is less than any published cycle has."""
    for parameter, shortest in SHORTEST.get(case.method, {}).items():
        bound = shortest_for(case, parameter, shortest, settings)
        least = [value for _, value in stated_in_base(parameter, limits.get(parameter, {}), "least")
                 if parameter != "exposure" or value > 0]
        if any(value < bound for value in least) or parameter in settings and settings[parameter] < bound:
            yield parameter
    if (case.method == "steam" and case.spec["purpose"] == "routine" and "drying" in settings
            and settings["drying"] < base("minutes", SHORTEST_DRYING, None)):
        yield "drying"


def is_milder(case, parameter, limit, setting):
    """Whether a least limit, in any unit, is below the program's own setting (temperature: by more than 0.5 K, of
    ethylene oxide 5 K; of hydrogen peroxide never)."""
    allowed = 0
    if parameter == "temperature":
        if case.method == "hydrogen-peroxide":
            return False
        allowed = FIVE_KELVIN if case.method == "ethylene-oxide" else HALF_KELVIN
    return any(base(unit, limit["least" + suffix], None) < setting - allowed
               for unit, suffix in UNITS[parameter] if "least" + suffix in limit)


def is_implausible(case, reading, limit, setting):
    """Whether a reading of temperature is more than 30 K (steam: 10 K) above the setting or, where there is none, the
    least limit."""
    unit = "celsius" if "celsius" in reading else "fahrenheit"
    if setting is None:
        limit_unit, bound = judged_by("temperature", unit, limit, "least")
        if bound is None:
            return False
        setting = base(limit_unit, bound, None)
    above = TEN_KELVIN if case.method == "steam" else THIRTY_KELVIN
    return base(unit, reading[unit], None) > setting + above


def rule_physical(case):
    if not case.has_spec:
        return
    rule = "physical"
    limits = {limit["parameter"]: limit for limit in case.spec.get("limits", ())}
    settings = settings_in_base(case)
    for parameter in settings_missing(case, settings):
        yield Finding(rule, "physical.settings-missing", "waits", parameter)
    wanted = ["exposure"]
    if case.method != "hydrogen-peroxide":
        wanted.append("temperature")
    if settings.get("drying", 0) > 0:
        wanted.append("drying")
    if case.method == "ethylene-oxide":
        wanted += [parameter for parameter in ("concentration", "humidity") if not not_recorded(case, parameter)]
    missing = set()
    for parameter in wanted:
        least = [value for name, value in limits.get(parameter, {}).items() if name.startswith("least")]
        if not least or parameter == "exposure" and min(least) <= 0:
            missing.add(parameter)
            yield Finding(rule, "physical.limits-missing", "waits", parameter)
    for parameter in limits_implausible(case, limits, settings):
        yield Finding(rule, "physical.limit-implausible", "waits", parameter)
    for parameter in MOST_APART:
        limit = limits.get(parameter, {})
        if (disagrees(parameter, limit, "least", case.atmosphere) or disagrees(parameter, limit, "most", case.atmosphere)
                or parameter == "temperature" and disagrees(parameter, case.spec.get("settings", {}), "", None)):
            yield Finding(rule, "physical.limits-disagree", "waits", parameter)
    for parameter, setting in settings.items():
        if is_milder(case, parameter, limits.get(parameter, {}), setting):
            yield Finding(rule, "physical.limit-milder", "waits", parameter)
    readings = {parameter: [] for parameter in PARAMETERS}
    for reading in case.raw.get("readings", ()):
        readings[reading["parameter"]].append(reading)
    if any(is_implausible(case, reading, limits.get("temperature", {}), settings.get("temperature"))
           for reading in readings["temperature"]):
        yield Finding(rule, "physical.implausible", "waits", "temperature")
    for parameter in PARAMETERS:
        if readings[parameter] and len(limits.get(parameter, ())) <= 1 and parameter not in missing:    # its name alone
            yield Finding(rule, "physical.not-judged", "note", parameter)
    for parameter, limit in limits.items():
        below, above, unknown = [], [], False
        for reading in readings[parameter]:
            unit = next(u for u in READING_UNITS[parameter] if u in reading)
            least = compare(case, parameter, unit, reading[unit], limit, "least")
            most = compare(case, parameter, unit, reading[unit], limit, "most")
            unknown |= "atmosphere" in (least, most)
            if least == -1:
                below.append(reading)
            if most == 1:
                above.append(reading)
        if unknown:
            yield Finding(rule, "physical.atmosphere-unknown", "waits", parameter)
        if below and parameter != "drying":
            yield Finding(rule, "physical.below", "fails", parameter)
        elif below:
            yield review("physical.drying-short", parameter, below)
        if above and case.policy["physical.above_maximum"] == "fails":
            yield Finding(rule, "physical.above", "fails", parameter)
        elif above:
            yield review("physical.above", parameter, above)
        end = case.load.end
        counted = any(case.stands(r) and (end is None or from_end_on(happened(r), end)) for r in readings[parameter])
        if not counted and not not_recorded(case, parameter):
            lost = any(l["parameter"] == parameter and case.stands(l) for l in case.raw.get("lostReadings", ()))
            if lost:
                yield Finding(rule, "physical.lost", "fails", parameter)
            else:
                yield Finding(rule, "physical.missing", "waits", parameter,
                              because=entry_cause(case, readings[parameter], end))


def review(key, parameter, outside):
    return Finding("physical", key, "review", parameter, None, "lead",
                   max(recorded(r) for r in outside), [person(r) for r in outside])


def not_recorded(case, parameter):
    """Ethylene oxide's concentration or humidity, where the sterilizer says that it does not record it."""
    field = {"concentration": "recordsConcentration", "humidity": "recordsHumidity"}.get(parameter)
    return case.method == "ethylene-oxide" and field is not None and case.sterilizer.get(field) is False
