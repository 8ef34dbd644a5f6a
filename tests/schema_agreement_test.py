#!/usr/bin/python3
"""Whether the published schema and the program refuse the same evidence.

usage: schema_agreement_test.py LOADWARDEN_CLI SOURCE_DIR [--most N] [--seed N] [--write-seeds DIR]

Takes the worked examples and records that hold every field of the schema, changes them in thousands of
ways, and asks both sides: python-jsonschema with resources/schema/evidence.schema.json plus the checks
that the schema's description names, and `loadwarden-cli decide --json -`. Any difference is an error.
"""
import argparse
import copy
import datetime
import json
import random
import re
import subprocess
import sys
import unicodedata
import zoneinfo
from decimal import Decimal
from pathlib import Path

import jsonschema


# --- the schema's side ------------------------------------------------------------------------------

def is_number(_, value):
    return isinstance(value, (int, Decimal)) and not isinstance(value, bool)


def is_integer(_, value):
    return is_number(_, value) and value == int(value)


def check_pattern(_, pattern, value, __):
    """As ECMA 262 reads it: `$` is the end of the text only, digits are ASCII."""
    if isinstance(value, str) and not re.search(re.sub(r"\$$", r"\\Z", pattern), value, re.ASCII):
        yield jsonschema.ValidationError(f"{value!r} does not match")


def validator_for(schema):
    base = jsonschema.Draft202012Validator
    types = base.TYPE_CHECKER.redefine("number", is_number).redefine("integer", is_integer)
    return jsonschema.validators.extend(base, {"pattern": check_pattern}, type_checker=types)(schema)


TIMES = {"decideAt", "happenedAt", "recordedAt", "start", "end", "from", "to", "incubationStart",
         "newestSeen", "expires", "packagingExpires"}


def decimals_by_name(schema):
    """Name of a field -> how many decimals its description allows."""
    found = {}

    def walk(node):
        if isinstance(node, dict):
            for name, rule in node.get("properties", {}).items():
                said = re.search(r"At most (\d) decimals", str(rule)) if isinstance(rule, dict) else None
                if said and rule.get("type") == "number":
                    found[name] = int(said[1])
            for value in node.values():
                walk(value)
        elif isinstance(node, list):
            for value in node:
                walk(value)

    walk(schema)
    return found


def free_texts(schema):
    """Names of the fields that hold whole texts, which are the long ones; every other text is a name or a word."""
    found = set()

    def walk(node):
        if isinstance(node, dict):
            found.update(name for name, rule in node.get("properties", {}).items()
                         if isinstance(rule, dict) and rule.get("maxLength", 0) > 64)
        for value in node.values() if isinstance(node, dict) else node if isinstance(node, list) else ():
            walk(value)

    walk(schema)
    return found


def is_unseen(character):
    """By Unicode's general category, which for the characters tried here comes to the same as its properties."""
    return character != " " and unicodedata.category(character) in ("Cc", "Cf", "Zs", "Zl", "Zp")


