#include "ui/indicators/stopwatch.h"

#include <QElapsedTimer>

namespace loadwarden::ui {

Ticks ownTicks()
{
    QElapsedTimer timer;
    timer.start();
    return [timer] { return static_cast<std::int64_t>(timer.elapsed()); };
}

QString minutesText(std::int64_t ms)
{
    constexpr std::int64_t second = 1'000;
    constexpr std::int64_t minute = 60;
    const std::int64_t seconds = ms / second;
    return QStringLiteral("%1:%2")
        .arg(seconds / minute)
        .arg(seconds % minute, 2, 10, QLatin1Char('0'));
}

} // namespace loadwarden::ui
