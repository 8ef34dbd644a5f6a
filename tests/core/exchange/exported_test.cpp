#include "tests/core/exchange/bodies_support.h"
#include "tests/core/exchange/exported_support.h"

// What the journal can hold in one member of one act, evidence can state: every kind of act, every
// member of its frozen bodies, with all that the codec takes there up to its limits.

namespace loadwarden::tests {
namespace {

/// Two loads and a Bowie-Dick test, with an act of every kind that has none in the first load.
Journal everything()
{
    Journal journal = releasable(Implant::yes);
    journal.add(operatorA, at(8, 50), {"ld-2", "sz-1"}, CycleReserved{.lot = "L2"});
    journal.add(operatorA, at(8, 51), {"ld-2"},
                CycleStarted{ClockSource::facility, {at(8, 51), 0}, 102});
    journal.add(operatorA, at(8, 52), {"ld-q", "sz-1"},
                CycleReserved{.lot = "Q1", .purpose = Purpose::qualification});
    journal.add(operatorA, at(8, 53), {"pd-q", "ld-q", "ci-q", "bv-q"},
                PcdPlaced{{}, {{"ci-q", "pr-2", "pl-2", {}}}, {{"bv-q", "pr-4", "pl-4", {}}}});
    journal.add(operatorA, at(8, 54), {"ld-q"},
                CycleStarted{ClockSource::facility, {at(8, 54), 0}, 103});
    return journal;
}

/// The others stand in the histories of these.
const std::vector<std::string> cycles{"ld-1", "ld-bd"};

/// In an entry of its own, and in the place of the newest of its kind.
std::string lostWith(const std::string& kind, const nlohmann::json& body)
{
    static const Journal base = everything();
    const auto idOf = [](std::string_view prefix, int) { return std::string(prefix) + "-1"; };
    Entering how{.who = supervisorF};
    std::string lost;
    const bool mayBeOfControl = findKind(kind)->subjects.find('|') != std::string_view::npos;
    for (const bool ofControl : {false, true}) {
        if (ofControl && !mayBeOfControl) {
            continue;
        }
        Journal journal = base;
        how.subjects = subjectsFor(kind, body, ofControl, idOf);
        if (enter(journal, kind, body, how)) {
            lost += lostInExport(journal, cycles);
        }
    }
    for (auto old = base.entries().rbegin(); old != base.entries().rend(); ++old) {
        if (kindOf(old->act).kind == kind) {
            Journal amended = base;
            how.subjects = old->subjects;
            how.supersedes = old->seq;
            if (enter(amended, kind, body, how)) {
                lost += lostInExport(amended, cycles);
            }
            break;
        }
    }
    return lost;
}

TEST(Exported, EveryFrozenBodyComesBack)
{
    for (const std::string& kind : frozenKinds()) {
        for (const nlohmann::json& body : frozenBodies(kind)) {
            EXPECT_EQ(lostWith(kind, body), "") << kind << ' ' << body;
        }
    }
}

TEST(Exported, EveryMemberComesBackWithAllThatTheCodecTakes)
{
    int tried = 0;
    for (const std::string& kind : frozenKinds()) {
        for (const nlohmann::json& body : frozenBodies(kind)) {
            for (const auto& place : placesIn(body)) {
                for (const nlohmann::json& variant : variantsAt(kind, body, place)) {
                    const std::string lost = lostWith(kind, variant);
                    EXPECT_EQ(lost.substr(0, 500), "") << kind << ' ' << place;
                    ++tried;
                    if (!lost.empty()) {
                        break; // one of a member is enough
                    }
                }
            }
        }
    }
    RecordProperty("tried", tried);
    EXPECT_GT(tried, 2'500);
}

TEST(Exported, ATestThatHasNotStartedIsSaidToHaveNoStart)
{
    Journal journal = everything();
    journal.add(operatorA, at(9, 0), {"ld-t", "sz-1"},
                CycleReserved{.lot = "T1", .purpose = Purpose::leak});
    EXPECT_EQ(lostInExport(journal, {"ld-t"}), "");
    EXPECT_EQ(journal.fold("ld-t").record.test->start, Instant{});
}

TEST(Exported, APositiveOfACycleWhoseStartWasVoidedStandsBeforeEverything)
{
    Journal journal = everything();
    journal.add(operatorA, at(8, 59), {"bv-q", "ld-q"}, BiologicalRead{Seen::growth});
    journal.correct(supervisorF, at(9, 0), journal.seqOf<CycleStarted>("ld-q"), EntryVoided{});
    const EvidenceRecord record = journal.fold().record;
    const auto found = std::ranges::find(record.sterilizer->cycles, "Q1", &HistoryCycle::lot);
    ASSERT_NE(found, record.sterilizer->cycles.end());
    EXPECT_EQ(found->start, firstMoment);
    EXPECT_EQ(lostInExport(journal, {"ld-1"}), "");
}

TEST(Exported, LabelsThatDifferByBlanksOrCaseAreOne)
{
    Journal journal = everything();
    const auto add = [&journal](const std::string& item, const std::string& label) {
        return journal.add(operatorA, at(9, 0), {item, "ld-2"}, ItemAdded{.label = label});
    };
    add("it-7", "Tray 1");
    const std::int64_t same = add("it-8", "TRAY1");
    add("it-10", "it-11"); // named as an item that is to lose its label
    add("it-11", "tray 1");
    const FoldedEvidence folded = journal.fold("ld-2");
    std::vector<std::string> labels;
    for (const Item& item : folded.record.load.items) {
        labels.push_back(item.label);
    }
    EXPECT_EQ(labels, (std::vector<std::string>{"Tray 1", "it-8", "it-11", "it-11@2"}));
    EXPECT_TRUE(has(folded, same, MisfitWhy::sameLabel));
    EXPECT_EQ(lostInExport(journal, {"ld-2"}), "");
}

TEST(Exported, WhatAnActNamesBesideItsIndicatorHasNoReadingOfIt)
{
    Journal journal = everything();
    journal.add(operatorA, at(9, 0), {"ci-9", "ld-1", "bv-1", "bc-1"},
                ChemicalRead{Seen::frontOnBoundary});
    journal.add(operatorA, at(9, 0), {"bv-9", "ld-1", "ci-3"}, BiologicalRead{Seen::growth});
    EXPECT_EQ(lostInExport(journal, cycles), "");
    const LoadRecord load = journal.fold().record.load;
    const auto pcd = [&load](std::string_view id) {
        return std::ranges::find(load.pcds, id, &ProcessChallengeDevice::id);
    };
    ASSERT_NE(pcd("ci-9"), load.pcds.end()) << "a bad answer is not lost";
    EXPECT_EQ(pcd("ci-9")->indicators.at(0).readings.size(), 1U);
    ASSERT_NE(pcd("bv-9"), load.pcds.end());
    EXPECT_EQ(load.pcds.at(0).vials.at(0).readings.size(), 1U);
}

} // namespace
} // namespace loadwarden::tests
