#!/usr/bin/env python3
"""Checks a journal without the program that wrote it, from core/journal/FORMAT.md alone.

    verify_journal.py JOURNAL.jsonl [SEALS.jsonl]

JOURNAL has one entry a line, SEALS one seal a line. Prints what is wrong and exits with 1, or prints
the head and exits with 0. Needs only Python; PyNaCl for seals.
"""
import hashlib
import json
import sys


def entries(path, faults):
    """Every entry's hash, in order; [0] is that of nothing."""
    hashes, journal = ["0" * 64], None
    with open(path, "rb") as lines:
        for number, line in enumerate(lines.read().split(b"\n")[:-1], 1):
            entry = json.loads(line)
            if entry["seq"] != number:
                faults.append(f"entry {number} calls itself {entry['seq']}")
            if entry["prev"] != hashes[-1]:
                faults.append(f"entry {number} does not follow the one before it")
            if number == 1:
                journal = entry["body"].get("journal")
            hashes.append(hashlib.blake2b(line, digest_size=32).hexdigest())
    return hashes, journal


def check_seals(path, hashes, journal, faults):
    from nacl.exceptions import BadSignatureError
    from nacl.signing import VerifyKey
    with open(path, encoding="utf-8") as lines:
        for line in lines.read().splitlines():
            seal = json.loads(line)
            statement = line[:line.rindex(',"signature"')]
            name = f"the seal of entry {seal['seq']}"
            try:
                VerifyKey(bytes.fromhex(seal["key"])).verify(
                    ("loadwarden seal 1\n" + statement).encode(), bytes.fromhex(seal["signature"]))
            except BadSignatureError:
                faults.append(f"{name} is not genuine")
                continue
            if seal["journal"] != journal:
                faults.append(f"{name} is of another journal")
            elif seal["seq"] >= len(hashes):
                faults.append(f"{name} is of an entry that is not there: the journal was cut off")
            elif seal["head"] != hashes[seal["seq"]]:
                faults.append(f"{name} does not fit: the journal was rewritten")


def main():
    faults = []
    hashes, journal = entries(sys.argv[1], faults)
    if len(sys.argv) > 2:
        check_seals(sys.argv[2], hashes, journal, faults)
    for fault in faults:
        print(fault)
    if not faults:
        print(f"{len(hashes) - 1} entries, head {hashes[-1]}")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
