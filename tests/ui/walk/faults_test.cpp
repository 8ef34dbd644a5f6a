// Each check of the walk is shown a fault, and the same without it.
#include "tests/ui/walk/faults.h"
#include "ui/look/text.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QScrollArea>
#include <QTest>
#include <QVBoxLayout>

namespace loadwarden::ui_tests {
namespace {

class PlantedFault : public ::testing::Test {
protected:
    PlantedFault() : look(*qApp)
    {
        look.apply(ui::Theme::light, ui::TextSize::normal);
        window.resize(600, 400);
        first = new QPushButton(QStringLiteral("First"), &window);
        first->setGeometry(20, 20, 160, 48);
        second = new QPushButton(QStringLiteral("Second"), &window);
        second->setGeometry(20, 120, 160, 48);
        label = new QLabel(QStringLiteral("What stands here"), &window);
        label->setGeometry(20, 220, 300, 30);
        line = new QLineEdit(&window);
        line->setGeometry(20, 280, 300, 48);
        line->setAccessibleName(QStringLiteral("Line"));
        window.show();
        QApplication::setActiveWindow(&window);
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
    }

    ui::Look look;
    QWidget window;
    QPushButton* first;
    QPushButton* second;
    QLabel* label;
    QLineEdit* line;
};

TEST_F(PlantedFault, NothingIsFoundWhereThereIsNone)
{
    EXPECT_TRUE(lowContrast(window).empty());
    EXPECT_TRUE(clippedText(window).empty());
    EXPECT_TRUE(cutByScrolling(window).empty());
    EXPECT_TRUE(nameless(window).empty());
    EXPECT_TRUE(wrongTabOrder(window).empty());
    EXPECT_TRUE(smallTargets(window).empty());
}

TEST_F(PlantedFault, LowContrastIsFound)
{
    label->setStyleSheet(QStringLiteral("color: #999999;"));
    ASSERT_EQ(lowContrast(window).size(), 1U);
    EXPECT_TRUE(lowContrast(window)[0].where.contains(label->text()));
}

TEST_F(PlantedFault, WhatIsWiderThanItsScrollAreaIsFound)
{
    auto* const area = new QScrollArea(&window);
    area->setGeometry(340, 20, 200, 200);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setWidgetResizable(true);
    auto* const inside = new QWidget;
    area->setWidget(inside);
    area->show();
    EXPECT_TRUE(cutByScrolling(window).empty());
    inside->setMinimumWidth(300);
    QTest::qWait(20);
    EXPECT_EQ(cutByScrolling(window).size(), 1U);
}

TEST_F(PlantedFault, ClippedLabelIsFound)
{
    label->setGeometry(20, 220, 40, 30);
    EXPECT_EQ(clippedText(window).size(), 1U);
}

TEST_F(PlantedFault, ClippedWrappedLabelIsFound)
{
    label->setWordWrap(true);
    label->setText(QStringLiteral("So long that it needs more than the one line that there is"));
    label->setGeometry(20, 220, 160, 20);
    EXPECT_EQ(clippedText(window).size(), 1U);
}

TEST_F(PlantedFault, ClippedButtonIsFound)
{
    first->setText(QStringLiteral("So long that it does not fit"));
    EXPECT_EQ(clippedText(window).size(), 1U);
}

TEST_F(PlantedFault, WhatReachesOverTheEdgeIsFound)
{
    label->move(500, 220);
    EXPECT_EQ(clippedText(window).size(), 1U);
}

TEST_F(PlantedFault, AMissingNameIsFound)
{
    line->setAccessibleName({});
    EXPECT_EQ(nameless(window).size(), 1U);
    first->setText({});
    EXPECT_EQ(nameless(window).size(), 2U);
}

TEST_F(PlantedFault, AWrongTabOrderIsFound)
{
    QWidget::setTabOrder(second, first);
    EXPECT_FALSE(wrongTabOrder(window).empty());
}

TEST_F(PlantedFault, ASmallTargetIsFound)
{
    first->setMinimumSize(0, 0);
    first->setStyleSheet(QStringLiteral("min-height: 0px;"));
    first->resize(160, 30);
    EXPECT_EQ(smallTargets(window).size(), 1U);
}

} // namespace
} // namespace loadwarden::ui_tests
