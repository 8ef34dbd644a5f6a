#include "ui/shell/role_text.h"

#include <QCoreApplication>

namespace loadwarden::ui {

QString roleText(Role role)
{
    switch (role) {
    case Role::viewer: return QCoreApplication::translate("loadwarden::ui::Role", "viewer");
    case Role::operating: return QCoreApplication::translate("loadwarden::ui::Role", "operator");
    case Role::lead: return QCoreApplication::translate("loadwarden::ui::Role", "lead");
    case Role::supervisor: return QCoreApplication::translate("loadwarden::ui::Role", "supervisor");
    }
    return {};
}

} // namespace loadwarden::ui