class Extra:
    """What the description of the schema names besides. The record is valid by the schema itself."""

    def __init__(self, schema, specifications):
        self.decimals = decimals_by_name(schema)
        self.free = free_texts(schema)
        self.specifications = specifications

    def refuses(self, record):
        return (self.bad_value(record) or self.bad_zone(record) or self.bad_offset(record, self.zone(record))
                or self.names_twice(record)
                or self.bad_span(record) or self.bad_specification(record) or ("load" in record and "test" in record))

    def bad_value(self, node):
        if isinstance(node, list):
            return any(self.bad_name(value) or self.bad_value(value) for value in node)
        if not isinstance(node, dict):
            return False
        for name, value in node.items():
            if name in self.free:
                if any(unicodedata.category(c) == "Cc" and c not in "\t\n" for c in value):
                    return True
            elif self.bad_name(value):
                return True
            if name in TIMES and isinstance(value, str):
                try:
                    datetime.date.fromisoformat(value[:10])
                except ValueError:
                    return True
            if name in self.decimals and is_number(None, value):
                scaled = Decimal(value) * 10 ** self.decimals[name]
                if scaled != int(scaled):
                    return True
            if self.bad_value(value):
                return True
        return False

    @staticmethod
    def bad_name(value):
        return isinstance(value, str) and any(map(is_unseen, value))

    @staticmethod
    def bad_span(record):
        moment = datetime.datetime.fromisoformat
        spans = [span for incubator in record.get("incubators", ()) for span in incubator.get("outOfRange", ())]
        return any("to" in span and moment(span["to"]) < moment(span["from"]) for span in spans)

    @staticmethod
    def bad_zone(record):
        name = record["facility"]["timeZone"]
        try:
            zoneinfo.ZoneInfo(name)
        except Exception:  # many kinds, by name
            return True
        return name != "UTC" and "/" not in name

    @staticmethod
    def zone(record):
        return zoneinfo.ZoneInfo(record["facility"]["timeZone"])

    def bad_offset(self, node, zone):
        if isinstance(node, list):
            return any(self.bad_offset(value, zone) for value in node)
        if not isinstance(node, dict):
            return False
        for name, value in node.items():
            if name in TIMES and isinstance(value, str) and "T" in value and not value.endswith("Z"):
                moment = datetime.datetime.fromisoformat(value)
                if moment.utcoffset() != moment.astimezone(zone).utcoffset():
                    return True
        return any(self.bad_offset(value, zone) for value in node.values())

    @staticmethod
    def names_twice(record):
        def twice(names):
            names = list(names)
            return len(names) != len(set(names))

        load = record.get("load", {})
        cycles = record.get("sterilizer", {}).get("cycles", [])
        holders = load.get("pcds", []) + cycles + [record.get("test", {})]
        vials = [vial["id"] for holder in holders for vial in holder.get("vials", [])]
        history = [cycle["lot"] for cycle in cycles]
        return (twice(p["id"] for p in record.get("products", []))
                or twice(p["id"] for p in record.get("packagings", []))
                or twice(p["id"] for p in record.get("incubators", []))
                or twice(p["id"] for p in load.get("pcds", []))
                or twice("".join(item["label"].split()).lower() for item in load.get("items", []))
                or twice((lot["product"], lot["number"]) for lot in record.get("lots", []))
                or twice(history) or load.get("lot") in history
                or twice(vials + [control["id"] for control in record.get("controls", [])]))

    def bad_specification(self, record):
        specification = record.get("specification")
        if specification is None:
            return False
        if isinstance(specification, str):
            if specification not in self.specifications:
                return True
            purpose = self.specifications[specification]
            limits = []
        else:
            purpose = specification["purpose"]
            limits = specification.get("limits", [])
        parameters = [limit["parameter"] for limit in limits]
        if len(parameters) != len(set(parameters)):
            return True
        for limit in limits:
            for name, value in limit.items():
                if name.startswith("least") and value > limit.get("most" + name[5:], value):
                    return True
        if "test" in record:
            return purpose != record["test"]["kind"]
        return purpose not in ("routine", "immediate-use")


def stored_specifications(source):
    stored = {}
    for path in (source / "resources/specifications").glob("*.toml"):
        text = path.read_text(encoding="utf-8")
        value = {key: re.search(rf'^{key} = "?([^"\n]+)"?$', text, re.M)[1]
                 for key in ("id", "revision", "purpose")}
        stored[f"{value['id']}@{value['revision']}"] = value["purpose"]
    return stored


# --- records to begin with --------------------------------------------------------------------------

