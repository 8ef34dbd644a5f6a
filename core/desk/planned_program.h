#pragma once

#include "core/desk/load_sheet.h"

namespace loadwarden {

/// The program by which a cycle is run: the one bound at its start, before that the one it was
/// reserved for, as it stands now. Null where it has none. The sheet outlives it.
[[nodiscard]] const CycleSpecification* plannedProgram(const LoadSheet& sheet);

/// Its method, or that of the reservation where there is no program.
[[nodiscard]] Method plannedMethod(const LoadSheet& sheet);

/// The id of the specification that the cycle was reserved for, sp-; empty: none.
[[nodiscard]] std::string_view reservedSpecification(const LoadSheet& sheet);

} // namespace loadwarden
