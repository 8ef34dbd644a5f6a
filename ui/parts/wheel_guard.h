#pragma once

#include <QObject>

namespace loadwarden::ui {

/// The wheel scrolls the page, also where the pointer is over a box to choose from: a choice is
/// never changed in passing.
class WheelGuard : public QObject {
    Q_OBJECT

public:
    /// Watches the whole program.
    explicit WheelGuard(QObject* parent);

    bool eventFilter(QObject* watched, QEvent* event) override;
};

} // namespace loadwarden::ui
