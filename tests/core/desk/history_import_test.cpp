#include "core/desk/history_import.h"
#include "core/store/verify.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

namespace loadwarden::testing {
namespace {

using ::testing::ElementsAre;

OldLoad old(const std::string& lot, std::int64_t line = 1, const std::string& source = "register")
{
    return {.said = {.source = source, .lot = lot, .outcome = "released", .labels = {"I1"}},
            .start = {local("07:14", "2029-11-03"), -360},
            .sterilizer = {},
            .line = line};
}

/// Ends the work when so much is done.
class StopAt final : public Progress {
public:
    explicit StopAt(std::int64_t most) : m_most(most) {}
    bool goOn(std::int64_t done, std::int64_t) override { return done < m_most; }

private:
    std::int64_t m_most;
};

class HistoryImport : public ::testing::Test {
protected:
    SortedHistory sort(const std::vector<OldLoad>& lines)
    {
        return must(sortHistory(department.office(), department.supervisor(), lines, progress));
    }
    OrRefusal<ImportedHistory> import(const std::vector<OldLoad>& lines, Progress& how)
    {
        const SignedIn boss = department.supervisor();
        return importHistory(department.office(), boss, department.signature(boss, supervisorPin),
                             lines, how);
    }
    ImportedHistory import(const std::vector<OldLoad>& lines)
    {
        return must(import(lines, progress));
    }
    std::string cycleOf(const std::string& lot)
    {
        ReadSnapshot snapshot(department.office().connection());
        return findCycle(snapshot, lot).value();
    }
    std::vector<std::string> problemsOf(const std::vector<OldLoad>& lines)
    {
        std::vector<std::string> problems;
        for (const OldLoadProblem& each : sort(lines).problems) {
            problems.push_back(std::to_string(each.line) + ' ' + each.field + ' '
                               + std::to_string(static_cast<int>(each.why.why)));
        }
        return problems;
    }
    static std::string said(std::int64_t line, const std::string& field, RefusalWhy why)
    {
        return std::to_string(line) + ' ' + field + ' ' + std::to_string(static_cast<int>(why));
    }