class Whole:
    """Writes records that hold every field of the schema, each with a value of its own."""

    def __init__(self, schema):
        self.schema = schema
        self.count = 0

    def resolve(self, rule):
        while "$ref" in rule:
            node = self.schema
            for step in rule["$ref"].split("/")[1:]:
                node = node[step]
            rule = node
        return rule

    def value(self, name, rule, leave_out=()):
        rule = self.resolve(rule)
        self.count += 1
        if "oneOf" in rule and "type" not in rule:
            rule = self.resolve(rule["oneOf"][0])
        if "enum" in rule:
            return rule["enum"][self.count % len(rule["enum"])]
        if "const" in rule:
            return rule["const"]
        kind = rule["type"]
        if kind == "object":
            return self.object(rule, leave_out)
        if kind == "array":
            return [self.value(name, rule["items"])]
        if kind == "boolean":
            return self.count % 2 == 0
        if kind == "integer":
            return rule["minimum"] + self.count % min(100, rule["maximum"] - rule["minimum"] + 1)
        if kind == "number":
            return Decimal(rule["minimum"]) + Decimal(self.count % 37) + Decimal("0.25")
        if name == "timeZone":
            return "America/Chicago"
        if name == "testHour":
            return "05:30"
        if "pattern" in rule:
            date = f"2031-03-{self.count % 28 + 1:02}"
            return date if rule["pattern"].endswith("[01])$") else date + "T07:14:30.5Z"
        return f"{name}-{self.count}"

    def object(self, rule, leave_out=()):
        properties = rule["properties"]
        if "parameter" in properties and "celsius" in properties:
            return self.reading(properties)
        if "parameter" in properties and "leastCelsius" in properties:
            return self.limit(properties, "temperature")
        if "kind" in properties and "species" in properties:
            return self.product(rule, "chemical")
        return {name: self.value(name, sub) for name, sub in properties.items() if name not in leave_out}

    def reading(self, properties, parameter="temperature", unit="celsius"):
        units = [name for name, rule in properties.items() if self.resolve(rule).get("type") == "number"]
        reading = {name: self.value(name, rule) for name, rule in properties.items() if name not in units}
        return dict(reading, parameter=parameter, **{unit: self.value(unit, properties[unit])})

    def limit(self, properties, parameter):
        for rule in self.schema["$defs"]["limit"]["allOf"]:
            if rule["if"]["properties"]["parameter"]["const"] == parameter:
                names = rule["then"]["propertyNames"]["enum"]
        limit = {name: self.value(name, properties[name]) for name in names}
        for name in names:
            if name.startswith("least"):
                limit[name] = self.resolve(properties[name])["minimum"]
        return dict(limit, parameter=parameter)

    def product(self, rule, kind):
        condition = rule["allOf"][0]["then" if kind == "biological" else "else"]["properties"]
        allowed = [name for name in rule["properties"] if condition.get(name) is not False]
        product = {name: self.value(name, rule["properties"][name]) for name in allowed}
        return dict(product, kind=kind, response="growth" if kind == "biological" else "sheet")

    def records(self):
        definitions = self.schema["$defs"]
        load = self.value("", self.schema, ("test",))
        load["specification"]["purpose"] = "routine"
        limits = definitions["limit"]["properties"]
        load["specification"]["limits"] = [self.limit(limits, word) for word in limits["parameter"]["enum"]]
        load["products"].append(self.product(definitions["product"], "biological"))
        readings = definitions["reading"]["properties"]
        for rule in definitions["reading"]["allOf"]:
            for choice in rule["then"]["oneOf"]:
                load["load"]["readings"].append(self.reading(
                    readings, rule["if"]["properties"]["parameter"]["const"], choice["required"][0]))
        test = self.value("", self.schema, ("load", "specification", "sterilizer"))
        test["test"]["kind"] = "qualification"
        return [load, test]


# --- changes ----------------------------------------------------------------------------------------

class Pairs(list):
    """An object as (name, value) pairs, so that a field can stand twice."""


def text_of(value):
    if isinstance(value, (dict, Pairs)):
        pairs = value.items() if isinstance(value, dict) else value
        return "{" + ",".join(f"{json.dumps(name)}:{text_of(v)}" for name, v in pairs) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(text_of, value)) + "]"
    if isinstance(value, Decimal):
        return str(value)
    return json.dumps(value, ensure_ascii=False)


def places(node, at=()):
    """Every place in a record but its root."""
    if isinstance(node, dict):
        for name, value in node.items():
            yield at + (name,)
            yield from places(value, at + (name,))
    elif isinstance(node, list):
        for index, value in enumerate(node):
            yield at + (index,)
            yield from places(value, at + (index,))


def holder_of(record, place):
    for step in place[:-1]:
        record = record[step]
    return record


STRANGE = [None, True, False, 0, 1, -1, Decimal("1.5"), Decimal("1E2"), Decimal("1.0"), "", "x", [], {}, [None],
           "2031-03-04T07:14Z", "2031-03-04", "2031-02-29", "2031-04-31T07:14Z", {"happenedAt": "2031-03-04T07:14Z"}]

TEXTS = ["", "x" * 64, "x" * 65, "\u00e9" * 64, "\U0001f600" * 64, "\U0001f600" * 65, "a\nb", "\"\\/", "y" * 2000,
         "y" * 2001, "00:00", "23:59", "24:00", "5:00", "UTC", "Europe/Paris", "Nowhere/Land", "EST5EDT",
         "\u2028", "a\tb", "a\rb", "a\x1bb", "a\x7fb", "a\x85b", "a\xa0b", "a\xadb", "a\u1680b", "\u2003", "p\u200b1",
         "p1\u200f", "a\u202eb", "\u202f", "a\u2060", "\u3000", "\ufeffx", "a\u00b7b", "\u0e01\u0e34", "\u2010",
         "\u2027", "\u2030", "\u205e", "\u2070", "a  b",
         "leak", "bowie-dick", "warm-up", "load", "routine", "immediate-use", "steam-prevacuum-132-wrapped@1",
         "steam-prevacuum-132-wrapped@9", "A@1", "a@0", "unknown", "steam", "growth", "chemical", "biological",
         "2031-03-04T24:00Z", "2031-03-04T23:59:59.999+14:59", "2031-03-04T07:14:00.1234Z", "2031-3-4T07:14Z",
         "2099-12-31T23:59Z", "2100-01-01T00:00Z", "1999-12-31T23:59Z", "2000-02-29T00:00Z", "2100-02-29T00:00Z",
         "2031-03-04T07:14+15:00", "2031-03-04T07:14", "2031-03-04t07:14Z", "2032-02-29", "2031-13-01",
         "2031-03-04T07:14Z\n", "steam-prevacuum-132-wrapped@1\n", "2031-03-04T07:14\u0661Z"]


