#!/usr/bin/env python3
"""Random records for the comparison, valid by evidence.schema.json.

    generate.py --seed N --count N --out DIR

writes DIR/policies/*.toml and one DIR/<policy>.jsonl for each policy. The data is invented; it says
nothing about real sterilizers, products or people.
"""

import argparse
import json
import os
import random

import changes
import tracechanges
from evidence import Case
from moments import HOUR, MINUTE, moment
from oracle import load_findings, parse
from policy import load_policy
from policy_variants import SHARES, write_policies
from scenario import DAY, Scenario, T, emit, spelled, written_time

TEST_SHARE = 0.115
LATE_TABLE = changes.prepared(changes.LATE + tracechanges.TRACE_LATE)
as_text = json.JSONEncoder(check_circular=False).encode         # a record is a tree, though parts may be shared


def make_record(rng, policy, number):
    """One record as JSON text."""
    g = Scenario(rng, policy)
    g.now_at = None
    total = rng.choices((0, 1, 2, 3, 4, 6), (7, 36, 28, 16, 9, 4))[0]
    early = sum(rng.random() < 0.5 for _ in range(total))
    if rng.random() < TEST_SHARE:
        make_test(g)
        early, total = early // 2, rng.choice((0, 0, 1, 1, 2))
    changes.choose(g, *changes.EARLY_TABLE, early)
    g.give_counters()
    if "load" in g.record:
        tracechanges.give_traces(g)
    g.now = g.latest() + rng.choice((0, 0, MINUTE, HOUR, DAY, 30 * DAY))
    if g.now_at is not None:
        g.now = g.now_at
    if "test" in g.record:
        late_test(g, total - early)
    else:
        changes.choose(g, *LATE_TABLE, total - early)
    g.record["comment"] = "c-%d" % number
    g.record["decideAt"] = T(g.now)
    tidy(g)
    record = g.record
    emit(record, rng, g.zone)
    if "load" in record and (g.want_review and rng.random() < 0.75 or rng.random() < 0.04):
        add_reviews(g, record, policy)
    return as_text(record)


# Several changes may meet in one product; the schema has these fields for one kind only.
CHEMICAL_ONLY = ("type", "readWithinMinutes", "leastMinutes", "mostMinutes", "leastCelsius", "mostCelsius",
                 "dryingForbidden")
BIOLOGICAL_ONLY = ("species", "releaseMinutes", "lastMinutes", "latestMinutes", "startWithinMinutes",
                   "needsActivation", "hasProcessIndicator", "control", "implantIndicatorTypes")


def tidy(g):
    """What the reader refuses, away: labels and ids twice cannot arise, but of incubators; empty parts may be left out."""
    g.incubators[:] = {each["id"]: each for each in reversed(g.incubators)}.values()
    g.incubators.reverse()
    for limit in g.record.get("specification", {}).get("limits", ()):
        changes.fix_limit(limit)
    for product in g.record.get("products", ()):
        for name in BIOLOGICAL_ONLY if product["kind"] == "chemical" else CHEMICAL_ONLY:
            product.pop(name, None)
    sterilizer = g.record.get("sterilizer")
    for holder, names in ((sterilizer, ("incidents", "clockOffsets", "service", "cycles")),
                          (g.record, ("packagings", "controls", "lots", "products", "incubators")),
                          (g.record.get("load"), ("pcds", "items", "readings", "verifications", "traces"))):
        for name in names:
            if holder and name in holder and not holder[name] and g.chance(0.5):
                del holder[name]


# tests ---------------------------------------------------------------------------------------------
def make_test(g):
    """Turn the record into one of a test cycle."""
    kind = g.rng.choices(("bowie-dick", "leak", "qualification", "warm-up"), (48, 18, 29, 5))[0]
    start = g.start
    if kind == "bowie-dick":
        test = g.bowie_dick(start)
        if g.chance(0.75):
            changes.spoil_bowie_dick(g, test)
            if g.chance(0.2):
                changes.spoil_bowie_dick(g, test)
        elif g.chance(0.5):
            changes.because_ci(g, test["sheet"], "sheet", test["end"])
        if g.chance(0.4):
            edge = g.pick((start - 6 * MINUTE, g.period_begin, start - 5 * MINUTE))
            warm = g.hist("warm-up", edge + g.pick(changes.AROUND), 5 * MINUTE)
            if g.chance(0.2):
                warm.update(outcome="aborted") if g.chance(0.5) else warm.pop("outcome")
    elif kind == "leak":
        test = g.hist("leak", start, 25 * MINUTE)
        changes.give_leak(g, test)
        if g.chance(0.2):
            test["outcome"] = "aborted"
    elif kind == "qualification":
        test = changes.qualification_cycle(g, start, 30 * MINUTE)
        if g.chance(0.8):
            changes.spoil_qualification(g, test)
    else:
        test = g.hist("warm-up", start, 10 * MINUTE)
        if g.chance(0.4):
            test["outcome"] = "aborted"
    if g.chance(0.05):
        test["items"] = ["item-1"]
    if g.chance(0.05):
        test.pop("outcome", None)
    if g.chance(0.06):              # it ends before it begins, in the same moment, or just after it
        test["end"] = T(test["start"] + g.pick((-MINUTE, -1, -1, 0, 1)))
    g.cycles.remove(test)
    test["lot"] = "lot-7"
    g.record["test"] = test
    del g.record["load"]
    spec = g.record["specification"]
    if g.chance(0.7):
        del g.record["specification"]
    else:
        spec["purpose"] = kind


