#pragma once

#include "core/desk/load_sheet.h"

#include <vector>

namespace loadwarden {

/// What the rule about the cycles that a device's instructions allow (core/release/RULES.md, 6)
/// will say against the items of a cycle in the program that it runs, or is reserved for: that none
/// of them fits, or cannot be compared. `Finding::item` counts the items of the sheet. Empty where
/// no program is known, and of a test.
[[nodiscard]] std::vector<Finding> misfitsOf(const LoadSheet& sheet);

/// The same of devices that are about to go into it.
[[nodiscard]] std::vector<Finding> misfitsOf(const LoadSheet& sheet,
                                             const std::vector<Device>& devices);

} // namespace loadwarden
