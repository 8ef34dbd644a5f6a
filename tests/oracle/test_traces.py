"""Rule `trace` of the oracle against small cases worked out by hand from RULES.md, and errors planted in the rule, which the
records of traced.py and of the generator must show.

    python3 -m unittest test_traces
"""

import itertools
import json
import os
import re
import types
import unittest

import boundaries
import generate
import oracle
import traced
import tracerule
from evidence import Case
from moments import moment
from policy import read_policy
from policy_variants import HERE, of_version_1, variant_text

ROOT = os.path.join(HERE, "..", "..")
with open(os.path.join(ROOT, "resources", "policies", "us-hospital.toml"), encoding="utf-8") as policy_file:
    TEXT = policy_file.read()
POLICY = read_policy(TEXT)
ASKED = {**POLICY, "trace.asked": "yes"}
END_OF_DAY = "2031-03-04T%s-06:00"


def decided(*traces, policy=POLICY, **load):
    """The verdict on a load that is releasable as it stands, with these traces, and {(key, outcome, subject)} of them."""
    record = boundaries.base("steam-prevacuum")
    record["load"].update(load, traces=list(traces))
    return verdict_of(record, policy)


def verdict_of(record, policy=POLICY):
    decision = oracle.decide(oracle.parse(json.dumps(record)), policy)
    return decision["verdict"], {(f["key"], f["outcome"], f.get("subject")) for f in decision["findings"]
                                 if f["rule"] == "trace"}


def readings(**values):
    """The base's three readings, one of them with another value: temperature=(unit, value)."""
    own = {"temperature": ("celsius", 132.4), "exposure": ("minutes", 4), "drying": ("minutes", 20), **values}
    return [{"parameter": name, unit: value, "by": "p1", "happenedAt": END_OF_DAY % "08:00"}
            for name, (unit, value) in own.items()]


