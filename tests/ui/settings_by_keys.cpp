#include "tests/ui/settings_by_keys.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include <map>

namespace loadwarden::ui_tests {

void SettingsByKeys::open(Qt::Key mnemonic, const QString& who, const std::string& pin)
{
    desktop.open();
    desktop.signIn(who, pin);
    desktop.press(Qt::Key_9, Qt::ControlModifier);
    goTo(mnemonic);
}

void SettingsByKeys::goTo(Qt::Key mnemonic)
{
    static const std::map<Qt::Key, std::string> sections{
        {Qt::Key_S, "sterilizers"}, {Qt::Key_F, "specifications"}, {Qt::Key_P, "products"},
        {Qt::Key_C, "packagings"},  {Qt::Key_D, "devices"},        {Qt::Key_I, "incubators"},
        {Qt::Key_A, "staff"},       {Qt::Key_Y, "policy"},         {Qt::Key_K, "backup"}};
    ASSERT_TRUE(desktop.waitFor([this] { return page()->isUpToDate(); }));
    desktop.press(mnemonic, Qt::AltModifier);
    // A button that is pressed by its mnemonic stays down for a moment.
    ASSERT_TRUE(desktop.waitFor(
        [&] { return page()->sectionId(page()->section()) == sections.at(mnemonic); }));
    QTest::qWait(150);
}

ui::SettingsPage* SettingsByKeys::page()
{
    return desktop.window().findChild<ui::SettingsPage*>();
}

void SettingsByKeys::tabTo(const QString& name)
{
    constexpr int mostTabs = 120;
    QStringList passed;
    for (int i = 0; i < mostTabs; ++i) {
        const QString now = desktop.focusName();
        if (now == name) {
            return;
        }
        passed << now;
        desktop.press(Qt::Key_Tab);
    }
    FAIL() << "Tab does not reach " << name.toStdString() << ", but "
           << passed.join(QStringLiteral(" | ")).toStdString();
}

void SettingsByKeys::typeInto(const QString& name, const QString& text)
{
    tabTo(name);
    auto* const line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_NE(line, nullptr) << name.toStdString();
    desktop.press(Qt::Key_A, Qt::ControlModifier);
    desktop.press(Qt::Key_Delete);
    desktop.type(text);
}

void SettingsByKeys::pressButton(const QString& name)
{
    tabTo(name);
    desktop.press(Qt::Key_Space);
}

void SettingsByKeys::sign(const std::string& pin)
{
    ASSERT_TRUE(desktop.waitFor([] {
        return QApplication::activeModalWidget() != nullptr
               && QApplication::activeWindow() == QApplication::activeModalWidget();
    })) << "nothing asks for a PIN";
    desktop.type(QString::fromStdString(pin));
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([] { return QApplication::activeModalWidget() == nullptr; }));
    QApplication::setActiveWindow(&desktop.window());
}

bool SettingsByKeys::comesToSay(const QString& what)
{
    return desktop.waitFor([&] { return desktop.messages().contains(what); });
}

std::string SettingsByKeys::seen()
{
    QStringList all;
    for (const auto* const label : QApplication::activeWindow()->findChildren<QLabel*>()) {
        if (label->isVisible()) {
            all << label->text();
        }
    }
    return all.join(QStringLiteral(" | ")).toStdString();
}

Registers SettingsByKeys::registers()
{
    Office office(desktop.file().toStdString(), Access::read, desktop.place());
    ReadSnapshot snapshot(office.connection());
    return registersOf(snapshot, office.zone(), office.now());
}

} // namespace loadwarden::ui_tests
