#pragma once

#include "tests/benchmarks/long_journal.h"
#include "tests/benchmarks/window/paint_watch.h"
#include "ui/look/look.h"
#include "ui/shell/local_settings.h"
#include "ui/shell/main_window.h"

#include <QTemporaryDir>

#include <memory>

namespace loadwarden::benchmarks {

inline constexpr QSize sizeOfWindow{1366, 768};

/// The window on the long journal, worked by keys as a person would. What this user keeps outside
/// the journal stays beside its file.
class BenchDesktop {
public:
    BenchDesktop(PaintWatch& application, const LongJournal& journal);

    /// Gives a lead and a key for seals what the journal's entries do not hold.
    void prepare();

    /// Opens the window; its sign-in is painted.
    Moment open();
    /// Types who it is and the PIN up to the last key. What that costs is no matter of the window:
    /// a PIN's hash is slow on purpose, and here as quick as can be.
    void typeWho();
    /// The last key.
    void enter();
    /// All of that, until Today is painted.
    void signIn();

    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier);
    void type(const QString& text);
    /// Keys as close together as a scanner's, without the Enter.
    void scan(const QString& text);

    template <class Widget>
    [[nodiscard]] Widget& find()
    {
        return *m_window->findChild<Widget*>();
    }
    [[nodiscard]] ui::MainWindow& window() { return *m_window; }
    [[nodiscard]] bool isTodayThere() const;
    [[nodiscard]] PaintWatch& application() { return m_application; }

private:
    [[nodiscard]] Workplace place();

    PaintWatch& m_application;
    LongJournal m_journal;
    QTemporaryDir m_folder;
    FixedClock m_clock;
    RandomIdSource m_ids;
    ui::LocalSettings m_settings;
    ui::Look m_look;
    std::int64_t m_ms = 0; ///< of the clock that tells scanners from people
    std::int64_t m_keyMs;
    std::unique_ptr<ui::MainWindow> m_window;
};

} // namespace loadwarden::benchmarks
