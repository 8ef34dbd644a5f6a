"""Checks of the oracle itself against small cases worked out by hand from RULES.md.

    python3 -m unittest test_oracle
"""

import itertools
import json
import os
import random
import sys
import unittest

import boundaries
import crossed
import defects
import generate
import keys
import oracle
import turns
from chemical import settle
from evidence import one_spelling
from moments import day_of, moment, written, zone
from physical import compare
from policy_variants import HERE
from policy import load_policy

WORKED = os.path.join(HERE, "..", "data", "worked_cases")
sys.path.append(WORKED)
import check_cases  # noqa: E402

DEFAULT = os.path.join(HERE, "policies", "us-hospital.toml")
if not os.path.exists(DEFAULT):
    DEFAULT = os.path.join(HERE, "..", "..", "resources", "policies", "us-hospital.toml")
POLICY = load_policy(DEFAULT)


class Times(unittest.TestCase):
    def test_spellings(self):
        self.assertEqual(written(moment("2031-03-04T07:14-06:00")), "2031-03-04T13:14:00.000Z")
        self.assertEqual(moment("2031-03-04T07:14:00.5Z") - moment("2031-03-04T07:14Z"), 500)
        self.assertEqual(moment("2031-03-04T00:00+05:30"), moment("2031-03-03T18:30:00.000Z"))

    def test_half_hour_gap(self):
        # Lord Howe goes from +10:30 to +11 at 02:00 on 5 October 2031: 02:10 does not exist
        z = zone("Australia/Lord_Howe")
        self.assertEqual(written(z.absolute(day_of("2031-10-05"), 2, 10)), "2031-10-04T15:30:00.000Z")
        # and back at 02:00 on 6 April 2031: 01:45 comes twice, the first is at +11
        self.assertEqual(written(z.absolute(day_of("2031-04-06"), 1, 45)), "2031-04-05T14:45:00.000Z")

    def test_midnight_gap(self):
        # Havana goes from -05 to -04 at 00:00 on 9 March 2031: the day begins at 01:00
        z = zone("America/Havana")
        self.assertEqual(written(z.next_midnight(moment("2031-03-09T03:00Z"))), "2031-03-09T05:00:00.000Z")

    def test_period_edges(self):
        z = zone("America/Chicago")
        at = moment("2031-03-04T06:00-06:00")
        number, end = z.period(at, "06:00")
        self.assertEqual(end, moment("2031-03-05T06:00-06:00"))
        self.assertEqual(z.period(at - 1, "06:00"), (number - 1, at))
        # the period that begins at 02:30 on the night of the gap begins at 03:00 -05:00
        self.assertEqual(z.period(moment("2031-03-09T12:00-05:00"), "02:30")[0],
                         z.period(moment("2031-03-09T03:00-05:00"), "02:30")[0])
        self.assertEqual(z.period(moment("2031-03-09T01:59:59.999-06:00"), "02:30")[1],
                         moment("2031-03-09T03:00-05:00"))


def reading(seen, by, minute):
    return {"seen": seen, "by": by, "happenedAt": "2031-03-04T07:%02d:00Z" % minute}


