#pragma once

#include "core/quantities/act.h"

#include <QString>

namespace loadwarden::ui {

/// A role as it stands behind a name.
[[nodiscard]] QString roleText(Role role);

} // namespace loadwarden::ui
