#!/usr/bin/python3
"""Checks the blind cases as files: applies each case to its base and validates the result.

No rule of the decision is evaluated here. Bases and results are validated against evidence.schema.json, so
that no change can be misspelt and do nothing. Every `time` of the schema exists and is written in UTC with `Z`
or with the offset that the facility's zone has at that moment. Exit 1 when anything is wrong.
"""
import copy
import json
import sys
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import jsonschema

HERE = Path(__file__).resolve().parent
VERDICTS = ("release", "quarantine", "reprocess")
RESULTS = ("passed", "failed", "void", "pending")
FIELDS = {"id", "practice", "source", "base", "policy", "at", "set", "remove", "expect"}
LOAD_EXPECT = {"verdict", "items", "keys", "onlyKeys", "nextChangeAt"}
TEST_EXPECT = {"test", "keys"}


def tokens(pointer):
    if not pointer.startswith("/"):
        raise ValueError(f"not a pointer: {pointer!r}")
    return [t.replace("~1", "/").replace("~0", "~") for t in pointer[1:].split("/")]


def index(token):
    """Digits only: Python would count a negative index from the end."""
    if not token.isdecimal():
        raise ValueError(f"not an index: {token!r}")
    return int(token)


def parent_of(doc, pointer):
    *path, last = tokens(pointer)
    for t in path:
        doc = doc[index(t)] if isinstance(doc, list) else doc[t]
    if not isinstance(doc, (dict, list)):
        raise ValueError(f"parent of {pointer} is no container")
    return doc, last


def set_at(doc, pointer, value):
    where, last = parent_of(doc, pointer)
    if isinstance(where, dict):
        where[last] = value
    elif last == "-" or index(last) == len(where):
        where.append(value)
    else:
        where[index(last)] = value


def remove_at(doc, pointer):
    where, last = parent_of(doc, pointer)
    del where[index(last) if isinstance(where, list) else last]


def apply(base, case):
    doc = copy.deepcopy(base)
    for pointer, value in case.get("set", {}).items():
        set_at(doc, pointer, copy.deepcopy(value))
    for pointer in case.get("remove", []):
        remove_at(doc, pointer)
    if "at" in case:
        doc["decideAt"] = case["at"]
    return doc


def no_twice(pairs):
    d = {}
    for k, v in pairs:
        if k in d:
            raise ValueError(f"field named twice: {k}")
        d[k] = v
    return d


def read(path):
    return json.loads(path.read_text(encoding="utf-8"), object_pairs_hook=no_twice)


def agrees_with_zone(text, zone):
    """Whether a time exists and is in UTC with `Z` or has the offset of the zone at that moment."""
    moment = datetime.fromisoformat(text)
    return text.endswith("Z") or moment.utcoffset() == moment.astimezone(zone).utcoffset()


def zone_errors(schema):
    """What finds the errors of a document, by the schema and its facility's zone."""
    schema = copy.deepcopy(schema)
    schema["$defs"]["time"]["format"] = "time in the zone"
    zone = None
    checker = jsonschema.FormatChecker(formats=())

    @checker.checks("time in the zone", raises=ValueError)
    def check(text):
        return zone is None or not isinstance(text, str) or agrees_with_zone(text, zone)

    validator = jsonschema.Draft202012Validator(schema, format_checker=checker)

    def errors(doc):
        nonlocal zone
        name = doc.get("facility", {}).get("timeZone")
        zone = ZoneInfo(name) if name else None
        return validator.iter_errors(doc)

    return errors


def policy_settings():
    """Names of the default policy's settings, section.name, from its table headings."""
    text = (HERE.parents[2] / "resources/policies/us-hospital.toml").read_text(encoding="utf-8")
    return {l.strip()[1:-1] for l in text.splitlines() if l.startswith("[")}


def check_expect(case, doc):
    expect = case["expect"]
    if "load" in doc:
        if set(expect) - LOAD_EXPECT or not {"verdict", "items", "keys"} <= set(expect):
            yield "fields of expect"
        if expect.get("verdict") not in VERDICTS or set(expect.get("items", {}).values()) - set(VERDICTS):
            yield "unknown verdict"
        labels = [i["label"] for i in doc["load"].get("items", [])]
        if sorted(expect.get("items", {})) != sorted(labels):
            yield f"items of expect are not {labels}"
        worst = VERDICTS.index(expect["verdict"])
        if any(VERDICTS.index(v) < worst for v in expect["items"].values()):
            yield "an item is better than its load"
    elif set(expect) - TEST_EXPECT or expect.get("test") not in RESULTS:
        yield "fields of expect"
    if len(set(expect["keys"])) != len(expect["keys"]):
        yield "a key twice"


def main():
    wrong = []
    errors = zone_errors(read(HERE.parents[2] / "resources/schema/evidence.schema.json"))
    settings = policy_settings()
    bases, seen_ids, seen_bodies, count = {}, {}, {}, 0

    def schema(doc, name):
        for e in errors(doc):
            wrong.append(f"{name}: /{'/'.join(map(str, e.path))}: {e.message[:160]}")

    for path in sorted((HERE / "bases").glob("*.json")):
        bases[path.name] = read(path)
        schema(bases[path.name], path.name)
        if "decideAt" not in bases[path.name]:
            wrong.append(f"{path.name}: no decideAt")
    for path in sorted((HERE / "cases").glob("*.json")):
        for case in read(path):
            count += 1
            name = f"{path.name} {case.get('id')}"
            if set(case) - FIELDS or not {"id", "practice", "source", "base", "expect"} <= set(case):
                wrong.append(f"{name}: fields")
                continue
            if case["id"] in seen_ids:
                wrong.append(f"{name}: id also in {seen_ids[case['id']]}")
            seen_ids[case["id"]] = path.name
            body = json.dumps([case.get(k) for k in ("base", "policy", "set", "remove", "at")], sort_keys=True)
            if body in seen_bodies:
                wrong.append(f"{name}: same changes as {seen_bodies[body]}")
            seen_bodies[body] = case["id"]
            for s in set(case.get("policy", {})) - settings:
                wrong.append(f"{name}: no policy setting {s}")
            try:
                doc = apply(bases[case["base"]], case)
            except (AttributeError, KeyError, IndexError, TypeError, ValueError) as e:
                wrong.append(f"{name}: cannot be applied: {e!r}")
                continue
            schema(doc, name)
            wrong.extend(f"{name}: {w}" for w in check_expect(case, doc))
    print(f"{len(bases)} bases, {count} cases, {len(wrong)} wrong")
    for w in wrong:
        print(" ", w)
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
