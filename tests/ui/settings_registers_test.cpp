// The settings by keys: packagings, devices, incubators, and what alarms were classed as.
#include "core/desk/recorder.h"
#include "tests/ui/department.h"
#include "tests/ui/settings_by_keys.h"
#include "ui/settings/section.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QLabel>
#include <QScrollArea>

namespace loadwarden::ui_tests {
namespace {

const std::string leadPin = "613874";

class SettingsRegisters : public SettingsByKeys {
protected:
    /// A lead, who records these registers.
    void openAsLead(Qt::Key mnemonic)
    {
        hire(desktop, "st-lead", "Lead Three", Role::lead, "B-3", leadPin);
        open(mnemonic, QStringLiteral("B-3"), leadPin);
    }

    /// The keyboard comes to what is called so, by itself.
    bool comesToHaveTheKeys(const QString& name)
    {
        return desktop.waitFor([&] { return desktop.focusName() == name; });
    }

    /// Takes the entry of a list that stands that far below the first.
    void pick(const QString& list, int below)
    {
        tabTo(list);
        desktop.press(Qt::Key_Home);
        for (int i = 0; i < below; ++i) {
            desktop.press(Qt::Key_Down);
        }
    }

    /// What can be seen of a widget within the area in which it scrolls.
    static bool isInView(const QWidget* widget)
    {
        return widget->visibleRegion().boundingRect().height() == widget->height();
    }
};

TEST_F(SettingsRegisters, APackagingIsRecordedWithoutAPinAndRevised)
{
    openAsLead(Qt::Key_C);
    ASSERT_TRUE(desktop.comesToSee("No packaging is recorded yet"));
    pressButton("Add a packaging");
    EXPECT_TRUE(comesToHaveTheKeys("Name"));
    pressButton("Record the packaging");
    ASSERT_TRUE(desktop.comesToSee("Type its name."));
    EXPECT_TRUE(desktop.sees("Choose at least one method."));
    EXPECT_EQ(desktop.focusName(), "Name") << "where the first error is";
    typeInto("Name", "Wrap 7");
    pick("Form", 1);
    pressButton("steam");
    pressButton("hydrogen peroxide");
    typeInto("Aeration that they ask for", "ten");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("Type whole minutes."));
    EXPECT_EQ(desktop.focusName(), "Aeration that they ask for");
    EXPECT_TRUE(registers().packagings.empty());
    typeInto("Aeration that they ask for", "480");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(comesToSay("The packaging Wrap 7 is recorded."));

    MethodSet methods;
    methods.add(Method::steam);
    methods.add(Method::hydrogenPeroxide);
    const Registers first = registers();
    ASSERT_EQ(first.packagings.size(), 1U);
    EXPECT_EQ(first.packagings[0].recorded.name, "Wrap 7");
    EXPECT_EQ(first.packagings[0].recorded.packaging,
              (Packaging{.form = PackageForm::pouch, .methods = methods, .aerationMinutes = 480}));
    EXPECT_EQ(first.packagings[0].by, "st-lead");

    ASSERT_TRUE(desktop.comesToSee("What its instructions for use say"));
    typeInto("Aeration that they ask for", "");
    pressButton("Record the revision");
    ASSERT_TRUE(desktop.waitFor(
        [this] { return !registers().packagings.at(0).recorded.packaging.aerationMinutes; }));
    EXPECT_EQ(registers().packagings.size(), 1U) << "under the same id";
}

TEST_F(SettingsRegisters, ADeviceIsRecordedWithEveryCycleThatItsInstructionsAllow)
{
    openAsLead(Qt::Key_D);
    ASSERT_TRUE(desktop.comesToSee("No device is recorded yet"));
    pressButton("Add a device");
    ASSERT_TRUE(comesToHaveTheKeys("Name"));
    typeInto("Name", "Set 8");
    pressButton("Record the device");
    ASSERT_TRUE(desktop.comesToSee("Nothing is stated. Choose the method, or take this cycle"));
    EXPECT_EQ(desktop.focusName(), "Allowed cycle 1, method");

    pick("Allowed cycle 1, method", 0);
    pick("Allowed cycle 1, air removal", 1);
    typeInto("Allowed cycle 1, temperature, °C", "132.555");
    typeInto("Allowed cycle 1, temperature, °F", "270");
    typeInto("Allowed cycle 1, drying", "20");
    typeInto("Allowed cycle 1, shortest exposure", "4");
    typeInto("Allowed cycle 1, longest exposure", "3");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("Type degrees, with at most two decimals."));
    EXPECT_TRUE(desktop.sees("It is shorter than the shortest."));
    EXPECT_EQ(desktop.focusName(), "Allowed cycle 1, temperature, °C");
    typeInto("Allowed cycle 1, temperature, °C", "132");
    typeInto("Allowed cycle 1, longest exposure", "18.5");

