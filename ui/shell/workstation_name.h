#pragma once

#include <string>

namespace loadwarden::ui {

/// This computer's id in every entry: "ws-" and its name, as far as that fits a word.
[[nodiscard]] std::string workstationName();

} // namespace loadwarden::ui
