#include "core/cycle/trace/turning_points.h"

#include <cmath>

namespace loadwarden {
namespace {

enum class Direction { notKnown, rising, falling };

} // namespace

std::vector<TurningPoint> turningPoints(std::span<const double> values, double leastSwing)
{
    std::vector<TurningPoint> found;
    Direction direction = Direction::notKnown;
    std::size_t low = values.size(); // lowest and highest since the last turning point
    std::size_t high = values.size();
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (std::isnan(values[i])) {
            continue;
        }
        if (low == values.size()) {
            low = high = i;
        }
        low = values[i] < values[low] ? i : low;
        high = values[i] > values[high] ? i : high;
        if (direction != Direction::rising && values[i] - values[low] >= leastSwing) {
            if (direction == Direction::falling) {
                found.push_back({low, true});
            }
            direction = Direction::rising;
            high = i;
        } else if (direction != Direction::falling && values[high] - values[i] >= leastSwing) {
            if (direction == Direction::rising) {
                found.push_back({high, false});
            }
            direction = Direction::falling;
            low = i;
        }
    }
    return found;
}

} // namespace loadwarden
