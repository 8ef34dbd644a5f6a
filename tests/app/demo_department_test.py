#!/usr/bin/python3
"""The demo's department: three weeks of acts through the desk give a sound journal in which every
load has the verdict that its story asks for.

usage: demo_department_test.py LOADWARDEN_CLI LOADWARDEN_DEMO
"""
import collections
import datetime
import json
import os
import re
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

CLI = DEMO = None

# What the story plants in simulated recordings (demo/department/matters.cpp), and what must be found.
PLANTED = {
    "1-2031-066-04": {"trace.exposure-short", "trace.interrupted", "trace.below", "trace.differs"},
    "1-2031-069-06": {"trace.not-saturated"},
    "2-2031-070-05": {"trace.drying-short", "trace.differs"},
}
TOO_LOW = {"trace.exposure-short", "trace.interrupted", "trace.below", "trace.differs"}
REPLACED = "1-2031-071-05"  # the recording of another cycle was attached first, and struck


class Department(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        base = Path(cls.folder.name)
        cls.environment = dict(os.environ, XDG_DATA_HOME=str(base / "data"),
                               LOADWARDEN_FILE=str(base / "department.journal"))
        made = subprocess.run([DEMO, cls.environment["LOADWARDEN_FILE"],
                               base / "data" / "loadwarden"], capture_output=True, text=True,
                              timeout=600)
        assert made.returncode == 0, made.stderr
        assert made.stdout.startswith("300 loads"), made.stdout
        cls.recordings = int(re.search(r"with (\d+) simulated", made.stdout)[1])

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def run_cli(self, *arguments):
        return subprocess.run([CLI, *arguments], capture_output=True, text=True, timeout=300,
                              env=self.environment)

    def day(self, day, at="2031-03-24T08:00-05:00"):
        listed = self.run_cli("load", "list", "--day", str(day), "--at", at)
        self.assertEqual(listed.returncode, 0, listed.stderr)
        return [re.fullmatch(r"(\S+)  (\S+), (.+): (\w+)(?:, but not \d+ items?)?(?: \(worse than signed\))?", line).groups()
                for line in listed.stdout.splitlines()]

    def test_it_verifies(self):
        verified = self.run_cli("verify")
        self.assertEqual(verified.returncode, 0, verified.stdout)
        self.assertIn("Nothing is wrong", verified.stdout)

    def test_three_weeks_have_300_loads_and_every_kind_of_verdict(self):
        count = collections.Counter()
        tests = collections.Counter()
        for number in range(21):
            for _, purpose, phase, verdict in self.day(datetime.date(2031, 3, 3 + number)):
                (count if purpose == "routine" else tests)[purpose, verdict] += 1
                if purpose == "routine":
                    self.assertIn("signed as", phase)
        self.assertEqual(sum(count.values()), 300)
        self.assertEqual(tests["bowie-dick", "Passed"], 42)
        self.assertEqual(tests["qualification", "Passed"], 1)
        self.assertGreater(count["routine", "Release"], 240)
        self.assertGreater(count["routine", "Reprocess"], 2)
        self.assertGreater(count["routine", "Quarantine"], 2)

    def test_the_load_whose_vial_grew_is_reprocessed_and_its_sterilizer_comes_back(self):
        friday = {lot: verdict for lot, _, _, verdict in
                  self.day("2031-03-14", "2031-03-14T20:00-05:00")}
        self.assertEqual(friday["2-2031-073-02"], "Reprocess")
        self.assertNotIn("2-2031-073-03", friday)
        others = [verdict for lot, verdict in friday.items() if lot.startswith("1-2031-073-")]
        self.assertGreater(others.count("Release"), 5)
        saturday = [verdict for lot, purpose, _, verdict in self.day("2031-03-15")
                    if lot.startswith("2-") and purpose == "routine"]
        self.assertEqual(len(saturday), 8)
        self.assertGreater(saturday.count("Release"), 5)

    def findings(self, lot, at):
        shown = self.run_cli("load", "decide", lot, "--json", "--at", at)
        self.assertIn(shown.returncode, (0, 1), shown.stderr)
        return json.loads(shown.stdout)["findings"]

    def test_each_planted_fault_is_found_and_no_other_recording_says_anything(self):
        at = "2031-03-24T08:00-05:00"
        loads = low = 0
        for number in range(21):
            for lot, purpose, _, _ in self.day(datetime.date(2031, 3, 3 + number), at):
                if purpose != "routine":
                    continue
                findings = self.findings(lot, at)
                keys = {finding["key"] for finding in findings
                        if finding["key"].startswith("trace.") and finding["outcome"] != "note"}
                loads += 1
                if any(finding["key"] == "physical.below" for finding in findings):
                    low += 1  # what was typed says it, too
                    self.assertEqual(keys, TOO_LOW, lot)
                else:
                    self.assertEqual(keys, PLANTED.get(lot, set()), lot)
        self.assertEqual(loads, 300)
        self.assertGreater(low, 0)

    def test_a_recording_of_another_cycle_was_struck_and_replaced(self):
        history = self.run_cli("load", "history", REPLACED)
        self.assertEqual(history.returncode, 0, history.stderr)
        said = " ".join(history.stdout.split())  # however its lines break
        self.assertIn("it is the file of the load before", said)
        self.assertEqual(len(set(re.findall(r"sterilizer-1_cycle-\d+_simulated", said))), 2, said)

    def test_nearly_every_load_has_a_recording(self):
        self.assertGreater(self.recordings, 250)
        self.assertLess(self.recordings, 301)


if __name__ == "__main__":
    CLI, DEMO = sys.argv[1:3]
    unittest.main(argv=sys.argv[:1])
