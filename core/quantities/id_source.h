#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace loadwarden {

/// Where new ids come from. Each is the prefix, a hyphen and a part that is never given twice.
class IdSource {
public:
    virtual ~IdSource() = default;
    virtual std::string next(std::string_view prefix) = 0;

protected:
    IdSource() = default;
    IdSource(const IdSource&) = default;
    IdSource& operator=(const IdSource&) = default;
};

/// 128 random bits of the operating system as 32 hexadecimal digits, so that workstations which
/// never met do not clash. Throws what std::random_device throws when there is no randomness.
class RandomIdSource final : public IdSource {
public:
    std::string next(std::string_view prefix) override;
};

/// Counts 1, 2, 3 over all prefixes: ids that a test can foretell.
class CountingIdSource final : public IdSource {
public:
    std::string next(std::string_view prefix) override;

private:
    std::int64_t last_ = 0;
};

} // namespace loadwarden
