"""Rule `physical`: the readings of the sterilizer's record against the limits of the specification.

Everything is compared in one base unit per quantity that is reached by multiplication alone, so decimal
arithmetic stays exact: degrees Fahrenheit, seconds, kPa absolute.
"""

from decimal import Decimal

from evidence import happened, recorded
from findings import Finding

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
READING_UNITS = {p: [u for u, _ in units] for p, units in UNITS.items()}
READING_UNITS["exposure"] = READING_UNITS["drying"] = ["minutes", "seconds"]
NINE_FIFTHS, PSI = Decimal("1.8"), Decimal("6.894757")


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


def compare(case, parameter, unit, value, limit, side):
    """-1, 0, 1 (the reading against that limit), "atmosphere", or None where no such limit is stated."""
    own = [u for u in UNITS[parameter] if u[0] == unit]
    for limit_unit, suffix in own + list(UNITS[parameter]):
        bound = limit.get(side + suffix)
        if bound is None:
            continue
        atmosphere = case.atmosphere
        if is_gauge(limit_unit) == is_gauge(unit):
            atmosphere = 0                      # cancels out
        elif atmosphere is None:
            return "atmosphere"
        a, b = base(unit, value, atmosphere), base(limit_unit, bound, atmosphere)
        return (a > b) - (a < b)
    return None


def rule_physical(case):
    if not case.has_spec:
        return
    rule = "physical"
    limits = {limit["parameter"]: limit for limit in case.spec.get("limits", ())}
    wanted = ["exposure"]
    if case.method not in ("ethylene-oxide", "hydrogen-peroxide"):
        wanted.append("temperature")
    for parameter in wanted:
        least = [value for name, value in limits.get(parameter, {}).items() if name.startswith("least")]
        if not least or parameter == "exposure" and min(least) <= 0:
            yield Finding(rule, "physical.limits-missing", "waits", parameter)
    readings = {parameter: [] for parameter in PARAMETERS}
    for reading in case.raw.get("readings", ()):
        readings[reading["parameter"]].append(reading)
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
        if not any(case.stands(r) and (end is None or happened(r) >= end) for r in readings[parameter]) and not not_recorded(case, parameter):
            lost = any(l["parameter"] == parameter and case.stands(l) for l in case.raw.get("lostReadings", ()))
            if lost:
                yield Finding(rule, "physical.lost", "fails", parameter)
            else:
                yield Finding(rule, "physical.missing", "waits", parameter)


def review(key, parameter, outside):
    return Finding("physical", key, "review", parameter, None, "lead",
                   max(recorded(r) for r in outside), [r.get("by", "") for r in outside])


def not_recorded(case, parameter):
    """Ethylene oxide's concentration or humidity, where the sterilizer says that it does not record it."""
    field = {"concentration": "recordsConcentration", "humidity": "recordsHumidity"}.get(parameter)
    return case.method == "ethylene-oxide" and field is not None and case.sterilizer.get(field) is False
