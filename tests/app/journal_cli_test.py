#!/usr/bin/python3
"""The main job by command line on a journal's file: from init to a signed release, and an implant's
biological indicator read the next day.

usage: journal_cli_test.py LOADWARDEN_CLI SOURCE_DIR
"""
import json
import os
import re
import signal
import sqlite3
import shutil
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

CLI = SOURCE = None
BOSS, OPERATOR, SECOND, LEAD = "st-boss", "st-op", "st-op2", "st-lead"
PINS = {BOSS: "482915", OPERATOR: "592817", SECOND: "592817", LEAD: "692817"}
CAUTION = "Loadwarden recommends; a named person decides and signs."
# The program takes the computer's clock and nothing else, so the test sets that clock.
FAKE_CLOCK = "/usr/lib/x86_64-linux-gnu/faketime/libfaketime.so.1"


class Department:
    """A journal in a temporary folder, the people who work in it, and the clock on its wall."""

    def __init__(self, folder):
        self.folder = Path(folder)
        self.file = self.folder / "department.journal"
        self.environment = dict(os.environ, XDG_DATA_HOME=str(self.folder / "data"), TZ="UTC",
                                LOADWARDEN_FILE=str(self.file), LD_PRELOAD=FAKE_CLOCK,
                                ASAN_OPTIONS="verify_asan_link_order=0")
        for name in ("LOADWARDEN_PIN", "LOADWARDEN_BY", "LOADWARDEN_NEW_PIN"):
            self.environment.pop(name, None)
        self.now("05:00")

    def now(self, time, day="2031-03-04"):
        """Sets the clock, which stands still until it is set again: UTC."""
        self.environment["FAKETIME"] = f"{day} {time}:00"

    def run(self, *arguments, by=None, stdin="", environment=None):
        env = dict(self.environment, **(environment or {}))
        if by is not None:
            env.update(LOADWARDEN_BY=by, LOADWARDEN_PIN=PINS[by])
        return subprocess.run([CLI, *map(str, arguments)], input=stdin, capture_output=True,
                              text=True, timeout=120, env=env)

    def do(self, *arguments, by=None, stdin="", environment=None):
        done = self.run(*arguments, by=by, stdin=stdin, environment=environment)
        assert done.returncode == 0, (arguments, done.returncode, done.stdout, done.stderr)
        return done.stdout

    def begin(self):
        self.do("init", "--facility", "Facility", "--zone", "Etc/UTC", "--supervisor", "Boss",
                "--id", BOSS, "--badge", "B1", "--atmosphere", "101.3",
                environment={"LOADWARDEN_PIN": PINS[BOSS]})
        for who, role in ((OPERATOR, "operator"), (SECOND, "operator"), (LEAD, "lead")):
            self.do("staff", "record", who, "--name", f"Name of {who}", "--role", role, by=BOSS)
            self.do("staff", "pin", who, by=BOSS, environment={"LOADWARDEN_NEW_PIN": PINS[who]})

    def registers(self):
        acts = [
            {"kind": "sterilizer.recorded", "subjects": ["sz-1"],
             "body": {"name": "S1", "model": "M1", "testMinute": 0,
                      "recordsConcentration": True, "recordsHumidity": True}},
            {"kind": "specification.recorded", "subjects": ["sp-bd"],
             "body": {"name": "bowie-dick", "revision": 1, "purpose": "bowie-dick",
                      "method": "steam", "airRemoval": "prevacuum", "program": "P2",
                      "cycleType": "T1", "extended": False, "settings": {}}},
            {"kind": "product.recorded", "subjects": ["pr-1"],
             "body": {"name": "external", "kind": "chemical", "methods": ["steam"], "type": 1,
                      "response": "colour", "sheet": {"dryingForbidden": False}}},
            {"kind": "product.recorded", "subjects": ["pr-2"],
             "body": {"name": "integrator", "kind": "chemical", "methods": ["steam"], "type": 5,
                      "response": "moving-front", "sheet": {"dryingForbidden": False}}},
            {"kind": "product.recorded", "subjects": ["pr-3"],
             "body": {"name": "sheet", "kind": "chemical", "methods": ["steam"], "type": 2,
                      "response": "sheet",
                      "sheet": {"dryingForbidden": False, "leastMs": 210000, "mostMs": 240000,
                                "leastCelsiusHundredths": 13200,
                                "mostCelsiusHundredths": 13400}}},
            {"kind": "product.recorded", "subjects": ["pr-4"],
             "body": {"name": "vial", "kind": "biological", "methods": ["steam"],
                      "response": "growth", "species": "geobacillus-stearothermophilus",
                      "releaseMinutes": 1440, "needsActivation": True,
                      "hasProcessIndicator": False}},
            *({"kind": "product-lot.recorded", "subjects": [f"pl-{n}", f"pr-{n}"],
               "body": {"number": f"N{n}", "expires": "2031-12-31"}}
              for n in range(1, 5)),
            {"kind": "packaging.recorded", "subjects": ["pk-1"],
             "body": {"name": "wrap", "form": "wrap", "methods": ["steam"]}},
            {"kind": "device.recorded", "subjects": ["dv-1"],
             "body": {"name": "device", "allowedCycles": [
                 {"method": "steam", "airRemoval": "prevacuum",
                  "temperature": {"unit": "celsius", "value": "132"}, "leastMs": 240000}]}},
            {"kind": "incubator.recorded", "subjects": ["in-1"], "body": {"name": "incubator"}},
        ]
        text = "".join(json.dumps(act) + "\n" for act in acts)
        self.do("record", "-", by=BOSS, stdin=text)
        self.do("specification", "record", "sp-1", "steam-prevacuum-132-wrapped@1",
                "--program", "P1", by=BOSS)
        self.now("05:30")
        self.do("sterilizer", "return", "sz-1", "--why", "installed", by=BOSS)
        self.do("sterilizer", "clock", "sz-1", "--from", "2031-03-04T05:30Z", "--seconds", "0",
                by=OPERATOR)

    def bowie_dick(self):
        self.now("05:50")
        lot = self.reserve("--specification", "sp-bd", "--purpose", "bowie-dick")
        self.do("load", "sheet", lot, "--product", "pr-3", "--lot", "pl-3", by=OPERATOR)
        self.now("06:00")
        self.do("load", "start", lot, "--counter", 100, by=OPERATOR)
        self.now("06:05")
        self.do("load", "end", lot, by=OPERATOR)
        self.do("test", "conditions", lot, "--chamber-empty", "yes", "--drying-run", "no",
                "--minutes", "3.5", "--celsius", "134", by=OPERATOR)
        self.do("test", "read", lot, "uniform-complete", by=OPERATOR)
        return lot

    def reserve(self, *options):
        answer = self.do("load", "reserve", "--sterilizer", "sz-1", *options, "--json",
                         by=OPERATOR)
        return json.loads(answer)["lot"]

    def run_load(self, implant):
        self.now("06:40")
        lot = self.reserve("--specification", "sp-1")
        self.do("load", "add", lot, "TRAY-7", "--implant", implant, "--packaging", "pk-1",
                "--devices", "dv-1", "--external", "pr-1/pl-1", "--internal", "pr-2/pl-2/top",
                by=OPERATOR)
        self.do("load", "pcd", lot, "--mark", "PCD", "--indicators", "pr-2/pl-2", "--vials",
                "pr-4/pl-4", by=OPERATOR)
        self.now("07:00")
        self.do("load", "start", lot, "--counter", 101, by=OPERATOR)
        self.now("07:50")
        self.do("load", "end", lot, by=OPERATOR)
        self.do("load", "unload", lot, by=OPERATOR)
        self.do("load", "printout", lot, "--program", "P1", "--sterilizer", "S1", "--counter", 101, "--start-shown",
                "2031-03-04T07:00Z", "--end-shown", "2031-03-04T07:50Z", by=OPERATOR)
        for reading in (("temperature", "132.4", "celsius"), ("exposure", "4", "minutes"),
                        ("drying", "20", "minutes")):
            self.do("load", "read", lot, *reading, by=OPERATOR)
        self.do("load", "verify", lot, by=OPERATOR)
        self.do("load", "read", lot, "c1", "end-colour-reached", by=OPERATOR)
        self.do("load", "read", lot, "c3", "front-in-accept-zone", by=OPERATOR)
        self.now("08:30")
        self.do("load", "check", lot, "TRAY-7", "--cooled", "yes", "--dry", "yes", "--intact",
                "yes", "--sealed", "yes", "--label-agrees", "yes", by=OPERATOR)
        self.now("08:35")
        control = json.loads(self.do("bi", "control", "--product", "pr-4", "--lot", "pl-4",
                                     "--json", by=OPERATOR))["control"]
        for thing in ([control], [lot, "v1"]):
            self.do("bi", "activate", *thing, by=OPERATOR)
            self.do("bi", "incubate", *thing, "--incubator", "in-1", by=OPERATOR)
        return lot, control


