"""The load rules, in the order of RULES.md (sections 2 and 5)."""

from biological import bad_of_control, cycle_bi, cycle_vials, positive_since, telling
from chemical import GOOD_CI, entry_cause, is_bad, read_indicator
from evidence import happened, is_empty, one_person, person, recorded
from findings import Finding
from moments import HOUR, MINUTE, from_end_on, minute, moment
from physical import milliseconds, rule_physical
from testcycles import judge
from tracerule import rule_trace


def newest_of(acts):
    """(newest recordedAt, authors at that moment) of some acts; (None, []) of none."""
    if not acts:
        return None, []
    newest = max(recorded(a) for a in acts)
    return newest, [person(a) for a in acts if recorded(a) == newest]


# section 2 ---------------------------------------------------------------------------------------
def rule_order(case):
    load = case.load
    for cycle in case.history:
        if None in (cycle.counter, load.counter, cycle.start, load.start):
            continue
        smaller, larger = (cycle, load) if cycle.counter < load.counter else (load, cycle)
        if cycle.counter == load.counter or smaller.start > larger.start:
            yield Finding("order", "order.disagrees", "waits", cycle.lot)
    for cycle in case.history:
        backwards = cycle.end is not None and cycle.start > cycle.end
        apart = case.before(cycle, load) or case.before(load, cycle)
        endless = cycle.end is None and case.before(cycle, load)
        if load.start is not None and (backwards or not apart or endless or together(cycle, load)):
            yield Finding("order", "order.overlaps", "waits", cycle.lot)
    latest, started = None, [c for c in case.history if c.counter is not None and c.start is not None]
    for counter, cycles in by_counter(started):
        for cycle in cycles:
            if len(cycles) > 1 or latest is not None and latest > cycle.start:
                yield Finding("order", "order.history-disagrees", "waits", cycle.lot)
        latest = max([c.start for c in cycles] + ([] if latest is None else [latest]))
    if load.offset_unknown or any(c.offset_unknown for c in case.history):
        yield Finding("order", "order.offset-unknown", "waits")


def together(a, b):
    """Whether two cycles ran at the same time by the clock, cut to the minute, whatever their counters say."""
    if None in (a.start, a.end, b.start, b.end):
        return False
    return minute(a.end) > minute(b.start) and minute(b.end) > minute(a.start)


def by_counter(cycles):
    """[(counter, its cycles)], the smallest counter first."""
    out = {}
    for cycle in sorted(cycles, key=lambda c: c.counter):
        out.setdefault(cycle.counter, []).append(cycle)
    return out.items()


def all_acts(value, field, out):
    """Add to `out` (act, name of the field that holds it) of every object that has happenedAt, wherever it stands."""
    if type(value) is dict:
        if "happenedAt" in value:
            out.append((value, field))
        for name, inner in value.items():
            if type(inner) is dict or type(inner) is list:
                all_acts(inner, name, out)
    else:
        for inner in value:
            if type(inner) is dict or type(inner) is list:
                all_acts(inner, field, out)
    return out


def rule_acts(case):
    own = all_acts(case.raw, "load", [])
    others = {name: value for name, value in case.record.items() if name != "load"}
    unsigned, impossible, late, changes = {}, False, False, None
    limit = case.policy["acts.late_hours"] * HOUR
    for acts in (own, all_acts(others, None, [])):
        for act, field in acts:
            done = moment(act["happenedAt"])
            noted = moment(act["recordedAt"]) if "recordedAt" in act else done
            if not person(act) or act.get("role") == "viewer":
                unsigned[field] = True
            if done > noted or noted > case.now:
                impossible = True
                if noted > case.now and done <= noted and (changes is None or noted < changes):
                    changes = noted
            late |= acts is own and noted - done > limit
    for field in unsigned:
        yield Finding("acts", "act.unsigned", "waits", field)
    if impossible:
        yield Finding("acts", "act.times-impossible", "waits", changes=changes)
    if late:
        yield Finding("acts", "act.recorded-late", "note")


