#pragma once

#include "core/desk/founding.h"
#include "ui/look/look.h"
#include "ui/shell/local_settings.h"
#include "ui/shell/main_window.h"

#include <QTemporaryDir>

#include <functional>
#include <memory>
#include <optional>
#include <string>

// The real window on a journal in a temporary folder, at work on 4 March 2031 in Chicago. Tests act
// by keys and pointer on whatever is active, as a person would.

namespace loadwarden::ui_tests {

inline const std::string supervisorPin = "482915";
inline const std::string operatorPin = "592817";

[[nodiscard]] inline Instant local(const std::string& time, const std::string& day = "2031-03-04")
{
    return *parseInstant(day + "T" + time + "-06:00");
}

class Desktop {
public:
    Desktop();
    ~Desktop();
    Desktop(const Desktop&) = delete;
    Desktop& operator=(const Desktop&) = delete;

    // Before the window, through the desk.
    /// Founds the journal: a supervisor (badge B-1) and an operator (badge B-2).
    void found();
    /// Has something done in the journal while no window has it open.
    void prepare(const std::function<void(Office&, const SignedIn& supervisor)>& work);

    // The window.
    void open(QSize size = {1366, 768}, ui::Theme theme = ui::Theme::light);
    /// Without a journal: the first start.
    void openFirst(QSize size = {1366, 768}, ui::Theme theme = ui::Theme::light);
    void close();
    void signIn(const QString& who = QStringLiteral("B-1"), const std::string& pin = supervisorPin);

    // A person.
    void type(const QString& text);
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier);
    /// Clicks what a screen reader calls so.
    void click(const QString& accessibleName);
    /// A scanner: the keys of a text close together, then Enter.
    void scan(const QString& text);

    // What can be seen.
    [[nodiscard]] ui::MainWindow& window() { return *m_window; }
    /// What has the keyboard, as a screen reader calls it.
    [[nodiscard]] QString focusName() const;
    /// What the banners say.
    [[nodiscard]] QString messages() const;
    /// Whether a text can be read anywhere on the active window.
    [[nodiscard]] bool sees(const QString& text) const;
    /// Waits until it can.
    [[nodiscard]] bool comesToSee(const QString& text) const;
    [[nodiscard]] bool waitFor(const std::function<bool()>& what) const;

    [[nodiscard]] QString file() const { return m_folder.filePath(QStringLiteral("a.journal")); }
    [[nodiscard]] FixedClock& clock() { return m_clock; }
    [[nodiscard]] ui::LocalSettings& settings() { return m_settings; }
    void setIdleMs(int ms) { m_idleMs = ms; }
    [[nodiscard]] Workplace place();

private:
    void show(const QString& journal, QSize size, ui::Theme theme);

    QTemporaryDir m_folder;
    FixedClock m_clock{local("07:00")};
    RandomIdSource m_ids;
    ui::LocalSettings m_settings;
    ui::Look m_look;
    std::optional<int> m_idleMs;
    std::int64_t m_ms = 0;    ///< of the clock that tells scanners from people
    std::int64_t m_keyMs = 0; ///< between two keys
    std::unique_ptr<ui::MainWindow> m_window;
};

} // namespace loadwarden::ui_tests
