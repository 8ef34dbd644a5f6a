#pragma once

#include <QString>

#include <cstdint>
#include <functional>
#include <utility>

namespace loadwarden::ui {

/// Milliseconds that only ever grow.
using Ticks = std::function<std::int64_t()>;

/// The computer's own, from now on.
[[nodiscard]] Ticks ownTicks();

/// "1:23"
[[nodiscard]] QString minutesText(std::int64_t ms);

/// How long somebody looks at one thing after the other; a pause counts for none.
class Stopwatch {
public:
    explicit Stopwatch(Ticks ticks) : m_ticks(std::move(ticks)) {}

    /// Of this one so far.
    [[nodiscard]] std::int64_t lap() const
    {
        return m_lap + (m_isPaused ? 0 : m_ticks() - m_since);
    }
    /// Of all.
    [[nodiscard]] std::int64_t total() const { return m_before + lap(); }
    [[nodiscard]] bool isPaused() const { return m_isPaused; }

    /// The next one begins, unpaused.
    void next()
    {
        m_before += m_isStarted ? lap() : 0;
        m_isStarted = true;
        m_lap = 0;
        goOn();
    }
    void pause()
    {
        m_lap = lap();
        m_isPaused = true;
    }
    void goOn()
    {
        m_isPaused = false;
        m_since = m_ticks();
    }

private:
    Ticks m_ticks;
    std::int64_t m_since = 0;
    std::int64_t m_lap = 0; ///< before a pause
    std::int64_t m_before = 0;
    bool m_isStarted = false;
    bool m_isPaused = true;
};

} // namespace loadwarden::ui
