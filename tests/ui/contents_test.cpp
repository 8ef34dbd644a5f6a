// What is said of an item as it goes into a load.
#include "core/desk/recorder.h"
#include "core/desk/reservations.h"
#include "tests/ui/load_screen.h"

#include <gmock/gmock.h>

#include <QComboBox>

#include <algorithm>

namespace loadwarden::ui_tests {
namespace {

class ContentsOnScreen : public LoadOnScreen {
protected:
    /// A load of a program by that method is open on the page.
    void openNew(Method method)
    {
        QString lot;
        desktop.prepare([&](Office& office, const SignedIn& who) {
            CycleSpecification program;
            program.id = "P9";
            program.revision = 1;
            program.program = "P9";
            program.cycleType = "T9";
            program.method = method;
            auto signature = SignIn(office).sign(who, supervisorPin);
            const auto recorded = Recorder(office).record(
                who, {.act = SpecificationRecorded{program}, .subjects = {"sp-9"}},
                std::get<Signature>(std::move(signature)));
            ASSERT_TRUE(std::holds_alternative<Appended>(recorded))
                << std::get<Refusal>(recorded).detail;
            const auto reserved = std::get<ReservedCycle>(
                reserveCycle(office, who, {.sterilizer = "sz-1", .specification = "sp-9"}));
            lot = QString::fromStdString(reserved.lot);
        });
        openPage();
        desktop.scan(lot);
        ASSERT_TRUE(desktop.waitFor(
            [this] { return page()->view() != nullptr && page()->view()->desk().isUpToDate(); }));
    }

    const ItemAdded* added()
    {
        for (const Entry& entry : sheet().record.entries) {
            if (const auto* const item = std::get_if<ItemAdded>(&entry.act)) {
                return item;
            }
        }
        return nullptr;
    }
};

TEST_F(ContentsOnScreen, HydrogenPeroxideAsksWhatItMustNotMeet)
{
    openNew(Method::hydrogenPeroxide);
    choose("Paper or linen", 1);
    choose("Liquid or powder", 1);
    choose("Dryness", 1);
    choose("Lumens", 3);
    choose("Indicators inside", 1);
    tabTo("Where inside");
    desktop.type("top level");
    tabTo("Inside one seen through");
    desktop.press(Qt::Key_Space);
    tabTo("Label of an item");
    desktop.type("I1");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(saysSoon("I1 is in the load")) << desktop.messages().toStdString();
    settle();
    const ItemAdded* const item = added();
    ASSERT_NE(item, nullptr);
    EXPECT_EQ(item->peroxide, (PeroxideFacts{.cellulose = false,
                                             .liquidOrPowder = false,
                                             .moist = false,
                                             .lumen = Lumen::unlisted}));
    EXPECT_TRUE(item->internalVisible);
    ASSERT_EQ(item->internals.size(), 1U);
    EXPECT_EQ(item->internals[0].place, "top level");
    EXPECT_TRUE(desktop.waitFor([this] {
        const auto combos = page()->view()->findChildren<QComboBox*>();
        return std::ranges::any_of(combos, [](const QComboBox* combo) {
            return combo->accessibleName() == "Lumens" && combo->currentIndex() == 0;
        });
    })) << "the next item does not take them over";
}

TEST_F(ContentsOnScreen, SteamDoesNotAskIt)
{
    openNew(Method::steam);
    const auto combos = page()->view()->findChildren<QComboBox*>();
    EXPECT_TRUE(std::ranges::none_of(combos, [](const QComboBox* combo) {
        return combo->accessibleName() == "Lumens" && combo->isVisible();
    }));
    tabTo("Label of an item");
    desktop.type("I1");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(saysSoon("I1 is in the load"));
    settle();
    ASSERT_NE(added(), nullptr);
    EXPECT_EQ(added()->peroxide, PeroxideFacts{});
}

} // namespace
} // namespace loadwarden::ui_tests
