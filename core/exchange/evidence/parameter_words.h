#pragma once

#include "core/cycle/quantity.h"
#include "core/exchange/evidence/bind.h"

namespace loadwarden::evidence_format {

/// In the order of Parameter.
inline constexpr Word<Parameter> parameterWords[] = {
    {"temperature", Parameter::temperature},     {"exposure", Parameter::exposure},
    {"pressure", Parameter::pressure},           {"drying", Parameter::drying},
    {"concentration", Parameter::concentration}, {"humidity", Parameter::humidity},
};

[[nodiscard]] constexpr std::string_view wordOf(Parameter parameter)
{
    return parameterWords[static_cast<std::size_t>(parameter)].text;
}

} // namespace loadwarden::evidence_format