class Settling(unittest.TestCase):
    def check(self, expected, *readings, unsettled=None):
        rows = [reading(seen, by, n) for n, (seen, by) in enumerate(readings)]
        self.assertEqual(settle(rows, lambda r: r["seen"], unsettled).state, expected)

    def test_table(self):
        self.check("none")
        self.check("accepted", ("good", "a"), ("good", "b"))
        self.check("rejected", ("good", "a"), ("bad", "b"), ("good", "c"))
        self.check("unclear", ("unclear", "a"), ("good", "a"))
        self.check("unclear", ("unclear", "a"), ("unclear", "a"))
        self.check("accepted", ("unclear", "a"), ("good", "b"))
        self.check("rejected", ("unclear", "a"), ("unclear", "b"))
        self.check("unclear", ("unclear", "a"), ("good", "b"), ("unclear", "a"))      # by the first reader: ignored
        self.check("unclear", ("unclear", "a"), ("good", "b"), ("unclear", ""))
        self.check("rejected", ("unclear", "a"), ("good", "b"), ("unclear", "b"))
        self.check("rejected", ("unclear", "a"), ("good", "b"), ("unclear", "c"))
        self.check("accepted", ("unclear", "a"), ("good", "b"), ("unclear", "a"), ("good", "c"))
        self.check("unclear", ("unclear", "a"), ("good", "b"), ("unclear", "a"), ("good", "a"))
        self.check("unclear", ("good", "b"), ("unclear", "b"))
        self.check("unclear", ("good", "a"), ("unclear", "a"))
        self.check("accepted", ("good", "a"), ("unclear", "a"), ("good", "b"))
        self.check("unclear", ("unclear", ""), ("good", "b"))
        self.check("unclear", ("unclear", "a"), ("unclear", ""))
        self.check("rejected", ("unclear", "a"), unsettled=reading("", "a", 30))
        self.check("accepted", ("good", "a"), unsettled=reading("", "a", 30))

    def test_turns_are_by_recording(self):
        rows = [dict(reading("unclear", "a", 1), recordedAt="2031-03-04T07:20Z"), reading("good", "b", 5)]
        self.assertEqual(settle(rows, lambda r: r["seen"], None).state, "unclear")


    def test_one_person_in_two_spellings(self):
        self.assertEqual(one_spelling(" Op \t1"), one_spelling("oP1"))
        self.assertEqual(one_spelling(" \n"), "")
        self.assertNotEqual(one_spelling("\u00c4-1"), one_spelling("\u00e4-1"))        # A to Z only
        self.check("unclear", ("unclear", "op-1"), ("good", " OP-1"))
        self.check("unclear", ("unclear", "op-1"), ("good", "  "))
        self.check("accepted", ("unclear", "op-1"), ("good", "OP-2"))


class Physical(unittest.TestCase):
    class Site:
        atmosphere = oracle.Decimal("101.325")

    def test_conversions(self):
        d = oracle.Decimal
        limit = {"leastCelsius": d("132.05"), "mostPsiGauge": d(1000), "leastKPaAbsolute": d("301.325")}
        self.assertEqual(compare(self.Site, "temperature", "fahrenheit", d("269.69"), limit, "least"), 0)
        self.assertEqual(compare(self.Site, "temperature", "fahrenheit", d("269.68"), limit, "least"), -1)
        self.assertEqual(compare(self.Site, "pressure", "kPaGauge", d("6894.757"), limit, "most"), 0)
        self.assertEqual(compare(self.Site, "pressure", "kPaGauge", d("6894.758"), limit, "most"), 1)
        self.assertEqual(compare(self.Site, "pressure", "barGauge", d("2"), limit, "least"), 0)
        self.assertEqual(compare(self.Site, "pressure", "barGauge", d("1.999"), limit, "least"), -1)


