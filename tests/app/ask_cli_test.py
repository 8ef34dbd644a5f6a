#!/usr/bin/python3
"""Questions on the command line: the best topic with its answer, two next ones, faults, exit codes.

usage: ask_cli_test.py LOADWARDEN_CLI SOURCE_DIR
"""
import json
import math
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

CLI = SOURCE = None
CAUTION = "Loadwarden recommends; a named person decides and signs."
TOPIC = """topic_version = 1
id = "{id}"
question = "Where is the spare {id} kept?"
also_asked = ["Who has the key of the {id}?", "Cupboard of {id}"]
short_answer = "In the cupboard beside the door."
do_now = ["Ask at the desk."]
why = "It is the house's own."
caution = "None but the usual."
owner = "the desk"
review_by = 2031-03-04
related = ["wet-packs"]
[[source]]
text = "common practice, no source"
confidence = "common-practice"
"""
NOTE = """note_version = 1
topic = "wet-packs"
note = "Here the lead of the shift is called at once."
owner = "lead of sterilization"
review_by = 2031-03-04
"""


def run(*arguments):
    return subprocess.run([CLI, *map(str, arguments)], capture_output=True, text=True, timeout=120)


def one_line(text):
    return " ".join(text.split())


class Ask(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def write(self, name, text):
        path = self.folder / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(text)
        return path

    def test_the_answer_with_what_the_rules_decide_and_two_next_topics(self):
        answer = run("ask", "wet", "packs,", "can they be used when they dry?")
        self.assertEqual((answer.returncode, answer.stderr), (0, ""))
        said = one_line(answer.stdout)
        self.assertTrue(said.startswith("The packs came out of the sterilizer wet."))
        self.assertIn("What to do now: 1. ", said)
        self.assertIn("Reprocess (item IT-2) [rule package]", said)
        self.assertIn("[item.wet]", said)
        self.assertIn("ANSI/AAMI ST79", said)
        self.assertIn("Owner: facility: name the owner.", said)
        self.assertIn(CAUTION, said)
        below = answer.stdout.split("Or did you mean:\n")[1]
        self.assertEqual(sum(line.startswith("- ") for line in below.splitlines()), 2)
        self.assertLessEqual(max(map(len, answer.stdout.splitlines())), 98)

    def test_json_holds_the_decision_itself(self):
        answer = run("ask", "--json", "--topic", "bowie-dick-forgotten")
        said = json.loads(answer.stdout)
        self.assertEqual(answer.returncode, 0)
        self.assertTrue(said["caution"].startswith(CAUTION))
        topic = said["topic"]
        self.assertEqual([case["result"] for case in topic["cases"]], ["quarantine", "reprocess"])
        late = topic["cases"][1]
        # The same file given to decide says the same.
        evidence = SOURCE / "resources/guidance/evidence" / late["evidence"]
        decided = json.loads(run("decide", "--json", "--planned", evidence).stdout)
        self.assertEqual(late["decision"], decided)
        self.assertEqual(late["keys"], ["air-removal.made-after"])
        self.assertTrue(late["asTheAnswerSays"])
        self.assertFalse(topic["policyDiffers"])

    def policy_that_decides_otherwise(self):
        policy = (SOURCE / "resources/policies/us-hospital.toml").read_text()
        for old, new in [('id = "us-hospital"', 'id = "house"'),
                         ('[air_removal.made_after]\nvalue = "fails"',
                          '[air_removal.made_after]\nvalue = "review"')]:
            self.assertIn(old, policy)
            policy = policy.replace(old, new, 1)
        return self.write("house.toml", policy)

    def test_a_policy_that_decides_otherwise_is_said(self):
        path = self.policy_that_decides_otherwise()
        said = run("ask", "--policy", path, "--topic", "bowie-dick-forgotten")
        self.assertEqual(said.returncode, 0)
        self.assertIn("The policy given here decides otherwise", one_line(said.stdout))
        said = json.loads(run("ask", "--json", "--policy", path, "--topic",
                              "bowie-dick-forgotten").stdout)
        self.assertTrue(said["topic"]["policyDiffers"])
        self.assertEqual(said["topic"]["cases"][1]["result"], "quarantine")

    def test_typing_errors(self):
        said = json.loads(run("ask", "--json", "the bowi dick shet is not unifrom").stdout)
        self.assertEqual(said["topic"]["id"], "bowie-dick-failed")

    def test_nothing_fits(self):
        answer = run("ask", "when does the cafeteria open on sundays")
        self.assertEqual((answer.returncode, answer.stderr), (1, ""))
        self.assertIn("No topic answers this well. Ask your lead", one_line(answer.stdout))
        self.assertNotIn("What to do now", answer.stdout)
        self.assertIn(CAUTION, answer.stdout)
        answer = run("ask", "--json", "zzzzz")
        said = json.loads(answer.stdout)
        self.assertEqual((answer.returncode, said["topic"], said["next"]), (1, None, []))

    def test_list_and_topic(self):
        listed = json.loads(run("ask", "--list", "--json").stdout)["topics"]
        self.assertGreaterEqual(len(listed), 44)
        plain = run("ask", "--list").stdout
        for topic in listed:
            self.assertIn(f"[{topic['id']}]", plain)
        answer = run("ask", "--topic", "no-such-topic")
        self.assertEqual((answer.returncode, answer.stdout), (2, ""))
        self.assertIn("there is no topic no-such-topic", answer.stderr)

    def test_usage(self):
        for arguments, message in [
            ([], "ask needs a question"), (["  "], "ask needs a question"),
            (["--loud", "wet"], "there is no option --loud"), (["x" * 1001], "at most 1000 characters"),
            (["--population", "1e6", "--d-minutes", "1.5"], "this needs --minutes"),
            (["--population", "many", "--d-minutes", "1.5", "--minutes", "9"], "needs a number, not many"),
            (["--population", "-1", "--d-minutes", "1.5", "--minutes", "9"], "the population must be"),
            (["--topics", "/no/such/folder", "wet"], "cannot be read as a folder"),
        ]:
            answer = run("ask", *arguments)
            self.assertEqual((answer.returncode, answer.stdout), (2, ""), arguments)
            self.assertIn(message, answer.stderr)

    def test_a_facility_adds_topics_and_notes(self):
        self.write("en/house-key.toml", TOPIC.format(id="house-key"))
        self.write("en/wet-packs.note.toml", NOTE)
        answer = run("ask", "--topics", self.folder, "who has the key of the cupboard")
        self.assertEqual(answer.returncode, 0)
        self.assertIn("[house-key, of the house]", answer.stdout)
        answer = run("ask", "--topics", self.folder, "--topic", "wet-packs", "--language", "de")
        self.assertIn("This house adds: Here the lead of the shift is called at once.", answer.stdout)
        self.assertIn("Owner: lead of sterilization. Review by 2031-03-04", answer.stdout)

    def test_all_faults_are_said_with_file_and_line(self):
        bad = self.write("en/house-key.toml",
                         TOPIC.format(id="house-key").replace("owner", "ovner")
                         .replace("2031-03-04", '"soon"'))
        same = self.write("en/wet-packs.toml",
                          TOPIC.format(id="wet-packs").replace('["wet-packs"]', '["package-torn"]'))
        answer = run("ask", "--topics", self.folder, "wet packs")
        self.assertEqual((answer.returncode, answer.stdout), (2, ""))
        errors = answer.stderr.splitlines()
        self.assertEqual(len(errors), 4, answer.stderr)
        self.assertIn(f"{bad}:1: owner: is missing", errors)
        self.assertIn(f"{bad}:9: ovner: is not known here", errors)
        self.assertTrue(any(e.startswith(f"{bad}:10: review_by: must be a day") for e in errors))
        self.assertTrue(any(e.startswith(f"{same}:2: id: wet-packs is a topic of the program")
                            for e in errors))

    def test_calculator(self):
        said = json.loads(run("ask", "--population", "1e6", "--d-minutes", "1.5", "--minutes", "18",
                              "--json").stdout)
        self.assertAlmostEqual(said["logReduction"], 12)
        self.assertAlmostEqual(said["survivors"] * 1e6, 1)
        self.assertAlmostEqual(said["chanceOfAny"], -math.expm1(-1e-6))
        plain = run("ask", "--population", "1e6", "--d-minutes", "1.5", "--minutes", "9")
        self.assertEqual(plain.returncode, 0)
        self.assertIn("log reduction 6, expected survivors 1, chance of at least one 0.632",
                      one_line(plain.stdout))
        self.assertIn("temperature in the chamber is not temperature inside the pack",
                      one_line(plain.stdout))
        self.assertIn(CAUTION, plain.stdout)

    def read_back(self, *arguments):
        sheet = self.folder / "sheet.pdf"
        answer = run("paper", *arguments, "--out", sheet)
        self.assertEqual(answer.returncode, 0, answer.stderr)
        text = subprocess.run(["pdftotext", "-raw", sheet, "-"], capture_output=True, text=True,
                              check=True).stdout
        return answer.stdout, one_line(text), text.count("\f")

    def test_a_topic_on_paper_needs_no_journal(self):
        said, card, pages = self.read_back("answer-card", "front-in-accept-zone")
        self.assertEqual((pages, said), (1, f"{self.folder / 'sheet.pdf'}: 1 page.\n"))
        for words in ("It need not fill the zone.", "common practice, no source", "Release",
                      "What to do now", CAUTION, "Review by"):
            self.assertIn(words, card)
        said, sheet, pages = self.read_back("in-service", "front-in-accept-zone", "--page", "a4",
                                            "--json")
        self.assertEqual(json.loads(said), {"pages": pages})
        for words in ("It need not fill the zone.", "Who attended", "What is often believed?"):
            self.assertIn(words, sheet)

    def test_a_topic_of_the_house_on_paper(self):
        self.write("en/house-key.toml", TOPIC.format(id="house-key"))
        for kind in ("answer-card", "in-service"):
            _, sheet, _ = self.read_back(kind, "house-key", "--topics", self.folder)
            for words in ("In the cupboard beside the door.", "the desk", "2031-03-04",
                          "from the facility's own topic house-key"):
                self.assertIn(words, sheet)
        self.write("en/bad.toml", "topic_version = ")
        sheet = self.folder / "none.pdf"
        answer = run("paper", "answer-card", "house-key", "--topics", self.folder, "--out", sheet)
        self.assertEqual(answer.returncode, 2)
        self.assertIn("bad.toml:1:", answer.stderr)
        self.assertFalse(sheet.exists())

    def test_a_card_says_where_the_policy_decides_otherwise(self):
        ours = self.policy_that_decides_otherwise()
        warning = "The policy decides otherwise than this answer says"
        _, card, _ = self.read_back("answer-card", "bowie-dick-forgotten", "--policy", ours)
        self.assertIn(warning, card)
        _, card, _ = self.read_back("answer-card", "bowie-dick-forgotten")
        self.assertNotIn(warning, card)

    def test_what_is_asked_of_paper_wrongly_is_said(self):
        sheet = self.folder / "none.pdf"
        for arguments, words in ((["answer-card"], "the id of one topic"),
                                 (["in-service", "nothing"], "there is no topic nothing"),
                                 (["answer-card", "wet-packs", "--page", "a5"], "letter or a4"),
                                 (["poster"], "answer-card or in-service")):
            answer = run("paper", *arguments, "--out", sheet)
            self.assertEqual(answer.returncode, 2)
            self.assertIn(words, answer.stderr)
            self.assertFalse(sheet.exists())
        self.assertIn("--out", run("paper", "answer-card", "wet-packs").stderr)

    def test_help_names_it(self):
        self.assertIn("\n  ask TEXT", run("--help").stdout)


if __name__ == "__main__":
    CLI, SOURCE = sys.argv[1], Path(sys.argv[2])
    unittest.main(argv=sys.argv[:1], verbosity=1)