# section 5 ---------------------------------------------------------------------------------------
def rule_record(case):
    load, raw = case.load, case.raw
    there = {"sterilizer": case.has_sterilizer, "specification": case.has_spec, "lot": not is_empty(raw.get("lot")),
             "start": "start" in raw, "end": "end" in raw, "operator": bool(operator(case)),
             "items": bool(case.items)}
    for subject, present in there.items():
        if not present:
            yield Finding("record", "record.missing", "waits", subject)
    if load.end is not None:
        backwards = load.start is not None and load.start > load.end
        if backwards or load.end > case.now:
            changes = None if backwards else load.end
            yield Finding("record", "record.times", "waits", changes=changes)
    elif load.start is not None and load.start > case.now:
        yield Finding("record", "record.times", "waits", changes=load.start)
    if None not in (load.start, load.end) and load.start <= load.end:
        longest = {"exposure": 0, "drying": 0}
        for reading in raw.get("readings", ()):
            if reading["parameter"] in longest:
                longest[reading["parameter"]] = max(longest[reading["parameter"]], milliseconds(reading))
        if load.end - load.start + MINUTE < sum(longest.values()):
            yield Finding("record", "record.too-short", "waits")
    if case.has_spec and case.method == "unknown":
        yield Finding("record", "record.method-unknown", "waits")


def operator(case):
    """Who ran the load, in the spelling in which persons are compared; empty: not known."""
    return one_person(case.raw.get("operator"))


def rule_printout(case):
    raw = case.raw
    answers = raw.get("printoutAnswers", ())
    if any(a["answer"] in ("wrong-cycle", "wrong-sterilizer") for a in answers):
        yield Finding("printout", "printout.wrong-cycle", "fails")
    printout = standing_printout(case)
    if printout is None:
        if case.stands(raw.get("printoutLost")):
            yield Finding("printout", "printout.lost", "fails")
        else:
            there = [raw["printout"]] if "printout" in raw else []
            yield Finding("printout", "printout.missing", "waits", because=entry_cause(case, there, case.load.end))
        return
    confirmed = {a.get("field") for a in answers if agrees_by_itself(case, printout)
                 and a["answer"] == "record-right" and case.stands_by_lead(a) and recorded(a) >= recorded(printout)
                 and operator(case) not in ("", person(a)) and person(a) != person(printout)}
    shown = [name for name in ("start", "end") if name in printout]
    taken = set()
    for key, subject in dict.fromkeys(printout_doubts(case, printout)):
        fields, said = {"printout.counter-used": (["counter"], "counter"),
                        "printout.offset-unknown": (shown, shown[0] if shown else None)}.get(key, ([subject], subject))
        if confirmed.issuperset(fields) and (key, subject) not in NEVER_CONFIRMED:
            taken.add(said)
        else:
            yield Finding("printout", key, "waits", subject)
    for field in sorted(taken):
        yield Finding("printout", "printout.confirmed", "note", field)


NEVER_CONFIRMED = (("printout.differs", "program"), ("printout.differs", "sterilizer"))
PRINTED = ("program", "sterilizer", "counter", "start", "end")


def standing_printout(case):
    """The printout, where it counts."""
    printout = case.raw.get("printout")
    if not case.stands(printout) or not any(field in printout for field in PRINTED):
        return None
    return printout if case.load.end is None or from_end_on(happened(printout), case.load.end) else None


def agrees_by_itself(case, printout):
    """Whether the counter, the start or the end of a printout is shown, known of the load, and the same. A counter that
    another cycle has too proves nothing."""
    doubts = set(printout_doubts(case, printout))
    return any(field in printout and not doubts & {("printout.incomplete", field), ("printout.differs", field)}
               and proves(case, printout, field) for field in ("counter", "start", "end"))


def proves(case, printout, field):
    """Whether a time of the printout can be compared with the load's; whether its counter is no other cycle's."""
    if field == "counter":
        return printout["counter"] not in used_counters(case)
    own = {"start": case.load.start, "end": case.load.end}[field]
    return own is not None and case.clock_offset(moment(printout[field])) is not None


def used_counters(case):
    """The counters that stand on a cycle of the history, whatever its kind and before or after the load."""
    return {c.counter for c in case.history if c.counter is not None}


