#!/usr/bin/python3
"""The command line as its user runs it: exit codes, streams, errors, options.

usage: cli_test.py LOADWARDEN_CLI SOURCE_DIR
"""
import datetime
import hashlib
import json
import re
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

CLI = SOURCE = None
CAUTION = "Loadwarden recommends; a named person decides and signs."


def run(*arguments, stdin=""):
    return subprocess.run([CLI, *map(str, arguments)], input=stdin, capture_output=True, text=True,
                          timeout=120)


def example(name):
    return json.loads((SOURCE / "resources/schema/examples" / name).read_text())


GOOD = "steam-prevacuum-load.json"
WAITING = "implant-load-waiting.json"
REVIEWED = "drying-reviewed.json"
TEST = "bowie-dick-test.json"


def path_of(name):
    return SOURCE / "resources/schema/examples" / name


def in_utc(moment):
    return moment.isoformat(timespec="milliseconds").replace("+00:00", "Z")


def lines(*records):
    return "".join((r if isinstance(r, str) else json.dumps(r)) + "\n" for r in records)


class Temporary(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)

    def write(self, name, text):
        path = Path(self.folder.name) / name
        path.write_text(text)
        return path


class Decide(Temporary):
    def test_exit_code_says_whether_all_may_go(self):
        self.assertEqual(run("decide", path_of(GOOD)).returncode, 0)
        self.assertEqual(run("decide", path_of(TEST)).returncode, 0)
        self.assertEqual(run("decide", path_of(GOOD), path_of(TEST)).returncode, 0)
        self.assertEqual(run("decide", path_of(WAITING)).returncode, 1)
        self.assertEqual(run("decide", path_of(GOOD), path_of(WAITING)).returncode, 1)

    def test_a_load_of_which_one_item_stays_is_not_all(self):
        record = example(GOOD)
        record["load"]["items"][0]["checks"][0]["intact"] = False
        answer = run("decide", stdin=lines(record))
        self.assertEqual(answer.returncode, 1)
        self.assertIn(": Release, except 1 item\n", answer.stdout)
        self.assertIn("\n  Reprocess: " + record["load"]["items"][0]["label"] + "\n", answer.stdout)
        self.assertIn("\n    Item: " + record["load"]["items"][0]["label"] + "\n", answer.stdout)

    def test_a_test_that_has_not_passed_is_not_all(self):
        record = example(TEST)
        del record["test"]["sheet"]["readings"]
        answer = run("decide", "--json", stdin=lines(record))
        self.assertEqual(json.loads(answer.stdout)["test"], "pending")
        self.assertEqual(answer.returncode, 1)

    def test_standard_input(self):
        text = path_of(GOOD).read_text()
        for arguments in [("decide", "--planned"), ("decide", "--planned", "-"),
                          ("decide", "--planned", "--", "-")]:
            answer = run(*arguments, stdin=text)
            self.assertEqual(answer.returncode, 0)
            self.assertEqual(answer.stderr, "")
            self.assertIn("Release", answer.stdout)

    def test_json_lines_come_back_in_order(self):
        records = [example(GOOD), example(TEST), example(WAITING)]
        answer = run("decide", "--json", stdin=lines(*records))
        decisions = [json.loads(line) for line in answer.stdout.splitlines()]
        self.assertEqual([d["lot"] for d in decisions],
                         [records[0]["load"]["lot"], records[1]["test"]["lot"], records[2]["load"]["lot"]])
        self.assertEqual([d.get("verdict", d.get("test")) for d in decisions],
                         ["release", "passed", "quarantine"])
        for finding in decisions[2]["findings"]:
            self.assertTrue(finding["says"] and finding["source"])
        self.assertNotIn(CAUTION, answer.stdout)

    def test_a_bad_record_is_said_and_the_others_are_decided(self):
        bad = example(GOOD)
        bad["load"]["counter"] = "seven"
        answer = run("decide", "--json", "--planned",
                     stdin=lines(example(GOOD), bad, {"a": 1}, example(WAITING)))
        self.assertEqual(answer.returncode, 2)
        self.assertEqual([json.loads(line)["verdict"] for line in answer.stdout.splitlines()],
                         ["release", "quarantine"])
        errors = answer.stderr.splitlines()
        column = json.dumps(bad).index('"seven"') + 1
        self.assertRegex(errors[0],
                         rf"^standard input: record 2: line 2, column {column}: /load/counter: must be a number")
        self.assertEqual(len(errors), 3)
        self.assertRegex(errors[1], r"^standard input: record 3: line 3, column 1: a record needs the fields")
        self.assertRegex(errors[2], r"^standard input: record 3: line 3, column 2: /a: a record has no field")

    def test_a_record_that_is_cut_off_spoils_no_other(self):
        good = json.dumps(example(GOOD))
        answer = run("decide", "--json", "--planned",
                     stdin="\n".join([good, good[:len(good) // 2], good, "x", good[:-1], good]))
        self.assertEqual(answer.returncode, 2)
        self.assertEqual(len(answer.stdout.splitlines()), 3)
        for line in (2, 4, 5):
            self.assertIn(f": line {line}, column ", answer.stderr)

    def test_all_errors_of_a_record_are_said_as_they_were_typed(self):
        text = path_of(GOOD).read_text()
        for typed, wrong in [('"counter": 4113,\n  "outcome"', '"counter": 4113\n  "outcome"'),
                             ('"celsius": 132.4', '"celsius": 132,4'),
                             ('"expires": "2032-08-31"', '"expires": "2032-08"'),
                             ('"operator": "operator-3"', '"oparator": "operator-3"')]:
            self.assertIn(typed, text)
            text = text.replace(typed, wrong, 1)
        path = self.write("typed.json", text)
        answer = run("decide", path)
        self.assertEqual((answer.returncode, answer.stdout), (2, ""))
        rows = text.split("\n")

        def place(part, after=False):
            row = next(i for i, line in enumerate(rows) if part in line)
            return f"{path}: record 1: line {row + 1}, column {rows[row].index(part) + 1 + after * len(part)}: "

        self.assertEqual(answer.stderr.splitlines(), [
            place('"2032-08"') + '/lots/0/expires: must be a date that exists, written like 2031-03-04, not '
            '"2032-08"; where only the month is printed write its last day, 2032-08-31',
            place('"oparator"') + '/load/oparator: a load has no field "oparator"; was "operator" meant?',
            place('"counter": 4113', True) + "/load: a comma is missing here",
            place("132,4") + "/load/readings/0/celsius: a number is written with a point, not with a comma: "
            "132.4"])

    def test_more_than_twenty_errors_are_not_listed(self):
        record = example(GOOD)
        record["load"]["items"] = [{"label": 1}] * 30
        said = run("decide", stdin=lines(record)).stderr.splitlines()
        self.assertEqual(len(said), 21)
        self.assertIn("there is more that is wrong", said[-1])

    def test_json_names_the_moment_and_the_policy(self):
        record = example(WAITING)
        path = self.write("p.toml", run("policy", "show").stdout.replace('id = "us-hospital"', 'id = "own"')
                          .replace("revision = 1", "revision = 3"))
        answer = run("decide", "--json", "--at", "2031-03-06T14:30-06:00", "--policy", path,
                     stdin=lines(record, example(TEST)))
        for line in answer.stdout.splitlines():
            decision = json.loads(line)
            self.assertEqual(decision["asOf"], "2031-03-06T20:30:00.000Z")
            self.assertEqual(decision["policy"], {"id": "own", "revision": 3, "digest": hashlib.sha256(
                path.read_bytes()).hexdigest()})
        decision = json.loads(run("decide", "--json", stdin=lines(record)).stdout)
        self.assertEqual(decision["policy"]["id"], "us-hospital")
        own = datetime.datetime.fromisoformat(record["decideAt"])
        self.assertEqual(datetime.datetime.fromisoformat(decision["asOf"].replace("Z", "+00:00")), own)

    def test_a_moment_that_has_not_come_is_said_unless_planned(self):
        now = datetime.datetime.now(datetime.timezone.utc)
        ahead, behind = example(GOOD), example(GOOD)
        ahead["decideAt"] = in_utc(now + datetime.timedelta(days=1))
        behind["decideAt"] = in_utc(now - datetime.timedelta(days=1))
        answer = run("decide", "--json", stdin=lines(behind, ahead, ahead))
        said = answer.stderr.splitlines()
        self.assertEqual(len(said), 2)
        for line, record in zip(said, (2, 3)):
            self.assertTrue(line.startswith(f"standard input: record {record}: decided for a moment that has "
                                            "not come: "), line)
        planned = run("decide", "--json", "--planned", stdin=lines(behind, ahead, ahead))
        self.assertEqual((planned.stderr, planned.stdout), ("", answer.stdout))
        at = run("decide", "--json", "--at", ahead["decideAt"], stdin=lines(behind))
        self.assertIn("record 1: decided for a moment that has not come", at.stderr)
        self.assertEqual(run("decide", "--json", "--at", behind["decideAt"], stdin=lines(ahead)).stderr, "")

    def test_a_copy_of_the_default_policy_needs_an_id_of_its_own(self):
        path = self.write("p.toml", run("policy", "show").stdout.replace("[leak.test_minutes]\nvalue = 10",
                                                                         "[leak.test_minutes]\nvalue = 12"))
        answer = run("decide", "--policy", path, path_of(GOOD))
        self.assertEqual((answer.returncode, answer.stdout), (2, ""))
        self.assertRegex(answer.stderr, ":\\d+: id: us-hospital is the id of the default policy.*an id of its own")

    def test_bad_files_do_not_stop_the_others(self):
        empty = self.write("empty.json", "")
        answer = run("decide", "/nowhere/at-all.json", empty, self.folder.name, path_of(GOOD))
        self.assertEqual(answer.returncode, 2)
        self.assertIn("/nowhere/at-all.json: cannot be opened", answer.stderr)
        self.assertIn(f"{empty}: record 1: ", answer.stderr)
        self.assertIn(f"{self.folder.name}: cannot be opened", answer.stderr)
        self.assertIn("Release", answer.stdout)

    def test_plain_output_ends_with_the_caution_once(self):
        answer = run("decide", path_of(GOOD), path_of(WAITING))
        said = " ".join(answer.stdout.split())
        self.assertEqual(said.count(CAUTION), 1)
        self.assertTrue(said.endswith("Makers' instructions for use (IFU), facility policy, local codes and "
                                      "licensed practice come first."))

    def test_plain_output_says_verdict_reasons_next_step_source_and_local_time(self):
        record = example(WAITING)
        answer = run("decide", path_of(WAITING))
        self.assertTrue(answer.stdout.startswith(f"{WAITING}, load {record['load']['lot']}: Quarantine\n"))
        for part in ["Waits for evidence: ", "Next: ", "Sources:", "[bi.incubating]",
                     "Time alone changes this at ", record["facility"]["timeZone"]]:
            self.assertIn(part, answer.stdout)
        second = run("decide", stdin=lines(example(TEST), record)).stdout
        self.assertIn(f"\nstandard input, record 2, load {record['load']['lot']}: Quarantine\n", second)

    def test_plain_output_of_every_record_fits_the_terminal(self):
        files = sorted((SOURCE / "demo/evidence").glob("*.json"))
        files += sorted((SOURCE / "resources/schema/examples").glob("*.json"))
        answer = run("decide", "--planned", *files)
        self.assertEqual(answer.stderr, "")
        self.assertLess(max(map(len, answer.stdout.splitlines())), 100)
        for file in files:
            self.assertRegex(answer.stdout, rf"(?m)^{re.escape(file.name)}, (load|test) ")

    def test_the_demo_is_decided_as_its_table_says(self):
        table = (SOURCE / "demo/README.md").read_text(encoding="utf-8")
        rows = re.findall(r"(?m)^\| \[([\w-]+)\]\(evidence/[^)]*\) \|[^|]*\| ([^|]*) \|$", table)
        files = sorted((SOURCE / "demo/evidence").glob("*.json"))
        self.assertEqual([name for name, _ in rows], [file.stem for file in files])
        decided = [json.loads(line) for line in run("decide", "--json", *files).stdout.splitlines()]
        for (name, said), decision in zip(rows, decided):
            with self.subTest(name):
                whole = decision["verdict"] if "verdict" in decision else f"test {decision['test']}"
                self.assertEqual(said.split(";")[0], whole)
                for part in said.split(";")[1:]:
                    verdict, _, labels = part.strip().partition(": ")
                    for label in labels.split(" · "):
                        self.assertIn((label, verdict),
                                      [(item["label"], item["verdict"]) for item in decision["items"]])

    def test_what_forces_the_verdict_comes_first_and_sources_last(self):
        record = example(GOOD)
        record["load"]["readings"][0]["celsius"] = 131        # fails
        record["load"]["readings"][3]["minutes"] = 18         # a review
        del record["load"]["verifications"]                   # waits
        record["load"]["items"][0]["devices"] = []            # a note
        block = run("decide", stdin=lines(record)).stdout
        places = [block.index(part) for part in [
            ": Reprocess\n", "\n  Why:\n", "[physical.below]", "\n  Also open:\n", "[physical.drying-short]",
            "[verification.missing]", "\n  Notes:\n", "[item.cycle-none-recorded]", "\n  Sources:\n"]]
        self.assertEqual(places, sorted(places))
        self.assertEqual(block.count("Sources:"), 1)
        why = block[block.index("Why:"):block.index("Also open:")]
        self.assertNotIn("Waits for", why)

    def test_the_same_of_several_items_is_said_once(self):
        record = example(GOOD)
        labels = [item["label"] for item in record["load"]["items"]]
        for item in record["load"]["items"]:
            item["checks"][0]["intact"] = False
        record["load"]["items"].append({**record["load"]["items"][0], "label": "C"})
        record["load"]["items"][-1]["checks"] = [dict(record["load"]["items"][0]["checks"][0], intact=True)]
        block = run("decide", stdin=lines(record)).stdout
        self.assertEqual(block.count("A check found the package damaged."), 1)
        self.assertIn("\n    Items: " + "; ".join(labels) + "\n", block)
        self.assertIn("\n  Reprocess: " + "; ".join(labels) + "\n", block)
        self.assertIn("\n  Release: 1 other item\n", block)

    def test_the_same_of_several_subjects_is_said_once(self):
        record = example(WAITING)
        vials = record["load"]["pcds"][0]["vials"]
        vials += [{**vials[0], "id": "V-B"}, {**vials[0], "id": "V-C"}]
        for number, item in enumerate(record["load"]["items"]):
            wrong = [{"method": "steam", "celsius": 121}]
            item["devices"] = [{"name": name, "allowedCycles": wrong} for name in ("drill", "saw")]
            item["label"] = f"set {number}"
        record["load"]["items"].append({**record["load"]["items"][0], "label": "other",
                                        "devices": [{"name": "drill", "allowedCycles": wrong}]})
        block = run("decide", stdin=lines(record)).stdout
        self.assertEqual(block[:block.index("Sources:")].count("[bi.incubating]"), 1)
        self.assertIn(f"(BI) {vials[0]['id']} is incubating.", " ".join(block.split()))
        self.assertIn("\n    The same of: V-B; V-C\n", block)
        # the drill is in more items than the saw, so each has its items
        self.assertEqual(block[:block.index("Sources:")].count("[item.cycle-not-allowed]"), 2)
        record["load"]["items"].pop()
        block = run("decide", stdin=lines(record)).stdout
        self.assertEqual(block[:block.index("Sources:")].count("[item.cycle-not-allowed]"), 1)
        self.assertIn("\n    The same of: saw\n    Item", block)

    def test_each_of_several_subjects_keeps_its_review(self):
        record = example(GOOD)
        codes = ["A1", "B2", "C3"]
        record["load"]["alarms"] = [{"code": code, "by": "p1", "happenedAt": record["load"]["start"]} for code in codes]
        block = run("decide", stdin=lines(record)).stdout
        why = block[:block.index("Sources:")]
        self.assertEqual([json.loads("{" + " ".join(named.split()) + "}")["subject"]
                          for named in re.findall(r"(?s)The review names (.+?\")\n", why)], codes)
        self.assertIn("\n    The same of: B2; C3\n", why)

    def test_what_only_follows_is_said_briefly(self):
        block = run("decide", "--planned", SOURCE / "demo/evidence/33-implants-wait-overnight.json").stdout
        said = " ".join(block.split())
        self.assertIn("waits for what is said of the load's implants. [item.implant-waits]", said)
        self.assertIn("is not final yet either. This load does not wait for it. [routine.pending]", said)
        self.assertEqual(block.count("Next: "), 2)

    def test_a_general_note_is_explained_once_a_run(self):
        record = example(GOOD)
        del record["load"]["pcds"]
        record["sterilizer"]["cycles"] = [cycle for cycle in record["sterilizer"]["cycles"] if "vials" not in cycle]
        explained = "has not been negative in the time in which it is due"
        first = run("decide", stdin=lines(record)).stdout
        self.assertEqual(" ".join(first.split()).count(explained), 1)
        three = run("decide", stdin=lines(record, record, record)).stdout
        self.assertEqual(" ".join(three.split()).count(explained), 1)
        short = f"\n  - As explained above, at standard input, load {record['load']['lot']}. [routine.none]\n"
        self.assertEqual(three.count(short), 2)
        self.assertEqual(three.count("[routine.none]"), 4)  # in full with its source, and twice in short
        two = run("decide", self.write("a.json", lines(record)), self.write("b.json", lines(record))).stdout
        self.assertIn(f"As explained above, at a.json, load {record['load']['lot']}. [routine.none]\n", two)

    def test_the_headline_says_when_no_item_may_go(self):
        record = example(GOOD)
        for item in record["load"]["items"]:
            item["checks"][0]["intact"] = False
        count = len(record["load"]["items"])
        self.assertGreater(count, 1)
        head = f"standard input, load {record['load']['lot']}: Release"
        self.assertTrue(run("decide", stdin=lines(record)).stdout.startswith(
            f"{head}, but none of its {count} items may go\n"))
        record["load"]["items"][0]["checks"][0]["intact"] = True
        self.assertTrue(run("decide", stdin=lines(record)).stdout.startswith(
            f"{head}, except {count - 1} item" + ("s" if count > 2 else "") + "\n"))
        record["load"]["items"] = record["load"]["items"][1:2]
        self.assertTrue(run("decide", stdin=lines(record)).stdout.startswith(f"{head}, but its only item may not go\n"))
        record["load"]["readings"] = record["load"]["readings"][:-1]
        self.assertIn(": Quarantine, but all its items: Reprocess\n", run("decide", stdin=lines(record)).stdout)

    def test_what_a_review_must_name_is_printed_as_it_is_typed(self):
        record = example(REVIEWED)
        review = record["load"]["reviews"].pop()
        block = run("decide", stdin=lines(record)).stdout
        named = re.search(r"(?s)The review names (.+?)\n    Next:", block)
        self.assertTrue(named, block)
        fields = json.loads("{" + named[1] + "}")
        self.assertEqual(fields["newestSeen"][-6:], record["decideAt"][-6:])
        self.assertEqual(fields["finding"], review["finding"])
        record["load"]["reviews"].append({**review, **fields})
        self.assertEqual(run("decide", stdin=lines(record)).returncode, 0)
        fields["newestSeen"] = fields["newestSeen"][:11] + "00:00" + fields["newestSeen"][-6:]  # too early
        record["load"]["reviews"] = [{**review, **fields}]
        self.assertEqual(run("decide", stdin=lines(record)).returncode, 1)

    def test_many_records_end_with_a_count(self):
        answer = run("decide", stdin=lines(example(GOOD), example(WAITING), example(TEST), {}, example(GOOD)))
        foot = answer.stdout[answer.stdout.rindex("Loads:"):]
        self.assertTrue(foot.startswith("Loads: Release 2, Quarantine 1.\nTests: Passed 1.\n"
                                        "Could not be read, and are not decided: records 1, files 0.\n"), foot)
        self.assertIn("Decided by policy us-hospital, revision 1, SHA-256 ", foot.replace("\n", " "))
        self.assertNotIn("Loads:", run("decide", path_of(GOOD)).stdout)

    def test_text_of_a_record_cannot_move_the_cursor(self):
        record = example(GOOD)
        for hidden in "\u001b[2J", "\nLoad X: Release", "\u009b2J", "\u202e":
            record["load"]["items"][0]["label"] = "A" + hidden
            record["load"]["colour" + hidden] = "red"
            answer = run("decide", stdin=lines(record))
            self.assertEqual((answer.returncode, answer.stdout), (2, ""))
            self.assertEqual(len(answer.stderr.splitlines()), 2)
            self.assertNotIn(hidden, answer.stderr.rstrip("\n"))
            self.assertEqual(answer.stderr.count(f"U+{ord(hidden[0]):04X}"), 2, answer.stderr)
            del record["load"]["colour" + hidden]

    def test_the_name_of_a_file_cannot_turn_the_text(self):
        for hidden in "\u202e", "\u2066", "\u009b", "\u001b":
            path = self.write(f"a{hidden}b.json", lines(example(GOOD)))
            answer = run("decide", path, self.write(f"c{hidden}d.json", "{}"))
            self.assertIn("a b.json, load ", answer.stdout)
            self.assertIn("c d.json: record 1", answer.stderr)
            self.assertNotIn(hidden, answer.stdout + answer.stderr)

    def test_at_overrules_the_records_own_moment(self):
        record = example(WAITING)
        decided = json.loads(run("decide", "--json", stdin=lines(record)).stdout)
        self.assertIsNotNone(decided["nextChangeAt"])
        later = json.loads(run("decide", "--json", "--at", decided["nextChangeAt"],
                               stdin=lines(record)).stdout)
        self.assertNotEqual(later["nextChangeAt"], decided["nextChangeAt"])
        self.assertIn("bi.due", [f["key"] for f in later["findings"]])
        self.assertIn("As of 6 Mar 2031 14:30",
                      run("decide", "--at=2031-03-06T14:30-06:00", stdin=lines(record)).stdout)

    def test_without_any_moment_it_is_now(self):
        record = example(GOOD)
        del record["decideAt"]
        answer = run("decide", "--json", stdin=lines(record))  # its times lie in 2031
        keys = [f["key"] for f in json.loads(answer.stdout)["findings"]]
        self.assertIn("act.times-impossible", keys)

    def test_policy(self):
        record = example(GOOD)
        text = run("policy", "show").stdout
        own = text.replace('id = "us-hospital"', 'id = "own"')
        blocking = re.sub(r"(\[bi.routine_blocks\]\nvalue = )false", r"\1true", own)
        self.assertNotEqual(blocking, own)
        for cycle in record["sterilizer"].get("cycles", []):
            cycle.pop("vials", None)
        for pcd in record["load"].get("pcds", []):
            pcd.pop("vials", None)
        lax = run("decide", "--json", "--policy", self.write("a.toml", own), stdin=lines(record))
        strict = run("decide", "--json", "--policy", self.write("b.toml", blocking), stdin=lines(record))
        outcome = {}
        for name, answer in [("lax", lax), ("strict", strict)]:
            found = [f for f in json.loads(answer.stdout)["findings"] if f["rule"] == "routine-bi"]
            outcome[name] = [f["outcome"] for f in found]
        self.assertEqual(outcome, {"lax": ["note"], "strict": ["waits"]})

    def test_a_bad_policy_decides_nothing(self):
        bad = self.write("bad.toml", run("policy", "show").stdout.replace("value = 1.3", "value = 2"))
        answer = run("decide", "--policy", bad, path_of(GOOD))
        self.assertEqual(answer.returncode, 2)
        self.assertEqual(answer.stdout, "")
        self.assertRegex(answer.stderr,
                         rf"^{re.escape(str(bad))}:\d+: leak.most_mbar_per_minute.value: 2 is milder")

    def test_specifications_by_name(self):
        record = example(GOOD)
        record["specification"] = "steam-prevacuum-132-wrapped@1"
        self.assertNotEqual(run("decide", "--json", stdin=lines(record)).stdout, "")
        record["specification"] = "own-prevacuum@2"
        answer = run("decide", stdin=lines(record))
        self.assertEqual(answer.returncode, 2)
        self.assertIn("/specification", answer.stderr)
        stored = (SOURCE / "resources/specifications/steam-prevacuum-132-wrapped.toml").read_text()
        self.write("own.toml", stored.replace('id = "steam-prevacuum-132-wrapped"', 'id = "own-prevacuum"')
                   .replace("revision = 1", "revision = 2"))
        answer = run("decide", "--planned", "--specifications", self.folder.name, stdin=lines(record))
        self.assertEqual(answer.stderr, "")
        self.write("wrong.toml", "id = 1\n")
        answer = run("decide", "--specifications", self.folder.name, stdin=lines(record))
        self.assertEqual((answer.returncode, answer.stdout), (2, ""))
        self.assertIn("wrong.toml:1: id: must be a text in quotes", answer.stderr)

    def test_each_record_is_answered_while_the_stream_is_open(self):
        line = lines(example(GOOD))
        with subprocess.Popen([CLI, "decide", "--json", "--planned"], stdin=subprocess.PIPE,
                              stdout=subprocess.PIPE, text=True) as program:
            for _ in range(3):
                program.stdin.write(line)
                program.stdin.flush()
                self.assertEqual(json.loads(program.stdout.readline())["verdict"], "release")
            program.stdin.close()
            self.assertEqual(program.wait(60), 0)

    def test_memory_does_not_grow_with_the_stream(self):
        def most_kibibytes(records):
            program = subprocess.Popen([CLI, "decide", "--json", "--planned"], stdin=subprocess.PIPE,
                                       stdout=subprocess.DEVNULL, text=True)
            line = lines(example(GOOD))
            for _ in range(records):
                program.stdin.write(line)
            program.stdin.flush()
            status = Path(f"/proc/{program.pid}/status")
            peak = int(re.search(r"VmHWM:\s+(\d+)", status.read_text())[1])
            program.stdin.close()
            self.assertEqual(program.wait(60), 0)
            return peak

        few, many = most_kibibytes(200), most_kibibytes(3000)
        # Sanitizers keep freed memory for a while, up to 256 MiB; the 3000 records are 20 MB.
        allowed = few + 300_000 if b"__asan_" in Path(CLI).read_bytes() else few + 4_000
        self.assertLess(many, allowed)

    def test_output_that_cannot_be_written_is_said(self):
        with open("/dev/full", "w") as full:
            answer = subprocess.run([CLI, "decide", "--planned", path_of(GOOD)], stdout=full,
                                    stderr=subprocess.PIPE, text=True, timeout=120)
        self.assertEqual(answer.returncode, 2)
        self.assertIn("could not be written", answer.stderr)


class Policy(Temporary):
    def test_show_is_the_file(self):
        self.assertEqual(run("policy", "show").stdout,
                         (SOURCE / "resources/policies/us-hospital.toml").read_text())

    def test_check_says_id_revision_and_digest(self):
        path = SOURCE / "resources/policies/us-hospital.toml"
        answer = run("policy", "check", path)
        self.assertEqual((answer.returncode, answer.stderr), (0, ""))
        self.assertIn("us-hospital, revision 1", answer.stdout)
        # FIPS 180-4, as Python's hashlib computes it
        self.assertIn("SHA-256 " + hashlib.sha256(path.read_bytes()).hexdigest(), answer.stdout)

    def test_check_says_every_error_with_line_and_field(self):
        text = run("policy", "show").stdout.replace("value = 1.3", "value = 1.4").replace(
            'confidence = "seen"', 'confidence = "sure"')
        path = self.write("p.toml", text)
        answer = run("policy", "check", path)
        self.assertEqual((answer.returncode, answer.stdout), (2, ""))
        errors = answer.stderr.splitlines()
        self.assertEqual(len(errors), 2)
        for error, part in zip(errors, ['confidence = "sure"', "value = 1.4"]):
            line = text[:text.index(part)].count("\n") + 1
            self.assertTrue(error.startswith(f"{path}:{line}: "), error)

    def test_check_lists_what_is_milder_than_the_default(self):
        default = run("policy", "show").stdout
        self.assertIn("\nNo value is milder than the default policy's.\n",
                      run("policy", "check", SOURCE / "resources/policies/us-hospital.toml").stdout)
        text = default.replace('id = "us-hospital"', 'id = "ours"')
        for section, value in ("bi.steam", "weekly"), ("implant.hold", "implants-only"), ("bi.readout", "last"):
            head, tail = text.split(f"[{section}]")
            text = f"{head}[{section}]" + re.sub(r'value = ".*?"', f'value = "{value}"', tail, count=1)
        path = self.write("ours.toml", text)
        answer = run("policy", "check", path)
        self.assertEqual((answer.returncode, answer.stderr), (0, ""))
        line = {word: text[:text.index(f'value = "{word}"')].count("\n") + 1 for word in ("weekly", "implants-only")}
        self.assertEqual(answer.stdout.split("Milder than the default policy:\n")[1].splitlines(), [
            f'{path}:{line["weekly"]}: bi.steam.value: "weekly"; the default is "each-day"',
            f'{path}:{line["implants-only"]}: implant.hold.value: "implants-only"; the default is "whole-load"'])

    def test_a_peroxide_load_waits_for_its_own_vial_where_the_readme_says(self):
        record = example("hydrogen-peroxide-load.json")
        del record["load"]["pcds"][0]["vials"]
        text = run("policy", "show").stdout.replace('id = "us-hospital"', 'id = "ours"')

        def decided(section, value):
            head, tail = text.split(f"[{section}]")
            changed = re.sub(r"value = .*", f"value = {value}", tail, count=1)
            answer = run("decide", "--json", "--policy", self.write("p.toml", f"{head}[{section}]{changed}"),
                         stdin=lines(record))
            self.assertEqual(answer.stderr.count("policy"), 0)
            decision = json.loads(answer.stdout)
            keys = {finding["key"] for finding in decision["findings"]}
            return decision["verdict"], keys - {"scope.no-history"}

        self.assertEqual(decided("bi.hydrogen_peroxide", '"each-day"'), ("release", {"routine.none"}))
        self.assertEqual(decided("bi.hydrogen_peroxide", '"every-load"'), ("quarantine", {"bi.missing"}))
        self.assertEqual(decided("bi.routine_blocks", "true"), ("quarantine", {"routine.none"}))

    def test_what_is_no_toml_is_said_with_line_and_column(self):
        path = self.write("p.toml", run("policy", "show").stdout.replace('id = "us-hospital"', "id = us"))
        answer = run("policy", "check", path)
        self.assertEqual((answer.returncode, answer.stdout), (2, ""))
        self.assertRegex(answer.stderr, re.escape(f"{path}:8: column 6: cannot be read as TOML; ") + ".*\n$")

    def test_check_of_a_file_that_is_not_there(self):
        answer = run("policy", "check", "/nowhere/p.toml")
        self.assertEqual(answer.returncode, 2)
        self.assertIn("/nowhere/p.toml: cannot be opened", answer.stderr)


WRAPPED = ("--cycle", "steam-prevacuum-132-wrapped@1")
SITE = ("--atmosphere", "101.325")
# The simulated cycle meets that specification.
CYCLE = ("trace", "--simulate", "--celsius", "132", "--exposure", "250", "--drying", "1230")


class Trace(Temporary):
    def simulated(self, *options):
        answer = run(*CYCLE, *options)
        self.assertEqual((answer.returncode, answer.stderr), (0, ""))
        self.assertTrue(answer.stdout.startswith("SIMULATED"), answer.stdout[:80])
        return answer.stdout

    def told(self, *options):
        answer = run("trace", self.write("t.csv", self.simulated(*options)), *WRAPPED, *SITE, "--json")
        return json.loads(answer.stdout), answer.returncode

    def test_exit_code_says_whether_all_is_met(self):
        good = self.write("good.csv", self.simulated())
        short = self.write("short.csv", self.simulated("--faults", "short-exposure=40"))
        spoilt = self.write("spoilt.csv", self.simulated("--defects", "gap"))
        self.assertEqual(run("trace", good, *WRAPPED, *SITE).returncode, 0)
        self.assertEqual(run("trace", good, short, *WRAPPED, *SITE).returncode, 1)
        self.assertEqual(run("trace", spoilt, good, *WRAPPED, *SITE).returncode, 2)
        # Drying cannot be told without the site's atmosphere.
        self.assertEqual(run("trace", good, *WRAPPED).returncode, 2)
        self.assertEqual(run("trace", "-", *WRAPPED, *SITE, stdin=good.read_text()).returncode, 0)
        other = run("trace", "/nowhere.csv", good, *WRAPPED, *SITE)
        self.assertEqual(other.returncode, 2)
        self.assertIn("/nowhere.csv: cannot be opened", other.stderr)
        self.assertIn("all that was asked is met", other.stdout)

    def test_each_fault_is_told(self):
        for fault, answer in [("short-exposure=40", "exposure"), ("short-drying=300", "drying"),
                              ("interrupted-exposure=20:3", "uninterrupted"),
                              ("low-temperature=2", "notBelow"), ("superheat=5", "saturated"),
                              ("residual-air=5", "saturated")]:
            report, code = self.told("--faults", fault)
            self.assertEqual(report["answers"][answer], "not-met", fault)
            self.assertEqual(code, 1, fault)
        report, code = self.told()
        self.assertEqual(set(report["answers"].values()), {"met"})
        self.assertEqual(code, 0)

    def test_f0_is_that_of_numpy(self):
        # The trapezoid of 10^((T - 121.1)/10) in minutes; what numpy computes of the same text.
        import numpy
        text = self.simulated()
        rows = numpy.array([[float(field) for field in line.split(",")]
                            for line in text.splitlines()[2:]])
        answer = run("trace", "-", *WRAPPED, *SITE, "--json", stdin=text)
        channels = json.loads(answer.stdout)["f0"]["channels"]
        self.assertEqual(len(channels), 3)
        for column, channel in enumerate(channels, start=1):
            rate = 10 ** ((rows[:, column] - 121.1) / 10)
            expected = ((rate[1:] + rate[:-1]) / 2 * numpy.diff(rows[:, 0])).sum() / 60
            self.assertAlmostEqual(channel["wholeMinutes"] / expected, 1, delta=1e-9)

    def test_a_sentence_for_each_defect_with_line_and_column(self):
        text = self.simulated("--defects", "text-in-number,gap,last-line-open")
        answer = run("trace", "-", *WRAPPED, *SITE, stdin=text)
        self.assertEqual(answer.returncode, 2)
        line = next(i for i, row in enumerate(text.splitlines(), start=1) if "13x.1" in row)
        self.assertRegex(answer.stdout, rf"Line {line}, character \d+, column 4")
        self.assertIn("s without a sample", answer.stdout)
        self.assertIn("has no line end", answer.stdout)

    def test_what_is_read_is_said_with_its_cautions(self):
        answer = run("trace", "-", *WRAPPED, *SITE, stdin=self.simulated())
        flowing = " ".join(answer.stdout.split())
        for part in ("SIMULATED", "nobody has confirmed", "is not temperature inside the pack", CAUTION,
                     "Makers' instructions for use", "F0, min at 121.10"):
            self.assertIn(part, flowing)

    def test_a_proposal_can_be_given_back(self):
        text = self.simulated("--separator", "semicolon", "--decimal", "comma", "--temperature-unit",
                              "fahrenheit", "--pressure-unit", "psi", "--pressure-zero", "gauge",
                              "--time-form", "date-time", "--begins", "2031-03-04T07:14",
                              "--counter", "4113")
        file = self.write("t.csv", text)
        proposed = run("trace", "--propose", file)
        self.assertEqual(proposed.returncode, 0)
        self.assertIn("psi gauge", proposed.stderr)
        mapping = self.write("map.json", proposed.stdout)
        answer = run("trace", file, "--map", mapping, *WRAPPED, *SITE, "--json")
        self.assertEqual(answer.returncode, 0, answer.stderr)
        report = json.loads(answer.stdout)
        self.assertTrue(report["mappingConfirmed"])
        self.assertEqual(report["counter"], "4113")
        self.assertEqual(report["start"], {"date": "2031-03-04", "secondsOfDay": 7 * 3600 + 14 * 60})
        self.assertNotIn("nobody has confirmed",
                         run("trace", file, "--map", mapping, *WRAPPED, *SITE).stdout)
        broken = run("trace", file, "--map", self.write("no.json", "{}"), *WRAPPED)
        self.assertEqual((broken.returncode, broken.stdout), (2, ""))
        self.assertIn("no.json: ", broken.stderr)
        self.assertEqual(run("trace", "--propose", self.write("words.txt", "no numbers\n")).returncode, 2)

    def test_any_text_is_answered(self):
        for text in ("", "\n", "a,b\n1,2\n", "\0", "0,1\n" * 3, "\ufeff;;\n"):
            answer = run("trace", "-", *WRAPPED, stdin=text)
            self.assertEqual(answer.returncode, 2, repr(text))
            self.assertIn("standard input: not usable", answer.stdout)

    def test_a_leak_test(self):
        leaks = Path(self.folder.name) / "leak.toml"
        stored = (SOURCE / "resources/specifications/steam-prevacuum-132-wrapped.toml").read_text()
        leaks.write_text(re.sub(r'(?m)^purpose = .*', 'purpose = "leak"',
                                stored.replace('id = "steam-prevacuum-132-wrapped"', 'id = "leak"')))
        for fault, code in (((), 0), (("--faults", "leak=0.5"), 1)):
            text = run("trace", "--simulate", "--program", "leak-test", "--settle", "400",
                       *fault).stdout
            answer = run("trace", "-", "--cycle", "leak@1", "--specifications", self.folder.name,
                         *SITE, stdin=text)
            self.assertEqual(answer.returncode, code, answer.stdout + answer.stderr)
            self.assertIn("mbar/min", answer.stdout)

    def test_a_seed_makes_the_same_cycle(self):
        self.assertEqual(self.simulated("--seed", "7"), self.simulated("--seed", "7"))
        self.assertNotEqual(self.simulated("--seed", "7"), self.simulated("--seed", "8"))

    def test_bad_usage(self):
        for arguments, part in [
            (("trace",), "trace needs a file"),
            (("trace", "t.csv"), "this needs --cycle"),
            (("trace", "t.csv", "--cycle", "none@1"), "there is no specification none@1"),
            (("trace", "t.csv", *WRAPPED, "--atmosphere", "0"), "--atmosphere needs"),
            (("trace", "--simulate", "t.csv"), "takes no file"),
            (("trace", "--simulate", "--faults", "rust=1"), "a fault is one of: short-exposure"),
            (("trace", "--simulate", "--faults", "leak"), "KIND=SIZE"),
            (("trace", "--simulate", "--defects", "empty"), "cannot be written"),
            (("trace", "--simulate", "--begins", "today"), "--begins needs"),
            (("trace", "--simulate", "--celsius", "20"), "--celsius needs a number from 105 to 150"),
            (("trace", "--propose"), "needs one file"),
        ]:
            answer = run(*arguments)
            self.assertEqual((answer.returncode, answer.stdout), (2, ""), arguments)
            self.assertIn(part, answer.stderr, arguments)


class Others(unittest.TestCase):
    def test_schemas(self):
        for arguments, name in [((), "evidence"), (("evidence",), "evidence"), (("decision",), "decision")]:
            answer = run("schema", *arguments)
            self.assertEqual(answer.returncode, 0)
            self.assertEqual(answer.stdout, (SOURCE / f"resources/schema/{name}.schema.json").read_text())

    def test_specifications(self):
        names = run("specifications").stdout.split()
        files = []
        for path in (SOURCE / "resources/specifications").glob("*.toml"):
            revision = re.search(r"(?m)^revision = (\d+)$", path.read_text(encoding="utf-8"))
            files.append(f"{path.stem}@{revision[1]}")
        self.assertEqual(sorted(names), sorted(files))

    def test_a_specification_that_is_there_already_is_said_where_its_id_stands(self):
        stored = next((SOURCE / "resources/specifications").glob("*.toml"))
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "copy.toml"
            path.write_text(stored.read_text())
            line = re.split(r"^id = ", stored.read_text(), flags=re.MULTILINE)[0].count("\n") + 1
            answer = run("specifications", "--specifications", folder)
        self.assertEqual(answer.returncode, 2)
        self.assertTrue(answer.stderr.startswith(f"{path}:{line}: id: "), answer.stderr)

    def test_help_carries_the_caution(self):
        for arguments in [("--help",), ("-h",), ("decide", "--help")]:
            answer = run(*arguments)
            self.assertEqual(answer.returncode, 0)
            self.assertIn(CAUTION, answer.stdout)

    def test_version(self):
        self.assertRegex(run("--version").stdout, r"^loadwarden-cli \d+\.\d+\.\d+\n$")

    def test_bad_usage(self):
        for arguments, part in [
            ((), "no command is named"),
            (("release",), "there is no command release"),
            (("--verbose",), "there is no option --verbose"),
            (("decide", "--at"), "--at needs a value"),
            (("decide", "--at", "yesterday"), "--at needs a moment"),
            (("decide", "--at", "2031-03-04T07:14"), "--at needs a moment"),
            (("decide", "--json=yes"), "--json takes no value"),
            (("decide", "--planned", "--planned"), "--planned is given twice"),
            (("decide", "--json", "--json"), "--json is given twice"),
            (("decide", "--polcy", "x"), "there is no option --polcy"),
            (("policy",), "policy is used as"),
            (("policy", "check"), "policy is used as"),
            (("schema", "policy"), "there is no schema policy"),
            (("specifications", "x"), "takes no file"),
            (("--version", "x"), "there is no option"),
        ]:
            answer = run(*arguments)
            self.assertEqual(answer.returncode, 2, arguments)
            self.assertEqual(answer.stdout, "", arguments)
            self.assertIn(part, answer.stderr, arguments)


if __name__ == "__main__":
    CLI, SOURCE = sys.argv[1], Path(sys.argv[2])
    unittest.main(argv=sys.argv[:1], verbosity=1)
