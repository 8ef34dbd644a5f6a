#include "core/store/reach/least_values.h"

#include "core/cycle/limits.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// No reading is further from 0, in thousandths.
constexpr std::int64_t furthest = 100'000'000;

/// The least value that is not beyond the limit; nullopt where none is.
std::optional<std::int64_t> leastWithin(const Limit& limit, Unit unit,
                                        const std::optional<AbsolutePressure>& atmosphere)
{
    const auto isBeyond = [&](std::int64_t thousandths) {
        return checkLeast(limit, {unit, thousandths}, atmosphere).against == Against::beyond;
    };
    if (!isBeyond(-furthest)) {
        return std::nullopt;
    }
    std::int64_t beyond = -furthest;
    std::int64_t within = furthest;
    while (within - beyond > 1) {
        const std::int64_t middle = beyond + (within - beyond) / 2;
        (isBeyond(middle) ? beyond : within) = middle;
    }
    return within;
}

} // namespace

std::vector<LeastValue> leastValues(const std::string& bound,
                                    const CycleSpecification& specification,
                                    std::span<const AbsolutePressure> atmospheres)
{
    std::vector<LeastValue> all;
    for (const Limit& limit : specification.limits) {
        if (limit.parameter == Parameter::drying || limit.least.empty()) {
            continue;
        }
        for (std::size_t i = 0; i < unitCount; ++i) {
            const auto unit = static_cast<Unit>(i);
            if (!fits(limit.parameter, unit)) {
                continue;
            }
            auto least = leastWithin(limit, unit, std::nullopt);
            for (const AbsolutePressure& atmosphere : atmospheres) {
                least = std::max(least, leastWithin(limit, unit, atmosphere));
            }
            if (least) {
                all.push_back({bound, textOf(limit.parameter), textOf(unit), *least});
            }
        }
    }
    return all;
}

} // namespace loadwarden