class Decisions(unittest.TestCase):
    def test_bare_load(self):
        record = oracle.parse('{"evidenceVersion":1,"facility":{"timeZone":"UTC"},"load":{}}')
        decision = oracle.decide(record, POLICY, moment("2031-03-04T12:00Z"))
        self.assertEqual(decision["verdict"], "quarantine")
        keys = sorted((f["key"], f.get("subject", "")) for f in decision["findings"])
        self.assertEqual(keys, [("cycle.not-ended", ""), ("pcd.none-recorded", ""), ("printout.missing", "")]
                         + [("record.missing", s) for s in ("end", "items", "lot", "operator", "specification",
                                                            "start", "sterilizer")]
                         + [("verification.missing", "")])
        self.assertIsNone(decision["nextChangeAt"])

    def test_leak(self):
        text = ('{"evidenceVersion":1,"facility":{"timeZone":"UTC"},"test":{"kind":"leak","lot":"t","outcome":"ended",'
                '"start":"2031-03-04T07:00Z","leak":{"settledMinutes":5,"minutes":10,"riseMbar":%s,"by":"op-1",'
                '"happenedAt":"2031-03-04T07:30Z"}}}')
        for rise, result in (("13", "passed"), ("13.000", "passed"), ("13.001", "failed")):
            decision = oracle.decide(oracle.parse(text % rise), POLICY, moment("2031-03-04T12:00Z"))
            self.assertEqual(decision["test"], result)

    def test_records_are_the_same_for_the_same_seed(self):
        first, second = (list(generate.records("s", 5, POLICY)) for _ in range(2))
        self.assertEqual(first, second)

    def test_a_record_without_changes_is_often_released(self):
        rng, released = random.Random(4), 0
        for number in range(200):
            text = generate.make_record(rng, POLICY, number)
            released += oracle.decide(oracle.parse(text), POLICY).get("verdict") == "release"
        self.assertGreater(released, 20)


class WrittenTimes(unittest.TestCase):
    """Every time of a record is in UTC with Z or has the offset of the facility's zone at that moment."""

    def setUp(self):
        self.errors = check_cases.zone_errors(check_cases.read(
            check_cases.HERE.parents[2] / "resources" / "schema" / "evidence.schema.json"))

    def found(self, zone_name, time):
        return len(list(self.errors({"evidenceVersion": 1, "facility": {"timeZone": zone_name}, "load": {"start": time}})))

    def test_offsets(self):
        for zone_name, time, wrong in (
                ("America/Chicago", "2031-03-04T07:00-06:00", 0), ("America/Chicago", "2031-03-04T13:00Z", 0),
                ("America/Chicago", "2031-03-04T07:00-05:00", 1), ("America/Chicago", "2031-03-04T13:00+00:00", 1),
                # clocks go from 02:00 -06:00 to 03:00 -05:00, and back from 02:00 -05:00 to 01:00 -06:00
                ("America/Chicago", "2031-03-09T01:59:59.999-06:00", 0), ("America/Chicago", "2031-03-09T02:00-06:00", 1),
                ("America/Chicago", "2031-03-09T03:00-05:00", 0), ("America/Chicago", "2031-03-09T02:59-05:00", 1),
                ("America/Chicago", "2031-11-02T01:59-05:00", 0), ("America/Chicago", "2031-11-02T02:00-05:00", 1),
                ("America/Chicago", "2031-11-02T01:00-06:00", 0), ("America/Chicago", "2031-11-02T00:59-06:00", 1),
                ("Europe/London", "2031-01-04T07:00+00:00", 0), ("Asia/Kathmandu", "2031-03-04T07:00+05:45", 0),
                ("America/Chicago", "2031-02-30T07:00-06:00", 1)):
            self.assertEqual(self.found(zone_name, time), wrong, (zone_name, time))

    def test_random_records(self):
        for text in generate.records("times", 60, POLICY):
            self.assertEqual([error.message for error in self.errors(json.loads(text))], [])

    def test_systematic_records(self):
        for records in (crossed.records, turns.records, boundaries.voided_readings):
            for record in itertools.islice(records(), 0, 1200, 120):
                self.assertEqual([error.message for error in self.errors(record)], [])