    WorkingDepartment department;
    NoProgress progress;
};

TEST_F(HistoryImport, IsFoundAndShownAndNothingIsDecidedOrSigned)
{
    department.passBowieDick();
    const std::string mine = department.runLoad(Implant::no);
    department.readLoad(mine);
    const std::string before = sightOf(department.view(mine));
    OldLoad row = old("a-17");
    row.sterilizer = "sz-1";
    row.start = {local("06:50"), -360}; // between the test and the load of today
    EXPECT_EQ(import({row}).imported, 1);
    EXPECT_EQ(sightOf(department.view(mine)), before);

    const CycleView view = department.view(cycleOf("A-17"));
    ASSERT_TRUE(view.isImported());
    EXPECT_EQ(view.lot(), "a-17");
    EXPECT_EQ(std::get<HistoryImported>(view.imported->act).outcome, "released");
    EXPECT_NE(view.decision.verdict, Verdict::release);
    const SignedIn boss = department.supervisor();
    Dispositions dispositions(department.office());
    for (const Verdict meaning : {Verdict::release, Verdict::quarantine, Verdict::reprocess}) {
        EXPECT_EQ(whyOf(dispositions.sign(boss, department.signature(boss, supervisorPin),
                                          sightFrom(view), meaning)),
                  RefusalWhy::imported);
    }
    EXPECT_EQ(whyOf(Recorder(department.office())
                        .record(department.operating(),
                                {.act = CycleStarted{.shown = {department.now(), -360}},
                                 .subjects = {view.id}})),
              RefusalWhy::unknown);
    NoProgress none;
    EXPECT_TRUE(verifyJournal(department.office().connection(), {}, none).sound());
}

TEST_F(HistoryImport, SaysEveryProblemOfEveryLine)
{
    OldLoad later = old("L2", 2);
    later.start = {local("07:00", "2032-01-01"), -360};
    later.said.end = JournalTime{local("06:00", "2031-01-01"), -360};
    later.sterilizer = "sz-9";
    OldLoad nameless = old("L3", 3);
    nameless.said.outcome = "";
    EXPECT_THAT(
        problemsOf({old("L1", 1), later, nameless, old("l1", 4)}),
        ElementsAre(said(2, "start", RefusalWhy::inFuture), said(2, "end", RefusalWhy::beforeStart),
                    said(2, "sterilizer", RefusalWhy::unknown), said(3, "", RefusalWhy::malformed),
                    said(4, "lot", RefusalWhy::rowTwice)));
}

TEST_F(HistoryImport, IsDoneOnceUnlessItWasStruck)
{
    department.passBowieDick();
    const std::string mine = department.runLoad(Implant::no);
    const std::string lot = department.view(mine).lot();
    const ImportedHistory first = import({old("L1")});
    EXPECT_EQ(sort({old("L1")}).already, 1);
    EXPECT_TRUE(sort({old("L1")}).good.empty());
    EXPECT_EQ(whyOf(import({old("L1")}, progress)), RefusalWhy::alreadyThere);
    OldLoad otherwise = old("l1", 7);
    otherwise.said.outcome = "held";
    EXPECT_THAT(problemsOf({otherwise}),
                ElementsAre(said(7, "lot", RefusalWhy::importedOtherwise)));
    EXPECT_THAT(problemsOf({old(lot)}), ElementsAre(said(1, "lot", RefusalWhy::lotOfOwnLoad)));
    // Of another register it is another load, and which is meant has to be said.
    EXPECT_EQ(import({old("L1", 1, "other")}).imported, 1);
    std::string cycle;
    {
        ReadSnapshot snapshot(department.office().connection());
        EXPECT_EQ(findCycle(snapshot, "l1"), std::nullopt);
        const std::vector<std::string> cycles = cyclesNamed(snapshot, "l1");
        ASSERT_EQ(cycles.size(), 2U);
        cycle = cycles.front();
    }
    const SignedIn boss = department.supervisor();
    const std::int64_t entry = department.view(cycle).imported->seq;
    must(Recorder(department.office())
             .record(boss,
                     {.act = EntryVoided{},
                      .subjects = {cycle},
                      .reason = "wrong register",
                      .supersedes = entry},
                     department.signature(boss, supervisorPin)));
    EXPECT_TRUE(department.view(cycle).isImported());
    EXPECT_FALSE(department.view(cycle).imported);
    EXPECT_EQ(sort({old("L1"), old("L1", 2, "other")}).good.size(), 1U);
    EXPECT_GT(first.head.seq, 0);
}

TEST_F(HistoryImport, IsASupervisorsAndHasItsOwnDoor)
{
    const std::vector<OldLoad> lines = {old("L1")};
    EXPECT_EQ(whyOf(sortHistory(department.office(), department.lead(), lines, progress)),
              RefusalWhy::roleTooLow);
    EXPECT_EQ(
        whyOf(importHistory(department.office(), department.lead(),
                            department.signature(department.lead(), leadPin), lines, progress)),
        RefusalWhy::roleTooLow);
    const SignedIn boss = department.supervisor();
    EXPECT_EQ(whyOf(Recorder(department.office())
                        .record(boss, {.act = old("L1").said, .subjects = {"ld-typed"}},
                                department.signature(boss, supervisorPin))),
              RefusalWhy::otherDoor);
}

TEST_F(HistoryImport, StoppedItLeavesWholeGroups)
{
    std::vector<OldLoad> lines;
    for (int i = 0; i < 1'200; ++i) {
        lines.push_back(old("N" + std::to_string(i), i + 1));
    }
    StopAt soon(1);
    const ImportedHistory stopped = must(import(lines, soon));
    EXPECT_TRUE(stopped.cancelled);
    EXPECT_GT(stopped.imported, 0);
    EXPECT_LT(stopped.imported, 1'200);
    const SortedHistory rest = sort(lines);
    EXPECT_EQ(rest.already, stopped.imported);
    EXPECT_EQ(import(rest.good).imported, 1'200 - stopped.imported);
    EXPECT_TRUE(
        verifyJournal(department.office().connection(), {.pages = false}, progress).sound());
}

} // namespace
} // namespace loadwarden::testing