    pressButton("Add an allowed cycle");
    ASSERT_TRUE(comesToHaveTheKeys("Allowed cycle 2, method"));
    EXPECT_TRUE(desktop.waitFor([] { return isInView(QApplication::focusWidget()); }));
    pick("Allowed cycle 2, method", 2);
    typeInto("Allowed cycle 2, program", QString(65, u'P'));
    typeInto("Allowed cycle 2, sterilizer model", "M 9");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([this] {
        return desktop.focusName() == "Allowed cycle 2, program";
    })) << seen();
    EXPECT_TRUE(desktop.waitFor([] { return isInView(QApplication::focusWidget()); }))
        << "what is refused is brought into sight";
    EXPECT_TRUE(registers().devices.empty());
    typeInto("Allowed cycle 2, program", "P 3");
    typeInto("Aeration that they ask for", "720");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(comesToSay("The device Set 8 is recorded.")) << seen();

    const Registers now = registers();
    ASSERT_EQ(now.devices.size(), 1U);
    const Device expected{.name = "Set 8",
                          .allowedCycles = {{.method = Method::steam,
                                             .airRemoval = AirRemoval::prevacuum,
                                             .temperature = Quantity{Unit::celsius, 132'000},
                                             .inFahrenheit = Quantity{Unit::fahrenheit, 270'000},
                                             .leastMs = 240'000,
                                             .mostMs = 1'110'000,
                                             .dryingMs = 1'200'000},
                                            {.method = Method::hydrogenPeroxide,
                                             .program = "P 3",
                                             .sterilizerModel = "M 9"}},
                          .aerationMinutes = 720};
    Device got = now.devices[0].recorded.device;
    EXPECT_EQ(got.allowedCycles[0].airRemoval, AirRemoval::prevacuum);
    // A list's first choice is steam; nothing else was chosen for the second's air removal.
    EXPECT_EQ(got.allowedCycles[1].airRemoval, AirRemoval::unknown);
    EXPECT_EQ(got, expected);
}

TEST_F(SettingsRegisters, ACycleIsTakenAwayAndThoseBehindItMoveUp)
{
    hire(desktop, "st-lead", "Lead Three", Role::lead, "B-3", leadPin);
    desktop.prepare([](Office& office, const SignedIn& who) {
        const auto cycle = [](Method method, const char* program) {
            return AllowedCycle{.method = method, .program = program};
        };
        ASSERT_TRUE(std::holds_alternative<Appended>(Recorder(office).record(
            who, {.act = DeviceRecorded{{.name = "Set 8",
                                         .allowedCycles = {cycle(Method::steam, "one"),
                                                           cycle(Method::ethyleneOxide, "two"),
                                                           cycle(Method::dryHeat, "three")}}},
                  .subjects = {"dv-8"}})));
    });
    open(Qt::Key_D, "B-3", leadPin);
    ASSERT_TRUE(desktop.comesToSee("Allowed cycle 3"));
    typeInto("Allowed cycle 3, drying", "not a number");
    pressButton("Take allowed cycle 1 away");
    EXPECT_TRUE(desktop.waitFor([this] { return !desktop.sees("Allowed cycle 3"); }));
    EXPECT_EQ(desktop.focusName(), "Allowed cycle 1, method");
    pressButton("Record the revision");
    ASSERT_TRUE(desktop.comesToSee("Type minutes, with at most three decimals."));
    EXPECT_EQ(desktop.focusName(), "Allowed cycle 2, drying") << "what was typed moved with it";
    typeInto("Allowed cycle 2, drying", "5");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(comesToSay("The device Set 8 is recorded."));
    const std::vector<AllowedCycle> now = registers().devices.at(0).recorded.device.allowedCycles;
    EXPECT_EQ(now, (std::vector<AllowedCycle>{
                       {.method = Method::ethyleneOxide, .program = "two"},
                       {.method = Method::dryHeat, .dryingMs = 300'000, .program = "three"}}));

    // What is dropped comes back as it is recorded.
    pressButton("Take allowed cycle 2 away");
    EXPECT_TRUE(desktop.waitFor([this] { return !desktop.sees("Allowed cycle 2"); }));
    pressButton("Drop what is typed");
    EXPECT_TRUE(desktop.comesToSee("Allowed cycle 2"));
}

TEST_F(SettingsRegisters, AnIncubatorGoesOutOfRangeAndComesBack)
{
    openAsLead(Qt::Key_I);
    ASSERT_TRUE(desktop.comesToSee("No incubator is recorded yet"));
    pressButton("Add an incubator");
    ASSERT_TRUE(comesToHaveTheKeys("Name"));
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("Type its name."));
    typeInto("Name", "Block 1");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(comesToSay("The incubator Block 1 is recorded."));
    ASSERT_TRUE(desktop.comesToSee("In range."));

    // From a time on, by somebody who reads a logger.
    typeInto("Since: Time as 07:14", "25:00");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("Type the time as 07:14."));
    typeInto("Since: Time as 07:14", "07:01");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("This time is still to come"));
    EXPECT_EQ(desktop.focusName(), "Since: Time as 07:14") << "at its field";
    EXPECT_FALSE(registers().incubators.at(0).outSince());
    typeInto("Since: Time as 07:14", "05:10");
    pressButton("Put it out of range");
    ASSERT_TRUE(comesToSay("Block 1 is out of range."));
    ASSERT_TRUE(desktop.comesToSee("Out of range since 4 Mar 2031 05:10."));
    EXPECT_EQ(registers().incubators.at(0).outSince(), local("05:10"));

    typeInto("Since: Time as 07:14", "05:00");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("It was out of range after that, too."));
    EXPECT_TRUE(registers().incubators.at(0).outSince());
    typeInto("Since: Time as 07:14", "");
    desktop.clock().set(local("07:20"));
    pressButton("Put it in range again");
    ASSERT_TRUE(comesToSay("Block 1 is in range."));
    ASSERT_TRUE(
        desktop.comesToSee("It was out of range last from 4 Mar 2031 05:10 to 4 Mar 2031 07:20."))
        << "no time is the moment at which it is said";
    EXPECT_EQ(registers().incubators.at(0).outOfRange,
              (std::vector{OutOfRange{local("05:10"), local("07:20")}}));
}

TEST_F(SettingsRegisters, AnOperatorReadsThemAndSaysOnlyWhatIsTheirs)
{
    registerDepartment(desktop);
    desktop.clock().set(local("07:00"));
    open(Qt::Key_C, "B-2", operatorPin);
    ASSERT_TRUE(desktop.comesToSee(
        "A lead or a supervisor records packagings. Ask one to sign in here and do it."));
    EXPECT_FALSE(desktop.sees("Add a packaging"));
    EXPECT_FALSE(desktop.sees("Record the revision"));
    goTo(Qt::Key_D);
    ASSERT_TRUE(desktop.comesToSee("A lead or a supervisor records devices."));
    for (const char* const button :
         {"Add a device", "Add an allowed cycle", "Take this cycle away", "Record the revision"}) {
        EXPECT_FALSE(desktop.sees(button)) << button;
    }
    EXPECT_TRUE(desktop.sees("Allowed cycle 1")) << "it can be read";
    goTo(Qt::Key_I);
    ASSERT_TRUE(desktop.comesToSee("A lead or a supervisor records incubators."));
    EXPECT_FALSE(desktop.sees("Record the change"));
    pressButton("Put it out of range");
    ASSERT_TRUE(comesToSay("block is out of range."));
    EXPECT_EQ(registers().incubators.at(0).outSince(), local("07:00"));
}

TEST_F(SettingsRegisters, WhatAlarmsOfASterilizerWereClassedAsCanBeRead)
{
    registerDepartment(desktop);
    desktop.prepare([](Office& office, const SignedIn& who) {
        for (const ListedAlarm& alarm : {ListedAlarm{"A 17", AlarmEffect::harmless},
                                         ListedAlarm{"A 18", AlarmEffect::exposureAffecting}}) {
            auto signature = SignIn(office).sign(who, supervisorPin);
            ASSERT_TRUE(std::holds_alternative<Appended>(
                Recorder(office).record(who, {.act = AlarmClassed{alarm}, .subjects = {"sz-1"}},
                                        std::get<Signature>(std::move(signature)))));
        }
    });
    desktop.clock().set(local("07:00"));
    open(Qt::Key_S);
    for (const char* const words : {"A 17", "harmless", "A 18", "affects exposure"}) {
        EXPECT_TRUE(desktop.comesToSee(words)) << words;
    }
    EXPECT_FALSE(desktop.sees("No alarm of it is classed."));
}

TEST_F(SettingsRegisters, NothingIsSaidToBeEmptyBeforeItIsRead)
{
    desktop.open();
    desktop.signIn();
    // Nobody has gone to the settings: nothing was asked of the journal.
    ASSERT_FALSE(page()->isUpToDate());
    const auto count = [this](const QString& words) {
        int found = 0;
        for (const auto* const section : page()->findChildren<ui::Section*>()) {
            for (const auto* const label : section->findChildren<QLabel*>()) {
                found += label->isVisibleTo(section) && label->text().contains(words) ? 1 : 0;
            }
        }
        return found;
    };
    constexpr int registersWithAList = 7;
    EXPECT_EQ(count("is being read."), registersWithAList);
    EXPECT_EQ(count(" recorded yet"), 0);
    for (auto* const section : page()->findChildren<ui::Section*>()) {
        section->notRead();
    }
    EXPECT_EQ(count("could not be read."), registersWithAList);
    EXPECT_EQ(count("is being read.") + count(" recorded yet"), 0);
    desktop.press(Qt::Key_9, Qt::ControlModifier);
    ASSERT_TRUE(desktop.waitFor([this] { return page()->isUpToDate(); }));
    EXPECT_EQ(count("is being read.") + count("could not be read."), 0);
    constexpr int withoutAny = 5; // sterilizers, products, packagings, devices, incubators
    EXPECT_EQ(count(" recorded yet"), withoutAny);
}

} // namespace
} // namespace loadwarden::ui_tests