def printout_doubts(case, printout):
    """(key, subject) of what does not agree on a printout that is there; one may come twice."""
    load = case.load
    for field, own in (("program", case.spec.get("program")), ("sterilizer", case.sterilizer.get("id")),
                       ("counter", load.counter)):
        shown = printout.get(field)
        if shown is None or own is None:
            yield "printout.incomplete", field
        elif shown != own:
            yield "printout.differs", field
    used = used_counters(case)
    if printout.get("counter") in used or load.counter in used:
        yield "printout.counter-used", None
    tolerance = case.policy["printout.clock_tolerance_minutes"] * MINUTE
    for name, own in (("start", load.start), ("end", load.end)):
        if name not in printout:
            yield "printout.incomplete", name
            continue
        shown = moment(printout[name])
        offset = case.clock_offset(shown)
        if offset is None:
            yield "printout.offset-unknown", None
        elif own is not None and abs(shown - offset - own) > tolerance:
            yield "printout.differs", name


def rule_cycle_end(case):
    raw = case.raw
    if "outcome" not in raw:
        yield Finding("cycle-end", "cycle.not-ended", "waits")
    if raw.get("outcome") == "aborted" or "abortPhase" in raw:
        key = "cycle.aborted-drying" if raw.get("abortPhase") == "drying" else "cycle.aborted"
        yield Finding("cycle-end", key, "fails")
    effects = {}
    for listed in case.sterilizer.get("alarms", ()):
        effects.setdefault(listed["code"], set()).add(listed["effect"])
    by_code = {}
    for alarm in raw.get("alarms", ()):
        by_code.setdefault(alarm["code"], []).append(alarm)
    for code, alarms in by_code.items():
        if "exposure-affecting" in effects.get(code, ()):
            yield Finding("cycle-end", "alarm.exposure", "fails", code)
        elif code not in effects:
            newest, raised = newest_of(alarms)
            yield Finding("cycle-end", "alarm.not-listed", "review", code, None, "lead", newest, raised)


def rule_sterilizer(case):
    load = case.load
    if not case.has_sterilizer or load.start is None:
        return
    start = load.start
    service = case.sterilizer.get("service", ())
    returns = [happened(s) for s in service
               if s["state"] == "in-service" and case.stands_by_supervisor(s) and recorded(s) <= start]
    if not returns:
        yield Finding("sterilizer", "sterilizer.service-unknown", "waits")

    def lifted(begins, known):
        return any(r >= begins and r >= known for r in returns)

    for entry in service:
        state, begins, known = entry["state"], happened(entry), recorded(entry)
        if state == "in-service":
            continue
        if begins <= start and not lifted(begins, known):
            if state != "held":
                yield Finding("sterilizer", "sterilizer.not-in-service", "fails", state)
            elif known <= start:
                yield Finding("sterilizer", "sterilizer.held", "fails", "held")
            else:
                yield Finding("sterilizer", "sterilizer.hold-not-known", "review", "held", None, "supervisor",
                              known, [person(entry)])
        if begins > start and (load.end is None or begins <= load.end):
            yield Finding("sterilizer", "sterilizer.taken-out-during", "review", state, None, "lead",
                          known, [person(entry)])
    for cycle in case.before_load():
        holds = [(since, authors) for since, authors in holds_of(case, cycle) if not lifted(cycle.order_end, since)]
        if any(known <= start for known, _ in holds):
            yield Finding("sterilizer", "sterilizer.held", "fails", cycle.lot)
        elif holds:
            known = max(since for since, _ in holds)
            raised = set().union(*(authors for since, authors in holds if since == known))
            yield Finding("sterilizer", "sterilizer.hold-not-known", "review", cycle.lot, None, "supervisor",
                          known, raised)


def holds_of(case, cycle):
    """[(known, authors)] of the holds that a cycle is: each positive vial, and what else makes a Bowie-Dick or
    qualification fail at its earliest."""
    holds = positive_since(case, cycle)
    if cycle.kind in ("bowie-dick", "qualification"):
        failures = judge(case, cycle).own
        if failures:
            known = min(since for since, _ in failures)
            holds = holds + [(known, set().union(*(authors for since, authors in failures if since == known)))]
    return holds


