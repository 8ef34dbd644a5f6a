#pragma once

#include "core/quantities/zone.h"

#include <QString>

#include <optional>

namespace loadwarden::ui {

/// "07:14" by the facility's clocks; UTC where no zone is known.
[[nodiscard]] QString clockText(Instant moment, const std::optional<Zone>& zone);

/// "Tuesday, 4 March 2031", in the language of the computer.
[[nodiscard]] QString dayText(Date day);

} // namespace loadwarden::ui
