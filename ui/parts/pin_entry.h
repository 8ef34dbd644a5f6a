#pragma once

#include <QWidget>

class QLineEdit;

namespace loadwarden::ui {

/// A line that shows nothing of the digits of a PIN.
[[nodiscard]] QLineEdit* makePinLine();

/// Keys for a PIN, for gloves and for touch. They type into a line and never take the keyboard from
/// it.
class PinPad : public QWidget {
    Q_OBJECT

public:
    explicit PinPad(QLineEdit* line, QWidget* parent = nullptr);
};

} // namespace loadwarden::ui