def numbers(value):
    value = Decimal(value)
    yield from (value + step for step in map(Decimal, ("0.001", "-0.001", "0.01", "0.0001", "0.000", "1", "-1")))
    yield from map(Decimal, ("-90", "-90.01", "500", "500.01", "-130", "932", "932.01", "100000", "100000.001", "0",
                             "-0.001", "6000000", "6000000.001", "10000", "10001", "-1000", "-1000.001", "100",
                             "100.001", "6", "7", "1000000000", "1000000001", "10000000", "10000001", "1000000",
                             "1000001", "-1000000", "-1000001", "50", "49.999", "110", "110.001",
                             "9223372036854775807", "9223372036854775808", "1E30", "1E-30", "132.10000"))


def changes_at(record, place, words):
    """Changes at one place: (what, function that makes it in a copy)."""
    value = holder_of(record, place)[place[-1]]
    in_object = isinstance(place[-1], str)

    def put(new):
        def change(copied):
            holder_of(copied, place)[place[-1]] = copy.deepcopy(new)
        return change

    def remove(copied):
        del holder_of(copied, place)[place[-1]]

    def rename(copied):
        holder = holder_of(copied, place)
        holder[place[-1] + "s"] = holder.pop(place[-1])

    def append(new):
        def change(copied):
            holder_of(copied, place)[place[-1]].append(copy.deepcopy(new))
        return change

    def add(name, new):
        def change(copied):
            holder_of(copied, place)[place[-1]][name] = copy.deepcopy(new)
        return change

    yield "remove", remove
    if in_object:
        yield "rename", rename
    for new in STRANGE:
        yield f"put {new!r}", put(new)
    if isinstance(value, str):
        for new in TEXTS + words:
            yield f"put {new!r}", put(new)
    if is_number(None, value):
        for new in numbers(value):
            yield f"put {new}", put(new)
    if isinstance(value, list):
        for new in value[:2] + STRANGE[:6]:
            yield "append", append(new)
    if isinstance(value, dict):
        yield "add unknown", add("unknown", 1)
        for name, new in FIELDS.items():
            if name not in value:
                yield f"add {name}", add(name, new)


FIELDS = {"by": "p1", "role": "lead", "happenedAt": "2031-03-04T07:14Z", "recordedAt": "2031-03-04T07:14Z",
          "celsius": 132, "fahrenheit": 270, "minutes": 4, "seconds": 240, "psiGauge": 28, "kPaAbsolute": 300,
          "percent": 50, "leastCelsius": 132, "mostCelsius": 136, "leastMinutes": 4, "mostMinutes": 3,
          "species": "other", "releaseMinutes": 60, "type": 5, "readWithinMinutes": 5, "dryingForbidden": False,
          "control": "day", "implantIndicatorTypes": [5], "cycleTypes": [], "place": "x", "comment": "x",
          "load": {}, "test": {"kind": "leak", "lot": "T1", "start": "2031-03-04T07:14Z"},
          "specification": "steam-prevacuum-132-wrapped@1", "vials": [{"id": "V1"}], "lot": "L1", "id": "X1"}


def made_records(bases, words, most, rng):
    """(what, record or its text, whether a field stands twice), at most `most`."""
    possible = []
    for number, base in enumerate(bases):
        for place in places(base):
            possible.append((number, place, None))
            possible.extend((number, place, index) for index in range(
                sum(1 for _ in changes_at(base, place, words))))
    rng.shuffle(possible)
    for number, place, index in possible[:most]:
        base = bases[number]
        name = f"{number}:/" + "/".join(map(str, place))
        if index is None:
            if isinstance(place[-1], str):
                yield f"{name} twice", base, text_of(twice_text(base, place)), True
            continue
        what, change = list(changes_at(base, place, words))[index]
        record = copy.deepcopy(base)
        change(record)
        if rng.random() < 0.15:  # and a second one, wherever it falls
            others = list(places(record))
            if others:
                other = rng.choice(others)
                more, change = rng.choice(list(changes_at(record, other, words)))
                change(record)
                what += f" and /{'/'.join(map(str, other))} {more}"
        yield f"{name} {what}", record, text_of(record), False


