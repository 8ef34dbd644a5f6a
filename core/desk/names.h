#pragma once

#include "core/store/read_snapshot.h"

#include <map>
#include <string>
#include <string_view>

namespace loadwarden {

/// What people call that which stands in the registers: staff, sterilizers, specifications,
/// products, lots of products by their numbers, packagings, devices, incubators; the newest that
/// was recorded of each.
class Names {
public:
    /// Of nothing.
    Names() = default;
    /// Throws StoreError.
    explicit Names(ReadSnapshot& snapshot);

    /// The id itself where there is no name for it.
    [[nodiscard]] std::string of(std::string_view id) const;
    /// Takes another name for something, as a cycle's lot control number.
    void set(std::string_view id, std::string_view name);

private:
    std::map<std::string, std::string, std::less<>> m_names;
};

} // namespace loadwarden
