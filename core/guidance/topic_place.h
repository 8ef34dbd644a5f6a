#pragma once

#include "core/exchange/toml_error.h"

#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

// What the place of a file says of the topic in it, and whether it is text at all.

/// "front-on-boundary" of "en/front-on-boundary.toml" and of its note.
[[nodiscard]] std::string topicIdOf(std::string_view fileName);

/// "en" of the same: the folder in which a file stands.
[[nodiscard]] std::string languageOf(std::string_view fileName);

/// The first line of bytes that are no UTF-8; nullopt: there is none.
[[nodiscard]] std::optional<TomlError> encodingError(std::string_view text,
                                                     const std::string& fileName);

} // namespace loadwarden