def rule_process_failure(case):
    start = case.load.start
    for cycle in case.before_load():
        raw = cycle.raw
        failures = raw.get("failures", [])
        leak_failed = cycle.kind == "leak" and judge(case, cycle).state == "failed"
        if not (cycle.outcome == "aborted" or failures or leak_failed
                or raw.get("packagesRejectedOrWet", 0) >= case.policy["process.failed_packages"]):
            continue
        resolutions = [r for r in raw.get("resolutions", ()) if case.stands_by_lead(r)]
        acts = failures + ([raw["leak"]] if "leak" in raw else [])
        newest = max(recorded(a) for a in acts) if acts else cycle.order_end
        if any(answers(r, cycle, newest) for r in resolutions) and all(
                               r["cause"] == "known"
                               and (r["reach"] == "that-load" or (start is not None and recorded(r) <= start))
                               for r in resolutions):
            continue
        yield Finding("process-failure", "process.failure-open", "review", cycle.lot, None, "lead",
                      newest, [person(a) for a in acts])


def answers(resolution, cycle, known):
    """Whether a resolution says what was done, and comes neither before the end of the cycle that it answers nor before
    what it answers was known."""
    return (not is_empty(resolution.get("what")) and happened(resolution) >= cycle.order_end
            and recorded(resolution) >= known)


def rule_scope(case):
    load = case.load
    cycles = case.history + [load]
    if case.has_sterilizer and not case.history:
        yield Finding("scope", "scope.no-history", "note")
    for p in case.history:
        if cycle_bi(case, p) != "positive":
            continue

        def clears(cycle):
            return p.type is not None and cycle.type == p.type and cycle_bi(case, cycle) == "negative"

        if any(clears(n) and case.before(n, p) and (n is load or case.before(load, n)) for n in cycles):
            continue
        acts = telling(p)
        newest = max(recorded(a) for a in acts)
        closing = {c["negativeLot"] for i in case.sterilizer.get("incidents", ()) if i["positiveLot"] == p.lot
                   for c in i.get("closings", ()) if case.stands_by_supervisor(c) and recorded(c) >= newest}
        if any(k.lot in closing and clears(k) and case.before(p, k) and (k is load or case.before(k, load))
               for k in cycles if k.lot is not None):
            continue
        if case.policy["scope.by"] == "cycle-type" and p.type and load.type and p.type != load.type:
            yield Finding("scope", "scope.other-type", "note", p.lot)
            continue
        yield Finding("scope", "scope.in-positive", "review", p.lot, None, "supervisor",
                      newest, [person(a) for a in acts])


