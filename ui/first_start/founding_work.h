#pragma once

#include "core/desk/equipping.h"
#include "core/desk/founding.h"
#include "ui/shell/desk_link.h"

#include <QFuture>

#include <filesystem>
#include <optional>
#include <vector>

namespace loadwarden::ui {

/// Everything with which a department begins.
struct FirstDay {
    std::filesystem::path file;
    Founding founding;
    std::vector<FirstSterilizer> sterilizers;
};

/// How it went: nothing where the journal stands; else why not, in words.
using Founded = std::optional<Trouble>;

/// Makes the journal on another thread. `place` refers to a clock and ids that outlive it.
[[nodiscard]] QFuture<Founded> found(FirstDay day, Workplace place);

} // namespace loadwarden::ui
