#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace loadwarden {

/// How far two readers agree beyond chance, from -1 to 1: Cohen's kappa. A square table: how often
/// the first gave the answer of the row and the second that of the column. nullopt where the table
/// is empty or not square, or both always gave the same one answer, which chance explains as well.
/// Source: Cohen, Educational and Psychological Measurement 20 (1960) 37-46.
[[nodiscard]] std::optional<double>
cohensKappa(const std::vector<std::vector<std::int64_t>>& table);

/// How far several readers agree beyond chance: Fleiss' kappa. For each thing that was read, how
/// many readers gave each answer; every thing is read by as many, at least two. nullopt where that
/// is not so, nothing was read, or all gave the same one answer.
/// Source: Fleiss, Psychological Bulletin 76 (1971) 378-382.
[[nodiscard]] std::optional<double>
fleissKappa(const std::vector<std::vector<std::int64_t>>& counts);

} // namespace loadwarden
