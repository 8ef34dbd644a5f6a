#include "core/release/judge_test.h"
#include "tests/core/acts/journal_support.h"

// A load from the first act to the last: what the acts become, and how phases follow each other.

namespace loadwarden::tests {
namespace {

constexpr int decideHour = 9;

Verdict verdictOf(const Journal& journal)
{
    return journal.decideAt(at(decideHour, 0)).verdict;
}

TEST(Fold, OfALoadThatWentWellIsReleasable)
{
    for (const Implant implant : {Implant::no, Implant::yes}) {
        const Journal journal = releasable(implant);
        const Decision decision = journal.decideAt(at(decideHour, 0));
        EXPECT_TRUE(allMayGo(decision)) << describe(decision);
        const FoldedEvidence folded = journal.fold();
        EXPECT_TRUE(folded.misfits.empty());
        EXPECT_TRUE(folded.isUnderstood);
        EXPECT_EQ(folded.policy, hexOf(hashOf("policy")));
        EXPECT_EQ(folded.sterilizer, "sz-1");
        EXPECT_EQ(folded.itemIds, std::vector<std::string>{"it-1"});
    }
}

TEST(Fold, PutsWhatWasActedWhereTheEvidenceHasIt)
{
    const EvidenceRecord record = releasable().fold().record;
    EXPECT_EQ(record.zone.name(), "UTC");
    ASSERT_TRUE(record.sterilizer && record.specification);
    EXPECT_EQ(record.sterilizer->id, "S1");
    EXPECT_EQ(record.specification->id, "spec-1");
    ASSERT_EQ(record.sterilizer->cycles.size(), 1U);
    const HistoryCycle& test = record.sterilizer->cycles[0];
    EXPECT_EQ(test.kind, CycleKind::bowieDick);
    EXPECT_EQ(test.lot, "B1");
    EXPECT_EQ(test.counter, 100);
    ASSERT_TRUE(test.sheet);
    EXPECT_EQ(test.sheet->product, "pr-3");
    EXPECT_EQ(test.sheet->lot, "N3");
    const LoadRecord& load = record.load;
    EXPECT_EQ(load.lot, "L1");
    EXPECT_EQ(load.operatedBy, "st-a");
    EXPECT_EQ(load.start, at(7, 0));
    EXPECT_EQ(load.end, at(7, 50));
    EXPECT_EQ(load.counter, 101);
    ASSERT_EQ(load.items.size(), 1U);
    EXPECT_EQ(load.items[0].label, "I1");
    EXPECT_EQ(load.items[0].devices.at(0).name, "device");
    EXPECT_EQ(load.items[0].external.value().readings.size(), 1U);
    ASSERT_EQ(load.pcds.size(), 1U);
    EXPECT_EQ(load.pcds[0].vials.at(0).incubator, "in-1");
    ASSERT_EQ(record.controls.size(), 1U);
    EXPECT_EQ(record.controls[0].lot, "N4");
    EXPECT_EQ(record.products.size(), 4U);
    EXPECT_EQ(record.lots.size(), 4U);
    EXPECT_EQ(load.readings.at(0).typed, "132.4");
}

TEST(Fold, OfATestIsJudged)
{
    const FoldedEvidence folded = morning().fold("ld-bd");
    ASSERT_TRUE(folded.record.test);
    const TestJudgement judgement = judgeTest(assemble(folded.record), {}, at(7, 0));
    EXPECT_EQ(judgement.result, TestResult::passed);
    EXPECT_EQ(judgement.lot, "B1");
}

TEST(Fold, AsOfAnEntryIsTheShorterJournal)
{
    // With an implant the vial is required, and its reading is the last entry.
    const Journal journal = releasable(Implant::yes);
    const std::int64_t last = journal.entries().back().seq;
    FoldedEvidence before = foldEvidence(std::span<const Entry>(), "ld-1");
    for (std::int64_t seq = 1; seq <= last; ++seq) {
        const FoldedEvidence stopped = foldEvidence(entriesUpTo(journal.entries(), seq), "ld-1");
        const std::vector<Entry> shorter(journal.entries().begin(),
                                         journal.entries().begin() + seq);
        const FoldedEvidence alone = foldEvidence(shorter, "ld-1");
        EXPECT_EQ(stopped.digest, alone.digest);
        EXPECT_EQ(stopped.phase, alone.phase);
        EXPECT_EQ(stopped.digest == before.digest,
                  stopped.entries == before.entries && stopped.policy == before.policy)
            << seq;
        EXPECT_EQ(allMayGo(decide(assemble(stopped.record), {}, at(decideHour, 0))), seq == last)
            << seq;
        before = stopped;
    }
}

TEST(Fold, HasPhases)
{
    Journal journal = morning();
    EXPECT_EQ(journal.fold().phase, Phase::beingLoaded);
    journal.add(operatorA, at(6, 40), {"ld-1", "sz-1", "sp-1"}, CycleReserved{.lot = "L1"});
    EXPECT_EQ(journal.fold().phase, Phase::beingLoaded);
    journal.add(operatorA, at(7, 0), {"ld-1"},
                CycleStarted{ClockSource::facility, {at(7, 0), 0}, 101});
    EXPECT_EQ(journal.fold().phase, Phase::running);
    addDone(journal);
    EXPECT_EQ(journal.fold().phase, Phase::awaitingDecision);
    const std::string digest = journal.fold().digest;
    journal.add(leadC, at(9, 0), {"ld-1"},
                DispositionSigned{.grounds = {{}, digest, hexOf(hashOf("policy")), "1"}});
    EXPECT_EQ(journal.fold().phase, Phase::disposed);
    EXPECT_EQ(journal.fold().digest, digest) << "a signature is no evidence";
    journal.add(operatorA, at(9, 1), {"ld-1"}, CycleUnloaded{});
    journal.correct(operatorA, at(9, 2), journal.seqOf<PhysicalVerified>(), EntryAnnotated{"note"});
    EXPECT_EQ(journal.fold().phase, Phase::disposed) << "no evidence either";
    const std::int64_t read =
        journal.add(operatorA, at(9, 3), {"ci-1", "ld-1"}, ChemicalRead{Seen::unchanged});
    EXPECT_EQ(journal.fold().phase, Phase::evidenceChanged);
    journal.add(leadC, at(9, 4), {"ld-1"},
                DispositionSigned{.grounds = {{}, digest, hexOf(hashOf("policy")), "1"}});
    EXPECT_EQ(journal.fold().phase, Phase::disposed);
    journal.correct(leadC, at(9, 5), read, EntryVoided{});
    EXPECT_EQ(journal.fold().phase, Phase::evidenceChanged);
}

HistoryImported oldLoad()
{
    return {.source = "register", .lot = "L1", .outcome = "released", .labels = {"I1"}};
}

TEST(Fold, WhatWasImportedIsHistoryAndNoEvidence)
{
    Journal journal = releasable();
    const FoldedEvidence before = journal.fold();
    const std::string decided = describe(journal.decideAt(at(decideHour, 0)));
    // Another load of the same sterilizer, before and after, struck and not.
    const std::int64_t first = journal.add(supervisorE, at(6, 30), {"ld-old", "sz-1"}, oldLoad());
    HistoryImported grown = oldLoad();
    grown.outcome = "growth";
    journal.add(supervisorE, at(6, 50), {"ld-old2", "sz-1"}, grown);
    journal.correct(supervisorE, at(9, 0), first, EntryVoided{});
    const FoldedEvidence after = journal.fold();
    EXPECT_EQ(after.digest, before.digest);
    EXPECT_EQ(after.phase, before.phase);
    EXPECT_EQ(describe(journal.decideAt(at(decideHour, 0))), decided);
    for (const char* const old : {"ld-old", "ld-old2"}) {
        EXPECT_EQ(journal.fold(old).phase, Phase::imported) << old;
        EXPECT_TRUE(journal.fold(old).entries.empty()
                    || !allMayGo(journal.decideAt(at(decideHour, 0), old)));
        EXPECT_FALSE(allMayGo(journal.decideAt(at(decideHour, 0), old))) << old;
    }
}

TEST(Fold, WhatWasImportedIsNeverReleasedWhateverElseIsSaidOfIt)
{
    Journal journal = releasable();
    ASSERT_TRUE(allMayGo(journal.decideAt(at(decideHour, 0))));
    const std::int64_t old = journal.add(supervisorE, at(9, 0), {"ld-1", "sz-1"}, oldLoad());
    EXPECT_FALSE(allMayGo(journal.decideAt(at(decideHour, 0))));
    EXPECT_TRUE(has(journal.decideAt(at(decideHour, 0)), Key::recordMissing));
    EXPECT_TRUE(has(journal.fold(), journal.seqOf<CycleReserved>("ld-1"), MisfitWhy::saidTwice));
    // Also where somebody strikes it again.
    journal.correct(supervisorF, at(9, 5), old, EntryVoided{});
    EXPECT_FALSE(allMayGo(journal.decideAt(at(decideHour, 0))));
    EXPECT_EQ(journal.fold().phase, Phase::imported);
}

TEST(Fold, OfAnAmendedRegisterChangesWhatWasSigned)
{
    Journal journal = releasable();
    const std::string digest = journal.fold().digest;
    journal.add(operatorA, at(9, 0), {"ld-1"},
                DispositionSigned{.meaning = Verdict::release,
                                  .verdict = Verdict::release,
                                  .grounds = {{}, digest, hexOf(hashOf("policy")), "1"}});
    const std::int64_t spec = journal.seqOf<SpecificationRecorded>("sp-1");
    SpecificationRecorded changed = std::get<SpecificationRecorded>(journal.entry(spec).act);
    changed.specification.limits[0].least[0].thousandths = 134'000;

    Journal revised = journal;
    revised.add(supervisorE, at(9, 5), {"sp-1"}, changed);
    EXPECT_EQ(revised.fold().phase, Phase::disposed) << "the load is bound to the revision before";
    EXPECT_EQ(revised.fold().digest, digest);

    Journal amended = journal;
    amended.correct(supervisorF, at(9, 5), spec, changed);
    EXPECT_EQ(amended.fold().phase, Phase::evidenceChanged);
    EXPECT_TRUE(has(amended.decideAt(at(9, 10)), Key::physicalBelow));

    Journal alone = journal;
    const std::int64_t own = alone.correct(supervisorE, at(9, 5), spec, changed);
    EXPECT_TRUE(has(alone.fold(), own, MisfitWhy::noRight)) << "one's own, alone";
    EXPECT_FALSE(has(alone.decideAt(at(9, 10)), Key::physicalBelow));
    EXPECT_EQ(alone.fold().phase, Phase::evidenceChanged) << "somebody should look";
}

TEST(Fold, WhatAnotherLoadSaysAndCorrectsAfterwardsIsNoChange)
{
    Journal journal = releasable();
    const std::string digest = journal.fold().digest;
    journal.add(operatorA, at(9, 0), {"ld-1"},
                DispositionSigned{.meaning = Verdict::release,
                                  .verdict = Verdict::release,
                                  .grounds = {{}, digest, hexOf(hashOf("policy")), "1"}});
    journal.add(operatorA, at(9, 10), {"ld-2", "sz-1", "sp-1"}, CycleReserved{.lot = "L2"});
    journal.add(operatorA, at(9, 20), {"ld-2"},
                CycleStarted{ClockSource::facility, {at(9, 20), 0}, 102});
    journal.add(operatorA, at(9, 59), {"ld-2"},
                CycleEnded{{at(9, 59), 0}, CycleOutcome::ended, {}, {}});
    const std::int64_t low =
        journal.add(operatorA, at(10, 0), {"ld-2"},
                    PhysicalRead{Parameter::temperature, typed("13.2", Unit::celsius, 13'200)});
    EXPECT_EQ(journal.fold().phase, Phase::disposed);
    journal.correct(leadC, at(10, 5), low,
                    PhysicalRead{Parameter::temperature, typed("132", Unit::celsius, 132'000)});
    ASSERT_NE(journal.fold().digest, digest) << "the other load is in the evidence";
    EXPECT_EQ(journal.fold().phase, Phase::disposed);
}

TEST(Fold, BindsAProductAtItsReading)
{
    Journal journal = releasable();
    const std::int64_t recorded = journal.seqOf<ProductRecorded>("pr-4");
    ProductRecorded slower = std::get<ProductRecorded>(journal.entry(recorded).act);
    slower.product.releaseMinutes = 60;
    journal.add(supervisorE, at(8, 50), {"pr-4"}, slower);
    EXPECT_EQ(verdictOf(journal), Verdict::release);
    ASSERT_EQ(journal.fold().record.products.size(), 4U);

    // A vial placed later in the same load is bound to the new revision, and its control with it.
    journal.add(operatorA, at(8, 55), {"pd-2", "ld-1", "bv-2"},
                PcdPlaced{{}, {}, {{"bv-2", "pr-4", "pl-4", {}}}});
    const EvidenceRecord record = journal.fold().record;
    EXPECT_EQ(record.products.size(), 5U);
    EXPECT_EQ(record.controls.size(), 2U);
    EXPECT_NE(record.load.pcds.at(0).vials.at(0).product,
              record.load.pcds.at(1).vials.at(0).product);
}

TEST(Fold, KeepsWhatDoesNotFitAndLetsTheRulesSayIt)
{
    Journal late = releasable();
    late.add(operatorA, at(8, 50), {"it-2", "ld-1"},
             ItemAdded{.label = "I2", .implant = Implant::no});
    EXPECT_TRUE(has(late.decideAt(at(9, 0)), Key::itemRecordedLate))
        << "added to a load that ended";

    Journal out = releasable();
    const std::int64_t removed =
        out.add(operatorA, at(8, 50), {"it-1", "ld-1"}, ItemRemoved{"torn"});
    EXPECT_EQ(out.fold().record.load.items.size(), 1U) << "it was inside";
    EXPECT_TRUE(has(out.fold(), removed, MisfitWhy::afterStart));

    Journal before = morning();
    addLoaded(before);
    before.add(operatorA, at(6, 50), {"ld-1"},
               CycleEnded{{at(6, 50), 0}, CycleOutcome::ended, {}, {}});
    EXPECT_TRUE(has(before.decideAt(at(9, 0)), Key::recordTimes)) << "ended before it started";

    Journal twice = releasable();
    const std::int64_t again = twice.add(operatorB, at(8, 45), {"ld-1"},
                                         CycleStarted{ClockSource::facility, {at(7, 5), 0}, 101});
    EXPECT_TRUE(has(twice.decideAt(at(9, 0)), Key::cycleNotEnded)) << "started twice";
    EXPECT_TRUE(has(twice.fold(), again, MisfitWhy::saidTwice));
    twice.correct(leadC, at(8, 46), again, EntryVoided{});
    EXPECT_EQ(verdictOf(twice), Verdict::release);

    Journal unplaced = releasable();
    unplaced.add(operatorA, at(8, 50), {"bv-9", "ld-1"}, BiologicalRead{Seen::growth});
    EXPECT_TRUE(has(unplaced.decideAt(at(9, 0)), Key::biPositive))
        << "said to have been in the load";

    Journal unknown;
    EXPECT_EQ(unknown.decideAt(at(9, 0)).verdict, Verdict::quarantine) << "no entry at all";
}

TEST(Fold, AnItemIsInOneLoad)
{
    Journal journal = releasable();
    journal.add(operatorA, at(8, 50), {"ld-2", "sz-2"}, CycleReserved{.lot = "L2"});
    const std::int64_t added = journal.add(operatorA, at(8, 51), {"it-1", "ld-2"},
                                           ItemAdded{.label = "I1", .implant = Implant::no});
    EXPECT_EQ(journal.fold().record.load.items.at(0).alsoInLots, std::vector<std::string>{"L2"});
    journal.correct(leadC, at(8, 52), added, EntryVoided{});
    EXPECT_TRUE(journal.fold().record.load.items.at(0).alsoInLots.empty());
    journal.add(operatorA, at(8, 53), {"it-1", "ld-2", "ld-1"},
                ItemMoved{"ld-1", "ld-2", "wrong cart"});
    EXPECT_EQ(journal.fold().record.load.items.size(), 1U) << "the load had started";
    EXPECT_EQ(journal.fold("ld-2").record.load.items.at(0).alsoInLots,
              std::vector<std::string>{"L1"});
}

TEST(Fold, FromPaperIsByWhoSignedItThere)
{
    Journal journal = morning();
    addLoaded(journal);
    Entry entry{.recordedAt = {at(12, 0), 0},
                .happenedAt = {at(8, 0), 0},
                .actor = leadC.id,
                .role = leadC.role,
                .subjects = {"ci-1", "ld-1"},
                .act = ChemicalRead{Seen::unclear},
                .paper = FromPaper{"st-b", Role::supervisor}};
    journal.write(entry);
    const auto readings = [&journal] {
        return journal.fold().record.load.items.at(0).external.value().readings;
    };
    EXPECT_EQ(readings().at(0).act.by, "st-b");
    EXPECT_EQ(readings().at(0).act.role, Role::lead) << "typing lends no right";
    // Somebody who has read it himself types himself no second reader.
    journal.add(operatorA, at(12, 1), {"ci-1", "ld-1"}, ChemicalRead{Seen::unclear});
    entry.actor = operatorA.id;
    entry.role = operatorA.role;
    entry.act = ChemicalRead{Seen::endColourReached};
    entry.paper = FromPaper{"st-d", Role::operating};
    journal.write(entry);
    EXPECT_EQ(readings().at(2).act.by, "st-a");
}

TEST(Fold, OfALoadInAnothersHistoryTellsItsFailures)
{
    Journal journal = releasable();
    const auto history = [&journal] {
        Journal next = journal;
        next.add(operatorA, at(10, 0), {"ld-9", "sz-1", "sp-1"}, CycleReserved{.lot = "L9"});
        return next.fold("ld-9").record.sterilizer->cycles.at(1);
    };
    EXPECT_TRUE(history().failures.empty());
    EXPECT_EQ(history().packagesRejectedOrWet, 0);
    EXPECT_EQ(history().vials.size(), 1U);
    EXPECT_EQ(history().items, std::vector<std::string>{"I1"});
    EXPECT_EQ(history().method, Method::steam);
    EXPECT_EQ(history().cycleType, "T1");
    journal.add(operatorA, at(8, 50), {"ld-1"},
                PhysicalRead{Parameter::temperature, typed("131.9", Unit::celsius, 131'900)});
    journal.add(operatorA, at(8, 50), {"ld-1"},
                PhysicalRead{Parameter::drying, typed("1", Unit::minutes, 1'000)});
    ASSERT_EQ(history().failures.size(), 1U) << "drying apart";
    EXPECT_EQ(history().failures[0].kind, FailureKind::physical);
    journal.add(operatorA, at(8, 51), {"ci-3", "ld-1"}, ChemicalRead{Seen::frontOnBoundary});
    ASSERT_EQ(history().failures.size(), 2U);
    EXPECT_EQ(history().failures[1].kind, FailureKind::pcdRejected);
    journal.add(operatorA, at(8, 52), {"ld-1"}, AlarmRecorded{"A1"});
    EXPECT_EQ(history().failures.size(), 3U) << "not classed";
    journal.add(supervisorE, at(8, 53), {"sz-1"}, AlarmClassed{{"A1", AlarmEffect::harmless}});
    EXPECT_EQ(history().failures.size(), 2U);
    journal.add(operatorA, at(8, 54), {"it-1", "ld-1"}, PackageChecked{.dry = false});
    EXPECT_EQ(history().packagesRejectedOrWet, 1);
    journal.add(leadC, at(8, 55), {"ld-1"}, FailureResolved{true, Reach::thatLoad, "w"});
    EXPECT_EQ(history().resolutions.size(), 1U);
}

TraceRead recording()
{
    TraceRead read;
    read.content = std::string(64, 'a');
    read.fileName = "cycle.csv";
    read.mapping = "{}";
    read.start = JournalTime{at(7, 0), 0};
    read.findings.specification = "spec-1";
    read.findings.revision = 1;
    read.findings.counter = 101;
    read.findings.exposure = Shown::met;
    return read;
}

TEST(Fold, TracesStandInTheEvidenceAsTheyWereComputed)
{
    Journal journal = releasable();
    TraceRead read = recording();
    read.findings.defects = {"gap"};
    read.findings.leastCelsiusHundredths = 13'205;
    read.findings.drying = Shown::open;
    journal.add(operatorA, at(8, 50), {"tr-1", "ld-1"}, read);
    const FoldedEvidence folded = journal.fold();
    ASSERT_EQ(folded.record.load.traces.size(), 1U);
    TraceFindings expected = read.findings;
    expected.id = "tr-1";
    expected.start = at(7, 0);
    expected.act = {"st-a", Role::operating, at(8, 50), at(8, 50)};
    EXPECT_EQ(folded.record.load.traces[0], expected);
    EXPECT_TRUE(folded.misfits.empty());
    EXPECT_TRUE(has(journal.decideAt(at(9, 0)), Key::traceUnusable));
    EXPECT_EQ(verdictOf(journal), Verdict::release) << "no policy asks for it";
}

TEST(Fold, ATraceThatNobodyMayTakeAwayStandsBesideItsCorrection)
{
    Journal journal = releasable();
    TraceRead read = recording();
    read.findings.exposure = Shown::notMet;
    const std::int64_t first = journal.add(operatorA, at(8, 50), {"tr-1", "ld-1"}, read);
    ASSERT_TRUE(has(journal.decideAt(at(9, 0)), Key::traceExposureShort));
    for (const Person& who : {operatorA, operatorB}) {
        Journal amended = journal;
        const std::int64_t by = amended.correct(who, at(8, 55), first, recording());
        EXPECT_TRUE(has(amended.fold(), by, MisfitWhy::noRight));
        const auto traces = amended.fold().record.load.traces;
        ASSERT_EQ(traces.size(), 2U);
        EXPECT_EQ(traces[0].id, "tr-1");
        EXPECT_EQ(traces[1].id, "tr-1@2");
        EXPECT_TRUE(has(amended.decideAt(at(9, 0)), Key::traceExposureShort));
        Journal voided = journal;
        voided.correct(who, at(8, 55), first, EntryVoided{});
        EXPECT_TRUE(has(voided.decideAt(at(9, 0)), Key::traceExposureShort));
    }
    Journal amended = journal;
    amended.correct(leadC, at(8, 55), first, recording());
    ASSERT_EQ(amended.fold().record.load.traces.size(), 1U);
    EXPECT_EQ(verdictOf(amended), Verdict::release);
    Journal voided = journal;
    voided.correct(leadC, at(8, 55), first, EntryVoided{});
    EXPECT_TRUE(voided.fold().record.load.traces.empty());
    EXPECT_EQ(verdictOf(voided), Verdict::release);
}

TEST(Fold, ATraceOfAnotherLoadThatShowsAFailureIsOneOfItsFailures)
{
    const auto failuresWith = [](Shown exposure, Shown uninterrupted, Shown notBelow) {
        Journal journal = releasable();
        TraceRead read = recording();
        read.findings.exposure = exposure;
        read.findings.uninterrupted = uninterrupted;
        read.findings.notBelow = notBelow;
        read.findings.notAbove = Shown::notMet;
        read.findings.saturated = Shown::notMet;
        read.findings.drying = Shown::notMet;
        journal.add(operatorA, at(8, 50), {"tr-1", "ld-1"}, read);
        journal.add(operatorA, at(10, 0), {"ld-9", "sz-1", "sp-1"}, CycleReserved{.lot = "L9"});
        return journal.fold("ld-9").record.sterilizer->cycles.at(1).failures.size();
    };
    using enum Shown;
    EXPECT_EQ(failuresWith(notMet, met, met), 1U);
    EXPECT_EQ(failuresWith(open, notMet, met), 1U);
    EXPECT_EQ(failuresWith(notAsked, met, notMet), 1U);
    EXPECT_EQ(failuresWith(met, notMet, notMet), 0U) << "held long enough besides";
    EXPECT_EQ(failuresWith(open, open, open), 0U);
}

TEST(Fold, WhatIsNotUnderstoodIsSaid)
{
    Journal journal = releasable();
    const std::int64_t seq =
        journal.add(operatorA, at(8, 50), {"ld-1"}, NotUnderstood{"cycle.rested", 1, "{}"});
    const FoldedEvidence folded = journal.fold();
    EXPECT_FALSE(folded.isUnderstood);
    EXPECT_TRUE(has(folded, seq, MisfitWhy::notUnderstood));
    EXPECT_EQ(folded.history.back().state, LineState::notUnderstood);
}

TEST(Fold, OfAReviewKnowsWhatItsAuthorHadSeen)
{
    Journal journal = releasable();
    journal.add(operatorA, at(8, 50), {"ld-1"}, AlarmRecorded{"A1"});
    const std::int64_t seen = journal.entries().back().seq;
    const auto review = [&](std::int64_t upTo) {
        Journal reviewed = journal;
        reviewed.add(leadC, at(8, 58), {"ld-1"},
                     ReviewRecorded{"alarm.not-listed", "A1", ReviewAnswer::isolated, "w", upTo});
        return reviewed;
    };
    EXPECT_EQ(verdictOf(journal), Verdict::quarantine);
    EXPECT_EQ(verdictOf(review(seen)), Verdict::release);
    EXPECT_EQ(verdictOf(review(seen - 1)), Verdict::quarantine) << "had not seen the alarm";
    journal.add(operatorA, at(8, 55), {"ld-1"}, AlarmRecorded{"A1"});
    EXPECT_EQ(verdictOf(review(seen)), Verdict::quarantine) << "had not seen the second";
    EXPECT_EQ(verdictOf(review(seen + 1)), Verdict::release);
}

} // namespace
} // namespace loadwarden::tests
