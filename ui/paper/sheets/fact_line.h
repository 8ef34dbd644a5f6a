#pragma once

#include "core/acts/fold/facts.h"
#include "core/desk/cycle_record.h"
#include "core/words/say.h"
#include "ui/paper/kit/type.h"
#include "ui/paper/sheets/who_text.h"

namespace loadwarden::paper {

/// One fact of the journal as a line of a table.
struct FactLine {
    Runs what;  ///< what kind of thing was said
    Runs value; ///< what was said; what a correction took away is struck through before it
    Runs who;   ///< name, role and time, and each correction with its author, time and reason
};

[[nodiscard]] FactLine lineOf(const Fact& fact, const Names& names, const HouseStyle& style);

} // namespace loadwarden::paper
