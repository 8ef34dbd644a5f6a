#pragma once

#include "core/acts/entry.h"

#include <string_view>

namespace loadwarden {

/// An entry of the journal with its act. A body that is not one of its kind is kept as not
/// understood, as one of an unknown kind is: it must not be passed over. Throws StoreFault::damaged
/// when the bytes are not those of an entry.
[[nodiscard]] Entry understand(std::string_view bytes, const Hash& hash);

} // namespace loadwarden
