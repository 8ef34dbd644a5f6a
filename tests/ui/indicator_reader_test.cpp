// How one indicator is read on a drawing: placed, chosen, marked.
#include "core/indicators/front.h"
#include "tests/ui/walk/faults.h"
#include "ui/indicators/colour_reader.h"
#include "ui/indicators/front_reader.h"
#include "ui/indicators/front_strip.h"
#include "ui/indicators/reading_panel.h"
#include "ui/indicators/schematic_paint.h"
#include "ui/indicators/sheet_grid.h"
#include "ui/indicators/sheet_reader.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QApplication>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>

#include <memory>

namespace loadwarden::ui_tests {
namespace {

using namespace loadwarden::ui;

class ReaderOnScreen : public ::testing::Test {
protected:
    ReaderOnScreen() : look(*qobject_cast<QApplication*>(QCoreApplication::instance()))
    {
        look.apply(Theme::light, TextSize::normal);
    }

    static ReadingGuide stated()
    {
        ReadingGuide guide{.type = 5, .directions = ReadingDirections{}, .today = std::nullopt};
        guide.directions->text = "Hold it flat in good light.";
        guide.directions->document = "Directions D";
        guide.directions->revision = "3";
        guide.directions->dated = parseDate("2030-05-01");
        guide.directions->reviewBy = parseDate("2031-03-01");
        guide.directions->stripTenthsMm = 200;
        guide.directions->boundaryTenthsMm = 120;
        guide.directions->startColour = ColourSample{"pale yellow", "#f4eec0"};
        guide.directions->endColour = ColourSample{"dark brown", {}};
        return guide;
    }

    void open(QWidget& widget)
    {
        widget.resize(900, 600);
        widget.show();
        QApplication::setActiveWindow(&widget);
        QTest::qWait(20);
    }

    static bool sees(const QWidget& widget, const QString& says)
    {
        for (const auto* const label : widget.findChildren<QLabel*>()) {
            if (label->isVisible() && label->text().contains(says)) {
                return true;
            }
        }
        return false;
    }

    static QPushButton* button(const QWidget& widget, const QString& begins)
    {
        for (auto* const each : widget.findChildren<QPushButton*>()) {
            if (each->text().startsWith(begins) || each->accessibleName() == begins) {
                return each;
            }
        }
        return nullptr;
    }

