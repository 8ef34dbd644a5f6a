#pragma once

#include "core/acts/entry.h"
#include "core/desk/names.h"
#include "core/words/say.h"

#include <QString>

#include <functional>

namespace loadwarden::paper {

/// "Name, role, time", from paper and recorded later where that is so.
[[nodiscard]] QString whoText(const Entry& entry, const Names& names, const HouseStyle& style);

/// "Name, time" for a line on a page, from paper where that is so; `timeOf` says the time.
[[nodiscard]] QString shortWhoText(const Entry& entry, const Names& names,
                                   const std::function<QString(Instant)>& timeOf);

/// Name and role alone.
[[nodiscard]] QString authorText(const Entry& entry, const Names& names);

} // namespace loadwarden::paper
