// The settings by keys: products and lots, staff, sterilizers, policy, backup.
#include "core/desk/equipping.h"
#include "core/desk/recorder.h"
#include "core/desk/registers.h"
#include "core/desk/reservations.h"
#include "core/exchange/policy_reader.h"
#include "core/exchange/policy_rows.h"
#include "core/words/say_policy.h"
#include "tests/ui/settings_by_keys.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QTemporaryDir>

namespace loadwarden::ui_tests {
namespace {

class SettingsOfADepartment : public SettingsByKeys {
protected:
    void equipWithPrevacuum()
    {
        desktop.prepare([](Office& office, const SignedIn& who) {
            const FirstSterilizer sterilizers[] = {
                {.name = "S1",
                 .specification = "steam-prevacuum-132-wrapped@1",
                 .program = "P1",
                 .isInService = true}};
            auto signature = SignIn(office).sign(who, supervisorPin);
            ASSERT_TRUE(std::holds_alternative<Appended>(
                equip(office, who, std::get<Signature>(std::move(signature)), sterilizers)));
        });
    }

    QString write(const QString& name, const std::string& bytes)
    {
        QFile file(folder.filePath(name));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(bytes));
        return file.fileName();
    }

    static std::string housePolicy(const std::string& before, const std::string& after)
    {
        std::string toml(defaultPolicyText());
        for (const auto& [what, by] :
             {std::pair<std::string, std::string>{"id = \"us-hospital\"", "id = \"house\""},
              {before, after}}) {
            toml.replace(toml.find(what), what.size(), by);
        }
        return toml;
    }

    QTemporaryDir folder;
};

TEST_F(SettingsOfADepartment, AProductIsSignedAndItsLotRecorded)
{
    open(Qt::Key_P);
    ASSERT_TRUE(desktop.comesToSee("No indicator product is recorded yet"));
    pressButton("Add a product");
    typeInto("Name", "Vial 24");
    tabTo("Kind");
    desktop.press(Qt::Key_Down);
    pressButton("steam");
    pressButton("Check and sign");
    ASSERT_TRUE(desktop.comesToSee("Type it as the instructions say."));
    EXPECT_EQ(desktop.focusName(), "Readout that allows release, after") << "where the error is";
    typeInto("Readout that allows release, after", "1440");
    pressButton("It must be activated before incubation");
    pressButton("Check and sign");
    ASSERT_TRUE(desktop.comesToSee("Record the product Vial 24"));
    EXPECT_TRUE(desktop.sees("allows release after 1440 min"));
    sign();
    ASSERT_TRUE(comesToSay("The product Vial 24 is recorded."));

    ASSERT_TRUE(desktop.comesToSee("No lot of it is recorded"));
    typeInto("Lot number", "N-9");
    typeInto("Expires on", "2301-31-01");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("Type the date as 2032-01-31."));
    typeInto("Expires on", "2061-01-31");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("No shelf life is that long."));
    typeInto("Expires on", "2032-01-31");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(comesToSay("Lot N-9 of Vial 24 is recorded."));
    ASSERT_TRUE(desktop.comesToSee("good until 2032-01-31"));

    const Registers now = registers();
    ASSERT_EQ(now.products.size(), 1U);
    EXPECT_EQ(now.products[0].recorded.product.releaseMinutes, 1440);
    EXPECT_TRUE(now.products[0].recorded.product.needsActivation);
    EXPECT_EQ(now.products[0].recorded.product.response, Response::growth);
    ASSERT_EQ(now.lots.size(), 1U);
    EXPECT_EQ(now.lots[0].product, now.products[0].id);

    // An entry that was wrong is corrected under the same id.
    pressButton("Correct lot N-9");
    typeInto("Expires on", "2032-02-29");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("good until 2032-02-29"));
    EXPECT_EQ(registers().lots.size(), 1U);
}

