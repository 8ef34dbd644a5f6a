#pragma once

#include "core/quantities/zone.h"
#include "core/words/say.h"

#include <QString>

#include <optional>

namespace loadwarden::ui {

/// "07:14" by the facility's clocks; UTC where no zone is known.
[[nodiscard]] QString clockText(Instant moment, const std::optional<Zone>& zone);

/// The same, with the day before it where that is not the day of `now`.
[[nodiscard]] QString dayClockText(Instant moment, Instant now, const HouseStyle& style);

/// "07:14 to 07:52", with the days where they are not that of `now`.
[[nodiscard]] QString spanText(Instant from, Instant to, Instant now, const HouseStyle& style);

/// A time of the day in minutes from midnight: 07:14, 7:14 and 0714 are meant as the same. nullopt:
/// it is none.
[[nodiscard]] std::optional<int> minuteOfDayIn(const QString& typed);

/// "07:14" of a minute of the day.
[[nodiscard]] QString minuteText(std::int64_t minuteOfDay);

/// "Tuesday, 4 March 2031", in the language of the computer.
[[nodiscard]] QString dayText(Date day);

} // namespace loadwarden::ui
