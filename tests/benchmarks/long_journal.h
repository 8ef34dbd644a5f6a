#pragma once

#include "core/quantities/instant.h"

#include <cstdint>
#include <filesystem>
#include <string>

namespace loadwarden::benchmarks {

/// Loads that a department of ten sterilizers runs in a day, ten each, of twelve items.
inline constexpr std::int64_t loadsADay = 100;

/// A journal of so many loads (environment LOADWARDEN_LOADS; else 200,000) in a file beside the
/// benchmarks, or in the folder LOADWARDEN_BENCHMARK_FILES, made at the first asking and kept.
struct LongJournal {
    std::filesystem::path file;
    std::int64_t loads = 0;
    std::int64_t entries = 0;
    Instant now{}; ///< 13:00 of the day behind those loads, of which most is signed and some of
                   ///< everything waits
};

[[nodiscard]] const LongJournal& longJournal();

/// A file with nothing but the tables in which lots and labels of that many loads are searched.
inline constexpr int searchedLoads = 2'000'000;
[[nodiscard]] const std::filesystem::path& searchTables();

/// The load of that number, counted from 0.
[[nodiscard]] std::string loadId(std::int64_t number);

} // namespace loadwarden::benchmarks
