#pragma once

#include "ui/paper/kit/pages.h"
#include "ui/paper/sheets/house.h"

#include <string>

namespace loadwarden::paper {

/// A blank sheet for one load while the program cannot be used, its fields in the order in which
/// they are typed later. The sterilizer's name is filled in where it is given.
[[nodiscard]] Pages blankLoad(const House& house, const std::string& sterilizer);

/// A blank sheet for biological indicators and their controls, in the same way.
[[nodiscard]] Pages blankBiologicals(const House& house);

} // namespace loadwarden::paper