def seen_of(text):
    return re.search(r"--seen (\d+:[0-9a-f]{16})", text).group(1)


class Journal(unittest.TestCase):
    def setUp(self):
        self.temporary = tempfile.TemporaryDirectory()
        self.addCleanup(self.temporary.cleanup)
        self.department = Department(self.temporary.name)

    made = None  # a department as it begins, made by commands once

    def working(self):
        if Journal.made is None:
            self.department.begin()
            self.department.registers()
            Journal.made = tempfile.TemporaryDirectory()
            unittest.addModuleCleanup(Journal.made.cleanup)
            shutil.copytree(self.temporary.name, Journal.made.name, dirs_exist_ok=True)
        else:
            shutil.copytree(Journal.made.name, self.temporary.name, dirs_exist_ok=True)
            self.department.now("05:30")
        return self.department

    def assertRefused(self, done, *words):
        self.assertEqual(done.returncode, 3, done.stdout + done.stderr)
        self.assertIn("Refused; nothing was recorded.", done.stderr)
        for word in words:
            self.assertIn(word, done.stderr)


class MainJob(Journal):
    def test_from_init_to_a_release_and_an_implant_read_the_next_day(self):
        department = self.working()
        test = department.bowie_dick()
        self.assertIn("Passed", department.do("load", "decide", test))
        lot, control = department.run_load("yes")
        self.assertEqual(lot, "1-2031-063-02")

        waiting = department.run("load", "decide", lot)
        self.assertEqual(waiting.returncode, 1)
        self.assertIn("Quarantine", waiting.stdout)
        self.assertIn(CAUTION, waiting.stdout)
        held = department.run("tray", "TRAY-7")
        self.assertEqual(held.returncode, 1)
        self.assertIn("TRAY-7: May not be used", held.stdout)
        self.assertIn(CAUTION, " ".join(held.stdout.split()))
        due = department.do("bi", "due")
        self.assertIn(f"{lot} v1", due)
        self.assertIn(control, due)
        refused = department.run("load", "sign", lot, "release", "--seen",
                                 seen_of(waiting.stdout), by=LEAD)
        self.assertRefused(refused, "Quarantine")

        department.now("08:40", "2031-03-05")
        department.do("bi", "read", control, "growth", by=OPERATOR)
        self.assertRefused(department.run("load", "sign", lot, "quarantine", "--seen",
                                          seen_of(waiting.stdout), by=LEAD))
        department.do("bi", "read", lot, "v1", "no-growth", by=OPERATOR)
        decided = department.do("load", "decide", lot)
        self.assertIn("Release", decided)
        seen = seen_of(decided)
        self.assertRefused(department.run("load", "sign", lot, "release", "--seen", seen,
                                          by=OPERATOR), "lead")
        department.do("load", "sign", lot, "release", "--seen", seen, by=LEAD)
        self.assertIn("signed as Release", department.do("load", "show", lot))
        self.assertIn("TRAY-7: May be used", department.do("tray", "tray-7"))
        tray = json.loads(department.do("tray", "TRAY-7", "--json"))
        self.assertEqual((tray["answer"], tray["load"], tray["signed"]["as"]),
                         ("may-be-used", lot, "release"))
        unknown = department.run("tray", "TRAY-8")
        self.assertEqual(unknown.returncode, 1)
        self.assertIn("No item with this label", unknown.stdout)
        past = department.run("tray", "TRAY-7", "--at", "2031-03-04T07:00Z")
        self.assertEqual(past.returncode, 2)
        self.assertIn("answers for now", past.stderr)
        reached = department.do("lot", "loads", "N2")
        self.assertIn(f"{lot}  ", reached)
        self.assertNotIn("WORSE", reached)
        department.do("lot", "recall", "n2", "--why", "the maker's notice", by=OPERATOR)
        reached = department.run("lot", "loads", "N2")
        self.assertEqual(reached.returncode, 1)
        self.assertIn("WORSE THAN SIGNED", reached.stdout)
        row = json.loads(department.run("lot", "loads", "N2", "--json").stdout.splitlines()[0])
        self.assertEqual((row["load"], row["signed"], row["worse"]), (lot, "release", True))
        self.assertIn("May not be used", department.run("tray", "TRAY-7").stdout)
        self.assertRefused(department.run("lot", "recall", "N9", "--why", "x", by=OPERATOR), "No lot N9")
        self.assertEqual(department.run("lot", "recall", "N2", by=OPERATOR).returncode, 2)
        reported = department.do("report", "TRAY-7", "wet", "absent", "--place", "Room 4",
                                 "--says", "scrub nurse", by=OPERATOR)
        self.assertIn("tell the lead", " ".join(reported.split()))
        held = department.run("tray", "TRAY-7")
        self.assertEqual(held.returncode, 1)
        self.assertIn("May not be used", held.stdout)
        self.assertIn("item.reported", department.do("load", "history", lot))
        for words, status in ((("end-colour-reached",), 2), (("dripping",), 2), ((), 2)):
            wrong = department.run("report", "TRAY-7", *words, "--place", "Room 4", by=OPERATOR)
            self.assertEqual(wrong.returncode, status, wrong.stderr)
        self.assertRefused(department.run("report", "TRAY-8", "wet", "--place", "Room 4",
                                          by=OPERATOR), "No item with this label")
        self.assertIn("disposition.signed", department.do("load", "history", lot))
        self.assertEqual(department.do("bi", "due"), "")
        verified = department.do("verify")
        self.assertIn("Nothing is wrong", verified)

    def test_one_indicator_is_answered_without_a_load(self):
        department = self.working()
        # That a front need only enter the accept zone: common practice, no source.
        for seen, status, answer in (("front-in-accept-zone", 0, "accept"), ("front-on-boundary", 1, "reject"),
                                     ("front-short-of-boundary", 1, "reject"), ("unclear", 1, "unclear"),
                                     ("end-colour-reached", 1, "does-not-count")):
            run = department.run("read", "n2", seen, "--json")
            self.assertEqual((run.returncode, json.loads(run.stdout)["answer"]), (status, answer), run.stderr)
        plain = " ".join(department.do("read", "N2", "front-in-accept-zone").split())
        self.assertIn("it need not fill it", plain)
        self.assertIn(CAUTION, plain)
        self.assertRefused(department.run("read", "N9", "unclear"), "Register its product")
        self.assertRefused(department.run("read", "N4", "unclear"), "biological")
        self.assertRefused(department.run("read", "N2", "--front", "31"), "where its accept zone begins")
        self.assertEqual(department.run("read", "N2", "shiny").returncode, 2)
        wrong = json.loads(department.run("read", "N2", "front-in-accept-zone", "--method",
                                          "ethylene-oxide", "--json").stdout)
        self.assertEqual(wrong["because"], "method")
        outside = json.loads(department.run("read", "N2", "front-in-accept-zone", "--used", "outside", "--json").stdout)
        self.assertEqual(outside["because"], "type")
        department.do("record", "-", by=LEAD, stdin=json.dumps({"kind": "product.directions-recorded", "subjects": ["pr-2"],
                           "body": {"text": "Read in good light.", "stripTenthsMm": 450, "boundaryTenthsMm": 300}}))
        self.assertIn("Accept", department.do("read", "N2", "--front", "31"))
        self.assertIn("Reject", department.run("read", "N2", "--front", "30").stdout)
        self.assertRefused(department.run("read", "N2", "--front", "45.1"), "not on the strip")
        department.do("record", "-", by=LEAD, stdin=json.dumps({"kind": "product-lot.recalled", "subjects": ["pl-2", "pr-2"], "body": {"why": "notice"}}))
        recalled = json.loads(department.run("read", "N2", "front-in-accept-zone", "--json").stdout)
        self.assertEqual((recalled["answer"], recalled["because"]), ("does-not-count", "lot-recalled"))

    def test_a_recorders_file_is_kept_with_its_load_and_changes_the_decision(self):
        department = self.working()
        department.bowie_dick()
        lot, _ = department.run_load("no")
        self.assertEqual(department.run("load", "decide", lot).returncode, 0)

        def simulated(name, *options):
            text = department.do("trace", "--simulate", "--celsius", "132", "--exposure", "250",
                                 "--drying", "1230", "--atmosphere", "101.3", "--time-form",
                                 "date-time", "--begins", "2031-03-04T07:00", "--counter", 101, *options)
            path = department.folder / name
            path.write_text(text)
            return path

        good, mapping = simulated("good.csv"), department.folder / "map.json"
        refused = department.run("trace", "attach", lot, good, by=OPERATOR)
        self.assertRefused(refused, "Nobody has confirmed", "--propose")
        mapping.write_text(department.do("trace", "--propose", good))
        said = " ".join(department.do("trace", "attach", lot, good, "--map", mapping,
                                      by=OPERATOR).split())
        for part in ("all that was asked is met", "SIMULATED", "Trace. Recorded as entry", CAUTION):
            self.assertIn(part, said)
        self.assertEqual(department.run("load", "decide", lot).returncode, 0)
        self.assertIn("trace.read", department.do("load", "history", lot))

        # From now on files of that sterilizer are read so, and others are not.
        other = simulated("other.csv", "--separator", "semicolon")
        self.assertRefused(department.run("trace", "attach", lot, other, by=OPERATOR),
                           "not written as the sterilizer's last one was")
        short = simulated("short.csv", "--faults", "short-exposure=60")
        answer = json.loads(department.do("trace", "attach", lot, short, "--json", by=OPERATOR))
        self.assertGreater(answer["entry"], 0)
        decided = department.run("load", "decide", lot)
        self.assertEqual(decided.returncode, 1)
        self.assertIn("[trace.exposure-short]", decided.stdout)
        self.assertIn("Nothing is wrong", department.do("verify"))
        self.assertRefused(department.run("trace", "attach", "no-such-lot", good, by=OPERATOR))

    def test_a_moment_in_the_past_is_answered_by_what_had_been_recorded_then(self):
        department = self.working()
        department.bowie_dick()
        lot, _ = department.run_load("no")
        before = department.run("load", "decide", lot).stdout
        department.now("08:50")
        department.do("load", "read", lot, "c3", "front-on-boundary", by=SECOND)
        self.assertNotEqual(department.run("load", "decide", lot).stdout, before)
        self.assertEqual(department.run("load", "decide", lot, "--at",
                                        "2031-03-04T08:35Z").stdout, before)

    def test_an_exported_load_is_decided_the_same(self):
        department = self.working()
        department.bowie_dick()
        lot, _ = department.run_load("no")
        exported = department.do("export", lot)
        mine = json.loads(department.run("load", "decide", lot, "--json").stdout)
        theirs = json.loads(department.run("decide", "--json", "--at", "2031-03-04T08:35Z", "-",
                                           stdin=exported).stdout)
        for each in (mine, theirs):
            each.pop("asOf", None)
        self.assertEqual(mine, theirs)

    def test_what_is_recorded_late_refuses_the_signature_with_the_entries(self):
        department = self.working()
        department.bowie_dick()
        lot, _ = department.run_load("no")
        seen = seen_of(department.run("load", "decide", lot).stdout)
        department.do("load", "read", lot, "c3", "front-on-boundary", by=SECOND)
        refused = department.run("load", "sign", lot, "quarantine", "--seen", seen, by=OPERATOR)
        self.assertRefused(refused, "Since you looked", "reading of a chemical indicator of c3",
                           "front-on-boundary", "Name of st-op2", "4 Mar 2031 08:35")

    def test_a_use_without_a_release_is_recorded_and_said_loudly(self):
        department = self.working()
        department.bowie_dick()
        lot, _ = department.run_load("no")
        self.assertRefused(department.run("load", "distribute", lot, "TRAY-7", "--to", "theatre",
                                          by=OPERATOR), "has not been released")
        used = department.run("load", "use", lot, "TRAY-7", "--case", "case 7", by=OPERATOR)
        self.assertEqual(used.returncode, 0, used.stderr)
        for words in ("ATTENTION", "TRAY-7", "case 7", "nobody had released", "supervisor"):
            self.assertIn(words, used.stderr)
        self.assertIn("ATTENTION: used without a release: TRAY-7",
                      department.do("load", "list", "--open"))
        self.assertIn("ATTENTION", department.run("load", "show", lot).stdout)
        self.assertIn("item.used", department.do("journal", "export"))

    def test_what_left_a_load_is_marked(self):
        department = self.working()
        department.now("06:40")
        lot, other = (department.reserve("--specification", "sp-1") for _ in range(2))
        for label in ("A", "B", "C"):
            department.do("load", "add", lot, label, "--implant", "no", by=OPERATOR)
        department.do("load", "remove", lot, "A", "--why", "torn", by=OPERATOR)
        department.do("load", "move", lot, "B", other, "--why", "full", by=OPERATOR)
        shown = department.run("load", "show", lot).stdout
        self.assertRegex(shown, r"(?m)^  i1  A  \(it-\w+\)  taken out$")
        self.assertRegex(shown, r"(?m)^  i2  B  \(it-\w+\)  moved to ld-\w+$")
        self.assertRegex(shown, r"(?m)^  i3  C  \(it-\w+\)$")
        department.do("load", "start", lot, by=OPERATOR)
        department.do("load", "remove", lot, "C", "--why", "late", by=OPERATOR)
        self.assertIn("taken out, after the start: it was inside",
                      department.run("load", "show", lot).stdout)

    def test_a_product_of_the_wrong_kind_is_refused_where_it_is_placed(self):
        department = self.working()
        lot = department.reserve("--specification", "sp-1")
        for options, right in ((("add", lot, "T", "--implant", "no", "--external", "pr-4/pl-4"),
                                "a chemical indicator"),
                               (("pcd", lot, "--vials", "pr-2/pl-2"), "a biological indicator"),
                               (("pcd", lot, "--indicators", "pr-3/pl-3"), "no Bowie-Dick sheet")):
            self.assertRefused(department.run("load", *options, by=OPERATOR), right)

    def test_a_correction_stands_in_the_history(self):
        department = self.working()
        department.bowie_dick()
        lot, _ = department.run_load("no")
        read = department.do("load", "read", lot, "drying", "2", "minutes", "--json", by=OPERATOR)
        entry = json.loads(read)["entry"]
        cycle = json.loads(department.do("journal", "export").splitlines()[entry - 1])["subjects"]
        act = {"kind": "physical.read", "subjects": cycle, "supersedes": entry,
               "reason": "typed wrongly",
               "body": {"parameter": "drying", "value": {"typed": "20", "unit": "minutes"}}}
        department.do("record", "-", by=LEAD, stdin=json.dumps(act))
        self.assertRegex(department.do("load", "history", lot).replace("\n", " "),
                         r"amended +by +entry")


