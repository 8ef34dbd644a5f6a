#pragma once

#include <cstdint>

namespace loadwarden {

/// Is told how far something long has come, and may end it.
class Progress {
public:
    virtual ~Progress() = default;
    /// `done` of `total` entries; false ends the work as soon as it can be left.
    virtual bool goOn(std::int64_t done, std::int64_t total) = 0;

protected:
    Progress() = default;
    Progress(const Progress&) = default;
    Progress& operator=(const Progress&) = default;
};

/// For who does not want to know.
class NoProgress final : public Progress {
public:
    bool goOn(std::int64_t /*done*/, std::int64_t /*total*/) override { return true; }
};

} // namespace loadwarden
