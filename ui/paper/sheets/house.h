#pragma once

#include "core/journal/chain.h"
#include "core/words/say.h"
#include "ui/paper/kit/frame.h"
#include "ui/paper/kit/page_size.h"
#include "ui/paper/kit/words.h"

#include <string>

namespace loadwarden::paper {

/// Whose sheets these are, and how they are said.
struct House {
    HouseStyle style;
    std::string facility;
    std::string journal; ///< its id
    PageSize size = PageSize::letter;
};

/// What stands on every page of a sheet that rests on the journal up to that entry.
[[nodiscard]] Frame frameOf(const House& house, const QString& title, const QString& subject,
                            Instant now, const Head& head);

/// The same of a blank sheet, which rests on nothing.
[[nodiscard]] Frame blankFrame(const House& house, const QString& title, const QString& subject);

/// The text of a sheet in the language that is installed.
[[nodiscard]] QString tr(const char* words);

/// A moment as the house says it.
[[nodiscard]] QString timeText(Instant at, const HouseStyle& style);

/// The time of day alone, where the day is plain.
[[nodiscard]] QString clockText(Instant at, const HouseStyle& style);

} // namespace loadwarden::paper
