#!/usr/bin/python3
"""Whether what `decide --json` writes is what the published schema says.

usage: decision_schema_test.py LOADWARDEN_CLI SOURCE_DIR
"""
import json
import re
import subprocess
import sys
import unittest
from pathlib import Path

import jsonschema

CLI = SOURCE = None


def schema():
    return json.loads((SOURCE / "resources/schema/decision.schema.json").read_text())


class DecisionSchema(unittest.TestCase):
    def test_is_a_schema(self):
        jsonschema.Draft202012Validator.check_schema(schema())

    def test_knows_every_key_and_rule(self):
        finding = schema()["$defs"]["finding"]["properties"]
        release = SOURCE / "core/release"
        keys = re.findall(r'LW_KEY\(\w+, "([^"]+)"', (release / "finding_keys.def").read_text())
        rules = re.findall(r'LW_RULE\(\w+, "([^"]+)"', (release / "rules.def").read_text())
        self.assertGreater(len(keys), 100)
        self.assertEqual(finding["key"]["enum"], keys)
        self.assertEqual(finding["rule"]["enum"], list(dict.fromkeys(rules)))

    def test_describes_every_line(self):
        files = sorted((SOURCE / "resources/schema/examples").glob("*.json"))
        files += sorted((SOURCE / "demo/evidence").glob("*.json"))
        answer = subprocess.run([CLI, "decide", "--json", "--planned", *files], capture_output=True,
                                text=True, timeout=250)
        self.assertEqual(answer.stderr, "")
        validator = jsonschema.Draft202012Validator(schema())
        decisions = [json.loads(line) for line in answer.stdout.splitlines()]
        self.assertGreaterEqual(len(decisions), len(files))
        for decision in decisions:
            errors = [error.message for error in validator.iter_errors(decision)]
            self.assertEqual(errors, [], decision["lot"])

    def test_refuses_what_is_not_a_decision(self):
        validator = jsonschema.Draft202012Validator(schema())
        good = {"lot": None, "verdict": "release", "asOf": "2031-03-04T13:14:00.000Z",
                "policy": {"id": "p", "revision": 1, "digest": "0" * 64}, "findings": [], "items": [],
                "nextChangeAt": None}
        self.assertTrue(validator.is_valid(good))
        for change in [{"verdict": "maybe"}, {"lot": ""}, {"nextChangeAt": "2031-03-04"}, {"more": 1},
                       {"test": "passed"}, {"asOf": None}, {"policy": {"id": "p", "revision": 1}},
                       {"findings": [{"key": "bi.due"}]}]:
            self.assertFalse(validator.is_valid({**good, **change}), change)


if __name__ == "__main__":
    CLI, SOURCE = sys.argv[1], Path(sys.argv[2])
    unittest.main(argv=sys.argv[:1])
