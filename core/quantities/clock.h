#pragma once

#include "core/quantities/instant.h"

namespace loadwarden {

/// The one door for "now". Whoever needs the time is given a clock.
class Clock {
public:
    virtual ~Clock() = default;
    virtual Instant now() const = 0;

protected:
    Clock() = default;
    Clock(const Clock&) = default;
    Clock& operator=(const Clock&) = default;
};

/// The computer's own clock; the only call to it below app/.
class SystemClock final : public Clock {
public:
    Instant now() const override;
};

/// Stands still until it is set: for tests, and for "as of" questions.
class FixedClock final : public Clock {
public:
    explicit FixedClock(Instant at) noexcept : at_(at) {}

    Instant now() const override { return at_; }

    void set(Instant at) noexcept { at_ = at; }

private:
    Instant at_;
};

} // namespace loadwarden
