#pragma once

#include "core/quantities/clock.h"

#include <chrono>

namespace loadwarden::demo {

/// Shows a given moment when it is made and goes on from there as time does. Setting the computer's
/// clock does not move it.
class RunningClock final : public Clock {
public:
    explicit RunningClock(Instant from) : m_from(from), m_begun(std::chrono::steady_clock::now()) {}

    [[nodiscard]] Instant now() const override
    {
        const auto gone = std::chrono::steady_clock::now() - m_begun;
        return m_from
               + Duration::milliseconds(
                   std::chrono::duration_cast<std::chrono::milliseconds>(gone).count());
    }

private:
    Instant m_from;
    std::chrono::steady_clock::time_point m_begun;
};

} // namespace loadwarden::demo
