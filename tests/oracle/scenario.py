"""Coherent, releasable records: the ground on which changes.py works.

While a record is being built, its moments are T (milliseconds); `emit` writes them as schema times.
All names are neutral tags.
"""

from datetime import date

from moments import HOUR, MINUTE, zone

DAY = 24 * HOUR
ZONES = ["America/Chicago", "America/New_York", "America/Phoenix", "America/St_Johns", "America/Santiago",
         "America/Havana", "Europe/Berlin", "Europe/London", "Africa/Johannesburg", "Asia/Kolkata",
         "Asia/Kathmandu", "Asia/Beirut", "Australia/Adelaide", "Australia/Lord_Howe", "Australia/Sydney",
         "Pacific/Auckland", "Pacific/Chatham", "Pacific/Honolulu", "America/Anchorage", "UTC"]
FIRST = date(2030, 1, 1).toordinal()
EPOCH = date(1970, 1, 1).toordinal()
OPERATORS, LEADS, SUPERVISORS = ("op-1", "op-2", "op-3"), ("lead-1", "lead-2"), ("sup-1", "sup-2")
PEOPLE = {"operator": OPERATORS, "lead": LEADS, "supervisor": SUPERVISORS, "viewer": ("view-1",)}
GOOD = {"moving-front": "front-in-accept-zone", "colour": "end-colour-reached", "sheet": "uniform-complete"}
BAD = {"moving-front": ("front-on-boundary", "front-short-of-boundary"),
       "colour": ("end-colour-partly", "unchanged"), "sheet": ("uniform-incomplete", "not-uniform", "unchanged")}
SPECIES = {"steam": "geobacillus-stearothermophilus", "hydrogen-peroxide": "geobacillus-stearothermophilus",
           "ethylene-oxide": "bacillus-atrophaeus", "dry-heat": "bacillus-atrophaeus"}


# Programs of each method: degrees Celsius, minutes of exposure, minutes of drying.
PROGRAMS = {"steam": ((132, 4, 20), (132, 4, 20), (132, 4, 20), (135, 3, 15), (121, 20, 20), (130, 4, 1)),
            "ethylene-oxide": ((54.5, 60, 0), (37.5, 180, 0)), "hydrogen-peroxide": ((50, 28, 0), (50, 1, 0)),
            "dry-heat": ((160, 120, 0), (160, 120, 0), (165, 60, 0), (170, 60, 0), (185, 6, 0))}
# Of a load beyond its exposure and drying, the least and the most minutes.
BESIDES = {"steam": (5, 46), "ethylene-oxide": (90, 300), "hydrogen-peroxide": (1, 32), "dry-heat": (1, 60)}


class T(int):
    """A moment in a record that is still being built."""
    __slots__ = ()


def find_transitions():
    """{zone name: moments at which its clocks change, 2030 to 2033}."""
    found = {}
    for name in ZONES:
        info = zone(name)
        changes = []
        for day in range(FIRST, FIRST + 4 * 365):
            low, high = (day - EPOCH) * 86400, (day - EPOCH + 1) * 86400
            if info._offset(low) != info._offset(high):
                start = info._offset(low)
                while high - low > 1:
                    middle = (low + high) // 2
                    if info._offset(middle) == start:
                        low = middle
                    else:
                        high = middle
                changes.append(high * 1000)
        found[name] = changes
    return found


TRANSITIONS = find_transitions()
_DATES = {}


def written_time(ms, rng, info):
    """A schema time in one of its spellings: in UTC, or with the offset of the facility's zone at that moment."""
    kind = rng.random()
    local = kind >= 0.55
    offset = info.offset_minutes(ms) if local else 0
    days, rest = divmod(ms + offset * MINUTE, DAY)
    text = _DATES.get(days)
    if text is None:
        text = _DATES[days] = date.fromordinal(EPOCH + days).isoformat()
    minutes, ms_part = divmod(rest, MINUTE)
    text += "T%02d:%02d" % divmod(minutes, 60)
    if ms_part:
        seconds, fraction = divmod(ms_part, 1000)
        text += ":%02d" % seconds
        if fraction:
            text += (".%03d" % fraction).rstrip("0")
    elif kind < 0.2:
        text += ":00"
    if not local:
        return text + "Z"
    return text + ("-" if offset < 0 else "+") + "%02d:%02d" % divmod(abs(offset), 60)


