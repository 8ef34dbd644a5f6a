#include "ui/shell/moment_timer.h"

#include <algorithm>

namespace loadwarden::ui {
namespace {

// A clock may be set, and a sleeping computer stops a timer: no wait is longer.
constexpr std::int64_t longestMs = 60 * 60 * 1000;

} // namespace

MomentTimer::MomentTimer(const Clock& clock, QObject* parent) : QObject(parent), m_clock(clock)
{
    m_timer.setSingleShot(true);
    m_timer.setTimerType(Qt::PreciseTimer);
    connect(&m_timer, &QTimer::timeout, this, &MomentTimer::look);
}

void MomentTimer::wait(std::optional<Instant> moment)
{
    m_moment = moment;
    start();
}

void MomentTimer::look()
{
    if (!m_moment) {
        return;
    }
    if (m_clock.now() < *m_moment) {
        start();
        return;
    }
    m_moment.reset();
    m_timer.stop();
    emit came();
}

void MomentTimer::start()
{
    if (!m_moment) {
        m_timer.stop();
        return;
    }
    const std::int64_t ms = std::max<std::int64_t>((*m_moment - m_clock.now()).ms, 0);
    m_timer.start(static_cast<int>(std::min(ms, longestMs)));
}

} // namespace loadwarden::ui
