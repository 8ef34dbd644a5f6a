#pragma once

#include <QDialog>

namespace loadwarden::ui {

/// Every shortcut of a window as it is now, from its actions.
class ShortcutSheet : public QDialog {
    Q_OBJECT

public:
    explicit ShortcutSheet(QWidget* window);
};

} // namespace loadwarden::ui