class Causes(unittest.TestCase):
    # Two of these cannot be had at once: the second moves or takes away what the first is about.
    APART = ({"read-early", "read-late"}, {"control-dead", "control-missing"}, {"incubated-early", "incubated-late"},
             {"read-late", "lost"}, {"control-missing", "incubator-unknown"})
    # What is asked only of a product that is known, and only of a vial that is in the register.
    OF_PRODUCT = {"product-unfit", "lot-expired", "lot-recalled", "method", "cycle-type", "species", "not-activated", "incubated-late", "read-late", "control-dead", "control-missing",
                  "readout-implausible"}
    OF_REGISTERED = {"lot-expired", "control-dead", "control-missing"}

    def vials_cause(self, names):
        """The cause that is given of a vial with these defects."""
        asked = set(names)
        if "product-unknown" in asked:
            asked -= self.OF_PRODUCT
        if asked & {"lot-unknown", "lot-without-date"}:
            asked -= self.OF_REGISTERED
        if "lot-unknown" in asked:
            asked -= {"lot-recalled"}
        order = keys.VOID_BY_ITSELF + ("lost",) + keys.VOID_UNLESS_LOST + keys.CAUSES["bi.not-registered"]
        return min(asked, key=order.index)

    def check_not_begun(self, names, decision, said):
        """A vial that was not put to incubate has the causes that do not ask for that; with none of them it waits."""
        names = set(names) - defects.OF_BEGUN
        if not names:
            self.assertEqual(said, set())
            found = {f["key"] for f in decision["findings"]}
            self.assertIn("test.bi-pending" if "test" in decision else "bi.not-started", found)
            return
        cause = self.vials_cause(names)
        # A load's lost vial has no cause, nor has what a test waits for.
        unsaid = keys.CAUSES["bi.not-registered"] if "test" in decision else ("lost",)
        self.assertEqual(said, set() if cause in unsaid else {cause}, names)

    def test_the_first_defect_is_the_cause(self):
        seen = 0
        for place, names, record in boundaries.caused():
            decision = oracle.decide(oracle.parse(json.dumps(record)), POLICY)
            parts = [decision] + decision.get("items", [])
            said = {f["because"] for part in parts for f in part["findings"] if "because" in f}
            seen += bool(said)
            self.assertLessEqual(said, set(names))
            if place == "not-begun":
                self.check_not_begun(names, decision, said)
                continue
            if not said or set(names) in self.APART or place == "sheet":
                continue
            if place == "vial" and "bi.not-counted" not in {f["key"] for f in decision["findings"]}:
                expected = self.vials_cause(names)
            else:
                order = keys.CAUSES["bi.not-counted"] if place == "vial" else keys.SPOILS + keys.NOT_COUNTED
                expected = min(names, key=order.index)
            self.assertEqual(said, {expected}, names)
        self.assertGreater(seen, 900)


