#pragma once

#include <QObject>
#include <QTimer>

namespace loadwarden::ui {

/// Says when nobody has touched keys or pointer for a while.
class IdleLock : public QObject {
    Q_OBJECT

public:
    explicit IdleLock(QObject* parent = nullptr);

    void setLimit(int milliseconds);

    bool eventFilter(QObject* watched, QEvent* event) override;

signals:
    void idle();

private:
    QTimer m_timer;
};

} // namespace loadwarden::ui