TEST_F(SettingsOfADepartment, SomebodyNewGetsAPinAndSignsIn)
{
    open(Qt::Key_A);
    ASSERT_TRUE(desktop.comesToSee("As the journal has them"));
    pressButton("Add somebody");
    typeInto("Name", "Third One");
    typeInto("Badge", "B-1");
    typeInto("PIN", "123456");
    typeInto("PIN once more", "123456");
    pressButton("Check and sign");
    ASSERT_TRUE(desktop.comesToSee("is guessed at once"));
    typeInto("PIN", "739164");
    typeInto("PIN once more", "739164");
    pressButton("Check and sign");
    ASSERT_TRUE(desktop.comesToSee("The badge “B-1” reads as somebody else's"));
    typeInto("Badge", "B-3");
    pressButton("Check and sign");
    ASSERT_TRUE(desktop.comesToSee("Register Third One"));
    sign();
    ASSERT_TRUE(comesToSay("Third One is registered."));

    desktop.press(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_TRUE(desktop.comesToSee("Change of person"));
    desktop.signIn("B-3", "739164");
    EXPECT_TRUE(desktop.comesToSee("Third One, operator"));
}

TEST_F(SettingsOfADepartment, WhatAnOperatorMayNotDoIsSaidAndTheLotIsTheirs)
{
    desktop.prepare([](Office& office, const SignedIn& who) {
        IndicatorProduct strip{.kind = IndicatorKind::chemical, .type = 5};
        strip.methods.add(Method::steam);
        auto signature = SignIn(office).sign(who, supervisorPin);
        ASSERT_TRUE(std::holds_alternative<Appended>(Recorder(office).record(
            who, {.act = ProductRecorded{"Strip 5", strip}, .subjects = {"pr-5"}},
            std::get<Signature>(std::move(signature)))));
    });
    open(Qt::Key_P, "B-2", operatorPin);
    ASSERT_TRUE(desktop.comesToSee("A supervisor records products."));
    EXPECT_FALSE(desktop.sees("Add a product"));
    EXPECT_FALSE(desktop.sees("Check and sign the revision"));
    typeInto("Lot number", "N-5");
    typeInto("Expires on", "2032-01-31");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(comesToSay("Lot N-5 of Strip 5 is recorded."));

    goTo(Qt::Key_Y);
    EXPECT_TRUE(desktop.comesToSee("Decides now: us-hospital, revision 1"));
    goTo(Qt::Key_K);
    EXPECT_TRUE(desktop.comesToSee("A lead or supervisor makes backups."));
    goTo(Qt::Key_A);
    EXPECT_TRUE(desktop.comesToSee("A supervisor registers the staff."));
}

TEST_F(SettingsOfADepartment, TheTestPeriodOfASterilizerMoves)
{
    equipWithPrevacuum();
    desktop.clock().set(local("06:50"));
    desktop.prepare([](Office& office, const SignedIn& who) {
        std::string specification;
        {
            ReadSnapshot snapshot(office.connection());
            specification =
                registersOf(snapshot, office.zone(), office.now()).specifications.at(0).id;
        }
        const auto reserved =
            reserveCycle(office, who, {.sterilizer = "sz-1", .specification = specification});
        const std::string cycle = std::get<ReservedCycle>(reserved).cycle;
        const ToRecord acts[] = {
            {.act = CycleStarted{ClockSource::facility, {local("06:35"), -360}, 101},
             .subjects = {cycle}},
            {.act = CycleEnded{{local("06:48"), -360}, CycleOutcome::ended, {}, {}},
             .subjects = {cycle}}};
        for (const ToRecord& act : acts) {
            ASSERT_TRUE(std::holds_alternative<Appended>(Recorder(office).record(who, act)));
        }
    });
    desktop.clock().set(local("07:00"));
    open(Qt::Key_S);
    desktop.press(Qt::Key_1, Qt::ControlModifier);
    ASSERT_TRUE(desktop.comesToSee("4 Mar 2031 00:00"));
    desktop.press(Qt::Key_9, Qt::ControlModifier);
    ASSERT_TRUE(desktop.comesToSee("In service."));
    typeInto("Test period begins at", "6");
    pressButton("Check and sign the change");
    ASSERT_TRUE(desktop.comesToSee("Type the time as 06:00."));
    typeInto("Test period begins at", "6:30");
    pressButton("Check and sign the change");
    ASSERT_TRUE(desktop.comesToSee("its test period begins at 06:30"));
    sign();
    ASSERT_TRUE(comesToSay("The sterilizer S1 is recorded."));
    desktop.press(Qt::Key_1, Qt::ControlModifier);
    EXPECT_TRUE(desktop.comesToSee("4 Mar 2031 06:30"));
}

TEST_F(SettingsOfADepartment, ASterilizerGoesOutOfServiceAtOnceAndReturnsSigned)
{
    equipWithPrevacuum();
    open(Qt::Key_S);
    ASSERT_TRUE(desktop.comesToSee("In service."));
    pressButton("Take it out of service");
    ASSERT_TRUE(desktop.comesToSee("Say why, in a few words."));
    typeInto("Reason", "smell of burning");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("smell of burning"));
    typeInto("Reason", "element replaced, qualified");
    pressButton("Check and sign the return");
    ASSERT_TRUE(desktop.comesToSee("Return S1 to service"));
    sign();
    ASSERT_TRUE(desktop.comesToSee("In service."));

    typeInto("It differs by", "12");
    tabTo("It is");
    desktop.press(Qt::Key_Down);
    pressButton("Record the comparison");
    ASSERT_TRUE(desktop.comesToSee("12 s behind since"));
    EXPECT_EQ(registers().sterilizers.at(0).clock->seconds, -12);
}

