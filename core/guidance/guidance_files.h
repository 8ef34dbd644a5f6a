#pragma once

#include "core/exchange/toml_error.h"

#include <filesystem>
#include <string>
#include <vector>

namespace loadwarden {

/// A file of guidance before it is read.
struct GuidanceFile {
    std::string place; ///< below its folder: "en/front-on-boundary.toml", "evidence/one-torn.json"
    std::string name;  ///< as errors call it
    std::string text;

    friend bool operator==(const GuidanceFile&, const GuidanceFile&) = default;
};

/// What resources/guidance held when the program was built.
[[nodiscard]] std::vector<GuidanceFile> shippedGuidance();

/// The files of a facility's folder and the folders in it, in the order of their places; of other
/// kinds than .toml and .json none. What cannot be read is added to `errors`.
[[nodiscard]] std::vector<GuidanceFile> guidanceIn(const std::filesystem::path& folder,
                                                   std::vector<TomlError>& errors);

} // namespace loadwarden
