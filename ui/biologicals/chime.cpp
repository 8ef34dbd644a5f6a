#include "ui/biologicals/chime.h"

#include <QApplication>

namespace loadwarden::ui {

void Chime::ring()
{
    QApplication::beep();
    emit rang();
}

} // namespace loadwarden::ui
