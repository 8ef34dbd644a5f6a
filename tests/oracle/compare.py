#!/usr/bin/env python3
"""Compare the program with the oracle on random records.

    compare.py --cli PATH [--count 100000] [--seed N] [--jobs 2] [--at-next] [--keep DIR]

runs `PATH decide --json --policy POLICY FILE` on chunks of records from generate.py and compares verdicts,
findings, items, nextChangeAt and test results. --at-next asks both again at the moment of nextChangeAt.
Without --cli the oracle alone is run, for the table of keys.
"""

import argparse
import collections
import json
import multiprocessing
import os
import subprocess
import sys
import tempfile

import generate
import oracle
from keys import expected, expected_causes
from moments import moment
from policy import load_policy
from policy_variants import write_policies

CHUNK = 2000
SHOWN = 20
SAME_SHOWN = 3          # disagreements of one kind that are shown
EVERY_KEY, EVERY_CAUSE = 100000, 20000      # records from which on every key must be often, every cause be there


def finding_set(findings):
    """Findings as a set of (rule, key, outcome, subject, cause)."""
    return {(f["rule"], f["key"], f["outcome"], f.get("subject"), f.get("because")) for f in findings}


def differences(ours, theirs):
    """What differs between the oracle's decision and the program's, as text lines."""
    out = []
    names = ("lot", "test") if "test" in ours else ("lot", "verdict", "nextChangeAt")
    for name in names:
        a, b = ours.get(name), theirs.get(name)
        if name == "nextChangeAt" and a and b:
            a, b = moment(a), moment(b)
        if a != b:
            out.append("%s: oracle %s, program %s" % (name, ours.get(name), theirs.get(name)))
    out += finding_differences("load", ours, theirs)
    a, b = ours.get("items", []), theirs.get("items", [])
    if [i["label"] for i in a] != [i.get("label") for i in b]:
        out.append("items: oracle %s, program %s" % ([i["label"] for i in a], [i.get("label") for i in b]))
    else:
        for own, other in zip(a, b):
            if own["verdict"] != other.get("verdict"):
                out.append("%s verdict: oracle %s, program %s" % (own["label"], own["verdict"], other.get("verdict")))
            out += finding_differences(own["label"], own, other)
    return out


def finding_differences(where, ours, theirs):
    a, b = finding_set(ours.get("findings", [])), finding_set(theirs.get("findings", []))
    return (["%s: only oracle %s" % (where, " ".join(map(str, f))) for f in sorted(a - b, key=str)]
            + ["%s: only program %s" % (where, " ".join(map(str, f))) for f in sorted(b - a, key=str)])


def pattern(line):
    """The kind of a difference: without the item's label and the subject."""
    where, _, rest = line.partition(": ")
    where = where.split(" ")[-1] if where.endswith("verdict") else ("item" if where.startswith("item-") else where)
    words = rest.split(" ")
    return where + ": " + " ".join(words[:5] if words[0] == "only" else ["differs"])


def run_cli(cli, policy_path, texts):
    """The program's decisions, one a record; (decisions, error)."""
    with tempfile.NamedTemporaryFile("w", suffix=".jsonl", delete=False, encoding="utf-8") as file:
        file.write("".join(text + "\n" for text in texts))
    try:
        done = subprocess.run([cli, "decide", "--json", "--policy", policy_path, file.name],
                              stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, encoding="utf-8")
    finally:
        os.unlink(file.name)
    lines = [line for line in done.stdout.splitlines() if line.strip()]
    if done.returncode not in (0, 1) or len(lines) != len(texts):
        return None, "exit %d, %d lines for %d records\n%s" % (done.returncode, len(lines), len(texts),
                                                               done.stderr[:2000])
    return [json.loads(line) for line in lines], None


def keys_seen(decision):
    """{(key, outcome)} of a decision, and the one that alone keeps the load or an item from release."""
    seen, alone = set(), set()
    parts = [decision] + decision.get("items", [])
    for part in parts:
        own = {(f["key"], f["outcome"]) for f in part["findings"]}
        seen |= own
        holding = {pair for pair in own if pair[1] != "note"}
        if len(holding) == 1 and (part is decision or decision["verdict"] == "release"):
            alone |= holding
        elif part is not decision or not holding:
            alone |= {pair for pair in own if pair[1] == "note" and decision.get("verdict") == "release"}
    return seen, alone


def causes_seen(decision):
    """{(key, cause)} of a decision."""
    return {(f["key"], f["because"]) for part in [decision] + decision.get("items", [])
            for f in part["findings"] if "because" in f}


COUNTERS = ("verdicts", "seen", "alone", "causes", "patterns")


def compared(name, path, cli, texts, ours):
    """What a chunk of records and the oracle's decisions on them come to."""
    out = {name: collections.Counter() for name in COUNTERS}
    out.update(bad=[], count=0, differing=0, error=None)
    compare_chunk(out, name, path, cli, texts, ours)
    return out


def work(job):
    """Generate, decide twice and compare one chunk."""
    name, path, seed, count, cli, at_next = job
    policy = load_policy(path)
    texts = list(generate.records(seed, count, policy))
    ours = [oracle.decide(oracle.parse(text), policy) for text in texts]
    out = compared(name, path, cli, texts, ours)
    if at_next:
        later = [(text, decision["nextChangeAt"]) for text, decision in zip(texts, ours)
                 if decision.get("nextChangeAt")]
        texts = [json.dumps(dict(json.loads(text), decideAt=at)) for text, at in later]
        ours = [oracle.decide(oracle.parse(text), policy) for text in texts]
        compare_chunk(out, name, path, cli, texts, ours)
    return out


