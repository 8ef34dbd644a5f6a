#pragma once

#include "core/desk/office.h"

#include <string>

namespace loadwarden::cli {

/// Why a sterilizer was taken out of service last and has not been returned since; empty where it
/// is in service.
[[nodiscard]] std::string whyOut(Office& office, const std::string& sterilizer);

} // namespace loadwarden::cli