def emit(value, rng, info):
    """Write every T of a record as a time, in place."""
    if type(value) is list:
        for inner in value:
            if type(inner) is dict or type(inner) is list:
                emit(inner, rng, info)
        return
    for key, inner in value.items():
        kind = type(inner)
        if kind is T:
            value[key] = written_time(inner, rng, info)
        elif kind is dict or kind is list:
            emit(inner, rng, info)


def day_text(day):
    return date.fromordinal(day).isoformat()


def spelled(name, pick):
    """Another spelling of a person's name; seldom with a letter beside A to Z, which makes another person of it."""
    return pick((name.upper, name.upper, name.title, lambda: " " + name, lambda: name + "  ",
                 lambda: name.replace("-", " - "), lambda: "  " + name.upper(), lambda: name + "\u00e4"))()


def typed(cycle_type, pick):
    """A cycle type in another spelling; seldom one of which nothing is left, or with a character that stays."""
    return pick((cycle_type.upper, lambda: cycle_type.replace("-", " "), lambda: cycle_type.replace("-", "_"),
                 lambda: cycle_type.replace("-", ""), lambda: " " + cycle_type.title(), lambda: cycle_type + "-",
                 lambda: cycle_type.replace("-", "."), lambda: " -_", lambda: "-"))() or "-"       # never empty, also typed twice