TEST_F(SettingsOfADepartment, AProgramIsCopiedFromATemplateAndRevised)
{
    open(Qt::Key_F);
    ASSERT_TRUE(desktop.comesToSee("No program is specified yet"));
    pressButton("Add a program");
    tabTo("Copy of the template");
    desktop.type("steam-prevacuum-132-w");
    typeInto("Program", "P 132");
    pressButton("Check and sign");
    ASSERT_TRUE(desktop.comesToSee("Record the program P 132"));
    EXPECT_TRUE(desktop.sees("temperature: at least 132 °C / 270 °F"));
    sign();
    ASSERT_TRUE(comesToSay("The program P 132 is recorded."));
    ASSERT_TRUE(desktop.comesToSee("Check and sign the revision"));
    typeInto("exposure time, min, at least", "4.5");
    pressButton("Check and sign the revision");
    ASSERT_TRUE(desktop.comesToSee("exposure time: at least 4.5 min")) << seen();
    sign();
    ASSERT_TRUE(desktop.waitFor(
        [&] { return registers().specifications.at(0).recorded.specification.revision == 2; }));
}

TEST_F(SettingsOfADepartment, APolicyIsCheckedShownAndSigned)
{
    const QString bad = write("bad.toml", housePolicy("value = 5\n", "value = 6\n"));
    const QString good =
        write("good.toml", housePolicy("value = \"each-day\"", "value = \"every-load\""));
    open(Qt::Key_Y);
    ASSERT_TRUE(desktop.comesToSee("Its times may differ from the record's by"));
    EXPECT_TRUE(desktop.sees("5 min"));
    pressButton("New revision");
    typeInto("File", bad);
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("printout.clock_tolerance_minutes.value: 6 is milder"));
    EXPECT_TRUE(desktop.sees("Line ")) << "with its line";
    EXPECT_EQ(registers().policies.size(), 1U);

    typeInto("File", good);
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("Biological indicators: Routine indicator, steam"));
    EXPECT_TRUE(desktop.sees("in every load"));
    pressButton("Sign revision 1 of house");
    ASSERT_TRUE(desktop.comesToSee("in every load instead of each day of use"));
    sign();
    ASSERT_TRUE(desktop.comesToSee("Decides now: house, revision 1"));
    EXPECT_EQ(registers().policies.size(), 2U);

    pressButton("Compare revisions");
    EXPECT_TRUE(desktop.comesToSee("1 setting(s) differ:"));
    pressButton("Read it");
    const QString copy = folder.filePath("copy.toml");
    typeInto("Save its text as", copy);
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(comesToSay("is saved as"));
    QFile saved(copy);
    ASSERT_TRUE(saved.open(QIODevice::ReadOnly));
    EXPECT_EQ(saved.readAll().toStdString(), registers().policies.front().recorded.toml);
    typeInto("Save its text as", copy);
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("there is a file of that name"));
}

