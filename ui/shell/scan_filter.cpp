#include "ui/shell/scan_filter.h"

#include "ui/shell/shortcuts.h"

#include <QAction>
#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTextCursor>

namespace loadwarden::ui {
namespace {

bool isField(const QWidget* widget)
{
    const auto* const line = qobject_cast<const QLineEdit*>(widget);
    const auto* const lines = qobject_cast<const QPlainTextEdit*>(widget);
    return (line != nullptr && !line->isReadOnly()) || (lines != nullptr && !lines->isReadOnly());
}

bool isEnter(const QKeyEvent& key)
{
    return key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
}

bool hasCharacter(const QKeyEvent& key)
{
    return key.text().size() == 1 && key.text().at(0).isPrint()
           && (key.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == Qt::NoModifier;
}

} // namespace

ScanFilter::ScanFilter(QWidget* window, ScanBurst::Timing timing, Ticks ticks)
    : QObject(window), m_window(window), m_burst(timing), m_ticks(std::move(ticks))
{
    m_hold.setSingleShot(true);
    m_hold.setInterval(static_cast<int>(timing.mostMs) + 10);
    connect(&m_hold, &QTimer::timeout, this, &ScanFilter::release);
    qApp->installEventFilter(this);
}

bool ScanFilter::isOurs(QObject* watched) const
{
    const auto* const widget = qobject_cast<QWidget*>(watched);
    // Also a dialog of it, so that no scan is typed into a PIN.
    return widget != nullptr
           && (widget->window() == m_window || widget->window()->parentWidget() == m_window);
}

bool ScanFilter::eventFilter(QObject* watched, QEvent* event)
{
    if (m_isReleasing
        || (event->type() != QEvent::KeyPress && event->type() != QEvent::ShortcutOverride)) {
        return false;
    }
    auto* const widget = qobject_cast<QWidget*>(watched);
    if (!isOurs(watched)
        || (QApplication::focusWidget() != nullptr && QApplication::focusWidget() != widget)) {
        return false; // it climbs up from the widget that has the keyboard
    }
    auto* const key = static_cast<QKeyEvent*>(event);
    if (event->type() == QEvent::ShortcutOverride) {
        if (hasCharacter(*key) && !isField(widget)) {
            event->accept(); // no shortcut before it is known to be no scanner
            return true;
        }
        return false;
    }
    if (isEnter(*key)) {
        return entered();
    }
    if (key->key() == Qt::Key_Shift) {
        return false;
    }
    if (!hasCharacter(*key)) {
        m_burst.reset();
        release();
        return false;
    }
    return keyPressed(widget, *key);
}

bool ScanFilter::keyPressed(QWidget* focus, const QKeyEvent& key)
{
    const bool isNew = m_burst.key(key.text().at(0), m_ticks());
    if (isNew) {
        release();
    }
    if (isField(focus)) {
        if (isNew) {
            remember(focus);
        }
        return false;
    }
    if (isNew) {
        m_before = {};
    }
    m_held += key.text();
    m_hold.start();
    return true;
}

bool ScanFilter::entered()
{
    const auto text = m_burst.enter(m_ticks());
    if (!text) {
        release();
        return false;
    }
    m_hold.stop();
    m_held.clear();
    restore();
    emit scanned(*text);
    return true;
}

void ScanFilter::remember(QWidget* field)
{
    m_before = {.field = field, .text = {}, .cursor = 0};
    if (const auto* const line = qobject_cast<QLineEdit*>(field)) {
        m_before.text = line->text();
        m_before.cursor = line->cursorPosition();
        m_before.selectionStart = line->selectionStart();
        m_before.selectionLength = static_cast<int>(line->selectedText().size());
    } else if (const auto* const lines = qobject_cast<QPlainTextEdit*>(field)) {
        m_before.text = lines->toPlainText();
        m_before.cursor = lines->textCursor().position();
    }
}

void ScanFilter::restore()
{
    if (auto* const line = qobject_cast<QLineEdit*>(m_before.field)) {
        line->setText(m_before.text);
        line->setCursorPosition(m_before.cursor);
        if (m_before.selectionStart >= 0) {
            line->setSelection(m_before.selectionStart, m_before.selectionLength);
        }
    } else if (auto* const lines = qobject_cast<QPlainTextEdit*>(m_before.field)) {
        lines->setPlainText(m_before.text);
        QTextCursor cursor = lines->textCursor();
        cursor.setPosition(m_before.cursor);
        lines->setTextCursor(cursor);
    }
    m_before = {};
}

void ScanFilter::release()
{
    m_hold.stop();
    const QString held = std::exchange(m_held, {});
    for (const QChar character : held) {
        if (QAction* const action = actionFor(m_window, QKeySequence(QString(character)))) {
            action->trigger();
        } else if (QWidget* const focus = QApplication::focusWidget()) {
            const int key = character.toUpper().unicode();
            QKeyEvent press(QEvent::KeyPress, key, Qt::NoModifier, QString(character));
            QKeyEvent up(QEvent::KeyRelease, key, Qt::NoModifier, QString(character));
            m_isReleasing = true;
            QApplication::sendEvent(focus, &press);
            QApplication::sendEvent(focus, &up);
            m_isReleasing = false;
        }
    }
}

} // namespace loadwarden::ui
