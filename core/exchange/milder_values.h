#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// A value of a policy that holds a load less often than the default policy's.
struct MilderValue {
    int line = 1;             ///< of the value, from 1
    std::string field;        ///< dotted, for example "bi.steam.value"
    std::string value;        ///< as the file has it
    std::string defaultValue; ///< as the default policy has it

    friend bool operator==(const MilderValue&, const MilderValue&) = default;
};

/// The milder values of a policy's file that readPolicy() takes, in the order of the settings.
[[nodiscard]] std::vector<MilderValue> milderValues(std::string_view toml);

} // namespace loadwarden