TEST_F(SettingsOfADepartment, ABackupIsMadeAndItsRestoreRehearsed)
{
    open(Qt::Key_K);
    ASSERT_TRUE(desktop.comesToSee("No backup of this journal was made from this computer yet."));
    typeInto("Folder or new file", folder.path());
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("The backup is whole"));
    EXPECT_TRUE(desktop.sees("The last backup from this computer"));
    const QString made = folder.filePath("Facility-2031-03-04-0700.journal");
    ASSERT_TRUE(QFile::exists(made));

    typeInto("Folder or new file", folder.path());
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Nothing is written over a file."));

    typeInto("Backup", made);
    typeInto("New file of the rehearsal", folder.filePath("drill.journal"));
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("The backup verifies."));
    EXPECT_TRUE(desktop.sees("It holds everything that this computer has seen."));
    EXPECT_TRUE(QFile::exists(folder.filePath("drill.journal")));
}

TEST_F(SettingsOfADepartment, WhatIsHalfTypedSurvivesTheAreaAndTheLock)
{
    desktop.setIdleMs(3'000);
    open(Qt::Key_A);
    ASSERT_TRUE(desktop.comesToSee("As the journal has them"));
    pressButton("Add somebody");
    typeInto("Name", "Half a na");
    QWidget* const field = QApplication::focusWidget();
    desktop.press(Qt::Key_1, Qt::ControlModifier);
    EXPECT_FALSE(field->isVisible());
    desktop.press(Qt::Key_9, Qt::ControlModifier);
    EXPECT_TRUE(desktop.waitFor([&] { return field->isVisible(); }));
    goTo(Qt::Key_P);
    EXPECT_FALSE(field->isVisible());
    goTo(Qt::Key_A);
    ASSERT_TRUE(desktop.comesToSee("Locked"));
    desktop.type(QString::fromStdString(supervisorPin));
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([&] { return field->isVisible(); }));
    EXPECT_EQ(qobject_cast<QLineEdit*>(field)->text(), "Half a na");
}

TEST_F(SettingsOfADepartment, ArrowsGoThroughTheSections)
{
    open(Qt::Key_S);
    EXPECT_EQ(desktop.focusName(), "Sterilizers");
    for (const char* const name : {"Specifications", "Products and lots", "Packagings", "Devices",
                                   "Incubators", "Staff", "Policy", "Backup", "This workstation"}) {
        desktop.press(Qt::Key_Down);
        EXPECT_EQ(desktop.focusName(), name);
    }
    EXPECT_TRUE(desktop.sees("Light or dark"));
}

TEST_F(SettingsOfADepartment, ANewBadgeIsScannedIntoItsField)
{
    open(Qt::Key_A);
    ASSERT_TRUE(desktop.comesToSee("As the journal has them"));
    pressButton("Add somebody");
    tabTo("Badge");
    auto* const badge = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    desktop.scan("Q-4711");
    EXPECT_TRUE(desktop.waitFor([&] { return badge->text() == "Q-4711"; }));
    desktop.scan("st-op");
    EXPECT_TRUE(desktop.comesToSee("Change of person")) << "a badge that is known signs in";
    EXPECT_EQ(badge->text(), "Q-4711");
}

TEST(PolicyInWords, EverySettingAndItsSectionHasThem)
{
    for (const PolicyRow& row : policyRows(defaultPolicyText())) {
        EXPECT_NE(sayPolicySection(row.section), row.section);
        EXPECT_NE(sayPolicySetting(row.section, row.name), row.section + '.' + row.name);
        EXPECT_NE(sayConfidence(row.confidence), row.confidence);
        EXPECT_FALSE(sayPolicyValue(row.section, row.name, row.value).empty());
    }
    EXPECT_EQ(sayPolicyValue("leak", "most_mbar_per_minute", "1.3"), "1.3 mbar a minute");
    EXPECT_EQ(sayPolicyValue("bi", "steam", "each-day"), "each day of use");
    EXPECT_EQ(sayPolicyValue("air_removal", "also_for", ""), "none");
}

} // namespace
} // namespace loadwarden::ui_tests
