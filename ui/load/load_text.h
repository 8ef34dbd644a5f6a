#pragma once

#include "core/acts/fold/facts.h"
#include "core/desk/load_sheet.h"
#include "core/words/say.h"
#include "ui/paper/kit/words.h"

#include <QString>

namespace loadwarden::ui {

using paper::capital;

/// "07:14" on the day on which it is looked at, with the date on another.
[[nodiscard]] QString shortTime(Instant at, const LoadSheet& sheet, const HouseStyle& style);

/// "Name, 07:14", from paper where so.
[[nodiscard]] QString whoText(const Entry& entry, const LoadSheet& sheet, const HouseStyle& style);
[[nodiscard]] QString whoText(const Act& act, const LoadSheet& sheet, const HouseStyle& style);

/// Where a cycle stands: "Being loaded", "Running since 07:14".
[[nodiscard]] QString phaseText(const LoadSheet& sheet, const HouseStyle& style);

/// "at least 132 °C, at most 135 °C", in that unit where the limit is stated in it; empty: none.
[[nodiscard]] QString limitsText(const SheetParameter& parameter, Unit unit);

/// A limit's value in that unit where it is stated in it, else as it is stated first; null: none.
[[nodiscard]] const Quantity* limitIn(const std::vector<Quantity>& stated, Unit unit);

/// An indicator by where it is: "Inside I1, top level", "In PCD A".
[[nodiscard]] QString placeText(const SheetIndicator& indicator);

/// Its product and lot, as far as they are known.
[[nodiscard]] QString productText(const SheetIndicator& indicator);

/// A lot to choose: "integrator strip, lot N1, until 2032-06-30".
[[nodiscard]] QString lotText(const LotChoice& lot);

/// The newest fact of a kind that stands about the cycle, or null. The book outlives it.
template <class Said>
[[nodiscard]] const Fact* newestFact(const FactBook& book, std::string_view about)
{
    const Fact* found = nullptr;
    for (const std::uint32_t index : book.about(about)) {
        const Fact& fact = book.facts()[index];
        if (fact.stands() && std::holds_alternative<Said>(fact.origin->act)) {
            found = &fact;
        }
    }
    return found;
}

} // namespace loadwarden::ui
