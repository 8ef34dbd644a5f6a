// What stands before a page or asks on it: dialogs, sign-in, lock, questions and refusals, as the
// walk sees the pages.
#include "tests/ui/walk/walk.h"
#include "ui/biologicals/bi_row.h"
#include "ui/biologicals/positive_view.h"
#include "ui/load/emergency_form.h"
#include "ui/load/load_page.h"
#include "ui/load/load_view.h"
#include "ui/load/review_form.h"
#include "ui/load/verdict_band.h"
#include "ui/records/file_ask.h"
#include "ui/records/journal_work.h"
#include "ui/records/records_page.h"
#include "ui/shell/shortcut_sheet.h"
#include "ui/shell/signing_dialog.h"
#include "ui/shell/work_view.h"

#include <QAbstractButton>
#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTableView>
#include <QTest>
#include <QTimer>

namespace loadwarden::ui_tests {
namespace {

class DialogWalk : public Walk {
protected:
    DialogWalk()
    {
        desktop.found();
        registerDepartment(desktop);
        passBowieDick(desktop);
    }

    void begin()
    {
        desktop.open(size(), theme());
        desktop.signIn();
    }

    /// Presses what has a text, in the language that is installed.
    void press(QWidget& in, const QString& text)
    {
        for (auto* const button : in.findChildren<QAbstractButton*>()) {
            if (button->isVisible() && button->isEnabled() && button->text() == text) {
                QTest::mouseClick(button, Qt::LeftButton);
                return;
            }
        }
        FAIL() << "there is no button " << text.toStdString();
    }

    void openLoad(const std::string& load)
    {
        ASSERT_TRUE(desktop.window().work()->openCycle(QString::fromStdString(load), {}));
        ASSERT_TRUE(desktop.waitFor([this] { return page().isUpToDate(); }));
        QTest::qWait(30);
    }

    void toArea(std::string_view id)
    {
        desktop.window().work()->showArea(areaOf(id));
        QTest::qWait(100);
    }

    /// Digits into the line of the dialog that has the keyboard, which are nobody's PIN.
    void typeWrongPin(QWidget& in)
    {
        for (auto* const line : in.findChildren<QLineEdit*>()) {
            if (line->isVisible() && line->echoMode() != QLineEdit::Normal) {
                line->setFocus();
            }
        }
        desktop.type("719264");
        desktop.press(Qt::Key_Return);
        QTest::qWait(200);
    }