def rule_air_removal(case):
    load = case.load
    rule = "air-removal"
    if not case.has_sterilizer or load.start is None:
        return
    if case.method == "unknown" or (case.method == "steam" and case.air_removal == "unknown"):
        yield Finding(rule, "air-removal.method-unknown", "waits")
        return
    if case.method != "steam" or case.air_removal not in ["prevacuum"] + case.policy["air_removal.also_for"]:
        return
    tests = [c for c in case.history if c.kind == "bowie-dick"]
    state, key = {}, {}             # key: what is said of a pending one, and why
    for test in tests:
        key[test] = "air-removal.not-read", None
        state[test] = judge(case, test).state
        if state[test] == "void":
            state[test] = "not-made" if said_why(case, test) else "pending"
            key[test] = "air-removal.void", test.result.void[0].removeprefix("test.")
    before = [t for t in tests if case.before(t, load)]
    passed_before = [t for t in before if state[t] == "passed"]
    # 1
    for failed in before:
        if state[failed] != "failed":
            continue
        known = min(since for since, _ in failed.result.own)
        remedies = [r for r in failed.raw.get("resolutions", ())
                   if case.stands_by_lead(r) and r["cause"] == "known" and answers(r, failed, known)]
        if any(q.start >= recorded(a) for a in remedies for q in passed_before):
            continue
        late = [a for a in remedies if any(q.start >= happened(a) for q in passed_before)]
        if late:
            newest, raised = newest_of(late)
            yield Finding(rule, "air-removal.put-right-late", "review", failed.lot, None, "supervisor",
                          newest, raised)
        else:
            yield Finding(rule, "air-removal.failed", "fails", failed.lot)
    own = [t for t in tests if case.same_period(t, load)]
    # 2
    unread = [t for t in own if t in before and state[t] == "pending"]
    for test in unread:
        yield Finding(rule, key[test][0], "waits", test.lot, because=key[test][1])
    passed_own = any(t in passed_before for t in own)
    # 3
    if not passed_own and not unread:
        later = sorted((t for t in own if t not in before and state[t] != "not-made"), key=lambda t: t.start)
        if not later:
            end = case.zone.period(load.start, case.test_hour)[1]
            if case.now < end:
                yield Finding(rule, "air-removal.none-yet", "waits", changes=end)
            else:
                yield Finding(rule, "air-removal.none-made", "fails")
        elif state[later[0]] == "pending":
            yield Finding(rule, key[later[0]][0], "waits", later[0].lot, because=key[later[0]][1])
        elif state[later[0]] == "failed" or case.has_implant or case.policy["air_removal.made_after"] == "fails":
            yield Finding(rule, "air-removal.made-after", "fails", later[0].lot)
        else:
            newest, raised = newest_of(later[0].raw["sheet"]["readings"])
            yield Finding(rule, "air-removal.made-after", "review", later[0].lot, None, "lead", newest, raised)
    # 4
    if passed_own:
        after = sorted((t for t in tests if case.before(load, t) and state[t] in ("passed", "failed")),
                       key=lambda t: t.start)
        if after and state[after[0]] == "failed":
            sheet = after[0].raw["sheet"]
            acts = [r for r in sheet.get("readings", ()) if r["seen"] not in GOOD_CI and r["seen"] != "unclear"]
            acts += [sheet[name] for name in ("lost", "unsettled") if name in sheet]
            if not acts:
                acts = [judge(case, after[0]).sheet.settled.cause]
            newest, raised = newest_of(acts)
            yield Finding(rule, "air-removal.failed-after", "review", after[0].lot, None, "lead",
                          newest, raised)


def said_why(case, test):
    """Whether a lead said, not before the test was over, why it is void."""
    act = test.raw.get("voidReason")
    return case.stands_by_lead(act) and not is_empty(act.get("why")) and recorded(act) >= test.order_end


def rule_verification(case):
    standing = [v for v in case.raw.get("verifications", ()) if case.stands(v)]
    if not standing:
        yield Finding("verification", "verification.missing", "waits")
        return
    seen = [recorded(r) for r in case.raw.get("readings", ())]
    if "printout" in case.raw:
        seen.append(recorded(case.raw["printout"]))
    fresh = [v for v in standing if from_end_on(happened(v), case.load.end)
             and all(minute(happened(v)) >= minute(at) for at in seen)]
    if not fresh:
        yield Finding("verification", "verification.stale", "waits")
    elif all(person(v) == operator(case) for v in fresh):
        yield Finding("verification", "verification.by-operator", "note")


def pcd_indicators(case):
    """[(pcd, [(raw indicator, read indicator)])], read once."""
    return [(pcd, [(ci, read_indicator(case, ci, case.load, "pcd", pcd.get("vials", ())))
                   for ci in pcd.get("indicators", ())]) for pcd in case.pcds]


