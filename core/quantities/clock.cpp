#include "core/quantities/clock.h"

#include <chrono>

namespace loadwarden {

Instant SystemClock::now() const
{
    using namespace std::chrono;
    return {duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count()};
}

} // namespace loadwarden
