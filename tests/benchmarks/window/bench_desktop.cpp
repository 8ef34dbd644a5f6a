#include "tests/benchmarks/window/bench_desktop.h"

#include "core/desk/pin_book.h"
#include "core/desk/sealing.h"
#include "ui/shell/work_view.h"
#include "ui/today/today_page.h"

#include <QLineEdit>
#include <QTest>

namespace loadwarden::benchmarks {
namespace {

constexpr auto lead = "st-c";
constexpr auto badge = "B-3";
constexpr auto pin = "482915";
constexpr std::int64_t personMs = 200;
constexpr std::int64_t scannerMs = 5;

} // namespace

BenchDesktop::BenchDesktop(PaintWatch& application, const LongJournal& journal)
    : m_application(application),
      m_journal(journal),
      m_clock(journal.now),
      m_settings(m_folder.filePath(QStringLiteral("workstation.ini"))),
      m_look(application),
      m_keyMs(personMs)
{
}

Workplace BenchDesktop::place()
{
    std::filesystem::path keep = m_journal.file;
    keep += ".keep";
    return {.clock = m_clock,
            .ids = m_ids,
            .workstation = "ws-bench",
            .keep = keep,
            .syncing = Syncing::off,
            .pinCost = PinCost::least()};
}

void BenchDesktop::prepare()
{
    makeKeyIfNone(place());
    Connection connection(SqliteFile{m_journal.file}, {.syncing = Syncing::off});
    WriteTransaction transaction(connection);
    PinBook::set(transaction, lead, hashOfPin(pin, PinCost::least()));
    transaction.commit();
}

Moment BenchDesktop::open()
{
    m_look.apply(ui::Theme::light, ui::TextSize::normal);
    m_window = std::make_unique<ui::MainWindow>(
        ui::Surroundings{.look = m_look,
                         .settings = m_settings,
                         .place = place(),
                         .firstFile = {},
                         .ticks = [this] { return m_ms += m_keyMs; },
                         .idleMs = 24 * 3'600'000});
    m_window->resize(sizeOfWindow);
    m_window->begin(QString::fromStdString(m_journal.file.string()));
    m_window->show();
    QApplication::setActiveWindow(m_window.get());
    return m_application.painted([] {
        return qobject_cast<QLineEdit*>(QApplication::focusWidget()) != nullptr;
    });
}

void BenchDesktop::typeWho()
{
    m_keyMs = personMs;
    type(QLatin1String(badge));
    press(Qt::Key_Return);
    type(QLatin1String(pin));
}

void BenchDesktop::enter()
{
    press(Qt::Key_Return);
}

void BenchDesktop::signIn()
{
    typeWho();
    enter();
    (void)m_application.painted([this] { return isTodayThere(); });
}

void BenchDesktop::press(Qt::Key key, Qt::KeyboardModifiers modifiers)
{
    QWidget* const focus = QApplication::focusWidget();
    QTest::keyClick(focus == nullptr ? m_window.get() : focus, key, modifiers);
}

void BenchDesktop::type(const QString& text)
{
    QTest::keyClicks(QApplication::focusWidget(), text);
}

void BenchDesktop::scan(const QString& text)
{
    m_ms += personMs; // not close behind what was typed
    m_keyMs = scannerMs;
    type(text);
}

bool BenchDesktop::isTodayThere() const
{
    const auto* const today = m_window->findChild<ui::TodayPage*>();
    return today != nullptr && today->isVisible() && today->isUpToDate();
}

} // namespace loadwarden::benchmarks