def rule_pcd(case):
    setting = {"steam": "pcd.steam", "hydrogen-peroxide": "pcd.hydrogen_peroxide",
               "dry-heat": "pcd.dry_heat"}.get(case.method)
    required = (case.method == "ethylene-oxide" or case.has_implant
                or (setting is not None and case.policy[setting] == "required"))
    for pcd in case.pcds:
        if not pcd.get("indicators") and not pcd.get("vials"):
            yield Finding("pcd", "pcd.empty", "waits", pcd["id"])
    pairs = [(pcd["id"], ci) for pcd, indicators in case.read_pcds for _, ci in indicators]
    accepted = sum(ci.state == "accepted" for _, ci in pairs)
    for pcd, indicators in case.read_pcds:
        lost = [raw["lost"] for raw, ci in indicators if ci.lost]
        if lost and not (required and accepted == 0):
            newest, raised = newest_of(lost)
            yield Finding("pcd", "pcd.lost-noted", "review", pcd["id"], None, "lead", newest, raised)
    for subject, ci in pairs:
        if ci.state == "rejected":
            yield Finding("pcd", "pcd.rejected", "fails", subject)
        elif ci.lost:
            if required and accepted == 0:
                yield Finding("pcd", "pcd.lost", "fails", subject)
        elif ci.state == "unclear":
            yield Finding("pcd", "pcd.unclear", "waits", subject)
        elif ci.state == "invalid":
            if accepted and (ci.spoiled or ci.because == "read-late"):
                yield Finding("pcd", "pcd.invalid-noted", "note", subject, because=ci.because)
            else:
                yield Finding("pcd", "pcd.invalid", "waits", subject, because=ci.because)
        elif ci.state == "unread":
            yield Finding("pcd", "pcd.not-read", "waits", subject)
    if required and not pairs:
        yield Finding("pcd", "pcd.missing", "waits")
    if not required and not pairs and not any(item.get("internals") for item in case.items):
        yield Finding("pcd", "pcd.none-recorded", "note")


def rule_implant(case):
    """The findings before implants-only softens them."""
    if not case.has_implant:
        return
    rule = "implant"
    vials = {v.raw["id"]: v.state for v in cycle_vials(case, case.load)}
    unclear = any(v.unclear for v in cycle_vials(case, case.load))
    failed = False
    if "positive" in vials.values():
        failed = True
        yield Finding(rule, "implant.bi-positive", "fails")
    good = possible = hopeful = False          # hopeful: a possible one with a needed CI
    for pcd, indicators in case.read_pcds:
        types = {5}
        if case.method not in ("steam", "unknown"):
            named = [t for v in pcd.get("vials", ())
                     for t in case.products.get(v.get("product"), {}).get("implantIndicatorTypes", ())]
            types = set(named) or types
        needed = [ci for raw, ci in indicators
                  if case.products.get(raw.get("product"), {}).get("type") in types]
        if any(ci.state == "rejected" for ci in needed):
            failed = True
            yield Finding(rule, "implant.indicator-rejected", "fails", pcd["id"])
        states = [vials[v["id"]] for v in pcd.get("vials", ())]
        all_accepted = all(ci.state == "accepted" for ci in needed)
        good |= "negative" in states and bool(needed) and all_accepted
        may_be = ((not states or "negative" in states or "pending" in states)
                  and all(ci.state == "accepted"
                          or (ci.mendable and ci.state in ("unread", "unclear", "invalid") and not ci.lost)
                          for ci in needed))
        possible |= may_be
        hopeful |= may_be and bool(needed)
    if failed or (good and "pending" not in vials.values() and not unclear):
        return
    if not case.pcds:
        yield Finding(rule, "implant.missing", "waits")
    elif good or hopeful:
        yield Finding(rule, "implant.pending", "waits")
    elif possible:
        yield Finding(rule, "implant.indicator-missing", "waits")
    else:
        yield Finding(rule, "implant.impossible", "fails")