class Rule(unittest.TestCase):
    of = staticmethod(traced.of)

    def check(self, expected, *found, **more):
        """expected: verdict and the findings, written as key outcome [subject]."""
        verdict, *lines = expected
        said = {tuple(line.split(" ")) for line in lines}
        said = {("trace." + key, outcome, *(rest or [None])) for key, outcome, *rest in said}
        self.assertEqual(decided(*found, **more), (verdict, said))

    def test_a_good_one_says_nothing(self):
        for policy in (POLICY, ASKED):
            self.check(["release"], traced.TRACE, policy=policy)
            self.check(["release"], self.of(defects=None, notAbove=None), policy=policy)

    def test_asked(self):
        self.check(["release"])
        self.check(["quarantine", "missing waits"], policy=ASKED)
        for early in (self.of(role="viewer"), self.of(happenedAt=END_OF_DAY % "07:49:59.999")):
            self.check(["quarantine", "missing waits", "unusable waits T1"], early, policy=ASKED)
        self.check(["release"], self.of(happenedAt=END_OF_DAY % "07:50"), policy=ASKED)
        # one that counts is not missing, whatever it is worth
        self.check(["quarantine", "other-specification waits T1"], self.of(revision=2), policy=ASKED)

    def test_answers(self):
        for answer, found in (("exposure", "exposure-short fails"), ("uninterrupted", "interrupted review"),
                              ("notBelow", "below review"), ("notAbove", "above review"),
                              ("saturated", "not-saturated review"), ("drying", "drying-short review")):
            verdict = "reprocess" if "fails" in found else "quarantine"
            self.check([verdict, found + " T1"], self.of(**{answer: "not-met"}))
        self.check(["reprocess", "above fails T1"], self.of(notAbove="not-met"),
                   policy={**POLICY, "physical.above_maximum": "fails"})

    def test_held_besides_only_by_a_fit_one(self):
        for answer, key in (("uninterrupted", "interrupted"), ("notBelow", "below")):
            broken = {answer: "not-met"}
            self.check(["quarantine", key + " review T1"], self.of(**broken, defects=["midnight"]))
            for more, also in (({"exposure": None}, ["not-shown note T1"]), ({"exposure": "open"}, ["not-shown note T1"]),
                               ({"role": "viewer"}, ["unusable note T1"]),
                               ({"happenedAt": END_OF_DAY % "07:49"}, ["unusable note T1"]),
                               ({"counter": 1011}, ["other-cycle waits T1"]),
                               ({"revision": None}, ["other-specification waits T1"]),
                               ({"specification": "sp"}, ["other-specification waits T1"]),
                               ({"defects": ["free-line", "gap"]}, ["unusable note T1"])):
                self.check(["reprocess", key + " fails T1"] + also, self.of(**broken, **more))

    def test_open(self):
        for answer in ("exposure", "uninterrupted", "notBelow", "saturated"):
            self.check(["release", "not-shown note T1"], self.of(**{answer: "open"}))
            self.check(["quarantine", "not-shown review T1"], self.of(**{answer: "open"}), policy=ASKED)
        self.check(["release"], self.of(notAbove="open", drying="open"), policy=ASKED)

    def test_left_out(self):
        self.check(["release", "not-shown note T1"], self.of(exposure=None))
        self.check(["quarantine", "not-shown review T1"], self.of(exposure=None), policy=ASKED)
        for answer in ("uninterrupted", "notBelow", "notAbove", "saturated", "drying"):
            self.check(["release"], self.of(**{answer: None}), policy=ASKED)
        # not-met is neither open nor left out; what else is open is not shown besides
        self.check(["reprocess", "exposure-short fails T1"], self.of(exposure="not-met"), policy=ASKED)
        self.check(["reprocess", "exposure-short fails T1", "not-shown review T1"],
                   self.of(exposure="not-met", notBelow="open"), policy=ASKED)
        # only of a fit one
        self.check(["quarantine", "other-specification waits T1"], self.of(exposure=None, revision=2), policy=ASKED)
        self.check(["release", "unusable note T1"], self.of(exposure=None, defects=["gap"]))

    def test_nothing_says_whose_it_is(self):
        nobodys = {"counter": None, "start": None}
        self.check(["release", "not-shown note T1"], self.of(**nobodys))
        self.check(["quarantine", "not-shown review T1"], self.of(**nobodys), policy=ASKED)
        self.check(["release"], self.of(counter=None), policy=ASKED)            # the start agrees
        self.check(["release"], self.of(start=None), policy=ASKED)              # the counter does
        # once, for whatever it is not shown; what is not met stays so, and is held besides, as it is fit
        self.check(["release", "not-shown note T1"], self.of(**nobodys, exposure=None, saturated="open"))
        self.check(["quarantine", "not-shown note T1", "below review T1"], self.of(**nobodys, notBelow="not-met"))
        # one that differs is another cycle's, whatever agrees
        self.check(["quarantine", "other-cycle waits T1"], self.of(counter=None, start=END_OF_DAY % "07:06:00.001"), policy=ASKED)
        self.check(["quarantine", "other-cycle waits T1"], self.of(counter=1011), policy=ASKED)
        # not fit by something else
        self.check(["quarantine", "other-specification waits T1"], self.of(**nobodys, specification=None), policy=ASKED)
        self.check(["release", "unusable note T1"], self.of(**nobodys, defects=["gap"]))
        # there on one side is not there on both
        for lacks, keeps in (("counter", "start"), ("start", "counter")):
            record = boundaries.base("steam-prevacuum")
            del record["load"][lacks]
            record["load"]["traces"] = [self.of()]
            self.assertEqual(verdict_of(record)[1], set())                      # the other one agrees
            record["load"]["traces"] = [self.of(**{keeps: None})]
            self.assertEqual(verdict_of(record)[1], {("trace.not-shown", "note", "T1")})

    def test_whose_it_is_by_a_start_with_offsets(self):
        not_shown = {("trace.not-shown", "note", "T1")}
        record = boundaries.base("steam-prevacuum")
        record["load"]["traces"] = [self.of(counter=None)]          # 07:01 by the sterilizer's clock; the load 07:00
        for clock, begins, expected in (
                ("facility", "07:01", set()), ("facility", "07:01:00.001", not_shown),       # the trace's offset
                ("sterilizer", "07:00", set()), ("sterilizer", "07:00:00.001", not_shown)):  # the load's, now
            record["load"]["clock"] = clock
            record["sterilizer"]["clockOffsets"] = [{"from": END_OF_DAY % begins, "seconds": 60}]
            self.assertEqual(verdict_of(record)[1], expected, (clock, begins))
        record["load"]["traces"][0]["counter"] = 1010               # agrees where the start says nothing
        self.assertEqual(verdict_of(record)[1], set())

    def test_one_that_does_not_count_is_unusable(self):
        for changes in ({"role": "viewer"}, {"by": None}, {"by": "-"}, {"happenedAt": END_OF_DAY % "07:49:59.999"},
                        {"recordedAt": END_OF_DAY % "07:59:59.999"}, {"role": "viewer", "defects": ["gap", "midnight"]}):
            bad = self.of(id="T2", **changes)
            self.assertEqual(decided(bad)[1], {("trace.unusable", "note", "T2")})
            # a good one beside it is there, and takes nothing of it away
            self.assertEqual(decided(traced.TRACE, bad, policy=ASKED), ("quarantine", {("trace.unusable", "waits", "T2")}))
        self.check(["release"], self.of(happenedAt=END_OF_DAY % "07:50"))
        # without an end it counts at any time
        record = boundaries.base("steam-prevacuum")
        del record["load"]["end"]
        record["load"]["traces"] = [self.of(happenedAt=END_OF_DAY % "07:49")]
        self.assertEqual(verdict_of(record)[1], set())
        # other cycles' and other specifications' are not unusable for that
        self.check(["quarantine", "other-cycle waits T1", "other-specification waits T1"], self.of(counter=1, revision=2))
        self.check(["quarantine", "other-cycle waits T1", "unusable note T1"], self.of(counter=1, role="viewer"))

    def test_defects(self):
        self.check(["release", "unusable note T1"], self.of(defects=["gap"]))
        self.check(["quarantine", "unusable waits T1"], self.of(defects=["gap"]), policy=ASKED)
        self.check(["release"], self.of(defects=["free-line", "midnight", "last-line-open"]), policy=ASKED)
        self.check(["release", "unusable note T1"], self.of(defects=["midnight"]),
                   policy={**POLICY, "trace.passable_defects": ["free-line"]})

    def test_of_this_cycle(self):
        other = ["quarantine", "other-cycle waits T1"]
        # The sterilizer's clock is a minute ahead: 07:06 there is 07:05, five minutes after the load's start.
        for clock, expected in (("07:06", ["release"]), ("07:06:00.001", other), ("06:56", ["release"]),
                                ("06:55:59.999", other)):
            for counter in (1010, None):
                self.check(expected, self.of(start=END_OF_DAY % clock, counter=counter))
        self.check(other, self.of(counter=1011))
        self.check(other, self.of(counter=1011, start=None))
        self.check(["release"], self.of(start=None))

    def test_offsets(self):
        record = boundaries.base("steam-prevacuum")
        record["load"]["traces"] = [self.of(start=END_OF_DAY % "12:00")]
        self.assertIn(("trace.other-cycle", "waits", "T1"), verdict_of(record)[1])
        record["sterilizer"]["clockOffsets"] = [{"from": END_OF_DAY % "12:00:00.001", "seconds": 0}]
        self.assertEqual(verdict_of(record)[1], set())              # the trace's offset is unknown
        record["sterilizer"]["clockOffsets"][0]["from"] = END_OF_DAY % "12:00"
        self.assertIn(("trace.other-cycle", "waits", "T1"), verdict_of(record)[1])
        record["load"]["clock"] = "sterilizer"                      # now the load's is
        self.assertEqual(verdict_of(record)[1], set())

    def test_typed_differs(self):
        for least, most, reading in (
                (("celsius", 131), ("celsius", 135), "temperature"),
                (("fahrenheit", 267.8), ("fahrenheit", 275), "temperature"),      # 131 and 135 degrees Celsius exactly
                (("seconds", 180), ("seconds", 360), "exposure"), (("minutes", 3), ("minutes", 6), "exposure"),
                (("seconds", 1140), ("seconds", 1320), "drying"), (("minutes", 19), ("minutes", 22), "drying")):
            step = 0.01 if reading == "temperature" else 0.001
            for (unit, value), sign in ((least, -1), (most, 1)):
                for apart, differs in ((0, set()), (-sign * step, set()), (sign * step, {("trace.differs", "waits", reading)})):
                    typed = readings(**{reading: (unit, round(value + apart, 3))})
                    self.assertEqual(decided(traced.TRACE, readings=typed)[1], differs, (reading, unit, value, apart))
                    typed[["temperature", "exposure", "drying"].index(reading)]["role"] = "viewer"
                    self.assertEqual(decided(traced.TRACE, readings=typed)[1], differs)
                    self.assertEqual(decided(self.of(role="viewer"), readings=typed)[1],
                                     differs | {("trace.unusable", "note", "T1")})

    def test_typed_differs_from_any_of_this_cycle(self):
        short = readings(temperature=("celsius", 130.99))           # below 132 by more than 1 K
        for changes, also in (({"role": "viewer"}, "unusable note"), ({"by": None}, "unusable note"),
                              ({"happenedAt": END_OF_DAY % "07:49"}, "unusable note"), ({"defects": ["gap"]}, "unusable note"),
                              ({"revision": 2}, "other-specification waits"),
                              ({"specification": None}, "other-specification waits"),
                              ({"counter": None, "start": None}, "not-shown note"), ({"exposure": None}, "not-shown note")):
            key, outcome = also.split(" ")
            expected = {("trace." + key, outcome, "T1")}
            self.assertEqual(decided(self.of(**changes), readings=short)[1], expected | {("trace.differs", "waits", "temperature")})
            agrees = readings(temperature=("celsius", 131))
            self.assertEqual(decided(self.of(**changes), readings=agrees)[1], expected)
        for others in ({"counter": 1011}, {"start": END_OF_DAY % "07:06:00.001"}):
            self.assertEqual(decided(self.of(**others), readings=short)[1], {("trace.other-cycle", "waits", "T1")})
        # one that agrees takes nothing away, and each parameter is said once
        self.assertEqual(decided(self.of(leastCelsius=130), self.of(id="T2", role="viewer"), self.of(id="T3", revision=2),
                                 readings=short)[1],
                         {("trace.unusable", "note", "T2"), ("trace.other-specification", "waits", "T3"),
                          ("trace.differs", "waits", "temperature")})

    def test_only_where_the_rule_applies(self):
        short = self.of(exposure="not-met")
        for method, said in (("steam", True), ("unknown", True), (None, True), ("dry-heat", False), ("ethylene-oxide", False)):
            record = boundaries.base("steam-prevacuum")
            record["load"]["traces"] = [short]
            record["specification"]["method"] = method
            if method is None:
                del record["specification"]["method"]
            self.assertEqual(bool(verdict_of(record, ASKED)[1]), said, method)
        record = boundaries.base("steam-prevacuum")
        del record["specification"]
        self.assertEqual(verdict_of(record, ASKED)[1], set())

    def test_acts(self):
        record = boundaries.base("steam-prevacuum")
        record["load"]["traces"] = [self.of(by=None)]
        findings = oracle.decide(oracle.parse(json.dumps(record)), POLICY)["findings"]
        self.assertIn({"rule": "acts", "key": "act.unsigned", "outcome": "waits", "subject": "traces"}, findings)

    def test_reviews(self):
        review = {"finding": "trace.interrupted", "subject": "T1", "answer": "isolated", "why": "the door seal was looked at",
                  "newestSeen": END_OF_DAY % "08:00", "by": "p3", "role": "lead", "happenedAt": END_OF_DAY % "09:00"}
        broken = self.of(uninterrupted="not-met")
        for changes, outcome in (({}, "note"), ({"subject": "T2"}, "review"), ({"role": "operator"}, "review"),
                                 ({"newestSeen": END_OF_DAY % "07:59:59.999"}, "review"),
                                 ({"by": "p1", "role": "lead"}, "review")):     # whose trace it is
            self.check(["release" if outcome == "note" else "quarantine", "interrupted %s T1" % outcome], broken,
                       reviews=[dict(review, **changes)])
            self.check(["release" if outcome == "note" else "quarantine", "not-shown %s T1" % outcome],
                       self.of(counter=None, start=None), policy=ASKED,
                       reviews=[dict(review, finding="trace.not-shown", **changes)])