class Activation(unittest.TestCase):
    """Worked out by hand from section 4, 3: a vial that needs activation is void for want of one only where it was put to
    incubate; before that it waits. The load ended at 07:50, its vial began at 08:10."""

    BEFORE_END, GOOD, LATE = ({"by": "p1", "happenedAt": "2031-03-04T%s-06:00" % clock}
                              for clock in ("07:49:59.999", "08:08", "08:11"))

    def decided(self, activation, begun, needed=True, **more):
        record = boundaries.base("steam-prevacuum-implant")
        vial = record["load"]["pcds"][0]["vials"][0]
        vial.update(more, activation=activation)
        if activation is None:
            del vial["activation"]
        if not begun:
            del vial["incubationStart"]
        next(p for p in record["products"] if p["id"] == "BIO-ST")["needsActivation"] = needed
        decision = oracle.decide(oracle.parse(json.dumps(record)), POLICY)
        about = {(f["key"], f.get("because")) for f in decision["findings"] if f["key"].startswith(("bi.", "implant."))}
        return decision["verdict"], about

    VOID = ("reprocess", {("bi.void", "not-activated"), ("implant.impossible", None)})
    WAITS = ("quarantine", {("bi.not-started", None), ("implant.pending", None)})
    GOES = ("release", set())

    def test_needed(self):
        for activation, begun in ((None, self.VOID), (self.BEFORE_END, self.VOID), (self.GOOD, self.GOES),
                                  (self.LATE, self.VOID), (dict(self.GOOD, role="viewer"), self.VOID)):
            self.assertEqual(self.decided(activation, True), begun)
            self.assertEqual(self.decided(activation, False), self.WAITS)

    def test_not_needed(self):
        for activation in (None, self.BEFORE_END, self.GOOD, self.LATE):
            self.assertEqual(self.decided(activation, True, needed=False), self.GOES)
            self.assertEqual(self.decided(activation, False, needed=False), self.WAITS)

    def test_what_else_takes_it_out_does_so_before_it_was_put_to_incubate(self):
        lead = {"by": "p3", "role": "lead", "happenedAt": "2031-03-04T09:30-06:00"}
        for more, finding in (({"processIndicator": "unchanged"}, ("bi.void", "process-indicator")),
                              ({"voided": lead}, ("bi.void", "voided")), ({"alsoUsedIn": ["L-3"]}, ("bi.void", "used-elsewhere")),
                              ({"lost": lead}, ("bi.lost", None))):
            verdict, about = self.decided(None, False, **more)
            self.assertEqual(verdict, "reprocess")
            self.assertIn(finding, about)
        self.assertIn(("bi.not-registered", "lot-unknown"), self.decided(None, False, lot="NONE")[1])
        unclear = [{"seen": "unclear", "by": "p1", "happenedAt": "2031-03-04T09:15-06:00"}]
        self.assertIn(("bi.unclear", None), self.decided(None, False, readings=unclear)[1])

    def test_of_a_qualification(self):
        for begun, result, finding in ((True, "void", ("test.bi-void", "not-activated")),
                                       (False, "pending", ("test.bi-pending", None))):
            record = boundaries.base("test-qualification")
            vial = record["test"]["vials"][0]
            del vial["activation"]
            if not begun:
                del vial["incubationStart"]
            decision = oracle.decide(oracle.parse(json.dumps(record)), POLICY)
            self.assertEqual(decision["test"], result)
            self.assertIn(finding, {(f["key"], f.get("because")) for f in decision["findings"]})

    def test_a_control_needs_both(self):
        for gone in ("activation", "incubationStart"):
            record = boundaries.base("steam-prevacuum-implant")
            del record["controls"][0][gone]
            record["decideAt"] = "2031-03-06T12:00-06:00"       # no longer awaited
            decision = oracle.decide(oracle.parse(json.dumps(record)), POLICY)
            self.assertIn(("bi.void", "control-missing"), {(f["key"], f.get("because")) for f in decision["findings"]})


class WorkedCases(unittest.TestCase):
    """The hand-worked cases of tests/data/worked_cases, which are written from the same page by another way."""

    def decided(self, case):
        doc = check_cases.apply(check_cases.read(check_cases.HERE / "bases" / case["base"]), case)
        settings = {name: oracle.parse(json.dumps(value)) for name, value in case.get("policy", {}).items()}
        return oracle.decide(oracle.parse(json.dumps(doc)), {**POLICY, **settings})

    def test_each_is_decided_as_worked_out(self):
        count = 0
        for path in sorted((check_cases.HERE / "cases").glob("*.json")):
            for case in check_cases.read(path):
                count += 1
                with self.subTest(case=case["id"]):
                    self.check(case["expect"], self.decided(case))
        self.assertGreater(count, 800)

    def check(self, expect, decision):
        findings = [f for part in [decision] + decision.get("items", []) for f in part["findings"]]
        self.assertLessEqual(set(expect["keys"]), {f["key"] for f in findings})
        if "test" in expect:
            self.assertEqual(decision["test"], expect["test"])
            return
        self.assertEqual(decision["verdict"], expect["verdict"])
        self.assertEqual({i["label"]: i["verdict"] for i in decision["items"]}, expect["items"])
        if expect.get("onlyKeys"):
            self.assertEqual({f["key"] for f in findings if f["outcome"] != "note"}, set(expect["keys"]))
        if "nextChangeAt" in expect:
            due = expect["nextChangeAt"] and written(moment(expect["nextChangeAt"]))
            self.assertEqual(decision["nextChangeAt"], due)


if __name__ == "__main__":
    unittest.main()
