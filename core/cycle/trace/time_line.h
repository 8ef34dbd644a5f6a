#pragma once

#include "core/cycle/trace/text_values.h"
#include "core/cycle/trace/trace_limits.h"

#include <cstddef>
#include <cstdint>

namespace loadwarden {

/// How a sample's time stands to those before it.
enum class TimeStep : std::uint8_t {
    forward,
    pastMidnight, ///< forward, when a day is added to what is written
    repeated,
    backward,
    beginsAgain ///< back to where the trace began
};

/// Makes seconds since the first sample of the times as they are written.
class TimeLine {
public:
    TimeLine(TimeForm form, const TraceLimits& limits) noexcept : m_form(form), m_limits(limits) {}

    /// Puts the next time behind the others where it belongs there; else they stay as they are.
    [[nodiscard]] TimeStep put(const WrittenTime& time) noexcept
    {
        constexpr double day = 86'400;
        if (m_count == 0) {
            m_first = time;
            return take(0, TimeStep::forward);
        }
        const double seconds = static_cast<double>(time.day - m_first.day) * day
                               + (time.seconds - m_first.seconds) + m_midnights * day;
        m_step = seconds - m_last;
        if (m_step > 0) {
            return take(seconds, TimeStep::forward);
        }
        if (m_step == 0) {
            return TimeStep::repeated;
        }
        if (endsAtMidnight(m_form) && time.seconds < day
            && m_step + day <= m_limits.mostSecondsOverMidnight && m_step + day > 0) {
            ++m_midnights;
            return take(seconds + day, TimeStep::pastMidnight);
        }
        constexpr std::size_t least = 3; // of fewer nobody can say where they began
        const bool isAtBegin = seconds <= m_second && seconds >= -m_second;
        return m_count >= least && isAtBegin ? TimeStep::beginsAgain : TimeStep::backward;
    }

    [[nodiscard]] double seconds() const noexcept { return m_last; } ///< of the last that was put
    [[nodiscard]] double step() const noexcept { return m_step; }    ///< of the last, put or not

private:
    TimeStep take(double seconds, TimeStep how) noexcept
    {
        m_second = m_count == 1 ? seconds : m_second;
        m_last = seconds;
        ++m_count;
        return how;
    }

    TimeForm m_form;
    const TraceLimits& m_limits;
    WrittenTime m_first;
    double m_second = 0;
    double m_last = 0;
    double m_step = 0;
    double m_midnights = 0;
    std::size_t m_count = 0;
};

} // namespace loadwarden
