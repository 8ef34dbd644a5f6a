// What a load is offered: what fits its method, and what is said of a device before it runs.
#include "core/desk/recorder.h"
#include "core/desk/reservations.h"
#include "tests/ui/load_screen.h"

#include <gmock/gmock.h>

#include <QComboBox>

namespace loadwarden::ui_tests {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Matches;
using ::testing::Not;

class OffersOnScreen : public LoadOnScreen {
protected:
    /// A lot of a strip for ethylene oxide, a program by it, and a device that no steam cycle here
    /// fits.
    void registerGas()
    {
        desktop.prepare([](Office& office, const SignedIn& who) {
            const auto say = [&](AnyAct act, std::vector<std::string> subjects) {
                auto signature = SignIn(office).sign(who, supervisorPin);
                const auto answer = Recorder(office).record(
                    who, {.act = std::move(act), .subjects = std::move(subjects)},
                    std::get<Signature>(std::move(signature)));
                ASSERT_TRUE(std::holds_alternative<Appended>(answer));
            };
            IndicatorProduct strip{
                .kind = IndicatorKind::chemical, .type = 1, .response = Response::colour};
            strip.methods.add(Method::ethyleneOxide);
            say(ProductRecorded{"gas strip", strip}, {"pr-g"});
            say(ProductLotRecorded{"NG", parseDate("2032-01-01")}, {"pl-g", "pr-g"});
            say(SpecificationRecorded{{.id = "spec-g",
                                       .revision = 1,
                                       .method = Method::ethyleneOxide,
                                       .program = "PG",
                                       .cycleType = "TG"}},
                {"sp-g"});
            say(DeviceRecorded{{.name = "cold device",
                                .allowedCycles = {{.method = Method::steam,
                                                   .airRemoval = AirRemoval::prevacuum,
                                                   .temperature = Quantity{Unit::celsius, 121'000},
                                                   .leastMs = 240'000}}}},
                {"dv-c"});
        });
    }

    /// What the box that has the keyboard offers.
    static std::vector<std::string> offered()
    {
        std::vector<std::string> entries;
        const auto* const box = qobject_cast<QComboBox*>(QApplication::focusWidget());
        for (int i = 0; box != nullptr && i < box->count(); ++i) {
            entries.push_back(box->itemText(i).toStdString());
        }
        return entries;
    }

    void reserve()
    {
        desktop.press(Qt::Key_N, Qt::ControlModifier);
        ASSERT_TRUE(desktop.comesToSee("A new load or test"));
        ASSERT_TRUE(desktop.waitFor([this] { return desktop.focusName() == "Sterilizer"; }));
        tabTo("Program");
        ASSERT_TRUE(desktop.waitFor([] { return offered().size() > 1; }));
    }
};

TEST_F(OffersOnScreen, ASteamSterilizerIsOfferedNoGas)
{
    registerGas();
    openPage();
    reserve();
    EXPECT_THAT(offered(), Contains(HasSubstr("P1")));
    EXPECT_THAT(offered(), Not(Contains(HasSubstr("PG")))) << "it has run steam only";
    pressButton("Offer the programs of other sterilizers");
    EXPECT_TRUE(desktop.waitFor([] {
        return Matches(Contains(HasSubstr("PG")))(offered());
    }));
    desktop.press(Qt::Key_Home);
    pressButton("Reserve its number");
    ASSERT_TRUE(saysSoon("is reserved"));
    settle();
    for (const char* const box :
         {"Indicator outside", "Indicators inside", "Chemical indicator in it"}) {
        tabTo(box);
        EXPECT_THAT(offered(), Contains(HasSubstr("tape"))) << box;
        EXPECT_THAT(offered(), Not(Contains(HasSubstr("gas strip")))) << box;
    }
}

TEST_F(OffersOnScreen, ADeviceThatNoAllowedCycleFitsIsSaidWhereItIsAdded)
{
    registerGas();
    openPage();
    reserve();
    pressButton("Reserve its number");
    ASSERT_TRUE(saysSoon("is reserved"));
    settle();
    choose("Devices inside", 1);
    EXPECT_FALSE(desktop.sees("do not allow this cycle"));
    desktop.press(Qt::Key_Down);
    EXPECT_TRUE(desktop.comesToSee("cold device, as recorded, do not allow this cycle"));
    EXPECT_TRUE(desktop.sees("Put it into a load whose program they allow."));
    pressButton("No devices inside");
    EXPECT_TRUE(desktop.waitFor([this] { return !desktop.sees("do not allow this cycle"); }));
    choose("Devices inside", 1);
    tabTo("Label of an item");
    desktop.type("I1");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(saysSoon("I1 is in the load"));
    settle();
    choose("Devices inside", 2);
    tabTo("Label of an item");
    desktop.type("I2");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(saysSoon("I2 is in the load"));
    settle();
    EXPECT_TRUE(desktop.sees("do not allow this cycle")) << "it stays said beside the item";
    EXPECT_FALSE(sheet().state.started);
}

} // namespace
} // namespace loadwarden::ui_tests
