#include "core/cycle/sound.h"

#include <algorithm>

namespace loadwarden {
namespace {

bool isSoundSide(Parameter parameter, const std::vector<Quantity>& side)
{
    const auto notBefore = [](const Quantity& a, const Quantity& b) { return a.unit >= b.unit; };
    return std::ranges::adjacent_find(side, notBefore) == side.end()
           && std::ranges::all_of(
               side, [parameter](const Quantity& each) { return fits(parameter, each.unit); });
}

} // namespace

bool isSound(const Limit& limit)
{
    if ((limit.least.empty() && limit.most.empty()) || !isSoundSide(limit.parameter, limit.least)
        || !isSoundSide(limit.parameter, limit.most)) {
        return false;
    }
    for (const Quantity& least : limit.least) {
        for (const Quantity& most : limit.most) {
            if (least.unit == most.unit && least.thousandths > most.thousandths) {
                return false;
            }
        }
    }
    return true;
}

bool hasEachParameterOnce(const std::vector<Limit>& limits)
{
    for (std::size_t i = 0; i < limits.size(); ++i) {
        for (std::size_t k = i + 1; k < limits.size(); ++k) {
            if (limits[i].parameter == limits[k].parameter) {
                return false;
            }
        }
    }
    return true;
}

} // namespace loadwarden
