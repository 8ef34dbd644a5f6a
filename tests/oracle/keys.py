"""Every key of RULES.md with the outcomes it can have; the comparison wants each often enough."""

from findings import REVIEW_CAUSES

_TABLE = """
order.disagrees waits; order.overlaps waits; order.offset-unknown waits; order.history-disagrees waits
act.unsigned waits; act.times-impossible waits; act.recorded-late note
record.missing waits; record.times waits; record.too-short waits; record.method-unknown waits
printout.wrong-cycle fails; printout.lost fails; printout.missing waits; printout.incomplete waits
printout.offset-unknown waits; printout.counter-used waits; printout.differs waits; printout.confirmed note
cycle.not-ended waits; cycle.aborted fails; cycle.aborted-drying fails
alarm.exposure fails; alarm.not-listed review note
sterilizer.service-unknown waits; sterilizer.not-in-service fails; sterilizer.held fails
sterilizer.hold-not-known review note; sterilizer.taken-out-during review note
process.failure-open review note; scope.in-positive review note; scope.other-type note; scope.no-history note
air-removal.method-unknown waits; air-removal.put-right-late review note; air-removal.failed fails
air-removal.not-read waits; air-removal.void waits; air-removal.none-yet waits; air-removal.none-made fails
air-removal.made-after fails review note; air-removal.failed-after review note
physical.settings-missing waits; physical.limits-missing waits; physical.limit-implausible waits
physical.limits-disagree waits; physical.limit-milder waits; physical.implausible waits
physical.atmosphere-unknown waits; physical.not-judged note; physical.below fails
physical.drying-short review note; physical.above review fails note; physical.lost fails; physical.missing waits
trace.missing waits; trace.other-cycle waits; trace.other-specification waits; trace.unusable waits note
trace.exposure-short fails; trace.interrupted fails review note; trace.below fails review note
trace.above review fails note; trace.not-saturated review note; trace.drying-short review note
trace.not-shown review note; trace.differs waits
verification.missing waits; verification.stale waits; verification.by-operator note
pcd.rejected fails; pcd.lost fails; pcd.lost-noted review note; pcd.empty waits; pcd.unclear waits; pcd.invalid-noted note
pcd.invalid waits; pcd.not-read waits; pcd.missing waits; pcd.none-recorded note
implant.bi-positive fails; implant.indicator-rejected fails; implant.missing waits note
implant.pending waits note; implant.indicator-missing waits note; implant.impossible fails
bi.positive fails; bi.positive-elsewhere review note; bi.unclear waits; bi.not-registered waits note; bi.not-started waits note
bi.incubating waits note; bi.not-counted waits note; bi.due waits note; bi.process-indicator waits note; bi.control waits note
bi.void note review fails; bi.lost note review fails; bi.missing waits
routine.pending note waits; routine.none note waits
packages.one-rejected review note; packages.several-rejected review note; packages.wet review note
packages.all-unchanged fails
aeration.not-stated waits; aeration.implausible waits; aeration.running waits; aeration.end-awaited waits
aeration.not-done waits
peroxide.item-unsuitable review note
immediate.not-steam fails; immediate.for-storage fails; immediate.storage-unknown waits
immediate.reason-missing waits; immediate.case-missing waits; immediate.purpose-differs waits
review.not-isolated fails; review.not-counted note; voiding.bad-answer note; voiding.not-counted note
item.in-two-loads waits note; item.recorded-late waits
item.external-absent fails; item.external-rejected fails; item.external-not-read waits
item.external-unclear waits; item.external-invalid waits; item.external-lost fails
item.wet fails; item.torn fails; item.unsealed fails; item.not-checked waits; item.check-lost fails
item.not-cooled waits; item.label-differs waits; item.packaging-not-stated waits; item.packaging-expired waits
item.internal-absent fails; item.internal-rejected fails; item.internal-lost fails
item.internal-lost-noted note; item.internal-unclear waits; item.internal-on-opening note
item.internal-invalid waits note; item.internal-not-read waits; item.internal-missing waits
item.cycle-none-recorded note waits; item.cycle-value-missing waits; item.cycle-not-allowed fails
item.cycle-extended note
item.implant-immediate-use waits; item.implant-waits waits
item.peroxide-unsuitable fails; item.peroxide-unknown waits
item.in-test fails
test.items-inside waits; test.not-ended waits; test.times waits; test.aborted fails waits
test.sheet-failed fails; test.sheet-lost fails; test.sheet-spoiled waits; test.not-steam waits; test.chamber-not-empty waits
test.outside-directions waits; test.drying-run waits; test.not-read waits; test.unclear waits
test.exposure-unknown waits; test.directions-missing waits; test.read-late note; test.no-warm-up note
test.leak-too-high fails; test.leak-implausible waits; test.leak-too-short waits
test.physical-failed fails; test.indicator-rejected fails; test.bi-positive fails; test.bi-void waits
test.physical-missing waits; test.indicator-pending waits; test.bi-pending waits
"""

# (key, outcome) that valid input cannot show, with the reason. None at present.
CANNOT_OCCUR = {}


# Causes (section 4a) in the order in which they are asked.
SPOILS = ("product-unknown", "product-unfit", "lot-unknown", "lot-without-date", "lot-expired", "lot-recalled", "method",
          "cycle-type", "type", "used-elsewhere")
NOT_COUNTED = ("unsigned", "times-impossible", "other-response", "voided", "voider", "read-early", "read-late")
VOID_BY_ITSELF = ("voided", "product-unfit", "lot-expired", "lot-recalled", "method", "cycle-type", "species", "used-elsewhere",
                  "not-activated", "process-indicator", "incubated-early", "incubated-late")
VOID_UNLESS_LOST = ("control-dead", "control-missing", "read-late")
VOIDS = VOID_BY_ITSELF + VOID_UNLESS_LOST
# bi.not-counted has no read-late: a standing no-growth that is too late makes the vial void.
CAUSES = dict.fromkeys(("pcd.invalid", "item.external-invalid", "item.external-lost", "item.internal-invalid"),
                       SPOILS + NOT_COUNTED)
CAUSES["pcd.invalid-noted"] = SPOILS + ("read-late",)
CAUSES["test.sheet-spoiled"] = tuple(cause for cause in SPOILS if cause != "cycle-type")
CAUSES["bi.void"] = VOIDS
CAUSES["test.bi-void"] = VOIDS + ("lost",)
CAUSES["bi.not-registered"] = ("product-unknown", "lot-unknown", "lot-without-date", "incubator-unknown",
                              "readout-implausible")
CAUSES["bi.not-counted"] = ("unsigned", "times-impossible", "voided", "read-early", "incubator")
CAUSES.update(dict.fromkeys(("printout.missing", "physical.missing", "item.not-checked"),
                            ("unsigned", "times-impossible", "read-early")))
CAUSES["air-removal.void"] = ("items-inside", "aborted", "not-steam", "sheet-spoiled", "chamber-not-empty",
                              "outside-directions", "drying-run")
CAUSES["item.cycle-not-allowed"] = ("method", "air-removal", "temperature", "exposure-short", "exposure-long", "drying",
                                    "program", "model")
CAUSES["review.not-counted"] = REVIEW_CAUSES


def expected_causes():
    """All (key, cause) that must be seen."""
    return [(key, cause) for key, causes in CAUSES.items() for cause in causes]


def expected():
    """All (key, outcome) that must be seen."""
    out = []
    for entry in _TABLE.replace("\n", ";").split(";"):
        key, *outcomes = entry.split() or [None]
        out += [(key, outcome) for outcome in outcomes]
    return [pair for pair in out if pair not in CANNOT_OCCUR]