class Scenario:
    """One record under construction, with handles that the changes use."""

    def __init__(self, rng, policy):
        self.rng, self.policy = rng, policy
        self.edges = []                 # moments at which something turns, for `now`
        self.want_review = False
        self.serial = 0
        self.zone_name = rng.choice(ZONES)
        self.zone = zone(self.zone_name)
        self.pick_method()
        self.test_hour = rng.choice(("00:00", "00:00", "02:00", "02:30", "06:00", "23:30", "%02d:%02d" % (
            rng.randrange(24), rng.randrange(60))))
        self.pick_times()
        self.build()

    # small tools ----------------------------------------------------------------------------------
    def chance(self, p):
        return self.rng.random() < p

    def pick(self, values):
        return values[int(self.rng.random() * len(values))]

    def minutes(self, low, high):
        return (low + int(self.rng.random() * (high - low + 1))) * MINUTE

    def name(self, prefix):
        self.serial += 1
        return "%s-%d" % (prefix, self.serial)

    def act(self, at, role="operator", recorded=None, by=None, **more):
        """A standing act (if its time has come)."""
        out = {"by": by or self.pick(PEOPLE[role]), "happenedAt": T(at)}
        if role != "operator" or self.chance(0.5):
            out["role"] = role
        if recorded is not None:
            out["recordedAt"] = T(recorded)
        elif self.chance(0.5):
            late = self.pick((0, 0, 1, MINUTE, 7 * MINUTE))
            out["recordedAt"] = T(at + late)
        out.update(more)
        return out

    # the frame ------------------------------------------------------------------------------------
    def pick_method(self):
        kind = self.rng.choices(("prevacuum", "gravity", "steam-flush-pressure-pulse", "ethylene-oxide",
                                 "hydrogen-peroxide", "dry-heat"), (32, 13, 10, 15, 15, 15))[0]
        steam = kind in ("prevacuum", "gravity", "steam-flush-pressure-pulse")
        self.method = "steam" if steam else kind
        self.air_removal = kind if steam else None
        self.immediate = self.chance(0.25 if steam else 0.03)
        self.implant = self.chance(0.35 if not self.immediate else 0.15)
        self.celsius, self.exposure, self.drying = self.pick(PROGRAMS[self.method])
        if self.immediate and self.chance(0.3):         # what is used at once need not be dry
            self.drying = 0
        self.type = self.pick(("type-a", "type-a", "type-b"))

    def pick_times(self):
        rng = self.rng
        changes = TRANSITIONS[self.zone_name]
        hour, minute = int(self.test_hour[:2]), int(self.test_hour[3:])
        day = FIRST + rng.randrange(4 * 365)
        if changes and self.chance(0.35):
            middle = self.pick(changes)
            day = self.zone.day(middle)
            start = middle + self.minutes(-8 * 60, 8 * 60)
        else:
            start = self.zone.absolute(day) + self.minutes(0, 24 * 60 - 1)
        if self.chance(0.12):
            edge = self.zone.absolute(day, hour, minute) if self.chance(0.6) else self.zone.absolute(day)
            start = edge + self.pick((-MINUTE, -1, 0, 0, 1, MINUTE, 30 * MINUTE, -30 * MINUTE))
        elif self.chance(0.1):
            start += rng.randrange(MINUTE)
        self.start = start
        # at least exposure and drying of build_readings
        self.end = start + self.minutes(*(self.exposure + self.drying + more for more in BESIDES[self.method]))
        if self.chance(0.3):            # not a whole minute: what is typed to the minute is from the end on
            self.end += rng.randrange(MINUTE)
        self.offset = self.pick((0, 0, 20, -75, 3600, -3600, 130))

    def shown(self, ms):
        """A moment as the sterilizer's clock shows it."""
        return T(ms + self.offset * 1000)

    # products and indicators ----------------------------------------------------------------------
    def product(self, kind, **fields):
        """A new product with a lot; returns (product, lot number)."""
        out = {"id": self.name("prod"), "kind": kind, "methods": [self.method]}
        if self.chance(0.2):
            other = self.pick(("steam", "ethylene-oxide", "hydrogen-peroxide", "dry-heat"))
            if other != self.method:
                out["methods"].append(other)
        out.update(fields)
        self.products.append(out)
        number = self.name("pl")
        expires = self.zone.day(self.start) + self.pick((0, 1, 30, 400))
        if kind == "biological":        # controls are compared by their incubation start
            expires += 10
        self.lots.append({"product": out["id"], "number": number, "expires": day_text(expires)})
        return out, number

    def chemical(self, kind):
        """A chemical product that fits a place, shared within the record."""
        if kind not in self.shared:
            policy, steam = self.policy, self.method == "steam"
            if kind == "outside":
                type_ = 1
            elif kind == "sheet":
                type_ = 2
            elif kind == "inside":
                type_ = self.pick(policy["internal.types_" + ("steam" if steam else "other")])
            else:
                types = list(policy["pcd.types_" + ("steam" if steam else "other")])
                type_ = 5 if 5 in types and self.chance(0.7) else self.pick(types)
            fields = {"type": type_, "response": "sheet" if kind == "sheet" else
                      ("colour" if type_ == 1 else self.pick(("moving-front", "colour")))}
            if self.chance(0.3):
                fields["readWithinMinutes"] = self.pick((60, 240, 1440, 100000))
            if self.chance(0.2) and kind != "sheet":
                fields["cycleTypes"] = ["type-a", "type-b"] if self.chance(0.5) else [self.type]
            if kind == "sheet":
                fields["methods"] = ["steam"]
                for least, most in ((("leastMinutes", 3.5), ("mostMinutes", 4)),
                                    (("leastCelsius", 134), ("mostCelsius", 137))):
                    fields.update(self.pick(((least, most), (least, most), (least,), (most,))))
                if self.chance(0.3):
                    fields["dryingForbidden"] = self.chance(0.8)
            self.shared[kind] = self.product("chemical", **fields)
        return self.shared[kind]

    def ci(self, kind, at, own=None):
        """An accepted chemical indicator, read soon after `at`."""
        product, lot = own or self.chemical(kind)
        late = min(product.get("readWithinMinutes", 10**9), self.pick((5, 20, 50)))
        readings = [self.act(at + late * MINUTE, seen=GOOD[product["response"]])]
        return {"product": product["id"], "lot": lot, "readings": readings}

    def steam_or_peroxide(self):
        """Whether a readout may be short (see biological.SHORTEST_READOUT)."""
        return self.method in ("steam", "hydrogen-peroxide")

    def biological(self):
        if "bi" not in self.shared:
            release = self.pick((24, 60, 180, 1440, 2880) if self.steam_or_peroxide() else (120, 180, 240, 1440, 2880))
            fields = {"response": "growth", "species": SPECIES[self.method], "releaseMinutes": release}
            if self.chance(0.4):
                fields["lastMinutes"] = release + self.pick((0, 60, 1440, -1, -20))
            if self.chance(0.3):
                fields["latestMinutes"] = max(release, fields.get("lastMinutes", 0)) + self.pick((60, 1440, 10000))
            if self.chance(0.3):
                fields["startWithinMinutes"] = self.pick((120, 480, 1440))
            for flag in ("needsActivation", "hasProcessIndicator"):
                if self.chance(0.4):
                    fields[flag] = self.chance(0.8)
            if self.chance(0.5):
                fields["control"] = self.pick(("day", "lot", "load"))
            if self.chance(0.25):
                fields["implantIndicatorTypes"] = self.pick(([4], [5], [4, 5], [1, 6]))
            if self.chance(0.2):
                fields["cycleTypes"] = [self.type]
            self.shared["bi"] = self.product("biological", **fields)
        return self.shared["bi"]

    def readout(self, product):
        minutes = product["releaseMinutes"]
        if self.policy["bi.readout"] == "last":
            minutes = max(minutes, product.get("lastMinutes", minutes))
        return minutes * MINUTE

    def vial(self, end, own=None):
        """A vial with a good negative reading."""
        product, lot = own or self.biological()
        begun = end + self.minutes(5, 60)
        out = {"id": self.name("vial"), "product": product["id"], "lot": lot, "incubator": "inc-1",
               "incubationStart": T(begun)}
        if product.get("needsActivation") or self.chance(0.1):
            out["activation"] = self.act(begun - 2 * MINUTE)
        if product.get("hasProcessIndicator"):
            out["processIndicator"] = "changed"
        final = begun + self.readout(product)
        self.edges += [final, self.zone.next_midnight(begun), begun + self.policy["control.window_hours"] * HOUR]
        out["readings"] = [self.act(final + self.pick((0, 0, MINUTE, 45 * MINUTE)), seen="no-growth")]
        return out

    def control(self, vial, lot, own=None):
        """A grown control that belongs to a vial."""
        product, number = own or self.biological()
        begun = vial["incubationStart"] + self.pick((0, 0, MINUTE, -MINUTE))
        out = {"id": self.name("ctl"), "product": product["id"], "lot": number, "incubator": vial["incubator"],
               "incubationStart": T(begun), "forLoad": lot}
        if product.get("needsActivation"):
            out["activation"] = self.act(begun - MINUTE)
        if product.get("hasProcessIndicator"):
            out["processIndicator"] = "unchanged"
        out["readings"] = [self.act(begun + self.readout(product) + self.pick((0, 30 * MINUTE)), seen="growth")]
        self.controls.append(out)
        return out

    # the record -----------------------------------------------------------------------------------
    def build(self):
        self.products, self.lots, self.packagings, self.controls, self.shared = [], [], [], [], {}
        self.incubators = [{"id": "inc-1"}]
        self.cycles, self.service, self.incidents = [], [], []
        facility = {"timeZone": self.zone_name}
        if self.chance(0.8):
            facility["atmosphereKPa"] = self.pick((101.325, 100, 83.4))
        self.sterilizer = {"id": "ster-1", "model": "model-a", "service": self.service, "cycles": self.cycles,
                           "incidents": self.incidents,
                           "clockOffsets": [{"from": T(self.start - 40 * DAY), "seconds": self.offset}]}
        if self.test_hour != "00:00" or self.chance(0.3):
            self.sterilizer["testHour"] = self.test_hour
        if self.chance(0.3):
            self.sterilizer["clockOffsets"].insert(0, {"from": T(self.start - 90 * DAY), "seconds": 41})
        self.service.append(self.act(self.start - self.minutes(60 * 24, 60 * 24 * 20), "supervisor",
                                     state="in-service"))
        self.specification = self.build_specification()
        self.load = {"lot": "lot-7", "operator": self.pick(OPERATORS)}
        self.build_history()
        self.build_load()
        self.record = {"evidenceVersion": 1, "facility": facility, "sterilizer": self.sterilizer,
                       "specification": self.specification, "products": self.products, "lots": self.lots,
                       "packagings": self.packagings, "controls": self.controls, "incubators": self.incubators,
                       "load": self.load}

    def build_specification(self):
        rng = self.rng
        out = {"id": "spec-1", "revision": 1, "method": self.method, "program": "prog-1", "cycleType": self.type,
               "purpose": "immediate-use" if self.immediate else "routine"}
        if self.air_removal:
            out["airRemoval"] = self.air_removal
        celsius, exposure, drying = self.celsius, self.exposure, self.drying
        out["settings"] = {"exposureMinutes": exposure}
        if self.chance(0.7):
            out["settings"]["celsius"] = celsius
        if "celsius" not in out["settings"] or self.chance(0.2):
            out["settings"]["fahrenheit"] = round(celsius * 1.8 + 32, 2)
        if drying or self.chance(0.3):
            out["settings"]["dryingMinutes"] = drying
        limits = [{"parameter": "exposure", "leastMinutes": exposure}]
        if self.method != "hydrogen-peroxide" or self.chance(0.3):
            limit = {"parameter": "temperature"}
            if self.chance(0.7):
                limit["leastCelsius"] = celsius
                if self.chance(0.5):
                    limit["mostCelsius"] = celsius + 3
            else:
                limit["leastFahrenheit"] = round(celsius * 1.8 + 32, 2)
                if self.chance(0.5):
                    limit["mostFahrenheit"] = round((celsius + 3) * 1.8 + 32, 2)
            limits.append(limit)
        if drying:                  # a program that dries needs a limit for it
            limits.append({"parameter": "drying", "leastMinutes": drying})
        if self.method in ("steam", "hydrogen-peroxide") and self.chance(0.3):
            unit, low, high = self.pick((("KPaAbsolute", 280, 310), ("BarAbsolute", 2.8, 3.1),
                                         ("KPaGauge", 180, 210), ("BarGauge", 1.8, 2.1), ("PsiGauge", 26, 30)))
            limits.append({"parameter": "pressure", "least" + unit: low, "most" + unit: high})
        if self.method == "ethylene-oxide":
            for field, limit in (("recordsConcentration",
                                  {"parameter": "concentration", "leastMgPerL": 450, "mostMgPerL": 1200}),
                                 ("recordsHumidity", {"parameter": "humidity", "leastPercent": 40, "mostPercent": 80})):
                recorded = self.chance(0.75)
                if recorded or self.chance(0.5):
                    limits.append(limit)
                if not recorded or self.chance(0.3):
                    self.sterilizer[field] = recorded
        rng.shuffle(limits)
        out["limits"] = limits
        return out

    def hist(self, kind, start, length, **fields):
        """A cycle of the history."""
        out = {"kind": kind, "lot": self.name("h"), "start": T(start), "end": T(start + length),
               "outcome": "ended"}
        if kind != "warm-up" or self.chance(0.3):
            out["method"] = self.method
        out.update(fields)
        self.cycles.append(out)
        return out

    def bowie_dick(self, start):
        """A passed Bowie-Dick."""
        length = self.minutes(8, 30)
        product, _ = self.chemical("sheet")
        sheet = self.ci("sheet", start + length)
        out = self.hist("bowie-dick", start, length, method="steam", sheet=sheet, chamberEmpty=True,
                        exposure={"minutes": 3.5, "celsius": 134.5}, dryingRun=False)
        if not product.get("dryingForbidden") and self.chance(0.5):
            del out["dryingRun"]
        return out

    def needs_bowie_dick(self):
        return self.method == "steam" and (self.air_removal == "prevacuum"
                                           or self.air_removal in self.policy["air_removal.also_for"])

    def build_history(self):
        number, _ = self.zone.period(self.start, self.test_hour)
        hour, minute = int(self.test_hour[:2]), int(self.test_hour[3:])
        self.period_begin = self.zone.absolute(number, hour, minute)
        self.period_end = self.zone.absolute(number + 1, hour, minute)
        self.edges.append(self.period_end)
        self.bd = None
        if self.needs_bowie_dick() or (self.method == "steam" and self.chance(0.15)):
            room = self.start - self.period_begin
            begin = self.period_begin + self.pick((0, MINUTE, room // 4 // MINUTE * MINUTE))
            if room > 60 * MINUTE and self.chance(0.6):
                self.hist("warm-up", begin, 5 * MINUTE)
                begin += 10 * MINUTE
            self.bd = self.bowie_dick(begin)
            if self.bd["end"] > self.start:             # little room: end in the load's first minute
                self.bd["end"] = T(max(self.bd["start"], self.start))
        for _ in range(self.pick((0, 0, 0, 1, 1, 2))):  # earlier or later loads
            gap = self.minutes(20, 3 * 24 * 60)
            length = self.minutes(15, 60)
            start = self.start - gap - length if self.chance(0.7) else self.end + gap
            out = self.hist("load", start, length)
            if self.chance(0.7):
                out["cycleType"] = self.pick((self.type, "type-a", "type-b"))
            if self.chance(0.4):
                self.give_vial(out)

    def give_vial(self, cycle):
        """A negative vial with a grown control in a cycle of the history."""
        if self.method != cycle.get("method"):
            cycle["method"] = self.method
        product, _ = self.biological()
        if "cycleTypes" in product and "cycleType" not in cycle:
            cycle["cycleType"] = product["cycleTypes"][0]
        vial = self.vial(cycle["end"])
        cycle.setdefault("vials", []).append(vial)
        self.control(vial, cycle["lot"])
        return vial

    def build_load(self):
        load, end = self.load, self.end
        if self.chance(0.3):
            load["clock"] = "sterilizer"
            load["start"], load["end"] = self.shown(self.start), self.shown(end)
        else:
            load["start"], load["end"] = T(self.start), T(end)
            if self.chance(0.3):
                load["clock"] = "facility"
        load["outcome"] = "ended"
        self.printed = end + self.minutes(0, 5)
        load["printout"] = self.act(self.printed, recorded=self.printed, program="prog-1", sterilizer="ster-1",
                                    start=self.shown(self.start), end=self.shown(end))
        load["readings"] = self.build_readings()
        seen = max([self.printed] + [r.get("recordedAt", r["happenedAt"]) for r in load["readings"]])
        self.verified = seen + self.pick((0, 0, MINUTE, 15 * MINUTE))
        load["verifications"] = [self.act(self.verified)]
        self.build_pcds()
        load["items"] = [self.item(n) for n in range(1, 1 + self.pick((1, 1, 1, 2, 2, 3, 3, 4, 6)))]
        if self.implant:
            chosen = self.pick(load["items"])
            chosen["implant"] = self.pick(("yes", "yes", "unknown"))
            if self.chance(0.15):
                del chosen["implant"]
        if self.method == "ethylene-oxide":
            self.build_aeration()
        if self.immediate:
            load["immediateUse"] = {"reason": "why it is needed at once", "caseReference": "case-1",
                                    "forStorage": False}

    def build_readings(self):
        out = []
        for limit in self.specification["limits"]:
            parameter = limit["parameter"]
            values = {"temperature": (("celsius", self.celsius + self.pick((0, 0.5, 2.99, 3))),
                                      ("fahrenheit", round((self.celsius + self.pick((0, 1, 3))) * 1.8 + 32, 2))),
                      "exposure": (("minutes", self.exposure + self.pick((0, 0.001, 1))),
                                   ("seconds", self.exposure * 60 + self.pick((0, 1)))),
                      "drying": (("minutes", self.drying + self.pick((0, 5))), ("seconds", self.drying * 60)),
                      "concentration": (("mgPerL", self.pick((450, 600.5, 1200))),),
                      "humidity": (("percent", self.pick((40, 55.125, 80))),)}.get(parameter)
            if parameter == "pressure":
                unit = next(u for u in ("kPaAbsolute", "barAbsolute", "kPaGauge", "barGauge", "psiGauge")
                            if "least" + u[0].upper() + u[1:] in limit)
                low = limit["least" + unit[0].upper() + unit[1:]]
                values = ((unit, low + self.pick((0, 1 if low > 10 else 0.1))),)
            unit, value = self.pick(values)
            if isinstance(value, float):
                value = round(value, 3)
            at = self.end + self.minutes(0, 4)
            out.append(self.act(at, recorded=at, parameter=parameter, **{unit: value}))
            if self.chance(0.1):
                out.append(self.act(at, recorded=at, parameter=parameter, **{unit: value}))
        if self.chance(0.05):       # of what nothing is asked
            parameter, unit, value = self.pick((("pressure", "kPaAbsolute", 290), ("humidity", "percent", 60)))
            if all(limit["parameter"] != parameter for limit in self.specification["limits"]):
                out.append(self.act(self.end, recorded=self.end, parameter=parameter, **{unit: value}))
        return out

    def build_pcds(self):
        load = self.load
        load["pcds"] = []
        with_bi = (self.method == "ethylene-oxide" or self.implant
                   or self.policy["bi." + self.method.replace("-", "_")] == "every-load" or self.chance(0.35))
        if not with_bi and not self.chance(0.4) and self.policy.get(
                "pcd." + self.method.replace("-", "_")) != "required":
            return
        pcd = {"id": "pcd-1"}
        if with_bi:
            pcd["vials"] = [self.vial(self.end)]
            self.control(pcd["vials"][0], "lot-7")
            if self.chance(0.2):
                pcd["vials"].append(self.vial(self.end))
        own = None
        if self.implant:
            types = [5]
            if self.method != "steam":
                types = self.biological()[0].get("implantIndicatorTypes", [5])
            own = self.product("chemical", type=self.pick(types), response="moving-front")
        pcd["indicators"] = [self.ci("pcd", self.end, own)]
        if self.chance(0.15):
            pcd["indicators"].append(self.ci("pcd", self.end))
        load["pcds"].append(pcd)
        if self.chance(0.15):
            load["pcds"].append({"id": "pcd-2", "indicators": [self.ci("pcd", self.end)]})

    def packaging(self, form):
        for packaging in self.packagings:
            if packaging["form"] == form and self.chance(0.7):
                return packaging
        out = {"id": self.name("pack"), "form": form, "methods": [self.method]}
        if self.method == "ethylene-oxide":
            out["aerationMinutes"] = self.pick((0, 480, 600))
        self.packagings.append(out)
        return out

    def item(self, number):
        form = self.pick(("wrap", "pouch", "rigid-container", "open-tray" if self.immediate else "wrap"))
        at = self.end + self.minutes(5, 40)
        out = {"label": "item-%d" % number, "implant": "no", "packaging": self.packaging(form)["id"],
               "recorded": self.act(self.start - self.minutes(5, 120), recorded=self.start - self.pick(
                   (0, 1, MINUTE, 4 * MINUTE)))}
        if out["recorded"]["recordedAt"] < out["recorded"]["happenedAt"]:
            out["recorded"]["recordedAt"] = out["recorded"]["happenedAt"]
        if form == "pouch" and self.chance(0.3):
            out["internalVisible"] = True
        if not out.get("internalVisible") and form != "open-tray":
            out["external"] = self.ci("outside", self.end)
        if form != "open-tray" or self.chance(0.2):
            out["checks"] = [self.act(at, cooled=True, dry=True, intact=True, sealed=True, labelAgrees=True)]
        if self.immediate or out.get("internalVisible") or self.chance(0.4):
            out["internals"] = [dict(self.ci("inside", self.end), place="place-1")]
            if self.chance(0.2):
                out["internals"].append(dict(self.ci("inside", self.end), place="place-2"))
        if self.chance(0.25):
            out["packagingExpires"] = day_text(self.zone.day(self.start) + self.pick((0, 1, 90)))
        out["devices"] = [self.device() for _ in range(self.pick((1, 1, 2)))]
        if self.method == "hydrogen-peroxide":
            out["peroxide"] = {"cellulose": False, "liquidOrPowder": False, "moist": False,
                               "lumen": self.pick(("none", "listed"))}
        return out

    def allowed(self):
        """An allowed cycle that the program's settings match."""
        out = {"method": self.method}
        if self.method == "steam":
            out["airRemoval"] = self.air_removal
        if self.method in ("steam", "dry-heat"):
            if self.chance(0.7):
                out["celsius"] = self.celsius
            else:
                out["fahrenheit"] = round(self.celsius * 1.8 + 32, 2)
            out["leastMinutes"] = self.exposure
        else:
            out.update(program="prog-1", sterilizerModel="model-a")
            if self.chance(0.2):
                out["celsius"] = self.celsius
            if self.chance(0.2):
                out["leastMinutes"] = self.exposure
        if self.chance(0.2):
            out["mostMinutes"] = self.exposure + self.pick((0, 2))
        if self.drying and self.chance(0.4):
            out["dryingMinutes"] = max(0, self.drying - self.pick((0, 5)))
        return out

    def device(self):
        out = {"name": self.name("dev"), "allowedCycles": [self.allowed()]}
        if self.chance(0.15):
            out["allowedCycles"].insert(0, dict(self.allowed(), leastMinutes=self.exposure + 1))
        if self.method == "ethylene-oxide":
            out["aerationMinutes"] = self.pick((0, 480, 720))
        return out

    def build_aeration(self):
        self.sterilizer["aeration"] = {"minutes": self.pick((480, 720)), "celsius": self.pick((50, 55.5))}
        stated = [self.sterilizer["aeration"]["minutes"]]
        for packaging in self.packagings:
            stated.append(packaging["aerationMinutes"])
        for item in self.load["items"]:
            stated += [d["aerationMinutes"] for d in item["devices"]]
        self.aeration_minutes = max(stated)
        begin = self.end + self.pick((0, 0, 5 * MINUTE))
        done = begin + self.aeration_minutes * MINUTE + self.pick((0, 0, 30 * MINUTE))
        self.edges.append(begin + self.aeration_minutes * MINUTE)
        self.load["aerationRuns"] = [{"start": self.act(begin), "end": self.act(done),
                                      "celsius": self.sterilizer["aeration"]["celsius"] + self.pick((0, 1))}]

    # the last steps before the late changes ---------------------------------------------------------
    def give_counters(self):
        """Counters in the order of the starts, on all cycles, on some, or on none."""
        how = self.rng.random()
        counter = self.rng.randrange(100, 900)
        cycles = sorted(self.cycles, key=lambda c: c["start"])
        load_done = False
        for cycle in cycles + [None]:
            if not load_done and (cycle is None or cycle["start"] > self.start):
                load_done = True
                if how < 0.95:
                    self.load["counter"] = counter
                    if "printout" in self.load:
                        self.load["printout"]["counter"] = counter
                counter += 1
            if cycle is not None:
                if how < 0.4 or (how < 0.6 and self.chance(0.6)):
                    cycle["counter"] = counter
                counter += 1
        if self.chance(0.15):
            for cycle in self.cycles:
                if self.chance(0.5) and cycle["start"] > self.start - 30 * DAY:
                    cycle["clock"] = "sterilizer"
                    cycle["start"] = self.shown(cycle["start"])
                    if "end" in cycle:
                        cycle["end"] = self.shown(cycle["end"])

    def latest(self):
        """The latest recordedAt or happenedAt of the record."""
        newest, stack = self.end, [self.record]
        while stack:
            value = stack.pop()
            if type(value) is dict:
                if "happenedAt" in value:
                    at = value.get("recordedAt", value["happenedAt"])
                    if at > newest:
                        newest = at
                value = value.values()
            for inner in value:
                if type(inner) is dict or type(inner) is list:
                    stack.append(inner)
        return newest
