#include "ui/shell/main_window.h"

#include "ui/first_start/first_start_page.h"
#include "ui/look/text.h"
#include "ui/parts/banner.h"
#include "ui/parts/tab_order.h"
#include "ui/parts/wheel_guard.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/idle_lock.h"
#include "ui/shell/local_settings.h"
#include "ui/shell/opening_page.h"
#include "ui/shell/session.h"
#include "ui/shell/shortcut_sheet.h"
#include "ui/shell/work_view.h"

#include <QAction>
#include <QApplication>
#include <QEvent>
#include <QFileInfo>
#include <QLineEdit>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int minuteMs = 60'000;

} // namespace

MainWindow::MainWindow(Surroundings surroundings, QWidget* parent)
    : QMainWindow(parent),
      m_with(std::move(surroundings)),
      m_banner(new Banner),
      m_stack(new QStackedWidget),
      m_opening(new OpeningPage),
      m_idle(new IdleLock(this))
{
    setWindowTitle(tr("Loadwarden"));
    auto* const middle = new QWidget;
    auto* const column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_stack, 1);
    column->addWidget(m_banner); // below, so that what somebody is about to press stays where it is
    setCentralWidget(middle);
    m_stack->addWidget(m_opening);
    makeActions();
    new WheelGuard(this);
    auto* const scans = new ScanFilter(this, m_with.scanTiming, m_with.ticks);
    connect(scans, &ScanFilter::scanned, this, &MainWindow::scanned);
    connect(m_opening, &OpeningPage::again, this, [this] { open(m_journal); });
    connect(m_opening, &OpeningPage::other, this, [this] { begin({}); });
    connect(&m_with.settings, &LocalSettings::changed, this, &MainWindow::applySettings);
    connect(m_idle, &IdleLock::idle, this, [this] {
        if (m_session != nullptr) {
            m_session->lock();
        }
    });
    applySettings();
}

MainWindow::~MainWindow()
{
    // Pages ask the desk until they are gone.
    delete m_work;
    delete m_signIn;
}

void MainWindow::makeActions()
{
    const auto add = [this](const QString& name, const QKeySequence& keys, auto triggered) {
        auto* const action = new QAction(name, this);
        action->setShortcut(keys);
        connect(action, &QAction::triggered, this, triggered);
        addAction(action);
    };
    add(tr("Show these keys"), QKeySequence(Qt::Key_F1), [this] { showKeys(); });
    add(tr("Look again"), QKeySequence(Qt::Key_F5), [this] {
        if (m_work != nullptr) {
            m_work->refresh();
        }
    });
    add(tr("Change the person"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P), [this] {
        if (m_work != nullptr && !m_session->isLocked()) {
            askWho(SignInPage::Why::change);
        }
    });
    add(tr("Lock"), QKeySequence(Qt::CTRL | Qt::Key_L), [this] {
        if (m_session != nullptr) {
            m_session->lock();
        }
    });
    add(tr("Put the message away"), QKeySequence(Qt::Key_Escape), [this] { m_banner->putAway(); });
}

void MainWindow::begin(const QString& journal)
{
    if (!journal.isEmpty()) {
        open(journal);
        return;
    }
    auto* const first = new FirstStartPage(m_with.look, m_with.place, m_with.firstFile);
    connect(first, &FirstStartPage::chosen, this, [this, first](const QString& file) {
        open(file);
        m_stack->removeWidget(first);
        first->deleteLater();
    });
    m_stack->addWidget(first);
    see(first);
}

void MainWindow::open(const QString& journal)
{
    m_journal = journal;
    m_opening->opening(journal);
    see(m_opening);
    m_session.reset();
    m_desk = std::make_unique<DeskLink>(journal.toStdString(), m_with.place);
    m_session = std::make_unique<Session>(*m_desk);
    connect(m_desk.get(), &DeskLink::opened, this, &MainWindow::opened);
    connect(m_desk.get(), &DeskLink::notOpened, m_opening, &OpeningPage::failed);
    connect(m_desk.get(), &DeskLink::trouble, this,
            [this](const QString& says, const QString& next) {
                m_banner->say(Banner::Tone::bad, says, next);
            });
    connect(m_session.get(), &Session::entered, this, &MainWindow::entered);
    connect(m_session.get(), &Session::locked, this,
            [this] { askWho(SignInPage::Why::locked, text(m_session->person().name)); });
    applySettings();
}

void MainWindow::opened()
{
    m_with.settings.setJournal(m_journal);
    m_signIn = new SignInPage(m_with.look, *m_desk, *m_session);
    connect(m_signIn, &SignInPage::left, this, [this] { see(m_work); });
    m_stack->addWidget(m_signIn);
    const Opened& about = m_desk->about();
    if (about.staleLock) {
        m_banner->say(Banner::Tone::neutral, text(*about.staleLock));
    }
    if (!about.notSealed.empty()) {
        m_banner->say(Banner::Tone::waiting, tr("This day's seal could not be made."),
                      text(about.notSealed));
    }
    askWho(SignInPage::Why::first);
}

