"""What systematic records are made of: bases, acts, readings, and changes of a record (boundaries.py, crossed.py)."""

import copy
import json
import pathlib

BASES = pathlib.Path(__file__).resolve().parents[1] / "data" / "worked_cases" / "bases"


def base(name):
    """A base of tests/data/worked_cases, which is releasable, or passed, as it stands."""
    return json.loads((BASES / (name + ".json")).read_text(encoding="utf-8"))


def act(at, by="p1", role="operator", **more):
    return dict(more, by=by, role=role, happenedAt=at)


def readings(*triples):
    """Readings of (seen, at, by)."""
    return [act(at, by=by, seen=seen) for seen, at, by in triples]


def keep(_):
    """The change that leaves a record as it is."""


def put(path, value):
    """Set, or append, a value; each record has its own."""
    def change(record):
        node = record
        for step in path[:-1]:
            node = node[step]
        own = copy.deepcopy(value)
        if isinstance(node, dict) or path[-1] < len(node):
            node[path[-1]] = own
        else:
            node.append(own)
    return change


def drop(path):
    def change(record):
        node = record
        for step in path[:-1]:
            node = node[step]
        del node[path[-1]]
    return change


def all_of(*changes):
    """Several changes as one."""
    def change(record):
        for each in changes:
            each(record)
    return change


def limit_of(parameter, **value):
    """The limit of a parameter; without a value: none."""
    def change(record):
        limits = record["specification"]["limits"]
        limits[:] = [limit for limit in limits if limit["parameter"] != parameter]
        if value:
            limits.append(dict(value, parameter=parameter))
    return change


def settings(**changes):
    """Settings of the program; None: not stated."""
    def change(record):
        for name, value in changes.items():
            if value is None:
                record["specification"]["settings"].pop(name, None)
            else:
                record["specification"]["settings"][name] = value
    return change


def product(name, **fields):
    """Fields of a product; None: not stated."""
    def change(record):
        entry = next(p for p in record["products"] if p["id"] == name)
        for field, value in fields.items():
            if value is None:
                entry.pop(field, None)
            else:
                entry[field] = value
    return change


def lot(of_product, expires):
    """The expiry of a product's lot; None: not stated, 0: the lot is not in the register."""
    def change(record):
        entry = next(entry for entry in record["lots"] if entry["product"] == of_product)
        if expires == 0:
            record["lots"].remove(entry)
        elif expires is None:
            entry.pop("expires", None)
        else:
            entry["expires"] = expires
    return change