    ui::LoadPage& page() { return *desktop.window().findChild<ui::LoadPage*>(); }
};

TEST_P(DialogWalk, SignInItsRefusalsTheLockAndTheChangeOfPerson)
{
    desktop.open(size(), theme());
    desktop.press(Qt::Key_Return);
    desktop.press(Qt::Key_Return);
    look("sign-in, nothing typed");
    desktop.close();
    desktop.open(size(), theme());
    desktop.type("nobody");
    desktop.press(Qt::Key_Return);
    typeWrongPin(desktop.window());
    look("sign-in, nobody known");
    desktop.close();
    begin();
    desktop.press(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    look("change of person");
    desktop.type("B-2");
    desktop.press(Qt::Key_Return);
    typeWrongPin(desktop.window());
    look("change of person, wrong PIN");
    desktop.press(Qt::Key_L, Qt::ControlModifier);
    look("lock");
    for (int tries = 0; tries < 3; ++tries) {
        typeWrongPin(desktop.window());
    }
    look("lock, to wait after wrong PINs");
}

TEST_P(DialogWalk, Keys)
{
    begin();
    toArea("load");
    bool isThere = false;
    QTimer looks; // the list is there some time after its key
    QObject::connect(&looks, &QTimer::timeout, [&] {
        if (QApplication::activeModalWidget() == nullptr) {
            return;
        }
        looks.stop();
        isThere = true;
        lookAtDialog("keys");
        QApplication::activeModalWidget()->close();
    });
    looks.start(200);
    desktop.press(Qt::Key_F1); // comes back once they are closed
    EXPECT_TRUE(isThere);
}

TEST_P(DialogWalk, SigningWithAndWithoutPin)
{
    const std::string load = runLoad(desktop, Implant::yes);
    begin();
    openLoad(load);
    auto& band = *page().view()->findChild<ui::VerdictBand*>();
    press(band, ui::VerdictBand::tr("Sign a hold"));
    lookAtDialog("signing");
    QWidget* const dialog = QApplication::activeModalWidget();
    ASSERT_NE(dialog, nullptr);
    press(*dialog, ui::VerdictBand::tr("Sign the hold"));
    lookAtDialog("signing, no PIN");
    for (int tries = 0; tries < 3; ++tries) {
        typeWrongPin(*dialog);
    }
    lookAtDialog("signing, to wait after wrong PINs");
}

TEST_P(DialogWalk, QuestionsOnTheLoad)
{
    const std::string load = runLoad(desktop, Implant::yes);
    begin();
    openLoad(load);
    auto* const view = page().view();
    view->findChild<ui::EmergencyForm*>()->ask();
    look("load, emergency release");
    view->findChild<ui::EmergencyForm*>()->hide();
    const auto& findings = view->desk().sheet()->view().decision.findings;
    ASSERT_FALSE(findings.empty());
    view->findChild<ui::ReviewForm*>()->ask(findings.front());
    look("load, review");
}

TEST_P(DialogWalk, QuestionsAndAPositiveOfBiologicals)
{
    runVials(desktop);
    begin();
    toArea("biologicals");
    ASSERT_TRUE(desktop.waitFor(
        [this] { return desktop.window().findChild<ui::PositiveView*>() != nullptr; }));
    look("biologicals, a positive");
    std::size_t asked = 0;
    for (auto* const row : desktop.window().findChildren<ui::BiRow*>()) {
        for (const auto saying :
             {ui::BiSaying::activated, ui::BiSaying::incubated, ui::BiSaying::growth,
              ui::BiSaying::noGrowth, ui::BiSaying::unclear}) {
            row->ask(saying);
            if (!row->isAsking()) {
                continue;
            }
            ++asked;
            QTest::qWait(30);
            for (auto* const scroll : desktop.window().findChildren<QScrollArea*>()) {
                if (scroll->isAncestorOf(row)) {
                    scroll->ensureWidgetVisible(row);
                }
            }
            look("biologicals, question " + std::to_string(static_cast<int>(saying)) + " of "
                 + row->name().toStdString());
            row->setFocus();
            QTest::keyClick(row, Qt::Key_Escape);
        }
    }
    EXPECT_GE(asked, 4U);
}

TEST_P(DialogWalk, QuestionsAndAnswersOfRecords)
{
    const std::string load = runLoad(desktop, Implant::yes);
    begin();
    toArea("records");
    auto& records = *desktop.window().findChild<ui::RecordsPage*>();
    ASSERT_TRUE(desktop.waitFor([&] { return records.isUpToDate(); }));
    records.findChild<QTableView*>()->setFocus();
    QTest::qWait(200);
    ASSERT_TRUE(desktop.waitFor([&] { return records.isUpToDate(); }));
    look("records, a record");
    auto& work = *records.findChild<ui::JournalWork*>();
    work.exportLines();
    look("records, to which file");
    auto& asks = *work.findChild<ui::FileAsk*>();
    asks.ask(desktop.file()); // of the journal itself
    press(asks, asks.go()->text());
    look("records, a file that is there");
    work.verify();
    ASSERT_TRUE(desktop.waitFor([&] { return !work.isBusy(); }));
    look("records, verified");
}

TEST_P(DialogWalk, AJournalThatDoesNotOpen)
{
    QFile file(desktop.file() + QStringLiteral(".no"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("no journal");
    file.close();
    desktop.openFirst(size(), theme());
    desktop.window().begin(file.fileName());
    QTest::qWait(500);
    look("a journal that does not open");
}

INSTANTIATE_TEST_SUITE_P(SizesThemesLanguages, DialogWalk, everyLook());
INSTANTIATE_TEST_SUITE_P(LargerText, DialogWalk, largerText());

} // namespace
} // namespace loadwarden::ui_tests
