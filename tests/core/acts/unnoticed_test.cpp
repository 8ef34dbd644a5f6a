#include "tests/core/acts/journal_support.h"

// What nobody may make go away unnoticed, by voiding or by naming things alike.

namespace loadwarden::tests {
namespace {

const Instant now = at(10, 0);

/// Adds another load of the sterilizer that ran at 06:20 with a vial, and what was read of it.
void addOther(Journal& journal, const std::string& lot, Seen seen)
{
    journal.add(operatorA, at(6, 10), {"ld-0", "sz-1", "sp-1"}, CycleReserved{.lot = lot});
    journal.add(operatorA, at(6, 11), {"pd-0", "ld-0", "bv-0"},
                PcdPlaced{{}, {}, {{"bv-0", "pr-4", "pl-4", {}}}});
    journal.add(operatorA, at(6, 20), {"ld-0"},
                CycleStarted{ClockSource::facility, {at(6, 20), 0}, {}});
    journal.add(operatorA, at(6, 30), {"ld-0"},
                CycleEnded{{at(6, 30), 0}, CycleOutcome::ended, {}, {}});
    journal.add(operatorA, at(6, 35), {"bv-0", "ld-0"}, BiologicalRead{seen});
}

/// A load that would go, after another one of the same sterilizer.
Journal after(const std::string& lot, Seen seen)
{
    Journal journal = morning();
    addOther(journal, lot, seen);
    addLoaded(journal);
    addDone(journal);
    addBiological(journal);
    return journal;
}

void sign(Journal& journal)
{
    const FoldedEvidence folded = journal.fold();
    journal.add(leadC, at(9, 0), {"ld-1"},
                DispositionSigned{.grounds = {{}, folded.digest, folded.policy.value(), "1"}});
    ASSERT_EQ(journal.fold().phase, Phase::disposed);
}

TEST(Unnoticed, APositiveStaysWithItsSterilizer)
{
    const Journal journal = after("L0", Seen::growth);
    ASSERT_TRUE(has(journal.decideAt(now), Key::sterilizerHeld));
    Journal reservation = journal;
    reservation.correct(supervisorE, at(9, 0), journal.seqOf<CycleReserved>("ld-0"), EntryVoided{});
    EXPECT_TRUE(has(reservation.decideAt(now), Key::sterilizerHeld));
    Journal start = journal;
    start.correct(supervisorE, at(9, 0), journal.seqOf<CycleStarted>("ld-0"), EntryVoided{});
    EXPECT_TRUE(has(start.decideAt(now), Key::sterilizerHeld));
    Journal placed = journal;
    placed.correct(supervisorE, at(9, 0), journal.seqOf<PcdPlaced>("ld-0"), EntryVoided{});
    EXPECT_TRUE(has(placed.decideAt(now), Key::sterilizerHeld));
    EXPECT_FALSE(has(after("L0", Seen::noGrowth).decideAt(now), Key::sterilizerHeld));
}

TEST(Unnoticed, AnIncidentClosesItsOwnCycleOnly)
{
    // Two cycles have one lot control number: what is closed of one is not of the other.
    for (const char* const closed : {"ld-0", "ld-8"}) {
        Journal journal = after("L0", Seen::growth);
        journal.add(operatorA, at(6, 12), {"ld-8", "sz-1", "sp-1"}, CycleReserved{.lot = "L0"});
        journal.add(operatorA, at(6, 12), {"ld-8"},
                    CycleStarted{ClockSource::facility, {at(6, 12), 0}, {}});
        journal.add(operatorB, at(8, 50), {"ic-1", closed, "sz-1"}, IncidentOpened{});
        journal.add(supervisorE, at(8, 55), {"ic-1", "ld-1", "sz-1"}, IncidentClosed{"w"});
        const SterilizerRecord sterilizer = journal.fold().record.sterilizer.value();
        ASSERT_EQ(sterilizer.cycles.size(), 3U);
        EXPECT_EQ(sterilizer.cycles[1].lot, "L0");
        EXPECT_EQ(sterilizer.cycles[2].lot, "ld-8");
        EXPECT_EQ(sterilizer.incidents.at(0).positiveLot,
                  std::string_view(closed) == "ld-0" ? "L0" : "ld-8");
        EXPECT_EQ(sterilizer.incidents[0].closings.at(0).negativeLot, "L1");
        // Another positive under the number of an incident is not closed by its closing.
        journal.add(operatorB, at(9, 0), {"ic-1", "ld-7", "sz-1"}, IncidentOpened{});
        const std::vector<Incident> incidents = journal.fold().record.sterilizer->incidents;
        EXPECT_EQ(incidents.at(0).closings.size(), 1U);
        EXPECT_TRUE(incidents.at(1).closings.empty());
    }
}

TEST(Unnoticed, WhatIsVoidedAfterTheSignatureChangesTheEvidence)
{
    const Journal journal = after("L0", Seen::noGrowth);
    const std::int64_t entries[] = {journal.seqOf<SpecificationRecorded>("sp-1"),
                                    journal.seqOf<PolicyRecorded>(),
                                    journal.seqOf<SterilizerRecorded>(),
                                    journal.seqOf<ProductRecorded>("pr-4"),
                                    journal.seqOf<ProductLotRecorded>("pl-4"),
                                    journal.seqOf<PackagingRecorded>(),
                                    journal.seqOf<DeviceRecorded>(),
                                    journal.seqOf<SterilizerReturned>(),
                                    journal.seqOf<ClockCompared>(),
                                    journal.seqOf<ControlPrepared>(),
                                    journal.seqOf<BiologicalRead>("bc-1"),
                                    journal.seqOf<BiologicalIncubated>("bc-1"),
                                    journal.seqOf<CycleReserved>("ld-0"),
                                    journal.seqOf<CycleStarted>("ld-0"),
                                    journal.seqOf<BiologicalRead>("bv-0"),
                                    journal.seqOf<ChemicalRead>("ci-bd"),
                                    journal.seqOf<ItemAdded>(),
                                    journal.seqOf<PcdPlaced>("ld-1"),
                                    journal.seqOf<PackageChecked>(),
                                    journal.seqOf<PrintoutRecorded>(),
                                    journal.seqOf<PhysicalVerified>()};
    for (const std::int64_t seq : entries) {
        Journal voided = journal;
        sign(voided);
        voided.correct(supervisorF, at(9, 5), seq, EntryVoided{});
        EXPECT_EQ(voided.fold().phase, Phase::evidenceChanged)
            << voided.entry(seq).subjects.front() << ' ' << kindOf(voided.entry(seq).act).kind;
    }
    // What the evidence does not rest on changes nothing.
    Journal other = journal;
    other.add(operatorA, at(8, 58), {"bc-9"}, ControlPrepared{"pr-9", "pl-9", {}});
    sign(other);
    other.correct(supervisorF, at(9, 5), other.seqOf<ControlPrepared>("bc-9"), EntryVoided{});
    EXPECT_EQ(other.fold().phase, Phase::disposed);
}

TEST(Unnoticed, AControlIsFoundByItsLotAlone)
{
    Journal journal = releasable(Implant::yes);
    ASSERT_TRUE(allMayGo(journal.decideAt(now)));
    journal.add(operatorA, at(8, 6), {"bc-2"}, ControlPrepared{{}, "pl-4", {}});
    journal.add(operatorA, at(8, 6), {"bc-2"}, BiologicalActivated{});
    journal.add(operatorA, at(8, 6), {"bc-2", "in-1"}, BiologicalIncubated{});
    journal.add(operatorA, at(8, 50), {"bc-2"}, BiologicalRead{Seen::noGrowth});
    ASSERT_EQ(journal.fold().record.controls.size(), 2U);
    EXPECT_TRUE(has(journal.decideAt(now), Key::biVoid)) << "a dead control";
}

TEST(Unnoticed, ALotThatIsInTheRegisterTwiceExpiresEarlier)
{
    for (const std::optional<Date> expires : {parseDate("2031-03-03"), std::optional<Date>{}}) {
        Journal journal = releasable();
        journal.add(operatorB, at(8, 50), {"pl-9", "pr-2"}, ProductLotRecorded{"N2", expires});
        EXPECT_FALSE(allMayGo(journal.decideAt(now)));
    }
    Journal journal = releasable();
    journal.add(operatorB, at(8, 50), {"pl-9", "pr-2"},
                ProductLotRecorded{"N2", parseDate("2033-01-01")});
    EXPECT_TRUE(allMayGo(journal.decideAt(now)));
    EXPECT_EQ(journal.fold().record.lots.size(), 4U);
}

TEST(Unnoticed, WhatIsNotUnderstoodAboutAnythingOfTheEvidence)
{
    for (const char* const id : {"ld-1", "sz-1", "bv-1", "bc-1", "in-1", "pr-4", "sp-1", "ld-bd"}) {
        Journal journal = releasable();
        journal.add(operatorA, at(8, 50), {id}, NotUnderstood{"sterilizer.moved", 1, "{}"});
        EXPECT_FALSE(journal.fold().isUnderstood) << id;
    }
    Journal journal = releasable();
    journal.add(operatorA, at(8, 50), {"sz-9"}, NotUnderstood{"sterilizer.moved", 1, "{}"});
    EXPECT_TRUE(journal.fold().isUnderstood);
}

TEST(Unnoticed, TwoReservationsOfOneCycle)
{
    Journal journal = releasable();
    const std::int64_t again =
        journal.add(operatorA, at(8, 50), {"ld-1", "sz-2", "sp-1"}, CycleReserved{.lot = "L1"});
    EXPECT_TRUE(has(journal.fold(), again, MisfitWhy::saidTwice));
    EXPECT_TRUE(has(journal.decideAt(now), Key::recordMissing));
    journal.correct(leadC, at(8, 51), again, EntryVoided{});
    EXPECT_TRUE(allMayGo(journal.decideAt(now)));
}

TEST(Unnoticed, TheFacilityIsWhatTheNewestRecordSays)
{
    Journal journal = releasable();
    journal.add(supervisorE, at(8, 50), {"fa-1"},
                FacilityRecorded{"F", "Asia/Tokyo", TypedNumber{"101.3", 101'300}});
    EXPECT_EQ(journal.fold().record.zone.name(), "Asia/Tokyo");
    EXPECT_TRUE(journal.fold().record.atmosphere);
    const std::int64_t opened = journal.seqOf<JournalOpened>();
    journal.correct(supervisorF, at(8, 51), opened, JournalOpened{"F", "jn-1", "Asia/Kolkata"});
    EXPECT_EQ(journal.fold().record.zone.name(), "Asia/Tokyo") << "never corrected";
    journal.correct(supervisorF, at(8, 52), journal.seqOf<FacilityRecorded>(), EntryVoided{});
    EXPECT_EQ(journal.fold().record.zone.name(), "UTC") << "as the journal was opened";
}

TEST(Unnoticed, AnAmendmentMayBringInMore)
{
    // A vial that an amendment adds to a PCD is known to be in both cycles.
    Journal journal = after("L0", Seen::noGrowth);
    const std::int64_t placed = journal.seqOf<PcdPlaced>("ld-0");
    PcdPlaced more = std::get<PcdPlaced>(journal.entry(placed).act);
    more.vials.push_back({"bv-1", "pr-4", "pl-4", {}});
    journal.write({.recordedAt = {at(9, 0), 0},
                   .happenedAt = journal.entry(placed).happenedAt,
                   .actor = leadC.id,
                   .role = leadC.role,
                   .subjects = {"pd-0", "ld-0", "bv-0", "bv-1"},
                   .reason = "reason",
                   .supersedes = placed,
                   .act = more});
    EXPECT_EQ(journal.fold().record.load.pcds.at(0).vials.at(0).alsoUsedIn,
              std::vector<std::string>{"L0"});
}

} // namespace
} // namespace loadwarden::tests
