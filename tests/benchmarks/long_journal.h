#pragma once

#include "core/store/connection.h"

#include <cstdint>
#include <filesystem>
#include <string>

namespace loadwarden::benchmarks {

/// Loads that a department of four sterilizers runs in a day, 25 each.
inline constexpr std::int64_t loadsADay = 100;

/// A journal of so many loads (environment LOADWARDEN_LOADS; else 200,000) in a file beside the
/// benchmarks, made at the first asking and kept.
struct LongJournal {
    std::filesystem::path file;
    std::int64_t loads = 0;
    std::int64_t entries = 0;
};

[[nodiscard]] const LongJournal& longJournal();

/// The load of that number, counted from 0.
[[nodiscard]] std::string loadId(std::int64_t number);

} // namespace loadwarden::benchmarks