class Policies(unittest.TestCase):
    def test_a_file_of_version_1_means_the_defaults(self):
        old = of_version_1(TEXT)
        self.assertNotIn("trace", old)
        self.assertEqual(read_policy(old), POLICY)
        self.assertRaises(ValueError, read_policy, old.replace("policy_version = 1", "policy_version = 2"))
        self.assertRaises(ValueError, read_policy, TEXT.replace("policy_version = 2", "policy_version = 1"))
        self.assertNotIn("trace", variant_text(TEXT, "version-1"))


# What is wrong then, the place in tracerule.py, what it becomes.
PLANTED = (
    ("counts before the end", "(end is None or from_end_on(happened(trace), end))", "True"),
    ("the end is not cut to the minute", "from_end_on(happened(trace), end)", "happened(trace) >= end"),
    ("without an end nothing counts", "(end is None or from_end_on(happened(trace), end))", "from_end_on(happened(trace), end)"),
    ("an act that does not stand counts", "case.stands(trace) and", ""),
    ("a counter is not compared", 'trace["counter"] == own', "True"),
    ("a counter left out differs", 'trace["counter"] == own if own is not None and "counter" in trace else None', 'trace.get("counter") == own'),
    ("a counter left out differs from the load's", 'if own is not None and "counter" in trace else', 'if "counter" in trace else'),
    ("a start is not compared", '<= case.policy["printout.clock_tolerance_minutes"] * MINUTE', "< 10 ** 12"),
    ("five minutes are too many", '<= case.policy["printout.clock_tolerance_minutes"]', '< case.policy["printout.clock_tolerance_minutes"]'),
    ("only a later start is compared", "abs(shown - offset - case.load.start)", "(shown - offset - case.load.start)"),
    ("the clock is not corrected", "shown - offset - case", "shown - case"),
    ("the clock is corrected the other way", "shown - offset - case", "shown + offset - case"),
    ("an unknown offset is none", "    if offset is None:\n        return None\n", "    offset = offset or 0\n"),
    ("a counter that says nothing agrees", "return counter_agrees(case, trace) is True or", "return counter_agrees(case, trace) is not False or"),
    ("a start that says nothing agrees", "or start_agrees(case, trace) is True", "or start_agrees(case, trace) is not False"),
    ("counter and start must agree", "is True or start", "is True and start"),
    ("a counter alone does not tell", "counter_agrees(case, trace) is True or ", ""),
    ("a start alone does not tell", " or start_agrees(case, trace) is True", ""),
    ("another cycle's by both only", "is not False and start", "is not False or start"),
    ("the load's offset is not asked for", '    return case.raw.get("clock"', '    return True or case.raw.get("clock"'),
    ("a specification left out is the load's", "name in trace and trace[name] ==", "trace.get(name, case.spec.get(own)) =="),
    ("a revision is not compared", '(("specification", "id"), ("revision", "revision"))', '(("specification", "id"),)'),
    ("an id is not compared", '(("specification", "id"), ("revision", "revision"))', '(("revision", "revision"),)'),
    ("one passable defect is enough", "return any(defect not in", "return all(defect not in"),
    ("every defect is unusable", 'defect not in case.policy["trace.passable_defects"]', "True"),
    ("one that does not count is fit", "counts(case, trace) and of_this_cycle(case, trace) and", "of_this_cycle(case, trace) and"),
    ("another cycle's is fit", "and of_this_cycle(case, trace) and of_specification", "and of_specification"),
    ("another specification's is fit", "and of_specification(case, trace)\n", "\n"),
    ("a spoilt one is fit", "            and not spoilt(case, trace))", "            )"),
    ("one that does not count is no more than that", "if not counts(case, trace) or spoilt(case, trace):", "if spoilt(case, trace):"),
    ("only one that counts is unusable", "if not counts(case, trace) or spoilt(case, trace):", "if counts(case, trace) and spoilt(case, trace):"),
    ("unusable only where both", "if not counts(case, trace) or spoilt(case, trace):", "if not counts(case, trace) and spoilt(case, trace):"),
    ("whatever is not fit is unusable", "if not counts(case, trace) or spoilt(case, trace):", "if not fit:"),
    ("unusable is a note", '"waits" if asked else "note")', '"note")'),
    ("unusable waits", '"waits" if asked else "note")', '"waits")'),
    ("it is asked of steam alone", '("unknown", "steam")', '("steam",)'),
    ("it is asked of every method", 'case.method not in ("unknown", "steam")', "False"),
    ("missing where any does not count", "not any(counts(case, trace)", "not all(counts(case, trace)"),
    ("missing only where none is there", "not any(counts(case, trace) for trace in traces)", "not traces"),
    ("only what counts is looked at", "        yield from of_one(case, trace, asked)", "        if counts(case, trace):\n            yield from of_one(case, trace, asked)"),
    ("only the first is looked at", "    for trace in traces:\n", "    for trace in traces[:1]:\n"),
    ("held besides, fit or not", 'if fit and trace.get("exposure")', 'if trace.get("exposure")'),
    ("held besides, met or not", 'if fit and trace.get("exposure") == "met"', "if fit"),
    ("held besides where it is open", 'trace.get("exposure") == "met"', 'trace.get("exposure") != "not-met"'),
    ("exposure short is reviewed", '"trace.exposure-short", "fails"', '"trace.exposure-short", "review"'),
    ("open is not met", '== "not-met":', 'in ("not-met", "open"):'),
    ("not shown of one that is not fit", "if fit and not shows_all", "if not shows_all"),
    ("left out is open", 'trace.get(each) != "open"', 'trace.get(each, "open") != "open"'),
    ("an exposure left out is not asked for", '"exposure" in trace and all(', "all("),
    ("not met is not shown", 'trace.get(each) != "open"', 'trace.get(each) not in ("open", "not-met")'),
    ("open is shown", ' and all(trace.get(each) != "open" for each in SHOWN)', ""),
    ("whose it is need not be shown", " and says_whose(case, trace)", ""),
    ("not shown is a note", '"review" if asked else "note")', '"note")'),
    ("not shown is reviewed", '"review" if asked else "note")', '"review")'),
    ("drying is to be shown", '"notBelow", "saturated")', '"notBelow", "saturated", "drying")'),
    ("saturated need not be shown", '"notBelow", "saturated")', '"notBelow")'),
    ("a reading differs from any trace", "[trace for trace in traces if of_this_cycle(case, trace)]", "traces"),
    ("only from a fit one", "traces if of_this_cycle(case, trace)]", "traces if is_fit(case, trace)]"),
    ("only from one that counts", "traces if of_this_cycle(case, trace)]", "traces if of_this_cycle(case, trace) and counts(case, trace)]"),
    ("only from one without defects", "traces if of_this_cycle(case, trace)]", "traces if of_this_cycle(case, trace) and not spoilt(case, trace)]"),
    ("only from one by the specification", "traces if of_this_cycle(case, trace)]", "traces if of_this_cycle(case, trace) and of_specification(case, trace)]"),
    ("only from one that says whose it is", "traces if of_this_cycle(case, trace)]", "traces if says_whose(case, trace)]"),
    ("only from the first", "traces if of_this_cycle(case, trace)]", "traces[:1] if of_this_cycle(case, trace)]"),
    ("all readings must differ", "        if any(outside(", "        if readings and all(outside("),
    ("a step less differs", "value < in_base(least) - allowed", "value <= in_base(least) - allowed"),
    ("a step more agrees", "value > in_base(most) + allowed", "value > in_base(most) + allowed + 1"),
    ("above as much differs", "value > in_base(most) + allowed", "value >= in_base(most) + allowed"),
    ("kelvins are degrees Fahrenheit", '["trace.differs_kelvin"] * NINE_FIFTHS', '["trace.differs_kelvin"]'),
    ("drying is not compared", '            "drying": ("dryingLeastSeconds", "dryingMostSeconds")}', "            }"),
    ("exposure by drying", '"exposure": ("exposureLeastSeconds"', '"exposure": ("dryingLeastSeconds"'),
    ("only standing readings differ", 'if r["parameter"] == parameter]', 'if r["parameter"] == parameter and case.stands(r)]'),
)
REVIEW_PLANTED = (
    ("a supervisor must look", 'subject, None, "lead", recorded', 'subject, None, "supervisor", recorded'),
    ("newest is when it happened", "recorded(trace), [person", "happened(trace), [person"),
    ("nobody raised it", "[person(trace)]", "[]"),
    ("it has no subject", "Finding(RULE, key, outcome, subject, None,", "Finding(RULE, key, outcome, None, None,"),
)


