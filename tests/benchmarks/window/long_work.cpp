#include "tests/benchmarks/window/figures.h"
#include "tests/benchmarks/window/measures.h"
#include "ui/records/file_ask.h"
#include "ui/records/journal_work.h"
#include "ui/records/records_page.h"
#include "ui/settings/backup_section.h"
#include "ui/settings/long_work.h"
#include "ui/settings/settings_page.h"

#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include <cstdio>
#include <ctime>

namespace loadwarden::benchmarks {
namespace {

constexpr int tickMs = 10;
constexpr int ticksAKey = 50; ///< somebody goes to another page about twice a second

/// Of the window's thread alone.
Moment onThisThread()
{
    timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return {Moment::now().wall,
            static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6};
}

/// How long the window does not come to its next event, looked at every 10 ms, while somebody goes
/// from page to page.
class Answering {
public:
    explicit Answering(BenchDesktop& desktop) : m_desktop(desktop)
    {
        m_timer.setTimerType(Qt::PreciseTimer);
        m_timer.callOnTimeout(&m_timer, [this] { tick(); });
        m_begun = onThisThread();
        m_latest = m_begun;
        m_timer.start(tickMs);
    }

    void print(const std::string& what)
    {
        m_timer.stop();
        printTimes(what + ": between two looks", "100", m_gaps);
        printNumber(what + ": it took, ms", "", (m_latest - m_begun).wall);
    }

private:
    void tick()
    {
        const Moment now = onThisThread();
        m_gaps.push_back(now - m_latest);
        m_latest = now;
        if (m_gaps.size() % ticksAKey == 0) {
            static constexpr Qt::Key pages[] = {Qt::Key_1, Qt::Key_2, Qt::Key_3, Qt::Key_8};
            m_desktop.press(pages[m_gaps.size() / ticksAKey % std::size(pages)],
                            Qt::ControlModifier);
        }
    }

    BenchDesktop& m_desktop;
    QTimer m_timer;
    std::vector<Taken> m_gaps;
    Moment m_begun;
    Moment m_latest;
};

void press(QWidget& in, const QString& name)
{
    for (auto* const button : in.findChildren<QPushButton*>()) {
        if (button->isVisible() && button->isEnabled() && button->text().remove(u'&') == name) {
            QTest::mouseClick(button, Qt::LeftButton);
            return;
        }
    }
    throw std::runtime_error("there is no button " + name.toStdString());
}

void toPage(BenchDesktop& desktop, Qt::Key key, const QWidget& page)
{
    desktop.press(key, Qt::ControlModifier);
    desktop.application().until([&] { return page.isVisible(); });
    QTest::qWait(500);
}

QString fileFor(const LongJournal& journal, const char* end)
{
    std::filesystem::path file = journal.file;
    file += end;
    std::filesystem::remove(file);
    return QString::fromStdString(file.string());
}

void typeInto(QLineEdit& line, const QString& text)
{
    line.setFocus();
    line.selectAll();
    QTest::keyClicks(&line, text);
}

} // namespace

void measureLongWork(BenchDesktop& desktop, const LongJournal& journal)
{
    auto& records = desktop.find<ui::RecordsPage>();
    auto& work = desktop.find<ui::JournalWork>();
    const auto untilDone = [&] { desktop.application().until([&] { return !work.isBusy(); }); };
    {
        Answering answering(desktop);
        QTest::qWait(5'000);
        answering.print("nothing");
    }
    toPage(desktop, Qt::Key_8, records);
    press(records, QStringLiteral("Verify the journal"));
    {
        Answering answering(desktop);
        untilDone();
        answering.print("verify");
    }
    toPage(desktop, Qt::Key_8, records);
    press(records, QStringLiteral("Export a copy"));
    const QString lines = fileFor(journal, ".jsonl");
    typeInto(*desktop.find<ui::FileAsk>().findChild<QLineEdit*>(), lines);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    {
        Answering answering(desktop);
        untilDone();
        answering.print("export");
    }
    QFile::remove(lines);
    auto& settings = desktop.find<ui::SettingsPage>();
    auto& backup = desktop.find<ui::BackupSection>();
    toPage(desktop, Qt::Key_9, settings);
    for (int i = 0; i < settings.sectionCount() && !backup.isVisible(); ++i) {
        settings.showSection(i);
    }
    const QString copy = fileFor(journal, ".backup");
    typeInto(*backup.findChild<QLineEdit*>(), copy);
    press(backup, QStringLiteral("Back up now"));
    auto* const writing = backup.findChildren<ui::LongWork*>().front();
    {
        Answering answering(desktop);
        desktop.application().until([&] { return writing->isRunning(); });
        desktop.application().until([&] { return !writing->isRunning(); });
        answering.print("backup");
    }
    std::printf("backup: %s\n", QFile::exists(copy) ? "is there" : "was not made");
    QFile::remove(copy);
}

} // namespace loadwarden::benchmarks
