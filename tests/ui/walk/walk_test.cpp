// Every page at two sizes, in two themes, as it is and in a pseudo-translation.
#include "core/desk/equipping.h"
#include "tests/ui/department.h"
#include "tests/ui/recording.h"
#include "tests/ui/walk/walk.h"
#include "ui/indicators/reading_panel.h"
#include "ui/load/further_section.h"
#include "ui/load/indicator_section.h"
#include "ui/load/later_strip.h"
#include "ui/load/load_page.h"
#include "ui/load/load_view.h"
#include "ui/load/trace_section.h"
#include "ui/questions/questions_page.h"
#include "ui/records/records_page.h"
#include "ui/settings/settings_page.h"
#include "ui/shell/area.h"
#include "ui/shell/work_view.h"
#include "ui/today/today_page.h"
#include "ui/trace/mapping_form.h"
#include "ui/trace/trace_facts.h"
#include "ui/trace/trace_plot.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>

namespace loadwarden::ui_tests {
namespace {

class PageWalk : public Walk {
protected:
    void lookAtAreas(const char* state)
    {
        auto* const today = desktop.window().findChild<ui::TodayPage*>();
        auto* const records = desktop.window().findChild<ui::RecordsPage*>();
        for (int i = 0; i < desktop.window().work()->areaCount(); ++i) {
            desktop.window().work()->showArea(i);
            ASSERT_TRUE(desktop.waitFor([&] {
                return today->isUpToDate() && (!records->isVisible() || records->isUpToDate());
            }));
            const std::string page =
                std::string(ui::areas()[static_cast<std::size_t>(i)].id) + ' ' + state;
            look(page);
        }
        lookAtSections(state);
    }

    /// A topic with all that a topic has, and a tray.
    void lookAtQuestions()
    {
        auto* const page = desktop.window().findChild<ui::QuestionsPage*>();
        desktop.window().work()->showArea(areaOf("questions"));
        for (const char* const topic : {"sterile-meaning", "front-in-accept-zone"}) {
            page->goTo(QString::fromLatin1(topic));
            ASSERT_TRUE(desktop.waitFor([&] { return page->isUpToDate(); }));
            look(std::string("questions, ") + topic);
        }
        ASSERT_TRUE(page->takeScan("I1", {.what = LookedUp::What::nothing}));
        ASSERT_TRUE(desktop.waitFor([&] { return page->isUpToDate(); }));
        look("questions, a tray");
        const auto buttons = page->findChildren<QPushButton*>();
        const auto report = std::ranges::find_if(buttons, [](const QPushButton* button) {
            return button->text().startsWith(QStringLiteral("Re&port"));
        });
        if (report != buttons.end()) { // an item has that label
            (*report)->click();
            look("questions, a report");
        }
    }

    /// Loads in the states in which they stand longest, and the form for a new one.
    void lookAtLoads(const std::string& load, const std::string& open)
    {
        auto* const page = desktop.window().findChild<ui::LoadPage*>();
        const auto settled = [&] { return desktop.waitFor([&] { return page->isUpToDate(); }); };
        desktop.window().work()->showArea(areaOf("load"));
        ASSERT_TRUE(settled());
        desktop.press(Qt::Key_N, Qt::ControlModifier);
        QTest::qWait(100);
        look("load, new");
        ASSERT_TRUE(desktop.window().work()->openCycle(QString::fromStdString(open), {}));
        ASSERT_TRUE(settled());
        look("load, being loaded");
        ASSERT_TRUE(desktop.window().work()->openCycle(QString::fromStdString(load), {}));
        ASSERT_TRUE(settled());
        look("load, ended");
        for (auto* const strip : page->view()->findChildren<ui::LaterStrip*>()) {
            strip->toggle();
            look("load, done earlier");
            strip->toggle();
        }
        auto* const further = page->view()->findChild<ui::FurtherSection*>();
        for (int what = 0; what <= static_cast<int>(Further::takeBack); ++what) {
            if (further->choose(static_cast<Further>(what), {})) {
                look("load, what else happened " + std::to_string(what));
            }
        }
        auto* const scroll = page->view()->findChildren<QScrollArea*>().back();
        scroll->verticalScrollBar()->setValue(0);
        for (auto* const button : page->view()->findChildren<QPushButton*>()) {
            if (button->isVisible() && button->accessibleName().contains("PCD")
                && button->width() > 0 && button->isEnabled() && button->objectName().isEmpty()
                && button->text() == ui::IndicatorSection::tr("Read")) {
                QTest::mouseClick(button, Qt::LeftButton);
                break;
            }
        }
        ASSERT_NE(page->view()->findChild<ui::ReadingPanel*>(), nullptr);
        look("load, reading an indicator");
    }