def compare_chunk(out, name, path, cli, texts, ours):
    if not texts:
        return
    for decision in ours:
        out["count"] += 1
        out["verdicts"]["test " + decision["test"] if "test" in decision else decision["verdict"]] += 1
        for item in decision.get("items", ()):
            out["verdicts"]["item " + item["verdict"]] += 1
        seen, alone = keys_seen(decision)
        out["seen"].update(seen)
        out["alone"].update(alone)
        out["causes"].update(causes_seen(decision))
    if not cli:
        return
    theirs, error = run_cli(cli, path, texts)
    if error and len(texts) > 1:        # name the records that the program refuses
        for text in texts:
            _, error = run_cli(cli, path, [text])
            if error:
                break
        else:
            text, error = texts[0], "a chunk fails, its records alone do not"
    if error:
        out["error"] = error
        out["bad"].append((name, text if len(texts) > 1 else texts[0], ["program: " + error]))
        out["differing"] += 1
        return
    for text, own, other in zip(texts, ours, theirs):
        lines = differences(own, other)
        if lines:
            out["differing"] += 1
            new = {pattern(line) for line in lines}
            if len(out["bad"]) < SHOWN and any(out["patterns"][p] < SAME_SHOWN for p in new):
                out["bad"].append((name, text, lines))
            out["patterns"].update(new)


def jobs_of(options, paths):
    for name, count in generate.shares(options.count).items():
        for part, first in enumerate(range(0, count, CHUNK)):
            yield (name, paths[name], "%d/%s/%d" % (options.seed, name, part), min(CHUNK, count - first),
                   options.cli, options.at_next)


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--cli", help="the program; left out: the oracle alone")
    parser.add_argument("--count", type=int, default=100000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--at-next", action="store_true")
    parser.add_argument("--keep", default=os.path.join(tempfile.gettempdir(), "loadwarden-disagreements"),
                        help="folder for the records of disagreements")
    options = parser.parse_args()
    total = {name: collections.Counter() for name in COUNTERS}
    count = differing = shown = 0
    shown_kinds = collections.Counter()
    with tempfile.TemporaryDirectory() as folder:
        paths = write_policies(folder)
        with multiprocessing.Pool(options.jobs) as pool:
            for part in pool.imap_unordered(work, jobs_of(options, paths)):
                count += part["count"]
                differing += part["differing"]
                for name, counter in total.items():
                    counter.update(part[name])
                for name, text, lines in part["bad"]:
                    kinds = {pattern(line) for line in lines}
                    if shown < SHOWN and any(shown_kinds[kind] < SAME_SHOWN for kind in kinds):
                        shown_kinds.update(kinds)
                        shown += 1
                        show(options.keep, shown, name, paths[name], text, lines)
    rare = report(options, total, count, differing)
    never = report_causes(total)
    sys.exit(1 if differing or (rare and options.count >= EVERY_KEY) or (never and options.count >= EVERY_CAUSE)
             else 0)


def show(folder, number, name, policy_path, text, lines):
    """Print a disagreement and save its record and policy."""
    os.makedirs(folder, exist_ok=True)
    path = os.path.join(folder, "%02d-%s.json" % (number, name))
    with open(path, "w", encoding="utf-8") as file:
        file.write(text + "\n")
    with open(policy_path, encoding="utf-8") as source, \
            open(os.path.join(folder, name + ".toml"), "w", encoding="utf-8") as file:
        file.write(source.read())
    print("disagreement %d (%s)" % (number, path))
    for line in lines[:12]:
        print("    " + line)


def report(options, total, count, differing):
    """Print the counts; the keys that are too rare."""
    print("%d decisions, %d disagreements, seed %d" % (count, differing, options.seed))
    for kind, number in total["patterns"].most_common(40):
        print("  %8d  %s" % (number, kind))
    for name, number in sorted(total["verdicts"].items()):
        print("  %-22s %8d" % (name, number))
    print("%-34s %-7s %8s %8s" % ("key", "outcome", "records", "decisive"))
    rare = []
    for pair in expected():
        print("%-34s %-7s %8d %8d" % (pair + (total["seen"][pair], total["alone"][pair])))
        if total["seen"][pair] < 100:
            rare.append(pair)
    for pair in sorted(set(total["seen"]) - set(expected())):
        print("not in keys.py: %s %s (%d)" % (pair + (total["seen"][pair],)))
        rare.append(pair)
    if rare:
        print("fewer than 100 records or unknown: " + ", ".join(" ".join(pair) for pair in rare))
    return rare


def report_causes(total):
    """Print how often each key came with each cause; the pairs that never came or that keys.py does not name."""
    for key in dict.fromkeys(key for key, _ in expected_causes()):
        print("%s because of: %s" % (key, ", ".join("%s %d" % (cause, total["causes"][key, cause])
                                                    for own, cause in expected_causes() if own == key)))
    never = [pair for pair in expected_causes() if not total["causes"][pair]]
    unknown = sorted(set(total["causes"]) - set(expected_causes()))
    if never:
        print("causes that never occurred: " + ", ".join(" ".join(pair) for pair in never))
    if unknown:
        print("causes not in keys.py: " + ", ".join(" ".join(pair) for pair in unknown))
    return never + unknown


if __name__ == "__main__":
    main()
