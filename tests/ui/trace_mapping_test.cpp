// How a recorder's file is read: proposed, looked at, changed and confirmed by a person.
#include "ui/trace/mapping_form.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableWidget>
#include <QTest>

namespace loadwarden::ui {
namespace {

const std::string bytes = "Time;Chamber T [°C];Drain T [°C];P [bar]\n"
                          "07:14:00;21,4;21,2;1,01\n"
                          "07:14:10;24,9;23,0;0,72\n"
                          "07:14:20;31,3;26,4;0,43\n";

class TheMapping : public testing::Test {
protected:
    void SetUp() override
    {
        m_form.resize(1000, 900);
        m_form.show(bytes, proposeMapping(bytes));
        m_form.show();
        QApplication::setActiveWindow(&m_form);
        ASSERT_TRUE(QTest::qWaitForWindowActive(&m_form));
    }
    [[nodiscard]] QComboBox* combo(const QString& name)
    {
        for (QComboBox* const each : m_form.findChildren<QComboBox*>()) {
            if (each->isVisible() && each->accessibleName() == name) {
                return each;
            }
        }
        return nullptr;
    }
    [[nodiscard]] QPushButton* confirm() { return m_form.findChildren<QPushButton*>().front(); }
    /// By keys, as a person would.
    void choose(const QString& name, const QString& entry)
    {
        QComboBox* const box = combo(name);
        ASSERT_NE(box, nullptr) << name.toStdString();
        box->setFocus();
        QTest::keyClick(box, Qt::Key_Home);
        for (int i = 0; i < box->count() && box->currentText() != entry; ++i) {
            QTest::keyClick(box, Qt::Key_Down);
        }
        ASSERT_EQ(box->currentText(), entry);
    }

    MappingForm m_form;
};

TEST_F(TheMapping, ShowsTheFirstLinesAndWhatIsProposed)
{
    const auto* const table = m_form.findChild<QTableWidget*>();
    ASSERT_EQ(table->columnCount(), 4);
    EXPECT_EQ(table->item(1, 1)->text(), "21,4");
    EXPECT_EQ(combo("1: Time: holds")->currentText(), "Time");
    EXPECT_EQ(combo("2: Chamber T [°C]: holds")->currentText(), "Chamber temperature");
    EXPECT_EQ(combo("3: Drain T [°C]: holds")->currentText(), "Drain temperature");
    EXPECT_EQ(combo("4: P [bar]: holds")->currentText(), "Chamber pressure");
    EXPECT_EQ(combo("4: P [bar]: unit")->currentText(), "bar");
    EXPECT_EQ(combo("Decimal mark")->currentText(), "comma");
    EXPECT_EQ(m_form.mapping(), proposeMapping(bytes).mapping) << "what nobody touched stays";
}

TEST_F(TheMapping, IsChangedByKeysAndConfirmed)
{
    choose("3: Drain T [°C]: holds", "Load temperature");
    choose("4: P [bar]: counted from", "Gauge");
    QSignalSpy confirmed(&m_form, &MappingForm::confirmed);
    confirm()->setFocus();
    QTest::keyClick(confirm(), Qt::Key_Space);
    ASSERT_EQ(confirmed.count(), 1);
    ASSERT_EQ(m_form.mapping().channels.size(), 3U);
    EXPECT_EQ(m_form.mapping().channels[1].role, ChannelRole::loadTemperature);
    EXPECT_EQ(m_form.mapping().channels[2].zero, PressureZero::gauge);
}

TEST_F(TheMapping, SaysWhatIsMissing)
{
    EXPECT_TRUE(confirm()->isEnabled());
    choose("1: Time: holds", "Not used");
    EXPECT_TRUE(m_form.whatIsMissing().contains("time"));
    EXPECT_FALSE(confirm()->isEnabled());
    choose("1: Time: holds", "Time");
    EXPECT_EQ(m_form.whatIsMissing(), "");
    choose("2: Chamber T [°C]: holds", "Not used");
    choose("3: Drain T [°C]: holds", "Not used");
    EXPECT_TRUE(m_form.whatIsMissing().contains("temperature"));
}

TEST_F(TheMapping, IsCutAnewByAnotherSeparator)
{
    choose("Fields are parted by", "tab");
    EXPECT_EQ(m_form.mapping().columns, 1U);
    EXPECT_FALSE(confirm()->isEnabled());
    choose("Fields are parted by", "semicolon");
    EXPECT_EQ(m_form.mapping().columns, 4U);
}

} // namespace
} // namespace loadwarden::ui
