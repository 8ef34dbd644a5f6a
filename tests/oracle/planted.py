#!/usr/bin/env python3
"""Three errors planted in the program: does the comparison with the oracle find each of them?

A check that cannot fail proves nothing. Each error is of the kind that a reader overlooks.

    planted.py --work DIR [--count 6000]
"""
import argparse
import pathlib
import subprocess
import sys

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "mutants"))
from mutate import Worker  # noqa: E402

# What is wrong then, the file, the place, what it becomes.
PLANTED = [
    ("a limit no longer includes its own value", "core/cycle/limits.cpp",
     "*difference * wrongSign > 0", "*difference * wrongSign >= 0"),
    ("a negative counts before its readout", "core/indicators/biological.cpp",
     "act.happenedAt < *limits.due", "act.happenedAt < *vial.incubationStart"),
    ("a lead may return a held sterilizer to service", "core/release/rules/sterilizer.cpp",
     "standsAs(entry.act, Role::supervisor, now)", "standsAs(entry.act, Role::lead, now)"),
]


def finds(worker, count):
    """Whether the comparison ends with disagreements (1), not with anything else."""
    cli = worker.build / "app" / "loadwarden-cli"
    done = subprocess.run([sys.executable, str(HERE / "compare.py"), "--cli", str(cli), "--count", str(count),
                           "--seed", "5"], capture_output=True, text=True)
    line = next((text for text in done.stdout.splitlines() if " disagreements, seed" in text), done.stderr[-300:])
    return done.returncode, line


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--work", required=True)
    parser.add_argument("--count", type=int, default=6000)
    options = parser.parse_args()
    worker = Worker(pathlib.Path(options.work), launcher="ccache")
    code, line = finds(worker, options.count)
    print(f"nothing planted: {line}")
    if code != 0:
        print("planted.py: the comparison does not pass even without a planted error")
        return 1
    missed = 0
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
        code, line = finds(worker, options.count)
        path.write_text(text, encoding="utf-8")
        found = code == 1 and " disagreements, seed" in line
        missed += 0 if found else 1
        print(f"{'found' if found else 'MISSED'}: {what}: {line}")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
