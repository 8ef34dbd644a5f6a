#pragma once

#include "core/desk/registers.h"
#include "tests/ui/desktop.h"
#include "ui/settings/settings_page.h"

#include <gtest/gtest.h>

#include <QString>

#include <string>

// The settings as a person goes through them by keys, whichever section a test is about.

namespace loadwarden::ui_tests {

class SettingsByKeys : public ::testing::Test {
protected:
    SettingsByKeys() { desktop.found(); }

    /// The settings with a section of them, as somebody.
    void open(Qt::Key mnemonic, const QString& who = QStringLiteral("B-1"),
              const std::string& pin = supervisorPin);
    void goTo(Qt::Key mnemonic);
    ui::SettingsPage* page();

    /// Goes by Tab to what is called so.
    void tabTo(const QString& name);
    void typeInto(const QString& name, const QString& text);
    void pressButton(const QString& name);
    /// The PIN in the signing dialog, once it asks for it.
    void sign(const std::string& pin = supervisorPin);
    bool comesToSay(const QString& what);
    /// Everything that can be read, for who looks why a test failed.
    static std::string seen();
    /// What the journal holds, read beside the window.
    Registers registers();

    Desktop desktop;
};

} // namespace loadwarden::ui_tests