    /// Looks at all of something that may be higher than what is seen of it.
    void lookThrough(QWidget& shown, QScrollArea& scroll, const std::string& page)
    {
        const int top = shown.mapTo(scroll.widget(), QPoint()).y();
        const int step = std::max(1, scroll.viewport()->height() * 3 / 4);
        for (int y = top; y < top + shown.height(); y += step) {
            scroll.verticalScrollBar()->setValue(y);
            look(page + " from " + std::to_string(y - top));
        }
    }

    /// A recorder's file with faults and defects: how it is read, its picture and its figures.
    void lookAtRecording(const std::string& load)
    {
        const QTemporaryDir folder;
        const QString file =
            writeRecording(folder,
                           {{simulation::FaultKind::interruptedExposure, 30, 3},
                            {simulation::FaultKind::shortDrying, 600}},
                           {TraceDefectKind::textInNumber, TraceDefectKind::timeRepeated});

        auto* const page = desktop.window().findChild<ui::LoadPage*>();
        const auto settled = [&] { return desktop.waitFor([&] { return page->isUpToDate(); }); };
        ASSERT_TRUE(desktop.window().work()->openCycle(QString::fromStdString(load), {}));
        ASSERT_TRUE(settled());
        auto* const section = page->view()->findChild<ui::TraceSection*>();
        auto* const scroll = page->view()->findChildren<QScrollArea*>().back();
        section->open(file);
        const auto form = [&] { return section->findChild<ui::MappingForm*>(); };
        ASSERT_TRUE(desktop.waitFor([&] { return form() != nullptr && form()->isVisible(); }));
        QTest::qWait(50);
        lookThrough(*form(), *scroll, "load, how a recording is read");
        for (auto* const button : form()->findChildren<QPushButton*>()) {
            if (button->text() == ui::MappingForm::tr("Read files of this recorder so")) {
                button->click();
            }
        }
        auto* const plot = section->findChild<ui::TracePlot*>();
        ASSERT_TRUE(desktop.waitFor([&] { return plot->isVisible(); }));
        QTest::qWait(50);
        lookThrough(*plot, *scroll, "load, picture of a recording");
        lookThrough(*section->findChild<ui::TraceFacts*>(), *scroll,
                    "load, figures of a recording");
    }

    void lookAtSections(const char* state)
    {
        auto* const settings = desktop.window().findChild<ui::SettingsPage*>();
        desktop.window().work()->showArea(areaOf("settings"));
        ASSERT_TRUE(desktop.waitFor([&] { return settings->isUpToDate(); }));
        for (int i = 0; i < settings->sectionCount(); ++i) {
            settings->showSection(i);
            // Where Tab went before, the page is scrolled down, and its top lies above the window.
            for (auto* const scroll : settings->findChildren<QScrollArea*>()) {
                scroll->verticalScrollBar()->setValue(0);
            }
            look(std::string("settings, ") + settings->sectionId(i) + " " + state);
        }
    }
};

TEST_P(PageWalk, FindsNothingWrongOnThePagesOfADepartment)
{
    desktop.found();
    desktop.open(size(), theme());
    look("sign-in");
    desktop.signIn();
    lookAtAreas("empty");
    desktop.close();

    desktop.prepare([](Office& office, const SignedIn& who) {
        const FirstSterilizer sterilizers[] = {{.name = "STERILIZER 1",
                                                .specification = "steam-prevacuum-132-wrapped@1",
                                                .program = "P1",
                                                .isInService = true},
                                               {.name = "STERILIZER 2"}};
        auto signature = SignIn(office).sign(who, supervisorPin);
        (void)equip(office, who, std::get<Signature>(std::move(signature)), sterilizers);
    });
    desktop.open(size(), theme());
    desktop.signIn();
    lookAtAreas("with sterilizers");
}

TEST_P(PageWalk, FindsNothingWrongOnThePageOfALoad)
{
    desktop.found();
    registerDepartment(desktop);
    passBowieDick(desktop);
    const std::string load = runLoad(desktop, Implant::yes);
    const std::string open = reserveLoad(desktop);
    desktop.open(size(), theme());
    desktop.signIn();
    lookAtLoads(load, open);
    lookAtRecording(load);
    lookAtQuestions();
    lookAtSections("of a department");
}

TEST_P(PageWalk, FindsNothingWrongOnTheFirstStart)
{
    desktop.openFirst(size(), theme());
    look("first start");
}

INSTANTIATE_TEST_SUITE_P(SizesThemesLanguages, PageWalk, everyLook());
INSTANTIATE_TEST_SUITE_P(LargerText, PageWalk, largerText());

} // namespace
} // namespace loadwarden::ui_tests
