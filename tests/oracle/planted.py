#!/usr/bin/env python3
"""Errors planted in the program: does the comparison with the oracle find each of them?

A check that cannot fail proves nothing. Each error is of the kind that a reader overlooks.

    planted.py --work DIR [--rounds 6] [--count 1000]

Each round compares so many records of another seed; an error is found when one of the rounds
disagrees, and the unchanged program must pass the rounds that an error took.
"""
import argparse
import pathlib
import subprocess
import sys

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "mutants"))
from mutate import Worker  # noqa: E402

FIRST_SEED = 5

# What is wrong then, the file, the place, what it becomes.
PLANTED = [
    ("a limit no longer includes its own value", "core/cycle/limits.cpp",
     "*difference * wrongSign > 0", "*difference * wrongSign >= 0"),
    ("a negative counts before its readout", "core/indicators/biological.cpp",
     "act.happenedAt < *limits.due", "act.happenedAt < *vial.incubationStart"),
    ("a spoilt trace makes a review of a failure", "core/release/rules/trace.cpp",
     "judged.isFit() && trace.exposure == Shown::met", "trace.exposure == Shown::met"),
    ("a trace that begins as far apart as it may is another cycle's", "core/release/rules/trace.cpp",
     "*apart <= view.policy.clockTolerance", "*apart < view.policy.clockTolerance"),
    ("a lead may return a held sterilizer to service", "core/release/rules/sterilizer.cpp",
     "standsAs(entry.act, Role::supervisor, now)", "standsAs(entry.act, Role::lead, now)"),
]


def compares(worker, count, seed):
    """How a comparison ends (0: no disagreement, 1: disagreements), and what it says."""
    cli = worker.build / "app" / "loadwarden-decide"
    done = subprocess.run([sys.executable, str(HERE / "compare.py"), "--cli", str(cli), "--count", str(count),
                           "--seed", str(seed)], capture_output=True, text=True)
    line = next((text for text in done.stdout.splitlines() if " disagreements, seed" in text), done.stderr[-300:])
    return done.returncode, line


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--work", required=True)
    parser.add_argument("--rounds", type=int, default=6)
    parser.add_argument("--count", type=int, default=1000)
    options = parser.parse_args()
    # Several sources at once: most of the time goes into compiling the whole once.
    worker = Worker(pathlib.Path(options.work), launcher="ccache", options=["-DLOADWARDEN_UNITY=ON"])
    missed = 0
    needed = set()
    for what, name, old, new in PLANTED:
        path = worker.tree / name
        text = path.read_text(encoding="utf-8")
        if text.count(old) != 1:
            print(f"planted.py: {name} has no single place `{old}` any more; choose another error")
            return 1
        path.write_text(text.replace(old, new), encoding="utf-8")
        if not worker.compile():
            print(f"planted.py: does not compile: {what}")
            return 1
        found = False
        for seed in range(FIRST_SEED, FIRST_SEED + options.rounds):
            needed.add(seed)
            code, line = compares(worker, options.count, seed)
            found = code == 1 and " disagreements, seed" in line
            if found or code != 0:
                break
        path.write_text(text, encoding="utf-8")
        missed += 0 if found else 1
        print(f"{'found' if found else 'MISSED'}: {what}: {line}")

    if not worker.compile():
        print("planted.py: the unchanged program does not compile any more")
        return 1
    for seed in sorted(needed):
        code, line = compares(worker, options.count, seed)
        print(f"nothing planted: {line}")
        if code != 0:
            print("planted.py: the comparison does not pass even without a planted error")
            return 1
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
