#include "ui/parts/wheel_guard.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QEvent>

namespace loadwarden::ui {

WheelGuard::WheelGuard(QObject* parent) : QObject(parent)
{
    QCoreApplication::instance()->installEventFilter(this);
}

bool WheelGuard::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::Wheel && qobject_cast<QComboBox*>(watched) != nullptr) {
        event->ignore(); // what it lies on gets it then
        return true;
    }
    return QObject::eventFilter(watched, event);
}

} // namespace loadwarden::ui