def rule_bi(case):
    vials = cycle_vials(case, case.load)
    every_load = case.policy.get("bi." + case.method.replace("-", "_")) == "every-load"
    required = (every_load or case.method == "ethylene-oxide"
                or (case.has_implant and (case.policy["implant.hold"] == "whole-load" or case.immediate)))
    useful = any(v.state not in ("void", "lost") for v in vials)
    for vial in vials:
        subject = vial.raw["id"]
        if vial.state == "positive":
            yield Finding("bi", "bi.positive", "fails", subject)
        elif vial.state == "positive-elsewhere":
            act = vial.raw["incidentFinding"]
            yield Finding("bi", "bi.positive-elsewhere", "review", subject, None, "second-supervisor",
                          recorded(act), [person(act)])
        elif vial.state == "pending":
            yield Finding("bi", "bi." + vial.why, "waits" if required or vial.why == "unclear" else "note", subject,
                          vial.changes, because=vial.because)
        elif vial.state in ("void", "lost"):
            if vial.unclear:
                yield Finding("bi", "bi.unclear", "waits", subject)
            because = vial.because if vial.state == "void" else None
            act = vial.raw["lost"] if vial.state == "lost" else vial.raw["voided"] if because == "voided" else None
            if required and not useful or not (required or case.has_implant or because == "process-indicator"):
                yield Finding("bi", "bi." + vial.state, "fails" if required else "note", subject, because=because)
            else:
                yield Finding("bi", "bi." + vial.state, "review", subject, None, "lead",
                              newest_of_vial(vial.raw, act), [person(act)] if act else [], because=because)
    states = {v.state for v in vials}
    if required and (not vials or ("positive-elsewhere" in states
                                   and not states & {"negative", "pending", "positive"})):
        yield Finding("bi", "bi.missing", "waits")


def newest_of_vial(raw, act):
    """The latest of the act that took a vial out (None: none), its incubation start and the recording of its readings;
    None where there is none of these."""
    known = [recorded(each) for each in [*raw.get("readings", ()), *([act] if act else [])]]
    if "incubationStart" in raw:
        known.append(moment(raw["incubationStart"]))
    return max(known, default=None)


def rule_routine_bi(case):
    load = case.load
    if not case.has_sterilizer or load.start is None or case.method == "unknown":
        return
    frequency = case.policy["bi." + case.method.replace("-", "_")]
    if frequency == "every-load":
        return
    last = load.start_day
    first = last if frequency == "each-day" else last - 6
    cycles = [load] + [c for c in case.history if c.type is not None and c.type == load.type
                       and first <= c.start_day <= last]
    states = {cycle_bi(case, c) for c in cycles}
    if "negative" in states:
        return
    key = "routine.pending" if "pending" in states else "routine.none"
    yield Finding("routine-bi", key, "waits" if case.policy["bi.routine_blocks"] else "note")


def rule_packages(case):
    rejected_items, causes, wet_items, wet_checks = 0, [], 0, []
    for item in case.read_items:
        rejected = [ci for ci in item.internals if ci.state == "rejected"]
        if item.external and item.external.state == "rejected" and (item.asked or not item.external.absent):
            rejected.append(item.external)
        rejected_items += bool(rejected)
        causes += rejected
        wet = [c for c in item.raw.get("checks", ()) if c.get("dry") is False]
        wet_items += bool(wet)
        wet_checks += wet
    many = case.policy["packages.rejected_for_supervisor"]
    if rejected_items:
        newest, raised = max(ci.since for ci in causes), [ci.author for ci in causes]
        if rejected_items >= many:
            yield Finding("packages", "packages.several-rejected", "review", None, None, "supervisor",
                          newest, raised)
        elif rejected_items == 1:
            yield Finding("packages", "packages.one-rejected", "review", None, None, "lead", newest, raised)
    if wet_items >= case.policy["packages.wet_for_supervisor"]:
        yield Finding("packages", "packages.wet", "review", None, None, "supervisor",
                      max(recorded(c) for c in wet_checks), [person(c) for c in wet_checks])
    externals = [item.external for item in case.read_items if item.external]
    if (any(e.state == "rejected" and not e.absent for e in externals)
            and not any(e.state == "accepted" for e in externals)):
        yield Finding("packages", "packages.all-unchanged", "fails")


LEAST_OF_GREATEST, LEAST_OF_ANY = 240, 60        # minutes of aeration: fewer are hours typed for minutes


