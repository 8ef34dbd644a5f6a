#!/usr/bin/env python3
"""The independent oracle of Loadwarden's decision, written from RULES.md and evidence.schema.json alone.

    oracle.py --policy FILE [--at TIME] [FILE]

reads evidence records (JSON Lines, standard input when no FILE) and writes one decision a line. It is a
test, not a tool for hospitals: makers' instructions for use, facility policy, local codes and licensed
practice come before anything it says.
"""

import argparse
import json
import sys
from decimal import Decimal

from evidence import Case, Cycle
from findings import Finding, apply_reviews, unique, worst
from itemrules import ITEM_RULES, Item
from loadrules import RULES, pcd_indicators, rule_implant
from moments import moment, written
from policy import load_policy
from testcycles import judge


def parse(text):
    """A record, with exact decimals."""
    return json.loads(text, parse_float=Decimal)


def decide(record, policy, now=None):
    """The decision for one record at `now` (a moment in milliseconds; None: the record's decideAt)."""
    if now is None:
        now = moment(record["decideAt"])
    case = Case(record, policy, now)
    return judge_test(case) if "test" in record else judge_load(case)


def judge_test(case):
    test = Cycle(case, case.record["test"], "test")
    result = judge(case, test)
    return {"lot": test.lot, "test": result.state, "findings": unique(result.findings())}


def load_findings(case):
    """All findings of the load rules, before reviews answer any."""
    case.read_items = [Item(case, raw) for raw in case.items]
    case.read_pcds = pcd_indicators(case)
    case.implant_findings = list(rule_implant(case))
    findings = [finding for rule in RULES for finding in rule(case)]
    softened = (case.policy["implant.hold"] == "implants-only" and case.method != "ethylene-oxide"
                and not case.immediate)
    for f in case.implant_findings:
        outcome = "note" if softened and f.outcome == "waits" else f.outcome
        findings.append(Finding(f.rule, f.key, outcome, f.subject))
    return findings


def judge_load(case):
    findings = load_findings(case)
    apply_reviews(case, findings)
    verdict = worst(findings)
    changes = [f.changes for f in findings if f.changes is not None]
    items = []
    for item in case.read_items:
        own = [finding for rule in ITEM_RULES for finding in rule(case, item)]
        items.append({"label": item.raw["label"], "verdict": worst(own, verdict), "findings": unique(own)})
    return {"lot": case.load.lot, "verdict": verdict, "findings": unique(findings), "items": items,
            "nextChangeAt": written(min(changes)) if changes else None}


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("file", nargs="?")
    parser.add_argument("--policy", required=True)
    parser.add_argument("--at", help="the moment for which the decision is asked; else each record's decideAt")
    options = parser.parse_args()
    policy = load_policy(options.policy)
    now = moment(options.at) if options.at else None
    source = open(options.file, encoding="utf-8") if options.file else sys.stdin
    for text in source:
        if text.strip():
            print(json.dumps(decide(parse(text), policy, now), ensure_ascii=False))


if __name__ == "__main__":
    main()
