#pragma once

#include "core/exchange/toml_error.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loadwarden {

/// What the search must know of a language, and of a house: words that mean the same to people who
/// ask, and words that say nothing of what they ask about. resources/guidance/README.md describes
/// the files.
struct HouseWords {
    std::vector<std::vector<std::string>> same; ///< each group: words or short phrases
    std::vector<std::string> ordinary;
};

std::variant<HouseWords, std::vector<TomlError>> readHouseWords(std::string_view toml,
                                                                const std::string& fileName);

} // namespace loadwarden
