#include "core/desk/cycle_record.h"
#include "core/desk/handover.h"
#include "core/desk/journal_entries.h"
#include "core/desk/sterilizer_log.h"
#include "core/words/say_any_act.h"
#include "core/words/say_terms.h"
#include "tests/core/desk/day_support.h"
#include "tests/ui/paper/read_back.h"
#include "ui/paper/sheets/blank_load.h"
#include "ui/paper/sheets/day_sheet.h"
#include "ui/paper/sheets/fact_line.h"
#include "ui/paper/sheets/hold_sheet.h"
#include "ui/paper/sheets/load_record.h"
#include "ui/paper/sheets/reprocess_ticket.h"
#include "ui/paper/sheets/shift_handover.h"

#include <gmock/gmock.h>

#include <QPainter>

namespace loadwarden::testing {
namespace {

using paper::House;
using paper::isHeld;
using paper::isToReprocess;
using paper::lineOf;
using paper::Pages;
using paper::PageSize;
using ::testing::HasSubstr;
using ::testing::Not;

class Paper : public ::testing::TestWithParam<PageSize> {
protected:
    Paper()
    {
        m_department.passBowieDick();
        m_cycle = m_department.runLoad(Implant::yes);
    }

    WorkingDepartment& department() { return m_department; }
    [[nodiscard]] const std::string& cycle() const { return m_cycle; }

    [[nodiscard]] House house()
    {
        Office& office = m_department.office();
        return {.style = {.zone = office.zone()},
                .facility = office.identity().facility,
                .journal = office.identity().id,
                .size = GetParam()};
    }

    [[nodiscard]] CycleRecord record()
    {
        ReadSnapshot snapshot(m_department.office().connection());
        return recordOfCycle(snapshot, m_department.office().entries(), m_cycle, m_department.now())
            .value();
    }

    /// Everything that the journal has about something, in words, is on the paper.
    void expectEntries(const std::string& paper, const std::string& about)
    {
        ReadSnapshot snapshot(m_department.office().connection());
        const Names names(snapshot);
        const auto nameOf = [&names](std::string_view id) { return names.of(id); };
        const HouseStyle style = house().style;
        int seen = 0;
        for (const Entry& entry : entriesAbout(snapshot, about)) {
            const ActSaid said = say(entry.act, nameOf, style);
            EXPECT_THAT(paper, HasSubstr(squeezed(said.value))) << said.what;
            EXPECT_THAT(paper, HasSubstr(squeezed(names.of(entry.actor) + ", " + say(entry.role)
                                                  + ", " + sayTime(entry.happenedAt.at, style))))
                << said.what;
            ++seen;
        }
        EXPECT_GT(seen, 0);
    }

    void expectInside(const Pages& pages)
    {
        EXPECT_EQ(pages.size(), GetParam());
        for (int page = 0; page < pages.count(); ++page) {
            EXPECT_FALSE(hasInkOutside(pictureOf(pages, page), GetParam())) << page;
        }
    }

