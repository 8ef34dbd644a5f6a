#pragma once

#include <string>

namespace loadwarden {

/// Something that a page offers to choose from.
struct NamedId {
    std::string id;
    std::string name;

    friend bool operator==(const NamedId&, const NamedId&) = default;
};

} // namespace loadwarden