def late_test(g, count):
    """Anything-anywhere changes for a test record."""
    g.load = {"items": [], "pcds": []}
    for _ in range(max(0, count)):
        g.pick((changes.drop_any, changes.any_act, changes.any_time, changes.now_edge, changes.as_of))(g)


# reviews -------------------------------------------------------------------------------------------
def add_reviews(g, record, policy):
    """Reviews of the findings that ask for one: valid, stale, by the wrong person."""
    rng = g.rng
    case = Case(parse(as_text(record)), policy, moment(record["decideAt"]))
    reviews = []
    for finding in load_findings(case):
        if finding.outcome != "review" or rng.random() < 0.12:
            continue
        newest = finding.newest if finding.newest is not None else g.end
        seen = newest + rng.choice((0, 0, 0, 1, MINUTE, DAY, -1, -MINUTE))
        raised = sorted(finding.raised)
        by = rng.choice(("lead-1", "lead-2", "sup-1", "sup-2", rng.choice(raised) if raised else "op-1"))
        role = rng.choices(("supervisor", "lead", "operator", "viewer"), (60, 32, 5, 3))[0]
        if rng.random() < 0.6:              # as the rule asks
            role = "lead" if finding.reviewer == "lead" else "supervisor"
            by = rng.choice([name for name in ("lead-2", "sup-1", "sup-2") if name not in raised] or ["sup-3"])
        if rng.random() < 0.1:              # by who ran the load, who often looks at no more than what he is asked for
            by, role = record["load"].get("operator", "op-1"), rng.choice(("lead", "lead", "supervisor"))
        if rng.random() < 0.12:
            by = spelled(by, rng.choice)
        at = max(case.now - rng.choice((0, 0, 1, HOUR)), 0) + rng.choice((0, 0, 0, 0, 0, 1))
        if rng.random() < 0.12:             # around the load's end
            at = changes.near(g, g.end)
            seen = min(seen, at)
        review = {"finding": finding.key, "answer": "isolated" if rng.random() < 0.93 else "not-isolated",
                  "why": "the cause was found" if rng.random() < 0.93 else rng.choice(changes.BARE),
                  "newestSeen": written_time(seen, rng, g.zone),
                  "by": by, "role": role, "happenedAt": written_time(at, rng, g.zone)}
        if finding.subject is not None and rng.random() < 0.95:
            review["subject"] = finding.subject
        elif rng.random() < 0.05:
            review["subject"] = "lot-7"
        if rng.random() < 0.05:
            review.pop(rng.choice(("why", "by", "role")))
        reviews.append(review)
    if rng.random() < 0.03:
        reviews.append({"finding": rng.choice(("scope.in-positive", "packages.wet", "no.such-key")),
                        "answer": rng.choice(("isolated", "not-isolated")), "why": "looked at",
                        "newestSeen": record["decideAt"], "by": "sup-1", "role": "supervisor",
                        "happenedAt": record["decideAt"]})
    if reviews:
        record["load"]["reviews"] = reviews


def records(seed, count, policy):
    """`count` records (JSON text) for one policy; the same seed gives the same records."""
    rng = random.Random(seed)
    for number in range(count):
        yield make_record(rng, policy, number)


def shares(count):
    """How many of `count` records use which policy."""
    out = {name: count * share // 100 for name, share in SHARES.items()}
    out["us-hospital"] += count - sum(out.values())
    return out


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=1000)
    parser.add_argument("--out", required=True)
    options = parser.parse_args()
    paths = write_policies(os.path.join(options.out, "policies"))
    for name, count in shares(options.count).items():
        policy = load_policy(paths[name])
        with open(os.path.join(options.out, name + ".jsonl"), "w", encoding="utf-8") as file:
            for text in records("%d/%s" % (options.seed, name), count, policy):
                file.write(text + "\n")


if __name__ == "__main__":
    main()
