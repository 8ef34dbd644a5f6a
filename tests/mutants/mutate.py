#!/usr/bin/env python3
"""Mutants of the decision: does a check notice every flipped comparison and boolean?

Each mutant changes one place of core/release or core/sterilizers (or of the folders given), builds
the command line and decides on a fixed set of evidence files. The unchanged program's answers are
the measure: they agree with the oracle (tests/oracle/compare.py proves that on the same generator).
A mutant whose answers are the same survives; every survivor must stand in equivalent.txt with the
reason why it cannot be told apart, or the run fails.

    mutate.py --work DIR [--jobs 2] [--only REGEX] [--every N] [FOLDER...]

The evidence is the oracle's: random loads under all its policies (tests/oracle/generate.py), the
boundary values of tests/oracle/boundaries.py, the worked cases, and the demo's records.
"""
import argparse
import concurrent.futures
import hashlib
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
EQUIVALENT = pathlib.Path(__file__).with_name("equivalent.txt")

# Not tried, with the reason.
LEFT_OUT = {
    "core/release/policy.h": "its values are overridden by every policy file, which must state them all",
}

# What is flipped: a name, a pattern with one group, what the group becomes. Binary operators stand
# between spaces (clang-format sees to it), so that template brackets are left alone.
FLIPS = [
    ("less", re.compile(r" (<) "), "<="),
    ("less-equal", re.compile(r" (<=) "), "<"),
    ("greater", re.compile(r" (>) "), ">="),
    ("greater-equal", re.compile(r" (>=) "), ">"),
    ("less-reversed", re.compile(r" (<=?) "), ">"),
    ("greater-reversed", re.compile(r" (>=?) "), "<"),
    ("equal", re.compile(r" (==) "), "!="),
    ("not-equal", re.compile(r" (!=) "), "=="),
    ("and", re.compile(r" ?(&&) "), "||"),
    ("or", re.compile(r" ?(\|\|) "), "&&"),
    ("not", re.compile(r"(!)(?=[A-Za-z(*])"), ""),
    ("true", re.compile(r"\b(true)\b"), "false"),
    ("false", re.compile(r"\b(false)\b"), "true"),
    ("any", re.compile(r"std::(any_of)\("), "all_of"),
    ("all", re.compile(r"std::(all_of)\("), "any_of"),
    ("none", re.compile(r"std::(none_of)\("), "any_of"),
    ("min", re.compile(r"std::(min)\("), "max"),
    ("max", re.compile(r"std::(max)\("), "min"),
    ("plus", re.compile(r" (\+) "), "-"),
    ("minus", re.compile(r" (-) "), "+"),
]


def code_lines(text):
    """Yields (number, line) without comments and preprocessor lines; a line of text stays whole."""
    for number, line in enumerate(text.split("\n")):
        bare = line.strip()
        if bare.startswith(("//", "#", "///", "*")) or "static_assert" in bare:
            continue
        yield number, line.split(" //")[0]


def mutants(folders):
    """Every mutant as (path, line number, column, name, old, new)."""
    found = []
    for folder in folders:
        for path in sorted((ROOT / folder).rglob("*")):
            if path.suffix not in (".cpp", ".h") or str(path.relative_to(ROOT)) in LEFT_OUT:
                continue
            text = path.read_text(encoding="utf-8")
            for number, line in code_lines(text):
                bare = re.sub(r'"(\\.|[^"\\])*"', lambda m: "_" * len(m.group(0)), line)
                for name, pattern, new in FLIPS:
                    for match in pattern.finditer(bare):
                        found.append((path.relative_to(ROOT), number, match.start(1), name,
                                      match.group(1), new))
    return found


def key_of(mutant):
    """How equivalent.txt names a mutant: file, flip, and the line itself with the place marked."""
    path, number, column, name, old, _ = mutant
    line = (ROOT / path).read_text(encoding="utf-8").split("\n")[number]
    marked = line[:column] + "[" + old + "]" + line[column + len(old):]
    return f"{path} | {name} | {marked.strip()}"


class Worker:
    """A copy of the tree with a build of its own."""

    def __init__(self, folder, launcher="", options=()):
        self.tree = folder / "tree"
        self.build = folder / "build"
        for old in (self.tree, self.build):
            if old.exists():
                shutil.rmtree(old)
        self.tree.mkdir(parents=True)
        names = subprocess.run(["git", "ls-files", "-co", "--exclude-standard"], cwd=ROOT, text=True,
                               capture_output=True, check=True).stdout.split("\n")
        for name in names:
            if name and not name.startswith(("tests/", "demo/")) and (ROOT / name).is_file():
                target = self.tree / name
                target.parent.mkdir(parents=True, exist_ok=True)
                shutil.copy2(ROOT / name, target)
        subprocess.run(["cmake", "-G", "Ninja", "-S", str(self.tree), "-B", str(self.build),
                        "-DCMAKE_BUILD_TYPE=Debug", "-DCMAKE_CXX_FLAGS_DEBUG=-O1", "-DLOADWARDEN_TESTS=OFF",
                        "-DCMAKE_CXX_COMPILER=clang++-16", f"-DCMAKE_CXX_COMPILER_LAUNCHER={launcher}", *options],
                       check=True, capture_output=True)
        if not self.compile():
            raise SystemExit("the unchanged program does not compile")

    def compile(self):
        return subprocess.run(["ninja", "-C", str(self.build), "-j1", "loadwarden-decide"],
                              capture_output=True).returncode == 0

    def answers(self, evidence):
        """For each evidence file a digest of everything that the program answers, one at a time."""
        cli = self.build / "app" / "loadwarden-decide"
        for policy, path in evidence:
            command = [str(cli), "decide", "--json", "--policy", str(policy), str(path)]
            try:
                done = subprocess.run(command, capture_output=True, timeout=60)
            except subprocess.TimeoutExpired:
                yield "no end"
                continue
            yield hashlib.blake2b(done.stdout + str(done.returncode).encode()).hexdigest()


