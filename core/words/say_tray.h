#pragma once

#include "core/desk/tray.h"
#include "core/words/say.h"

#include <string>
#include <vector>

namespace loadwarden {

/// What is said before a tray. `answer` is a heading without a full stop, the others end with one.
struct TraySaid {
    std::string answer;
    std::string why;
    std::string next;                ///< what to do now
    std::vector<std::string> checks; ///< on opening it; only where it may be used
};

[[nodiscard]] TraySaid say(const TraySheet& tray, const HouseStyle& style);

/// Where no item bears the label.
[[nodiscard]] TraySaid sayUnknownTray();

} // namespace loadwarden
