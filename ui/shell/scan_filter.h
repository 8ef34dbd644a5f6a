#pragma once

#include "ui/shell/scan_burst.h"

#include <QObject>
#include <QPointer>
#include <QTimer>
#include <QWidget>

#include <functional>
#include <vector>

class QKeyEvent;

namespace loadwarden::ui {

/// Catches what a scanner types, wherever the keyboard is. In a field, what it typed is taken out
/// again and what stood there comes back. Elsewhere its keys are held for the time of a burst, so
/// that none of them is taken for a shortcut; what was no burst is then done as if it came late.
class ScanFilter : public QObject {
    Q_OBJECT

public:
    /// Milliseconds of some clock that only goes forward.
    using Ticks = std::function<std::int64_t()>;

    ScanFilter(QWidget* window, ScanBurst::Timing timing, Ticks ticks);

    bool eventFilter(QObject* watched, QEvent* event) override;

signals:
    void scanned(const QString& text);

private:
    /// What a field held before a burst.
    struct Before {
        QPointer<QWidget> field;
        QString text;
        int cursor = 0;
        int selectionStart = -1;
        int selectionLength = 0;
    };

    [[nodiscard]] bool isOurs(QObject* watched) const;
    bool keyPressed(QWidget* focus, const QKeyEvent& key);
    bool entered();
    void remember(QWidget* field);
    void restore();
    void release();

    QWidget* m_window;
    ScanBurst m_burst;
    Ticks m_ticks;
    Before m_before;
    QTimer m_hold;
    QString m_held;
    bool m_isReleasing = false;
};

} // namespace loadwarden::ui
