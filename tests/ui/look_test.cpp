// The palettes, by the definition of WCAG 2.2.
#include "ui/look/look.h"

#include <gtest/gtest.h>

namespace loadwarden::ui {
namespace {

TEST(Contrast, IsAsWcagDefinesIt)
{
    // WCAG 2.2, definition of contrast ratio: from 1 to 21; black on white is 21.
    EXPECT_DOUBLE_EQ(contrastOf(Qt::black, Qt::white), 21.0);
    EXPECT_DOUBLE_EQ(contrastOf(Qt::white, Qt::white), 1.0);
    // #767676 is the lightest grey that has 4.5:1 on white (memory).
    EXPECT_GE(contrastOf(QColor("#767676"), Qt::white), 4.5);
    EXPECT_LT(contrastOf(QColor("#777777"), Qt::white), 4.5);
}

class Palette : public ::testing::TestWithParam<Theme> {};

TEST_P(Palette, KeepsTextReadable)
{
    constexpr double least = 4.5;
    const Colours& c = coloursOf(GetParam());
    for (const QColor& behind : {c.window, c.surface, c.field}) {
        EXPECT_GE(contrastOf(c.ink, behind), least);
        EXPECT_GE(contrastOf(c.muted, behind), least);
        EXPECT_GE(contrastOf(c.accent, behind), least);
    }
    EXPECT_GE(contrastOf(c.onAccent, c.accent), least);
    EXPECT_GE(contrastOf(c.onAccent, c.accentOver), least);
    EXPECT_GE(contrastOf(c.ink, c.accentSoft), least);
    EXPECT_GE(contrastOf(c.accent, c.accentSoft), least);
    for (const QColor& behind : {c.bezel, c.bezelOver}) {
        EXPECT_GE(contrastOf(c.onBezel, behind), least);
    }
    EXPECT_GE(contrastOf(c.bezelMuted, c.bezel), least);
    for (const Tone& tone : {c.good, c.waiting, c.bad, c.neutral}) {
        for (const QColor& behind : {c.window, c.surface, c.field, tone.soft}) {
            EXPECT_GE(contrastOf(tone.ink, behind), least);
        }
        EXPECT_GE(contrastOf(c.ink, tone.soft), least);
        EXPECT_GE(contrastOf(c.accent, tone.soft), least) << "a quiet button on a banner";
    }
}

TEST_P(Palette, ShowsWhatCanBeUsedAndWhatHasTheKeyboard)
{
    constexpr double least = 3.0; // WCAG 2.2, 1.4.11
    const Colours& c = coloursOf(GetParam());
    for (const QColor& behind : {c.window, c.surface, c.field}) {
        EXPECT_GE(contrastOf(c.edge, behind), least);
        EXPECT_GE(contrastOf(c.focus, behind), least);
    }
}

INSTANTIATE_TEST_SUITE_P(Themes, Palette, ::testing::Values(Theme::light, Theme::dark));

TEST(TypeScale, IsNeverBelowElevenPoints)
{
    for (const Type type : {Type::body, Type::strong, Type::heading, Type::title, Type::verdict}) {
        for (const TextSize size : {TextSize::normal, TextSize::large, TextSize::largest}) {
            EXPECT_GE(pointsOf(type, size), 11.0);
            EXPECT_GE(pointsOf(type, size), pointsOf(type, TextSize::normal));
        }
    }
}

} // namespace
} // namespace loadwarden::ui
