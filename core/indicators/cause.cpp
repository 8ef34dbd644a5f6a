#include "core/indicators/cause.h"

#include <array>

namespace loadwarden {

std::string_view textOf(Cause cause)
{
    static constexpr std::array<std::string_view, causeCount> texts{
#define LW_CAUSE(enumerator, text) text,
#include "core/indicators/causes.def"
#undef LW_CAUSE
    };
    return texts[static_cast<std::size_t>(cause)];
}

} // namespace loadwarden
