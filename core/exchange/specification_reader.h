#pragma once

#include "core/cycle/specification.h"
#include "core/exchange/toml_error.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loadwarden {

using SpecificationError = TomlError;

/// The cycle specification that a file states, or everything that is wrong with it, by line. The
/// form is described in resources/specifications/README.md. `fileName` only names the file in
/// errors.
std::variant<CycleSpecification, std::vector<SpecificationError>>
readSpecification(std::string_view toml, std::string fileName);

} // namespace loadwarden
