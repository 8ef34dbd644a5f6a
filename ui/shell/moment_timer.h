#pragma once

#include "core/quantities/clock.h"

#include <QObject>
#include <QTimer>

#include <optional>

namespace loadwarden::ui {

/// Says when a moment has come, by the clock that is given. The one timer of the window: between
/// two moments nothing runs.
class MomentTimer : public QObject {
    Q_OBJECT

public:
    explicit MomentTimer(const Clock& clock, QObject* parent = nullptr);

    /// Replaces the moment before it; nullopt: none.
    void wait(std::optional<Instant> moment);

    /// Looks at the clock at once: after a computer has slept, or a window has come back.
    void look();

signals:
    void came();

private:
    void start();

    const Clock& m_clock;
    QTimer m_timer;
    std::optional<Instant> m_moment;
};

} // namespace loadwarden::ui
