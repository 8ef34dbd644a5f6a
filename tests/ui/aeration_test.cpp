// What a load asks for while it aerates, and what comes after.
#include "core/desk/recorder.h"
#include "core/desk/reservations.h"
#include "tests/ui/load_screen.h"
#include "ui/shell/work_view.h"

#include <gmock/gmock.h>

namespace loadwarden::ui_tests {
namespace {

class AerationOnScreen : public LoadOnScreen {
protected:
    /// A load by ethylene oxide with item I1 that ran from 07:00 to 09:00.
    void openGasLoad()
    {
        desktop.clock().set(local("06:45"));
        desktop.prepare([this](Office& office, const SignedIn& who) {
            const auto say = [&](AnyAct act, std::vector<std::string> subjects) {
                auto signature = SignIn(office).sign(who, supervisorPin);
                const auto answer = Recorder(office).record(
                    who, {.act = std::move(act), .subjects = std::move(subjects)},
                    std::get<Signature>(std::move(signature)));
                ASSERT_TRUE(std::holds_alternative<Appended>(answer));
            };
            say(SterilizerRecorded{.name = "S1",
                                   .model = "M1",
                                   .aeration = SterilizerAeration{.minutes = 480,
                                                                  .celsiusHundredths = 5'500}},
                {"sz-1"});
            say(SpecificationRecorded{{.id = "spec-g",
                                       .revision = 1,
                                       .method = Method::ethyleneOxide,
                                       .program = "PG",
                                       .cycleType = "TG"}},
                {"sp-g"});
            Packaging pouch{.form = PackageForm::pouch, .aerationMinutes = 480};
            pouch.methods.add(Method::ethyleneOxide);
            say(PackagingRecorded{"gas pouch", pouch}, {"pk-g"});
            say(DeviceRecorded{{.name = "gas device",
                                .allowedCycles = {{.method = Method::ethyleneOxide,
                                                   .program = "PG",
                                                   .sterilizerModel = "M1"}},
                                .aerationMinutes = 480}},
                {"dv-g"});
            cycle = std::get<ReservedCycle>(
                        reserveCycle(office, who, {.sterilizer = "sz-1", .specification = "sp-g"}))
                        .cycle;
            ItemAdded item{
                .label = "I1", .implant = Implant::no, .packaging = "pk-g", .devices = {"dv-g"}};
            item.external = PlacedIndicator{"ci-e", "pr-1", "pl-1", {}};
            say(item, {"it-1", cycle, "ci-e"});
            desktop.clock().set(local("07:00"));
            say(CycleStarted{ClockSource::facility, {local("07:00"), -360}, 101}, {cycle});
            desktop.clock().set(local("09:00"));
            say(CycleEnded{{local("09:00"), -360}, CycleOutcome::ended, {}, {}}, {cycle});
        });
        openPage();
        ASSERT_TRUE(desktop.window().work()->openCycle(QString::fromStdString(cycle), {}));
        settle();
    }

    void expectNoChecks(const char* when)
    {
        EXPECT_TRUE(desktop.sees("once aeration has ended: nothing is taken out before")) << when;
        EXPECT_TRUE(desktop.sees("Its packages are looked at once aeration has ended")) << when;
        EXPECT_FALSE(desktop.sees("The package has not been")) << when;
        EXPECT_FALSE(desktop.sees("Everything came out and is good")) << when;
        EXPECT_TRUE(desktop.sees("Read at unloading, once it has aerated")) << when;
    }
};

TEST_F(AerationOnScreen, PackagesAreAskedForOnceItHasEnded)
{
    openGasLoad();
    expectNoChecks("before it begins");
    tabTo("Temperature of the aerator");
    desktop.type("55");
    pressButton("Record the start of aeration");
    ASSERT_TRUE(saysSoon("The start of aeration is recorded.")) << desktop.messages().toStdString();
    settle();
    expectNoChecks("while it lasts");
    desktop.clock().set(local("17:30"));
    desktop.press(Qt::Key_F5);
    settle();
    expectNoChecks("until its end is recorded");
    pressButton("Record the end of aeration");
    ASSERT_TRUE(saysSoon("The end of aeration is recorded.")) << desktop.messages().toStdString();
    settle();
    EXPECT_FALSE(desktop.sees("Its packages are looked at once aeration has ended"));
    EXPECT_TRUE(desktop.comesToSee("The package has not been"));
    unload();
}

TEST_F(AerationOnScreen, AWrongTimeIsSaidWhereTheTimeIsTyped)
{
    openGasLoad();
    tabTo("When it began or ended: Time");
    desktop.press(Qt::Key_A, Qt::ControlModifier);
    desktop.type("08:10");
    tabTo("Temperature of the aerator");
    desktop.type("55");
    pressButton("Record the start of aeration");
    ASSERT_TRUE(desktop.comesToSee("had not ended yet"));
    EXPECT_TRUE(desktop.focusName().startsWith("When it began or ended: Time"))
        << desktop.focusName().toStdString();
    const QWidget* const celsius = [this] {
        tabTo("Temperature of the aerator");
        return QApplication::focusWidget();
    }();
    EXPECT_FALSE(celsius->accessibleDescription().contains("had not ended yet"));
}

} // namespace
} // namespace loadwarden::ui_tests
