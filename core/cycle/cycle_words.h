#pragma once

#include "core/cycle/printout.h"
#include "core/cycle/specification.h"
#include "core/quantities/word.h"

namespace loadwarden {

/// In the order of Parameter.
inline constexpr Word<Parameter> parameterWords[] = {
    {"temperature", Parameter::temperature},     {"exposure", Parameter::exposure},
    {"pressure", Parameter::pressure},           {"drying", Parameter::drying},
    {"concentration", Parameter::concentration}, {"humidity", Parameter::humidity},
};

/// In the order of Unit.
inline constexpr Word<Unit> unitWords[] = {
    {"celsius", Unit::celsius},         {"fahrenheit", Unit::fahrenheit},
    {"minutes", Unit::minutes},         {"seconds", Unit::seconds},
    {"kPaAbsolute", Unit::kPaAbsolute}, {"barAbsolute", Unit::barAbsolute},
    {"kPaGauge", Unit::kPaGauge},       {"barGauge", Unit::barGauge},
    {"psiGauge", Unit::psiGauge},       {"mgPerL", Unit::mgPerL},
    {"percent", Unit::percent},
};

inline constexpr Word<Purpose> purposeWords[] = {
    {"routine", Purpose::routine}, {"immediate-use", Purpose::immediateUse},
    {"warm-up", Purpose::warmUp},  {"bowie-dick", Purpose::bowieDick},
    {"leak", Purpose::leak},       {"qualification", Purpose::qualification},
};

inline constexpr Word<PrintoutAnswer> printoutAnswerWords[] = {
    {"record-right", PrintoutAnswer::recordRight},
    {"wrong-cycle", PrintoutAnswer::wrongCycle},
    {"wrong-sterilizer", PrintoutAnswer::wrongSterilizer},
};

} // namespace loadwarden
