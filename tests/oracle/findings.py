"""Findings, the verdicts they force, and reviews (sections 1 and 5, `reviews`)."""

from evidence import LEADS, person, recorded, role
from moments import moment

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


def answered(case, finding, review):
    """Whether a review `isolated` turns this finding into a note."""
    if review["answer"] != "isolated" or review["finding"] != finding.key:
        return False
    if review.get("subject") != finding.subject or not review.get("why"):
        return False
    if not case.stands(review):
        return False
    supervisor = role(review) == "supervisor"
    if not (supervisor or (finding.reviewer == "lead" and role(review) in LEADS)):
        return False
    seen = moment(review["newestSeen"])
    if seen > recorded(review) or (finding.newest is not None and seen < finding.newest):
        return False
    if person(review) in finding.raised and (not supervisor or finding.reviewer == "second-supervisor"):
        return False
    return True


def apply_reviews(case, findings):
    """Answer the findings that are open to review; add what `not-isolated` says."""
    reviews = case.raw.get("reviews", ())
    for finding in findings:
        if finding.outcome == "review" and any(answered(case, finding, r) for r in reviews):
            finding.outcome = "note"
    for review in reviews:
        if review["answer"] == "not-isolated":
            findings.append(Finding("reviews", "review.not-isolated", "fails", review["finding"]))
