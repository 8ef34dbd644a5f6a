#pragma once

#include "core/acts/entry.h"

#include <functional>
#include <string>

namespace loadwarden {

/// Calls visit(id) for everything of a register that an entry names, among its subjects or in its
/// body: products, lots, packagings, devices, specifications, incubators. An id may come twice.
void forEachNamed(const Entry& entry, const std::function<void(const std::string&)>& visit);

/// Calls visit(placed) for every vial that an entry places.
void forEachVial(const Entry& entry, const std::function<void(const PlacedIndicator&)>& visit);

} // namespace loadwarden
