#include "ui/shell/idle_lock.h"

#include <QCoreApplication>
#include <QEvent>

namespace loadwarden::ui {

IdleLock::IdleLock(QObject* parent) : QObject(parent)
{
    m_timer.setSingleShot(true);
    connect(&m_timer, &QTimer::timeout, this, &IdleLock::idle);
    QCoreApplication::instance()->installEventFilter(this);
}

void IdleLock::setLimit(int milliseconds)
{
    m_timer.start(milliseconds);
}

bool IdleLock::eventFilter(QObject* watched, QEvent* event)
{
    switch (event->type()) {
    case QEvent::KeyPress:
    case QEvent::MouseButtonPress:
    case QEvent::MouseMove:
    case QEvent::Wheel:
    case QEvent::TouchBegin: m_timer.start(); break;
    default: break;
    }
    return QObject::eventFilter(watched, event);
}

} // namespace loadwarden::ui
