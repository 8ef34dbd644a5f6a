#include "core/acts/codec.h"

namespace loadwarden {

std::span<const Upcaster> upcasters()
{
    // Every kind is in its first version.
    return {};
}

} // namespace loadwarden
