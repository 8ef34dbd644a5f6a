#pragma once

#include "core/guidance/answer.h"
#include "ui/paper/kit/pages.h"
#include "ui/paper/sheets/house.h"

namespace loadwarden::paper {

/// One topic to teach a shift: what is believed, asked before the answer is read; answer, why and
/// steps; what the rules decide and found; related questions with their answers, in the topic's
/// language; lines for those who attended. One page or two; a facility's long topic may take more.
[[nodiscard]] Pages inServiceSheet(const TopicAnswer& answer, const TopicLibrary& library,
                                   const House& house, Date printed);

} // namespace loadwarden::paper
