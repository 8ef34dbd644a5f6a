#pragma once

#include "core/desk/look_up.h"
#include "ui/shell/area.h"
#include "ui/shell/scan_filter.h"
#include "ui/shell/sign_in_page.h"

#include <QMainWindow>

#include <memory>
#include <optional>
#include <string>

class QLabel;
class QPushButton;
class QStackedWidget;

namespace loadwarden::ui {

class Banner;
class DeskLink;
class IdleLock;
class LocalSettings;
class Look;
class OpeningPage;
class Session;
class WorkView;

/// What a window is given from outside: nothing of the computer is asked for below it.
struct Surroundings {
    Look& look;
    LocalSettings& settings;
    Workplace place;   ///< clock, ids, workstation, this user's folder
    QString firstFile; ///< where a first journal would go
    ScanBurst::Timing scanTiming{};
    ScanFilter::Ticks ticks;     ///< milliseconds of a clock that only goes forward
    std::optional<int> idleMs{}; ///< instead of what is set
};

/// The program's window: which of its views is to be seen, and what concerns them all. A view that
/// is not seen stays alive.
class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    explicit MainWindow(Surroundings surroundings, QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Opens a journal; without one, the first start. Called once before the window is shown.
    void begin(const QString& journal);

    /// Null before a journal is open and somebody is in.
    [[nodiscard]] WorkView* work() const { return m_work; }
    [[nodiscard]] Banner& banner() const { return *m_banner; }

protected:
    bool event(QEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    void makeActions();
    void open(const QString& journal);
    void opened();
    void entered();
    void askWho(SignInPage::Why why, const QString& who = {});
    void scanned(const QString& text);
    void showFound(const QString& text, const LookedUp& found);
    void showKeys();
    void applySettings();
    void see(QWidget* view);

    Surroundings m_with;
    Banner* m_banner;
    QStackedWidget* m_stack;
    OpeningPage* m_opening;
    IdleLock* m_idle;
    std::unique_ptr<DeskLink> m_desk;
    std::unique_ptr<Session> m_session;
    SignInPage* m_signIn = nullptr;
    WorkView* m_work = nullptr;
    QPointer<QWidget> m_hadFocus; ///< before the sign-in stood before it
    QString m_journal;
    std::string m_lastPerson;   ///< st-, who was in last; empty: nobody yet
    bool m_saysOfBadge = false; ///< the message is about a badge that was scanned to sign in
};

} // namespace loadwarden::ui
