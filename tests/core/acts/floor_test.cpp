#include "tests/core/acts/journal_support.h"

// What comes from the floor: reports of what was found on opening, lots that are recalled,
// questions.

namespace loadwarden::tests {
namespace {

const Instant opened = at(11, 0);
const Instant now = at(12, 0);

Journal signedLoad()
{
    Journal journal = releasable();
    const FoldedEvidence folded = journal.fold();
    journal.add(leadC, at(9, 0), {"ld-1"},
                DispositionSigned{.grounds = {{}, folded.digest, folded.policy.value(), "1"}});
    return journal;
}

/// A second item of the load, as good as the first.
void addSecondItem(Journal& journal)
{
    ItemAdded item{.label = "I2", .implant = Implant::no, .packaging = "pk-1", .devices = {"dv-1"}};
    item.external = PlacedIndicator{"ci-8", "pr-1", "pl-1", {}};
    journal.add(operatorA, at(6, 42), {"it-2", "ld-1", "ci-8"}, item);
}

Journal withTwoItems()
{
    Journal journal = morning();
    journal.add(operatorA, at(6, 40), {"ld-1", "sz-1", "sp-1"}, CycleReserved{.lot = "L1"});
    addSecondItem(journal);
    addLoaded(journal);
    addDone(journal);
    journal.add(operatorA, at(8, 1), {"ci-8", "ld-1"}, ChemicalRead{Seen::endColourReached});
    journal.add(operatorA, at(8, 30), {"it-2", "ld-1"},
                PackageChecked{true, true, true, true, true});
    addBiological(journal);
    return journal;
}

Verdict verdictOf(const Journal& journal, const std::string& item)
{
    const FoldedEvidence folded = journal.fold();
    const auto place = std::ranges::find(folded.itemIds, item) - folded.itemIds.begin();
    return decide(assemble(folded.record), {}, now)
        .items.at(static_cast<std::size_t>(place))
        .verdict;
}

TEST(Report, OfAFailedIndicatorFailsItsItemAndAsksForAReviewOfTheLoad)
{
    for (const Seen seen : {Seen::frontShortOfBoundary, Seen::frontOnBoundary, Seen::absent,
                            Seen::unchanged, Seen::endColourPartly}) {
        Journal journal = withTwoItems();
        ASSERT_TRUE(allMayGo(journal.decideAt(now))) << describe(journal.decideAt(now));
        const std::int64_t seq = journal.add(operatorB, opened, {"qu-1", "it-1", "ld-1"},
                                             ItemReported{.indicator = seen, .place = "Room 4"});
        const Decision decision = journal.decideAt(now);
        EXPECT_TRUE(has(decision, Key::packagesOneRejected)) << describe(decision);
        EXPECT_EQ(has(decision, Key::itemInternalAbsent), seen == Seen::absent);
        EXPECT_EQ(has(decision, Key::itemInternalRejected), seen != Seen::absent);
        EXPECT_EQ(verdictOf(journal, "it-1"), Verdict::reprocess);
        EXPECT_EQ(verdictOf(journal, "it-2"), Verdict::quarantine);
        const FoldedEvidence folded = journal.fold();
        EXPECT_TRUE(folded.misfits.empty());
        const auto place = std::ranges::find(folded.itemIds, "it-1") - folded.itemIds.begin();
        const auto& inside = folded.record.load.items[static_cast<std::size_t>(place)].internals;
        ASSERT_EQ(inside.size(), 2U);
        EXPECT_EQ(inside[1].readings.at(0).act.by, "st-b");
        EXPECT_EQ(inside[1].readings.at(0).act.recordedAt, journal.entry(seq).recordedAt.at);
    }
}

TEST(Report, OfALabelTakesNoLostCheckBack)
{
    Journal journal = morning();
    addLoaded(journal);
    journal.add(operatorA, at(7, 50), {"ld-1"},
                CycleEnded{{at(7, 50), 0}, CycleOutcome::ended, {}, {}});
    journal.add(operatorA, at(8, 0), {"it-1", "ld-1"}, PackageCheckLost{});
    ASSERT_TRUE(has(journal.decideAt(now), Key::itemCheckLost));
    journal.add(operatorB, opened, {"qu-1", "it-1", "ld-1"},
                ItemReported{.faults = {PackageFault::labelDiffers}, .place = "Room 4"});
    EXPECT_TRUE(has(journal.decideAt(now), Key::itemCheckLost));
    EXPECT_EQ(verdictOf(journal, "it-1"), Verdict::reprocess);
}

TEST(Report, DoesNotSignWhatNobodySigned)
{
    Journal journal = morning();
    addLoaded(journal);
    journal.add(operatorA, at(7, 50), {"ld-1"},
                CycleEnded{{at(7, 50), 0}, CycleOutcome::ended, {}, {}});
    journal.add(viewerG, at(8, 0), {"it-1", "ld-1"}, PackageChecked{true, true, true, true, true});
    journal.add(operatorB, opened, {"qu-1", "it-1", "ld-1"},
                ItemReported{.faults = {PackageFault::labelDiffers}, .place = "Room 4"});
    const FoldedEvidence folded = journal.fold();
    ASSERT_EQ(folded.record.load.items[0].checks.size(), 2U);
    EXPECT_FALSE(folded.record.load.items[0].checks[1].dry);
}

TEST(Report, OfAPackageIsOneMoreCheckOfIt)
{
    const std::map<PackageFault, Key> keys = {{PackageFault::wet, Key::itemWet},
                                              {PackageFault::torn, Key::itemTorn},
                                              {PackageFault::unsealed, Key::itemUnsealed},
                                              {PackageFault::labelDiffers, Key::itemLabelDiffers}};
    for (const auto& [fault, key] : keys) {
        Journal journal = releasable();
        journal.add(operatorB, opened, {"qu-1", "it-1", "ld-1"},
                    ItemReported{.faults = {fault}, .place = "Room 4"});
        const Decision decision = journal.decideAt(now);
        EXPECT_TRUE(has(decision, key)) << describe(decision);
        EXPECT_FALSE(has(decision, Key::itemNotChecked)) << "it had been checked";
        EXPECT_EQ(verdictOf(journal, "it-1"),
                  fault == PackageFault::labelDiffers ? Verdict::quarantine : Verdict::reprocess);
    }
}

TEST(Report, MakesTheEvidenceChangedSinceTheSignature)
{
    Journal journal = signedLoad();
    ASSERT_EQ(journal.fold().phase, Phase::disposed);
    journal.add(operatorB, opened, {"qu-1", "it-1", "ld-1"},
                ItemReported{.indicator = Seen::absent, .place = "Room 4"});
    EXPECT_EQ(journal.fold().phase, Phase::evidenceChanged);
}

TEST(Report, OfWhatIsNotInTheLoadPutsItThere)
{
    Journal journal = releasable();
    const std::int64_t seq =
        journal.add(operatorB, opened, {"qu-1", "it-9", "ld-1"},
                    ItemReported{.faults = {PackageFault::torn}, .place = "Room 4"});
    EXPECT_TRUE(has(journal.fold(), seq, MisfitWhy::notInLoad));
    EXPECT_EQ(verdictOf(journal, "it-9"), Verdict::reprocess);
}

TEST(Report, IsTakenAwayByASecondPersonOnly)
{
    Journal journal = releasable();
    const std::int64_t seq =
        journal.add(operatorB, opened, {"qu-1", "it-1", "ld-1"},
                    ItemReported{.indicator = Seen::absent, .place = "Room 4"});
    Journal byPeer = journal;
    byPeer.correct(operatorA, at(11, 10), seq, EntryVoided{});
    EXPECT_EQ(verdictOf(byPeer, "it-1"), Verdict::reprocess);
    journal.correct(leadC, at(11, 10), seq, EntryVoided{});
    EXPECT_TRUE(allMayGo(journal.decideAt(now)));
}

TEST(Recall, OfALotTakesWhatWasReadOutOfTheCount)
{
    Journal journal = signedLoad();
    ASSERT_TRUE(allMayGo(journal.decideAt(now)));
    journal.add(operatorB, opened, {"pl-2", "pr-2"}, LotRecalled{"notice"});
    const Decision decision = journal.decideAt(now);
    EXPECT_FALSE(allMayGo(decision));
    EXPECT_TRUE(has(decision, Key::pcdInvalid)) << describe(decision);
    const auto found = std::ranges::find(decision.findings, Key::pcdInvalid, &Finding::key);
    EXPECT_EQ(found->cause, Cause::lotRecalled);
}

TEST(Recall, OfTheVialsLotVoidsTheVialButKeepsItsGrowth)
{
    Journal journal = releasable(Implant::yes);
    journal.add(operatorB, opened, {"pl-4", "pr-4"}, LotRecalled{"notice"});
    EXPECT_TRUE(has(journal.decideAt(now), Key::biVoid));
    journal.add(operatorB, at(11, 30), {"bv-1", "ld-1"}, BiologicalRead{Seen::growth});
    EXPECT_TRUE(has(journal.decideAt(now), Key::biPositive)) << "growth stands";
}

TEST(Recall, OfAnotherLotOfTheProductChangesNothing)
{
    Journal journal = releasable();
    journal.add(operatorA, at(5, 0), {"pl-9", "pr-2"},
                ProductLotRecorded{"N9", parseDate("2032-01-01")});
    journal.add(operatorB, opened, {"pl-9", "pr-2"}, LotRecalled{"notice"});
    EXPECT_TRUE(allMayGo(journal.decideAt(now)));
}

TEST(Recall, IsTakenBackByASecondPersonOnly)
{
    Journal journal = releasable();
    const std::int64_t seq =
        journal.add(operatorB, opened, {"pl-2", "pr-2"}, LotRecalled{"notice"});
    Journal byPeer = journal;
    byPeer.correct(operatorA, at(11, 10), seq, EntryVoided{});
    EXPECT_FALSE(allMayGo(byPeer.decideAt(now)));
    journal.correct(leadC, at(11, 10), seq, EntryVoided{});
    EXPECT_TRUE(allMayGo(journal.decideAt(now)));
}

TEST(Questions, AreNoEvidence)
{
    Journal journal = signedLoad();
    const std::string before = journal.fold().digest;
    journal.add(operatorB, opened, {"qu-1"},
                QuestionLogged{.asked = "may it go?",
                               .place = "Room 4",
                               .label = "I1",
                               .lot = "L1",
                               .answer = "it may be used"});
    journal.add(viewerG, opened, {"rc-1"},
                ReadingCheckTaken{1, {{"pr-2", Seen::unclear, ReadAs::reject, 10}}});
    EXPECT_EQ(journal.fold().phase, Phase::disposed);
    EXPECT_EQ(journal.fold().digest, before);
}

} // namespace
} // namespace loadwarden::tests