void MainWindow::askWho(SignInPage::Why why, const QString& who)
{
    if (m_stack->currentWidget() == m_work) {
        m_hadFocus = QApplication::focusWidget();
    }
    see(m_signIn);
    m_signIn->ask(why, who);
}

void MainWindow::entered()
{
    // What was said to one person is not for the next; nor is what was said of a badge for anybody.
    const std::string& who = m_session->person().id;
    if (std::exchange(m_saysOfBadge, false) || (!m_lastPerson.empty() && who != m_lastPerson)) {
        m_banner->putAway();
    }
    m_lastPerson = who;
    if (m_work == nullptr) {
        m_work = new WorkView({m_with.look, m_with.settings, *m_desk, *m_session});
        connect(m_work, &WorkView::wantsChangeOfPerson, this,
                [this] { askWho(SignInPage::Why::change); });
        connect(m_work, &WorkView::says, this, [this](const QString& what, const QString& next) {
            m_banner->say(Banner::Tone::neutral, what, next);
        });
        m_stack->addWidget(m_work);
    }
    see(m_work);
    if (m_hadFocus != nullptr) {
        m_hadFocus->setFocus();
    }
    m_work->refresh();
}

void MainWindow::see(QWidget* view)
{
    if (view != nullptr) {
        m_stack->setCurrentWidget(view);
    }
}

void MainWindow::scanned(const QString& text)
{
    if (m_desk == nullptr || m_signIn == nullptr || QApplication::activeModalWidget() != nullptr) {
        return;
    }
    m_desk->ask(
        this,
        [what = text.trimmed().toStdString()](Office& office) {
            ReadSnapshot snapshot(office.connection());
            return lookUp(snapshot, what);
        },
        [this, text](const LookedUp& found) { showFound(text, found); });
}

void MainWindow::showFound(const QString& scan, const LookedUp& found)
{
    using Why = SignInPage::Why;
    // While somebody is asked who they are, nothing is done in the name of whoever was there before.
    const bool isOut = m_work == nullptr || m_session->isLocked()
                       || m_stack->currentWidget() == m_signIn;
    if (found.what == LookedUp::What::person) {
        askWho(m_work == nullptr       ? Why::first
               : m_session->isLocked() ? Why::locked
                                       : Why::change,
               text(found.name));
        return;
    }
    if (isOut) {
        // Not said again: it may be a PIN.
        m_banner->say(Banner::Tone::neutral, tr("This is no badge that is known here."),
                      tr("Sign in first; then what is scanned is looked up."));
        m_saysOfBadge = true;
        return;
    }
    see(m_work);
    if (m_work->takeScan(scan, found)) {
        return;
    }
    const QString name = text(found.name);
    switch (found.what) {
    case LookedUp::What::cycle:
    case LookedUp::What::item:
        if (!m_work->openCycle(text(found.cycle), text(found.id))) {
            m_banner->say(
                Banner::Tone::neutral,
                found.what == LookedUp::What::cycle
                    ? tr("%1 is a load or test of this journal.").arg(name)
                    : tr("%1 is the label of an item of this journal.").arg(name),
                tr("On the command line: loadwarden-cli load show %1").arg(text(found.cycle)));
        }
        break;
    case LookedUp::What::productLot:
        m_banner->say(Banner::Tone::neutral, tr("%1 is a lot of a product.").arg(name));
        break;
    case LookedUp::What::several:
        m_banner->say(Banner::Tone::waiting, tr("%1 stands for more than one thing.").arg(scan),
                      tr("Type what you mean where it is asked for."));
        break;
    case LookedUp::What::nothing:
    case LookedUp::What::person:
        if (auto* const line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
            line != nullptr && line->property("takesScans").toBool()) {
            line->setText(scan); // a new badge or box: known to nobody, and meant for the field
            break;
        }
        m_banner->say(Banner::Tone::waiting, tr("Nothing is known of %1.").arg(scan),
                      tr("It is no badge, no lot control number, no label and no lot of a product "
                         "in this journal."));
        break;
    }
}

void MainWindow::showKeys()
{
    ShortcutSheet(this).exec();
}

void MainWindow::applySettings()
{
    const LocalSettings& settings = m_with.settings;
    if (settings.theme() != m_with.look.theme() || settings.textSize() != m_with.look.textSize()) {
        m_with.look.apply(settings.theme(), settings.textSize());
    }
    m_idle->setLimit(m_with.idleMs.value_or(settings.idleMinutes() * minuteMs));
    if (m_desk != nullptr) {
        m_desk->setFahrenheit(settings.temperatureUnit() == Unit::fahrenheit);
    }
}

bool MainWindow::focusNextPrevChild(bool next)
{
    QWidget* const to = neighbourByLayout(centralWidget(), focusWidget(), next);
    if (to == nullptr) {
        return QMainWindow::focusNextPrevChild(next);
    }
    to->setFocus(next ? Qt::TabFocusReason : Qt::BacktabFocusReason);
    return true;
}

bool MainWindow::event(QEvent* event)
{
    if (event->type() == QEvent::WindowActivate && m_work != nullptr) {
        m_work->lookAtClock();
    }
    return QMainWindow::event(event);
}

} // namespace loadwarden::ui
