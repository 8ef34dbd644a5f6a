// Records by keys: found, read again, opened, verified, copied out and put on paper.
#include "core/desk/dispositions.h"
#include "core/desk/recorder.h"
#include "core/desk/reservations.h"
#include "core/store/write_transaction.h"
#include "tests/ui/desktop.h"
#include "ui/records/records_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>

namespace loadwarden::ui_tests {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

template <class Value>
Value must(OrRefusal<Value> answer)
{
    if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
        throw std::logic_error("refused " + std::to_string(static_cast<int>(refusal->why)) + ' '
                               + refusal->subject + refusal->detail);
    }
    return std::get<Value>(std::move(answer));
}

class RecordsOnScreen : public ::testing::Test {
protected:
    RecordsOnScreen() { desktop.found(); }

    /// Two loads of S1 on 4 March and one of S2 on the day before. The first of S1 has run, its
    /// temperature was corrected, and the supervisor has signed it.
    void fill()
    {
        desktop.clock().set(local("06:00", "2031-03-03"));
        desktop.prepare([this](Office& office, const SignedIn& who) {
            const auto signature = [&] { return must(SignIn(office).sign(who, supervisorPin)); };
            for (const char* const number : {"1", "2"}) {
                const std::string id = std::string("sz-") + number;
                must(Recorder(office).record(
                    who,
                    {.act = SterilizerRecorded{.name = std::string("S") + number, .model = "M1"},
                     .subjects = {id}},
                    signature()));
                must(Recorder(office).record(
                    who, {.act = SterilizerReturned{"installed"}, .subjects = {id}}, signature()));
            }
            reserve(office, who, "sz-2", "06:30", "2031-03-03", "Bowl");
            const std::string load = reserve(office, who, "sz-1", "06:40", "2031-03-04", "Tray 7");
            reserve(office, who, "sz-1", "06:50", "2031-03-04", "Basin");
            run(office, who, load);
            desktop.clock().set(local("08:00"));
            must(Dispositions(office).sign(who, signature(), sightOf(office, load),
                                           Verdict::quarantine));
        });
    }

    std::string reserve(Office& office, const SignedIn& who, const std::string& sterilizer,
                        const std::string& time, const std::string& day, const std::string& label)
    {
        desktop.clock().set(local(time, day));
        const auto made =
            must(reserveCycle(office, who, {.sterilizer = sterilizer, .method = Method::steam}));
        must(Recorder(office).record(who, {.act = ItemAdded{.label = label},
                                           .subjects = {"it" + made.cycle.substr(2), made.cycle}}));
        return made.cycle;
    }