    void expectFindings(const std::string& paper, const CycleView& view)
    {
        ASSERT_FALSE(view.decision.findings.empty());
        for (const Finding& finding : view.decision.findings) {
            EXPECT_THAT(paper, HasSubstr(squeezed(say(finding, house().style).says)));
        }
    }

private:
    WorkingDepartment m_department;
    std::string m_cycle;
};

TEST_P(Paper, TheLoadRecordHasEverythingThatWasRecorded)
{
    WorkingDepartment& at = department();
    at.readLoad(cycle());
    at.record(at.operating(), ChemicalRead{Seen::frontInAcceptZone},
              {WorkingDepartment::partOf("ci-i", cycle()), cycle()});
    at.incubate(cycle());
    at.readBiological(cycle(), local("08:40", "2031-03-05"));
    must(Dispositions(at.office())
             .sign(at.lead(), at.signature(at.lead(), leadPin), sightFrom(at.view(cycle())),
                   Verdict::quarantine));
    const CycleRecord taken = record();
    const Pages pages = loadRecord(taken, house());
    const std::string paper = textOf(pages);
    expectEntries(paper, cycle());
    expectEntries(paper, WorkingDepartment::partOf("bc", cycle()));
    for (const std::string& word :
         {taken.view.lot(), std::string("Facility"), house().journal,
          std::to_string(taken.head.seq) + ":" + hexOf(taken.head.hash), caution(),
          std::string("Physical record verified"), std::string("Signed: Quarantine"),
          std::string("at least 132 °C"), std::string("S1, M1"), std::string("spec-1, rev. 1"),
          std::string("Page 1 of ")}) {
        EXPECT_THAT(paper, HasSubstr(squeezed(word)));
    }
    EXPECT_THAT(paper, Not(HasSubstr(squeezed("Name of nobody"))));
    expectInside(pages);
    EXPECT_EQ(pages.count(), 1);
}

TEST_P(Paper, WhatIsMissingIsSaidWithEveryFinding)
{
    const CycleRecord taken = record();
    const Pages pages = loadRecord(taken, house());
    const std::string paper = textOf(pages);
    expectFindings(paper, taken.view);
    EXPECT_THAT(paper, HasSubstr("Notsigned"));
    EXPECT_THAT(paper, HasSubstr("Decided:Quarantine"));
}

TEST_P(Paper, ACorrectionShowsTheOldValueStruckBesideTheNew)
{
    WorkingDepartment& at = department();
    at.setClock(local("07:53"));
    const Appended read = at.record(
        at.operating(), PhysicalRead{Parameter::temperature, {"133.9", {Unit::celsius, 133'900}}},
        {cycle()});
    at.setClock(local("07:58"));
    ToRecord amended{.act =
                         PhysicalRead{Parameter::temperature, {"132.9", {Unit::celsius, 132'900}}},
                     .subjects = {cycle()}};
    amended.supersedes = read.firstSeq;
    amended.reason = "two digits read as one";
    must(Recorder(at.office()).record(at.lead(), amended, at.signature(at.lead(), leadPin)));
    const CycleRecord taken = record();
    const std::string paper = textOf(loadRecord(taken, house()));
    for (const char* const word :
         {"133.9 °C", "132.9 °C", "two digits read as one", "Amended by Name of st-l, lead"}) {
        EXPECT_THAT(paper, HasSubstr(squeezed(word)));
    }
    const FactBook book(taken.entries);
    for (const Fact& fact : book.facts()) {
        if (!std::holds_alternative<PhysicalRead>(fact.origin->act)) {
            continue;
        }
        const paper::FactLine line = lineOf(fact, taken.names, house().style);
        EXPECT_EQ(line.value.front(),
                  (paper::Run{QStringLiteral("133.9 °C"), paper::Face::struck}));
        EXPECT_EQ(line.value.back(), (paper::Run{QStringLiteral("132.9 °C"), paper::Face::plain}));
    }
}

TEST_P(Paper, ALoadOfSixtyItemsGoesOverPagesWithoutLoss)
{
    WorkingDepartment& at = department();
    at.setClock(local("08:00"));
    const std::string big = must(reserveCycle(at.office(), at.operating(),
                                              {.sterilizer = "sz-1", .specification = "sp-1"}))
                                .cycle;
    std::vector<std::string> labels;
    for (int i = 0; i < 60; ++i) {
        labels.push_back("Label " + std::to_string(i) + (i == 7 ? std::string(50, 'w') : ""));
        ItemAdded item{.label = labels.back(), .implant = Implant::no, .packaging = "pk-1"};
        at.record(at.operating(), item, {"it-big" + std::to_string(i), big});
    }
    ReadSnapshot snapshot(at.office().connection());
    const auto taken = recordOfCycle(snapshot, at.office().entries(), big, at.now()).value();
    const Pages pages = loadRecord(taken, house());
    const std::vector<std::string> texts = textOfPages(pages);
    ASSERT_GT(texts.size(), 1U);
    EXPECT_EQ(static_cast<int>(texts.size()), pages.count());
    std::string whole;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        EXPECT_THAT(texts[i], HasSubstr(squeezed(taken.view.lot())));
        EXPECT_THAT(texts[i], HasSubstr("Page" + std::to_string(i + 1) + "of"
                                        + std::to_string(texts.size())));
        whole += texts[i];
    }
    for (const std::string& label : labels) {
        EXPECT_THAT(whole, HasSubstr(squeezed(label) + ",decided:"));
    }
    expectInside(pages);
}

TEST_P(Paper, TheHoldSheetNamesWhatIsHeldAndWhy)
{
    const CycleRecord taken = record();
    ASSERT_TRUE(isHeld(taken));
    const Pages pages = holdSheet(taken, house());
    const std::string paper = textOf(pages);
    expectFindings(paper, taken.view);
    for (const char* const word : {"Do not use", "I1", "Stands at (place)", "Taken away by"}) {
        EXPECT_THAT(paper, HasSubstr(squeezed(word)));
    }
    EXPECT_THAT(paper, HasSubstr(squeezed(taken.view.lot())));
    EXPECT_THAT(paper, HasSubstr(hexOf(taken.head.hash)));
    expectInside(pages);
    EXPECT_FALSE(isToReprocess(taken));
}

TEST_P(Paper, TheReprocessTicketSaysWhatIsToBeDone)
{
    WorkingDepartment& at = department();
    at.setClock(local("07:53"));
    at.record(at.operating(),
              PhysicalRead{Parameter::temperature, {"131.9", {Unit::celsius, 131'900}}}, {cycle()});
    const CycleRecord taken = record();
    ASSERT_TRUE(isToReprocess(taken));
    const Pages pages = reprocessTicket(taken, house());
    const std::string paper = textOf(pages);
    int failed = 0;
    for (const Finding& finding : taken.view.decision.findings) {
        if (finding.outcome == Outcome::fails) {
            EXPECT_THAT(paper, HasSubstr(squeezed(say(finding, house().style).says)));
            EXPECT_THAT(paper, HasSubstr(squeezed(say(finding, house().style).next)));
            ++failed;
        }
    }
    EXPECT_GT(failed, 0);
    for (const char* const word : {"Reprocess the whole load", "I1", "wrap", "device", "New lot"}) {
        EXPECT_THAT(paper, HasSubstr(squeezed(word)));
    }
    expectInside(pages);
}

TEST_P(Paper, TheDaySheetHasEveryCycle)
{
    WorkingDepartment& at = department();
    Office& office = at.office();
    ReadSnapshot snapshot(office.connection());
    const SterilizerLog log = logOfSterilizer(snapshot, office.entries(), office.zone(), "sz-1",
                                              office.zone().dateOf(at.now()), at.now());
    ASSERT_EQ(log.cycles.size(), 2U);
    const Pages pages = daySheet(log, house());
    const std::string paper = textOf(pages);
    for (const LoggedCycle& logged : log.cycles) {
        EXPECT_THAT(paper, HasSubstr(squeezed(logged.view.lot())));
    }
    for (const char* const word :
         {"06:00 to 06:05", "07:00 to 07:50", "Passed", "Quarantine", "not signed", "In service",
          "installed", "2031-03-04", "100", "101"}) {
        EXPECT_THAT(paper, HasSubstr(squeezed(word)));
    }
    expectInside(pages);
}

TEST_P(Paper, TheHandoverNamesVialsHoldsAndTests)
{
    WorkingDepartment& at = department();
    at.readLoad(cycle());
    at.incubate(cycle());
    const auto taken = [&](Instant when) {
        ReadSnapshot snapshot(at.office().connection());
        return handoverAt(snapshot, at.office().entries(), at.office().zone(), when);
    };
    const Handover evening = taken(local("18:00"));
    ASSERT_EQ(evening.vials.size(), 1U);
    EXPECT_EQ(evening.vials[0].dueAt, local("08:35", "2031-03-05"));
    ASSERT_EQ(evening.held.size(), 1U);
    const Pages pages = shiftHandover(evening, house());
    const std::string paper = textOf(pages);
    for (const char* const word :
         {"vial, lot N4", "incubator", "4 Mar 2031 08:35", "5 Mar 2031 08:35", "holds an implant",
          "not signed", "S1", "In service", "Passed", "Promised", "Handed over"}) {
        EXPECT_THAT(paper, HasSubstr(squeezed(word)));
    }
    for (const Finding& finding : evening.held[0].decision.findings) {
        if (finding.outcome != Outcome::note) {
            EXPECT_THAT(paper, HasSubstr(squeezed(say(finding, house().style).says)));
        }
    }
    EXPECT_THAT(paper, Not(HasSubstr("NOTRUN")));
    expectInside(pages);
    // Next morning nobody has run the test of the new period.
    EXPECT_THAT(textOf(shiftHandover(taken(local("06:00", "2031-03-05")), house())),
                HasSubstr(squeezed("NOT RUN since 5 Mar 2031 00:00")));
}

TEST_P(Paper, BlankSheetsAskForEveryFieldInTheOrderOfTyping)
{
    const Pages load = blankLoad(house(), "S1");
    const std::string paper = textOf(load);
    std::size_t from = 0;
    for (const char* const word : {"S1, lot",
                                   "Reserve",
                                   "Sterilizer",
                                   "Program",
                                   "Items",
                                   "Implant",
                                   "Packaging",
                                   "Outside indicator",
                                   "Process challenge device",
                                   "Cycle counter",
                                   "Ended",
                                   "Unload",
                                   "Cooled",
                                   "Label agrees",
                                   "Printout",
                                   "Temperature",
                                   "Exposure time",
                                   "Pressure",
                                   "Drying time",
                                   "Gas concentration",
                                   "Humidity",
                                   "verified",
                                   "Chemical indicators",
                                   "Signature",
                                   "Typed into the journal"}) {
        const std::size_t at = paper.find(squeezed(word), from);
        ASSERT_NE(at, std::string::npos) << word;
        from = at;
    }
    expectInside(load);
    const Pages vials = blankBiologicals(house());
    const std::string log = textOf(vials);
    from = 0;
    for (const char* const word : {"Lot of the load", "Product", "Activated", "Incubator", "Put in",
                                   "Process indicator", "Read: growth", "Typed"}) {
        const std::size_t at = log.find(squeezed(word), from);
        ASSERT_NE(at, std::string::npos) << word;
        from = at;
    }
    expectInside(vials);
}

TEST_P(Paper, InkOutsideTheMarginsIsNoticed)
{
    const paper::Frame frame{.title = QStringLiteral("T"), .subject = QStringLiteral("S")};
    const auto with = [&](double left) {
        return Pages(frame, GetParam(),
                     {{.height = 100,
                       .paint =
                           [left](QPainter& painter, QPointF at) {
                               painter.fillRect(QRectF(at.x() + left, at.y(), 100, 100), Qt::black);
                           },
                       .again = nullptr}});
    };
    EXPECT_FALSE(hasInkOutside(pictureOf(with(0), 0), GetParam()));
    EXPECT_TRUE(hasInkOutside(pictureOf(with(-200), 0), GetParam()));
    EXPECT_TRUE(hasInkOutside(pictureOf(with(paper::bodyWidth(GetParam())), 0), GetParam()));
}

INSTANTIATE_TEST_SUITE_P(Sizes, Paper, ::testing::Values(PageSize::letter, PageSize::a4),
                         [](const auto& tried) {
                             return tried.param == PageSize::letter ? "Letter" : "A4";
                         });

} // namespace
} // namespace loadwarden::testing
