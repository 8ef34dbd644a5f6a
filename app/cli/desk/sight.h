#pragma once

#include "core/desk/dispositions.h"

#include <string>
#include <string_view>

namespace loadwarden::cli {

/// What a person names to sign what they saw: "1234:9f86d081884c7d65", the newest entry and a
/// digest of what was decided.
[[nodiscard]] std::string sightText(const CycleView& view);

/// Reads it; throws UsageError.
[[nodiscard]] Sight parseSight(std::string_view text, const std::string& cycle);

} // namespace loadwarden::cli