    void run(Office& office, const SignedIn& who, const std::string& load)
    {
        const auto at = [](const std::string& time) { return JournalTime{local(time), -360}; };
        const auto celsius = [](const std::string& text, std::int64_t thousandths) {
            return PhysicalRead{Parameter::temperature, {text, {Unit::celsius, thousandths}}};
        };
        desktop.clock().set(local("07:00"));
        must(Recorder(office).record(
            who,
            {.act = CycleStarted{ClockSource::facility, at("07:00"), 101}, .subjects = {load}}));
        desktop.clock().set(local("07:50"));
        must(Recorder(office).record(
            who,
            {.act = CycleEnded{at("07:50"), CycleOutcome::ended, {}, {}}, .subjects = {load}}));
        // Nobody betters what he has said himself.
        const SignedIn other = must(SignIn(office).enter("st-op", operatorPin));
        const Appended read = must(
            Recorder(office).record(other, {.act = celsius("131.4", 131'400), .subjects = {load}}));
        must(Recorder(office).record(who,
                                     {.act = celsius("132.4", 132'400),
                                      .subjects = {load},
                                      .reason = "mistyped",
                                      .supersedes = read.firstSeq},
                                     must(SignIn(office).sign(who, supervisorPin))));
    }

    static Sight sightOf(Office& office, const std::string& cycle)
    {
        ReadSnapshot snapshot(office.connection());
        return sightFrom(viewCycle(snapshot, office.entries(), cycle, office.now()).value());
    }

    void openPage()
    {
        desktop.open();
        desktop.signIn();
        desktop.press(Qt::Key_8, Qt::ControlModifier);
        settle();
    }

    void settle()
    {
        ASSERT_TRUE(desktop.waitFor([this] { return page() != nullptr && page()->isUpToDate(); }));
    }

    /// By Tab, as somebody without a pointer.
    void goTo(const QString& name)
    {
        for (int tabs = 0; tabs < 40 && desktop.focusName() != name; ++tabs) {
            desktop.press(Qt::Key_Tab);
        }
        ASSERT_EQ(desktop.focusName(), name);
    }

    void typeInto(const QString& name, const QString& text)
    {
        goTo(name);
        desktop.press(Qt::Key_A, Qt::ControlModifier);
        desktop.press(Qt::Key_Delete);
        desktop.type(text);
        desktop.press(Qt::Key_Return);
        settle();
    }

    /// The lots in the table, from the top.
    std::vector<std::string> lots()
    {
        std::vector<std::string> all;
        const auto& model = page()->model();
        for (int row = 0; row < model.rowCount(); ++row) {
            all.push_back(model.index(row, ui::RecordsModel::lot).data().toString().toStdString());
        }
        return all;
    }

    ui::RecordsPage* page() { return desktop.window().findChild<ui::RecordsPage*>(); }

    Desktop desktop;
    QTemporaryDir folder;
};

TEST_F(RecordsOnScreen, AnEmptyJournalSaysWhatComesHere)
{
    openPage();
    EXPECT_TRUE(desktop.comesToSee("No load and no test is recorded yet"));
    EXPECT_TRUE(desktop.sees("when a cycle is reserved"));
    EXPECT_TRUE(desktop.sees("Nothing is chosen"));
}

TEST_F(RecordsOnScreen, AreFoundByLotLabelSterilizerDaysAndPerson)
{
    fill();
    openPage();
    EXPECT_THAT(lots(), ElementsAre("1-2031-063-01", "1-2031-063-02", "2-2031-062-01"));
    desktop.press(Qt::Key_F, Qt::ControlModifier);
    typeInto("Lot control number begins with", "2-2031");
    EXPECT_THAT(lots(), ElementsAre("2-2031-062-01"));
    EXPECT_TRUE(desktop.sees("1 record, and no older one"));
    typeInto("Lot control number begins with", "");
    typeInto("Item label begins with", "b");
    EXPECT_THAT(lots(), ElementsAre("1-2031-063-02", "2-2031-062-01"));
    typeInto("Item label begins with", "TRAY7");
    EXPECT_THAT(lots(), ElementsAre("1-2031-063-01"));
    typeInto("Item label begins with", "");
    goTo("Sterilizer");
    desktop.press(Qt::Key_Down);
    settle();
    EXPECT_THAT(lots(), ElementsAre("1-2031-063-01", "1-2031-063-02"));
    typeInto("Until this facility day", "2031-03-03");
    EXPECT_THAT(lots(), IsEmpty());
    EXPECT_TRUE(desktop.sees("Nothing fits"));
    desktop.click("Clear");
    settle();
    EXPECT_EQ(lots().size(), 3U);
    typeInto("From this facility day on", "2031-03-03");
    typeInto("Until this facility day", "2031-03-03");
    EXPECT_THAT(lots(), ElementsAre("2-2031-062-01"));
    desktop.click("Clear");
    settle();
    goTo("Signed by");
    desktop.press(Qt::Key_End); // the supervisor, after the operator
    settle();
    EXPECT_THAT(lots(), ElementsAre("1-2031-063-01"));
    EXPECT_EQ(page()->model().index(0, ui::RecordsModel::signedBy).data(), "Supervisor One");
    EXPECT_EQ(page()->model().index(0, ui::RecordsModel::signedAs).data(), "Quarantine");
}

TEST_F(RecordsOnScreen, SayABadDateAndAnUnknownLotAtTheirFields)
{
    fill();
    openPage();
    typeInto("From this facility day on", "2031-02-30");
    EXPECT_TRUE(desktop.sees("No such day. Type it as 2031-03-04."));
    EXPECT_EQ(lots().size(), 3U) << "what was found stays";
    typeInto("From this facility day on", "2031-03-04");
    EXPECT_FALSE(desktop.sees("No such day"));
    typeInto("Until this facility day", "2031-03-03");
    EXPECT_TRUE(desktop.sees("It is before the first day."));
    typeInto("Until this facility day", "");
    typeInto("Lot of a product that was used in it", "N9");
    EXPECT_TRUE(desktop.comesToSee("No product has a lot of this number."));
}

TEST_F(RecordsOnScreen, KeepWhatWasTypedWhenTheAreaIsLeft)
{
    fill();
    openPage();
    typeInto("Item label begins with", "bowl");
    desktop.press(Qt::Key_1, Qt::ControlModifier);
    desktop.press(Qt::Key_8, Qt::ControlModifier);
    settle();
    EXPECT_THAT(lots(), ElementsAre("2-2031-062-01"));
    goTo("Item label begins with");
    EXPECT_EQ(qobject_cast<QLineEdit*>(QApplication::focusWidget())->text(), "bowl");
}

TEST_F(RecordsOnScreen, ShowTheHistoryWithWhatWasCorrectedStruckThroughAndOpenByEnter)
{
    fill();
    openPage();
    QSignalSpy wanted(page(), &ui::Page::wantsCycle);
    desktop.press(Qt::Key_F, Qt::ControlModifier);
    desktop.press(Qt::Key_Down);
    EXPECT_EQ(desktop.focusName(), "Loads and tests, the newest first");
    ASSERT_TRUE(desktop.comesToSee("<s>131.4"));
    EXPECT_TRUE(desktop.sees("132.4"));
    EXPECT_FALSE(desktop.sees("<s>132.4"));
    EXPECT_TRUE(desktop.sees("mistyped"));
    EXPECT_TRUE(desktop.sees("Signed by Supervisor One"));
    desktop.press(Qt::Key_Down);
    ASSERT_TRUE(desktop.waitFor([&] { return !desktop.sees("<s>131.4"); }));
    EXPECT_TRUE(desktop.comesToSee("Being loaded."));
    desktop.press(Qt::Key_Up);
    ASSERT_TRUE(desktop.comesToSee("<s>131.4"));
    desktop.press(Qt::Key_Return);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_TRUE(wanted[0][0].toString().startsWith("ld-"));
}

TEST_F(RecordsOnScreen, VerifyASoundJournalInPlainWords)
{
    fill();
    openPage();
    desktop.click("Verify the journal");
    ASSERT_TRUE(desktop.comesToSee("Nothing is wrong with what was checked."));
    EXPECT_TRUE(desktop.sees("seals hold"));
    EXPECT_TRUE(desktop.sees("entries, each against its hash"));
    EXPECT_EQ(desktop.focusName(), "Put away");
    desktop.press(Qt::Key_Space); // the keyboard is on what puts it away
    EXPECT_TRUE(desktop.waitFor([&] { return !desktop.sees("Nothing is wrong"); }));
}

TEST_F(RecordsOnScreen, VerifyATamperedJournalInPlainWords)
{
    fill();
    desktop.prepare([](Office& office, const SignedIn&) {
        WriteTransaction transaction(office.connection());
        transaction.statement("DROP TRIGGER j_entry_no_update").run();
        transaction
            .statement("UPDATE j_entry SET bytes = replace(bytes, '131.4', '132.9') "
                       "WHERE kind = 'physical.read'")
            .run();
        transaction.commit();
    });
    openPage();
    desktop.click("Verify the journal");
    ASSERT_TRUE(desktop.comesToSee("This journal was damaged or tampered with."));
    EXPECT_TRUE(desktop.sees("was changed after it was written"));
}

TEST_F(RecordsOnScreen, AVerificationIsStopped)
{
    fill();
    openPage();
    // So few entries may be verified before the pointer is there.
    constexpr int tries = 50;
    const QString stopped = "It was stopped: the journal is not verified.";
    const QString sound = "Nothing is wrong with what was checked.";
    for (int i = 0; i < tries && !desktop.sees(stopped); ++i) {
        desktop.click("Verify the journal");
        EXPECT_EQ(desktop.focusName(), "Stop: The journal is being verified");
        desktop.click("Stop: The journal is being verified");
        ASSERT_TRUE(desktop.waitFor([&] { return desktop.sees(stopped) || desktop.sees(sound); }));
    }
    EXPECT_TRUE(desktop.sees(stopped));
    desktop.click("Verify the journal");
    EXPECT_TRUE(desktop.comesToSee(sound));
}

TEST_F(RecordsOnScreen, AnExportGoesToAFileAndOverOneOnlyWhenItIsSaid)
{
    fill();
    openPage();
    const QString target = folder.filePath(QStringLiteral("copy.jsonl"));
    const auto typeFile = [&](const QString& file) {
        desktop.click("Export a copy");
        ASSERT_EQ(desktop.focusName(), "Copy every entry, a line of JSON each, to this file");
        desktop.press(Qt::Key_A, Qt::ControlModifier);
        desktop.type(file);
        desktop.press(Qt::Key_Return);
    };
    typeFile(target);
    ASSERT_TRUE(desktop.comesToSee("entries are in " + target));
    QFile file(target);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray first = file.readLine();
    EXPECT_TRUE(first.contains("journal.opened"));
    file.close();

    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("mine");
    file.close();
    typeFile(target);
    EXPECT_TRUE(desktop.comesToSee("There is a file of this name."));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), "mine");
    file.close();
    desktop.press(Qt::Key_Space); // "Replace it" has the keyboard
    ASSERT_TRUE(desktop.comesToSee("entries are in " + target));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readLine(), first);

    typeFile(desktop.file());
    EXPECT_TRUE(desktop.comesToSee("There is a file of this name."));
    desktop.press(Qt::Key_Space);
    EXPECT_TRUE(desktop.comesToSee("That file belongs to the journal itself."));
    desktop.press(Qt::Key_Escape);
    EXPECT_FALSE(desktop.sees("That file belongs to the journal itself."));
}

TEST_F(RecordsOnScreen, ARecordIsSavedAsAPdf)
{
    fill();
    openPage();
    desktop.press(Qt::Key_F, Qt::ControlModifier);
    desktop.press(Qt::Key_Down);
    ASSERT_TRUE(desktop.comesToSee("Signed by Supervisor One"));
    desktop.click("Print or save the record of 1-2031-063-01");
    ASSERT_EQ(desktop.focusName(), "To this file");
    const QString target = folder.filePath(QStringLiteral("record.pdf"));
    desktop.press(Qt::Key_A, Qt::ControlModifier);
    desktop.type(target);
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([&] { return desktop.messages().contains(target); }));
    QFile file(target);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().startsWith("%PDF-"));
}

} // namespace
} // namespace loadwarden::ui_tests
