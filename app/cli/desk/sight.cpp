#include "app/cli/desk/sight.h"

#include "app/cli/arguments.h"
#include "core/quantities/decimal.h"

namespace loadwarden::cli {

std::string sightText(const CycleView& view)
{
    const Sight sight = sightFrom(view);
    return std::to_string(sight.seen) + ':' + sight.decided;
}

Sight parseSight(std::string_view text, const std::string& cycle)
{
    const std::size_t colon = text.find(':');
    const auto seen = parseDecimal(text.substr(0, colon), 0);
    if (colon == std::string_view::npos || !seen) {
        throw UsageError("--seen needs what \"load decide\" or \"load show\" printed behind \"To "
                         "sign what stands here\"");
    }
    return {.cycle = cycle, .seen = *seen, .decided = std::string(text.substr(colon + 1))};
}

} // namespace loadwarden::cli