def twice_text(base, place):
    def build(node, depth):
        if depth == len(place) - 1:
            return Pairs(list(node.items()) + [(place[-1], node[place[-1]])])
        step = place[depth]
        if isinstance(node, list):
            return [build(v, depth + 1) if i == step else v for i, v in enumerate(node)]
        return {name: build(v, depth + 1) if name == step else v for name, v in node.items()}

    return build(base, 0)


# --- the program's side -----------------------------------------------------------------------------

def refused_by_program(cli, texts):
    """Number of record (from 1) -> what the program said against it."""
    run = subprocess.run([cli, "decide", "--json", "--planned", "-"], input="\n".join(texts).encode(),
                         stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    refused = {}
    for line in run.stderr.decode().rstrip("\n").split("\n") if run.stderr else []:
        said = re.match(r".*?: record (\d+): (.*)", line)
        if not said:
            raise SystemExit(f"the program said on stderr: {line}")
        refused[int(said[1])] = said[2]
    if run.returncode not in (0, 1, 2) or (run.returncode == 2) != bool(refused):
        raise SystemExit(f"the program ended with {run.returncode}; {len(refused)} records were refused")
    answers = [json.loads(line) for line in run.stdout.splitlines()]
    if len(answers) != len(texts) - len(refused):
        raise SystemExit(f"{len(texts)} records, {len(refused)} refused, {len(answers)} answered")
    return refused, answers


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("cli")
    parser.add_argument("source", type=Path)
    parser.add_argument("--most", type=int, default=4000)
    parser.add_argument("--seed", type=int, default=20310304)
    parser.add_argument("--write-seeds", type=Path, help="write the unchanged records there and stop")
    options = parser.parse_args()

    folder = options.source / "resources/schema"
    schema = json.loads((folder / "evidence.schema.json").read_text(encoding="utf-8"))
    validator = validator_for(schema)
    extra = Extra(schema, stored_specifications(options.source))
    examples = {path.name: json.loads(path.read_text(encoding="utf-8"), parse_float=Decimal)
                for path in sorted((folder / "examples").glob("*.json"))}
    bases = list(examples.values()) + Whole(schema).records()
    if options.write_seeds:
        names = list(examples) + ["every-field-of-a-load.json", "every-field-of-a-test.json"]
        for name, base in zip(names, bases):
            (options.write_seeds / name).write_text(text_of(base), encoding="utf-8")
        return
    words = sorted(set(re.findall(r'"([a-z]+(?:-[a-z]+)+)"', json.dumps(schema))))

    # The unchanged records are good on both sides, and the examples come out as their README says.
    refused, answers = refused_by_program(options.cli, [text_of(base) for base in bases])
    if refused:
        raise SystemExit(f"the program refuses an unchanged record: {refused}")
    for number, base in enumerate(bases):
        errors = [error.message for error in validator.iter_errors(base)]
        if errors or extra.refuses(base):
            raise SystemExit(f"unchanged record {number} is refused here: {errors}")
    expected = {"bowie-dick-test.json": "passed", "implant-load-waiting.json": "quarantine",
                "little-said.json": "quarantine", "drying-reviewed.json": "release",
                "hydrogen-peroxide-load.json": "release",
                "steam-prevacuum-load.json": "release"}
    for name, answer in zip(examples, answers):
        if expected.get(name) not in (answer.get("verdict"), answer.get("test")):
            raise SystemExit(f"{name} comes out as {answer}")

    rng = random.Random(options.seed)
    made = list(made_records(bases, words, options.most, rng))
    differences = 0
    accepted = 0
    for begin in range(0, len(made), 500):
        part = made[begin:begin + 500]
        refused, _ = refused_by_program(options.cli, [text for _, _, text, _ in part])
        for number, (what, record, text, twice) in enumerate(part, 1):
            bad = twice or not validator.is_valid(record) or extra.refuses(record)
            accepted += not bad
            if bad != (number in refused):
                differences += 1
                reason = refused.get(number) or [error.message[:200] for error in validator.iter_errors(record)]
                side = "program" if number in refused else "schema"
                if differences <= 20:
                    print(f"only the {side} refuses: {what}: {reason}")
    print(f"{len(made)} records, {accepted} of them accepted by both sides, {differences} differences")
    if differences or accepted < len(made) // 20 or accepted > len(made) * 19 // 20:
        sys.exit(1)


if __name__ == "__main__":
    main()
