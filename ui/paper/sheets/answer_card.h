#pragma once

#include "core/guidance/answer.h"
#include "ui/paper/kit/pages.h"
#include "ui/paper/sheets/house.h"

namespace loadwarden::paper {

/// One topic to hang up at the sterilizer: the answer to be read at two paces, what to do now, why,
/// what the rules decide, caution, sources, owner. One page, in the largest type that fits; a
/// facility's topic that is too long for one page in the smallest goes on.
[[nodiscard]] Pages answerCard(const TopicAnswer& answer, const House& house, Date printed);

} // namespace loadwarden::paper
