#pragma once

#include "core/desk/cycle_record.h"
#include "core/words/say.h"
#include "ui/paper/kit/sheet.h"
#include "ui/paper/sheets/fact_line.h"

#include <optional>
#include <string>
#include <vector>

// What several sheets about a load have in common.

namespace loadwarden::paper {

/// The cycle's lot control number, or its id where it has none.
[[nodiscard]] QString lotText(const CycleView& view);

/// What is signed of a load, newest; null where nothing is.
[[nodiscard]] const Entry* newestDisposition(const CycleRecord& record);

/// The worse of what is decided and what is signed, for the load and for each of its items in their
/// order.
[[nodiscard]] Verdict standing(const CycleRecord& record);
[[nodiscard]] std::vector<Verdict> itemsStanding(const CycleRecord& record);

/// A box for what is decided and, of a load, one for what is signed.
void appendVerdicts(Sheet& sheet, const CycleRecord& record, const HouseStyle& style);

/// Sterilizer, program, times and what else says which cycle it was.
void appendCycle(Sheet& sheet, const CycleRecord& record, const HouseStyle& style);

/// Why it is decided so.
void appendReasons(Sheet& sheet, const CycleView& view, const HouseStyle& style);

} // namespace loadwarden::paper
