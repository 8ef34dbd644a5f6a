"""Findings, the verdicts they force, and reviews (sections 1 and 5, `reviews`)."""

from chemical import act_cause
from evidence import LEADS, is_empty, one_person, person, recorded, role
from moments import from_end_on, moment

RANK = {"release": 0, "quarantine": 1, "reprocess": 2}
FORCES = {"note": "release", "waits": "quarantine", "review": "quarantine", "fails": "reprocess"}


class Finding:
    """One finding. reviewer: lead, supervisor or second-supervisor, where the outcome is review; raised: persons
    (evidence.person); because: its cause (section 4a)."""

    __slots__ = ("rule", "key", "outcome", "subject", "changes", "reviewer", "newest", "raised", "because")

    def __init__(self, rule, key, outcome, subject=None, changes=None, reviewer=None, newest=None, raised=(),
                 because=None):
        self.rule, self.key, self.outcome, self.subject = rule, key, outcome, subject
        self.changes, self.reviewer, self.newest = changes, reviewer, newest
        self.raised = {by for by in raised if by}
        self.because = because

    def as_json(self):
        out = {"rule": self.rule, "key": self.key, "outcome": self.outcome}
        if self.subject is not None:
            out["subject"] = self.subject
        if self.because is not None:
            out["because"] = self.because
        return out


def worst(findings, start="release"):
    """The worst verdict that findings force."""
    verdict = start
    for finding in findings:
        forced = FORCES[finding.outcome]
        if RANK[forced] > RANK[verdict]:
            verdict = forced
    return verdict


def unique(findings):
    """Findings as printed: identical ones once."""
    seen, out = set(), []
    for finding in findings:
        key = (finding.rule, finding.key, finding.outcome, finding.subject, finding.because)
        if key not in seen:
            seen.add(key)
            out.append(finding.as_json())
    return out


# Why a review does not count (section 5, `reviews`), in the order in which it is asked.
REVIEW_CAUSES = ("unsigned", "times-impossible", "no-finding", "role", "no-why", "before-end", "newer", "raised-it",
                 "own-load")


def not_answered(case, finding, review):
    """Why a standing review does not turn this finding, which is the one it answers, into a note; None where it does."""
    supervisor = role(review) == "supervisor"
    if not (supervisor or (finding.reviewer == "lead" and role(review) in LEADS)):
        return "role"
    if is_empty(review.get("why")):
        return "no-why"
    if not from_end_on(recorded(review), case.load.end):
        return "before-end"
    seen = moment(review["newestSeen"])
    if seen > recorded(review) or (finding.newest is not None and seen < finding.newest):
        return "newer"
    if person(review) in finding.raised and (not supervisor or finding.reviewer == "second-supervisor"):
        return "raised-it"
    operator = one_person(case.raw.get("operator"))
    return "own-load" if operator and person(review) == operator and not supervisor else None


def apply_reviews(case, findings):
    """Answer the findings that are open to review; say which reviews did not count, and what `not-isolated` says."""
    reviews = case.raw.get("reviews", ())
    if not reviews:
        return
    asking = {}
    for finding in findings:
        if finding.outcome == "review":
            asking.setdefault((finding.key, finding.subject), []).append(finding)
    said = []
    for review in reviews:
        if review["answer"] == "not-isolated":
            said.append(Finding("reviews", "review.not-isolated", "fails", review["finding"]))
            continue
        cause = act_cause(case, review)
        if cause is None:
            causes = {}
            for finding in asking.get((review["finding"], review.get("subject")), ()):
                causes[finding] = not_answered(case, finding, review)
            for finding, why in causes.items():
                if why is None:
                    finding.outcome = "note"
            if None in causes.values():
                continue
            cause = min(causes.values(), key=REVIEW_CAUSES.index) if causes else "no-finding"
        said.append(Finding("reviews", "review.not-counted", "note", review["finding"], because=cause))
    findings += said