def rule_aeration(case):
    if case.method != "ethylene-oxide" or not case.has_sterilizer:
        return
    rule = "aeration"
    aeration = case.sterilizer.get("aeration")
    stated = [aeration["minutes"] if aeration else None]
    for item in case.items:
        stated.append(case.packagings.get(item.get("packaging"), {}).get("aerationMinutes"))
        devices = item.get("devices", ())
        stated += [d.get("aerationMinutes") for d in devices] if devices else [None]
    if aeration and any(run["celsius"] > aeration["celsius"] + 30 for run in case.raw.get("aerationRuns", ())):
        yield Finding(rule, "aeration.implausible", "waits")
    if (None in stated or not 20 <= aeration["celsius"] <= 80 or max(stated) < LEAST_OF_GREATEST
            or any(0 < minutes < LEAST_OF_ANY for minutes in stated)):
        yield Finding(rule, "aeration.not-stated", "waits")
        return
    required = max(stated) * MINUTE
    end = case.load.end
    opened = []
    for run in case.raw.get("aerationRuns", ()):
        if not case.stands(run["start"]) or not from_end_on(happened(run["start"]), end):
            continue
        if "interrupted" in run or not aeration["celsius"] <= run["celsius"] <= aeration["celsius"] + 30:
            continue
        begun = happened(run["start"])
        if "end" not in run:
            opened.append(begun)
        elif case.stands(run["end"]) and happened(run["end"]) - begun >= required:
            return
    if not opened:
        yield Finding(rule, "aeration.not-done", "waits")
    elif case.now < min(opened) + required:
        yield Finding(rule, "aeration.running", "waits", changes=min(opened) + required)
    else:
        yield Finding(rule, "aeration.end-awaited", "waits")


def rule_peroxide(case):
    for item in case.read_items:
        if item.peroxide_unsuitable:
            act = item.raw.get("recorded")
            yield Finding("peroxide", "peroxide.item-unsuitable", "review", item.raw["label"], None, "lead",
                          recorded(act) if act else None, [person(act)] if act else [])


def rule_immediate(case):
    if case.spec.get("purpose") == "routine" and says_anything(case.raw.get("immediateUse", {})):
        yield Finding("immediate", "immediate.purpose-differs", "waits")
    if not case.immediate:
        return
    rule, use = "immediate", case.raw.get("immediateUse", {})
    if case.method not in ("unknown", "steam"):
        yield Finding(rule, "immediate.not-steam", "fails")
    if "forStorage" not in use:
        yield Finding(rule, "immediate.storage-unknown", "waits")
    elif use["forStorage"]:
        yield Finding(rule, "immediate.for-storage", "fails")
    if is_empty(use.get("reason")):
        yield Finding(rule, "immediate.reason-missing", "waits")
    if is_empty(use.get("caseReference")):
        yield Finding(rule, "immediate.case-missing", "waits")


def says_anything(use):
    """Whether an `immediateUse` states a reason, a case or whether it was for storage."""
    return "forStorage" in use or not is_empty(use.get("reason")) or not is_empty(use.get("caseReference"))


def rule_voiding(case):
    """What somebody took out, or tried to: bad and unclear answers that are `voided`."""
    things = [(item.raw["label"], ci, is_bad) for item in case.read_items
              for ci in [item.raw.get("external", {})] + item.raw.get("internals", [])]
    for pcd in case.pcds:
        things += [(pcd["id"], ci, is_bad) for ci in pcd.get("indicators", ())]
        things += [(vial["id"], vial, is_growth) for vial in pcd.get("vials", ())]
    things += [(control["id"], control, bad_of_control(case, control)) for control in case.controls]
    for subject, thing, bad in things:
        for reading in thing.get("readings", ()):
            if "voided" not in reading or not (reading["seen"] == "unclear" or bad(reading)):
                continue
            out = reading["seen"] != "unclear" and bad is not is_growth and case.struck(reading)
            yield Finding("voiding", "voiding.bad-answer" if out else "voiding.not-counted", "note", subject)


def is_growth(reading):
    """The bad answer of a vial, which nobody takes out."""
    return reading["seen"] == "growth"


RULES = (rule_order, rule_acts, rule_record, rule_printout, rule_cycle_end, rule_sterilizer,
         rule_process_failure, rule_scope, rule_air_removal, rule_physical, rule_trace, rule_verification,
         rule_pcd, rule_bi, rule_routine_bi, rule_packages, rule_aeration, rule_peroxide, rule_immediate,
         rule_voiding)
