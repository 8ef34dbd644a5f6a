#include "tests/ui/desktop.h"

#include "core/desk/recorder.h"
#include "ui/parts/banner.h"
#include "ui/shell/work_view.h"
#include "ui/today/today_page.h"

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include <stdexcept>

namespace loadwarden::ui_tests {
namespace {

constexpr int longestWaitMs = 20'000;
constexpr std::int64_t personMs = 200;
constexpr std::int64_t scannerMs = 5;

template <class Value>
Value must(OrRefusal<Value> answer)
{
    if (std::holds_alternative<Refusal>(answer)) {
        throw std::logic_error("refused: "
                               + std::to_string(static_cast<int>(std::get<Refusal>(answer).why)));
    }
    return std::get<Value>(std::move(answer));
}

QWidget* active()
{
    QWidget* const window = QApplication::activeWindow();
    if (window == nullptr) {
        throw std::logic_error("no window is active");
    }
    return window;
}

QWidget* keyboard()
{
    if (QWidget* const popup = QApplication::activePopupWidget()) {
        return popup;
    }
    QWidget* const focus = QApplication::focusWidget();
    return focus == nullptr ? active() : focus;
}

} // namespace

Desktop::Desktop()
    : m_settings(m_folder.filePath(QStringLiteral("workstation.ini"))),
      m_look(*qApp),
      m_keyMs(personMs)
{
}

Desktop::~Desktop()
{
    close();
}

Workplace Desktop::place()
{
    return {.clock = m_clock,
            .ids = m_ids,
            .workstation = "ws-test",
            .keep = m_folder.filePath(QStringLiteral("keep")).toStdString(),
            .syncing = Syncing::off,
            .pinCost = PinCost::least()};
}

void Desktop::found()
{
    (void)must(foundDepartment(file().toStdString(),
                               {.facility = "Facility",
                                .timeZone = "America/Chicago",
                                .atmosphereKPa = "101.3",
                                .supervisorId = "st-sup",
                                .supervisorName = "Supervisor One",
                                .supervisorBadge = "B-1",
                                .supervisorPin = supervisorPin},
                               place()));
    prepare([](Office& office, const SignedIn& who) {
        const auto signature = [&] { return must(SignIn(office).sign(who, supervisorPin)); };
        (void)must(Recorder(office).record(
            who,
            {.act = StaffRecorded{.name = "Operator Two", .role = Role::operating, .badge = "B-2"},
             .subjects = {"st-op"}},
            signature()));
        (void)must(SignIn(office).setPin(who, signature(), "st-op", operatorPin));
    });
}

void Desktop::prepare(const std::function<void(Office&, const SignedIn&)>& work)
{
    Office office(file().toStdString(), Access::write, place());
    work(office, must(SignIn(office).enter("st-sup", supervisorPin)));
}

void Desktop::open(QSize size, ui::Theme theme)
{
    show(file(), size, theme);
    if (!comesToSee(QStringLiteral("Facility"))) {
        throw std::logic_error("the journal did not open");
    }
}

void Desktop::openFirst(QSize size, ui::Theme theme)
{
    show({}, size, theme);
}

void Desktop::show(const QString& journal, QSize size, ui::Theme theme)
{
    close();
    m_settings.setTheme(theme);
    m_look.apply(theme, m_settings.textSize());
    m_window = std::make_unique<ui::MainWindow>(
        ui::Surroundings{.look = m_look,
                         .settings = m_settings,
                         .place = place(),
                         .firstFile = file(),
                         .ticks = [this] { return m_ms += m_keyMs; },
                         .idleMs = m_idleMs});
    m_window->resize(size);
    m_window->begin(journal);
    m_window->show();
    QApplication::setActiveWindow(m_window.get());
    if (!QTest::qWaitForWindowActive(m_window.get(), longestWaitMs)) {
        throw std::logic_error("the window did not become active");
    }
}

void Desktop::close()
{
    m_window.reset();
}

void Desktop::signIn(const QString& who, const std::string& pin)
{
    type(who);
    press(Qt::Key_Return);
    type(QString::fromStdString(pin));
    press(Qt::Key_Return);
    const bool isIn = waitFor([this] {
        auto* const work = m_window->work();
        return work != nullptr && work->isVisible();
    });
    if (!isIn || !waitFor([this] { return m_window->work()->isWhole(); })) {
        throw std::logic_error("nobody came in");
    }
    auto* const today = m_window->findChild<ui::TodayPage*>();
    if (!waitFor([today] { return today->isUpToDate(); })) {
        throw std::logic_error("Today did not come");
    }
}

void Desktop::type(const QString& text)
{
    for (const QChar character : text) {
        QTest::keyClick(keyboard(), character.toLatin1());
    }
}

void Desktop::press(Qt::Key key, Qt::KeyboardModifiers modifiers)
{
    QTest::keyClick(keyboard(), key, modifiers);
}

void Desktop::click(const QString& accessibleName)
{
    for (auto* const button : active()->findChildren<QAbstractButton*>()) {
        QString name =
            button->accessibleName().isEmpty() ? button->text() : button->accessibleName();
        if (button->isVisible() && name.remove(u'&') == accessibleName) {
            QTest::mouseClick(button, Qt::LeftButton);
            return;
        }
    }
    throw std::logic_error("nothing is called " + accessibleName.toStdString());
}

void Desktop::scan(const QString& text)
{
    m_ms += personMs; // not close behind what was typed
    m_keyMs = scannerMs;
    type(text);
    press(Qt::Key_Return);
    m_keyMs = personMs;
}

QString Desktop::focusName() const
{
    const QWidget* const focus = QApplication::focusWidget();
    if (focus == nullptr) {
        return {};
    }
    const auto* const button = qobject_cast<const QAbstractButton*>(focus);
    QString name = focus->accessibleName().isEmpty() && button != nullptr ? button->text()
                                                                          : focus->accessibleName();
    return name.remove(u'&');
}

bool Desktop::sees(const QString& text) const
{
    for (const auto* const label : active()->findChildren<QLabel*>()) {
        // Where long words may be broken nothing is seen.
        if (label->isVisible() && label->text().remove(QChar(0x200b)).contains(text)) {
            return true;
        }
    }
    for (const auto* const button : active()->findChildren<QAbstractButton*>()) {
        if (button->isVisible() && button->text().contains(text)) {
            return true;
        }
    }
    return false;
}

QString Desktop::messages() const
{
    QStringList said;
    for (const auto* const banner : m_window->findChildren<ui::Banner*>()) {
        said << banner->said();
    }
    return said.join(u' ');
}

bool Desktop::comesToSee(const QString& text) const
{
    return waitFor([&] { return sees(text); });
}

bool Desktop::waitFor(const std::function<bool()>& what) const
{
    return QTest::qWaitFor(what, longestWaitMs);
}

} // namespace loadwarden::ui_tests
