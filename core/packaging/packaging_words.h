#pragma once

#include "core/packaging/packaging.h"
#include "core/quantities/word.h"

namespace loadwarden {

inline constexpr Word<PackageForm> packageFormWords[] = {
    {"wrap", PackageForm::wrap},
    {"pouch", PackageForm::pouch},
    {"rigid-container", PackageForm::rigidContainer},
    {"open-tray", PackageForm::openTray},
};

} // namespace loadwarden