    Look look;
};

// Fronts

TEST_F(ReaderOnScreen, AFrontIsPlacedByKeysAndPassesOnlyPastTheBoundary)
{
    FrontReader reader(look, stated(), AnswersBy::reader);
    open(reader);
    EXPECT_FALSE(reader.seen());
    reader.strip()->setFocus();
    QTest::keyClick(reader.strip(), Qt::Key_End);
    EXPECT_EQ(reader.strip()->front(), 1'000);
    EXPECT_EQ(reader.seen(), Seen::frontInAcceptZone);
    EXPECT_TRUE(sees(reader, "it need not fill it"));
    QTest::keyClick(reader.strip(), Qt::Key_Home);
    EXPECT_EQ(reader.seen(), Seen::frontShortOfBoundary);
    reader.strip()->setValue(600);
    EXPECT_EQ(reader.seen(), Seen::frontOnBoundary) << "120 of 200 tenths";
    EXPECT_TRUE(sees(reader, "Reject: the front stands on the boundary"));
    EXPECT_TRUE(sees(reader, "Front at 12.0 mm, boundary at 12.0 mm of 20.0 mm"));
    reader.strip()->setValue(600 + readingTolerance);
    EXPECT_EQ(reader.seen(), Seen::frontOnBoundary);
    QTest::keyClick(reader.strip(), Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_EQ(reader.strip()->front(), 600 + readingTolerance + 1) << "a small step";
    EXPECT_EQ(reader.seen(), Seen::frontInAcceptZone);
    QTest::keyClick(reader.strip(), Qt::Key_Left);
    EXPECT_EQ(reader.strip()->front(), 600 + readingTolerance - 4);
}

TEST_F(ReaderOnScreen, AFrontIsDraggedAndNeverLeavesItsStrip)
{
    FrontReader reader(look, stated(), AnswersBy::reader);
    open(reader);
    FrontStrip* const strip = reader.strip();
    const StripPlace place(QFontMetrics(look.font(Type::body)), strip->width(), 56, 600);
    const auto at = [&](double x) {
        return QPoint(static_cast<int>(x), static_cast<int>(place.strip.center().y()));
    };
    QTest::mousePress(strip, Qt::LeftButton, {}, at(place.xOf(300)));
    EXPECT_NEAR(strip->front().value(), 300, 1);
    QTest::mouseMove(strip, at(place.xOf(800)));
    QMouseEvent move(QEvent::MouseMove, at(place.xOf(800)), strip->mapToGlobal(at(place.xOf(800))),
                     Qt::NoButton, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(strip, &move);
    EXPECT_NEAR(strip->front().value(), 800, 1);
    EXPECT_EQ(reader.seen(), Seen::frontInAcceptZone);
    QMouseEvent far(QEvent::MouseMove, QPointF(5'000, 0), QPointF(5'000, 0), Qt::NoButton,
                    Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(strip, &far);
    EXPECT_EQ(strip->front(), 1'000);
    strip->setValue(5'000);
    EXPECT_EQ(strip->front(), 1'000);
    strip->setValue(-7);
    EXPECT_EQ(strip->front(), 0);
}

TEST_F(ReaderOnScreen, TheWheelPlacesNoFront)
{
    FrontReader reader(look, stated(), AnswersBy::reader);
    open(reader);
    QWheelEvent wheel(QPointF(50, 50), reader.strip()->mapToGlobal(QPointF(50, 50)), {}, {0, 120},
                      Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(reader.strip(), &wheel);
    EXPECT_FALSE(reader.seen());
}

TEST_F(ReaderOnScreen, NotSureIsUnclearUntilTheFrontIsPlacedAnew)
{
    FrontReader reader(look, stated(), AnswersBy::reader);
    open(reader);
    reader.strip()->setValue(900);
    QTest::mouseClick(button(reader, "Not sure"), Qt::LeftButton);
    EXPECT_EQ(reader.seen(), Seen::unclear);
    EXPECT_TRUE(sees(reader, "who does not see the first answer"));
    QTest::keyClick(reader.strip(), Qt::Key_Right);
    EXPECT_EQ(reader.seen(), Seen::frontInAcceptZone);
    EXPECT_FALSE(button(reader, "Not sure")->isChecked());
    reader.clear();
    EXPECT_FALSE(reader.seen());
}

TEST_F(ReaderOnScreen, AFrontHasAValueForAScreenReader)
{
    FrontReader reader(look, stated(), AnswersBy::reader);
    open(reader);
    QAccessibleInterface* const told = QAccessible::queryAccessibleInterface(reader.strip());
    ASSERT_NE(told, nullptr);
    ASSERT_NE(told->valueInterface(), nullptr);
    EXPECT_EQ(told->valueInterface()->maximumValue().toInt(), 1'000);
    told->valueInterface()->setCurrentValue(700);
    EXPECT_EQ(reader.seen(), Seen::frontInAcceptZone);
    EXPECT_TRUE(told->text(QAccessible::Description).contains("Accept"));
}

TEST_F(ReaderOnScreen, ABoundaryThatNobodyStatedIsSaidToBeDrawnOnly)
{
    FrontReader reader(look, {}, AnswersBy::reader);
    open(reader);
    EXPECT_TRUE(sees(reader, "Not to scale"));
    reader.strip()->setValue(unstatedBoundary);
    EXPECT_EQ(reader.seen(), Seen::frontOnBoundary);
    EXPECT_TRUE(sees(reader, "its own boundary is not stated"));
}

// Colours

TEST_F(ReaderOnScreen, AColourIsChosenBesideTheProductsOwn)
{
    ColourReader reader(look, stated(), AnswersBy::reader);
    open(reader);
    EXPECT_TRUE(sees(reader, "pale yellow"));
    EXPECT_TRUE(sees(reader, "dark brown"));
    EXPECT_TRUE(sees(reader, "no sample taken")) << "of the end colour";
    EXPECT_TRUE(sees(reader, "Makers' colours differ"));
    EXPECT_FALSE(reader.seen());
    const std::pair<const char*, Seen> choices[] = {{"End colour reached", Seen::endColourReached},
                                                    {"End colour only", Seen::endColourPartly},
                                                    {"Unchanged", Seen::unchanged},
                                                    {"Unclear", Seen::unclear}};
    for (const auto& [begins, seen] : choices) {
        ASSERT_NE(button(reader, begins), nullptr) << begins;
        QTest::mouseClick(button(reader, begins), Qt::LeftButton);
        EXPECT_EQ(reader.seen(), seen);
    }
    reader.clear();
    EXPECT_FALSE(reader.seen());
}

TEST_F(ReaderOnScreen, ASwatchShowsTheSampleAndNothingWhereThereIsNone)
{
    Swatch sampled(look, "#336699");
    EXPECT_TRUE(sampled.hasSample());
    EXPECT_EQ(sampled.grab().toImage().pixelColor(sampled.rect().center()), QColor("#336699"));
    EXPECT_FALSE(Swatch(look, {}).hasSample());
    EXPECT_FALSE(Swatch(look, "#33669").hasSample());
}

// Sheets

class SheetOnScreen : public ReaderOnScreen {
protected:
    SheetOnScreen() : reader(look, AnswersBy::reader) { open(reader); }

    void press(const QString& begins) { QTest::mouseClick(button(reader, begins), Qt::LeftButton); }
    void clickCell(std::size_t cell)
    {
        QTest::mouseClick(reader.grid(), Qt::LeftButton, {}, reader.grid()->rectOf(cell).center());
    }

    SheetReader reader;
};

TEST_F(SheetOnScreen, MarksNameThePattern)
{
    EXPECT_FALSE(reader.seen());
    clickCell(0);
    EXPECT_FALSE(reader.seen()) << "the rest is not marked";
    press("Mark all so");
    EXPECT_EQ(reader.seen(), Seen::uniformComplete);
    EXPECT_TRUE(sees(reader, "it says nothing about any load"));
    press("Mark as not changed");
    clickCell(24);
    EXPECT_EQ(reader.pattern(), SheetPattern::paleCentre);
    EXPECT_EQ(reader.seen(), Seen::notUniform);
    EXPECT_TRUE(sees(reader, "Air may have stayed in the pack"));
}

TEST_F(SheetOnScreen, CellsAreMarkedByKeys)
{
    SheetGrid* const grid = reader.grid();
    grid->setFocus();
    QTest::keyClick(grid, Qt::Key_Right);
    QTest::keyClick(grid, Qt::Key_Down);
    QTest::keyClick(grid, Qt::Key_3);
    EXPECT_EQ(grid->cells()[sheetSide + 1], CellMark::none);
    EXPECT_TRUE(sees(reader, "Row 2, column 2: not changed"));
    QTest::keyClick(grid, Qt::Key_End);
    QTest::keyClick(grid, Qt::Key_2);
    EXPECT_EQ(grid->cells()[2 * sheetSide - 1], CellMark::part);
    QTest::keyClick(grid, Qt::Key_Right);
    EXPECT_TRUE(sees(reader, "Row 2, column 7")) << "there is nothing further";
    QTest::keyClick(grid, Qt::Key_Home);
    QTest::keyClick(grid, Qt::Key_Up);
    QTest::keyClick(grid, Qt::Key_Space);
    EXPECT_EQ(grid->cells()[0], CellMark::full);
}

TEST_F(SheetOnScreen, EachPatternHasItsAnswerAndOnlyTheFirstPasses)
{
    const std::pair<const char*, Seen> patterns[] = {
        {"Uniform and complete", Seen::uniformComplete},
        {"Uniform, not complete", Seen::uniformIncomplete},
        {"Pale centre", Seen::notUniform},
        {"Pale edge", Seen::notUniform},
        {"Streaks or patches", Seen::notUniform},
        {"No change", Seen::unchanged},
        {"Damaged", Seen::unclear},
        {"Unclear", Seen::unclear}};
    for (const auto& [begins, seen] : patterns) {
        ASSERT_NE(button(reader, begins), nullptr) << begins;
        press(begins);
        EXPECT_EQ(reader.seen(), seen) << begins;
    }
}

TEST_F(SheetOnScreen, ASheetWithAPalePlaceIsNotCompleteWhateverIsNamed)
{
    press("Mark as changed in part");
    clickCell(3);
    press("Uniform and complete");
    EXPECT_FALSE(reader.seen());
    EXPECT_TRUE(sees(reader, "a place is marked as not fully changed"));
    reader.clear();
    press("Uniform and complete");
    EXPECT_EQ(reader.seen(), Seen::uniformComplete);
    clickCell(3);
    EXPECT_FALSE(reader.seen()) << "marked afterwards";
}

TEST_F(SheetOnScreen, WhatSomebodyNamedStaysWhenTheyMarkMore)
{
    press("Damaged");
    press("Mark all so");
    EXPECT_EQ(reader.seen(), Seen::unclear);
    reader.clear();
    EXPECT_FALSE(reader.seen());
    EXPECT_EQ(reader.grid()->cells(), SheetCells{});
}

// Directions

TEST_F(ReaderOnScreen, DirectionsSayWhereTheyAreFromAndWhenTheyAreOverdue)
{
    ReadingGuide guide = stated();
    EXPECT_EQ(warningOf(guide), QString()) << "nobody knows the day";
    guide.today = parseDate("2031-03-01");
    EXPECT_EQ(warningOf(guide), QString());
    guide.today = parseDate("2031-03-02");
    DirectionsView view(guide);
    open(view);
    EXPECT_TRUE(sees(view, "Hold it flat in good light."));
    EXPECT_TRUE(sees(view, "From: Directions D, revision 3, dated 2030-05-01"));
    EXPECT_TRUE(sees(view, "A review of these directions was due on 2031-03-01"));
    EXPECT_TRUE(sees(view, "Type 5, integrating"));
    DirectionsView none{ReadingGuide{}};
    open(none);
    EXPECT_TRUE(sees(none, "No directions of this product are registered."));
}

// The panel

struct Answer {
    std::optional<Seen> seen;
    QString words;
};

class PanelOnScreen : public ReaderOnScreen {
protected:
    void openPanel(std::optional<Response> response)
    {
        panel = std::make_unique<ReadingPanel>(look, "In PCD", "Product A", response, stated());
        QObject::connect(panel.get(), &ReadingPanel::answered, panel.get(),
                         [this](Seen seen, const QString& words) {
                             answer = {seen, words};
                         });
        open(*panel);
        panel->focusFirst();
    }

    FrontStrip* strip() { return panel->findChild<FrontStrip*>(); }

    std::unique_ptr<ReadingPanel> panel;
    Answer answer;
};

TEST_F(PanelOnScreen, IsAnsweredByOneKeyWithNothingPlaced)
{
    const std::pair<Qt::Key, Seen> keys[] = {{Qt::Key_A, Seen::frontInAcceptZone},
                                             {Qt::Key_R, Seen::frontShortOfBoundary},
                                             {Qt::Key_U, Seen::unclear},
                                             {Qt::Key_B, Seen::frontOnBoundary},
                                             {Qt::Key_M, Seen::absent}};
    for (const auto& [key, seen] : keys) {
        openPanel(Response::movingFront);
        EXPECT_TRUE(sees(*panel, "Hold it flat in good light."));
        QTest::keyClick(panel.get(), key);
        EXPECT_EQ(answer.seen, seen);
    }
}

TEST_F(PanelOnScreen, IsAnsweredByItsKeysWhileTheFrontIsPlaced)
{
    openPanel(Response::movingFront);
    strip()->setFocus();
    QTest::keyClick(strip(), Qt::Key_End);
    EXPECT_FALSE(answer.seen);
    QTest::keyClick(strip(), Qt::Key_A);
    EXPECT_EQ(answer.seen, Seen::frontInAcceptZone);
}

TEST_F(PanelOnScreen, DoesNotTakeAPassForAFrontThatWasPlacedOnTheBoundary)
{
    openPanel(Response::movingFront);
    strip()->setValue(600);
    QTest::keyClick(panel.get(), Qt::Key_A);
    EXPECT_FALSE(answer.seen);
    EXPECT_TRUE(sees(*panel, "You marked: front on the boundary. That is no pass."));
    strip()->setValue(700);
    EXPECT_FALSE(sees(*panel, "That is no pass."));
    strip()->setValue(600);
    QTest::keyClick(panel.get(), Qt::Key_R);
    EXPECT_EQ(answer.seen, Seen::frontOnBoundary) << "as exactly as it was placed";
    EXPECT_TRUE(answer.words.contains("on the boundary")) << answer.words.toStdString();
}

TEST_F(PanelOnScreen, TakesTheSaferAnswerWhateverWasPlaced)
{
    openPanel(Response::movingFront);
    strip()->setValue(900);
    QTest::keyClick(panel.get(), Qt::Key_R);
    EXPECT_EQ(answer.seen, Seen::frontShortOfBoundary);
    openPanel(Response::movingFront);
    strip()->setValue(900);
    QTest::keyClick(panel.get(), Qt::Key_U);
    EXPECT_EQ(answer.seen, Seen::unclear);
    openPanel(Response::movingFront);
    strip()->setValue(600);
    QTest::keyClick(panel.get(), Qt::Key_M);
    EXPECT_EQ(answer.seen, Seen::absent);
}

TEST_F(PanelOnScreen, TakesASheetAsItWasNamed)
{
    openPanel(Response::sheet);
    QTest::mouseClick(button(*panel, "Uniform, not complete"), Qt::LeftButton);
    QTest::keyClick(panel.get(), Qt::Key_A);
    EXPECT_FALSE(answer.seen);
    QTest::keyClick(panel.get(), Qt::Key_R);
    EXPECT_EQ(answer.seen, Seen::uniformIncomplete);
    openPanel(Response::sheet);
    QTest::mouseClick(button(*panel, "Damaged"), Qt::LeftButton);
    QTest::keyClick(panel.get(), Qt::Key_A);
    EXPECT_NE(answer.seen, Seen::uniformComplete);
}

TEST_F(PanelOnScreen, KnowsNothingOfAProductThatIsInNoRegister)
{
    openPanel(std::nullopt);
    EXPECT_EQ(panel->reader(), nullptr);
    EXPECT_TRUE(sees(*panel, "nobody knows how it answers"));
    QTest::keyClick(panel.get(), Qt::Key_A);
    EXPECT_FALSE(answer.seen);
    QTest::keyClick(panel.get(), Qt::Key_U);
    EXPECT_EQ(answer.seen, Seen::unclear);
}

} // namespace
} // namespace loadwarden::ui_tests
