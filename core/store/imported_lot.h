#pragma once

#include <string>
#include <string_view>

namespace loadwarden {

/// What stands in the place of a purpose in the index of cycles where a load was imported.
inline constexpr std::string_view importedPurpose = "imported";

/// A lot control number of an older record as it is looked for: a to z made capital, as in those
/// that this program gives.
[[nodiscard]] inline std::string capitalLot(std::string_view lot)
{
    std::string capital(lot);
    for (char& c : capital) {
        c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    return capital;
}

} // namespace loadwarden
