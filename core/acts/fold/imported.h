#pragma once

#include "core/acts/fold/facts.h"

#include <string_view>

namespace loadwarden {

/// What an older record said of a load.
struct ImportedLoad {
    bool isImported = false;      ///< anything was imported under its id, struck or not
    const Entry* entry = nullptr; ///< the current version, where it stands
};

[[nodiscard]] ImportedLoad importedLoad(const FactBook& book, std::string_view cycle);

} // namespace loadwarden
