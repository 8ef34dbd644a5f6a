#pragma once

#include <span>
#include <string_view>

namespace loadwarden {

/// A file of resources/ as it was when the program was built.
struct EmbeddedFile {
    std::string_view name; ///< without its folder; below a folder of several, its place there
    std::string_view text;
};

namespace embedded {

std::span<const EmbeddedFile> policies();       ///< the default policy, nothing else
std::span<const EmbeddedFile> specifications(); ///< the stored cycle specifications
std::span<const EmbeddedFile> schemas();        ///< evidence.schema.json, decision.schema.json

} // namespace embedded

} // namespace loadwarden
