#pragma once

#include "core/quantities/act.h"
#include "core/quantities/method.h"

#include <cstdint>
#include <optional>
#include <string>

namespace loadwarden {

enum class PackageForm : std::uint8_t { wrap, pouch, rigidContainer, openTray };

/// A packaging by its instructions for use.
struct Packaging {
    std::string id;
    PackageForm form = PackageForm::wrap;
    MethodSet methods; ///< empty: none stated
    std::optional<std::int64_t> aerationMinutes;

    friend bool operator==(const Packaging&, const Packaging&) = default;
};

/// One look at a package at unloading; what is left out was not looked at.
struct PackageCheck {
    std::optional<bool> cooled;
    std::optional<bool> dry;
    std::optional<bool> intact;
    std::optional<bool> sealed;
    std::optional<bool> labelAgrees;
    Act act;

    friend bool operator==(const PackageCheck&, const PackageCheck&) = default;
};

} // namespace loadwarden