class Keeping(Journal):
    def test_backup_and_restore_go_on_and_skip_lots(self):
        department = self.working()
        department.now("06:40")
        self.assertEqual(department.reserve("--specification", "sp-1"), "1-2031-063-01")
        backup = department.folder / "backup"
        self.assertRefused(department.run("backup", backup, by=OPERATOR), "lead")
        self.assertIn("verified", department.do("backup", backup, by=LEAD))
        department.reserve("--specification", "sp-1")
        restored = department.folder / "restored"
        self.assertIn("drill", department.do("restore", backup, department.folder / "drill"))
        self.assertIn("Nothing is wrong", department.do("verify"))  # and goes on as before
        department.do("restore", backup, restored, "--go-on")
        self.assertEqual(department.run("restore", backup, restored).returncode, 2)
        department.environment["LOADWARDEN_FILE"] = str(restored)
        self.assertIn("Nothing is wrong", department.do("verify"))
        lot = department.reserve("--specification", "sp-1")
        self.assertGreater(int(lot.rsplit("-", 1)[1]), 400)
        # The file from before is not to be worked in any more.
        department.environment["LOADWARDEN_FILE"] = str(department.file)
        done = department.run("load", "list")
        self.assertEqual(done.returncode, 2)
        self.assertIn("Do not work in it", done.stderr)

    def test_a_head_on_paper_finds_a_journal_that_was_cut(self):
        department = self.working()
        lines = department.do("journal", "export").splitlines()
        head = json.loads(department.do("record", "-", "--json", by=OPERATOR, stdin=json.dumps(
            {"kind": "incubator.out-of-range", "subjects": ["in-1"], "body": {}})))["head"]
        self.assertEqual(int(head.split(":")[0]), len(lines) + 1)
        self.assertIn("Nothing is wrong", department.do("verify", "--expect", head))
        wrong = head[:-1] + ("0" if head[-1] != "0" else "1")
        self.assertEqual(department.run("verify", "--expect", wrong).returncode, 1)

    def test_each_day_begins_with_a_seal_that_a_cut_journal_does_not_hold(self):
        department = self.working()
        self.assertIn("Seals that hold: 2", department.do("verify"))  # the database's, and beside
        department.now("05:30", "2031-03-05")
        department.reserve()
        sealed = re.search(r"newest of them for entry (\d+)", department.do("verify")).group(1)
        with sqlite3.connect(department.file) as database:
            for trigger, in database.execute("SELECT name FROM sqlite_master WHERE type = "
                                             "'trigger'").fetchall():
                database.execute(f"DROP TRIGGER {trigger}")
            database.execute("DELETE FROM j_entry WHERE seq >= ?", (int(sealed),))
        cut = department.run("verify")
        self.assertIn(cut.returncode, (1, 2), cut.stdout)
        self.assertRegex(cut.stdout + cut.stderr, "missing|not there|gone|cut")

    def test_a_lost_key_is_replaced_and_verify_names_the_change(self):
        department = self.working()
        (department.folder / "data/loadwarden/seal.key").unlink()
        department.now("05:30", "2031-03-05")
        unsealed = department.run("load", "reserve", "--sterilizer", "sz-1", by=OPERATOR)
        self.assertEqual(unsealed.returncode, 0)
        self.assertIn("new-key", unsealed.stderr)
        self.assertRefused(department.run("journal", "new-key", "--why", "lost", by=LEAD),
                           "supervisor")
        made = department.do("journal", "new-key", "--why", "the disk was lost", by=BOSS)
        self.assertRegex(made, r"[0-9a-f]{64}")
        key = re.search(r"[0-9a-f]{64}", made).group(0)
        verified = department.do("verify")
        self.assertIn("Nothing is wrong", verified)
        self.assertRegex(verified, rf"Key {key[:16]}, recorded by Boss on 5 Mar 2031 05:30.* because: "
                                   "the disk was lost: 2 seals that hold")
        self.assertIn("that of the first seal: 2 seals that hold", verified)
        self.assertRefused(department.run("journal", "new-key", "--why", "again", by=BOSS))
        # A key that nobody recorded.
        (department.folder / "data/loadwarden/seal.key").write_text("ab" * 32 + "\n")
        self.assertIn("does not know", department.run("journal", "seal", by=BOSS).stderr)

    def test_tables_that_were_tampered_with_are_named(self):
        department = self.working()
        lot, _ = department.run_load("no")
        for statement, words in (("UPDATE p_label SET label = 'other'", "Table p_label lacks"),
                                 ("DELETE FROM p_cycle_lot", "Table p_cycle_lot lacks"),
                                 ("INSERT INTO p_own VALUES ('sz-9', 1)", "Table p_own has too much"),
                                 (f"DELETE FROM s_pin WHERE staff = '{LEAD}'",
                                  f"Table s_pin lacks {LEAD}")):
            with sqlite3.connect(department.file) as database:
                database.execute(statement)
            database.close()
            verified = department.run("verify")
            self.assertEqual(verified.returncode, 1, verified.stdout)
            self.assertIn(words, verified.stdout)
            self.assertIn("The tables beside the entries were changed", verified.stdout)

    def test_the_export_is_checked_by_a_reader_of_its_own(self):
        department = self.working()
        exported = department.folder / "journal.jsonl"
        exported.write_text(department.do("journal", "export"))
        checked = subprocess.run(["/usr/bin/python3",
                                  SOURCE / "tests/core/journal/verify_journal.py", exported],
                                 capture_output=True, text=True, timeout=60)
        self.assertEqual(checked.returncode, 0, checked.stdout + checked.stderr)