def worked_cases():
    """The evidence of every worked case that is decided by the default policy."""
    home = ROOT / "tests" / "data" / "worked_cases"
    sys.path.insert(0, str(home))
    import check_cases
    for path in sorted((home / "cases").glob("*.json")):
        for case in check_cases.read(path):
            if "policy" not in case:
                yield check_cases.apply(check_cases.read(home / "bases" / case["base"]), case)


def prepare(folder):
    """Writes the evidence; [(policy, file)], the quickest to kill most mutants first."""
    oracle = ROOT / "tests" / "oracle"
    if folder.exists():
        shutil.rmtree(folder)
    random, systematic = folder / "random", folder / "systematic"
    systematic.mkdir(parents=True)
    subprocess.run([sys.executable, str(oracle / "generate.py"), "--seed", "77", "--count", "16000", "--out",
                    str(random)], check=True, stdout=subprocess.DEVNULL)
    subprocess.run([sys.executable, str(oracle / "boundaries.py"), "--cli", "none", "--write", str(systematic)],
                   check=True)
    evidence = [(random / "policies" / (path.stem + ".toml"), path) for path in sorted(random.glob("*.jsonl"))]
    first = random / "first.jsonl.part"
    lines = (random / "us-hospital.jsonl").read_text(encoding="utf-8").splitlines(keepends=True)
    first.write_text("".join(lines[:800]), encoding="utf-8")
    evidence.insert(0, (random / "policies" / "us-hospital.toml", first))
    for path in sorted(systematic.glob("*.jsonl")):
        every = path.read_text(encoding="utf-8").splitlines(keepends=True)[::4]
        path.write_text("".join(every), encoding="utf-8")
        evidence += [(policy, path) for policy in sorted(systematic.glob("*.toml"))]
    default = ROOT / "resources" / "policies" / "us-hospital.toml"
    cases = folder / "cases.jsonl"
    cases.write_text("".join(json.dumps(case) + "\n" for case in worked_cases()), encoding="utf-8")
    evidence.append((default, cases))
    # One record a run: only so does the command's own answer show (may all of it go, or not).
    evidence += [(default, path) for path in sorted((ROOT / "tests/data/worked_cases/bases").glob("*.json"))]
    evidence += [(default, path) for path in sorted((ROOT / "demo/evidence").glob("*.json"))]
    return evidence


def try_mutant(worker, mutant, evidence, expected):
    path, number, column, _, old, new = mutant
    target = worker.tree / path
    original = target.read_text(encoding="utf-8")
    lines = original.split("\n")
    line = lines[number]
    lines[number] = line[:column] + new + line[column + len(old):]
    target.write_text("\n".join(lines), encoding="utf-8")
    try:
        if not worker.compile():
            return "does not compile"
        same = all(answer == asked for answer, asked in zip(worker.answers(evidence), expected))
        return "survives" if same else "killed"
    finally:
        target.write_text(original, encoding="utf-8")


def run(arguments):
    named = {}
    for line in EQUIVALENT.read_text(encoding="utf-8").splitlines() if EQUIVALENT.exists() else []:
        if line and not line.startswith("#"):
            key, reason = line.rsplit(" :: ", 1)
            named[key.strip()] = reason.strip()
    todo = [m for m in mutants(arguments.folders) if not arguments.only or re.search(arguments.only, key_of(m))]
    todo = todo[::arguments.every]
    work = pathlib.Path(arguments.work).resolve()
    evidence = prepare(work / "evidence")
    with concurrent.futures.ThreadPoolExecutor(arguments.jobs) as pool:
        workers = list(pool.map(lambda i: Worker(work / f"worker{i}"), range(arguments.jobs)))
    expected = list(workers[0].answers(evidence))
    print(f"{len(todo)} mutants in {', '.join(arguments.folders)}, {arguments.jobs} at a time", flush=True)
    counts = {"killed": 0, "does not compile": 0, "survives": 0}
    survivors = []
    started = time.monotonic()

    def share(index):
        results = []
        for mutant in todo[index::arguments.jobs]:
            result = try_mutant(workers[index], mutant, evidence, expected)
            results.append((mutant, result))
            if result == "survives":
                print(f"survives ({time.monotonic() - started:.0f} s): {key_of(mutant)}", flush=True)
        return results

    with concurrent.futures.ThreadPoolExecutor(arguments.jobs) as pool:
        for results in pool.map(share, range(arguments.jobs)):
            for mutant, result in results:
                counts[result] += 1
                if result == "survives":
                    survivors.append(key_of(mutant))
    unnamed = [key for key in survivors if key not in named]
    print(f"killed {counts['killed']}, refused by the compiler {counts['does not compile']}, "
          f"equivalent and named {len(survivors) - len(unnamed)}, surviving {len(unnamed)}; "
          f"{time.monotonic() - started:.0f} s")
    for key in sorted(unnamed):
        print("not killed and not named: " + key)
    if not arguments.only and arguments.every == 1:
        for key in sorted(set(named) - set(survivors)):
            print("named as equivalent but killed or gone: " + key)
    return 1 if unnamed else 0


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--work", required=True)
    parser.add_argument("--jobs", type=int, default=os.cpu_count() or 1)
    parser.add_argument("--only")
    parser.add_argument("--every", type=int, default=1, help="try only each N-th mutant")
    parser.add_argument("folders", nargs="*", default=["core/release", "core/sterilizers"])
    sys.exit(run(parser.parse_args()))


if __name__ == "__main__":
    main()