def source():
    with open(tracerule.__file__, encoding="utf-8") as file:
        return file.read()


def said(rule, case):
    return {(f.key, f.outcome, f.subject, f.reviewer, f.newest, tuple(f.raised)) for f in rule(case)}


class Planted(unittest.TestCase):
    """Each error in the rule shows in some systematic record and in some random one."""

    def missed(self, cases):
        text, missed = source(), []
        for what, old, new in PLANTED + REVIEW_PLANTED:
            self.assertEqual(text.count(old), 1, "%s: choose another place than %s" % (what, old))
            module = types.ModuleType("planted")
            exec(compile(text.replace(old, new), what, "exec"), module.__dict__)        # noqa: S102
            if all(said(module.rule_trace, case) == right for case, right in cases):
                missed.append(what)
        return missed

    @staticmethod
    def prepared(records, policy):
        for text in records:
            record = oracle.parse(text)
            if "load" in record:
                case = Case(record, policy, moment(record["decideAt"]))
                yield case, said(tracerule.rule_trace, case)

    def test_systematic(self):
        cases = list(self.prepared((json.dumps(r) for r in itertools.islice(traced.records(), 0, None, 2)), POLICY))
        cases += self.prepared((json.dumps(r) for r in itertools.islice(traced.records(), 1, None, 10)), ASKED)
        self.assertEqual(self.missed(cases), [])

    def test_random(self):
        cases = []
        for name, count in (("us-hospital", 2500), ("variant-3", 1500), ("variant-6", 1000)):
            policy = read_policy(variant_text(TEXT, name) if name != "us-hospital" else TEXT)
            records = (t for t in generate.records("planted/" + name, count, policy) if re.search('"traces"|"steam"', t))
            cases += [each for each in self.prepared(records, policy) if each[1] or "traces" in each[0].raw]
        self.assertEqual(self.missed(cases), [])


if __name__ == "__main__":
    unittest.main()