class OldHistory(Journal):
    """Loads of the time before the journal."""

    def lines(self, *loads):
        return "".join(json.dumps(load) + "\n" for load in loads)

    def old(self, lot, **more):
        return dict({"source": "register 1", "lot": lot, "start": "2030-02-01T07:14",
                     "outcome": "released"}, **more)

    def imports(self, *loads, options=(), by=BOSS):
        return self.department.run("import", "-", *options, by=by, stdin=self.lines(*loads))

    def test_old_loads_are_found_and_shown_and_nothing_is_decided_about_them(self):
        department = self.working()
        done = self.imports(
            self.old("a-17", end="2030-02-01T08:00Z", sterilizer="sz-1", labels=["TRAY 9"],
                     record="first line\r\nsecond line"),
            {"lot": "2030/2", "start": "2030-02-01", "outcome": "BI +", "sterilizer": "Old 3"},
            options=("--source", "system 2"))
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertIn("2 loads imported", done.stdout)
        shown = department.do("load", "show", "A-17")
        for words in ("a-17", "imported from register 1", "1 Feb 2030 07:14", "TRAY 9", "second line",
                      "released", "sz-1", "Nothing is decided or signed"):
            self.assertIn(words, shown)
        listed = department.do("load", "list", "--day", "2030-02-01")
        self.assertIn("a-17  imported from register 1: released", listed)
        self.assertIn("2030/2  imported from system 2: BI +", listed)
        self.assertNotIn("imported", department.do("load", "list", "--open"))
        for command in (("load", "decide", "a-17"), ("export", "a-17")):
            self.assertRefused(department.run(*command), "history")
        self.assertRefused(department.run("load", "sign", "a-17", "release", "--seen",
                                          "1:0123456789abcdef", by=BOSS))
        self.assertRefused(department.run("load", "start", "a-17", by=OPERATOR))
        self.assertIn("history.imported", department.do("load", "history", "a-17"))
        self.assertIn("Nothing is wrong", department.do("verify"))
        head = len(department.do("journal", "export").splitlines())
        self.assertIn(f"newest of them for entry {head}", department.do("verify"))

    def test_a_passed_test_of_the_old_register_counts_for_no_load_of_today(self):
        department = self.working()
        # Of the same sterilizer and the same morning.
        self.imports(self.old("T-1", start="2031-03-04T05:20Z", sterilizer="sz-1",
                              outcome="Bowie-Dick passed, biological indicator negative"))
        lot, _ = department.run_load("no")
        with_import = json.loads(department.run("load", "decide", lot, "--json").stdout)
        keys = {finding["key"] for finding in with_import["findings"]}
        self.assertTrue(any(key.startswith("air-removal.") for key in keys), keys)
        self.assertEqual(with_import["verdict"], "quarantine")

    def test_every_problem_is_told_with_line_and_field_and_nothing_is_imported(self):
        department = self.working()
        text = self.lines(self.old("L1"),
                          {"lot": "", "start": "yesterday", "odd": 1, "outcome": 7},
                          self.old("L3", start="2031-03-05T07:00", end="2031-02-05T07:00"),
                          self.old("L4", sterilizer="sz-9"), self.old("l1"),
                          self.old("L6", record="x" * 65537)) + '{"lot": "L7", \n'
        done = department.run("import", "-", by=BOSS, stdin=text)
        self.assertEqual(done.returncode, 2, done.stdout + done.stderr)
        for line, field in ((2, "source"), (2, "start"), (2, "odd"), (2, "outcome"), (3, "start"),
                            (3, "end"), (4, "sterilizer"), (5, "lot"), (6, "record")):
            self.assertIn(f"line {line}, {field}: ", done.stderr)
        self.assertIn("line 7: ", done.stderr)
        self.assertIn("line 1 already", done.stderr)
        self.assertIn("nothing was imported", done.stderr)
        self.assertNotIn("json", done.stderr)
        self.assertNotIn("history.imported", department.do("journal", "export"))

        skipped = department.run("import", "-", "--skip-bad", by=BOSS, stdin=text)
        self.assertEqual(skipped.returncode, 1, skipped.stderr)
        self.assertIn("1 loads imported, 6 left out", skipped.stdout)
        self.assertIn("line 4, sterilizer: ", skipped.stderr)

    def test_a_load_is_imported_once_and_never_over_one_of_this_journal(self):
        department = self.working()
        department.now("06:40")
        own = department.reserve("--specification", "sp-1")
        self.assertEqual(self.imports(self.old("L1")).returncode, 0)
        again = self.imports(self.old("L1"), self.old("L2"))
        self.assertEqual(again.returncode, 0, again.stderr)
        self.assertIn("1 loads imported, 1 were there already", again.stdout)
        other = self.imports(self.old("L1", outcome="held"))
        self.assertEqual(other.returncode, 2)
        self.assertRegex(other.stderr, r"line 1, lot: .*says something else there \(entry \d+\)")
        taken = self.imports(self.old(own))
        self.assertEqual(taken.returncode, 2)
        self.assertIn("A load of this journal bears", taken.stderr)
        # The same number in another register is another load; which is meant has to be said.
        self.assertEqual(self.imports(self.old("L1", source="register 2")).returncode, 0)
        self.assertRefused(department.run("load", "show", "L1"), "Several loads", "ld-")
        self.assertRefused(self.imports(self.old("L9"), by=LEAD), "supervisor")

    def test_stopped_it_leaves_a_whole_journal_and_goes_on_where_it_ended(self):
        department = self.working()
        file = department.folder / "old.jsonl"
        count = 4000
        file.write_text(self.lines(*(self.old(f"N{n}", record="x" * 400) for n in range(count))))
        env = dict(department.environment, LOADWARDEN_BY=BOSS, LOADWARDEN_PIN=PINS[BOSS])
        running = subprocess.Popen([CLI, "import", str(file), "--json"], text=True, env=env,
                                   stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        with sqlite3.connect(f"file:{department.file}?mode=ro", uri=True) as database:
            while running.poll() is None and database.execute(
                    "SELECT COUNT(*) FROM j_entry WHERE kind = 'history.imported'"
                    ).fetchone() == (0,):
                pass
        running.send_signal(signal.SIGINT)
        out, err = running.communicate(timeout=300)
        stopped = json.loads(out)
        self.assertTrue(stopped["stopped"], "it was too fast to be stopped: " + out + err)
        self.assertLess(stopped["imported"], count)
        self.assertIn("Nothing is wrong", department.do("verify"))
        rest = json.loads(department.do("import", file, "--json", by=BOSS))
        self.assertEqual(rest["already"], stopped["imported"])
        self.assertEqual(rest["already"] + rest["imported"], count)
        self.assertIn("Nothing is wrong", department.do("verify"))


class Doors(Journal):
    def test_a_wrong_pin_is_refused_and_made_to_wait(self):
        department = self.working()
        wrong = {"LOADWARDEN_PIN": "111112", "LOADWARDEN_BY": OPERATOR}
        for _ in range(3):
            self.assertRefused(department.run("load", "reserve", "--sterilizer", "sz-1",
                                              environment=wrong), "not the PIN")
        self.assertRefused(department.run("load", "reserve", "--sterilizer", "sz-1", by=OPERATOR),
                           "several times")

    def test_without_a_pin_or_a_terminal_nothing_is_done(self):
        department = self.working()
        done = subprocess.run(["setsid", CLI, "load", "reserve", "--sterilizer", "sz-1", "--by",
                               OPERATOR], capture_output=True, text=True, timeout=60,
                              stdin=subprocess.DEVNULL, env=department.environment)
        self.assertEqual(done.returncode, 2)
        self.assertIn("LOADWARDEN_PIN", done.stderr)

    def test_what_is_wrong_in_a_file_of_acts_is_said_with_its_line(self):
        department = self.working()
        good = json.dumps({"kind": "incubator.in-range", "subjects": ["in-1"]})
        for line, word in (('{"kind":"x.y","subjects":[]}', "x.y"),
                           ('{"kind":"incubator.in-range","kind":"x","subjects":[]}', "twice"),
                           ('{"kind":"incubator.in-range","subjects":["in-1"],"odd":1}', "odd"),
                           ('{"kind":"incubator.recorded","subjects":["in-2"],"body":{"name":""}}',
                            "name"),
                           ("[1]", "object"), ("{", "the line ends before its JSON does"),
                           ('{"kind":"incubator.in-range" "subjects":["in-1"]}', "column 3"),
                           ('{"subjects":["in-1"]}', 'the member "kind" must not be left out'),
                           ('{"kind":7,"subjects":["in-1"]}', 'the member "kind" must be a text'),
                           ('{"kind":"incubator.in-range","subjects":"in-1"}', "a list of ids"),
                           ('{"kind":"incubator.in-range","subjects":["in-1"],"body":1.5}',
                            "an object"),
                           ('{"kind":"alarm.recorded","subjects":["ld-1"],"body":{"code":1.5}}',
                            "decimals"),
                           ('{"kind":"incubator.in-range","subjects":["in-1"],"supersedes":-1}',
                            "number of an entry")):
            done = department.run("record", "-", by=LEAD, stdin=good + "\n" + line)
            self.assertEqual(done.returncode, 2, line)
            self.assertIn("line 2", done.stderr)
            self.assertIn(word, done.stderr)
            self.assertNotRegex(done.stderr, "json.exception|type_error|parse_error")
        self.assertNotIn("in-range", department.do("journal", "export"))

    def test_commands_at_once_wait_for_each_other_and_lose_nothing(self):
        department = self.working()
        env = dict(department.environment, LOADWARDEN_BY=OPERATOR,
                   LOADWARDEN_PIN=PINS[OPERATOR])
        env.pop("FAKETIME")  # they wait by the clock
        env.pop("LD_PRELOAD")
        act = json.dumps({"kind": "incubator.out-of-range", "subjects": ["in-1"], "body": {}})
        # The computer's clock is behind the journal's: recorded as it is, and said.
        running = [subprocess.Popen([CLI, "record", "-"], stdin=subprocess.PIPE,
                                    stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
                                    env=env) for _ in range(6)]
        for each in running:
            out, err = each.communicate(act, timeout=120)
            self.assertEqual(each.returncode, 0, out + err)
        kinds = [json.loads(line)["kind"] for line in department.do("journal",
                                                                    "export").splitlines()]
        self.assertEqual(kinds.count("incubator.out-of-range"), 6)
        self.assertEqual(department.run("verify").returncode, 0)

    def test_one_desktop_a_file_and_nothing_over_a_file(self):
        department = self.working()
        again = department.run("init", "--facility", "F", "--zone", "Etc/UTC", "--supervisor", "B",
                               environment={"LOADWARDEN_PIN": "482915"})
        self.assertEqual(again.returncode, 2)
        self.assertIn("already", again.stderr)

    def test_no_file_and_no_journal_are_said(self):
        department = self.department
        missing = department.run("load", "list")
        self.assertEqual(missing.returncode, 2)
        self.assertIn("no journal", missing.stderr)
        department.file.write_text("no database")
        foreign = department.run("load", "list")
        self.assertEqual(foreign.returncode, 2)

    def test_the_pin_never_stands_among_the_arguments(self):
        self.assertNotIn("--pin", self.department.run("--help").stdout)

    def test_help_names_every_command(self):
        text = self.department.run("--help").stdout
        for command in ("init", "staff", "sterilizer", "record", "load", "bi", "tray", "test", "verify",
                        "backup", "restore", "export", "journal"):
            self.assertRegex(text, rf"(?m)^  {command} ")


if __name__ == "__main__":
    CLI, SOURCE = sys.argv[1], Path(sys.argv[2])
    unittest.main(argv=sys.argv[:1])
